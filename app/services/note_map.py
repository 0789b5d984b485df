"""A passage note by note and day by day, on the note axis of a reference take."""

from collections import OrderedDict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from statistics import median

from app.journal.failures import PlainFailure
from app.journal.records import Passage, Take
from app.services.comparing import ComparingService
from app.services.lanes import CERTAIN_WITHIN_CENTS, deviation_reading
from app.services.stopping import Progress, ShouldStop, never_stop, no_progress, stop_if
from app.services.views import Reading
from app.services.wording import counted, short_day_text
from app.store.store import Store

_MOST_KEPT = 500


@dataclass(frozen=True, slots=True)
class MapNote:
    """A note of the axis, where it begins in the reference take."""

    index: int
    name: str
    midi: int | None
    at_s: float


@dataclass(frozen=True, slots=True)
class MapCell:
    """A note on a day; ``uncertainty`` is half of its 95 % interval, cents."""

    cents: float
    uncertainty: float | None
    certain: bool


@dataclass(frozen=True, slots=True)
class MapRow:
    """A take, or the takes of a week; a cell a note, ``None`` where it was not measured."""

    label: str
    first_day: date
    last_day: date
    take_ids: tuple[str, ...]
    cells: tuple[MapCell | None, ...]


@dataclass(frozen=True, slots=True)
class NoteMapView:
    """``takes`` has a row a take in the order played, ``weeks`` the medians of each week."""

    passage: Passage
    reference_id: str
    reference_day: date
    notes: tuple[MapNote, ...]
    takes: tuple[MapRow, ...]
    weeks: tuple[MapRow, ...]
    left_out: tuple[str, ...]
    sentence: str = ""


class NoteMapService:
    """Lays the takes of a passage note against note; long the first time."""

    def __init__(self, store: Store, comparing: ComparingService) -> None:
        self._store = store
        self._comparing = comparing
        self._kept: OrderedDict[tuple[str, ...], dict[int, MapCell] | str] = OrderedDict()

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
            The take whose notes are the axis; without it the latest measured one.

        Raises
        ------
        PlainFailure
            Where the passage or the take is not there, or nothing is measured yet.
        """
        passage = self._store.passages.get(passage_id)
        if passage is None:
            raise PlainFailure("That passage is not there.", "Choose another one.")
        takes, stamps = self._measured(self._store.takes.list(passage_id=passage_id))
        reference = self._reference(takes, reference_id)
        axis = self._comparing.notes_of(reference.id)
        rows, left_out = [], []
        for number, take in enumerate(takes):
            stop_if(should_stop)
            key = (reference.id, stamps[reference.id], take.id, stamps[take.id])
            found = self._cells(key, reference, take)
            if isinstance(found, str):
                left_out.append(found)
            else:
                cells = tuple(found.get(index) for index in range(len(axis)))
                day = take.practice_day
                rows.append(MapRow(short_day_text(day), day, day, (take.id,), cells))
            progress((number + 1) / len(takes))
        notes = tuple(
            MapNote(at, one.spelled or one.name or "", one.midi, one.note.start_s)
            for at, one in enumerate(axis)
        )
        return NoteMapView(
            passage,
            reference.id,
            reference.practice_day,
            notes,
            tuple(rows),
            weeks_of(rows),
            tuple(left_out),
        )

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
        if reference_id is None:
            return takes[-1]
        for take in takes:
            if take.id == reference_id:
                return take
        raise PlainFailure(
            "That take is not a measured one of this passage.", "Choose another one."
        )

    def _cells(self, key: tuple[str, ...], reference: Take, take: Take) -> dict[int, MapCell] | str:
        """Give the take's notes by their number in the reference, or why there are none."""
        if key not in self._kept:
            self._kept[key] = self._matched(reference, take)
            while len(self._kept) > _MOST_KEPT:
                self._kept.popitem(last=False)
        return self._kept[key]

    def _matched(self, reference: Take, take: Take) -> dict[int, MapCell] | str:
        notes = self._comparing.notes_of(take.id)
        if take.id == reference.id:
            pairs = [(at, at) for at in range(len(notes))]
        else:
            found = self._comparing.comparison(reference.id, take.id)
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


def weeks_of(rows: Sequence[MapRow]) -> tuple[MapRow, ...]:
    """Give the median of each note over the takes of each week, Monday to Sunday.

    A week's cell is certain where most of its takes are; its uncertainty is ``None``,
    because the spread of the takes, not the measuring, then says how sure it is.
    """
    return tuple(_week(monday, members) for monday, members in _by_monday(rows).items())


def _by_monday(rows: Iterable[MapRow]) -> dict[date, list[MapRow]]:
    found: dict[date, list[MapRow]] = {}
    for row in rows:
        monday = row.first_day - timedelta(days=row.first_day.weekday())
        found.setdefault(monday, []).append(row)
    return found


def _week(monday: date, members: Sequence[MapRow]) -> MapRow:
    columns = zip(*(row.cells for row in members), strict=True)
    return MapRow(
        f"{short_day_text(monday)}, {counted(len(members), 'take')}",
        monday,
        monday + timedelta(days=6),
        tuple(take_id for row in members for take_id in row.take_ids),
        tuple(_middle(column) for column in columns),
    )


def _middle(column: Sequence[MapCell | None]) -> MapCell | None:
    cells = [cell for cell in column if cell is not None]
    if not cells:
        return None
    certain = sum(cell.certain for cell in cells) * 2 > len(cells)
    return MapCell(median(cell.cents for cell in cells), None, certain)
