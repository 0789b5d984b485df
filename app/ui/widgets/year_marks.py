"""What one day of the year looks like, and the legend that says so.

Every mark is told from the others by its shape or hatch, never by its colour alone. The
hatches are drawn as lines of their own, so that a picture, a drawing and a printed page
show the same ones.
"""

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from app.journal.day_names import DayName, kind_of
from app.services.views import DayBar
from app.ui.language import mark, tr
from app.ui.theme import SMALL_PT, Colours, Theme, font
from app.ui.words import counted, day_text, listed, minutes_text

FOOT_PX = 12.0
"""Below a day's bar: the marks of its clips."""
SWATCH = QRectF(0.0, 0.0, 14.0, 14.0)
_GAP_PX = 18.0
_LINE_PX = 19.0
_HATCH_STEP_PX = 4.0
_REST_PX = 8.0
"""How far over the foot of a day its mark of rest lies."""

TAKEN, SHARED, PLANNED, MARKED, EMPTY, LATE, PAUSED, TODAY = range(8)
MARKS: tuple[tuple[int, str], ...] = (
    (TAKEN, mark("a take was made")),
    (SHARED, mark("a clip was shared")),
    (PLANNED, mark("planned rest")),
    (MARKED, mark("rest marked afterwards")),
    (EMPTY, mark("nothing noted")),
    (LATE, mark("entered later")),
    (PAUSED, mark("a promise pauses")),
    (TODAY, mark("today")),
)


def bar_words(bar: DayBar, names: Sequence[DayName] = ()) -> str:
    """Return a day in words, kind and factual."""
    parts = [day_text(bar.practice_day)]
    if bar.minutes is not None:
        kind = kind_of(bar.minutes, names)
        named = "" if kind is None else f" ({names[kind].name})"
        parts.append(minutes_text(bar.minutes) + named)
    if bar.take_count:
        parts.append(counted(bar.take_count, "take"))
    if bar.is_shared:
        parts.append(tr("a clip shared"))
    if bar.rest == "planned":
        parts.append(tr("rest, planned"))
    elif bar.rest == "marked":
        parts.append(tr("rest, marked afterwards"))
    elif bar.missed:
        parts.append(tr("no practice noted"))
    if bar.late:
        parts.append(tr("entered later"))
    if bar.paused:
        parts.append(tr("on a break: {promises}").format(promises=listed(bar.paused)))
    return ", ".join(parts)


def draw_bar(painter: QPainter, body: QRectF, kind: int | None, colours: Colours) -> None:
    """Fill a bar: plain for a day above every threshold, hatched for a named kind."""
    accent = QColor(colours.accent)
    if kind is None:
        painter.fillRect(body, accent)
        return
    painter.save()
    painter.setClipRect(body, Qt.ClipOperation.IntersectClip)
    painter.setPen(QPen(accent, 1.2))
    if kind in (1, 3):
        _hatch(painter, body, body.width())
    if kind in (2, 3):
        _hatch(painter, body, 0.0)
    painter.restore()
    painter.setPen(QPen(accent, 1.2))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRect(body.adjusted(0.6, 0.6, -0.6, -0.6))


def _hatch(painter: QPainter, body: QRectF, rise: float) -> None:
    """Draw lines that rise by `rise` over the width, level ones for 0."""
    # Counted from the foot, so that neighbouring bars carry one continuous pattern.
    offset = _HATCH_STEP_PX - rise
    while offset < body.height() + body.width():
        left = QPointF(body.left(), body.bottom() - offset)
        painter.drawLine(left, QPointF(body.right(), left.y() - rise))
        offset += _HATCH_STEP_PX


def draw_marks(painter: QPainter, bar: DayBar, cell: QRectF, bar_top: float, c: Colours) -> None:
    """Draw everything about a day but its bar."""
    if bar.late and (bar.minutes or bar.take_count):
        _draw_mark(painter, LATE, QPointF(cell.center().x(), bar_top - 3), c)
    foot = QPointF(cell.center().x(), cell.bottom())
    if bar.take_count:
        _draw_mark(painter, TAKEN, foot + QPointF(0, 3.5), c)
    if bar.is_shared:
        _draw_mark(painter, SHARED, foot + QPointF(0, 8.5), c)
    if bar.rest:
        which = PLANNED if bar.rest == "planned" else MARKED
        # On a day that was practised all the same: in its bar as a hole, or over a low one.
        height = foot.y() - bar_top if bar.minutes else 0.0
        is_inside = height > _REST_PX + 3
        at = _REST_PX if is_inside or height < _REST_PX - 3 else height + 5
        _draw_mark(painter, which, foot - QPointF(0, at), c, c.card if is_inside else "")
    elif bar.missed and not bar.minutes and not bar.take_count:
        _draw_mark(painter, EMPTY, foot - QPointF(0, 5), c)
    if bar.paused:
        painter.setPen(QPen(QColor(c.ink_soft), 1.2, Qt.PenStyle.DashLine))
        over = cell.top() + 1
        painter.drawLine(QPointF(cell.left(), over), QPointF(cell.right(), over))


def draw_today(painter: QPainter, cell: QRectF, c: Colours) -> None:
    """Mark today over its bar."""
    _draw_mark(painter, TODAY, QPointF(cell.center().x(), cell.top() + 4), c)


