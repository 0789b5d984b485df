"""The markers of a take: a list, and an editor for the chosen one."""

from dataclasses import replace

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QLineEdit, QWidget

from app.journal.records import Author, Marker, MarkerState
from app.services.wording import position_text
from app.ui.models.rows import Column
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Button, column, fill, labelled, row, soft
from app.ui.widgets.choices import Choice
from app.ui.widgets.table import RowTable

STATE_WORDS = {
    MarkerState.TO_WORK_ON: "to work on",
    MarkerState.SETTLED: "settled",
    MarkerState.RETURNED: "returned",
}
WEIGHT_WORDS = {1: "1, slight", 2: "2, clear", 3: "3, first to fix"}
AUTHOR_WORDS = {Author.SELF: "myself", Author.TEACHER: "teacher"}


def _place(marker: Marker) -> str:
    span = "" if marker.end_s is None else "\N{EN DASH}"
    return position_text(marker.start_s) + span


def _what(marker: Marker) -> str:
    text = f"{marker.category}: {marker.text}" if marker.text else marker.category
    return text if marker.state is MarkerState.TO_WORK_ON else f"{text} ({marker.state.value})"


def _more(marker: Marker) -> str:
    until = f" to {position_text(marker.end_s)}" if marker.end_s is not None else ""
    return (
        f"{position_text(marker.start_s)}{until}: {marker.category}, weight {marker.weight}, "
        f"{STATE_WORDS[marker.state]}, "
        f"by {AUTHOR_WORDS[marker.author]}. {marker.text}"
    )


