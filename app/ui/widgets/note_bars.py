"""The bars of the deviation lane."""

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass, field

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import (
    QBrush,
    QColor,
    QFontMetricsF,
    QPainter,
    QPen,
    QPolygonF,
    QTransform,
)

from app.services.reading_views import NoReading, Reading
from app.services.views import NoteRow
from app.ui.theme import SMALL_PT, Colours, font
from app.ui.widgets.lane_items import LaneItem, draw_gap, pen_at_every_zoom, seconds_in

# Larger deviations are drawn as an arrow at the lane's edge.
DEVIATION_RANGE_CENTS = 55.0
_NARROW_RANGE_CENTS = 27.0
_LEAST_BAR_PX = 2.0
_NAME_ROOM_PX = 22.0
# Narrower bars have no room for hatch, outline and uncertainty.
_LEAST_DETAIL_PX = 3.0
_KINDS = _SHARP, _FLAT, _NONE = range(3)


@dataclass(frozen=True, slots=True)
class PlacedNote:
    """A note with its place on the time axis (another take's notes are moved there)."""

    start_s: float
    end_s: float
    row: NoteRow


@dataclass(slots=True)
class _Bars:
    """What is to be drawn of the wide notes, sorted by pen and brush.

    A call for each kind instead of five for each note keeps a frame short.
    """

    filled: tuple[list[QRectF], list[QRectF]] = field(default_factory=lambda: ([], []))
    hollow: tuple[list[QRectF], list[QRectF]] = field(default_factory=lambda: ([], []))
    whiskers: list[QLineF] = field(default_factory=list)
    arrows: list[QPolygonF] = field(default_factory=list)
    rings: list[QPointF] = field(default_factory=list)
    names: list[tuple[NoteRow, QRectF, bool]] = field(default_factory=list)
    gaps: list[tuple[QRectF, str]] = field(default_factory=list)


