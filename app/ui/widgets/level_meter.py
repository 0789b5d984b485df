"""The input level with its peak hold, and a word for it."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from app.ui.language import tr
from app.ui.spoken import word
from app.ui.theme import SMALL_PT, Theme, font
from app.ui.words import number_text

if TYPE_CHECKING:
    from app.services.views import LevelReading

_FLOOR_DBFS = -60.0
_TICKS_DBFS = (-60, -48, -36, -24, -12, 0)
_BAR_HEIGHT_PX = 16.0


class LevelMeter(QWidget):
    """A bar from -60 to 0 dBFS; the word beside it does not need the colour."""

    def __init__(self, theme: Theme) -> None:
        super().__init__()
        self._theme = theme
        self._reading: LevelReading | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(tr("Input level"))
        theme.changed.connect(lambda _: self.update())

    def sizeHint(self) -> QSize:
        """One bar, its scale and its word."""
        return QSize(320, 56)

    def show_level(self, reading: "LevelReading | None") -> None:
        """Show a reading; ``None``: the input is closed."""
        self._reading = reading
        self.setAccessibleDescription(self.words)
        self.update()

    @property
    def words(self) -> str:
        """The level in words."""
        reading = self._reading
        if reading is None:
            return tr("The input is closed.")
        if reading.peak_dbfs is None:
            return tr("Silence")
        words = word(reading.word.capitalize())
        clipped = tr(", overdriven") if reading.clipped else ""
        hold = reading.hold_dbfs if reading.hold_dbfs is not None else reading.peak_dbfs
        return tr("{word}{clipped}, peak {hold} dBFS").format(
            word=words, clipped=clipped, hold=number_text(hold, 0)
        )

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw bar, hold line, scale and word."""
        c = self._theme.colours
        painter = QPainter(self)
        painter.setFont(font(SMALL_PT))
        metrics = painter.fontMetrics()
        top = metrics.height() + 4.0
        bar = QRectF(0.5, top, self.width() - 1.0, _BAR_HEIGHT_PX)
        painter.setPen(QPen(QColor(c.line), 1))
        painter.setBrush(QColor(c.field))
        painter.drawRect(bar)
        reading = self._reading
        if reading is not None and reading.peak_dbfs is not None:
            filled = QRectF(bar)
            filled.setRight(self._x(reading.peak_dbfs, bar))
            painter.fillRect(
                filled.adjusted(1, 1, 0, -1),
                QColor(c.attention if reading.word == "too loud" else c.accent),
            )
        if reading is not None and reading.hold_dbfs is not None:
            x = self._x(reading.hold_dbfs, bar)
            painter.setPen(QPen(QColor(c.ink), 2))
            painter.drawLine(QPointF(x, bar.top()), QPointF(x, bar.bottom()))
        painter.setPen(QColor(c.ink if reading is not None else c.ink_soft))
        painter.drawText(0, metrics.ascent(), self.words)
        self._draw_scale(painter, bar)

    def _draw_scale(self, painter: QPainter, bar: QRectF) -> None:
        painter.setPen(QColor(self._theme.colours.ink_soft))
        for tick in _TICKS_DBFS:
            x = self._x(float(tick), bar)
            text = number_text(float(tick), 0)
            width = painter.fontMetrics().horizontalAdvance(text) + 2
            left = min(max(0.0, x - width / 2), self.width() - width)
            place = QRectF(left, bar.bottom() + 2, width, painter.fontMetrics().height())
            painter.drawText(place, Qt.AlignmentFlag.AlignCenter, text)

    def _x(self, level_dbfs: float, bar: QRectF) -> float:
        share = (max(_FLOOR_DBFS, min(0.0, level_dbfs)) - _FLOOR_DBFS) / -_FLOOR_DBFS
        return bar.left() + share * bar.width()
