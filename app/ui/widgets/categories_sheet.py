"""The player's own marker categories, beside the window."""

from collections.abc import Callable
from dataclasses import dataclass, replace

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLineEdit, QWidget

from app.journal.categories import Names, added, moved, renamed, retired
from app.journal.failures import PlainFailure
from app.journal.records import JournalSettings
from app.ui.desk import Desk
from app.ui.keys import MARKER_KEY_COUNT
from app.ui.language import tr
from app.ui.models.rows import Column
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Button, column, fill, labelled, row, soft
from app.ui.widgets.choices import Choice
from app.ui.widgets.focus_order import OrderedDialog
from app.ui.widgets.marker_words import category_word
from app.ui.widgets.table import RowTable


@dataclass(frozen=True, slots=True)
class _Line:
    """A category and its place in the list."""

    at: int
    name: str


class CategoriesSheet(OrderedDialog):
    """Adds, renames, orders and retires categories; each change is kept at once, never modal."""

    def __init__(self, desk: Desk, parent: QWidget) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Marker categories"))
        self.setModal(False)
        self._desk = desk
        self._names: Names = ()
        self._chosen = 0
        self.table: RowTable[_Line] = RowTable(
            tr("Marker categories"),
            (
                Column(tr("Key"), _key_of),
                Column(tr("Category"), lambda line: category_word(line.name), write=self._rename),
            ),
            stretch=1,
        )
        self.name = QLineEdit()
        self.name.returnPressed.connect(self.add)
        self.add_it = Button(tr("Add"), "add", primary=True, name=tr("Add the category"))
        self.up = Button(tr("Up"), name=tr("Move the category up"))
        self.down = Button(tr("Down"), name=tr("Move the category down"))
        self.retire = Button(
            tr("Retire"), name=tr("Offer the category no longer; its markers stay")
        )
        self.former: Choice[str] = Choice(tr("Categories of earlier markers"))
        self.back = Button(tr("Bring back"))
        self._build()
        self.add_it.clicked.connect(self.add)
        self.up.clicked.connect(lambda: self._move(-1))
        self.down.clicked.connect(lambda: self._move(1))
        self.retire.clicked.connect(self._retire)
        self.back.clicked.connect(self._bring_back)

    def _build(self) -> None:
        words = soft(
            tr(
                "The keys 1 to {count} follow this order. Double click or F2 renames. "
                "Markers keep the word they were given, whatever becomes of the list."
            ).format(count=MARKER_KEY_COUNT)
        )
        moves, new, end = row(), row(), row()
        fill(moves, self.up, self.down, self.retire, 1)
        fill(new, labelled(tr("New category"), self.name), self.add_it)
        new.setAlignment(self.add_it, Qt.AlignmentFlag.AlignBottom)
        fill(end, self.former, self.back, 1)
        box = column(self, margin=2 * GRID_PX)
        fill(box, words, self.table, moves, new, end)
        box.setStretch(1, 1)
        self.resize(440, 520)

    def open_sheet(self) -> None:
        """Read the list and show it."""
        self._read(shown=True)
        self.name.setFocus()

    def add(self) -> None:
        """Add the name that is written."""
        typed = self.name.text()
        self._change(lambda names: added(names, typed), chosen=len(self._names))
        self.name.clear()

    def _read(self, *, shown: bool = False) -> None:
        bench = self._desk.workbench
        self._desk.jobs.store(
            lambda: (bench.practising.settings(), bench.marking.categories_in_use()),
            lambda found: self._show(*found, shown=shown),
            subject="categories",
        )

    def _show(self, settings: JournalSettings, used: Names, *, shown: bool) -> None:
        self._names = settings.categories
        self.table.show_rows([_Line(at, name) for at, name in enumerate(self._names)])
        self.table.choose(min(self._chosen, len(self._names) - 1))
        former = [(name, category_word(name)) for name in used if name not in self._names]
        self.former.offer(former or [("", tr("No others in use"))])
        self.former.setEnabled(bool(former))
        self.back.setEnabled(bool(former))
        if shown:
            self.show()
            self.raise_()

    def _change(self, change: Callable[[Names], Names], chosen: int) -> None:
        """Keep a changed list; it is made from what the journal holds just then."""
        practising = self._desk.workbench.practising
        self._chosen = max(chosen, 0)

        def keep() -> None:
            settings = practising.settings()
            kept = replace(settings, categories=change(settings.categories))
            practising.change_settings(kept)

        self._desk.jobs.store(keep, lambda _: self._kept(), failed=self._refused)

    def _kept(self) -> None:
        self._read()
        self._desk.takesChanged.emit()

    def _refused(self, failure: PlainFailure) -> None:
        self._desk.tell_failure(failure)
        self._read()

    def _rename(self, line: _Line, text: str) -> _Line | None:
        if text.strip() in (line.name, category_word(line.name)):
            return None
        self._change(lambda names: renamed(names, line.at, text), chosen=line.at)
        return replace(line, name=text.strip())

    def _move(self, by: int) -> None:
        line = self.table.chosen
        if line is not None and 0 <= line.at + by < len(self._names):
            self._change(lambda names: moved(names, line.at, by), chosen=line.at + by)

    def _retire(self) -> None:
        line = self.table.chosen
        if line is not None:
            self._change(lambda names: retired(names, line.at), chosen=line.at - 1)

    def _bring_back(self) -> None:
        name = self.former.key
        if name:
            self._change(lambda names: added(names, name), chosen=len(self._names))


def _key_of(line: _Line) -> str:
    return str(line.at + 1) if line.at < MARKER_KEY_COUNT else ""