@dataclass(frozen=True, slots=True)
class _Strokes:
    """Narrow notes of one kind; ``at`` says which notes they are, ascending."""

    at: list[int]
    lines: list[QLineF]

    @classmethod
    def of(cls, strokes: list[tuple[int, QLineF]], wanted: int) -> "_Strokes":
        """Pick those of a kind."""
        at = [index for index, (kind, _) in enumerate(strokes) if kind == wanted]
        return cls(at, [strokes[index][1] for index in at])

    def between(self, begin: int, end: int) -> list[QLineF]:
        """Give the strokes of the notes from `begin` to before `end`."""
        return self.lines[bisect_left(self.at, begin) : bisect_left(self.at, end)]


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
    line; a note without a number is a gap that says why.
    """

    def __init__(self, colours: Colours, *, outline_only: bool = False) -> None:
        super().__init__(colours)
        self._notes: list[PlacedNote] = []
        self._starts: list[float] = []
        self._lengths: list[float] = []
        self._longest_s = 0.0
        self._strokes: list[tuple[int, QLineF]] = []
        self._of_a_kind: list[_Strokes] = []
        self._outline_only = outline_only
        self.range_cents = DEVIATION_RANGE_CENTS
        self.current_index: int | None = None

    def show_notes(self, notes: Sequence[PlacedNote]) -> None:
        """Take over the notes, in the order of time; set :attr:`range_cents` before."""
        self._notes = list(notes)
        self._starts = [note.start_s for note in notes]
        self._lengths = [note.end_s - note.start_s for note in notes]
        self._longest_s = max(self._lengths, default=0.0)
        self._strokes = [self._stroke(note) for note in notes]
        self._of_a_kind = []
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

    def draw(self, painter: QPainter, to_px: QTransform, lane: QRectF, part: QRectF) -> None:
        """Draw the notes in view: bars where there is room, strokes where there is not."""
        begin, end = self._in_view(to_px, part)
        least_s = (_LEAST_DETAIL_PX + 1.0) / max(to_px.m11(), 1e-9)
        if self._longest_s < least_s:
            self._draw_all_narrow(painter, to_px, lane, begin, end)
            return
        lengths = self._lengths[begin:end]
        narrow = [
            stroke
            for stroke, length in zip(self._strokes[begin:end], lengths, strict=True)
            if length < least_s
        ]
        if narrow:
            first, last = self._in_view(to_px, lane)
            count = sum(length < least_s for length in self._lengths[first:last])
            by_kind = [[line for at, line in narrow if at == kind] for kind in _KINDS]
            self._draw_narrow(painter, to_px, by_kind, _stroke_px(count, lane))
        bars = _Bars()
        for note, length in zip(self._notes[begin:end], lengths, strict=True):
            if length >= least_s:
                self._lay_out(bars, to_px, lane, note)
        self._draw_bars(painter, bars)

    def has_something(self, to_px: QTransform, lane: QRectF) -> bool:
        """See :meth:`LaneItem.has_something`."""
        del to_px, lane
        return bool(self._notes)

    def _draw_all_narrow(
        self, painter: QPainter, to_px: QTransform, lane: QRectF, begin: int, end: int
    ) -> None:
        """Draw notes of which none has room for more than a stroke."""
        if not self._of_a_kind:
            self._of_a_kind = [_Strokes.of(self._strokes, kind) for kind in _KINDS]
        first, last = self._in_view(to_px, lane)
        drawn = [of.between(begin, end) for of in self._of_a_kind]
        self._draw_narrow(painter, to_px, drawn, _stroke_px(last - first, lane))

    def _in_view(self, to_px: QTransform, part: QRectF) -> tuple[int, int]:
        left_s, right_s = seconds_in(to_px, part)
        first = max(0, bisect_left(self._starts, left_s) - 1)
        return first, bisect_left(self._starts, right_s)

    def _stroke(self, note: PlacedNote) -> tuple[int, QLineF]:
        """Give what a note is where it is only a pixel wide, in seconds and cents."""
        middle_s = (note.start_s + note.end_s) / 2
        reading = note.row.deviation
        if not isinstance(reading, Reading):
            return _NONE, QLineF(middle_s, -1.5, middle_s, 1.5)
        shown = max(-self.range_cents, min(self.range_cents, reading.value))
        return _SHARP if shown >= 0 else _FLAT, QLineF(middle_s, 0.0, middle_s, shown)

    def _draw_narrow(
        self,
        painter: QPainter,
        to_px: QTransform,
        by_kind: Sequence[list[QLineF]],
        width_px: float,
    ) -> None:
        roles = (self.colours.sharp, self.colours.flat, self.colours.ink_soft)
        painter.save()
        painter.setTransform(to_px, True)
        for role, strokes in zip(roles, by_kind, strict=True):
            painter.setPen(pen_at_every_zoom(role, width_px))
            painter.drawLines(strokes)
        painter.restore()

    def _lay_out(self, bars: _Bars, to_px: QTransform, lane: QRectF, note: PlacedNote) -> None:
        left = to_px.map(QPointF(note.start_s, 0.0))
        right_x = to_px.map(QPointF(note.end_s, 0.0)).x()
        width, row = max(_LEAST_BAR_PX, right_x - left.x() - 1.0), note.row
        reading = row.deviation
        if isinstance(reading, NoReading):
            bars.gaps.append((QRectF(left.x(), lane.top(), width, lane.height()), reading.sentence))
            return
        limit, zero_y, is_sharp = self.range_cents, left.y(), reading.value >= 0
        tip_y = to_px.map(QPointF(0.0, max(-limit, min(limit, reading.value)))).y()
        if abs(tip_y - zero_y) < _LEAST_BAR_PX:
            tip_y = zero_y + (-_LEAST_BAR_PX if is_sharp else _LEAST_BAR_PX)
        bar = QRectF(left, QPointF(left.x() + width, tip_y)).normalized()
        is_hollow = self._outline_only or not row.certain
        (bars.hollow if is_hollow else bars.filled)[_SHARP if is_sharp else _FLAT].append(bar)
        x = bar.center().x()
        if reading.uncertainty is not None:
            low, high = reading.value - reading.uncertainty, reading.value + reading.uncertainty
            bars.whiskers.append(
                QLineF(
                    QPointF(x, to_px.map(QPointF(0.0, low)).y()),
                    QPointF(x, to_px.map(QPointF(0.0, high)).y()),
                )
            )
        if abs(reading.value) > limit:
            bars.arrows.append(_arrow(bar, up=is_sharp))
        if row.is_open_string:
            bars.rings.append(QPointF(x, zero_y))
        if width >= _NAME_ROOM_PX and not self._outline_only:
            bars.names.append((row, bar, is_sharp))

    def _draw_bars(self, painter: QPainter, bars: _Bars) -> None:
        for rect, sentence in bars.gaps:
            draw_gap(painter, self.colours, rect, sentence)
        patterns = (Qt.BrushStyle.BDiagPattern, Qt.BrushStyle.HorPattern)
        for kind, role in enumerate((self.colours.sharp, self.colours.flat)):
            colour = QColor(role)
            painter.setPen(QPen(colour, 1.3))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRects(bars.hollow[kind])
            wash = QColor(colour)
            wash.setAlpha(70)
            for brush in (QBrush(wash), QBrush(colour, patterns[kind])):
                painter.setBrush(brush)
                painter.drawRects(bars.filled[kind])
        painter.setPen(QPen(QColor(self.colours.ink), 1.0))
        painter.drawLines(bars.whiskers)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(self.colours.ink))
        for arrow in bars.arrows:
            painter.drawPolygon(arrow)
        painter.setPen(QPen(QColor(self.colours.ink), 1.4))
        painter.setBrush(QColor(self.colours.card))
        for ring in bars.rings:
            painter.drawEllipse(ring, 3.5, 3.5)
        self._write_names(painter, bars.names)

    def _write_names(self, painter: QPainter, names: list[tuple[NoteRow, QRectF, bool]]) -> None:
        painter.setFont(font(SMALL_PT))
        metrics = QFontMetricsF(painter.font())
        for row, bar, is_sharp in names:
            if metrics.horizontalAdvance(row.name) > bar.width():
                continue
            is_current = row.index == self.current_index
            painter.setPen(QColor(self.colours.ink if is_current else self.colours.ink_soft))
            # On the other side of the zero line, so that the bar does not hide it.
            y = bar.bottom() + metrics.ascent() + 3 if is_sharp else bar.top() - 4
            painter.drawText(QPointF(bar.left() + 2, y), row.name)


def _stroke_px(count: int, lane: QRectF) -> float:
    """Give the width of a stroke: one pixel, much the quickest pen, where notes crowd."""
    return 1.0 if count * _LEAST_BAR_PX > lane.width() else _LEAST_BAR_PX


def _arrow(bar: QRectF, *, up: bool) -> QPolygonF:
    x = bar.center().x()
    tip = bar.top() + 2 if up else bar.bottom() - 2
    base = tip + 6 if up else tip - 6
    return QPolygonF([QPointF(x, tip), QPointF(x - 4, base), QPointF(x + 4, base)])
