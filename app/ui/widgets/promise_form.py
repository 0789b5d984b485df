"""A promise's rule: what it asks of a day, how many days, what rest it allows."""

from datetime import date, timedelta

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QCheckBox, QGridLayout, QLineEdit, QSpinBox, QWidget

from app.journal.promises import PromiseRule, Stretch
from app.ui.language import mark, tr
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Button, column, fill, labelled, row, soft
from app.ui.widgets.choices import Choice, DayEdit

_MOST_DAYS = 3660
_MOST_MINUTES = 600
_MOST_TAKES = 20
_WEEKDAYS = (
    mark("Mon"),
    mark("Tue"),
    mark("Wed"),
    mark("Thu"),
    mark("Fri"),
    mark("Sat"),
    mark("Sun"),
)
_STRETCHES = (
    (Stretch.IN_TOTAL, mark("Days in total")),
    (Stretch.IN_A_ROW, mark("Days in a row")),
)


class PromiseForm(QWidget):
    """Reads a name and a :class:`PromiseRule`."""

    def __init__(self) -> None:
        super().__init__()
        self.name = QLineEdit()
        self.name.setMaxLength(80)
        self.name.setPlaceholderText(tr("Forty days of scales"))
        self.days = _spin(tr("Days to keep"), 1, _MOST_DAYS, "", "")
        self.days.setValue(40)
        self.stretch: Choice[Stretch] = Choice(tr("How the days are counted"))
        self.stretch.offer([(stretch, tr(words)) for stretch, words in _STRETCHES])
        self.minutes = _spin(tr("At least, a day"), 0, _MOST_MINUTES, " min", tr("anything counts"))
        self.takes = _spin(tr("Or takes a day"), 0, _MOST_TAKES, "", tr("none asked"))
        self.both = QCheckBox(tr("A day needs both"))
        self.both.setAccessibleName(tr("A day needs the minutes and the takes"))
        self.rest = _spin(tr("Rest days allowed"), 0, 365, "", tr("none"))
        self.first = DayEdit(tr("First day"))
        self.has_end = QCheckBox(tr("Last day"))
        self.has_end.setAccessibleName(tr("The promise has a last day"))
        self.end = DayEdit(tr("Last day"))
        self.end.setEnabled(False)
        self.has_end.toggled.connect(self.end.setEnabled)
        self.weekdays = tuple(QCheckBox(tr(words)) for words in _WEEKDAYS)
        self.make = Button(tr("Make the promise"), "add", primary=True)
        self._build()

    def _build(self) -> None:
        grid = QGridLayout()
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setSpacing(GRID_PX)
        grid.addLayout(labelled(tr("Promise"), self.name), 0, 0, 1, 2)
        grid.addLayout(labelled(tr("First day"), self.first), 0, 2)
        end = column(spacing=2)
        fill(end, self.has_end, self.end)
        grid.addLayout(end, 0, 3)
        for at, (words, field) in enumerate(
            (
                (tr("Days to keep"), self.days),
                (tr("Counted"), self.stretch),
                (tr("At least, a day"), self.minutes),
                (tr("Or takes a day"), self.takes),
            )
        ):
            grid.addLayout(labelled(words, field), 1, at)
        grid.addLayout(labelled(tr("Rest days allowed"), self.rest), 2, 0)
        grid.addWidget(self.both, 2, 3, Qt.AlignmentFlag.AlignBottom)
        days = row()
        for box, words in zip(self.weekdays, _WEEKDAYS, strict=True):
            box.setAccessibleName(tr("No duty on {day}").format(day=tr(words)))
            days.addWidget(box)
        days.addStretch(1)
        free = column(spacing=2)
        fill(free, soft(tr("Weekdays without a duty"), wrap=False), days)
        grid.addLayout(free, 2, 1, 1, 2)
        buttons = row()
        fill(buttons, soft(tr("Any practice counts unless minutes or takes are asked.")), self.make)
        buttons.setStretch(0, 1)
        fill(column(self), grid, buttons)

    def start(self, today: date) -> None:
        """Begin anew."""
        self.name.clear()
        self.first.show_day(today)
        self.end.show_day(today + timedelta(days=self.days.value()))

    def show_rule(self, name: str, rule: PromiseRule, today: date) -> None:
        """Show a promise's rule, to be changed from today on."""
        self.name.setText(name)
        self.first.show_day(max(rule.since, today))
        self.days.setValue(rule.days)
        self.stretch.choose(rule.stretch)
        self.minutes.setValue(rule.minimum_minutes or 0)
        self.takes.setValue(rule.minimum_takes or 0)
        self.both.setChecked(rule.needs_both)
        self.rest.setValue(rule.rest_days)
        for at, box in enumerate(self.weekdays):
            box.setChecked(at in rule.rest_weekdays)
        self.has_end.setChecked(rule.end is not None)
        if rule.end is not None:
            self.end.show_day(rule.end)

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
            needs_both=self.both.isChecked(),
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
