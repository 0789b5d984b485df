"""Markers in the lanes: a line through all of them, and a flag above where there is room."""

from bisect import bisect_left, bisect_right
from collections.abc import Callable
from dataclasses import dataclass
from math import ceil
from typing import NamedTuple

from PySide6.QtCore import QPointF, QRect, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPen, QPixmap

from app.journal.kinds import MarkerState
from app.journal.records import Marker
from app.ui.theme import SMALL_PT, Colours, font
from app.ui.widgets.marker_words import category_word

FLAG_ROOM_PX = 24
_FLAG_HEIGHT_PX = 16
_EDGE_PX = 40.0
# A settled marker's line: so many pixels inked, and as many not.
_DASH_PX = 3


@dataclass(frozen=True, slots=True)
class Flag:
    """A marker as drawn: its rectangle in the strip above the lanes."""

    marker: Marker
    rect: QRectF
    kind: "_Kind"


@dataclass(frozen=True, slots=True)
class _Kind:
    """What a flag looks like; flags of a kind share a picture."""

    text: str
    is_settled: bool
    is_chosen: bool


class _Known(NamedTuple):
    """A marker with what placing it asks for each time: plain values are read quickest."""

    marker: Marker
    start_s: float
    end_s: float
    kind: _Kind
    width_px: float


