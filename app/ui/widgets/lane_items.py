"""What lies in a lane: gaps, beats.

Items draw in pixels (the painter's transform is taken off first), so that pens and
hatches keep their size however far the player zooms in.
"""

from bisect import bisect_left, bisect_right
from collections.abc import Iterator
from math import ceil, isclose
from typing import Any

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import (
    QBrush,
    QColor,
    QFontMetricsF,
    QPainter,
    QPen,
    QPixmap,
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
# Qt's hatches come again after so many pixels of the screen, and begin at such a pixel.
_HATCH_PX = 8
# So far from its moment reaches what is drawn of it.
_REACH_PX = 8.0
_FARTHEST_MOVE_PX = 4000.0


class LaneItem(QGraphicsItem):
    """Base: covers the lane, draws in pixels, and keeps the picture.

    A playhead that moves thirty times a second uncovers the lanes each time; as long as
    neither the stretch in view nor the content changes, the kept picture is copied. When the
    view only moves along, the picture moves with it, by whole pixels of the screen, and what
    comes into view is drawn.
    """

    moves_along = True
    """False where what is drawn depends on which part of it is in view."""

    def __init__(self, colours: Colours) -> None:
        super().__init__()
        self.colours = colours
        self._extent = QRectF(0.0, -1e4, 1.0, 2e4)
        self._box: Any = None
        self._picture: QPixmap | None = None
        self._drawn_for: tuple[float, ...] = ()
        self._dx = 0.0
        self._hatch_px = 0

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
        if not self.has_something(to_px, lane):
            self._picture = None
            return
        ratio = painter.device().devicePixelRatioF()
        size = (lane.left(), lane.top(), lane.width(), lane.height())
        wanted = (*size, to_px.m11(), to_px.m22(), to_px.dy(), ratio)
        moved_px = (to_px.dx() - self._dx) * ratio
        if self._picture is None or not self._is_drawn_for(wanted, moved_px):
            self._drawn_for, self._dx = wanted, to_px.dx()
            self._hatch_px = round(to_px.dx() * ratio)
            self._picture = self._picture_for(lane, ratio)
            whole = QRectF(lane.topLeft(), self._picture.deviceIndependentSize())
            self._draw_part(self._picture, to_px, lane, whole)
        elif round(moved_px):
            self._move_along(self._picture, to_px, lane, round(moved_px))
        painter.save()
        painter.resetTransform()
        painter.drawPixmap(lane.topLeft(), self._picture)
        painter.restore()

    def has_something(self, to_px: QTransform, lane: QRectF) -> bool:
        """Say whether anything is to be drawn of what lies in the lane; an empty picture costs."""
        del to_px, lane
        return True

    def draw(self, painter: QPainter, to_px: QTransform, lane: QRectF, part: QRectF) -> None:
        """Draw what lies in `part`.

        Parameters
        ----------
        painter : QPainter
            Draws in pixels.
        to_px : QTransform
            Maps (seconds, value) to pixels.
        lane, part : QRectF
            The visible part of the lane, and what of it is wanted.
        """
        raise NotImplementedError

    def _is_drawn_for(self, wanted: tuple[float, ...], moved_px: float) -> bool:
        if len(wanted) != len(self._drawn_for) or not all(map(_is_same, wanted, self._drawn_for)):
            return False
        return abs(moved_px) < 1e-3 or (self.moves_along and abs(moved_px) < _FARTHEST_MOVE_PX)

    def _picture_for(self, lane: QRectF, ratio: float) -> QPixmap:
        """Give a picture of the lane's size: the one there is, where it fits."""
        size = QSize(ceil(lane.width() * ratio) + 1, ceil(lane.height() * ratio) + 1)
        kept = self._picture
        if kept is not None and kept.size() == size and kept.devicePixelRatio() == ratio:
            return kept
        picture = QPixmap(size)
        picture.setDevicePixelRatio(ratio)
        picture.fill(Qt.GlobalColor.transparent)  # only then can it be seen through
        return picture

    def _move_along(self, picture: QPixmap, to_px: QTransform, lane: QRectF, moved_px: int) -> None:
        """Move the picture, and draw the strip that has come into view."""
        ratio = picture.devicePixelRatio()
        self._dx += moved_px / ratio
        self._hatch_px += moved_px
        at_whole_px = QTransform(
            to_px.m11(), to_px.m12(), to_px.m21(), to_px.m22(), self._dx, to_px.dy()
        )
        picture.scroll(moved_px, 0, picture.rect())
        width = min(abs(moved_px), picture.width()) / ratio
        left = lane.left() + (0 if moved_px > 0 else picture.width() / ratio - width)
        self._draw_part(picture, at_whole_px, lane, QRectF(left, lane.top(), width, lane.height()))

    def _draw_part(self, picture: QPixmap, to_px: QTransform, lane: QRectF, part: QRectF) -> None:
        painter = QPainter(picture)
        painter.translate(-lane.topLeft())
        whole_height = part.adjusted(0, 0, 0, 1)
        painter.setClipRect(whole_height)
        painter.setCompositionMode(QPainter.CompositionMode.CompositionMode_Source)
        painter.fillRect(whole_height, Qt.GlobalColor.transparent)
        painter.setCompositionMode(QPainter.CompositionMode.CompositionMode_SourceOver)
        # Hatches belong to the time they stand for, not to the screen.
        painter.setBrushOrigin(self._hatch_px % _HATCH_PX, 0)
        self.draw(painter, to_px, lane, part.adjusted(-_REACH_PX, 0, _REACH_PX, 0))
        painter.end()


def _is_same(one: float, other: float) -> bool:
    return isclose(one, other, rel_tol=1e-9, abs_tol=1e-6)


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

    def has_something(self, to_px: QTransform, lane: QRectF) -> bool:
        """See :meth:`LaneItem.has_something`; a comb without gaps says nothing."""
        first, last = self._in_view(to_px, lane)
        return 0 < (last - first) * _LEAST_BEAT_PX <= lane.width()

    def draw(self, painter: QPainter, to_px: QTransform, lane: QRectF, part: QRectF) -> None:
        """Draw the strokes along the lane's lower edge."""
        first, last = self._in_view(to_px, part)
        painter.setPen(QPen(QColor(self.colours.ink_soft), 1.0))
        for beat in self._beats[first:last]:
            x = to_px.map(QPointF(beat, 0.0)).x()
            painter.drawLine(QPointF(x, lane.bottom() - 6), QPointF(x, lane.bottom()))

    def _in_view(self, to_px: QTransform, part: QRectF) -> tuple[int, int]:
        left_s, right_s = seconds_in(to_px, part)
        return bisect_left(self._beats, left_s), bisect_right(self._beats, right_s)


class GapItem(LaneItem):
    """Where a curve has no value: hatched, and it says why, in the middle of what is in view."""

    moves_along = False

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

    def draw(self, painter: QPainter, to_px: QTransform, lane: QRectF, part: QRectF) -> None:
        """Hatch the gaps in view."""
        del part
        for rect in self._in_view(to_px, lane):
            draw_gap(painter, self.colours, rect, self.sentence)

    def has_something(self, to_px: QTransform, lane: QRectF) -> bool:
        """See :meth:`LaneItem.has_something`."""
        return any(self._in_view(to_px, lane))

    def _in_view(self, to_px: QTransform, lane: QRectF) -> Iterator[QRectF]:
        """Give the gaps in view, as far as they are wide enough to be seen."""
        for start_s, end_s in self._gaps:
            left = to_px.map(QPointF(start_s, 0.0)).x()
            right = to_px.map(QPointF(end_s, 0.0)).x()
            rect = QRectF(left, lane.top(), right - left, lane.height()).intersected(lane)
            if rect.width() >= _LEAST_GAP_PX:
                yield rect