class MarkersPane(QWidget):
    """Lists markers and edits one.

    Signals
    -------
    changed(Marker)
        The player changed the chosen marker.
    deleted(str)
        Id of a marker to delete.
    moveWanted()
        The chosen marker belongs where it plays now.
    seekWanted(float), chosen(str)
        A marker was chosen in the list.
    """

    changed = Signal(object)
    deleted = Signal(str)
    moveWanted = Signal()
    seekWanted = Signal(float)
    chosen = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self._shown: Marker | None = None
        self._keys = soft()
        columns: tuple[Column[Marker], ...] = (
            Column("Time", _place, _more, is_number=True),
            Column("What", _what, _more),
            Column("Wt.", lambda marker: str(marker.weight), _more, is_number=True),
        )
        self._table: RowTable[Marker] = RowTable(
            "Markers of the take", columns, stretch=1, dense=True
        )
        self._table.rowChosen.connect(self._row_chosen)
        self._table.clicked.connect(lambda _: self._go())
        self._table.rowOpened.connect(lambda _: self._go())
        self._editor = self._build_editor()
        box = column(self)
        fill(box, self._keys, self._table, self._editor)
        box.setStretch(1, 1)
        self._show(None)

    def _build_editor(self) -> QWidget:
        editor = QWidget()
        self._category: Choice[str] = Choice("Category")
        self.weight: Choice[int] = Choice("Weight")
        self.weight.offer(list(WEIGHT_WORDS.items()))
        self.author: Choice[Author] = Choice("Author")
        self.author.offer(list(AUTHOR_WORDS.items()))
        self.state: Choice[MarkerState] = Choice("State")
        self.state.offer(list(STATE_WORDS.items()))
        self.text = QLineEdit()
        self.text.setMaxLength(500)
        self.text.setPlaceholderText("What is it, and what might help?")
        for choice in (self._category, self.weight, self.author, self.state):
            choice.picked.connect(lambda _: self._commit())
        self.text.editingFinished.connect(self._commit)
        self._move = Button("Move here", action_id="listen.move_marker")
        self._move.clicked.connect(self.moveWanted)
        self._delete = Button("Delete", "delete", action_id="listen.delete_marker")
        self._delete.clicked.connect(self.delete_chosen)
        grid = QGridLayout(editor)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setSpacing(GRID_PX)
        grid.addLayout(labelled("Category", self._category), 0, 0)
        grid.addLayout(labelled("Weight", self.weight), 0, 1)
        grid.addLayout(labelled("Author", self.author), 1, 0)
        grid.addLayout(labelled("State", self.state), 1, 1)
        grid.addLayout(labelled("Text", self.text), 2, 0, 1, 2)
        buttons = row()
        fill(buttons, self._move, 1, self._delete)
        grid.addLayout(buttons, 3, 0, 1, 2)
        return editor

    def show_markers(self, markers: tuple[Marker, ...], categories: tuple[str, ...]) -> None:
        """Show these markers; the chosen one stays chosen."""
        wanted = self._shown.id if self._shown else ""
        keys = "   ".join(f"{at} {name}" for at, name in enumerate(categories[:9], 1))
        self._keys.setText(
            f"Keys while it plays:   {keys}"
            if markers
            else f"No marker yet. Press while it plays:   {keys}"
        )
        known = [marker.category for marker in markers if marker.category not in categories]
        self._category.offer([(name, name) for name in (*categories, *sorted(set(known)))])
        self._table.blockSignals(True)
        self._table.show_rows(markers)
        self._table.blockSignals(False)
        if not self.choose(wanted):
            self._show(None)

    def choose(self, marker_id: str) -> bool:
        """Choose a marker; False where it is not listed."""
        for at, marker in enumerate(self._table.rows_model.rows):
            if marker.id == marker_id:
                self._table.choose(at)
                self._show(marker)
                return True
        return False

    @property
    def markers(self) -> tuple[Marker, ...]:
        """The listed markers."""
        return self._table.rows_model.rows

    @property
    def shown(self) -> Marker | None:
        """The chosen marker."""
        return self._shown

    def neighbour(self, position_s: float, steps: int) -> Marker | None:
        """Return the next (1) or earlier (-1) marker from a moment."""
        markers = self._table.rows_model.rows
        if steps > 0:
            return next((m for m in markers if m.start_s > position_s + 0.05), None)
        return next((m for m in reversed(markers) if m.start_s < position_s - 0.05), None)

    def write_text(self) -> None:
        """Put the cursor into the text of the chosen marker."""
        if self._shown is not None:
            self.text.setFocus()
            self.text.selectAll()

    def move_chosen(self, position_s: float, longest_s: float) -> None:
        """Move the chosen marker, with its span, to a moment."""
        marker = self._shown
        if marker is None:
            return
        end_s = None
        if marker.end_s is not None:
            end_s = min(position_s + marker.end_s - marker.start_s, longest_s)
        moved = replace(marker, start_s=position_s, end_s=end_s)
        self._shown = moved
        self.changed.emit(moved)

    def delete_chosen(self) -> None:
        """Ask for the chosen marker to be deleted."""
        if self._shown is not None:
            self.deleted.emit(self._shown.id)

    def _row_chosen(self, marker: Marker | None) -> None:
        self._show(marker)
        self.chosen.emit(marker.id if marker else "")

    def _go(self) -> None:
        if self._shown is not None:
            self.seekWanted.emit(self._shown.start_s)

    def _show(self, marker: Marker | None) -> None:
        is_same = marker is not None and self._shown is not None and marker.id == self._shown.id
        self._shown = marker
        self._editor.setEnabled(marker is not None)
        if not (is_same and self.text.hasFocus()):
            # What is being typed stays, whatever is read again meanwhile.
            self.text.setText(marker.text if marker else "")
        if marker is None:
            return
        self._category.choose(marker.category)
        self.weight.choose(marker.weight)
        self.author.choose(marker.author)
        self.state.choose(marker.state)

    def _commit(self) -> None:
        if self._shown is None:
            return
        changed = replace(
            self._shown,
            category=self._category.key or self._shown.category,
            weight=self.weight.key or self._shown.weight,
            author=self.author.key or self._shown.author,
            state=self.state.key or self._shown.state,
            text=self.text.text().strip(),
        )
        if changed != self._shown:
            self._shown = changed
            self.changed.emit(changed)
