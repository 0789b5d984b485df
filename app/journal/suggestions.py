"""Markers that the measurements propose: which places, in what order, and what is left out.

A suggestion is a place where a measurement lies outside what it can be unsure of: a pitch
that was out in one direction, once or several times, or a stretch that rushes or drags.
Notes of one pitch out in the same direction make one suggestion; its marker belongs at the
note that is farthest out.

Left out is what the player has said already (a marker at one of its places) and what was
put aside for this passage. Of the rest at most :data:`MOST_OFFERED` are offered, the
clearest first.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

from app.journal.records import Marker

MOST_OFFERED = 5
"""More than a handful of remarks on one take helps nobody (a choice of design)."""

COVERS_WITHIN_S = 0.75
"""A marker this near speaks of the place: what a reaction time leaves open."""

LONGEST_PLACE_S = 15.0
"""A longer marked span speaks of the take, not of a place in it."""

_CLEAR_CENTS = 10.0
_CLEAR_PERCENT = 4.0
_SAME_PART = 0.03


class SuggestionKind(StrEnum):
    """What was measured at a place; stable codes."""

    FLAT = "flat"
    SHARP = "sharp"
    RUSHES = "rushes"
    DRAGS = "drags"


PITCH_KINDS = (SuggestionKind.FLAT, SuggestionKind.SHARP)


@dataclass(frozen=True, slots=True)
class MeasuredNote:
    """A note with its deviation, cents, and half of its 95 % interval.

    ``is_out``: outside every plausible target by more than its uncertainty.
    """

    start_s: float
    end_s: float
    name: str
    deviation_cents: float
    uncertainty_cents: float
    is_out: bool


@dataclass(frozen=True, slots=True)
class TempoStretch:
    """A stretch that is faster (+) or slower (-) than the take's mean tempo, in percent.

    ``uncertainty_percent`` is half of the 95 % interval, ``None`` where unknown.
    """

    start_s: float
    end_s: float
    change_percent: float
    uncertainty_percent: float | None = None


@dataclass(frozen=True, slots=True)
class Finding:
    """What the measurements say of one place, or of one pitch at several places.

    Attributes
    ----------
    kind : SuggestionKind
    subject : str
        The note's name; empty for a stretch of tempo.
    places : tuple of (start_s, end_s)
        In order of time.
    sizes, uncertainties : tuple of float or None
        At each place: cents or percent, signed; half of the 95 % interval.
    value, uncertainty : float, float or None
        Over all places.
    of_count : int
        How many notes of that pitch were measured in the take; 1 for a stretch.
    clearness : float
        For the order: how far the value lies outside its uncertainty.
    """

    kind: SuggestionKind
    subject: str
    places: tuple[tuple[float, float], ...]
    sizes: tuple[float, ...]
    uncertainties: tuple[float | None, ...]
    value: float
    uncertainty: float | None
    of_count: int
    clearness: float

    @property
    def key(self) -> str:
        """A name that tells it from the other findings of its take."""
        start_s = "" if self.subject else f"@{self.places[0][0]:.3f}"
        return f"{self.kind}:{self.subject}{start_s}"

    @property
    def worst(self) -> tuple[float, float]:
        """The place that is farthest out."""
        at = max(range(len(self.places)), key=lambda index: abs(self.sizes[index]))
        return self.places[at]


@dataclass(frozen=True, slots=True)
class Dismissal:
    """A suggestion the player has put aside, for a passage.

    Attributes
    ----------
    passage_id : str or None
        It holds for every take of this passage; ``None``: for ``take_id`` alone.
    take_id : str
        Where it was put aside.
    kind, subject
        As in :class:`Finding`.
    start_part, end_part : float
        Where in the played stretch, 0 to 1: takes at other tempos meet there again.
    """

    id: str
    passage_id: str | None
    take_id: str
    kind: SuggestionKind
    subject: str
    start_part: float
    end_part: float
    dismissed_at: datetime


def findings_of(
    notes: Sequence[MeasuredNote], stretches: Iterable[TempoStretch]
) -> tuple[Finding, ...]:
    """Collect what was measured outside its uncertainty, the clearest first.

    Parameters
    ----------
    notes : sequence of MeasuredNote
        All notes that were measured; open strings and what is left out not among them.
    stretches : iterable of TempoStretch
    """
    groups: dict[tuple[SuggestionKind, str], list[MeasuredNote]] = {}
    for note in notes:
        if not note.is_out or abs(note.deviation_cents) <= note.uncertainty_cents:
            continue
        kind = SuggestionKind.SHARP if note.deviation_cents > 0 else SuggestionKind.FLAT
        groups.setdefault((kind, note.name), []).append(note)
    found = [
        _of_notes(kind, group, sum(note.name == name for note in notes))
        for (kind, name), group in groups.items()
    ]
    found += [
        _of_stretch(stretch)
        for stretch in stretches
        if abs(stretch.change_percent) > (stretch.uncertainty_percent or 0.0)
    ]
    return tuple(sorted(found, key=lambda one: (-one.clearness, one.places[0])))


def _of_notes(kind: SuggestionKind, notes: list[MeasuredNote], of_count: int) -> Finding:
    notes = sorted(notes, key=lambda note: note.start_s)
    cents = [note.deviation_cents for note in notes]
    value, uncertainty = mean_with_uncertainty(cents, [note.uncertainty_cents for note in notes])
    outside = max(0.0, abs(value) - uncertainty)
    return Finding(
        kind=kind,
        subject=notes[0].name,
        places=tuple((note.start_s, note.end_s) for note in notes),
        sizes=tuple(cents),
        uncertainties=tuple(note.uncertainty_cents for note in notes),
        value=value,
        uncertainty=uncertainty,
        of_count=of_count,
        clearness=outside / _CLEAR_CENTS * math.sqrt(len(notes)),
    )


def _of_stretch(stretch: TempoStretch) -> Finding:
    rushes = stretch.change_percent > 0
    outside = abs(stretch.change_percent) - (stretch.uncertainty_percent or 0.0)
    return Finding(
        kind=SuggestionKind.RUSHES if rushes else SuggestionKind.DRAGS,
        subject="",
        places=((stretch.start_s, stretch.end_s),),
        sizes=(stretch.change_percent,),
        uncertainties=(stretch.uncertainty_percent,),
        value=stretch.change_percent,
        uncertainty=stretch.uncertainty_percent,
        of_count=1,
        clearness=outside / _CLEAR_PERCENT,
    )


def mean_with_uncertainty(
    values: Sequence[float], uncertainties: Sequence[float]
) -> tuple[float, float]:
    """Give a mean and half of its 95 % interval.

    It is the mean of just these values, so that their scatter says nothing against it. Their
    errors may have a common cause (the A they are held against) and are taken as fully
    correlated: the uncertainties add up linearly (JCGM 100:2008, 5.2.2, note 1), which is
    the most they can come to.

    Raises
    ------
    ValueError
        Without any value.
    """
    count = len(values)
    if count == 0:
        msg = "a mean needs a value"
        raise ValueError(msg)
    return math.fsum(values) / count, math.fsum(uncertainties) / count


def touches(marker: Marker, place: tuple[float, float]) -> bool:
    """Say whether a marker speaks of a place.

    It does where its moment or span lies no farther than :data:`COVERS_WITHIN_S` from the
    place, unless the span is longer than :data:`LONGEST_PLACE_S`.
    """
    start_s = marker.start_s
    end_s = start_s if marker.end_s is None else marker.end_s
    if end_s - start_s > LONGEST_PLACE_S:
        return False
    return start_s <= place[1] + COVERS_WITHIN_S and end_s >= place[0] - COVERS_WITHIN_S


def is_covered(finding: Finding, markers: Iterable[Marker]) -> bool:
    """Say whether a marker stands at one of a finding's places already."""
    return any(touches(marker, place) for marker in markers for place in finding.places)


