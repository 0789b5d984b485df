"""A table model over a tuple of frozen rows: columns are functions of a row."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Generic, TypeVar

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, Qt

from app.ui.spoken import said

R = TypeVar("R")
Index = QModelIndex | QPersistentModelIndex

# A view asks for nine roles of each cell it shows: plain numbers are compared quickest.
_ALIGNMENT = int(Qt.ItemDataRole.TextAlignmentRole)
_TOOLTIP = int(Qt.ItemDataRole.ToolTipRole)
_TEXTS = frozenset({int(Qt.ItemDataRole.DisplayRole), int(Qt.ItemDataRole.EditRole)})
_ANSWERED = _TEXTS | {_ALIGNMENT, _TOOLTIP, int(Qt.ItemDataRole.AccessibleTextRole)}
_TO_THE_RIGHT = int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
_TO_THE_LEFT = int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)


@dataclass(frozen=True, slots=True)
class Column(Generic[R]):
    """A column: its heading, the cell's text, a longer text for tooltip and screen reader."""

    heading: str
    text: Callable[[R], str]
    more: Callable[[R], str] | None = None
    is_number: bool = False
    write: Callable[[R, str], R | None] | None = None


class RowsModel(QAbstractTableModel, Generic[R]):
    """Shows rows; where a column can write, its cells can be edited."""

    def __init__(self, columns: Sequence[Column[R]], parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.columns = tuple(columns)
        self.rows: tuple[R, ...] = ()

    def show_rows(self, rows: Sequence[R]) -> None:
        """Take over new rows; equal rows keep the selection."""
        if tuple(rows) == self.rows:
            return
        if len(rows) == len(self.rows):
            self.rows = tuple(rows)
            if rows:
                self.dataChanged.emit(
                    self.index(0, 0), self.index(len(rows) - 1, len(self.columns) - 1)
                )
            return
        self.beginResetModel()
        self.rows = tuple(rows)
        self.endResetModel()

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's signature
        """How many rows."""
        return 0 if parent.isValid() else len(self.rows)

    def columnCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's signature
        """How many columns."""
        return 0 if parent.isValid() else len(self.columns)

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> object:
        """Give the headings."""
        if role == Qt.ItemDataRole.DisplayRole and orientation == Qt.Orientation.Horizontal:
            return self.columns[section].heading
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return self._alignment(section)
        return None

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """Text, tooltip and alignment of a cell."""
        if role not in _ANSWERED:
            return None
        column = self.columns[index.column()]
        if role == _ALIGNMENT:
            return self._alignment(index.column())
        row = self.rows[index.row()]
        if role in _TEXTS:
            return said(column.text(row)) if column.write is None else column.text(row)
        more = self._more(column, row)
        return more if role == _TOOLTIP else f"{column.heading}: {more}"

    @staticmethod
    def _more(column: Column[R], row: R) -> str:
        text = column.more(row) if column.more else column.text(row)
        return text if column.write and not column.more else said(text)

    def setData(self, index: Index, value: object, role: int = Qt.ItemDataRole.EditRole) -> bool:
        """Write a cell where its column can."""
        write = self.columns[index.column()].write
        if role != Qt.ItemDataRole.EditRole or write is None:
            return False
        changed = write(self.rows[index.row()], str(value))
        if changed is None:
            return False
        self.replace(index.row(), changed)
        return True

    def replace(self, at: int, row: R) -> None:
        """Put another row in the place of one."""
        self.rows = (*self.rows[:at], row, *self.rows[at + 1 :])
        self.dataChanged.emit(self.index(at, 0), self.index(at, len(self.columns) - 1))

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Cells can be chosen; some can be edited."""
        usual = super().flags(index)
        if self.columns[index.column()].write is not None:
            return usual | Qt.ItemFlag.ItemIsEditable
        return usual

    def _alignment(self, section: int) -> int:
        return _TO_THE_RIGHT if self.columns[section].is_number else _TO_THE_LEFT
