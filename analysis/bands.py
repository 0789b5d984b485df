"""The level of a take averaged over frequency bands in decibels, for finding attacks.

A bow change takes the level down at every harmonic together. In a room the harmonics of
a held note rise and fall one by one, as direct and reflected sound meet in and out of
phase. The mean of the bands' levels in decibels shows the first and averages out the
second.
"""

from typing import Final

import numpy as np
from numpy.typing import NDArray
from scipy import fft
from scipy.ndimage import uniform_filter1d

from analysis.blocks import MonoSamples
from analysis.stopping import Progress, StopQuestion, stop_if_asked, tell
from analysis.windows import hann_window

FloatArray = NDArray[np.float64]

_WINDOW_S: Final = 0.012
_BLOCK_S: Final = 20.0
_FRAMES_AT_ONCE: Final = 1_024
_MARGIN_S: Final = 0.5
_LOWEST_BAND_HZ: Final = 100.0
_BANDS_PER_OCTAVE: Final = 3.0
_HIGHEST_BAND_HZ: Final = 10_000.0
_NEAR_S: Final = 0.06
_ABOVE_NOISE_DB: Final = 6.0
_BELOW_LOUDEST_DB: Final = 30.0
_SOFT_EDGE_DB: Final = 10.0
_NOISE_PERCENT: Final = 2.0
_SMALLEST_POWER: Final = 1e-12


def band_mean_level(
    source: MonoSamples,
    period_s: FloatArray,
    hop_s: float,
    *,
    progress: Progress | None = None,
    should_stop: StopQuestion | None = None,
) -> FloatArray:
    """Return the mean level of the bands that sound.

    Parameters
    ----------
    source : MonoSamples
        The take.
    period_s : (n,) array
        Period of the pitch at ``k * hop_s``; levels are smoothed over it so that it
        leaves no ripple.
    hop_s : float
        Distance of two values.
    progress, should_stop : callable, optional
        Told the share done, asked whether to stop, for every 20 s.

    Returns
    -------
    (n,) array
        Decibels. Bands count that stand out of the noise and are not far below the
        loudest one nearby.
    """
    out = np.empty(len(period_s))
    size = round(_BLOCK_S / hop_s)
    margin = round(_MARGIN_S / hop_s)
    for first in range(0, len(out), size):
        stop_if_asked(should_stop)
        last = min(first + size, len(out))
        begin, end = max(first - margin, 0), min(last + margin, len(out))
        power = _band_powers(source, begin, end, hop_s)
        level = _smoothed_db(power, period_s[begin:end], hop_s)
        out[first:last] = _weighted_mean(level, hop_s)[first - begin : last - begin]
        tell(progress, last / len(out))
    return out


def _band_powers(source: MonoSamples, begin: int, end: int, hop_s: float) -> FloatArray:
    rate = source.sample_rate_hz
    window = hann_window(round(_WINDOW_S * rate))
    size = fft.next_fast_len(len(window), real=True)
    edges = _band_edges(rate, size)
    bands = []
    for first in range(begin, end, _FRAMES_AT_ONCE):
        frames = np.arange(first, min(first + _FRAMES_AT_ONCE, end))
        starts = np.rint(frames * hop_s * rate - 0.5 * len(window)).astype(np.int64)
        piece = source.read(int(starts[0]), int(starts[-1]) + len(window))
        framed = np.lib.stride_tricks.sliding_window_view(piece, len(window))[starts - starts[0]]
        spectrum = fft.rfft(framed * window, size, axis=1)
        power = spectrum.real**2 + spectrum.imag**2
        power *= 2.0 / float(np.sum(window)) ** 2
        bands.append(np.add.reduceat(power, edges, axis=1)[:, :-1])
    return np.concatenate(bands)


def _band_edges(rate: float, size: int) -> NDArray[np.int64]:
    top = min(_HIGHEST_BAND_HZ, 0.45 * rate)
    count = int(np.log2(top / _LOWEST_BAND_HZ) * _BANDS_PER_OCTAVE)
    edges_hz = top * 2.0 ** (np.arange(-count, 1) / _BANDS_PER_OCTAVE)
    edges = np.unique(np.rint(edges_hz * size / rate).astype(np.int64))
    return edges[edges > 0]


def _smoothed_db(power: FloatArray, period_s: FloatArray, hop_s: float) -> FloatArray:
    energy = np.concatenate((np.zeros((1, power.shape[1])), np.cumsum(power, axis=0, dtype=float)))
    middle = np.arange(len(power)) + 0.5
    half = 0.5 * np.maximum(period_s / hop_s, 1.0)
    low = np.clip(middle - half, 0.0, len(power))
    high = np.clip(middle + half, 0.0, len(power))
    spread = _at(energy, high) - _at(energy, low)
    mean = spread / np.maximum(high - low, 0.5)[:, None]
    return np.asarray(10.0 * np.log10(np.maximum(mean, _SMALLEST_POWER)))


def _at(rows: FloatArray, position: FloatArray) -> FloatArray:
    below = np.minimum(position.astype(np.int64), len(rows) - 2)
    share = (position - below)[:, None]
    return np.asarray(rows[below] * (1.0 - share) + rows[below + 1] * share)


def _weighted_mean(level: FloatArray, hop_s: float) -> FloatArray:
    near = 2 * round(_NEAR_S / hop_s) + 1
    local = 10.0 * np.log10(uniform_filter1d(10.0 ** (level / 10.0), near, axis=0))
    noise = np.percentile(local, _NOISE_PERCENT, axis=0)
    out_of_noise = np.clip((local - noise - _ABOVE_NOISE_DB) / _SOFT_EDGE_DB, 0.0, 1.0)
    loudest = local.max(axis=1, keepdims=True)
    loud = np.clip((local - loudest + _BELOW_LOUDEST_DB) / _SOFT_EDGE_DB, 0.0, 1.0)
    # Without any pause the noise is unknown; then the loudest bands alone speak.
    weight = out_of_noise * loud + 1e-3 * loud
    return np.asarray(np.sum(weight * level, axis=1) / np.sum(weight, axis=1))
