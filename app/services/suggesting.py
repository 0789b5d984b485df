"""Markers that the measurements propose, accepted or put aside by the player."""

import uuid
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from app.journal.failures import PlainFailure
from app.journal.practice_days import Clock
from app.journal.records import Marker, Take
from app.journal.suggestions import (
    MOST_OFFERED,
    Dismissal,
    Finding,
    MeasuredNote,
    SuggestionKind,
    TempoStretch,
    findings_of,
    is_covered,
    is_dismissed,
    parts_of,
)
from app.services.latest import Latest
from app.services.listening import ListeningService
from app.services.marking import MarkingService
from app.services.reading_views import NoReading, Reading
from app.services.readings import reading_of
from app.services.records_there import take_there
from app.services.suggestion_views import SuggestionsView
from app.services.suggestion_words import row_of
from app.services.undoing import Undoing
from app.services.views import NoteRow, PlaceRow, TakeView
from app.store.store import Store

_NORMAL_95 = 1.96
_MOST_REMEMBERED = 8
_OUT = "out"
_NOTHING = "Nothing was measured outside its uncertainty."
_ALL_SAID = "Nothing measured stands out that is not marked or put aside already."


@dataclass(frozen=True, slots=True)
class _Found:
    """What a measured take has to say, kept while its measurement is the same."""

    made_from: tuple[str, str]
    findings: tuple[Finding, ...]
    played: tuple[float, float]
    why_none: str


class SuggestingService:
    """Offers markers from what was measured; nothing is placed by itself."""

    def __init__(
        self,
        store: Store,
        clock: Clock,
        listening: ListeningService,
        marking: MarkingService,
        undoing: Undoing,
    ) -> None:
        self._store = store
        self._clock = clock
        self._listening = listening
        self._marking = marking
        self._undoing = undoing
        self._known: Latest[str, _Found] = Latest(_MOST_REMEMBERED)

    def for_take(self, take_id: str, *, show_all: bool = False) -> SuggestionsView:
        """Give the suggestions of a take, at most five unless all are asked for.

        Raises
        ------
        PlainFailure
            Where there is no such take.
        """
        take = take_there(self._store, take_id)
        found = self._found(take_id)
        dismissed = self._dismissed(take, found)
        markers = self._store.markers.for_take(take_id)
        open_ones = [
            finding
            for finding in found.findings
            if finding.key not in dismissed and not is_covered(finding, markers)
        ]
        offered = open_ones if show_all else open_ones[:MOST_OFFERED]
        sentence = ""
        if not offered:
            sentence = _ALL_SAID if found.findings else found.why_none
        categories = self._store.settings.get().categories
        return SuggestionsView(
            take_id=take_id,
            rows=tuple(row_of(finding, categories) for finding in offered),
            more_count=len(open_ones) - len(offered),
            dismissed_count=len(dismissed),
            sentence=sentence,
        )

    def findings(self, take_id: str) -> tuple[Finding, ...]:
        """Give everything that was measured outside its uncertainty, whatever is said of it."""
        return self._found(take_id).findings

    def accept(
        self, take_id: str, key: str, *, category: str | None = None, text: str | None = None
    ) -> Marker:
        """Place the marker that a suggestion proposes, as it is or in other words.

        Raises
        ------
        PlainFailure
            Where the take has no such suggestion.
        """
        duration_s = take_there(self._store, take_id).duration_s
        row = row_of(self._named(take_id, key), self._store.settings.get().categories)
        return self._marking.add(
            take_id,
            row.start_s,
            min(row.end_s, duration_s),
            category=row.category if category is None else category,
            text=row.text if text is None else text,
        )

    def dismiss(self, take_id: str, key: str) -> Dismissal:
        """Put a suggestion aside, for every take of the passage; it can be undone.

        Raises
        ------
        PlainFailure
            Where the take has no such suggestion.
        """
        take = take_there(self._store, take_id)
        finding = self._named(take_id, key)
        first, last = parts_of(finding.worst, self._found(take_id).played)
        dismissal = Dismissal(
            id=uuid.uuid4().hex,
            passage_id=take.passage_id,
            take_id=take_id,
            kind=finding.kind,
            subject=finding.subject,
            start_part=first,
            end_part=last,
            dismissed_at=self._clock(),
        )
        self._undoing.make("suggestion put aside", None, dismissal)
        return dismissal

    def bring_back(self, take_id: str) -> int:
        """Offer again what was put aside for the take's passage; says how many."""
        take = take_there(self._store, take_id)
        held = self._store.dismissals.that_hold_for(take_id, take.passage_id)
        for dismissal in held:
            self._undoing.make("suggestion brought back", dismissal, None)
        return len(held)

    def _found(self, take_id: str) -> _Found:
        """Give what was measured; placing a marker in a long take must not work it out again."""
        kept = self._store.measurements.headline(take_id)
        made_from = (kept.algorithm, kept.measured_at.isoformat()) if kept else ("", "")
        known = self._known.get(take_id)
        if known is not None and known.made_from == made_from:
            return known
        view = self._listening.open_take(take_id)
        stretches = _stretches(view.places, kept.summary if kept else {})
        found = _Found(
            made_from,
            findings_of(_measured(view.notes), stretches),
            played_stretch(view),
            _NOTHING if view.notes else view.notes_sentence,
        )
        self._known.put(take_id, found)
        return found

    def _dismissed(self, take: Take, found: _Found) -> set[str]:
        held = self._store.dismissals.that_hold_for(take.id, take.passage_id)
        return {
            finding.key
            for finding in found.findings
            if is_dismissed(
                finding, held, take_id=take.id, passage_id=take.passage_id, played=found.played
            )
        }

    def _named(self, take_id: str, key: str) -> Finding:
        for finding in self._found(take_id).findings:
            if finding.key == key:
                return finding
        raise PlainFailure("That suggestion is not there.", "Look at the suggestions again.")


