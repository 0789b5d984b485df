"""Two cards of the Practice page: the takes of today, and the markers to work on."""

from datetime import date
from typing import TYPE_CHECKING

from app.ui.language import mark, tr
from app.ui.models.measure_queue import MeasureQueue
from app.ui.models.rows import Column
from app.ui.widgets.basics import Button, Card, fill, heading, row, sentence, soft
from app.ui.widgets.choices import short_passage
from app.ui.widgets.marker_words import category_word
from app.ui.widgets.table import RowTable
from app.ui.words import (
    day_and_month,
    day_text,
    length_text,
    position_text,
    reading_text,
    short_day_text,
)

if TYPE_CHECKING:
    from app.services.reading_views import AnyReading
    from app.services.views import MarkerRow, TakeRow

_MOST_ROWS = 4
_NO_TAKE_YET = mark("No take yet today. Record one, or drop recordings anywhere on this window.")
_NO_PASSAGE_YET = mark(
    "Begin with a passage: a few bars you want to hear getting better. Then "
    "record it, or drop recordings anywhere on this window. "
    "The guide (Shift+F1) leads through the first day."
)


def take_name(take: "TakeRow") -> str:
    """Return a take of a known day in few words."""
    return tr("{passage_name}, take {number}").format(
        passage_name=short_passage(take.passage_name), number=take.number
    )


class TakesCard(Card):
    """The takes of today, and what recording them took."""

    def __init__(self, queue: MeasureQueue) -> None:
        super().__init__()
        self._queue = queue
        self.table: RowTable[TakeRow] = RowTable(tr("Takes of today"), self._columns(), stretch=0)
        self.importer = Button(tr("Import recordings"), "import", action_id="import", plain=True)
        self.folder = Button(tr("A folder"), "folder", action_id="import_folder", plain=True)
        self.folder.setAccessibleName(tr("Import a folder of recordings"))
        self._none = sentence()
        self._effort = soft()
        head = row()
        self.title = heading(tr("Takes of today"))
        fill(head, self.title, 1, self.importer, self.folder)
        fill(self.box, head, self._none, self.table, self._effort)
        queue.changed.connect(self._show_progress)

    def show_takes(
        self, takes: tuple["TakeRow", ...], effort: str, *, there_is_a_passage: bool
    ) -> None:
        """Show the takes of a day; `effort` holds recording against practising."""
        self.table.show_rows(takes)
        self.table.fit(_MOST_ROWS)
        self.table.setVisible(bool(takes))
        self._none.setText(tr(_NO_TAKE_YET if there_is_a_passage else _NO_PASSAGE_YET))
        self._none.setVisible(not takes)
        self._effort.setText(effort)
        self._effort.setVisible(bool(effort))

    def _show_progress(self) -> None:
        """Paint the states again, in a column that is wide enough for them."""
        self.table.horizontalHeader().resizeSections()
        self.table.viewport().update()

    def _columns(self) -> tuple[Column["TakeRow"], ...]:
        return (
            Column(tr("Passage"), take_name, _more),
            Column(tr("At"), lambda take: f"{take.recorded_at:%H:%M}", is_number=True),
            Column(tr("Length"), lambda take: length_text(take.duration_s), is_number=True),
            Column(tr("Intonation"), lambda take: _short(take.intonation), _more, is_number=True),
            Column(tr("Tempo"), lambda take: _short(take.tempo), _more, is_number=True),
            Column("", self._state_text, _more),
        )

    def _state_text(self, take: "TakeRow") -> str:
        if take.id == self._queue.current:
            return tr("measuring {round} %").format(round=round(100 * self._queue.fraction))
        words = {
            "waiting": tr("to measure"),
            "stale": tr("to measure again"),
            "failed": tr("not measured"),
        }
        return words.get(take.state, "note" if take.notice else "")


class MarkersCard(Card):
    """What is still to work on."""

    def __init__(self) -> None:
        super().__init__(tr("To work on"))
        self.table: RowTable[MarkerRow] = RowTable(
            tr("Markers to work on"), _marker_columns(), stretch=(0, 1)
        )
        self._none = sentence(
            tr("Nothing is open. Markers you place while listening come back here until settled.")
        )
        fill(self.box, self._none, self.table)
        self.box.setStretch(2, 1)
        self.box.addStretch(0)

    def show_markers(self, markers: tuple["MarkerRow", ...]) -> None:
        """Show the open markers."""
        self.table.show_rows(markers)
        self.table.setVisible(bool(markers))
        self._none.setVisible(not markers)


def _short(reading: "AnyReading") -> str:
    return reading_text(reading) if hasattr(reading, "value") else "\N{EN DASH}"


def _more(take: "TakeRow") -> str:
    parts = [tr("Intonation: {intonation}").format(intonation=reading_text(take.intonation))]
    parts.append(tr("Tempo: {tempo}").format(tempo=reading_text(take.tempo)))
    parts.append(tr("Dynamics: {dynamics}").format(dynamics=reading_text(take.dynamics)))
    return "\n".join([*parts, *([take.notice] if take.notice else [])])


def _day(day: date) -> str:
    """Give the year only where it is another one than this."""
    return day_and_month(day) if day.year == date.today().year else short_day_text(day)


def _marker_columns() -> tuple[Column["MarkerRow"], ...]:
    def what(entry: "MarkerRow") -> str:
        text = f": {entry.marker.text}" if entry.marker.text else ""
        return f"{category_word(entry.marker.category)}{text}"

    def where(entry: "MarkerRow") -> str:
        near = tr(", near {near_note}").format(near_note=entry.near_note) if entry.near_note else ""
        return tr("{passage_name}, {practice_day}, take {take_number}, at {start_s}{near}").format(
            passage_name=entry.passage_name,
            practice_day=day_text(entry.practice_day),
            take_number=entry.take_number,
            start_s=position_text(entry.marker.start_s),
            near=near,
        )

    return (
        Column(tr("What"), what, lambda entry: f"{what(entry)}. {where(entry)}"),
        Column(tr("Passage"), lambda entry: short_passage(entry.passage_name), where),
        Column(tr("Day"), lambda entry: _day(entry.practice_day), where),
        Column(tr("Weight"), lambda entry: str(entry.marker.weight), where, is_number=True),
    )
