"""The level of a single line, fine enough in time to place an attack."""

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from analysis.blocks import MonoSamples
from analysis.results import PitchTrack
from analysis.stopping import StopQuestion, stop_if_asked

FloatArray = NDArray[np.float64]

_BIN_S: Final = 0.0005
_BINS_PER_BLOCK: Final = 40_000
_SHORTEST_WINDOW_S: Final = 0.006
_UNPITCHED_WINDOW_S: Final = 0.010
_LOWEST_DBFS: Final = -100.0


@dataclass(frozen=True, slots=True)
class Envelope:
    """Level against time: (n,) seconds and dB relative to full scale, evenly spaced."""

    time_s: FloatArray
    level_dbfs: FloatArray
    hop_s: float


def level_envelope(
    source: MonoSamples,
    track: PitchTrack | None = None,
    *,
    hop_s: float = 0.001,
    should_stop: StopQuestion | None = None,
) -> Envelope:
    """Measure the short-time level with as little ripple and smearing as there can be.

    Where the pitch is known the window is a whole number of its periods (at least 6 ms,
    at least one period): the ripple within a period then cancels and a rise is smeared
    symmetrically, so the moment it passes half of its height stays where it was.

    Parameters
    ----------
    source : MonoSamples
        The take.
    track : PitchTrack, optional
        Its pitch; without it the window is 10 ms throughout.
    hop_s : float
        Distance of two values.
    should_stop : callable, optional
        Asked for every block.

    Returns
    -------
    Envelope
        From the first sample to the last; silence reads -100 dB.
    """
    bins = max(round(source.duration_s / _BIN_S), 1)
    edges = np.rint(np.arange(bins + 1) * _BIN_S * source.sample_rate_hz).astype(np.int64)
    power = np.empty(bins)
    for first in range(0, bins, _BINS_PER_BLOCK):
        stop_if_asked(should_stop)
        last = min(first + _BINS_PER_BLOCK, bins)
        piece = source.read(int(edges[first]), int(edges[last]))
        squares = np.concatenate(([0.0], np.cumsum(piece.astype(np.float64) ** 2)))
        at = edges[first : last + 1] - edges[first]
        power[first:last] = np.diff(squares[at]) / np.maximum(np.diff(at), 1)
    energy = np.concatenate(([0.0], np.cumsum(power)))
    time_s = np.arange(int(source.duration_s / hop_s) + 1, dtype=np.float64) * hop_s
    half_s = 0.5 * _window_s(time_s, track)
    grid = np.arange(bins + 1) * _BIN_S
    # Outside the take there is silence, so the windows are not cut at its ends.
    spread = np.interp(time_s + half_s, grid, energy) - np.interp(time_s - half_s, grid, energy)
    mean = np.maximum(spread, 0.0) * _BIN_S / (2.0 * half_s)
    level = 10.0 * np.log10(np.maximum(mean, 10.0 ** (_LOWEST_DBFS / 10.0)))
    return Envelope(time_s, level, hop_s)


def _window_s(time_s: FloatArray, track: PitchTrack | None) -> FloatArray:
    if track is None or not np.isfinite(track.f0_hz).any():
        return np.full(time_s.shape, _UNPITCHED_WINDOW_S)
    voiced = np.flatnonzero(np.isfinite(track.f0_hz))
    frame = np.clip(np.rint(time_s / track.hop_s).astype(np.int64), 0, len(track.f0_hz) - 1)
    # the nearest voiced frame's pitch stands in where there is none
    after = np.clip(np.searchsorted(voiced, frame), 0, len(voiced) - 1)
    before = np.maximum(after - 1, 0)
    nearer = np.where(np.abs(voiced[before] - frame) < np.abs(voiced[after] - frame), before, after)
    period_s = 1.0 / track.f0_hz[voiced[nearer]]
    return np.asarray(period_s * np.ceil(_SHORTEST_WINDOW_S / period_s))
