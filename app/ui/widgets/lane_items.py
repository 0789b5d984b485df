"""What lies in a lane: lines, gaps, beats, links.

Items draw in pixels (the painter's transform is taken off first), so that pens and
hatches keep their size however far the player zooms in.
"""

from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from math import ceil
from typing import Any

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import (
    QBrush,
    QColor,
    QFontMetricsF,
    QPainter,
    QPen,
    QPixmap,
    QPolygonF,
    QTransform,
)
from PySide6.QtWidgets import QGraphicsItem, QStyleOptionGraphicsItem, QWidget

from app.services.views import Curve
from app.ui.spoken import said
from app.ui.theme import SMALL_PT, Colours, font

_LEAST_BEAT_PX = 4.0
_LEAST_GAP_PX = 6.0
_LEAST_GAP_S = 1.0
_LEAST_WORDS_PX = 36.0
# With more points than this in a pixel column, smooth edges cost much and show nothing.
_DENSE = 2.0


class LaneItem(QGraphicsItem):
    """Base: covers the lane, draws in pixels, and keeps the picture.

    A playhead that moves thirty times a second uncovers the lanes each time; as long as
    neither the stretch in view nor the content changes, the kept picture is copied.
    """

    def __init__(self, colours: Colours) -> None:
        super().__init__()
        self.colours = colours
        self._extent = QRectF(0.0, -1e4, 1.0, 2e4)
        self._box: Any = None
        self._picture: QPixmap | None = None
        self._drawn_for: tuple[object, ...] = ()

    def lie_in(self, box: Any) -> None:
        """Lie in this pyqtgraph view."""
        self._box = box

    def set_duration(self, duration_s: float) -> None:
        """Say how long the take is, so that the item covers it."""
        self.prepareGeometryChange()
        self._extent = QRectF(0.0, -1e4, max(duration_s, 1.0), 2e4)

    def recolour(self, colours: Colours) -> None:
        """Use another palette."""
        self.colours = colours
        self.redraw()

    def redraw(self) -> None:
        """Draw anew: the content changed."""
        self._picture = None
        self.update()

    def boundingRect(self) -> QRectF:
        """Cover everything; the view clips."""
        return self._extent

    def paint(
        self,
        painter: QPainter,
        option: QStyleOptionGraphicsItem,
        widget: QWidget | None = None,
    ) -> None:
        """Copy the kept picture, drawn anew where it no longer fits."""
        del option, widget
        to_px = painter.worldTransform()
        lane = to_px.mapRect(QRectF(self._box.viewRect()))
        ratio = painter.device().devicePixelRatioF()
        wanted = (lane.getRect(), to_px.m11(), to_px.m22(), to_px.dx(), to_px.dy(), ratio)
        if self._picture is None or wanted != self._drawn_for:
            self._picture = self._drawn(to_px, lane, ratio)
            self._drawn_for = wanted
        painter.save()
        painter.resetTransform()
        painter.drawPixmap(lane.topLeft(), self._picture)
        painter.restore()

    def draw(self, painter: QPainter, to_px: QTransform, lane: QRectF) -> None:
        """Draw; `to_px` maps (seconds, value) to pixels, `lane` is the visible part."""
        raise NotImplementedError

    def _drawn(self, to_px: QTransform, lane: QRectF, ratio: float) -> QPixmap:
        picture = QPixmap(ceil(lane.width() * ratio) + 1, ceil(lane.height() * ratio) + 1)
        picture.setDevicePixelRatio(ratio)
        picture.fill(Qt.GlobalColor.transparent)
        painter = QPainter(picture)
        painter.translate(-lane.topLeft())
        self.draw(painter, to_px, lane)
        painter.end()
        return picture


class CurveItem(LaneItem):
    """A line with gaps."""

    def __init__(
        self, colours: Colours, role: str = "accent", *, dashed: bool = False, width: float = 1.6
    ) -> None:
        super().__init__(colours)
        self._role = role
        self._dashed = dashed
        self._width = width
        self._lines: list[tuple[list[float], list[QPointF]]] = []

    def show_curve(self, curve: Curve) -> None:
        """Take over the segments."""
        self._lines = [_line(xs.tolist(), ys.tolist()) for xs, ys in curve.segments]
        self.redraw()

    def show_points(self, points: Sequence[tuple[float, float]]) -> None:
        """Take over one line without gaps."""
        self._lines = [_line([x for x, _ in points], [y for _, y in points])]
        self.redraw()

    def draw(self, painter: QPainter, to_px: QTransform, lane: QRectF) -> None:
        """Draw what is in view of each segment; a single point as a dot."""
        left_s, right_s = seconds_in(to_px, lane)
        pieces = []
        for xs, points in self._lines:
            first = max(0, bisect_left(xs, left_s) - 1)
            pieces.append(points[first : bisect_right(xs, right_s) + 1])
        is_dense = sum(map(len, pieces)) > _DENSE * lane.width()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, not is_dense)
        pen = QPen(QColor(getattr(self.colours, self._role)), 1.0 if is_dense else self._width)
        if self._dashed:
            pen.setStyle(Qt.PenStyle.DashLine)
        painter.setPen(pen)
        painter.setBrush(pen.color())
        for piece in pieces:
            if len(piece) > 1:
                painter.drawPolyline(to_px.map(QPolygonF(piece)))
            elif piece:
                painter.drawEllipse(to_px.map(piece[0]), 2.0, 2.0)


