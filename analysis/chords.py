"""Two strings sounding together: found in the spectrum of a note, both pitches read.

An autocorrelation cannot tell two strings from one: a fifth repeats after a common
period, an octave under the lower string, and looks like one low note. The spectrum tells
them apart: the partials of two strings lie on two ladders, and a low note whose first,
fifth and seventh partials are all missing is not a note.
"""

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from analysis.blocks import MonoSamples
from analysis.partials import Peaks, find_partials, lacks_first_rungs, rungs_of

FloatArray = NDArray[np.float64]
BoolArray = NDArray[np.bool_]

_LONGEST_WINDOW_S: Final = 0.25
SHORTEST_CHORD_S: Final = 0.1
_FEWEST_PERIODS: Final = 8.0
_FEWEST_HOLLOW_PERIODS: Final = 4.0
_BEAT_MOMENTS: Final = 7
_BEATS_BACK: Final = 0.05  # -26 dB; a faint octave below a flute lies at -40
_LADDER_RUNGS: Final = 12
_CANDIDATE_RUNGS: Final = 4
_LEAST_EXPLAINED: Final = 0.9
_LEAST_OWN: Final = 0.07
_NEAREST_RATIO: Final = 1.08
# A vibrato smears partials so that one note looks like two nearly an octave apart.
_NEAR_HARMONIC: Final = 0.06
_LEAST_GAIN: Final = 0.06
_MOST_OFF_LADDER: Final = 0.01
# Pairs of rungs of a common ladder: fifth, fourth, sixths, thirds.
_LADDERS: Final = ((2, 3), (3, 4), (3, 5), (4, 5), (5, 6), (5, 8))


@dataclass(frozen=True, slots=True)
class Chord:
    """Two pitches, the lower first, in Hz.

    ``lower_db`` and ``upper_db`` are the levels of the partials each string has to itself,
    against each other only.
    """

    lower_hz: float
    upper_hz: float
    lower_db: float = 0.0
    upper_db: float = 0.0

    @property
    def softer_hz(self) -> float:
        """The pitch of the softer string."""
        return self.lower_hz if self.lower_db < self.upper_db else self.upper_hz

    @property
    def apart_db(self) -> float:
        """By how much the softer string is softer."""
        return abs(self.lower_db - self.upper_db)


SEVERAL: Final = Chord(0.0, 0.0)
"""Notes that sound together and whose pitches cannot be told."""


def find_chord(
    source: MonoSamples, start_s: float, end_s: float, floor_hz: float, ceiling_hz: float
) -> Chord | None:
    """Look for two strings in the middle of a steady stretch.

    Parameters
    ----------
    source : MonoSamples
        The take.
    start_s, end_s : float
        The stretch, at least 100 ms.
    floor_hz, ceiling_hz : float
        Range of the instrument.

    Returns
    -------
    Chord or None
        ``None`` where one pitch explains the spectrum, or two do not (for a unison or an
        octave see :func:`analysis.blends.find_blend`); :data:`SEVERAL` for three notes.
    """
    span_s = min(end_s - start_s, _LONGEST_WINDOW_S)
    if span_s < max(SHORTEST_CHORD_S, _FEWEST_PERIODS / (2.0 * floor_hz)):
        return None
    # Towards the end: what the room still holds of the note before has died away there.
    middle_s = end_s - 0.5 * span_s - 0.2 * (end_s - start_s - span_s)
    peaks = find_partials(source, middle_s, span_s, floor_hz)
    if len(peaks.hz) < 3:
        return None
    chord = _two_pitches(peaks, floor_hz, ceiling_hz)
    if chord is None:
        return None
    lower, upper = (rungs_of(peaks, hz) for hz in (chord.lower_hz, chord.upper_hz))
    own = (np.where(upper > 0, 0, lower), np.where(lower > 0, 0, upper))
    if any(lacks_first_rungs(rungs) for rungs in own):
        return SEVERAL
    return _with_levels(peaks, chord)