def _draw_mark(painter: QPainter, which: int, at: QPointF, c: Colours, colour: str = "") -> None:
    painter.setBrush(Qt.BrushStyle.NoBrush)
    x, y = at.x(), at.y()
    if which == TAKEN:
        painter.setPen(QPen(QColor(c.accent), 2.0))
        painter.drawLine(QPointF(x - 6, y), QPointF(x + 6, y))
    elif which == SHARED:
        painter.setPen(QPen(QColor(c.accent), 1.2))
        corners = [QPointF(x - 4, y), QPointF(x, y - 3), QPointF(x + 4, y), QPointF(x, y + 3)]
        painter.drawPolygon(QPolygonF(corners))
    elif which in (PLANNED, MARKED):
        # A short level stroke, like a rest hanging from its line.
        painter.setPen(QPen(QColor(colour or c.ink_soft), 1.2))
        if which == PLANNED:
            painter.setBrush(QColor(colour or c.ink_soft))
        painter.drawRect(QRectF(x - 4, y - 2, 8, 4))
    elif which == EMPTY:
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(c.ink_soft))
        painter.drawEllipse(at, 2.0, 2.0)
    elif which == LATE:
        painter.setPen(QPen(QColor(c.ink), 1.4))
        painter.drawLine(QPointF(x - 3, y), QPointF(x + 3, y))
    elif which == PAUSED:
        painter.setPen(QPen(QColor(c.ink_soft), 1.2, Qt.PenStyle.DashLine))
        painter.drawLine(QPointF(x - 7, y), QPointF(x + 7, y))
    elif which == TODAY:
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(c.ink))
        corners = [QPointF(x - 4, y - 3), QPointF(x + 4, y - 3), QPointF(x, y + 3)]
        painter.drawPolygon(QPolygonF(corners))


class Legend:
    """What the bars and marks mean, drawn as signs with their words beside them."""

    def __init__(self, names: Sequence[DayName], top_minutes: float) -> None:
        if names:
            above = tr("more than {minutes} (the highest {top})").format(
                minutes=minutes_text(names[-1].up_to_min), top=minutes_text(top_minutes)
            )
        else:
            above = tr("minutes of the day (the highest {top})").format(
                top=minutes_text(top_minutes)
            )
        bars = [
            (at, tr("{name}, up to {minutes}").format(
                name=one.name, minutes=minutes_text(one.up_to_min)))
            for at, one in enumerate(names)
        ]  # fmt: skip
        self._bars: list[tuple[int | None, str]] = [*bars, (None, above)]
        self._marks = [(which, tr(words)) for which, words in MARKS]

    @property
    def text(self) -> str:
        """All of it as a sentence."""
        return ", ".join(words for _, words in (*self._bars, *self._marks)) + "."

    def height(self, width: float) -> float:
        """Give how high it is at a width, in pixels."""
        return _LINE_PX * (1 + max(line for line, _, _ in self._places(width)))

    def draw(self, painter: QPainter, area: QRectF, colours: Colours) -> None:
        """Draw it from the area's top left corner on."""
        painter.setFont(font(SMALL_PT))
        entries = [*self._bars, *self._marks]
        for at, (line, left, words) in enumerate(self._places(area.width())):
            corner = area.topLeft() + QPointF(left, line * _LINE_PX)
            swatch = SWATCH.translated(corner + QPointF(0, 2))
            if at < len(self._bars):
                draw_bar(painter, swatch, self._bars[at][0], colours)
            else:
                _draw_mark(painter, entries[at][0] or 0, swatch.center(), colours)
            painter.setPen(QColor(colours.ink_soft))
            place = QRectF(corner.x() + 19, corner.y(), area.width(), _LINE_PX)
            painter.drawText(place, Qt.AlignmentFlag.AlignVCenter, words)

    def _places(self, width: float) -> list[tuple[int, float, str]]:
        metrics = QFontMetricsF(font(SMALL_PT))
        line, left, places = 0, 0.0, []
        for _, words in (*self._bars, *self._marks):
            needed = 19 + metrics.horizontalAdvance(words)
            if left and left + needed > width:
                line, left = line + 1, 0.0
            places.append((line, left, words))
            left += needed + _GAP_PX
        return places


class YearLegend(QWidget):
    """The legend under the year."""

    def __init__(self, theme: Theme) -> None:
        super().__init__()
        self._theme = theme
        self._legend = Legend((), 60.0)
        self.setAccessibleName(tr("What the marks of the year mean"))
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        theme.changed.connect(lambda _: self.update())

    @property
    def text(self) -> str:
        """What it says."""
        return self._legend.text

    def show_names(self, names: Sequence[DayName], top_minutes: float) -> None:
        """Show these names of days."""
        self._legend = Legend(names, top_minutes)
        self.setAccessibleDescription(self._legend.text)
        self.updateGeometry()
        self.update()

    def hasHeightForWidth(self) -> bool:
        """Wrap like text."""
        return True

    def heightForWidth(self, width: int) -> int:
        """Give the height at a width."""
        return round(self._legend.height(width)) + 2

    def sizeHint(self) -> QSize:
        """Give two lines or more."""
        return QSize(560, self.heightForWidth(max(560, self.width())))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw it."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._legend.draw(painter, QRectF(self.rect()), self._theme.colours)
