"""Partials turned down to rest along a carrier, and how fast they still turn.

The loops behind :mod:`analysis.partial_pitch`; several frames and samples are taken at a
time, so the arrays are laid out for the processor and not for the reader.
"""

import numpy as np
from numpy.typing import NDArray

from analysis.compiled import compiled, compiled_for_sums

FloatArray = NDArray[np.float64]
Float32Array = NDArray[np.float32]
ComplexArray = NDArray[np.complex64]
IntArray = NDArray[np.int64]
BoolArray = NDArray[np.bool_]


@compiled
def turn_along(
    places: IntArray, turns_per_sample: FloatArray, cosine: Float32Array, sine: Float32Array
) -> None:
    """Fill in a carrier, turning backwards, whose speed runs straight from place to place.

    Within a piece it turns by multiplication, each step a little further than the last.
    """
    turns, last = 0.0, len(places) - 1
    for piece in range(-1, last + 1):
        begin = places[piece] if piece >= 0 else 0
        end = places[piece + 1] if piece < last else len(cosine)
        speed, change = turns_per_sample[max(piece, 0)], 0.0
        if 0 <= piece < last:
            change = (turns_per_sample[piece + 1] - speed) / (end - begin)
        angle = -2.0 * np.pi
        now = complex(np.cos(angle * turns), np.sin(angle * turns))
        step = complex(np.cos(angle * speed), np.sin(angle * speed))
        longer = complex(np.cos(angle * change), np.sin(angle * change))
        for k in range(begin, end):
            now *= step
            step *= longer
            cosine[k] = now.real
            sine[k] = now.imag
        count = end - begin
        turns += count * speed + 0.5 * count * (count - 1) * change
        turns -= np.floor(turns)


@compiled
def _hann(window: Float32Array, half: int, reach_samples: float) -> None:
    """Fill a raised cosine that ends ``reach_samples``, not a whole number, from its middle."""
    step = 2.0 * np.cos(np.pi / reach_samples)
    before, now = np.cos(np.pi / reach_samples), 1.0
    for i in range(half + 1):
        window[half + i] = window[half - i] = 0.5 + 0.5 * now
        before, now = now, step * now - before


@compiled_for_sums
def turn_down(  # noqa: PLR0917 - compiled code knows no keywords
    samples: Float32Array,
    cosine: Float32Array,
    sine: Float32Array,
    centres: IntArray,
    halves: IntArray,
    reach_samples: FloatArray,
    counts: IntArray,
    lines: ComplexArray,
) -> None:
    """Turn each partial down to rest and sum it up around each frame.

    A few frames at a time, whose samples stay in the processor's cache.
    """
    together = 40
    widest = np.max(halves)
    room = centres[min(together, len(centres)) - 1] - centres[0] + 2 * widest + together
    real, imag = np.empty(room, dtype=np.float32), np.empty(room, dtype=np.float32)
    turned_real, turned_imag = np.empty(room, np.float32), np.empty(room, np.float32)
    windows = np.empty((together, 2 * widest + 1), dtype=np.float32)
    for first in range(0, len(centres), together):
        last = min(first + together, len(centres))
        most = np.max(counts[first:last])
        if most == 0:
            continue
        start = centres[first] - widest
        n = centres[last - 1] + widest + 1 - start
        for k in range(first, last):
            if counts[k] > 0:
                _hann(windows[k - first], halves[k], reach_samples[k])
        heard = samples[start : start + n]
        along, across = cosine[start : start + n], sine[start : start + n]
        real[:n], imag[:n] = 1.0, 0.0
        for h in range(most):
            for i in range(n):
                r = real[i] * along[i] - imag[i] * across[i]
                m = real[i] * across[i] + imag[i] * along[i]
                real[i] = r
                imag[i] = m
                turned_real[i] = r * heard[i]
                turned_imag[i] = m * heard[i]
            for k in range(first, last):
                if counts[k] > h:
                    begin, length = centres[k] - halves[k] - start, 2 * halves[k] + 1
                    window = windows[k - first, :length]
                    near_real = turned_real[begin : begin + length]
                    near_imag = turned_imag[begin : begin + length]
                    a, b = np.float32(0.0), np.float32(0.0)
                    for j in range(length):
                        a += window[j] * near_real[j]
                        b += window[j] * near_imag[j]
                    lines[h, k] = complex(a, b)


