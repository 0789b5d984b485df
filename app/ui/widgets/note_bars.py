"""The bars of the deviation lane."""

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QFontMetricsF, QPainter, QPen, QTransform

from app.services.views import NoteRow, Reading
from app.ui.theme import SMALL_PT, Colours, font
from app.ui.widgets.lane_items import LaneItem, seconds_in

# Larger deviations are drawn as an arrow at the lane's edge.
DEVIATION_RANGE_CENTS = 55.0
_NARROW_RANGE_CENTS = 27.0
_LEAST_BAR_PX = 2.0
_NAME_ROOM_PX = 22.0
# Narrower bars have no room for hatch, outline and uncertainty.
_LEAST_DETAIL_PX = 3.0


@dataclass(frozen=True, slots=True)
class PlacedNote:
    """A note with its place on the time axis (another take's notes are moved there)."""

    start_s: float
    end_s: float
    row: NoteRow


def deviation_range(rows: Sequence[NoteRow]) -> float:
    """Return how far the deviation lane reaches up and down, cents: one of two sizes."""
    sizes = [abs(row.deviation.value) for row in rows if isinstance(row.deviation, Reading)]
    return _NARROW_RANGE_CENTS if max(sizes, default=0.0) < 25.0 else DEVIATION_RANGE_CENTS


def placed(rows: Sequence[NoteRow]) -> list[PlacedNote]:
    """Place notes where they were played."""
    return [PlacedNote(row.start_s, row.end_s, row) for row in rows]


class NoteBarsItem(LaneItem):
    """The deviation lane's bars: sharp up, flat down, each with its own hatch.

    Filled where certain, hollow where not; an open string has a ring on the zero
    line; a note without a number is a dashed box there.
    """

    def __init__(self, colours: Colours, *, outline_only: bool = False) -> None:
        super().__init__(colours)
        self._notes: list[PlacedNote] = []
        self._starts: list[float] = []
        self._outline_only = outline_only
        self.range_cents = DEVIATION_RANGE_CENTS
        self.current_index: int | None = None

    def show_notes(self, notes: Sequence[PlacedNote]) -> None:
        """Take over the notes, in the order of time."""
        self._notes = list(notes)
        self._starts = [note.start_s for note in notes]
        self.current_index = None
        self.redraw()

    def set_current(self, index: int | None) -> None:
        """Mark the note that sounds now."""
        if index != self.current_index:
            self.current_index = index
            self.redraw()

    def note_at(self, time_s: float) -> NoteRow | None:
        """Return the note that sounds at `time_s`."""
        at = bisect_left(self._starts, time_s + 1e-9) - 1
        if at >= 0 and self._notes[at].end_s >= time_s:
            return self._notes[at].row
        return None

    def draw(self, painter: QPainter, to_px: QTransform, lane: QRectF) -> None:
        """Draw the notes in view."""
        painter.setFont(font(SMALL_PT))
        left_s, right_s = seconds_in(to_px, lane)
        begin = max(0, bisect_left(self._starts, left_s) - 1)
        end = bisect_left(self._starts, right_s)
        for note in self._notes[begin:end]:
            self._draw_note(painter, to_px, note)

    def _draw_note(self, painter: QPainter, to_px: QTransform, note: PlacedNote) -> None:
        left = to_px.map(QPointF(note.start_s, 0.0))
        right = to_px.map(QPointF(note.end_s, 0.0))
        width = max(_LEAST_BAR_PX, right.x() - left.x() - 1.0)
        reading = note.row.deviation
        if not isinstance(reading, Reading):
            painter.setPen(QPen(QColor(self.colours.ink_soft), 1.0, Qt.PenStyle.DashLine))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(QRectF(left.x(), left.y() - 4, width, 8))
            return
        limit = self.range_cents
        shown = max(-limit, min(limit, reading.value))
        tip_y = to_px.map(QPointF(0.0, shown)).y()
        if abs(tip_y - left.y()) < _LEAST_BAR_PX:
            tip_y = left.y() - (_LEAST_BAR_PX if reading.value >= 0 else -_LEAST_BAR_PX)
        bar = QRectF(QPointF(left.x(), left.y()), QPointF(left.x() + width, tip_y)).normalized()
        if right.x() - left.x() < _LEAST_DETAIL_PX:
            painter.fillRect(bar, QColor(self._colour_of(reading)))
            return
        self._fill_bar(painter, bar, reading.value >= 0, note.row.certain)
        self._draw_uncertainty(painter, to_px, bar.center().x(), reading)
        if abs(reading.value) > limit:
            self._draw_arrow(painter, bar, up=reading.value > 0)
        if note.row.is_open_string:
            painter.setPen(QPen(QColor(self.colours.ink), 1.4))
            painter.setBrush(QColor(self.colours.card))
            painter.drawEllipse(QPointF(bar.center().x(), left.y()), 3.5, 3.5)
        if not self._outline_only:
            self._write_name(painter, note.row, bar, left.y(), above=reading.value >= 0)

    def _colour_of(self, reading: Reading) -> str:
        return self.colours.sharp if reading.value >= 0 else self.colours.flat

    def _fill_bar(self, painter: QPainter, bar: QRectF, sharp: bool, certain: bool) -> None:
        colour = QColor(self.colours.sharp if sharp else self.colours.flat)
        painter.setPen(QPen(colour, 1.3))
        if self._outline_only or not certain:
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(bar)
            return
        wash = QColor(colour)
        wash.setAlpha(70)
        painter.setBrush(wash)
        painter.drawRect(bar)
        pattern = Qt.BrushStyle.BDiagPattern if sharp else Qt.BrushStyle.HorPattern
        painter.setBrush(QBrush(colour, pattern))
        painter.drawRect(bar)

    def _draw_uncertainty(
        self, painter: QPainter, to_px: QTransform, x: float, reading: Reading
    ) -> None:
        if reading.uncertainty is None:
            return
        low = to_px.map(QPointF(0.0, reading.value - reading.uncertainty)).y()
        high = to_px.map(QPointF(0.0, reading.value + reading.uncertainty)).y()
        painter.setPen(QPen(QColor(self.colours.ink), 1.0))
        painter.drawLine(QPointF(x, low), QPointF(x, high))

    def _draw_arrow(self, painter: QPainter, bar: QRectF, *, up: bool) -> None:
        x = bar.center().x()
        tip = bar.top() + 2 if up else bar.bottom() - 2
        base = tip + 6 if up else tip - 6
        painter.setBrush(QColor(self.colours.ink))
        painter.setPen(Qt.PenStyle.NoPen)
        painter.drawPolygon([QPointF(x, tip), QPointF(x - 4, base), QPointF(x + 4, base)])

    def _write_name(
        self, painter: QPainter, row: NoteRow, bar: QRectF, zero_y: float, *, above: bool
    ) -> None:
        width = bar.width()
        if width < _NAME_ROOM_PX:
            return
        metrics = QFontMetricsF(painter.font())
        if metrics.horizontalAdvance(row.name) > width:
            return
        is_current = row.index == self.current_index
        painter.setPen(QColor(self.colours.ink if is_current else self.colours.ink_soft))
        y = zero_y + metrics.ascent() + 3 if above else zero_y - 4
        painter.drawText(QPointF(bar.left() + 2, y), row.name)
