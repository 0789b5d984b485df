"""True peak after ITU-R BS.1770: the largest level, between the samples too.

Only the few places are interpolated at which the sound can rise above the largest level
seen so far. What it can reach there follows from the samples and from how sharply they
bend: an interpolation is a straight line between two samples, and a weighted sum of second
differences.

References
----------
ITU-R BS.1770-4, annex 2.
"""

import math
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

import numpy as np

from analysis.blocks import SampleArray
from analysis.compiled import compiled
from analysis.filters import weights_by_phase
from analysis.loudness import blocks_of
from analysis.oversampling import TAPS_PER_PHASE, interpolation_filter
from analysis.results import FloatArray
from analysis.stopping import StopQuestion, stop_if_asked

_PEAK_RATE_HZ: Final = 192_000
_CHUNK_SAMPLES: Final = 64
_SAMPLES_AT_ONCE: Final = _CHUNK_SAMPLES << 11


def measure_true_peak_dbtp(
    samples: SampleArray, sample_rate_hz: float, *, should_stop: StopQuestion | None = None
) -> float:
    """Largest level between the samples too, in dB relative to full scale.

    Parameters
    ----------
    samples : (n,) or (n, channels) array
    sample_rate_hz : float
        The sound is brought to at least 192 kHz, or four times its rate if that is
        less, and a parabola laid through the largest value and its neighbours.
    should_stop : callable, optional
        Asked every few seconds of sound.

    Returns
    -------
    float
        dBTP; minus infinity for digital silence.

    References
    ----------
    ITU-R BS.1770-4, annex 2, which asks for at least four times at 48 kHz.
    """
    columns = samples[:, np.newaxis] if samples.ndim == 1 else samples
    factor = min(4, max(1, math.ceil(_PEAK_RATE_HZ / sample_rate_hz)))
    peak = 0.0
    for block in blocks_of(columns):
        stop_if_asked(should_stop)
        peak = max(peak, float(np.max(np.abs(block))))
    for channel in range(columns.shape[1]):
        peak = _interpolated_peak(columns[:, channel], factor, peak, should_stop)
    return 20 * math.log10(peak) if peak > 0 else -math.inf


@dataclass(frozen=True, slots=True)
class _Reach:
    """How far an interpolated sound can go: ``of_level * level + of_bend * bend``."""

    of_level: float
    of_bend: float

    @classmethod
    def of(cls, kernel: FloatArray, zero: int) -> "_Reach":
        """Tell it for a filter whose tap ``zero`` falls on the sample just before."""
        offset = np.arange(kernel.size) - zero
        after = float(kernel @ offset)
        line = np.where(offset == 0, kernel.sum() - after, 0.0) + np.where(offset == 1, after, 0.0)
        # What is left has no mean and no slope, so it is a sum of second differences.
        bends = np.cumsum(np.cumsum(kernel - line))
        return cls(float(np.abs(line).sum()), float(np.abs(bends).sum()))


@lru_cache(maxsize=4)
def _reach(factor: int) -> _Reach:
    """Reach of the oversampled sound with the crest of the parabola through it."""
    taps = np.pad(interpolation_filter(factor), 2 * factor)
    middle = taps.size // 2
    count = TAPS_PER_PHASE // 2 + 1
    steps = np.arange(-count, count + 2)

    def kernel(place: int) -> FloatArray:
        """Weights of the samples around for the value ``place`` steps after one of them."""
        return np.asarray(taps[np.clip(middle + place - steps * factor, 0, taps.size - 1)])

    crests = []
    for place in range(factor):
        value = _Reach.of(kernel(place), count)
        bend = _Reach.of(kernel(place - 1) - 2 * kernel(place) + kernel(place + 1), count)
        # A parabola rises over the largest of three values by an eighth of their bend at most.
        crests.append(_Reach(value.of_level + bend.of_level / 8, value.of_bend + bend.of_bend / 8))
    return _Reach(max(c.of_level for c in crests), max(c.of_bend for c in crests))


