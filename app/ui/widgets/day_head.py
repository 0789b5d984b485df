"""The day in one look: its date, two counts that must not be mixed up, its minutes."""

from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QLineEdit, QSpinBox, QWidget

from app.ui.language import tr
from app.ui.theme import GRID_PX, LARGE_PT, font
from app.ui.widgets.basics import Figure, column, fill, large, row, soft
from app.ui.words import day_text

if TYPE_CHECKING:
    from app.services.clock_views import ClockView
    from app.services.views import TodayView

_MOST_MINUTES = 24 * 60


class MinutesField(QWidget):
    """Minutes of a day, typed.

    Signals
    -------
    typed(float)
        The player entered minutes.
    """

    typed = Signal(float)

    def __init__(self, words: str) -> None:
        super().__init__()
        self._field = QSpinBox()
        self._field.setRange(-1, _MOST_MINUTES)
        self._field.setSpecialValueText("\N{EN DASH}")
        self._field.setSuffix(" min")
        self._field.setFont(font(LARGE_PT))
        self._field.setFixedWidth(136)
        self._field.setProperty("tall", True)
        self._field.setAccessibleName(words)
        self._field.setKeyboardTracking(False)
        self._field.valueChanged.connect(self._tell)
        self._is_filling = False
        self._words = soft(words, wrap=False)
        self._words.setBuddy(self._field)
        box = column(self, spacing=0)
        fill(box, self._field, self._words)

    @property
    def line(self) -> QLineEdit:
        """The line that is written in."""
        return self._field.lineEdit()

    def show_minutes(self, minutes: float | None) -> None:
        """Show minutes, unless the player is typing."""
        if self._field.hasFocus():
            return
        self._is_filling = True
        self._field.setValue(-1 if minutes is None else round(minutes))
        self._is_filling = False

    def write(self) -> None:
        """Put the cursor into the field."""
        self._field.setFocus()
        self._field.selectAll()

    def _tell(self, minutes: int) -> None:
        if not self._is_filling and minutes >= 0:
            self.typed.emit(float(minutes))


class DayHead(QWidget):
    """Shows a :class:`TodayView` along the top of the Practice page."""

    def __init__(self) -> None:
        super().__init__()
        self._date = large()
        self._kind = soft(tr("Practice day"), wrap=False)
        self._practised = Figure(tr("days practised"))
        self._since = Figure(tr("days since first entry"))
        self.minutes = MinutesField(tr("minutes today"))
        dates = column(spacing=0)
        fill(dates, self._date, self._kind)
        box = row(self, spacing=5 * GRID_PX)
        fill(box, dates, 1, self._practised, self._since, self.minutes)

    def show_day(self, view: "TodayView") -> None:
        """Show the day; say so where it is not the calendar's."""
        self._date.setText(day_text(view.practice_day))
        self._kind.setText(
            tr("Practice day")
            if view.practice_day == view.calendar_day
            else tr("Practice day: what is played after midnight still belongs to it")
        )
        practised, since = view.days_practised, view.days_since_first
        self._practised.show_number(
            str(practised), tr("day practised") if practised == 1 else tr("days practised")
        )
        self._since.show_number(
            str(since), tr("day since first entry") if since == 1 else tr("days since first entry")
        )
        self.minutes.show_minutes(view.minutes)

    def show_clock(self, view: "ClockView") -> None:
        """Let the minutes of today run with the clock."""
        if view.phase == "running" or view.today_min > 0:
            self.minutes.show_minutes(view.today_min)