def _line(xs: list[float], ys: list[float]) -> tuple[list[float], list[QPointF]]:
    return xs, [QPointF(x, y) for x, y in zip(xs, ys, strict=True)]


def pen_at_every_zoom(colour: str, width_px: float) -> QPen:
    """Return a pen of this width in pixels, whatever the transform."""
    pen = QPen(QColor(colour), width_px)
    pen.setCosmetic(True)
    return pen


def draw_gap(painter: QPainter, colours: Colours, rect: QRectF, words: str) -> None:
    """Hatch a stretch without a number, and say why where there is room for it."""
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(QBrush(QColor(colours.line), Qt.BrushStyle.FDiagPattern))
    painter.drawRect(rect)
    if rect.width() < _LEAST_WORDS_PX or not words:
        return
    words = said(words)
    painter.setFont(font(SMALL_PT))
    metrics = QFontMetricsF(painter.font())
    flags = int(Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap)
    room = rect.adjusted(4, 0, -4, 0)
    place = metrics.boundingRect(room, flags, words)
    if not room.adjusted(0, metrics.height(), 0, 0).contains(place):
        return  # words cut short say nothing; the status line says them all
    place.moveBottom(rect.bottom() - metrics.height() / 2)
    painter.fillRect(place.adjusted(-2, -1, 2, 1), QColor(colours.card))
    painter.setPen(QColor(colours.ink_soft))
    painter.drawText(place, flags, words)


def seconds_in(to_px: QTransform, lane: QRectF) -> tuple[float, float]:
    """Return the stretch of time that is visible in a lane."""
    from_px = to_px.inverted()[0]
    return from_px.map(lane.topLeft()).x(), from_px.map(lane.topRight()).x()


class BeatItem(LaneItem):
    """Short strokes at the foot of the lane, one per beat."""

    def __init__(self, colours: Colours) -> None:
        super().__init__(colours)
        self._beats: list[float] = []

    def show_beats(self, beats_s: list[float]) -> None:
        """Take over the beats' times."""
        self._beats = beats_s
        self.redraw()

    def draw(self, painter: QPainter, to_px: QTransform, lane: QRectF) -> None:
        """Draw the strokes along the lane's lower edge."""
        left_s, right_s = seconds_in(to_px, lane)
        first, last = bisect_left(self._beats, left_s), bisect_right(self._beats, right_s)
        if (last - first) * _LEAST_BEAT_PX > lane.width():
            return  # a comb without gaps says nothing
        painter.setPen(QPen(QColor(self.colours.ink_soft), 1.0))
        for beat in self._beats[first:last]:
            x = to_px.map(QPointF(beat, 0.0)).x()
            painter.drawLine(QPointF(x, lane.bottom() - 6), QPointF(x, lane.bottom()))


class GapItem(LaneItem):
    """Where a curve has no value: hatched, and it says why."""

    def __init__(self, colours: Colours) -> None:
        super().__init__(colours)
        self._gaps: list[tuple[float, float]] = []
        self.sentence = ""

    def show_gaps(self, curve: Curve, duration_s: float) -> None:
        """Take over where a curve has no value; nothing where it has none at all."""
        ends = [(float(xs[0]), float(xs[-1])) for xs, _ in curve.segments if xs.size]
        edges = [0.0, *(edge for pair in ends for edge in pair), duration_s] if ends else []
        pairs = zip(edges[::2], edges[1::2], strict=True)
        self._gaps = [(start, end) for start, end in pairs if end - start >= _LEAST_GAP_S]
        self.sentence = curve.gap_sentence
        self.redraw()

    def words_at(self, time_s: float) -> str:
        """Say why there is nothing at a moment; empty where there is something."""
        inside = any(start <= time_s <= end for start, end in self._gaps)
        return self.sentence if inside else ""

    def draw(self, painter: QPainter, to_px: QTransform, lane: QRectF) -> None:
        """Hatch the gaps in view."""
        for start_s, end_s in self._gaps:
            left = to_px.map(QPointF(start_s, 0.0)).x()
            right = to_px.map(QPointF(end_s, 0.0)).x()
            rect = QRectF(left, lane.top(), right - left, lane.height()).intersected(lane)
            if rect.width() >= _LEAST_GAP_PX:
                draw_gap(painter, self.colours, rect, self.sentence)


class LinkItem(LaneItem):
    """Strokes from one take's value to the other's, one per note pair."""

    def __init__(self, colours: Colours) -> None:
        super().__init__(colours)
        self._links: list[tuple[float, float, float]] = []

    def show_links(self, links: list[tuple[float, float, float]]) -> None:
        """Take over (time_s, a value, b value)."""
        self._links = links
        self.redraw()

    def draw(self, painter: QPainter, to_px: QTransform, lane: QRectF) -> None:
        """Draw ring (A), dot (B) and the stroke between them."""
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        ink, accent = QColor(self.colours.ink_soft), QColor(self.colours.accent)
        for time_s, a, b in self._links:
            first, second = to_px.map(QPointF(time_s, a)), to_px.map(QPointF(time_s, b))
            painter.setPen(QPen(accent, 1.2))
            painter.drawLine(first, second)
            painter.setPen(QPen(ink, 1.4))
            painter.setBrush(QColor(self.colours.card))
            painter.drawEllipse(first, 4.0, 4.0)
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(accent)
            painter.drawEllipse(second, 4.0, 4.0)