def played_stretch(view: TakeView) -> tuple[float, float]:
    """Give from where to where was played: first to last note, tuning-up and talk left out."""
    played = [note for note in view.notes if not note.left_out]
    if not played:
        return 0.0, view.duration_s
    return played[0].start_s, max(note.end_s for note in played)


def _measured(notes: Sequence[NoteRow]) -> list[MeasuredNote]:
    # Open strings cannot be put right while playing: their tuning is told among the numbers.
    return [
        MeasuredNote(
            note.start_s,
            note.end_s,
            note.name,
            note.deviation.value,
            note.deviation.uncertainty or 0.0,
            note.verdict == _OUT,
        )
        for note in notes
        if isinstance(note.deviation, Reading) and not note.left_out and not note.is_open_string
    ]


def _stretches(places: Sequence[PlaceRow], summary: Mapping[str, object]) -> list[TempoStretch]:
    return [
        TempoStretch(
            place.start_s,
            place.end_s,
            place.reading.value,
            _tempo_uncertainty(place.end_s - place.start_s, summary),
        )
        for place in places
        if place.kind in (SuggestionKind.RUSHES, SuggestionKind.DRAGS)
        and isinstance(place.reading, Reading)
    ]


def _tempo_uncertainty(length_s: float, summary: Mapping[str, object]) -> float | None:
    """Half of the 95 % interval, in percent, that placing the onsets leaves open.

    A tempo over several beats is off by the errors of its first and last onset alone, so
    that the floor of one interval is divided by the number of intervals.
    """
    floor, bpm = (reading_of(summary, key) for key in ("steadiness_floor_percent", "mean_bpm"))
    if isinstance(floor, NoReading) or isinstance(bpm, NoReading) or bpm.value <= 0:
        return None
    beats = length_s * bpm.value / 60.0
    return _NORMAL_95 * floor.value / max(beats, 1.0)
