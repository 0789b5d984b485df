"""A curve in a lane: a line with gaps, never more points than the screen can show."""

from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Sequence

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPolygonF, QTransform

from app.services.views import Curve, FloatArray
from app.ui.theme import Colours
from app.ui.widgets.lane_items import LaneItem, seconds_in

# With more points than this in a pixel column, smooth edges cost much and show nothing.
_DENSE = 2.0


class _Line:
    """A piece without gaps; neighbours are merged into lowest and highest where they crowd."""

    def __init__(self, xs: list[float], ys: list[float]) -> None:
        self._xs = xs
        self._ys = ys
        self._merged: dict[int, list[QPointF]] = {}

    def span(self, left: float, right: float) -> tuple[int, int]:
        """Return which points lie between two places, with one more on either side."""
        first = max(0, bisect_left(self._xs, left) - 1)
        return first, min(bisect_right(self._xs, right) + 1, len(self._xs))

    def points(self, first: int, last: int, group: int) -> list[QPointF]:
        """Return these points, each `group` of them as its lowest and highest in their order."""
        if group not in self._merged:
            # Points are made when they are drawn: an hour has many more than a screen shows.
            self._merged[group] = [
                QPointF(self._xs[at], self._ys[at]) for at in self._extremes(group)
            ]
        if group == 1:
            return self._merged[1][first:last]
        return self._merged[group][first // group * 2 : -(-last // group) * 2]

    def _extremes(self, group: int) -> Iterable[int]:
        if group == 1:
            return range(len(self._ys))
        found: list[int] = []
        for at in range(0, len(self._ys), group):
            part = self._ys[at : at + group]
            low, high = part.index(min(part)), part.index(max(part))
            found += (at + low, at + high) if low < high else (at + high, at + low)
        return found


class CurveItem(LaneItem):
    """A line with gaps."""

    def __init__(
        self, colours: Colours, role: str = "accent", *, dashed: bool = False, width: float = 1.6
    ) -> None:
        super().__init__(colours)
        self._role = role
        self._dashed = dashed
        self._width = width
        self._segments: tuple[tuple[FloatArray, FloatArray], ...] = ()
        self._starts: list[float] = []
        self._ends: list[float] = []
        self._lines: dict[int, _Line] = {}

    def show_curve(self, curve: Curve) -> None:
        """Take over the segments; each becomes a line when it first comes into view."""
        self._segments = tuple(segment for segment in curve.segments if segment[0].size)
        self._starts = [float(xs[0]) for xs, _ in self._segments]
        self._ends = [float(xs[-1]) for xs, _ in self._segments]
        self._lines = {}
        self.redraw()

    def show_points(self, points: Sequence[tuple[float, float]]) -> None:
        """Take over one line without gaps."""
        self._segments = ()
        self._starts, self._ends, self._lines = [], [], {}
        if points:
            self._starts, self._ends = [points[0][0]], [points[-1][0]]
            self._lines = {0: _Line([x for x, _ in points], [y for _, y in points])}
        self.redraw()

    def has_something(self, to_px: QTransform, lane: QRectF) -> bool:
        """See :meth:`LaneItem.has_something`."""
        del to_px, lane
        return bool(self._starts)

    def draw(self, painter: QPainter, to_px: QTransform, lane: QRectF, part: QRectF) -> None:
        """Draw what is in view of each segment; a single point as a dot."""
        count = sum(last - first for _, first, last in self._spans(to_px, lane))
        is_dense = count > _DENSE * lane.width()
        group = 1
        while is_dense and count > group * lane.width():
            group *= 2
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, not is_dense)
        pen = QPen(QColor(getattr(self.colours, self._role)), 1.0 if is_dense else self._width)
        if self._dashed:
            pen.setStyle(Qt.PenStyle.DashLine)
        painter.setPen(pen)
        painter.setBrush(pen.color())
        for line, first, last in self._spans(to_px, part):
            piece = line.points(first, last, group)
            if len(piece) > 1:
                painter.drawPolyline(to_px.map(QPolygonF(piece)))
            elif piece:
                painter.drawEllipse(to_px.map(piece[0]), 2.0, 2.0)

    def _spans(self, to_px: QTransform, part: QRectF) -> list[tuple[_Line, int, int]]:
        left_s, right_s = seconds_in(to_px, part)
        shown = range(bisect_left(self._ends, left_s), bisect_right(self._starts, right_s))
        return [(line, *line.span(left_s, right_s)) for line in map(self._line, shown)]

    def _line(self, at: int) -> _Line:
        if at not in self._lines:
            xs, ys = self._segments[at]
            self._lines[at] = _Line(xs.tolist(), ys.tolist())
        return self._lines[at]