@compiled
def turn_further(lines: ComplexArray, off_hz: FloatArray, voiced: BoolArray, hop_s: float) -> None:
    """Turn the partials down along the better carrier: in a frame it hardly differs."""
    phase, before = 0.0, 0.0
    for k in range(len(off_hz)):
        now = off_hz[k] if voiced[k] else 0.0
        phase += np.pi * hop_s * (before + now)
        before = now
        turn = complex(np.cos(phase), -np.sin(phase))
        power = turn
        for h in range(lines.shape[0]):
            lines[h, k] *= power
            power *= turn


@compiled_for_sums
def turning_of(  # noqa: PLR0917 - compiled code knows no keywords
    lines: ComplexArray,
    stretch: IntArray,
    smooth: Float32Array,
    slope: Float32Array,
    turning: Float32Array,
    least_whole: float,
    least_of_loudest: float,
) -> None:
    """Fill ``turning`` (partials, frames) with how fast each line turns, in radians a second.

    NaN where there is no line: noise does not stay in phase with itself.
    """
    n, reach = len(stretch), len(smooth) // 2
    padded_real = np.zeros(n + 2 * reach, dtype=np.float32)
    padded_imag = np.zeros(n + 2 * reach, dtype=np.float32)
    together = np.zeros((len(smooth), n), dtype=np.float32)
    for j in range(len(smooth)):
        for k in range(max(reach - j, 0), min(n, n + reach - j)):
            if stretch[k + j - reach] == stretch[k]:
                together[j, k] = 1.0
    real, imag = np.empty(n, dtype=np.float32), np.empty(n, dtype=np.float32)
    rise_real, rise_imag = np.empty(n, dtype=np.float32), np.empty(n, dtype=np.float32)
    whole, share = np.empty(n, dtype=np.float32), np.zeros(n, dtype=np.float32)
    loudest, powers = np.zeros(n, np.float32), np.zeros(lines.shape, np.float32)
    for j in range(len(smooth)):
        share += smooth[j] * together[j]
    for h in range(lines.shape[0]):
        for k in range(n):
            padded_real[reach + k] = lines[h, k].real
            padded_imag[reach + k] = lines[h, k].imag
        real[:], imag[:], rise_real[:], rise_imag[:] = 0.0, 0.0, 0.0, 0.0
        whole[:] = 0.0
        for j in range(len(smooth)):
            near_real, near_imag = padded_real[j : j + n], padded_imag[j : j + n]
            same, weight, steep = together[j], smooth[j], slope[j]
            for k in range(n):
                real[k] += same[k] * weight * near_real[k]
                imag[k] += same[k] * weight * near_imag[k]
                rise_real[k] -= same[k] * steep * near_real[k]
                rise_imag[k] -= same[k] * steep * near_imag[k]
                heard = near_real[k] * near_real[k] + near_imag[k] * near_imag[k]
                whole[k] += same[k] * weight * heard
        for k in range(n):
            power = real[k] * real[k] + imag[k] * imag[k]
            turned = rise_imag[k] * real[k] - rise_real[k] * imag[k]
            loudest[k] = max(loudest[k], power)
            powers[h, k] = power if power > least_whole * whole[k] * share[k] else 0.0
            turning[h, k] = turned / power if power > 0.0 else 0.0
    for h in range(lines.shape[0]):
        for k in range(n):
            if powers[h, k] <= least_of_loudest * loudest[k]:
                turning[h, k] = np.nan


@compiled
def median_of_partials(
    turning: Float32Array,
    counts: IntArray,
    f0_hz: FloatArray,
    off_cents: FloatArray,
) -> None:
    """Fill ``off_cents`` with the median over the partials that a frame has, by sorting in."""
    cents_per_radian = 1200.0 / (2.0 * np.pi * np.log(2.0))
    each = np.empty(turning.shape[0])
    for k in range(len(counts)):
        count = 0
        for h in range(counts[k]):
            if np.isnan(turning[h, k]):
                continue
            value, i = turning[h, k] / (h + 1.0), count
            while i > 0 and each[i - 1] > value:
                each[i] = each[i - 1]
                i -= 1
            each[i] = value
            count += 1
        if count == 0:
            continue
        middle = 0.5 * (each[(count - 1) // 2] + each[count // 2])
        off_cents[k] = cents_per_radian * middle / f0_hz[k]
