"""Ear and measurement beside each other: where both say something, and where only one does.

The rule. A marker and a measured place *agree* where the marker stands at the place (see
:func:`app.journal.suggestions.touches`) and its category can be meant by what was
measured: *intonation* and *shift* by a pitch, *rhythm* by a tempo, *other* and every
category of the player's own by both; *sound*, *string crossing*, *memory* and
*expression* by neither, since nothing here measures them.

A measured place with such a marker is a **hit**, one without is **missed**; a marker
without such a place is **heard only**, which says nothing against it: the ear hears much
that is not measured. Only the player's own markers, placed while the measurements were hidden,
count. One span may speak of several notes, so that a marker can stand for more than one hit.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime

from app.journal.kinds import DEFAULT_CATEGORIES, Author
from app.journal.records import Marker
from app.journal.suggestions import PITCH_KINDS, Finding, SuggestionKind, touches

_PITCH_WORDS = ("intonation", "shift")
_TEMPO_WORDS = ("rhythm",)
_ANYTHING = "other"


@dataclass(frozen=True, slots=True)
class FirstListen:
    """A take that was listened to without its measurements.

    ``began_at``: since when the ear came first; ``shown_at``: when they were shown.
    """

    take_id: str
    began_at: datetime
    shown_at: datetime


@dataclass(frozen=True, slots=True)
class MeasuredPlace:
    """One place of a finding: ``size`` in cents or percent, signed."""

    kind: SuggestionKind
    subject: str
    start_s: float
    end_s: float
    size: float
    uncertainty: float | None


@dataclass(frozen=True, slots=True)
class Hit:
    """A measured place and the markers that speak of it."""

    place: MeasuredPlace
    markers: tuple[Marker, ...]


@dataclass(frozen=True, slots=True)
class Agreement:
    """Where ear and measurement meet; all in order of time."""

    hits: tuple[Hit, ...]
    missed: tuple[MeasuredPlace, ...]
    heard_only: tuple[Marker, ...]


def measured_places(findings: Iterable[Finding]) -> tuple[MeasuredPlace, ...]:
    """Give the single places of findings, in order of time."""
    places = [
        MeasuredPlace(finding.kind, finding.subject, start_s, end_s, size, uncertainty)
        for finding in findings
        for (start_s, end_s), size, uncertainty in zip(
            finding.places, finding.sizes, finding.uncertainties, strict=True
        )
    ]
    return tuple(sorted(places, key=lambda place: (place.start_s, place.end_s)))


def placed_by_ear(
    markers: Iterable[Marker], began_at: datetime, shown_at: datetime | None = None
) -> tuple[Marker, ...]:
    """Give the player's own markers that were placed while nothing measured was shown."""
    return tuple(
        marker
        for marker in markers
        if marker.author is Author.SELF
        and began_at <= marker.created_at
        and (shown_at is None or marker.created_at <= shown_at)
    )


def can_mean(category: str, kind: SuggestionKind) -> bool:
    """Say whether a category can be meant by what was measured."""
    word = category.strip().lower()
    if word == _ANYTHING or word not in DEFAULT_CATEGORIES:
        return True
    return word in (_PITCH_WORDS if kind in PITCH_KINDS else _TEMPO_WORDS)


def agreement(places: Sequence[MeasuredPlace], markers: Sequence[Marker]) -> Agreement:
    """Hold markers against measured places; see the rule above.

    Parameters
    ----------
    places : sequence of MeasuredPlace
    markers : sequence of Marker
        Those placed by ear alone.
    """
    hits: list[Hit] = []
    missed: list[MeasuredPlace] = []
    speaking: set[str] = set()
    for place in sorted(places, key=lambda one: (one.start_s, one.end_s)):
        found = tuple(
            marker
            for marker in markers
            if can_mean(marker.category, place.kind)
            and touches(marker, (place.start_s, place.end_s))
        )
        speaking.update(marker.id for marker in found)
        if found:
            hits.append(Hit(place, found))
        else:
            missed.append(place)
    alone = [marker for marker in markers if marker.id not in speaking]
    return Agreement(
        tuple(hits), tuple(missed), tuple(sorted(alone, key=lambda marker: marker.start_s))
    )
