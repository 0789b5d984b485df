"""Combo boxes that hold records, and the take chooser."""

from collections.abc import Sequence
from datetime import date
from typing import TYPE_CHECKING, Generic, TypeVar

from PySide6.QtCore import (
    QAbstractListModel,
    QDate,
    QEvent,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    Qt,
    Signal,
)
from PySide6.QtGui import QCursor, QPaintEvent
from PySide6.QtWidgets import (
    QComboBox,
    QDateEdit,
    QListView,
    QStyle,
    QStyleOptionComboBox,
    QStylePainter,
    QToolTip,
)

from app.services.reading_views import AnyReading, NoReading
from app.ui.language import tr
from app.ui.spoken import said
from app.ui.words import counted, day_text, reading_text

if TYPE_CHECKING:
    from app.journal.records import Passage
    from app.services.views import TakeRow

K = TypeVar("K")

Index = QModelIndex | QPersistentModelIndex
_NO_PARENT = QModelIndex()
_TEXT_MARGIN_PX = 4


class Choice(QComboBox, Generic[K]):
    """A combo box whose entries carry keys.

    Signals
    -------
    picked(object)
        The key the player chose; not emitted when the program fills the box.
    """

    picked = Signal(object)

    def __init__(self, name: str) -> None:
        super().__init__()
        self.setAccessibleName(name)
        self.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.setMinimumContentsLength(10)
        self._keys: list[K] = []
        self.activated.connect(self._tell)

    def offer(self, entries: Sequence[tuple[K, str]], chosen: K | None = None) -> None:
        """Replace the entries; keep the choice where it still exists."""
        wanted = chosen if chosen is not None else self.key
        known = [(key, self.itemText(at)) for at, key in enumerate(self._keys)]
        if [(key, said(text)) for key, text in entries] == known:
            # The list may be open just now; the same entries need not be put in again.
            if wanted is not None:
                self.choose(wanted)
            return
        self.blockSignals(True)
        self.clear()
        self._keys = [key for key, _ in entries]
        self.addItems([said(text) for _, text in entries])
        self.setCurrentIndex(self._keys.index(wanted) if wanted in self._keys else 0)
        self.blockSignals(False)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the chosen entry, with an ellipsis where it does not fit."""
        option = QStyleOptionComboBox()
        self.initStyleOption(option)
        room = self.style().subControlRect(
            QStyle.ComplexControl.CC_ComboBox,
            option,
            QStyle.SubControl.SC_ComboBoxEditField,
            self,
        )
        text = option.currentText
        option.currentText = self.fontMetrics().elidedText(
            text, Qt.TextElideMode.ElideRight, room.width() - _TEXT_MARGIN_PX
        )
        painter = QStylePainter(self)
        painter.drawComplexControl(QStyle.ComplexControl.CC_ComboBox, option)
        painter.drawControl(QStyle.ControlElement.CE_ComboBoxLabel, option)

    def event(self, event: QEvent) -> bool:
        """Show the whole entry where only its beginning is seen."""
        if event.type() == QEvent.Type.ToolTip and not self.toolTip() and self.currentText():
            QToolTip.showText(QCursor.pos(), self.currentText(), self)
            return True
        return super().event(event)

    @property
    def key(self) -> K | None:
        """The chosen key."""
        at = self.currentIndex()
        return self._keys[at] if 0 <= at < len(self._keys) else None

    @property
    def keys(self) -> tuple[K, ...]:
        """All keys in order."""
        return tuple(self._keys)

    def choose(self, key: K) -> bool:
        """Choose a key without telling; False where it is not offered."""
        if key not in self._keys:
            return False
        self.blockSignals(True)
        self.setCurrentIndex(self._keys.index(key))
        self.blockSignals(False)
        return True

    def _tell(self, at: int) -> None:
        self.picked.emit(self._keys[at])


class _TakeLines(QAbstractListModel):
    """Takes in words, each written when its line is drawn: there may be thousands."""

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self.takes: tuple[TakeRow, ...] = ()

    def offer(self, takes: tuple["TakeRow", ...]) -> None:
        self.beginResetModel()
        self.takes = takes
        self.endResetModel()

    def rowCount(self, parent: Index = _NO_PARENT) -> int:
        return 0 if parent.isValid() else len(self.takes)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.EditRole):
            return said(take_text(self.takes[index.row()]))
        return None


class TakeChoice(Choice[str]):
    """A combo box of takes; their ids are its keys."""

    def __init__(self, name: str) -> None:
        super().__init__(name)
        self._lines = _TakeLines(self)
        self.setModel(self._lines)
        view = self.view()
        if isinstance(view, QListView):
            view.setUniformItemSizes(True)  # else each line is measured before any is shown

    def offer_takes(self, takes: tuple["TakeRow", ...], chosen: str) -> None:
        """Offer takes in this order; the list that is open just now stays as it is."""
        if takes != self._lines.takes:
            self.blockSignals(True)
            self._keys = [take.id for take in takes]
            self._lines.offer(takes)
            self.blockSignals(False)
        if not self.choose(chosen) and takes:
            self.choose(takes[0].id)


def passage_text(passage: "Passage") -> str:
    """Return a passage in one line, what tells passages apart first."""
    bars = tr(", bars {bars}").format(bars=passage.bars) if passage.bars else ""
    return f"{passage.name}{bars} ({passage.piece})"


def short_passage(title: str) -> str:
    """Return a passage's title without its piece, for a narrow column."""
    return title.partition(": ")[2] or title


def take_text(row: "TakeRow") -> str:
    """Return a take in one line: day, number, how many markers."""
    markers = f", {counted(row.marker_count, 'marker')}" if row.marker_count else ""
    return tr("{practice_day}, take {number}{markers}").format(
        practice_day=day_text(row.practice_day), number=row.number, markers=markers
    )


class DayEdit(QDateEdit):
    """A date field that speaks :class:`datetime.date`."""

    def __init__(self, name: str) -> None:
        super().__init__()
        self.setAccessibleName(name)
        self.setCalendarPopup(True)
        self.setDisplayFormat(tr("yyyy-MM-dd"))

    @property
    def day(self) -> date:
        """The date shown."""
        shown = self.date()
        return date(shown.year(), shown.month(), shown.day())

    def show_day(self, day: date) -> None:
        """Show a date without telling."""
        self.blockSignals(True)
        self.setDate(QDate(day.year, day.month, day.day))
        self.blockSignals(False)


def take_summary(take: "TakeRow") -> str:
    """Give what was measured in one line; the lanes and the numbers say why where it was not."""
    if take.state in ("waiting", "failed"):
        words = tr("to be measured") if take.state == "waiting" else tr("could not be measured")
        return said(take.notice) or words
    labels = ((tr("Intonation"), take.intonation), (tr("Tempo"), take.tempo))
    if take.intonation == take.tempo:
        return said(reading_text(take.tempo))  # one reason for both
    return "   ".join(f"{label} {_reading_or_none(value)}" for label, value in labels)


def _reading_or_none(reading: AnyReading) -> str:
    return tr("not measurable") if isinstance(reading, NoReading) else said(reading_text(reading))
