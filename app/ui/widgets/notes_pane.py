"""The notes of a take, in step with playback."""

from bisect import bisect_right

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from app.services.reading_views import NoReading
from app.services.views import NoteRow
from app.ui.language import tr
from app.ui.models.rows import Column
from app.ui.spoken import word
from app.ui.widgets.basics import column, sentence
from app.ui.widgets.table import RowTable
from app.ui.words import position_text, reading_text, short_reading_text


def _cents(note: NoteRow) -> str:
    text = short_reading_text(note.deviation).removesuffix(" " + word("cents"))
    return text if note.certain or isinstance(note.deviation, NoReading) else f"({text})"


def _more(note: NoteRow) -> str:
    parts = [
        tr("{name} at {start_s}").format(name=note.name, start_s=position_text(note.start_s)),
        reading_text(note.deviation),
    ]
    if note.kind != "note":
        parts.append(note.kind)
    if note.is_open_string:
        parts.append(tr("open string"))
    if not note.certain and not isinstance(note.deviation, NoReading):
        parts.append("uncertain")
    if note.vibrato:
        parts.append(tr("vibrato {vibrato}").format(vibrato=note.vibrato))
    if note.left_out:
        parts.append(tr("left out of the averages"))
    return ". ".join(text for text in (", ".join(parts), note.remark) if text)


def _name(note: NoteRow) -> str:
    name = note.name or "\N{EN DASH}"
    if note.left_out:
        return tr("{name} left out").format(name=name)
    if note.slip:
        words = tr("{name} wrong") if note.slip == "wrong" else tr("{name} added")
        return words.format(name=name)
    if note.is_open_string:
        return tr("{name} open").format(name=name)
    return name if note.kind == "note" else f"{name} {note.kind}"


class NotesPane(QWidget):
    """A list of notes; the one that sounds is the current row.

    Signals
    -------
    seekWanted(float)
        The player chose a note.
    """

    seekWanted = Signal(float)

    def __init__(self) -> None:
        super().__init__()
        self._words = sentence()
        columns: tuple[Column[NoteRow], ...] = (
            Column(tr("Time"), lambda note: position_text(note.start_s), is_number=True),
            Column(tr("Note"), _name, _more),
            Column(tr("Cents"), _cents, _more, is_number=True),
        )
        self._table: RowTable[NoteRow] = RowTable(tr("Notes of the take"), columns, stretch=1)
        self._table.rowOpened.connect(self._wanted)
        self._table.clicked.connect(lambda _: self._wanted(self._table.chosen))
        self._starts: list[float] = []
        box = column(self)
        box.addWidget(self._words)
        box.addWidget(self._table, 1)

    def show_notes(self, notes: tuple[NoteRow, ...], words: str) -> None:
        """Show these notes; `words` where there are none."""
        self._table.show_rows(notes)
        self._starts = [note.start_s for note in notes]
        self._words.setText(words)
        self._words.setVisible(bool(words))

    @property
    def current_index(self) -> int:
        """Row of the note in step with playback, -1 before the first."""
        return self._table.currentIndex().row()

    def follow(self, position_s: float) -> None:
        """Make the note at `position_s` the current row."""
        at = bisect_right(self._starts, position_s + 1e-6) - 1
        if at >= 0 and at != self._table.currentIndex().row():
            self._table.choose(at)

    def start_near(self, position_s: float, steps: int) -> float | None:
        """Return where the next (or earlier) note starts."""
        if not self._starts:
            return None
        at = bisect_right(self._starts, position_s + 0.02) - 1
        if steps < 0 and at >= 0 and position_s - self._starts[at] > 0.3:
            steps = 0
        return self._starts[min(max(0, at + steps), len(self._starts) - 1)]

    def _wanted(self, note: NoteRow | None) -> None:
        if note is not None:
            self.seekWanted.emit(note.start_s)
