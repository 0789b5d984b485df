"""A passage note by note and day by day, on the notes of its score or of a reference take."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from typing import TYPE_CHECKING, Literal

import numpy as np

from app.journal.failures import PlainFailure
from app.journal.records import Passage, Take
from app.journal.scores import Score
from app.services.comparing import ComparingService
from app.services.lanes import CERTAIN_WITHIN_CENTS, deviation_reading
from app.services.latest import Latest
from app.services.map_rows import MapCell, MapNote, MapRow, weeks_of
from app.services.reading_views import Reading
from app.services.records_there import passage_there
from app.services.score_keeping import ScoreShelf
from app.services.stopping import (
    Progress,
    ShouldStop,
    never_stop,
    no_progress,
    part_of,
    stop_if,
)
from app.services.wording import short_day_text
from app.store.store import Store

if TYPE_CHECKING:
    from analysis.results import JudgedNote, ScoreReading

_MOST_KEPT = 500
_FEWEST_WRITTEN = 2


@dataclass(frozen=True, slots=True)
class NoteMapView:
    """``takes`` has a row a take in the order played, ``weeks`` the medians of each week.

    ``axis`` says whose notes they are: those of the score, or of the reference take.
    """

    passage: Passage
    reference_id: str
    reference_day: date
    notes: tuple[MapNote, ...]
    takes: tuple[MapRow, ...]
    weeks: tuple[MapRow, ...]
    left_out: tuple[str, ...]
    sentence: str = ""
    axis: Literal["score", "take"] = "take"


class NoteMapService:
    """Lays the takes of a passage note against note; long the first time."""

    def __init__(
        self, store: Store, comparing: ComparingService, shelf: ScoreShelf | None = None
    ) -> None:
        self._store = store
        self._comparing = comparing
        self._shelf = shelf
        self._kept: Latest[tuple[str, ...], dict[int, MapCell] | str] = Latest(_MOST_KEPT)

    def of_passage(
        self,
        passage_id: str,
        reference_id: str | None = None,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> NoteMapView:
        """Give the map of a passage.

        Parameters
        ----------
        passage_id : str
        reference_id : str, optional
            The take that the others are laid against; without it :meth:`reference_of` all
            measured ones. Its notes are the axis, unless it was held against the passage's
            score: then all notes of the score are.

        Raises
        ------
        PlainFailure
            Where the passage or the take is not there, or nothing is measured yet.
        """
        passage = passage_there(self._store, passage_id)
        takes, stamps = self._measured(self._store.takes.list(passage_id=passage_id))
        reference = self._reference(takes, reference_id)
        played = self._comparing.notes_of(reference.id)
        written = self._written(passage, reference, played, should_stop)
        notes = written.notes if written is not None else _played_notes(played)
        rows, left_out = [], []
        for number, take in enumerate(takes):
            stop_if(should_stop)
            key = (reference.id, stamps[reference.id], take.id, stamps[take.id])
            step = part_of(progress, number / len(takes), (number + 1) / len(takes))
            found = self._cells(key, reference, take, step, should_stop)
            if isinstance(found, str):
                left_out.append(found)
            else:
                by_place = found if written is None else written.placed(found)
                cells = tuple(by_place.get(index) for index in range(len(notes)))
                day = take.practice_day
                rows.append(MapRow(short_day_text(day), day, day, (take.id,), cells))
            progress((number + 1) / len(takes))
        return NoteMapView(
            passage,
            reference.id,
            reference.practice_day,
            notes,
            tuple(rows),
            weeks_of(rows),
            tuple(left_out),
            axis="take" if written is None else "score",
        )

    def reference_of(self, takes: Sequence[Take]) -> str:
        """Choose the take to lay others against: the one that most lie against already.

        So a take more is one alignment more; the latest where there is none such.
        """
        counts = self._store.alignments.counts([take.id for take in takes])
        known = max(reversed(takes), key=lambda take: counts.get(take.id, 0))
        return known.id if 2 * counts.get(known.id, 0) >= len(takes) - 1 else takes[-1].id

    def _written(
        self,
        passage: Passage,
        reference: Take,
        played: "Sequence[JudgedNote]",
        should_stop: ShouldStop,
    ) -> "_WrittenAxis | None":
        """Give the notes of the score, if the reference take was held against them."""
        if self._shelf is None:
            return None
        try:
            score = self._shelf.of_passage(passage, should_stop)
        except PlainFailure:  # a score that is gone is no axis
            return None
        reading = self._comparing.score_reading(reference.id) if score is not None else None
        if score is None or reading is None:
            return None
        return written_axis(score, reading, played)

    def _measured(self, takes: Iterable[Take]) -> tuple[list[Take], dict[str, str]]:
        """Give the takes that were measured, and when each was."""
        takes = tuple(takes)
        headlines = self._store.measurements.headlines([take.id for take in takes])
        stamps = {
            take_id: kept.measured_at.isoformat()
            for take_id, kept in headlines.items()
            if not kept.failure
        }
        return [take for take in takes if take.id in stamps], stamps

    def _reference(self, takes: Sequence[Take], reference_id: str | None) -> Take:
        if not takes:
            raise PlainFailure(
                "No take of this passage is measured yet.", "Wait for that, or measure one."
            )
        reference_id = reference_id or self.reference_of(takes)
        for take in takes:
            if take.id == reference_id:
                return take
        raise PlainFailure(
            "That take is not a measured one of this passage.", "Choose another one."
        )

    def _cells(
        self,
        key: tuple[str, ...],
        reference: Take,
        take: Take,
        progress: Progress,
        should_stop: ShouldStop,
    ) -> dict[int, MapCell] | str:
        """Give the take's notes by their number in the reference, or why there are none."""
        cells = self._kept.get(key)
        if cells is None:
            cells = self._matched(reference, take, progress, should_stop)
            self._kept.put(key, cells)
        return cells

    def _matched(
        self, reference: Take, take: Take, progress: Progress, should_stop: ShouldStop
    ) -> dict[int, MapCell] | str:
        notes = self._comparing.notes_of(take.id)
        if take.id == reference.id:
            pairs = [(at, at) for at in range(len(notes))]
        else:
            found = self._comparing.comparison(reference.id, take.id, progress, should_stop)
            if found.change is None:
                return f"{short_day_text(take.practice_day)} does not match the reference take."
            pairs = [(pair.a_index, pair.b_index) for pair in found.change.notes]
        cells = {}
        for at, index in pairs:
            reading = deviation_reading(notes[index])
            if isinstance(reading, Reading):
                half = reading.uncertainty
                certain = half is not None and half <= CERTAIN_WITHIN_CENTS
                cells[at] = MapCell(reading.value, half, certain)
        return cells


