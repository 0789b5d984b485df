"""What runs through all lanes: selection, markers, playhead, lane titles."""

from collections.abc import Callable
from dataclasses import dataclass, field

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPen
from PySide6.QtWidgets import QGraphicsItem, QStyleOptionGraphicsItem, QWidget

from app.ui.spoken import said
from app.ui.theme import SMALL_PT, Colours, font
from app.ui.widgets.marker_flags import FLAG_ROOM_PX, MarkerFlags

_PLAYHEAD_ROOM_PX = 6
_PENDING_PX = 6


@dataclass(slots=True)
class LaneFrame:
    """Where a lane lies, its title, and why there is nothing in it."""

    title: str
    rect: QRectF = field(default_factory=QRectF)
    gap_sentence: str = ""
    is_shown: bool = True


class LaneOverlay(QGraphicsItem):
    """Lies over all lanes in pixel coordinates."""

    def __init__(self, colours: Colours, x_of: Callable[[float], float]) -> None:
        super().__init__()
        self.colours = colours
        self._x_of = x_of
        self._area = QRectF()
        self.frames: list[LaneFrame] = []
        self.playhead_s: float | None = None
        self.selection: tuple[float, float] | None = None
        self.is_looping = False
        self.pending: tuple[float, float] | None = None
        self.chosen_lane: int | None = None
        self.marker_flags = MarkerFlags(colours, x_of)
        self.setFlag(QGraphicsItem.GraphicsItemFlag.ItemUsesExtendedStyleOption)
        self.setZValue(1000)
        self.setAcceptedMouseButtons(Qt.MouseButton.NoButton)

    def cover(self, area: QRectF, lanes: list[QRectF]) -> None:
        """Lie over `area`, in which the lanes lie like this (pixels)."""
        self.prepareGeometryChange()
        self._area = area
        for frame, rect in zip(self.frames, lanes, strict=True):
            frame.rect = rect

    def recolour(self, colours: Colours) -> None:
        """Use another palette."""
        self.colours = self.marker_flags.colours = colours
        self.update()

    def set_playhead(self, position_s: float | None) -> None:
        """Move the playhead, repainting only two narrow strips."""
        self._refresh_strip(self.playhead_s)
        self.playhead_s = position_s
        self._refresh_strip(position_s)

    def boundingRect(self) -> QRectF:
        """Cover the whole stack of lanes."""
        return self._area

    def paint(
        self,
        painter: QPainter,
        option: QStyleOptionGraphicsItem,
        widget: QWidget | None = None,
    ) -> None:
        """Draw from back to front."""
        del widget
        shown = [frame.rect for frame in self.frames if frame.is_shown]
        if not shown:
            return
        exposed = QRectF(option.exposedRect)
        first, last = shown[0], shown[-1]
        span = QRectF(first.left(), first.top(), first.width(), last.bottom() - first.top())
        painter.setFont(font(SMALL_PT))
        self._draw_titles(painter)
        painter.save()
        painter.setClipRect(span.adjusted(0, -FLAG_ROOM_PX, 0, 0))
        self._draw_selection(painter, span)
        self.marker_flags.draw(painter, span, exposed)
        self._draw_pending(painter, span)
        self._draw_playhead(painter, span)
        painter.restore()

    def _refresh_strip(self, position_s: float | None) -> None:
        if position_s is None:
            return
        x = self._x_of(position_s)
        self.update(QRectF(x - _PLAYHEAD_ROOM_PX, self._area.top(), 12.0, self._area.height()))

    def _draw_titles(self, painter: QPainter) -> None:
        metrics = QFontMetricsF(painter.font())
        for lane, frame in enumerate(self.frames):
            if not frame.is_shown:
                continue
            painter.setPen(QPen(QColor(self.colours.line), 1))
            painter.drawLine(frame.rect.bottomLeft(), frame.rect.bottomRight())
            is_chosen = lane == self.chosen_lane
            painter.setPen(QColor(self.colours.ink if is_chosen else self.colours.ink_soft))
            width = metrics.horizontalAdvance(frame.title) + 8
            place = QRectF(frame.rect.left() + 4, frame.rect.top() + 3, width, metrics.height() + 2)
            ground = QColor(self.colours.card)
            ground.setAlpha(215)
            painter.fillRect(place, ground)
            painter.drawText(place, Qt.AlignmentFlag.AlignCenter, frame.title)
            if is_chosen:
                painter.drawLine(place.bottomLeft(), place.bottomRight())
            if frame.gap_sentence:
                self._draw_gap_sentence(painter, frame)

    def _draw_gap_sentence(self, painter: QPainter, frame: LaneFrame) -> None:
        """Write it in the middle of the lane, so that no line goes through it."""
        flags = int(Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap)
        room, words = frame.rect.adjusted(16, 0, -16, 0), said(frame.gap_sentence)
        place = painter.boundingRect(room, flags, words)
        painter.fillRect(place.adjusted(-4, -1, 4, 1), QColor(self.colours.card))
        painter.drawText(room, flags, words)

    def _draw_selection(self, painter: QPainter, span: QRectF) -> None:
        if self.selection is None:
            return
        left, right = (self._x_of(edge) for edge in self.selection)
        band = QRectF(left, span.top(), max(1.0, right - left), span.height())
        wash = QColor(self.colours.accent)
        wash.setAlpha(38)
        painter.fillRect(band, wash)
        pen = QPen(QColor(self.colours.accent), 1.5 if self.is_looping else 1.0)
        pen.setStyle(Qt.PenStyle.SolidLine if self.is_looping else Qt.PenStyle.DashLine)
        painter.setPen(pen)
        painter.drawLine(band.topLeft(), band.bottomLeft())
        painter.drawLine(band.topRight(), band.bottomRight())

    def _draw_pending(self, painter: QPainter, span: QRectF) -> None:
        """Draw the span of a marker whose key is still held."""
        if self.pending is not None:
            left, right = (self._x_of(edge) for edge in self.pending)
            bar = QRectF(left, span.top() - _PENDING_PX, right - left, _PENDING_PX)
            painter.fillRect(bar, QColor(self.colours.accent))

    def _draw_playhead(self, painter: QPainter, span: QRectF) -> None:
        if self.playhead_s is None:
            return
        x = self._x_of(self.playhead_s)
        painter.setPen(QPen(QColor(self.colours.accent), 2.0))
        painter.drawLine(QPointF(x, span.top()), QPointF(x, span.bottom()))
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(self.colours.accent))
        top = span.top()
        painter.drawPolygon([QPointF(x - 5, top), QPointF(x + 5, top), QPointF(x, top + 7)])
