"""The year: one row a month, a bar a day whose height is its minutes."""

import calendar
from datetime import date, timedelta

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QAccessible,
    QAccessibleEvent,
    QColor,
    QHelpEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
)
from PySide6.QtWidgets import QToolTip, QWidget

from app.journal.day_names import DayName, kind_of
from app.services.views import DayBar
from app.ui.language import tr
from app.ui.spoken import word
from app.ui.theme import SMALL_PT, Colours, Theme, font
from app.ui.widgets.year_marks import FOOT_PX, bar_words, draw_bar, draw_marks, draw_today
from app.ui.words import day_text

__all__ = ["YearChart", "bar_words"]

_MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
_LABEL_WIDTH_PX = 40.0
_TOTAL_WIDTH_PX = 64.0
_LEAST_TOP_MINUTES = 60.0
_DAYS = 31
_DAY_STEPS: dict[int, int] = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}
_MONTH_STEPS: dict[int, int] = {Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1}


class YearChart(QWidget):
    """Bars by day, one row a month; arrow keys walk through the days.

    Signals
    -------
    dayChosen(date)
        The chosen day moved.
    dayOpened(date)
        Enter, or a click.
    yearWanted(int)
        The walk left the year.
    """

    dayChosen = Signal(object)
    dayOpened = Signal(object)
    yearWanted = Signal(int)

    def __init__(self, theme: Theme, *, colours: Colours | None = None) -> None:
        super().__init__()
        self._theme = theme
        self._fixed_colours = colours
        self._bars: dict[date, DayBar] = {}
        self._year = date.min.year  # known once a year is shown
        self._today: date | None = None
        self.chosen: date | None = None
        self.names: tuple[DayName, ...] = ()
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName(tr("The year, a bar a day"))
        self.setMinimumSize(560, 360)
        theme.changed.connect(lambda _: self.update())

    def sizeHint(self) -> QSize:
        """Twelve rows."""
        return QSize(820, 600)

    @property
    def bars(self) -> tuple[DayBar, ...]:
        """What is known of the shown year, day by day."""
        return tuple(self._bars.values())

    @property
    def today(self) -> date:
        """The practice day that is marked as today; the first of all days before it is known."""
        return self._today or date.min

    @property
    def _colours(self) -> Colours:
        return self._fixed_colours or self._theme.colours

    def show_year(
        self,
        year: int,
        bars: tuple[DayBar, ...],
        today: date,
        names: tuple[DayName, ...] | None = None,
    ) -> None:
        """Show a year; ``names`` are what the player calls days of a few minutes."""
        if names is not None:
            self.names = names
        self._year = year
        self._bars = {bar.practice_day: bar for bar in bars}
        self._today = today
        if self.chosen is None or self.chosen.year != year:
            self.chosen = today if today.year == year else date(year, 1, 1)
        self._say()
        self.update()

    def choose(self, day: date) -> None:
        """Choose a day; another year is asked for."""
        self.chosen = day
        if day.year != self._year:
            self.yearWanted.emit(day.year)
        self._say()
        self.dayChosen.emit(day)
        self.update()

    def cell_of(self, day: date) -> QRectF:
        """Return where a day of the shown year lies."""
        return self._cell(day)

    def bar_of(self, day: date) -> DayBar | None:
        """Return what is known of a day."""
        return self._bars.get(day)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Walk with the arrows; Enter opens."""
        if self.chosen is None:
            return
        key = event.key()
        if key in _DAY_STEPS:
            self.choose(self.chosen + timedelta(days=_DAY_STEPS[key]))
        elif key in _MONTH_STEPS:
            self.choose(_month_away(self.chosen, _MONTH_STEPS[key]))
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.dayOpened.emit(self.chosen)
        else:
            super().keyPressEvent(event)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Choose the day under the pointer."""
        day = self._day_at(event.position())
        if day is not None:
            self.choose(day)
            self.dayOpened.emit(day)

    def event(self, event: QEvent) -> bool:
        """Say the day under the pointer."""
        if isinstance(event, QHelpEvent) and event.type() == QEvent.Type.ToolTip:
            day = self._day_at(QPointF(event.pos()))
            bar = self._bars.get(day) if day else None
            QToolTip.showText(event.globalPos(), bar_words(bar, self.names) if bar else "", self)
            return True
        return super().event(event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw twelve rows."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setFont(font(SMALL_PT))
        for month in range(1, 13):
            self._draw_month(painter, month)
        self._draw_day_numbers(painter)

    def _draw_month(self, painter: QPainter, month: int) -> None:
        c = self._colours
        strip = self._strip(month)
        painter.setPen(QColor(c.ink_soft))
        left = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignBottom
        painter.drawText(
            QRectF(0, strip.top(), _LABEL_WIDTH_PX, strip.height()), left, word(_MONTHS[month - 1])
        )
        painter.setPen(QPen(QColor(c.line), 1))
        count = calendar.monthrange(self._year, month)[1]
        right = strip.left() + count * self._step
        painter.drawLine(QPointF(strip.left(), strip.bottom()), QPointF(right, strip.bottom()))
        total = 0.0
        for number in range(1, count + 1):
            day = date(self._year, month, number)
            bar = self._bars.get(day)
            if bar is not None:
                total += bar.minutes or 0.0
                self._draw_bar(painter, bar, self._cell(day))
            if day == self._today:
                draw_today(painter, self._cell(day), c)
            if day == self.chosen:
                self._draw_choice(painter, self._cell(day))
        if total:
            painter.setPen(QColor(c.ink_soft))
            place = QRectF(self.width() - _TOTAL_WIDTH_PX, strip.top(), 62, strip.height())
            end = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignBottom
            painter.drawText(place, end, tr("{hours} h").format(hours=f"{total / 60:.0f}"))

    def _draw_bar(self, painter: QPainter, bar: DayBar, cell: QRectF) -> None:
        width = max(3.0, min(14.0, cell.width() - 4))
        height = 0.0
        if bar.minutes:
            height = max(2.0, min(1.0, bar.minutes / self.top_minutes) * (cell.height() - 8))
            body = QRectF(cell.center().x() - width / 2, cell.bottom() - height, width, height)
            draw_bar(painter, body, kind_of(bar.minutes, self.names), self._colours)
        draw_marks(painter, bar, cell, cell.bottom() - height, self._colours)

    def _draw_choice(self, painter: QPainter, cell: QRectF) -> None:
        colour = QColor(self._colours.accent)
        pen = QPen(colour, 2.0 if self.hasFocus() else 1.0)
        painter.setPen(pen)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRoundedRect(cell.adjusted(1, 0, -1, 2), 3, 3)

    def _draw_day_numbers(self, painter: QPainter) -> None:
        painter.setPen(QColor(self._colours.ink_soft))
        for number in (1, 5, 10, 15, 20, 25, 30):
            left = _LABEL_WIDTH_PX + (number - 1) * self._step
            place = QRectF(left - 8, self.height() - 16, self._step + 16, 16)
            painter.drawText(place, Qt.AlignmentFlag.AlignCenter, str(number))

    @property
    def _step(self) -> float:
        return (self.width() - _LABEL_WIDTH_PX - _TOTAL_WIDTH_PX) / _DAYS

    @property
    def _row_height(self) -> float:
        return (self.height() - 18.0) / 12

    @property
    def top_minutes(self) -> float:
        """Minutes of the highest bar there is room for."""
        longest = max((bar.minutes or 0.0 for bar in self._bars.values()), default=0.0)
        return max(_LEAST_TOP_MINUTES, longest)

    def _strip(self, month: int) -> QRectF:
        """Give the row of a month, its foot left free for marks."""
        top = (month - 1) * self._row_height
        width = self.width() - _LABEL_WIDTH_PX - _TOTAL_WIDTH_PX
        return QRectF(_LABEL_WIDTH_PX, top, width, self._row_height - FOOT_PX)

    def _cell(self, day: date) -> QRectF:
        strip = self._strip(day.month)
        left = strip.left() + (day.day - 1) * self._step
        return QRectF(left, strip.top(), self._step, strip.height())

    def _day_at(self, point: QPointF) -> date | None:
        month = int(point.y() // self._row_height) + 1
        number = int((point.x() - _LABEL_WIDTH_PX) // self._step) + 1
        if not 1 <= month <= 12:
            return None
        if not 1 <= number <= calendar.monthrange(self._year, month)[1]:
            return None
        return date(self._year, month, number)

    def _say(self) -> None:
        bar = self._bars.get(self.chosen) if self.chosen else None
        words = (
            bar_words(bar, self.names) if bar else (day_text(self.chosen) if self.chosen else "")
        )
        if words != self.accessibleDescription():
            self.setAccessibleDescription(words)
            event = QAccessibleEvent(self, QAccessible.Event.DescriptionChanged)
            QAccessible.updateAccessibility(event)


def _month_away(day: date, months: int) -> date:
    at = day.year * 12 + day.month - 1 + months
    year, month = divmod(at, 12)
    last = calendar.monthrange(year, month + 1)[1]
    return date(year, month + 1, min(day.day, last))
