"""What lies in a lane: the sound's columns, lines with gaps, beats, links.

Items draw in pixels (the painter's transform is taken off first), so that pens and
hatches keep their size however far the player zooms in.
"""

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPolygonF, QTransform
from PySide6.QtWidgets import QGraphicsItem, QStyleOptionGraphicsItem, QWidget

from app.services.views import Curve, Waveform
from app.ui.theme import Colours


class LaneItem(QGraphicsItem):
    """Base: covers the lane, draws in pixels."""

    def __init__(self, colours: Colours) -> None:
        super().__init__()
        self.colours = colours
        self._extent = QRectF(0.0, -1e4, 1.0, 2e4)

    def set_duration(self, duration_s: float) -> None:
        """Say how long the take is, so that the item covers it."""
        self.prepareGeometryChange()
        self._extent = QRectF(0.0, -1e4, max(duration_s, 1.0), 2e4)

    def recolour(self, colours: Colours) -> None:
        """Use another palette."""
        self.colours = colours
        self.update()

    def boundingRect(self) -> QRectF:
        """Everything; the view clips."""
        return self._extent

    def paint(
        self,
        painter: QPainter,
        option: QStyleOptionGraphicsItem,
        widget: QWidget | None = None,
    ) -> None:
        """Draw in pixels."""
        del option, widget
        to_px = painter.worldTransform()
        painter.save()
        painter.resetTransform()
        self.draw(painter, to_px)
        painter.restore()

    def draw(self, painter: QPainter, to_px: QTransform) -> None:
        """Draw; `to_px` maps (seconds, value) to pixels."""
        raise NotImplementedError


class WaveItem(LaneItem):
    """Lowest and highest sample per column, filled."""

    def __init__(self, colours: Colours) -> None:
        super().__init__(colours)
        self._outline = QPolygonF()

    def show_waveform(self, waveform: Waveform) -> None:
        """Take over new columns."""
        times = waveform.time_s.tolist()
        top = [QPointF(t, y) for t, y in zip(times, waveform.high.tolist(), strict=True)]
        bottom = [QPointF(t, y) for t, y in zip(times, waveform.low.tolist(), strict=True)]
        self._outline = QPolygonF(top + bottom[::-1])
        self.update()

    def draw(self, painter: QPainter, to_px: QTransform) -> None:
        """Fill the outline."""
        colour = QColor(self.colours.wave)
        painter.setPen(QPen(colour, 1.0))
        painter.setBrush(colour)
        painter.drawPolygon(to_px.map(self._outline))


class CurveItem(LaneItem):
    """A line with gaps."""

    def __init__(
        self, colours: Colours, role: str = "accent", *, dashed: bool = False, width: float = 1.6
    ) -> None:
        super().__init__(colours)
        self._role = role
        self._dashed = dashed
        self._width = width
        self._lines: list[QPolygonF] = []

    def show_curve(self, curve: Curve) -> None:
        """Take over the segments."""
        self._lines = [
            QPolygonF([QPointF(x, y) for x, y in zip(xs.tolist(), ys.tolist(), strict=True)])
            for xs, ys in curve.segments
        ]
        self.update()

    def show_points(self, points: Sequence[tuple[float, float]]) -> None:
        """Take over one line without gaps."""
        self._lines = [QPolygonF([QPointF(x, y) for x, y in points])]
        self.update()

    def draw(self, painter: QPainter, to_px: QTransform) -> None:
        """Draw each segment; a single point as a dot."""
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        pen = QPen(QColor(getattr(self.colours, self._role)), self._width)
        if self._dashed:
            pen.setStyle(Qt.PenStyle.DashLine)
        for line in self._lines:
            painter.setPen(pen)
            mapped = to_px.map(line)
            if mapped.size() == 1:
                painter.setBrush(pen.color())
                painter.drawEllipse(mapped.first(), 2.0, 2.0)
                painter.setBrush(Qt.BrushStyle.NoBrush)
            else:
                painter.drawPolyline(mapped)


class BeatItem(LaneItem):
    """Short strokes at the foot of the lane, one per beat."""

    def __init__(self, colours: Colours) -> None:
        super().__init__(colours)
        self._beats: list[float] = []

    def show_beats(self, beats_s: list[float]) -> None:
        """Take over the beats' times."""
        self._beats = beats_s
        self.update()

    def draw(self, painter: QPainter, to_px: QTransform) -> None:
        """Draw the strokes along the lane's lower edge."""
        painter.setPen(QPen(QColor(self.colours.ink_soft), 1.0))
        bottom = painter.clipBoundingRect().bottom() if painter.hasClipping() else 0.0
        for beat in self._beats:
            x = to_px.map(QPointF(beat, 0.0)).x()
            painter.drawLine(QPointF(x, bottom - 6), QPointF(x, bottom))


class LinkItem(LaneItem):
    """Strokes from one take's value to the other's, one per note pair."""

    def __init__(self, colours: Colours) -> None:
        super().__init__(colours)
        self._links: list[tuple[float, float, float]] = []

    def show_links(self, links: list[tuple[float, float, float]]) -> None:
        """Take over (time_s, a value, b value)."""
        self._links = links
        self.update()

    def draw(self, painter: QPainter, to_px: QTransform) -> None:
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
