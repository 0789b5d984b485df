"""Whether a marked problem is still there, as far as that can be measured.

A place was out, or dragged, when it was marked; the same place in a later take is held
against the same limit. Only what clears the limit by its own uncertainty is called one
or the other.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

import numpy as np

from analysis.note_matching import match_notes
from analysis.results import Alignment, JudgedNote, Measured, Tempo
from analysis.time_map import map_time

ALGORITHM = "still-there-1"
EARLY_S, LATE_S = 0.1, 0.4  # a key is pressed after what was heard
PAIRING_WINDOW_S = 0.25
TEMPO_LIMIT_PERCENT = 5.0
_HALF_OF_95 = 1.96
_REACH_S = 1.0


class Still(StrEnum):
    """What the measurements say."""

    STILL_THERE = "still there"
    GONE = "gone"
    NOT_CLEAR = "not clear"
    NOT_MEASURABLE = "not measurable"


@dataclass(frozen=True, slots=True)
class Reading95:
    """A signed number and half of its 95 % interval."""

    value: float
    uncertainty: float


@dataclass(frozen=True, slots=True)
class StillFinding:
    """A problem then and now; ``then`` and ``now`` are ``None`` where not measured."""

    word: Still
    then: Reading95 | None
    now: Reading95 | None
    place: str = ""


def intonation_then_and_now(
    notes_then: Sequence[JudgedNote],
    notes_now: Sequence[JudgedNote],
    alignment: Alignment,
    span_s: tuple[float, float],
    limit_cents: float,
) -> StillFinding:
    """Hold the note that was out at a marker against the same note in a later take.

    Parameters
    ----------
    notes_then, notes_now : sequence of JudgedNote
    alignment : Alignment
        From the earlier take to the later one.
    span_s : (start_s, end_s)
        The marker in the earlier take; both alike for a moment.
    limit_cents : float
        How far out is called out.

    Returns
    -------
    StillFinding
        About the note that was furthest out of those that sound at the marker or up to
        0.4 s before it.
    """
    near = [
        (i, note)
        for i, note in enumerate(notes_then)
        if note.note.start_s <= span_s[1] + EARLY_S and note.note.end_s >= span_s[0] - LATE_S
    ]
    measured = [
        (i, Reading95(note.deviation.value.deviation_cents, note.deviation.value.uncertainty_cents))
        for i, note in near
        if isinstance(note.deviation, Measured)
    ]
    if not measured:
        return StillFinding(Still.NOT_MEASURABLE, None, None)
    index, then = max(measured, key=lambda pair: abs(pair[1].value))
    place = notes_then[index].spelled or notes_then[index].name or ""
    partner = _partner(index, notes_then, notes_now, alignment)
    if partner is None or not isinstance(partner.deviation, Measured):
        return StillFinding(Still.NOT_MEASURABLE, then, None, place)
    deviation = partner.deviation.value
    now = Reading95(deviation.deviation_cents, deviation.uncertainty_cents)
    return StillFinding(_word(then, now, limit_cents, same_side=False), then, now, place)


def tempo_then_and_now(
    tempo_then: Tempo,
    tempo_now: Tempo,
    alignment: Alignment,
    span_s: tuple[float, float],
    limit_percent: float = TEMPO_LIMIT_PERCENT,
) -> StillFinding:
    """Hold the local tempo at a marker against that at the same place in a later take.

    Both are percent of their own take's mean tempo, so that a faster take is no change;
    positive is faster than the mean.
    """
    then = _local_percent(tempo_then, span_s)
    there = map_time(alignment, np.array(span_s, dtype=np.float64))
    now = _local_percent(tempo_now, (float(there[0]), float(there[1])))
    if then is None or now is None:
        return StillFinding(Still.NOT_MEASURABLE, then, now)
    return StillFinding(_word(then, now, limit_percent, same_side=True), then, now)


def _word(then: Reading95, now: Reading95, limit: float, *, same_side: bool) -> Still:
    """Judge by the limit; what was never measured as a problem cannot be gone."""
    if abs(then.value) - then.uncertainty <= limit:
        return Still.NOT_CLEAR
    other_side = same_side and then.value * now.value < 0
    if abs(now.value) - now.uncertainty > limit and not other_side:
        return Still.STILL_THERE
    if abs(now.value) + now.uncertainty < limit or (
        other_side and abs(now.value) - now.uncertainty > 0
    ):
        return Still.GONE
    return Still.NOT_CLEAR


def _partner(
    index: int,
    notes_then: Sequence[JudgedNote],
    notes_now: Sequence[JudgedNote],
    alignment: Alignment,
) -> JudgedNote | None:
    """Find the same written note in the later take."""
    start = np.array([note.note.start_s for note in notes_then], dtype=np.float64)
    pitch = _pitches(notes_then)
    other = np.array([note.note.start_s for note in notes_now], dtype=np.float64)
    pairs = match_notes(
        map_time(alignment, start), pitch, other, _pitches(notes_now), PAIRING_WINDOW_S
    )
    found = dict(pairs).get(index)
    return None if found is None else notes_now[found]


def _pitches(notes: Sequence[JudgedNote]) -> np.ndarray[tuple[int], np.dtype[np.float64]]:
    return np.array([np.nan if n.midi is None else n.midi for n in notes], dtype=np.float64)


def _local_percent(tempo: Tempo, span_s: tuple[float, float]) -> Reading95 | None:
    """Mean tempo of the beats around a place, as percent of the take's mean."""
    beat = tempo.beat_s
    inside = np.flatnonzero(
        (beat[:-1] <= span_s[1] + _REACH_S) & (beat[1:] >= span_s[0] - _REACH_S)
    )
    if not inside.size:
        return None
    first, last = int(inside[0]), int(inside[-1]) + 1
    bpm = 60.0 * (last - first) / float(beat[last] - beat[first])
    # The two ends are placed as well as the detector places onsets.
    floor = max(tempo.steadiness_floor_percent, 0.5)
    uncertainty = _HALF_OF_95 * floor / math.sqrt(last - first)
    return Reading95(100.0 * (bpm / tempo.mean_bpm - 1.0), uncertainty)