def is_hollow(source: MonoSamples, start_s: float, end_s: float, f0_hz: float) -> bool:
    """Whether a pitch is only the common period of several notes that sound together.

    Notes that stand in small ratios, a just triad or a fourth, repeat together after a
    common period. No string vibrates with it: its first partial is missing, and with
    that its seventh, eleventh and thirteenth, which no small ratio reaches.

    Parameters
    ----------
    source : MonoSamples
        The take.
    start_s, end_s : float
        A stretch of one pitch.
    f0_hz : float
        That pitch.
    """
    span_s = min(end_s - start_s, _LONGEST_WINDOW_S)
    if span_s < _FEWEST_HOLLOW_PERIODS / f0_hz:
        return False
    peaks = find_partials(source, 0.5 * (start_s + end_s), span_s, f0_hz)
    rungs = rungs_of(peaks, f0_hz)
    if len(peaks.hz) < 3 or float(np.sum(peaks.power[rungs > 0])) < _LEAST_EXPLAINED:
        return False
    return lacks_first_rungs(rungs)


def has_sub_octave(source: MonoSamples, start_s: float, end_s: float, f0_hz: float) -> bool:
    """Whether the partials of the octave below come and go between those of a pitch.

    So it is while the first partials of two strings in unison cancel. A blown or bowed
    single note may have a faint octave below all along; two strings bring its first partial
    back to nearly full strength within the beat.
    """
    span_s = min(end_s - start_s, _LONGEST_WINDOW_S)
    if span_s < 2.0 * _FEWEST_HOLLOW_PERIODS / f0_hz:
        return False
    peaks = find_partials(source, 0.5 * (start_s + end_s), span_s, 0.5 * f0_hz)
    if not {1, 2, 3, 5} <= set(rungs_of(peaks, 0.5 * f0_hz).tolist()):
        return False
    middles_s = np.linspace(start_s + 0.5 * span_s, end_s - 0.5 * span_s, _BEAT_MOMENTS)
    return any(_first_rung(source, m, span_s, 0.5 * f0_hz) >= _BEATS_BACK for m in middles_s)


def _first_rung(source: MonoSamples, middle_s: float, span_s: float, f0_hz: float) -> float:
    """Amplitude of the first partial at a moment, as a share of the strongest one's."""
    peaks = find_partials(source, middle_s, span_s, f0_hz)
    first = peaks.power[rungs_of(peaks, f0_hz) == 1]
    return float(np.max(first, initial=0.0) / np.max(peaks.power, initial=1e-30))


def _with_levels(peaks: Peaks, chord: Chord) -> Chord:
    lower, upper = (rungs_of(peaks, hz) > 0 for hz in (chord.lower_hz, chord.upper_hz))
    levels = [
        10.0 * np.log10(max(float(np.sum(peaks.power[own] ** 2)), 1e-12))
        for own in (lower & ~upper, upper & ~lower)
    ]
    return Chord(chord.lower_hz, chord.upper_hz, *levels)


def _two_pitches(peaks: Peaks, floor_hz: float, ceiling_hz: float) -> Chord | None:
    ladders = _Ladders.of(peaks, _candidates(peaks, floor_hz, ceiling_hz))
    single = _best_single(peaks, ladders)
    if single is None:
        return _best_pair(peaks, ladders, 0.0)
    on_ladder = _on_common_ladder(peaks, single, ceiling_hz, floor_hz)
    if on_ladder is not None:
        return on_ladder
    explained = float(np.sum(peaks.power[rungs_of(peaks, single) > 0]))
    return _best_pair(peaks, ladders, explained)


def _candidates(peaks: Peaks, floor_hz: float, ceiling_hz: float) -> FloatArray:
    strongest = peaks.hz[np.argsort(peaks.power)[::-1][:10]]
    all_of_them = np.sort((strongest[:, None] / np.arange(1, _CANDIDATE_RUNGS + 1)).ravel())
    inside = all_of_them[(all_of_them >= floor_hz) & (all_of_them <= ceiling_hz)]
    if not inside.size:
        return inside
    apart = np.concatenate(([True], np.diff(inside) > 0.008 * inside[1:]))
    return inside[apart]


@dataclass(frozen=True, slots=True)
class _Ladders:
    """Which peaks stand on the ladder of each of several fundamentals.

    ``f0_hz`` is (n,), ``rungs`` (n, peaks) with 0 where a peak is not on the ladder,
    ``complete`` (n,) the share of the first rungs, up to the highest seen, that are there.
    """

    f0_hz: FloatArray
    rungs: NDArray[np.int64]
    complete: FloatArray

    @classmethod
    def of(cls, peaks: Peaks, f0_hz: FloatArray) -> "_Ladders":
        rungs = rungs_of(peaks, f0_hz[:, None])
        first = np.arange(1, _LADDER_RUNGS + 1)
        seen = np.any(rungs[:, :, None] == first, axis=1)
        highest = np.max(np.where(seen, first, 0), axis=1, initial=0)
        return cls(f0_hz, rungs, np.count_nonzero(seen, axis=1) / np.maximum(highest, 1))


