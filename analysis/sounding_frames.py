"""Frames of 10 ms for hearing whether an instrument sounds: their pitch and outline.

Blocks of any length come in; what does not fill a frame yet is kept for the next one.
The pitch is the first high peak of the normalised square difference function
(McLeod and Wyvill, "A smarter way to find pitch", ICMC 2005; formula from memory).
"""

from functools import lru_cache
from typing import Final

import numpy as np
from numpy.typing import NDArray

from analysis.filters import decimated, low_pass

FloatArray = NDArray[np.float64]

BANDS: Final = 20
"""Bands of a spectrum's outline."""

_WORKING_RATE_HZ: Final = 12_000.0
_FRAME_S: Final = 0.01
_WINDOW_S: Final = 0.045  # nearly two periods of a double bass's E1
_LOWEST_HZ, _HIGHEST_HZ = 38.0, 4_000.0
_HALF_TAPS: Final = 16  # of the low-pass, per step of decimation

_CLEAR: Final = 0.8  # height of the peak above which a frame has a pitch
_FIRST_OF_HIGHEST: Final = 0.88

_BANDS_FROM_HZ, _BANDS_TO_HZ = 100.0, 5_000.0
_OUTLINE_DEPTH_DB: Final = 30.0


def frame_length_s(sample_rate_hz: int) -> float:
    """Return the length of a frame: 10 ms, to within a sample of the working rate."""
    rate_hz = _working_rate_hz(sample_rate_hz)
    return round(_FRAME_S * rate_hz) / rate_hz


def cut_frames(
    raw: FloatArray, slow: FloatArray, mono: FloatArray, sample_rate_hz: int
) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Bring the next samples to the working rate and cut them into overlapping frames.

    Parameters
    ----------
    raw, slow : (r,), (s,) arrays
        What was left before, at the full and at the working rate; empty at first.
    mono : (n,) array
        The next samples.
    sample_rate_hz : int

    Returns
    -------
    raw, slow : arrays
        What is left now.
    frames : (m, window) array
        A view of the complete ones.
    """
    raw, slow = _decimated(raw, slow, mono, _decimation(sample_rate_hz))
    rate_hz = _working_rate_hz(sample_rate_hz)
    hop, window = round(_FRAME_S * rate_hz), round(_WINDOW_S * rate_hz)
    count = max(0, (len(slow) - window) // hop + 1)
    if count == 0:
        return raw, slow, np.zeros((0, window))
    frames = np.lib.stride_tricks.sliding_window_view(slow, window)[: count * hop : hop]
    return raw, slow[count * hop :], frames


def pitch_cents(frames: FloatArray, sample_rate_hz: int) -> FloatArray:
    """Return the pitch of every frame, cents above 1 Hz; NaN where it has none, (m,)."""
    rate_hz = _working_rate_hz(sample_rate_hz)
    window = frames.shape[1]
    centred = frames - frames.mean(axis=1, keepdims=True)
    size = 1 << (2 * window - 1).bit_length()
    spectrum = np.fft.rfft(centred, size)
    lags = int(rate_hz / _LOWEST_HZ) + 2
    likeness = np.fft.irfft(np.abs(spectrum) ** 2, size)[:, :lags]
    energy = np.cumsum(np.pad(centred**2, ((0, 0), (1, 0))), axis=1)
    lag = np.arange(lags)
    both = energy[:, window - lag] + energy[:, -1:] - energy[:, lag]
    curve = 2.0 * likeness / np.maximum(both, 1e-20)

    before, here, beyond = curve[:, :-2], curve[:, 1:-1], curve[:, 2:]
    has_fallen = np.maximum.accumulate(curve < 0.0, axis=1)[:, 1:-1]
    peaks = (here > before) & (here >= beyond) & (here > 0.0) & has_fallen
    peaks[:, : max(0, int(rate_hz / _HIGHEST_HZ) - 1)] = False
    heights = np.where(peaks, here, 0.0)
    highest = heights.max(axis=1, keepdims=True)
    first = np.argmax(peaks & (heights >= _FIRST_OF_HIGHEST * highest), axis=1)
    row = np.arange(len(frames))
    low, top, high = before[row, first], here[row, first], beyond[row, first]
    bend = np.minimum(low - 2.0 * top + high, -1e-12)
    period = first + 1 + np.clip(0.5 * (low - high) / bend, -0.5, 0.5)
    cents = 1200.0 * np.log2(rate_hz / period)
    return np.where(highest[:, 0] >= _CLEAR, cents, np.nan)


def outlines(frames: FloatArray, sample_rate_hz: int) -> FloatArray:
    """Return each frame's spectrum against its own loudest band, dB, (m, bands)."""
    rate_hz = _working_rate_hz(sample_rate_hz)
    size = 1 << (frames.shape[1] - 1).bit_length()
    power = np.abs(np.fft.rfft(frames * np.hanning(frames.shape[1]), size)) ** 2
    top_hz = min(_BANDS_TO_HZ, 0.45 * rate_hz)
    edges = np.round(np.geomspace(_BANDS_FROM_HZ, top_hz, BANDS + 1) / rate_hz * size)
    bands = np.add.reduceat(power, edges.astype(np.intp), axis=1)[:, :BANDS]
    outline = 10.0 * np.log10(bands + 1e-12)
    return np.asarray(np.maximum(outline - outline.max(axis=1, keepdims=True), -_OUTLINE_DEPTH_DB))


def _decimation(sample_rate_hz: int) -> int:
    return max(1, round(sample_rate_hz / _WORKING_RATE_HZ))


def _working_rate_hz(sample_rate_hz: int) -> float:
    return sample_rate_hz / _decimation(sample_rate_hz)


@lru_cache(maxsize=8)
def _low_pass(decimation: int) -> FloatArray:
    return low_pass(_HALF_TAPS * decimation, 0.9 / decimation, 7.0)


def _decimated(
    raw: FloatArray, slow: FloatArray, mono: FloatArray, step: int
) -> tuple[FloatArray, FloatArray]:
    """Raw samples still needed, and all working samples not yet used."""
    if step == 1:
        return raw, np.concatenate([slow, mono])
    taps = _low_pass(step)
    raw = np.concatenate([raw, mono])
    fresh = max(0, (len(raw) - len(taps)) // step + 1)
    if fresh == 0:
        return raw, slow
    return raw[fresh * step :], np.concatenate([slow, decimated(raw, taps, step)])
