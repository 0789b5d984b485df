"""All promises, past and running, with their numbers apart; made, paused and ended here."""

from collections.abc import Callable
from datetime import date, timedelta

from PySide6.QtCore import Qt, Signal

from app.journal.promise_standing import PromiseState
from app.services.keeping_views import PromiseView
from app.ui.desk import Desk
from app.ui.models.rows import Column
from app.ui.widgets.basics import Button, Card, fill, heading, labelled, row, sentence
from app.ui.widgets.choices import DayEdit
from app.ui.widgets.promise_form import PromiseForm
from app.ui.widgets.table import RowTable

_STATES = {
    PromiseState.RUNNING: "running",
    PromiseState.AHEAD: "begins later",
    PromiseState.KEPT: "kept",
    PromiseState.ENDED: "ended",
}
_PAUSE_DAYS = 6


class PromisesPanel(Card):
    """A table of promises, what there is to say of the chosen one, and a form.

    Signals
    -------
    closed()
        Nothing more to do here.
    """

    closed = Signal()

    def __init__(self, desk: Desk) -> None:
        super().__init__("Promises")
        self._desk = desk
        self._today = date.today()
        self.table: RowTable[PromiseView] = RowTable("Promises", _columns(), stretch=0)
        self._words = sentence()
        self.form = PromiseForm()
        self.pause_from = DayEdit("Pause from")
        self.pause_to = DayEdit("Pause until")
        self._pause = Button("Pause", name="Pause the promise on these days")
        self._go_on = Button("Take up again")
        self._end = Button("End today", plain=True)
        self._open = Button("Take the end back", plain=True)
        close = Button("Back to the year", plain=True)
        close.clicked.connect(self.closed)
        dates = row()
        fill(dates, labelled("Pause from", self.pause_from), labelled("until", self.pause_to))
        fill(dates, self._pause, self._go_on, 1)
        for button in (self._pause, self._go_on):
            dates.setAlignment(button, Qt.AlignmentFlag.AlignBottom)
        ends = row()
        fill(ends, self._end, self._open, 1, close)
        fill(self.box, self.table, self._words, dates, ends, heading("A new promise"), self.form)
        self.box.setStretch(1, 1)
        self.table.rowChosen.connect(self._show_chosen)
        self.form.make.clicked.connect(self._make)
        self.form.name.returnPressed.connect(self._make)
        self._connect()

    def _connect(self) -> None:
        promises = self._desk.workbench.promises
        self._pause.clicked.connect(
            lambda: self._change(
                lambda which: promises.plan_break(which, self.pause_from.day, self.pause_to.day)
            )
        )
        self._go_on.clicked.connect(lambda: self._change(promises.go_on))
        self._end.clicked.connect(lambda: self._change(promises.close))
        self._open.clicked.connect(lambda: self._change(promises.reopen))

    def start(self, today: date) -> None:
        """Read the promises and show an empty form."""
        self._today = today
        self.form.start(today)
        self.pause_from.show_day(today)
        self.pause_to.show_day(today + timedelta(days=_PAUSE_DAYS))
        self._read()

    @property
    def words(self) -> str:
        """What is said of the chosen promise."""
        return self._words.text()

    def _read(self) -> None:
        promises = self._desk.workbench.promises
        self._desk.jobs.store(promises.list, self._show, subject="promises")

    def _show(self, views: tuple[PromiseView, ...]) -> None:
        chosen = self.table.chosen
        self.table.show_rows(views)
        ids = [view.promise.id for view in views]
        if views:
            kept = chosen is not None and chosen.promise.id in ids
            self.table.choose(ids.index(chosen.promise.id) if kept and chosen else 0)
        self._show_chosen(self.table.chosen)

    def _show_chosen(self, view: PromiseView | None) -> None:
        state = view.standing.state if view else None
        alive = state in (PromiseState.RUNNING, PromiseState.AHEAD)
        for button in (self._pause, self._end):
            button.setEnabled(alive)
        self._go_on.setEnabled(bool(view and view.standing.pause))
        self._open.setEnabled(bool(view and view.promise.closed_on))
        if view is None:
            self._words.setText("No promise yet. A promise is a number of days with a rule.")
            return
        history = [rule.text for rule in view.rules if rule.is_in_force]
        self._words.setText(" ".join((*(f"{text}." for text in history), *view.sentences)))

    def _make(self) -> None:
        name, rule = self.form.name.text(), self.form.rule
        promises = self._desk.workbench.promises
        self._desk.jobs.store(lambda: promises.make(name, rule), self._made)

    def _made(self, view: PromiseView) -> None:
        self.form.start(self._today)
        self._desk.tell(f"The promise is made: {view.promise.name}.")
        self._desk.daysChanged.emit()
        self._read()

    def _change(self, step: Callable[[str], object]) -> None:
        view = self.table.chosen
        if view is not None:
            which = view.promise.id
            self._desk.jobs.store(lambda: step(which), lambda _: self._changed())

    def _changed(self) -> None:
        self._desk.daysChanged.emit()
        self._read()


def _columns() -> tuple[Column[PromiseView], ...]:
    def words(view: PromiseView) -> str:
        return " ".join((view.promise.name + ":", view.headline + ".", *view.sentences))

    return (
        Column("Promise", lambda view: view.promise.name, words),
        Column("", lambda view: _STATES[view.standing.state], words),
        Column("Days kept", lambda view: str(view.standing.days_kept), words, is_number=True),
        Column("Day since start", lambda view: str(view.standing.day), words, is_number=True),
        Column("Missed", lambda view: str(view.standing.days_missed), words, is_number=True),
        Column("Rest taken", lambda view: str(view.standing.rest_taken), words, is_number=True),
        Column("Still to keep", lambda view: str(view.standing.needed), words, is_number=True),
    )