def _best_single(peaks: Peaks, ladders: _Ladders) -> float | None:
    value = (ladders.rungs > 0) @ peaks.power * (0.5 + 0.5 * ladders.complete)
    if not np.any(value > 0.0):
        return None
    return float(ladders.f0_hz[np.argmax(value)])


def _on_common_ladder(
    peaks: Peaks, single_hz: float, ceiling_hz: float, floor_hz: float
) -> Chord | None:
    """Find the two strings of which the one pitch is only the common ladder."""
    for base_hz in (single_hz, single_hz / 2.0, single_hz / 3.0):
        rungs = rungs_of(peaks, base_hz)
        if float(np.sum(peaks.power[rungs > 0])) < _LEAST_EXPLAINED:
            continue
        for first_rungs in (1, 2):
            for p, q in _LADDERS:
                if q * base_hz > ceiling_hz or p * base_hz < floor_hz:
                    continue
                if _two_strings(peaks, rungs, (p, q), first_rungs):
                    return Chord(
                        _refined(peaks, p * base_hz, q * base_hz),
                        _refined(peaks, q * base_hz, p * base_hz),
                    )
    return None


def _two_strings(
    peaks: Peaks, rungs: NDArray[np.int64], ladder: tuple[int, int], first_rungs: int
) -> bool:
    p, q = ladder
    if not (_begins(rungs, p, first_rungs) and _begins(rungs, q, first_rungs)):
        return False
    on_p, on_q = (rungs > 0) & (rungs % p == 0), (rungs > 0) & (rungs % q == 0)
    off = float(np.sum(peaks.power[(rungs > 0) & ~on_p & ~on_q]))
    own = (np.sum(peaks.power[on_p & ~on_q]), np.sum(peaks.power[on_q & ~on_p]))
    return off <= _MOST_OFF_LADDER and min(own) >= _LEAST_OWN


def _begins(rungs: NDArray[np.int64], step: int, first_rungs: int) -> bool:
    """Whether one of the first rungs of a string's ladder is there."""
    return bool({step * k for k in range(1, first_rungs + 1)} & set(rungs.tolist()))


def _best_pair(peaks: Peaks, ladders: _Ladders, single_explains: float) -> Chord | None:
    if single_explains >= 1.0 - _LEAST_GAIN:
        return None
    begun = np.any((ladders.rungs == 1) | (ladders.rungs == 2), axis=1)
    whole = np.flatnonzero((ladders.complete >= 0.5) & begun)
    if len(whole) < 2:
        return None
    f0_hz, complete = ladders.f0_hz[whole], ladders.complete[whole]
    on = (ladders.rungs[whole] > 0).astype(np.float64)
    power = on @ peaks.power
    shared = (on * peaks.power) @ on.T
    own = np.minimum(power[:, None], power[None, :]) - shared
    both = power[:, None] + power[None, :] - shared
    ratio = f0_hz[None, :] / f0_hz[:, None]
    near_harmonic = np.abs(np.log2(ratio / np.maximum(np.rint(ratio), 1.0))) < _NEAR_HARMONIC
    likely = (ratio >= _NEAREST_RATIO) & ~near_harmonic
    likely &= (own >= _LEAST_OWN) & (both >= _LEAST_EXPLAINED)
    if not likely.any():
        return None
    value = np.where(likely, both * (0.5 + 0.25 * (complete[:, None] + complete)), 0.0)
    low, high = np.unravel_index(int(np.argmax(value)), value.shape)
    low_hz, high_hz = float(f0_hz[low]), float(f0_hz[high])
    return Chord(_refined(peaks, low_hz, high_hz), _refined(peaks, high_hz, low_hz))


def _refined(peaks: Peaks, f0_hz: float, other_hz: float) -> float:
    """Fundamental that fits the partials which the other string does not share."""
    for _ in range(2):
        rungs = rungs_of(peaks, f0_hz)
        other = np.rint(peaks.hz / other_hz)
        shared = np.abs(peaks.hz - other * other_hz) < 1.5 * peaks.bin_hz
        mine = (rungs > 0) & (rungs <= 8) & ~shared
        if not mine.any():
            return f0_hz
        number = rungs[mine]
        weight = peaks.power[mine]
        f0_hz = float(np.sum(weight * number * peaks.hz[mine]) / np.sum(weight * number**2))
    return f0_hz
