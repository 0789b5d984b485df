"""A quiet table: whole rows, no grid, the keyboard leads."""

from collections.abc import Sequence
from typing import Generic, TypeVar

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QSize, Qt, QTimer, Signal
from PySide6.QtGui import QKeyEvent, QResizeEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHeaderView,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTableView,
)

from app.ui.models.rows import Column, RowsModel
from app.ui.theme import CELL_PADDING_PX, SMALL_PT, font

R = TypeVar("R")
Index = QModelIndex | QPersistentModelIndex

# Column widths follow this many rows around the ones in view: measuring all of thousands
# of notes would hold the window up at each step of the playing.
_MEASURED_ROWS = 40
# A dense table with more rows keeps one height for all, for the same reason.
_MOST_FITTED = 120


class _WordsInside(QStyledItemDelegate):
    """Breaks a cell's words where they are painted: Qt reckons without the padding."""

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        """Give the size that the words take inside the padding."""
        room = option.rect
        if room.isValid():
            option = QStyleOptionViewItem(option)
            option.rect = room.adjusted(0, 0, -2 * CELL_PADDING_PX, 0)
        return super().sizeHint(option, index)


class RowTable(QTableView, Generic[R]):
    """A table of frozen rows.

    Signals
    -------
    rowOpened(object)
        Enter or a double click on a row.
    rowChosen(object)
        The current row changed; ``None`` where there is none.
    """

    rowOpened = Signal(object)
    rowChosen = Signal(object)

    def __init__(
        self,
        name: str,
        columns: Sequence[Column[R]],
        *,
        stretch: int | tuple[int, ...] = 0,
        dense: bool = False,
    ) -> None:
        super().__init__()
        self.rows_model: RowsModel[R] = RowsModel(columns, self)
        self.setModel(self.rows_model)
        self.setAccessibleName(name)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setShowGrid(False)
        self.setWordWrap(dense)
        self.setTabKeyNavigation(False)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.verticalHeader().hide()
        self.verticalHeader().setDefaultSectionSize(28)
        self._is_dense = dense
        if dense:
            self.setFont(font(SMALL_PT))
            self.setItemDelegate(_WordsInside(self))
            self.verticalHeader().setMinimumSectionSize(22)
            self.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        self._fits_rows = False
        head = self.horizontalHeader()
        head.setFont(font(SMALL_PT))
        head.setHighlightSections(False)
        head.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        head.setResizeContentsPrecision(_MEASURED_ROWS)
        for section in (stretch,) if isinstance(stretch, int) else stretch:
            head.setSectionResizeMode(section, QHeaderView.ResizeMode.Stretch)
        if dense:
            self._fitting = QTimer(self, singleShot=True, interval=0)
            self._fitting.timeout.connect(self._fit_words)
            head.sectionResized.connect(lambda *_: self._fitting.start())
        self.doubleClicked.connect(self._open)

    def show_rows(self, rows: Sequence[R]) -> None:
        """Show these rows."""
        if self._is_dense:
            fitted = len(rows) <= _MOST_FITTED
            mode = (
                QHeaderView.ResizeMode.ResizeToContents if fitted else QHeaderView.ResizeMode.Fixed
            )
            self.verticalHeader().setSectionResizeMode(mode)
        self.rows_model.show_rows(rows)
        self._foresee_scroll_bar()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Have a scroll bar where the height now asks for one."""
        super().resizeEvent(event)
        self._foresee_scroll_bar()

    def _foresee_scroll_bar(self) -> None:
        """Have the scroll bar before many rows are laid out: later, all would be once more."""
        count = len(self.rows_model.rows)
        is_fixed = not self._is_dense or count > _MOST_FITTED
        height_px = count * self.verticalHeader().defaultSectionSize()
        # The viewport's height. To ask the viewport, which Qt made, PySide would first set up
        # every kind of widget there is: 40 ms of the start.
        margins = self.viewportMargins()
        room_px = self.contentsRect().height() - margins.top() - margins.bottom()
        is_needed = is_fixed and height_px > room_px
        policy = Qt.ScrollBarPolicy
        self.setVerticalScrollBarPolicy(
            policy.ScrollBarAlwaysOn if is_needed else policy.ScrollBarAsNeeded
        )

    def _fit_words(self) -> None:
        """Give the rows the height of their words, which a narrower column breaks elsewhere."""
        if self._fits_rows:
            self.fit_to_rows()
        elif len(self.rows_model.rows) <= _MOST_FITTED:
            self.resizeRowsToContents()

    def fit(self, most_rows: int) -> None:
        """Be as high as the rows there are, at most as high as `most_rows`."""
        shown = min(len(self.rows_model.rows), most_rows)
        row_px = self.verticalHeader().defaultSectionSize()
        self.setFixedHeight(self.horizontalHeader().sizeHint().height() + shown * row_px + 8)

    def fit_to_rows(self) -> None:
        """Be as high as all rows are together, for tables of a few rows only."""
        self._fits_rows = True
        self.resizeRowsToContents()
        rows = sum(self.rowHeight(at) for at in range(len(self.rows_model.rows)))
        self.setFixedHeight(self.horizontalHeader().sizeHint().height() + rows + 6)

    @property
    def chosen(self) -> R | None:
        """The current row."""
        at = self.currentIndex().row()
        return self.rows_model.rows[at] if 0 <= at < len(self.rows_model.rows) else None

    def choose(self, at: int) -> None:
        """Make a row the current one, without telling."""
        was_blocked = self.blockSignals(True)
        self.selectRow(at)
        self.blockSignals(was_blocked)
        self.scrollTo(self.rows_model.index(at, 0))

    def currentChanged(self, current: Index, previous: Index) -> None:
        """Tell who is chosen."""
        super().currentChanged(current, previous)
        if current.row() != previous.row():
            self.rowChosen.emit(self.chosen)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Open the row on Enter."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self.chosen is not None:
            if self.state() != QAbstractItemView.State.EditingState:
                self.rowOpened.emit(self.chosen)
            return
        super().keyPressEvent(event)

    def _open(self, index: QModelIndex) -> None:
        if self.rows_model.columns[index.column()].write is None and self.chosen is not None:
            self.rowOpened.emit(self.chosen)
