"""A new promise: what it asks of a day, how many days, what rest it allows."""

from datetime import date, timedelta

from PySide6.QtWidgets import QCheckBox, QGridLayout, QLineEdit, QSpinBox, QWidget

from app.journal.promises import PromiseRule, Stretch
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Button, column, fill, labelled, row, soft
from app.ui.widgets.choices import Choice, DayEdit

_MOST_DAYS = 3660
_MOST_MINUTES = 600
_MOST_TAKES = 20
_WEEKDAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
_STRETCHES = ((Stretch.IN_TOTAL, "Days in total"), (Stretch.IN_A_ROW, "Days in a row"))


class PromiseForm(QWidget):
    """Reads a name and a :class:`PromiseRule`."""

    def __init__(self) -> None:
        super().__init__()
        self.name = QLineEdit()
        self.name.setMaxLength(80)
        self.name.setPlaceholderText("Forty days of scales")
        self.days = _spin("Days to keep", 1, _MOST_DAYS, "", "")
        self.days.setValue(40)
        self.stretch: Choice[Stretch] = Choice("How the days are counted")
        self.stretch.offer(list(_STRETCHES))
        self.minutes = _spin("At least, a day", 0, _MOST_MINUTES, " min", "anything counts")
        self.takes = _spin("Or takes a day", 0, _MOST_TAKES, "", "none asked")
        self.rest = _spin("Rest days allowed", 0, 365, "", "none")
        self.first = DayEdit("First day")
        self.has_end = QCheckBox("Last day")
        self.has_end.setAccessibleName("The promise has a last day")
        self.end = DayEdit("Last day")
        self.end.setEnabled(False)
        self.has_end.toggled.connect(self.end.setEnabled)
        self.weekdays = tuple(QCheckBox(words) for words in _WEEKDAYS)
        self.make = Button("Make the promise", "add", primary=True)
        self._build()

    def _build(self) -> None:
        grid = QGridLayout()
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setSpacing(GRID_PX)
        grid.addLayout(labelled("Promise", self.name), 0, 0, 1, 2)
        grid.addLayout(labelled("First day", self.first), 0, 2)
        end = column(spacing=2)
        fill(end, self.has_end, self.end)
        grid.addLayout(end, 0, 3)
        for at, (words, field) in enumerate(
            (
                ("Days to keep", self.days),
                ("Counted", self.stretch),
                ("At least, a day", self.minutes),
                ("Or takes a day", self.takes),
            )
        ):
            grid.addLayout(labelled(words, field), 1, at)
        grid.addLayout(labelled("Rest days allowed", self.rest), 2, 0)
        days = row()
        for box, words in zip(self.weekdays, _WEEKDAYS, strict=True):
            box.setAccessibleName(f"No duty on {words}")
            days.addWidget(box)
        days.addStretch(1)
        free = column(spacing=2)
        fill(free, soft("Weekdays without a duty", wrap=False), days)
        grid.addLayout(free, 2, 1, 1, 3)
        buttons = row()
        fill(buttons, soft("Any practice counts unless minutes or takes are asked."), self.make)
        buttons.setStretch(0, 1)
        fill(column(self), grid, buttons)

    def start(self, today: date) -> None:
        """Begin anew."""
        self.name.clear()
        self.first.show_day(today)
        self.end.show_day(today + timedelta(days=self.days.value()))

    @property
    def rule(self) -> PromiseRule:
        """What the form asks."""
        weekdays = tuple(at for at, box in enumerate(self.weekdays) if box.isChecked())
        return PromiseRule(
            since=self.first.day,
            stretch=self.stretch.key or Stretch.IN_TOTAL,
            days=self.days.value(),
            minimum_minutes=self.minutes.value() or None,
            minimum_takes=self.takes.value() or None,
            rest_days=self.rest.value(),
            rest_weekdays=weekdays,
            end=self.end.day if self.has_end.isChecked() else None,
        )


def _spin(name: str, low: int, high: int, suffix: str, lowest_words: str) -> QSpinBox:
    field = QSpinBox()
    field.setRange(low, high)
    field.setSuffix(suffix)
    field.setAccessibleName(name)
    if lowest_words:
        field.setSpecialValueText(lowest_words)
    return field
