"""Beats of a take: from a stated tempo, from known beats, or from strong evidence."""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from analysis.pulse_tracking import PARTS, MetricPath, track_pulse
from analysis.results import FloatArray
from analysis.stopping import StopQuestion, stop_if_asked

FEWEST_BEATS = 4
# Cost an onset, less what played beats speak for the pulse: onsets without any pulse
# reach more than this in most cases, melodies played with rubato hardly ever.
LARGEST_MISFIT = 0.35
PLAYED_WEIGHT = 2.0
# Without an anchor: how much better than any other tempo, how few empty beats, and how
# fast an even row of notes may be before the beat could as well be every second note.
EVIDENCE_MARGIN = 0.45
MOST_EMPTY_BEATS = 0.25
EVEN_ROW_SHARE = 0.9
FASTEST_EVEN_ROW_BPM = 80.0

_TRIED_BPM = np.geomspace(36.0, 260.0, 33)
_TRIED_RANGE = 0.09
_EVIDENCE_ONSETS = 1500
_EMPTY_BEAT_COST = 1.0
_USUAL_BPM, _USUAL_SPREAD = 95.0, 0.6
_SAME_TEMPO = 0.15
_REFERENCE_REACH = 0.2
_FOLLOWED = 0.6

BoolArray = NDArray[np.bool_]


@dataclass(frozen=True, slots=True)
class Pulse:
    """Beats of a take, and the onsets they were placed by.

    Attributes
    ----------
    anchor : str
        ``"given"``, ``"reference"`` or ``"evidence"``.
    beat_s : (b,) array
        Consecutive beats, seconds, strictly increasing.
    is_played : (b,) array
        Which beats carry an onset; the others are interpolated.
    position_beats, onset_s : (m,) arrays
        All onsets on the pulse, in beats from the first beat and in seconds.
    """

    anchor: str
    beat_s: FloatArray
    is_played: BoolArray
    position_beats: FloatArray
    onset_s: FloatArray


def pulse_near(
    onset_s: FloatArray,
    weight: FloatArray,
    pulse_bpm: float,
    *,
    should_stop: StopQuestion | None = None,
) -> Pulse | None:
    """Track the pulse near a stated tempo.

    Parameters
    ----------
    onset_s, weight : (n,) arrays
        Strictly increasing seconds, and 0 to 1.
    pulse_bpm : float
        The stated beat; the local tempo may be a third away from it.
    should_stop : callable, optional
        Asked now and then.

    Returns
    -------
    Pulse or None
        None where the onsets do not follow such a beat.
    """
    path = track_pulse(onset_s, weight, 60.0 / pulse_bpm, should_stop=should_stop)
    pulse = _pulse_of_path("given", onset_s, path)
    if pulse is None:
        return None
    misfit = path.cost - PLAYED_WEIGHT * float(np.mean(pulse.is_played))
    return pulse if misfit <= LARGEST_MISFIT else None


def pulse_from_reference(onset_s: FloatArray, reference_s: FloatArray) -> Pulse | None:
    """Move known beats onto the onsets that play them.

    Parameters
    ----------
    onset_s : (n,) array
        Strictly increasing seconds.
    reference_s : (m,) array
        Beats known to a fraction of a beat.

    Returns
    -------
    Pulse or None
        None where fewer than four beats meet an onset within a fifth of a beat, or where
        they meet only by chance: beside a click at another tempo every onset is off by
        something else, while who follows beats is early or late by about the same.
    """
    reference = np.unique(np.asarray(reference_s, dtype=np.float64))
    if reference.size < FEWEST_BEATS:
        return None
    after = np.clip(np.searchsorted(onset_s, reference), 1, onset_s.size - 1)
    before_is_nearer = reference - onset_s[after - 1] < onset_s[after] - reference
    nearest = np.where(before_is_nearer, after - 1, after)
    offset = onset_s[nearest] - reference
    played = np.abs(offset) <= _REFERENCE_REACH * np.gradient(reference)
    played[1:] &= np.diff(nearest) > 0
    if np.count_nonzero(played) < FEWEST_BEATS:
        return None
    index = np.arange(reference.size)
    off_beats = (offset / np.gradient(reference))[played]
    if not _is_followed(off_beats, _chance_share(onset_s, reference), float(np.mean(played))):
        return None
    beat_s = reference + np.interp(index, index[played], offset[played])
    return Pulse("reference", beat_s, played, index[played].astype(np.float64), beat_s[played])


