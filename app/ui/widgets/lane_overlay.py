"""What runs through all lanes: selection, markers, playhead, lane titles."""

from collections.abc import Callable
from dataclasses import dataclass, field

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QFontMetricsF, QPainter, QPen
from PySide6.QtWidgets import QGraphicsItem, QStyleOptionGraphicsItem, QWidget

from app.journal.records import Marker, MarkerState
from app.ui.spoken import said
from app.ui.theme import SMALL_PT, Colours, font
from app.ui.widgets.marker_words import category_word

FLAG_ROOM_PX = 24
_FLAG_HEIGHT_PX = 16
_PLAYHEAD_ROOM_PX = 6
_PENDING_PX = 6


@dataclass(slots=True)
class LaneFrame:
    """Where a lane lies, its title, and why there is nothing in it."""

    title: str
    rect: QRectF = field(default_factory=QRectF)
    gap_sentence: str = ""
    is_shown: bool = True


@dataclass(frozen=True, slots=True)
class Flag:
    """A marker as drawn: its rectangle in the strip above the lanes."""

    marker: Marker
    rect: QRectF


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
        self.chosen_marker = ""
        self.chosen_lane: int | None = None
        self.marker_flags: list[Flag] = []
        self._markers: tuple[Marker, ...] = ()
        self._categories: tuple[str, ...] = ()
        self._exposed = QRectF()
        self._placed_for: tuple[object, ...] = ()
        self._marker_bars: dict[bool, list[QRectF]] = {}
        self.setFlag(QGraphicsItem.GraphicsItemFlag.ItemUsesExtendedStyleOption)
        self.setZValue(1000)
        self.setAcceptedMouseButtons(Qt.MouseButton.NoButton)

    def cover(self, area: QRectF, lanes: list[QRectF]) -> None:
        """Lie over `area`, in which the lanes lie like this (pixels)."""
        self.prepareGeometryChange()
        self._area = area
        for frame, rect in zip(self.frames, lanes, strict=True):
            frame.rect = rect

    def set_playhead(self, position_s: float | None) -> None:
        """Move the playhead, repainting only two narrow strips."""
        self._refresh_strip(self.playhead_s)
        self.playhead_s = position_s
        self._refresh_strip(position_s)

    def set_markers(self, markers: tuple[Marker, ...], categories: tuple[str, ...]) -> None:
        """Show these markers."""
        self._markers = markers
        self._categories = categories
        self.update()

    def marker_at(self, point: QPointF) -> Marker | None:
        """Return the marker whose flag lies under `point`."""
        for flag in reversed(self.marker_flags):
            if flag.rect.adjusted(-2, -2, 2, 6).contains(point):
                return flag.marker
        return None

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
        self._exposed = QRectF(option.exposedRect)
        first, last = shown[0], shown[-1]
        span = QRectF(first.left(), first.top(), first.width(), last.bottom() - first.top())
        painter.setFont(font(SMALL_PT))
        self._draw_titles(painter)
        painter.save()
        painter.setClipRect(span.adjusted(0, -FLAG_ROOM_PX, 0, 0))
        self._draw_selection(painter, span)
        self._draw_markers(painter, span)
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
                painter.drawText(
                    frame.rect.adjusted(16, 0, -16, 0),
                    Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap,
                    said(frame.gap_sentence),
                )

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

    def _draw_markers(self, painter: QPainter, span: QRectF) -> None:
        self._place_flags(span)
        painter.setPen(Qt.PenStyle.NoPen)
        for settled, bars in self._marker_bars.items():
            colour = QColor(self.colours.ink_soft if settled else self.colours.ink)
            # A settled one is dotted.
            pattern = Qt.BrushStyle.Dense4Pattern if settled else Qt.BrushStyle.SolidPattern
            painter.setBrush(QBrush(colour, pattern))
            painter.drawRects(bars)
        left, right = self._exposed.left() - 40, self._exposed.right() + 40
        for flag in self.marker_flags:
            if left <= flag.rect.left() <= right:
                self._draw_flag(painter, flag, self._marker_colour(flag.marker))

    def _draw_pending(self, painter: QPainter, span: QRectF) -> None:
        """Draw the span of a marker whose key is still held."""
        if self.pending is not None:
            left, right = (self._x_of(edge) for edge in self.pending)
            bar = QRectF(left, span.top() - _PENDING_PX, right - left, _PENDING_PX)
            painter.fillRect(bar, QColor(self.colours.accent))

    def _marker_colour(self, marker: Marker) -> QColor:
        settled = marker.state is MarkerState.SETTLED
        return QColor(self.colours.ink_soft if settled else self.colours.ink)

    def _place_flags(self, span: QRectF) -> None:
        """Give each marker in view its line and, where there is room, its flag.

        Kept as long as neither view nor markers change: the playhead uncovers a strip
        thirty times a second.
        """
        left, per_s = self._x_of(0.0), self._x_of(1.0) - self._x_of(0.0)
        wanted = (span.getRect(), left, per_s, self._markers, self._categories, self.chosen_marker)
        if wanted == self._placed_for:
            return
        self._placed_for = wanted
        self.marker_flags = []
        self._marker_bars = {False: [], True: []}
        metrics = QFontMetricsF(font(SMALL_PT))
        widths: dict[str, float] = {}
        top, height, taken = span.top() - 4, span.height() + 4, -1e9
        for marker in self._markers:
            x = left + marker.start_s * per_s
            end_x = x if marker.end_s is None else left + marker.end_s * per_s
            if end_x < span.left() - 40 or x > span.right() + 40:
                continue
            if x >= taken or marker.id == self.chosen_marker:
                text = self._flag_text(marker)
                if text not in widths:
                    widths[text] = metrics.horizontalAdvance(text) + 8
                taken = x + widths[text]
                flag = QRectF(x, top - _FLAG_HEIGHT_PX, widths[text], _FLAG_HEIGHT_PX)
                self.marker_flags.append(Flag(marker, flag))
            bars = self._marker_bars[marker.state is MarkerState.SETTLED]
            bars.append(QRectF(round(x), top, marker.weight, height))
            if end_x > x:
                bars.append(QRectF(x, top, end_x - x, 2.0))

    def _draw_flag(self, painter: QPainter, flag: Flag, colour: QColor) -> None:
        is_chosen = flag.marker.id == self.chosen_marker
        painter.setPen(QPen(colour, 1.0))
        painter.setBrush(QColor(self.colours.accent if is_chosen else self.colours.card))
        painter.drawRoundedRect(flag.rect, 2, 2)
        painter.setPen(QColor(self.colours.accent_ink) if is_chosen else colour)
        painter.drawText(flag.rect, Qt.AlignmentFlag.AlignCenter, self._flag_text(flag.marker))

    def _flag_text(self, marker: Marker) -> str:
        """Give the digit of the category's key, with a tick where the matter is settled."""
        if marker.category in self._categories:
            sign = str(self._categories.index(marker.category) + 1)
        else:
            sign = category_word(marker.category)[:3]
        return f"{sign} ✓" if marker.state is MarkerState.SETTLED else sign

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
