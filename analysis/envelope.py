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
_VALUES_PER_BLOCK: Final = 60_000
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
    energy = _energy(source, should_stop)
    time_s = np.arange(int(source.duration_s / hop_s) + 1, dtype=np.float64) * hop_s
    level = np.empty_like(time_s)
    voiced = np.flatnonzero(np.isfinite(track.f0_hz)) if track is not None else None
    for first in range(0, len(time_s), _VALUES_PER_BLOCK):
        stop_if_asked(should_stop)
        middle_s = time_s[first : first + _VALUES_PER_BLOCK]
        half_s = 0.5 * _window_s(middle_s, track, voiced)
        spread = _energy_until(energy, middle_s + half_s) - _energy_until(energy, middle_s - half_s)
        mean = np.maximum(spread, 0.0) * _BIN_S / (2.0 * half_s)
        level[first : first + len(middle_s)] = 10.0 * np.log10(
            np.maximum(mean, 10.0 ** (_LOWEST_DBFS / 10.0))
        )
    return Envelope(time_s, level, hop_s)


def _energy(source: MonoSamples, should_stop: StopQuestion | None) -> FloatArray:
    """Return the sum of the bins' mean powers from the beginning up to each bin's edge."""
    bins = max(round(source.duration_s / _BIN_S), 1)
    energy = np.zeros(bins + 1)
    for first in range(0, bins, _BINS_PER_BLOCK):
        stop_if_asked(should_stop)
        last = min(first + _BINS_PER_BLOCK, bins)
        numbers = np.arange(first, last + 1)
        edges = np.rint(numbers * _BIN_S * source.sample_rate_hz).astype(np.int64)
        piece = source.read(int(edges[0]), int(edges[-1]))
        squares = np.concatenate(([0.0], np.cumsum(piece.astype(np.float64) ** 2)))
        at = edges - edges[0]
        power = np.diff(squares[at]) / np.maximum(np.diff(at), 1)
        energy[first + 1 : last + 1] = energy[first] + np.cumsum(power)
    return energy


def _energy_until(energy: FloatArray, time_s: FloatArray) -> FloatArray:
    # Outside the take there is silence, so the windows are not cut at its ends.
    position = np.clip(time_s / _BIN_S, 0.0, len(energy) - 1.0)
    below = np.minimum(position.astype(np.int64), len(energy) - 2)
    share = position - below
    return np.asarray(energy[below] + share * (energy[below + 1] - energy[below]))


def _window_s(
    time_s: FloatArray, track: PitchTrack | None, voiced: NDArray[np.int64] | None
) -> FloatArray:
    if track is None or voiced is None or not voiced.size:
        return np.full(time_s.shape, _UNPITCHED_WINDOW_S)
    frame = np.clip(np.rint(time_s / track.hop_s).astype(np.int64), 0, len(track.f0_hz) - 1)
    # the nearest voiced frame's pitch stands in where there is none
    after = np.clip(np.searchsorted(voiced, frame), 0, len(voiced) - 1)
    before = np.maximum(after - 1, 0)
    nearer = np.where(np.abs(voiced[before] - frame) < np.abs(voiced[after] - frame), before, after)
    period_s = 1.0 / track.f0_hz[voiced[nearer]]
    return np.asarray(period_s * np.ceil(_SHORTEST_WINDOW_S / period_s))
