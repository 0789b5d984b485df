"""The sound lane's columns."""

from bisect import bisect_left, bisect_right

from PySide6.QtCore import QLineF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QTransform

from app.services.views import Waveform
from app.ui.theme import Colours
from app.ui.widgets.lane_items import LaneItem, pen_at_every_zoom, seconds_in


class WaveItem(LaneItem):
    """Lowest and highest sample per column, as bars that touch each other."""

    def __init__(self, colours: Colours) -> None:
        super().__init__(colours)
        self._times: list[float] = []
        self._bars: list[QRectF] = []
        self._joins: list[QLineF] = []

    def show_waveform(self, waveform: Waveform) -> None:
        """Take over new columns."""
        times = self._times = waveform.time_s.tolist()
        lows, highs = waveform.low.tolist(), waveform.high.tolist()
        step_s = (times[-1] - times[0]) / max(len(times) - 1, 1) if times else 0.0
        self._bars = [
            QRectF(at, low, step_s, high - low)
            for at, low, high in zip(times, lows, highs, strict=True)
        ]
        # Silence has no height, and near enough to see single samples neighbours do not
        # touch: a thin line from each column to the next is always there.
        places = list(zip(times, lows, highs, strict=True))
        self._joins = [
            QLineF(at, low if low > before_high else high, then, then_low)
            for (at, low, high), (then, then_low, _), before_high in zip(
                places, places[1:], highs[1:], strict=False
            )
        ]
        self.redraw()

    def clear(self) -> None:
        """Show nothing until there are columns."""
        self._times, self._bars, self._joins = [], [], []
        self.redraw()

    def has_something(self, to_px: QTransform, lane: QRectF) -> bool:
        """See :meth:`LaneItem.has_something`."""
        del to_px, lane
        return bool(self._bars)

    def draw(self, painter: QPainter, to_px: QTransform, lane: QRectF, part: QRectF) -> None:
        """Draw the columns in view."""
        del lane
        left_s, right_s = seconds_in(to_px, part)
        first = max(0, bisect_left(self._times, left_s) - 1)
        last = bisect_right(self._times, right_s)
        painter.setTransform(to_px, True)
        painter.setPen(pen_at_every_zoom(self.colours.wave, 1.0))
        painter.drawLines(self._joins[first:last])
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(self.colours.wave))
        painter.drawRects(self._bars[first:last])
