"""Bars over weeks, months, weekdays or hours; the arrow keys read them one by one."""

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QEvent, QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QColor, QHelpEvent, QKeyEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QToolTip, QWidget

from app.ui.language import tr
from app.ui.theme import SMALL_PT, Theme, font
from app.ui.widgets.year_marks import draw_bar

_HEAD_PX, _FOOT_PX = 16.0, 18.0
_HOLLOW_KIND = 0
_MOST_BAR_PX = 26.0


@dataclass(frozen=True, slots=True)
class RecordBar:
    """A bar: minutes, a label under it (may be empty), and itself in words.

    ``is_open``: its time is not over, so it is drawn hollow.
    """

    minutes: float
    label: str
    words: str
    is_open: bool = False


class RecordBars(QWidget):
    """A row of bars whose height is minutes.

    Signals
    -------
    read(str)
        The words of the bar the player walked to.
    """

    read = Signal(str)

    def __init__(self, theme: Theme, name: str) -> None:
        super().__init__()
        self._theme = theme
        self.bars: tuple[RecordBar, ...] = ()
        self._at = -1
        self.setAccessibleName(name)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMinimumSize(240, 104)
        theme.changed.connect(lambda _: self.update())

    def show_bars(self, bars: Sequence[RecordBar]) -> None:
        """Show these bars, the latest chosen."""
        self.bars = tuple(bars)
        self._at = len(self.bars) - 1
        self.setAccessibleDescription(self.bars[-1].words if self.bars else "")
        self.update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Walk along the bars."""
        steps = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}
        key = Qt.Key(event.key())
        if key not in steps or not self.bars:
            super().keyPressEvent(event)
            return
        self._at = min(max(self._at + steps[key], 0), len(self.bars) - 1)
        self.setAccessibleDescription(self.bars[self._at].words)
        self.read.emit(self.bars[self._at].words)
        self.update()

    def event(self, event: QEvent) -> bool:
        """Say the bar under the pointer."""
        if isinstance(event, QHelpEvent) and event.type() == QEvent.Type.ToolTip and self.bars:
            at = int(event.pos().x() // self._step)
            words = self.bars[at].words if 0 <= at < len(self.bars) else ""
            QToolTip.showText(event.globalPos(), words, self)
            return True
        return super().event(event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw them."""
        c = self._theme.colours
        painter = QPainter(self)
        painter.setFont(font(SMALL_PT))
        foot = self.height() - _FOOT_PX
        room = foot - _HEAD_PX
        painter.setPen(QPen(QColor(c.line), 1))
        painter.drawLine(QPointF(0, foot), QPointF(self.width(), foot))
        top = max((bar.minutes for bar in self.bars), default=0.0)
        painter.setPen(QColor(c.ink_soft))
        painter.drawText(QRectF(0, 0, self.width(), _HEAD_PX), 0, self._top_words(top))
        width = min(_MOST_BAR_PX, max(2.0, self._step - 3))
        for at, bar in enumerate(self.bars):
            middle = (at + 0.5) * self._step
            height = bar.minutes / top * room if top else 0.0
            body = QRectF(middle - width / 2, foot - height, width, height)
            if height:
                draw_bar(painter, body, _HOLLOW_KIND if bar.is_open else None, c)
            if at == self._at and self.hasFocus():
                painter.setPen(QPen(QColor(c.ink), 2))
                painter.drawLine(QPointF(body.left(), foot + 2), QPointF(body.right(), foot + 2))
            painter.setPen(QColor(c.ink_soft))
            room_px = painter.fontMetrics().horizontalAdvance(bar.label)
            left = min(max(middle - room_px / 2, 0.0), self.width() - room_px)
            painter.drawText(QPointF(left, foot + 2 + painter.fontMetrics().ascent()), bar.label)

    def _top_words(self, top: float) -> str:
        if not top:
            return tr("No minutes yet")
        return (
            tr("highest {hours} h").format(hours=f"{top / 60:.1f}")
            if top >= 60
            else tr("highest {minutes} min").format(minutes=round(top))
        )

    @property
    def _step(self) -> float:
        return self.width() / max(1, len(self.bars))
