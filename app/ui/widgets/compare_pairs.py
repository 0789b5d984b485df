"""Before and after: each note's deviation in both takes, with its interval."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from app.services.reading_views import Reading
from app.services.views import CompareView, NotePairRow
from app.ui.language import tr
from app.ui.theme import GRID_PX, SMALL_PT, Colours, font
from app.ui.words import number_text, short_day_text

_FOOT_PX = 18.0
_AXIS_PX = 44.0
_BAND_CENTS = 10.0
_TICKS_CENTS = (-40, -20, 0, 20, 40)
_LEAST_RANGE_CENTS = 24.0
_DOT_PX = 3.6


class BeforeAfterPlot(QWidget):
    """Ring before, dot after, a stroke between them; evenly spaced along the notes."""

    def __init__(self, colours: Colours) -> None:
        super().__init__()
        self._colours = colours
        self._view: CompareView | None = None
        self._pairs: list[tuple[NotePairRow, Reading, Reading]] = []
        self.setMinimumHeight(120)
        self.setAccessibleName(tr("Notes before and after"))

    def show_compared(self, view: CompareView) -> None:
        """Draw two takes."""
        self._view = view
        self._pairs = [
            (pair, pair.a_deviation, pair.b_deviation)
            for pair in view.notes
            if isinstance(pair.a_deviation, Reading) and isinstance(pair.b_deviation, Reading)
        ]
        words = tr("Ring: {before}. Dot: {after}. Band: within 10 cents.")
        self.setAccessibleDescription(
            words.format(
                before=short_day_text(view.a.row.practice_day),
                after=short_day_text(view.b.row.practice_day),
            )
        )
        self.update()

    def recolour(self, colours: Colours) -> None:
        """Use another palette."""
        self._colours = colours
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the band, the pairs and their names."""
        if self._view is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setFont(font(SMALL_PT))
        area = QRectF(
            _AXIS_PX,
            GRID_PX,
            max(self.width() - _AXIS_PX - GRID_PX, 1.0),
            max(self.height() - GRID_PX - _FOOT_PX, 1.0),
        )
        if not self._pairs:
            painter.setPen(QColor(self._colours.ink_soft))
            words = self._view.sentence or tr("No note was measured in both takes.")
            painter.drawText(area, Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap, words)
        else:
            edge = max(
                _LEAST_RANGE_CENTS,
                *(1.1 * abs(side.value) for _, *sides in self._pairs for side in sides),
            )
            self._draw_scale(painter, area, edge)
            self._draw_pairs(painter, area, edge)
        painter.end()

    def _draw_scale(self, painter: QPainter, area: QRectF, edge: float) -> None:
        top, bottom = _y(area, edge, _BAND_CENTS), _y(area, edge, -_BAND_CENTS)
        painter.fillRect(
            QRectF(area.left(), top, area.width(), bottom - top), QColor(self._colours.grid)
        )
        for cents in _TICKS_CENTS:
            if abs(cents) > edge:
                continue
            y = _y(area, edge, cents)
            painter.setPen(QColor(self._colours.ink_soft))
            place = QRectF(0.0, y - 8, _AXIS_PX - 6, 16)
            side = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
            painter.drawText(place, side, number_text(cents, 0))
            if cents == 0:
                painter.drawLine(QPointF(area.left(), y), QPointF(area.right(), y))

    def _draw_pairs(self, painter: QPainter, area: QRectF, edge: float) -> None:
        step = area.width() / len(self._pairs)
        apart = min(0.18 * step, 5.0)
        for at, (_pair, before, after) in enumerate(self._pairs):
            middle = area.left() + (at + 0.5) * step
            first = QPointF(middle - apart, _y(area, edge, before.value))
            second = QPointF(middle + apart, _y(area, edge, after.value))
            for place, reading in ((first, before), (second, after)):
                self._draw_interval(painter, area, edge, place.x(), reading)
            painter.setPen(QPen(QColor(self._colours.accent), 1.2))
            painter.drawLine(first, second)
            painter.setPen(QPen(QColor(self._colours.ink_soft), 1.4))
            painter.setBrush(QColor(self._colours.card))
            painter.drawEllipse(first, _DOT_PX, _DOT_PX)
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(QColor(self._colours.accent))
            painter.drawEllipse(second, _DOT_PX, _DOT_PX)
        self._draw_names(painter, area, step)

    def _draw_interval(
        self, painter: QPainter, area: QRectF, edge: float, x: float, reading: Reading
    ) -> None:
        if reading.uncertainty is None:
            return
        painter.setPen(QPen(QColor(self._colours.ink), 1.0))
        low = _y(area, edge, reading.value - reading.uncertainty)
        high = _y(area, edge, reading.value + reading.uncertainty)
        painter.drawLine(QPointF(x, low), QPointF(x, high))

    def _draw_names(self, painter: QPainter, area: QRectF, step: float) -> None:
        metrics = QFontMetricsF(painter.font())
        widest = max(metrics.horizontalAdvance(pair.name) for pair, _, _ in self._pairs)
        every = max(1, -int(-(widest + 3) // step))
        painter.setPen(QColor(self._colours.ink_soft))
        for at in range(0, len(self._pairs), every):
            middle = area.left() + (at + 0.5) * step
            place = QRectF(middle - widest, area.bottom(), 2 * widest, _FOOT_PX)
            painter.drawText(place, Qt.AlignmentFlag.AlignCenter, self._pairs[at][0].name)


def _y(area: QRectF, edge: float, cents: float) -> float:
    return area.center().y() - cents / edge * area.height() / 2