def parts_of(place: tuple[float, float], played: tuple[float, float]) -> tuple[float, float]:
    """Give a place as parts, 0 to 1, of the stretch that was played."""
    start_s, end_s = played
    length_s = max(end_s - start_s, 1e-9)
    first, last = ((at - start_s) / length_s for at in place)
    return min(max(first, 0.0), 1.0), min(max(last, 0.0), 1.0)


def is_dismissed(
    finding: Finding,
    dismissals: Iterable[Dismissal],
    *,
    take_id: str,
    passage_id: str | None,
    played: tuple[float, float],
) -> bool:
    """Say whether a finding was put aside, in this take or another of its passage.

    A pitch that is out is known again by its name and direction, a stretch of tempo by
    its direction and the part of the passage it lies in.
    """
    first, last = parts_of(finding.worst, played)
    for dismissal in dismissals:
        if dismissal.passage_id is None:
            is_here = dismissal.take_id == take_id
        else:
            is_here = dismissal.passage_id == passage_id
        if not is_here or (dismissal.kind, dismissal.subject) != (finding.kind, finding.subject):
            continue
        if finding.kind in PITCH_KINDS:
            return True
        if first <= dismissal.end_part + _SAME_PART and last >= dismissal.start_part - _SAME_PART:
            return True
    return False