class MarkerFlags:
    """Places and draws the markers of the stretch in view.

    Parameters
    ----------
    colours : Colours
    x_of : function
        Gives the pixel column of a moment in seconds.
    """

    def __init__(self, colours: Colours, x_of: Callable[[float], float]) -> None:
        self.colours = colours
        self._x_of = x_of
        self.markers: tuple[Marker, ...] = ()
        self.chosen = ""
        self.flags: list[Flag] = []
        self._categories: tuple[str, ...] = ()
        self._starts: list[float] = []
        self._longest_s = 0.0
        self._spans: dict[bool, list[QRectF]] = {}
        self._lines: dict[bool, dict[int, int]] = {}
        self._tile: QPixmap | None = None
        self._placed_for: tuple[object, ...] = ()
        self._known: list[_Known] = []
        self._pictures: dict[_Kind, QPixmap] = {}
        self._pictured_for: tuple[object, ...] = ()
        self._tiled_for: tuple[object, ...] = ()

    def show(self, markers: tuple[Marker, ...], categories: tuple[str, ...]) -> None:
        """Take over the markers, in the order of time."""
        if markers == self.markers and categories == self._categories:
            return
        self.markers = markers
        self._categories = categories
        self._starts = [marker.start_s for marker in markers]
        lengths = [m.end_s - m.start_s for m in markers if m.end_s is not None]
        self._longest_s = max(lengths, default=0.0)
        metrics = QFontMetricsF(font(SMALL_PT))
        widths: dict[str, float] = {}
        self._known = []
        for marker in markers:
            text = self._text(marker)
            if text not in widths:
                widths[text] = metrics.horizontalAdvance(text) + 8
            kind = _Kind(text, marker.state is MarkerState.SETTLED, is_chosen=False)
            end_s = max(marker.start_s, marker.end_s or 0.0)
            self._known.append(_Known(marker, marker.start_s, end_s, kind, widths[text]))
        self._placed_for = ()

    def at(self, point: QPointF) -> Marker | None:
        """Return the marker whose flag lies under `point`."""
        for flag in reversed(self.flags):
            if flag.rect.adjusted(-2, -2, 2, 6).contains(point):
                return flag.marker
        return None

    def draw(self, painter: QPainter, span: QRectF, exposed: QRectF) -> None:
        """Draw over the lanes, which cover `span`; flags only where `exposed`."""
        self._place(span)
        ratio = painter.device().devicePixelRatioF()
        painter.setPen(Qt.PenStyle.NoPen)
        for is_settled, spans in self._spans.items():
            painter.setBrush(self._colour(is_settled=is_settled))
            painter.drawRects(spans)
        if any(self._lines.values()):
            tile = self._tile_for(span, ratio)
            size = tile.deviceIndependentSize()
            top = span.top() - 4
            painter.drawTiledPixmap(
                QRectF(round(span.left()), top, size.width(), span.bottom() - top), tile
            )
        left, right = exposed.left() - _EDGE_PX, exposed.right() + _EDGE_PX
        for flag in self.flags:
            if left <= flag.rect.left() <= right:
                kind = flag.kind
                if flag.marker.id == self.chosen:
                    kind = _Kind(kind.text, kind.is_settled, is_chosen=True)
                picture = self._picture(kind, flag.rect.width(), ratio)
                painter.drawPixmap(flag.rect.topLeft(), picture)

    def _tile_for(self, span: QRectF, ratio: float) -> QPixmap:
        """Give the lines as a low picture, as wide as the lanes, that repeats downwards.

        It is copied over the lanes much quicker than hundreds of lines are drawn.
        """
        if self._tile is not None and self._tiled_for == (self.colours, ratio):
            return self._tile
        self._tiled_for = (self.colours, ratio)
        left = round(span.left())
        width = ceil(span.width()) + 1
        tile = QPixmap(ceil(width * ratio), round(2 * _DASH_PX * ratio))
        tile.setDevicePixelRatio(ratio)
        tile.fill(Qt.GlobalColor.transparent)
        painter = QPainter(tile)
        painter.setPen(Qt.PenStyle.NoPen)
        for is_settled, weights in self._lines.items():
            height = _DASH_PX if is_settled else 2 * _DASH_PX
            painter.setBrush(self._colour(is_settled=is_settled))
            painter.drawRects([QRect(x - left, 0, weight, height) for x, weight in weights.items()])
        painter.end()
        self._tile = tile
        return tile

    def _place(self, span: QRectF) -> None:
        """Give each marker in view its line and, where there is room, its flag.

        Kept as long as neither view nor markers change: the playhead uncovers a strip
        thirty times a second. Of lines in one pixel column the heaviest is drawn.
        """
        left, per_s = self._x_of(0.0), self._x_of(1.0) - self._x_of(0.0)
        wanted = (span.getRect(), left, per_s, self.chosen)
        if wanted == self._placed_for:
            return
        self._placed_for = wanted
        self._tile = None
        flags, top, taken, chosen = [], span.top() - 4, -1e9, self.chosen
        spans = self._spans = {False: [], True: []}
        lines = self._lines = {False: {}, True: {}}
        first_s = (span.left() - _EDGE_PX - left) / per_s
        last_s = (span.right() + _EDGE_PX - left) / per_s
        begin = bisect_left(self._starts, first_s - self._longest_s)
        end = bisect_right(self._starts, last_s)
        for marker, start_s, end_s, kind, width in self._known[begin:end]:
            if end_s < first_s:
                continue
            x = left + start_s * per_s
            column = round(x)
            if x >= taken or marker.id == chosen:
                taken = x + width
                flag = QRectF(column, top - _FLAG_HEIGHT_PX, width, _FLAG_HEIGHT_PX)
                flags.append(Flag(marker, flag, kind))
            weights = lines[kind.is_settled]
            if weights.get(column, 0) < marker.weight:
                weights[column] = marker.weight
            if end_s > start_s:
                spans[kind.is_settled].append(QRectF(x, top, (end_s - start_s) * per_s, 2.0))
        self.flags = flags

    def _picture(self, kind: _Kind, width: float, ratio: float) -> QPixmap:
        if self._pictured_for != (self.colours, ratio):
            self._pictured_for = (self.colours, ratio)
            self._pictures = {}
        picture = self._pictures.get(kind)
        if picture is None:
            picture = self._pictures[kind] = self._drawn(kind, width, ratio)
        return picture

    def _drawn(self, kind: _Kind, width: float, ratio: float) -> QPixmap:
        picture = QPixmap(ceil((width + 1) * ratio), ceil((_FLAG_HEIGHT_PX + 1) * ratio))
        picture.setDevicePixelRatio(ratio)
        picture.fill(Qt.GlobalColor.transparent)
        painter = QPainter(picture)
        colour = self._colour(is_settled=kind.is_settled)
        place = QRectF(0.0, 0.0, width, _FLAG_HEIGHT_PX)
        painter.setFont(font(SMALL_PT))
        painter.setPen(QPen(colour, 1.0))
        painter.setBrush(QColor(self.colours.accent if kind.is_chosen else self.colours.card))
        painter.drawRoundedRect(place, 2, 2)
        painter.setPen(QColor(self.colours.accent_ink) if kind.is_chosen else colour)
        painter.drawText(place, Qt.AlignmentFlag.AlignCenter, kind.text)
        painter.end()
        return picture

    def _colour(self, *, is_settled: bool) -> QColor:
        return QColor(self.colours.ink_soft if is_settled else self.colours.ink)

    def _text(self, marker: Marker) -> str:
        """Give the digit of the category's key, with a tick where the matter is settled."""
        if marker.category in self._categories:
            sign = str(self._categories.index(marker.category) + 1)
        else:
            sign = category_word(marker.category)[:3]
        return f"{sign} ✓" if marker.state is MarkerState.SETTLED else sign
