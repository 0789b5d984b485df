"""What is set for the lesson, and the dates that are coming."""

from datetime import date, timedelta

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QLineEdit, QSpinBox

from app.journal.assignments import OccasionKind
from app.journal.records import Passage
from app.services.keeping_views import AssignmentRow, OccasionRow
from app.ui.desk import Desk
from app.ui.language import tr
from app.ui.models.rows import Column
from app.ui.spoken import word
from app.ui.widgets.basics import Button, Card, column, fill, heading, labelled, row, soft
from app.ui.widgets.choices import Choice, DayEdit, passage_text
from app.ui.widgets.table import RowTable
from app.ui.words import counted, day_text

_A_WEEK = timedelta(days=7)
_MOST_MINUTES = 2000
_ANY = ""

Found = tuple[tuple[AssignmentRow, ...], tuple[OccasionRow, ...]]


class AssignmentsForm(Card):
    """Lists what is set with what was done on it; adds, ticks off, carries on.

    Signals
    -------
    closed()
        Nothing more to do here.
    """

    closed = Signal()

    def __init__(self, desk: Desk) -> None:
        super().__init__(tr("Set for the lesson"))
        self._desk = desk
        self._today = date.min  # known once the form is begun
        self.table: RowTable[AssignmentRow] = RowTable(tr("Set work"), _columns(), stretch=(0, 1))
        self.goal = QLineEdit()
        self.goal.setMaxLength(200)
        self.goal.setPlaceholderText(tr("From memory, hands apart, at 72"))
        self.passage: Choice[str] = Choice(tr("Passage it is for"))
        self.minutes = QSpinBox()
        self.minutes.setRange(0, _MOST_MINUTES)
        self.minutes.setSingleStep(10)
        self.minutes.setSuffix(" min")
        self.minutes.setSpecialValueText(tr("not said"))
        self.due = DayEdit(tr("Due on"))
        self._add = Button(tr("Add"), "add", primary=True, name=tr("Add what is set"))
        self.dates: RowTable[OccasionRow] = RowTable(tr("Coming dates"), _date_columns(), stretch=1)
        self.kind: Choice[OccasionKind] = Choice(tr("Kind of date"))
        self.kind.offer([(kind, word(kind.value.capitalize())) for kind in OccasionKind])
        self.day = DayEdit(tr("Day of it"))
        self.name = QLineEdit()
        self.name.setMaxLength(120)
        self._note = Button(tr("Note the date"), "add")
        self._build()
        self._add.clicked.connect(self._make)
        self.goal.returnPressed.connect(self._make)
        self._note.clicked.connect(self._note_date)
        self.table.rowOpened.connect(self._tick)
        desk.daysChanged.connect(lambda: self._read() if self.isVisible() else None)

    def _build(self) -> None:
        new = row()
        fill(new, labelled(tr("Goal in words"), self.goal), labelled(tr("Passage"), self.passage))
        fill(new, labelled(tr("Minutes in all"), self.minutes), labelled(tr("Due on"), self.due))
        new.setStretch(0, 2)
        new.setStretch(1, 1)
        tools = row()
        for words, name, slot in (
            (tr("Done"), tr("Tick the chosen work off, or take the tick away"), self._tick_chosen),
            (tr("A week later"), tr("Carry the chosen work on by a week"), self._carry),
            (tr("Take away"), tr("Take the chosen work away"), self._remove),
        ):
            button = Button(words, name=name, plain=True)
            button.clicked.connect(slot)
            tools.addWidget(button)
        fill(tools, 1, self._add)
        dates = row()
        fill(dates, labelled(tr("Kind"), self.kind), labelled(tr("Day"), self.day))
        fill(dates, labelled(tr("What it is called"), self.name))
        dates.setStretch(2, 1)
        end = row()
        away = Button(tr("Take the date away"), plain=True)
        away.clicked.connect(self._remove_date)
        close = Button(tr("Back to today"), plain=True)
        close.clicked.connect(self.closed)
        fill(end, away, 1, close, self._note)
        self._none = soft(tr("Nothing is set. What is set turns up in the plan with its reason."))
        box = column()
        fill(box, self._none, self.table, new, tools, heading(tr("Coming dates")), self.dates)
        fill(box, dates, end)
        box.setStretch(1, 2)
        box.setStretch(5, 1)
        box.addStretch(0)
        self.box.addLayout(box, 1)

    def start(self, today: date, passages: tuple[Passage, ...]) -> None:
        """Read what is set and show empty fields."""
        self._today = today
        entries = [(passage.id, passage_text(passage)) for passage in passages]
        self.passage.offer([(_ANY, tr("None")), *entries])
        self.due.show_day(today + _A_WEEK)
        self.day.show_day(today + _A_WEEK)
        self._read()
        self.goal.setFocus()

    def _read(self) -> None:
        work, today = self._desk.workbench.assignments, self._today

        def read() -> Found:
            rows = work.for_lesson(today, date.max)
            return rows, work.coming()

        self._desk.jobs.store(read, self._show, subject="assignments")

    def _show(self, found: Found) -> None:
        rows, dates = found
        self.table.show_rows(rows)
        self._none.setVisible(not rows)
        self.dates.show_rows(dates)
        self.dates.setVisible(bool(dates))

    def _make(self) -> None:
        work, due, goal = self._desk.workbench.assignments, self.due.day, self.goal.text()
        minutes, passage_id = self.minutes.value() or None, self.passage.key or None
        self._desk.jobs.store(
            lambda: work.add(due, goal, minutes=minutes, passage_id=passage_id), self._made
        )

    def _made(self, _row: AssignmentRow) -> None:
        self.goal.clear()
        self.minutes.setValue(0)
        self._read()

    def _note_date(self) -> None:
        work, day, name = self._desk.workbench.assignments, self.day.day, self.name.text()
        kind = self.kind.key or OccasionKind.LESSON
        self._desk.jobs.store(lambda: work.add_occasion(day, kind, name), lambda _: self._read())
        self.name.clear()

    def _tick(self, entry: AssignmentRow) -> None:
        work, which = self._desk.workbench.assignments, entry.assignment
        done = which.done_on is None
        self._desk.jobs.store(lambda: work.tick(which.id, done), lambda _: self._read())

    def _tick_chosen(self) -> None:
        if self.table.chosen is not None:
            self._tick(self.table.chosen)

    def _carry(self) -> None:
        entry, work = self.table.chosen, self._desk.workbench.assignments
        if entry is not None:
            which = entry.assignment
            later = which.due_on + _A_WEEK
            self._desk.jobs.store(lambda: work.carry(which.id, later), lambda _: self._read())

    def _remove(self) -> None:
        entry, work = self.table.chosen, self._desk.workbench.assignments
        if entry is not None:
            self._desk.jobs.store(lambda: work.remove(entry.assignment.id), lambda _: self._read())

    def _remove_date(self) -> None:
        entry, work = self.dates.chosen, self._desk.workbench.assignments
        if entry is not None:
            self._desk.jobs.store(
                lambda: work.remove_occasion(entry.occasion.id), lambda _: self._read()
            )


def _columns() -> tuple[Column[AssignmentRow], ...]:
    def what(entry: AssignmentRow) -> str:
        goal = entry.assignment.goal
        return entry.title if goal in ("", entry.title) else f"{entry.title}: {goal}"

    def words(entry: AssignmentRow) -> str:
        return f"{what(entry)}. {entry.sentence}."

    return (
        Column(tr("What"), what, words),
        Column(tr("Done so far"), lambda entry: entry.sentence, words),
    )


def _date_columns() -> tuple[Column[OccasionRow], ...]:
    def left(entry: OccasionRow) -> str:
        return (
            tr("in {days_left}").format(days_left=counted(entry.days_left, "day"))
            if entry.days_left
            else "today"
        )

    return (
        Column(tr("Day"), lambda entry: day_text(entry.occasion.day)),
        Column(tr("What"), lambda entry: entry.title),
        Column("", left),
    )