def _interpolated_peak(
    channel: SampleArray, factor: int, peak: float, should_stop: StopQuestion | None
) -> float:
    """Largest interpolated value of a channel, or ``peak`` if that is larger."""
    for first in range(0, channel.shape[0], _SAMPLES_AT_ONCE):
        stop_if_asked(should_stop)
        count = min(channel.shape[0] - first, _SAMPLES_AT_ONCE)
        peak = _peak_of_chunks(_with_margins(channel, first, count), factor, peak)
    return peak


def _with_margins(channel: SampleArray, first: int, count: int) -> FloatArray:
    """Return samples with a chunk before and after them, zeros outside the sound, in chunks."""
    whole = -(-count // _CHUNK_SAMPLES) * _CHUNK_SAMPLES
    piece = np.zeros(whole + 2 * _CHUNK_SAMPLES)
    begin = max(first - _CHUNK_SAMPLES, 0)
    end = min(first + whole + _CHUNK_SAMPLES, channel.shape[0])
    offset = begin - first + _CHUNK_SAMPLES
    piece[offset : offset + end - begin] = channel[begin:end]
    return piece


def _peak_of_chunks(piece: FloatArray, factor: int, peak: float) -> float:
    """Interpolate the chunks that can rise above ``peak``, the most promising first."""
    highest, sharpest = np.zeros((2, piece.size // _CHUNK_SAMPLES))
    _outline(piece, highest, sharpest)
    reach = _reach(factor)
    possible = reach.of_level * _with_neighbours(highest) + reach.of_bend * _with_neighbours(
        sharpest
    )
    order = np.argsort(possible)[::-1]
    phases = _phases(factor)
    for chunk in order:
        if possible[chunk] <= peak:
            break
        peak = max(peak, _crest_of_chunk(piece, (chunk + 1) * _CHUNK_SAMPLES, phases))
    return peak


@compiled
def _outline(piece: FloatArray, highest: FloatArray, sharpest: FloatArray) -> None:
    """Fill in the largest level and the largest second difference of each chunk."""
    for chunk in range(len(highest)):
        first = chunk * _CHUNK_SAMPLES
        level, bend = 0.0, 0.0
        for k in range(first, first + _CHUNK_SAMPLES):
            level = max(level, abs(piece[k]))
        for k in range(max(first, 1), min(first + _CHUNK_SAMPLES, len(piece) - 1)):
            bend = max(bend, abs(piece[k + 1] - 2.0 * piece[k] + piece[k - 1]))
        highest[chunk], sharpest[chunk] = level, bend


@compiled
def _crest_of_chunk(piece: FloatArray, start: int, phases: FloatArray) -> float:
    """Highest crest of the parabolas through the oversampled values of a chunk.

    ``phases`` is (taps, factor): the weights of the samples around for each of the values
    that follow one of them.
    """
    taps, factor = phases.shape
    # a sample more on each side: a crest may lie on the chunk's edge
    begin, count = start - 1 - taps // 2, _CHUNK_SAMPLES + 2
    dense = np.zeros((factor, count))
    for phase in range(factor):
        row = dense[phase]
        for tap in range(taps):
            weight, around = phases[tap, phase], piece[begin + tap : begin + tap + count]
            for k in range(count):
                row[k] += weight * around[k]
    highest, before, middle = 0.0, np.inf, np.inf  # before the first there is no crest
    for k in range(count):
        for phase in range(factor):
            after = abs(dense[phase, k])
            bend = before - 2.0 * middle + after
            if middle >= before and middle >= after and bend < 0.0:
                lean = before - after
                highest = max(highest, middle - lean * lean / (8.0 * bend))
            before, middle = middle, after
    return highest


@lru_cache(maxsize=4)
def _phases(factor: int) -> FloatArray:
    return weights_by_phase(interpolation_filter(factor), factor)


def _with_neighbours(chunks: FloatArray) -> FloatArray:
    """Largest of each inner chunk and the two beside it, (n - 2,)."""
    return np.asarray(np.maximum(np.maximum(chunks[:-2], chunks[1:-1]), chunks[2:]))
