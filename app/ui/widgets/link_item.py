"""Links between the notes of two takes."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QTransform

from app.ui.theme import Colours
from app.ui.widgets.lane_items import LaneItem, seconds_in


class LinkItem(LaneItem):
    """Strokes from one take's value to the other's, one per note pair."""

    def __init__(self, colours: Colours) -> None:
        super().__init__(colours)
        self._links: list[tuple[float, float, float]] = []

    def show_links(self, links: list[tuple[float, float, float]]) -> None:
        """Take over (time_s, a value, b value)."""
        self._links = links
        self.redraw()

    def draw(self, painter: QPainter, to_px: QTransform, lane: QRectF, part: QRectF) -> None:
        """Draw ring (A), dot (B) and the stroke between them."""
        del lane
        left_s, right_s = seconds_in(to_px, part)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        ink, accent = QColor(self.colours.ink_soft), QColor(self.colours.accent)
        for time_s, a, b in self._links:
            if not left_s <= time_s <= right_s:
                continue
            first, second = to_px.map(QPointF(time_s, a)), to_px.map(QPointF(time_s, b))
            painter.setPen(QPen(accent, 1.2))
            painter.drawLine(first, second)
            painter.setPen(QPen(ink, 1.4))
            painter.setBrush(QColor(self.colours.card))
            painter.drawEllipse(first, 4.0, 4.0)
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(accent)
            painter.drawEllipse(second, 4.0, 4.0)
