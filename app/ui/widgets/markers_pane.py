"""The markers of a take: a list in step with the playing, a filter, and an editor."""

from bisect import bisect_right
from dataclasses import replace

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from app.journal.records import Marker
from app.ui.keys import MARKER_KEY_COUNT
from app.ui.language import tr
from app.ui.models.rows import Column
from app.ui.widgets.basics import Button, column, fill, row, soft
from app.ui.widgets.marker_editor import MarkerEditor
from app.ui.widgets.marker_filter import MarkerFilter
from app.ui.widgets.marker_words import all_of, category_word, line_of, place_of
from app.ui.widgets.table import RowTable

_HERE = "\N{BLACK RIGHT-POINTING SMALL TRIANGLE} "
# As wide as that, so that the columns hold still while the sign moves down the list.
_NOT_HERE = "\N{EM SPACE} "


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
    filtered()
        Other markers are wanted: :attr:`markers`.
    """

    changed = Signal(object)
    deleted = Signal(str)
    moveWanted = Signal()
    seekWanted = Signal(float)
    chosen = Signal(str)
    filtered = Signal()

    def __init__(self) -> None:
        super().__init__()
        self._all: tuple[Marker, ...] = ()
        self._starts: list[float] = []
        self._passed = -1
        self._keys = soft()
        self._count = soft(wrap=False)
        self._open_filter = Button(tr("Filter"), action_id="listen.filter", plain=True)
        self._open_filter.setCheckable(True)
        self.categories = Button(tr("Categories"), action_id="categories", plain=True)
        self.filter = MarkerFilter()
        self.filter.hide()
        columns: tuple[Column[Marker], ...] = (
            Column(tr("Time"), self._place, all_of, is_number=True),
            Column(tr("What"), line_of, all_of),
            Column(tr("Wt."), lambda marker: str(marker.weight), all_of, is_number=True),
        )
        self._table: RowTable[Marker] = RowTable(
            tr("Markers of the take"), columns, stretch=1, dense=True
        )
        self.editor = MarkerEditor()
        self.text, self.state = self.editor.text, self.editor.state
        self.weight, self.author = self.editor.weight, self.editor.author
        self._connect()
        head = row()
        fill(head, self._count, 1, self._open_filter, self.categories)
        box = column(self)
        fill(box, self._keys, head, self.filter, self._table, self.editor)
        box.setStretch(3, 1)

    def _connect(self) -> None:
        self._table.rowChosen.connect(self._row_chosen)
        self._table.clicked.connect(lambda _: self._go())
        self._table.rowOpened.connect(lambda _: self._go())
        self._open_filter.clicked.connect(self._show_filter)
        self.filter.changed.connect(self._refilter)
        self.editor.changed.connect(self.changed)
        self.editor.moveWanted.connect(self.moveWanted)
        self.editor.deleteWanted.connect(self.delete_chosen)

    def show_markers(self, markers: tuple[Marker, ...], categories: tuple[str, ...]) -> None:
        """Show the markers that the filter lets through; the chosen one stays chosen."""
        self._all = markers
        names = categories[:MARKER_KEY_COUNT]
        # A key and its word stay on one line.
        keys = "   ".join(
            f"{at} {category_word(name)}".replace(" ", "\N{NO-BREAK SPACE}")
            for at, name in enumerate(names, 1)
        )
        words = (
            tr("Keys while it plays, held for a span:   {keys}")
            if markers
            else tr("No marker yet. Press while it plays, hold for a span:   {keys}")
        )
        self._keys.setText(words.format(keys=keys))
        known = {marker.category for marker in markers} - set(categories)
        offered = (*categories, *sorted(known))
        self.editor.offer(offered)
        self.filter.offer(offered)
        self._show_wanted()

    def choose(self, marker_id: str) -> bool:
        """Choose a marker; False where it is not listed."""
        for at, marker in enumerate(self.markers):
            if marker.id == marker_id:
                self._table.choose(at)
                self.editor.show_marker(marker)
                return True
        return False

    def choose_placed(self, marker_id: str) -> bool:
        """Choose a marker that was placed just now, whatever the filter lets through."""
        if self.choose(marker_id):
            return True
        self.filter.clear()
        return self.choose(marker_id)

    @property
    def markers(self) -> tuple[Marker, ...]:
        """The listed markers."""
        return self._table.rows_model.rows

    @property
    def shown(self) -> Marker | None:
        """The chosen marker."""
        return self.editor.shown

    def neighbour(self, position_s: float, steps: int) -> Marker | None:
        """Return the next (1) or earlier (-1) marker from a moment."""
        if steps > 0:
            return next((m for m in self.markers if m.start_s > position_s + 0.05), None)
        return next((m for m in reversed(self.markers) if m.start_s < position_s - 0.05), None)

    def follow(self, position_s: float) -> None:
        """Point at the marker that was passed last; the chosen one stays chosen."""
        passed = bisect_right(self._starts, position_s + 1e-6) - 1
        if passed == self._passed:
            return
        before, self._passed = self._passed, passed
        model = self._table.rows_model
        for at in (before, passed):
            if 0 <= at < len(model.rows):
                model.dataChanged.emit(model.index(at, 0), model.index(at, 0))
        if passed >= 0 and not self._table.hasFocus():
            self._table.scrollTo(model.index(passed, 0))

    @property
    def passed(self) -> Marker | None:
        """The marker in step with the playing."""
        return self.markers[self._passed] if 0 <= self._passed < len(self.markers) else None

    def toggle_filter(self) -> None:
        """Open the filter with the cursor in its words, or close it and list everything."""
        self._open_filter.setChecked(self.filter.isHidden())
        self._show_filter()

    def write_text(self) -> None:
        """Put the cursor into the text of the chosen marker."""
        if self.shown is not None:
            self.text.setFocus()
            self.text.selectAll()

    def move_chosen(self, position_s: float, longest_s: float) -> None:
        """Move the chosen marker, with its span, to a moment."""
        marker = self.shown
        if marker is None:
            return
        end_s = None
        if marker.end_s is not None:
            end_s = min(position_s + marker.end_s - marker.start_s, longest_s)
        self.editor.change(replace(marker, start_s=position_s, end_s=end_s))

    def delete_chosen(self) -> None:
        """Ask for the chosen marker to be deleted."""
        if self.shown is not None:
            self.deleted.emit(self.shown.id)

    def _place(self, marker: Marker) -> str:
        passed = self.passed
        here = _HERE if passed is not None and passed.id == marker.id else _NOT_HERE
        return here + place_of(marker)

    def _show_filter(self) -> None:
        self.filter.setVisible(self._open_filter.isChecked())
        if self._open_filter.isChecked():
            self.filter.words.setFocus()
        else:
            self.filter.clear()

    def _refilter(self) -> None:
        self._show_wanted()
        self.filtered.emit()

    def _show_wanted(self) -> None:
        wanted = self.shown.id if self.shown else ""
        found = self.filter.wish.chosen(self._all)
        self._starts = [marker.start_s for marker in found]
        self._passed = -1
        self._table.blockSignals(True)
        self._table.show_rows(found)
        self._table.blockSignals(False)
        if not self.choose(wanted):
            self.editor.show_marker(None)
        is_open = self.filter.wish.is_open
        all_of_them = tr("1 marker") if len(self._all) == 1 else tr("{count} markers")
        words = all_of_them if is_open else tr("{count} of {all} markers")
        self._count.setText(words.format(count=len(found), all=len(self._all)))
        self._count.setVisible(bool(self._all))

    def _row_chosen(self, marker: Marker | None) -> None:
        self.editor.show_marker(marker)
        self.chosen.emit(marker.id if marker else "")

    def _go(self) -> None:
        if self.shown is not None:
            self.seekWanted.emit(self.shown.start_s)