def _chance_share(onset_s: FloatArray, reference_s: FloatArray) -> float:
    """Share of the beats that would meet an onset if the two had nothing to do with each other."""
    inside = (onset_s >= reference_s[0]) & (onset_s <= reference_s[-1])
    per_beat = np.count_nonzero(inside) / (reference_s.size - 1)
    return min(1.0, 2.0 * _REFERENCE_REACH * per_beat)


def _is_followed(off_beats: FloatArray, chance: float, share: float) -> bool:
    """Whether beats that meet onsets do so together, by offsets that move little.

    Offsets by chance are spread evenly over the reach, and their steps have a median of
    0.29 of the whole reach (of two independent even ones: 1 - 1/sqrt(2)). Where hardly any
    beat meets an onset by chance, meeting them is evidence enough.
    """
    step = float(np.median(np.abs(np.diff(off_beats))))
    by_chance = 2.0 * _REFERENCE_REACH * (1.0 - math.sqrt(0.5))
    if step <= _FOLLOWED * by_chance:
        return True
    return step <= by_chance and share >= 1.0 - _FOLLOWED * (1.0 - chance)


def pulse_from_evidence(
    onset_s: FloatArray, weight: FloatArray, *, should_stop: StopQuestion | None = None
) -> Pulse | None:
    """Find the one pulse that the onsets leave no doubt about.

    Every usual tempo is tried; the best one must stand clear of all others, most of
    its beats must be played, and its notes must not be an even row that could as
    well be halves or doubles of the beat.

    Parameters
    ----------
    onset_s, weight : (n,) arrays
    should_stop : callable, optional
        Asked for every tempo.

    Returns
    -------
    Pulse or None
    """
    tried = []
    for bpm in _TRIED_BPM:
        stop_if_asked(should_stop)
        candidate = _candidate(onset_s[:_EVIDENCE_ONSETS], weight, float(bpm))
        if candidate is not None:
            tried.append(candidate)
    if not tried:
        return None
    best = min(tried, key=lambda candidate: candidate.cost)
    others = [c.cost for c in tried if abs(math.log(c.bpm / best.bpm)) > _SAME_TEMPO]
    is_clear = not others or min(others) - best.cost >= EVIDENCE_MARGIN
    # The beat of an even row is sure only where its notes are the beat and the double
    # beat would be too slow to be one.
    is_even_row = best.even_share > EVEN_ROW_SHARE and best.row_bpm > FASTEST_EVEN_ROW_BPM
    if not is_clear or is_even_row or best.empty_share > MOST_EMPTY_BEATS:
        return None
    path = track_pulse(onset_s, weight, 60.0 / best.bpm, should_stop=should_stop)
    return _pulse_of_path("evidence", onset_s, path)


@dataclass(frozen=True, slots=True)
class _Candidate:
    """A tempo that was tried.

    ``cost`` is a negative log probability an onset, ``even_share`` the share of the
    commonest interval among all, ``row_bpm`` the rate of notes that far apart.
    """

    bpm: float
    cost: float
    empty_share: float
    even_share: float
    row_bpm: float


def _candidate(onset_s: FloatArray, weight: FloatArray, bpm: float) -> _Candidate | None:
    """How well one tempo explains the onsets."""
    path = track_pulse(onset_s, weight[: onset_s.size], 60.0 / bpm, period_range=_TRIED_RANGE)
    pulse = _pulse_of_path("evidence", onset_s, path)
    if pulse is None:
        return None
    empty = int(np.count_nonzero(~pulse.is_played))
    mean_bpm = 60.0 * (pulse.beat_s.size - 1) / float(pulse.beat_s[-1] - pulse.beat_s[0])
    counts = np.bincount(np.diff(path.position))
    unusual = 0.5 * (math.log(mean_bpm / _USUAL_BPM) / _USUAL_SPREAD) ** 2
    return _Candidate(
        bpm=mean_bpm,
        cost=path.cost + _EMPTY_BEAT_COST * empty / onset_s.size + unusual,
        empty_share=empty / pulse.beat_s.size,
        even_share=float(counts.max() / counts.sum()),
        row_bpm=mean_bpm * PARTS / int(np.argmax(counts)),
    )


def _pulse_of_path(anchor: str, onset_s: FloatArray, path: MetricPath) -> Pulse | None:
    """Beats from onsets with metric positions; None if there are too few."""
    time = onset_s[path.onset_index]
    first = math.ceil(path.position[0] / PARTS)
    last = math.floor(path.position[-1] / PARTS)
    if last - first + 1 < FEWEST_BEATS:
        return None
    beat = np.arange(first, last + 1) * PARTS
    return Pulse(
        anchor=anchor,
        beat_s=np.interp(beat, path.position, time),
        is_played=np.isin(beat, path.position),
        position_beats=path.position / PARTS - first,
        onset_s=time,
    )
