"""The written hairpins in the loudness lane."""

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QColor, QPainter, QPen, QTransform

from app.services.following_views import HairpinRow
from app.ui.theme import Colours
from app.ui.widgets.lane_items import LaneItem

_HEIGHT_PX = 9.0
_ABOVE_FOOT_PX = 4.0


class HairpinItem(LaneItem):
    """Wedges along the lane's foot, as they are printed below the notes."""

    def __init__(self, colours: Colours) -> None:
        super().__init__(colours)
        self._hairpins: tuple[HairpinRow, ...] = ()

    def show_hairpins(self, hairpins: Sequence[HairpinRow]) -> None:
        """Take over the hairpins, on A's time."""
        self._hairpins = tuple(hairpins)
        self.redraw()

    def draw(self, painter: QPainter, to_px: QTransform, lane: QRectF, part: QRectF) -> None:
        """Draw each as two strokes that open or close."""
        del part
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(QColor(self.colours.ink), 1.5))
        middle = lane.bottom() - _ABOVE_FOOT_PX - _HEIGHT_PX / 2
        for hairpin in self._hairpins:
            ends = [to_px.map(QPointF(at, 0.0)).x() for at in (hairpin.start_s, hairpin.end_s)]
            closed, wide = ends if hairpin.kind == "crescendo" else ends[::-1]
            for side in (-1, 1):
                painter.drawLine(
                    QPointF(closed, middle), QPointF(wide, middle + side * _HEIGHT_PX / 2)
                )