@dataclass(frozen=True, slots=True)
class _WrittenAxis:
    """Notes of a score; ``place`` has their numbers by those of the reference take's notes."""

    notes: tuple[MapNote, ...]
    place: Mapping[int, int]

    def placed(self, cells: Mapping[int, MapCell]) -> dict[int, MapCell]:
        """Put cells by the reference take's notes where their written notes are."""
        return {self.place[index]: cell for index, cell in cells.items() if index in self.place}


def written_axis(
    score: Score, reading: "ScoreReading", played: "Sequence[JudgedNote]"
) -> _WrittenAxis | None:
    """Lay the axis along a score; none where the take shares fewer than two notes with it."""
    written = [note for note in score.notes if not note.grace]
    number = {_key(note.onset_beats, note.midi_pitch): at for at, note in enumerate(written)}
    place, at_s = {}, {}
    for pair in reading.pairs:
        found = number.get(_key(pair.written.onset_beats, pair.written.midi))
        if found is not None:
            place[pair.note_index] = found
            at_s[written[found].onset_beats] = played[pair.note_index].note.start_s
    if len(at_s) < _FEWEST_WRITTEN:
        return None
    beats = sorted(at_s)
    start_s = np.interp([note.onset_beats for note in written], beats, [at_s[b] for b in beats])
    notes = tuple(
        MapNote(at, note.name, note.midi_pitch, float(start))
        for at, (note, start) in enumerate(zip(written, start_s, strict=True))
    )
    return _WrittenAxis(notes, place)


def _key(onset_beats: float, midi: int) -> tuple[int, int]:
    return round(onset_beats * 960), midi


def _played_notes(played: "Sequence[JudgedNote]") -> tuple[MapNote, ...]:
    return tuple(
        MapNote(at, one.spelled or one.name or "", one.midi, one.note.start_s)
        for at, one in enumerate(played)
    )
