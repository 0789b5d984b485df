"""What only one of two takes plays: false starts, repeats, stops, talk."""

from collections.abc import Callable

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QPainter, QPen, QTransform

from app.services.following_views import AlignedPair
from app.ui.theme import Colours
from app.ui.widgets.lane_items import LaneItem


class OnlyItem(LaneItem):
    """Hatches what only A plays; a dotted line stands where B plays something of its own."""

    def __init__(self, colours: Colours) -> None:
        super().__init__(colours)
        self._spans: list[tuple[float, float]] = []
        self._places: list[float] = []

    def show_pair(self, pair: AlignedPair, to_a: Callable[[float], float]) -> None:
        """Take over the parts, on A's time."""
        self._spans = [(part.start_s, part.end_s) for part in pair.only_a]
        self._places = [to_a(part.start_s) for part in pair.only_b]
        self.redraw()

    def clear(self) -> None:
        """Show none."""
        self._spans, self._places = [], []
        self.redraw()

    def draw(self, painter: QPainter, to_px: QTransform, lane: QRectF, part: QRectF) -> None:
        """Draw over the whole height of the lane."""
        del part
        ink = QColor(self.colours.ink_soft)
        for start_s, end_s in self._spans:
            left = to_px.map(QPointF(start_s, 0.0)).x()
            width = max(to_px.map(QPointF(end_s, 0.0)).x() - left, 1.0)
            band = QRectF(left, lane.top(), width, lane.height())
            painter.fillRect(band, QBrush(ink, Qt.BrushStyle.FDiagPattern))
        painter.setPen(QPen(ink, 1.4, Qt.PenStyle.DotLine))
        for place in self._places:
            x = to_px.map(QPointF(place, 0.0)).x()
            painter.drawLine(QPointF(x, lane.top()), QPointF(x, lane.bottom()))


def only_words(pair: AlignedPair) -> str:
    """Say what was left out of the comparison, and where; empty where nothing was."""
    return "\n".join(
        f"{side}: {part.sentence}"
        for side, parts in (("A", pair.only_a), ("B", pair.only_b))
        for part in parts
    )
