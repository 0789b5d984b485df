"""All promises, past and running, with their numbers apart; made, paused and ended here."""

from collections.abc import Callable
from datetime import date, timedelta
from functools import partial

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QLineEdit

from app.journal.promise_standing import PromiseState
from app.journal.promises import PlannedBreak
from app.services.keeping_views import ClipNumbers, PromiseView, RuleRow
from app.services.promise_text import rule_span_text
from app.ui.desk import Desk
from app.ui.language import mark, tr
from app.ui.models.rows import Column
from app.ui.spoken import said
from app.ui.widgets.basics import Button, Card, fill, heading, labelled, row, sentence
from app.ui.widgets.choices import DayEdit
from app.ui.widgets.promise_form import PromiseForm
from app.ui.widgets.table import RowTable
from app.ui.words import day_text

_STATES = {
    PromiseState.RUNNING: mark("running"),
    PromiseState.AHEAD: mark("begins later"),
    PromiseState.KEPT: mark("kept"),
    PromiseState.ENDED: mark("ended"),
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
        super().__init__(tr("Promises"))
        self._desk = desk
        self._today = date.min  # known once the panel is begun
        self._edited = ""
        self.table: RowTable[PromiseView] = RowTable(tr("Promises"), _columns(), stretch=0)
        self._words = sentence()
        self.form = PromiseForm()
        self.pause_from = DayEdit(tr("Pause from"))
        self.pause_to = DayEdit(tr("Pause until"))
        self.why = QLineEdit()
        self.why.setMaxLength(80)
        self.why.setPlaceholderText(tr("a journey"))
        self._pause = Button(tr("Pause"), name=tr("Pause the promise on these days"))
        self._go_on = Button(tr("Take up again"))
        self._drop = Button(
            tr("Drop the break"), name=tr("Drop the next planned break"), plain=True
        )
        self._end = Button(tr("End today"), plain=True)
        self._open = Button(tr("Take the end back"), plain=True)
        self._share = Button(tr("Share today's number"), plain=True)
        self._share.setToolTip(
            tr("Copies day and days kept. A number that was shared once stays as it is.")
        )
        self._edit = Button(tr("Change the rule"), plain=True)
        self._change_rule = Button(tr("Change from that day on"), primary=True)
        self._new = Button(tr("A new promise instead"), plain=True)
        self._what = heading(tr("A new promise"))
        self._build()
        self.table.rowChosen.connect(self._show_chosen)
        self.form.make.clicked.connect(self._make)
        self.form.name.returnPressed.connect(self._make)
        self._connect()

    def _build(self) -> None:
        close = Button(tr("Back to the year"), plain=True)
        close.clicked.connect(self.closed)
        dates = row()
        fill(dates, labelled(tr("Pause from"), self.pause_from))
        fill(dates, labelled(tr("until"), self.pause_to), labelled(tr("Why"), self.why))
        fill(dates, self._pause, self._go_on, self._drop, 1)
        for button in (self._pause, self._go_on, self._drop):
            dates.setAlignment(button, Qt.AlignmentFlag.AlignBottom)
        ends = row()
        fill(ends, self._edit, self._share, self._end, self._open, 1, close)
        changing = row()
        fill(changing, 1, self._new, self._change_rule)
        fill(self.box, self.table, self._words, dates, ends, self._what, self.form, changing)
        self.box.setStretch(1, 1)

    def _connect(self) -> None:
        promises = self._desk.workbench.promises
        self._edit.clicked.connect(self.edit)
        self._new.clicked.connect(self._begin_new)
        self._change_rule.clicked.connect(self._rule_changed)
        self._share.clicked.connect(self._share_number)
        self._drop.clicked.connect(self._drop_break)
        self._desk.daysChanged.connect(lambda: self._read() if self.isVisible() else None)
        self._pause.clicked.connect(
            lambda: self._change(
                partial(
                    lambda first, last, why, which: promises.plan_break(which, first, last, why),
                    self.pause_from.day,
                    self.pause_to.day,
                    self.why.text(),
                )
            )
        )
        self._go_on.clicked.connect(lambda: self._change(promises.go_on))
        self._end.clicked.connect(lambda: self._change(promises.close))
        self._open.clicked.connect(lambda: self._change(promises.reopen))

    def start(self, today: date) -> None:
        """Read the promises and show an empty form."""
        self._today = today
        self._begin_new()
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
        alive = view is not None and view.standing.is_alive
        for button in (self._pause, self._end, self._edit):
            button.setEnabled(alive)
        self._share.setEnabled(state is PromiseState.RUNNING)
        self._drop.setEnabled(bool(view and self._breaks_ahead(view)))
        self._go_on.setEnabled(bool(view and view.standing.pause))
        self._open.setEnabled(bool(view and view.promise.closed_on))
        if view is None:
            self._words.setText(tr("No promise yet. A promise is a number of days with a rule."))
            return
        self._words.setText(" ".join((*map(_rule_words, view.rules), *view.sentences)))

    def edit(self) -> None:
        """Put the rule of the chosen promise into the form, to change it from a day on."""
        view = self.table.chosen
        if view is not None:
            self._edited = view.promise.id
            self.form.show_rule(view.promise.name, view.promise.rules[-1], self._today)
            self._show_form(tr("Another rule for '{name}'").format(name=view.promise.name))

    def _begin_new(self) -> None:
        self._edited = ""
        self.form.start(self._today)
        self._show_form(tr("A new promise"))

    def _show_form(self, heading_words: str) -> None:
        self._what.setText(heading_words)
        self.form.make.setVisible(not self._edited)
        self._change_rule.setVisible(bool(self._edited))
        self._new.setVisible(bool(self._edited))

    def _rule_changed(self) -> None:
        """Let the form's rule hold from its first day on; a changed name is kept too."""
        promises, which = self._desk.workbench.promises, self._edited
        rule, name = self.form.rule, self.form.name.text()

        def change() -> PromiseView:
            view = promises.change_rule(which, rule)
            return view if view.promise.name == name else promises.rename(which, name)

        self._desk.jobs.store(change, self._rule_kept)

    def _rule_kept(self, view: PromiseView) -> None:
        day = day_text(view.promise.rules[-1].since)
        self._desk.tell(
            tr("The new rule holds from {day}; the days before keep theirs.").format(day=day)
        )
        self._begin_new()
        self._changed()

    def _share_number(self) -> None:
        view, promises, today = self.table.chosen, self._desk.workbench.promises, self._today
        if view is not None:
            which = view.promise.id
            self._desk.jobs.store(lambda: promises.share(which, today), self._number_shared)

    def _number_shared(self, numbers: ClipNumbers) -> None:
        QGuiApplication.clipboard().setText(numbers.text)
        self._desk.tell(tr("Copied: {text}. This number stays as it is.").format(text=numbers.text))
        self._changed()

    def _breaks_ahead(self, view: PromiseView) -> tuple[PlannedBreak, ...]:
        return tuple(one for one in view.promise.breaks if one.first_day > self._today)

    def _drop_break(self) -> None:
        view, promises = self.table.chosen, self._desk.workbench.promises
        ahead = self._breaks_ahead(view) if view is not None else ()
        if ahead:
            first = ahead[0].first_day
            self._change(lambda which: promises.drop_break(which, first))

    def _make(self) -> None:
        if self._edited:
            self._rule_changed()
            return
        name, rule = self.form.name.text(), self.form.rule
        promises = self._desk.workbench.promises
        self._desk.jobs.store(lambda: promises.make(name, rule), self._made)

    def _made(self, view: PromiseView) -> None:
        self._begin_new()
        self._desk.tell(tr("The promise is made: {name}.").format(name=view.promise.name))
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


def _rule_words(rule: RuleRow) -> str:
    """Say a rule, and from when to when it holds."""
    if rule.until is None:
        return tr("Since {day}: {rule}.").format(day=day_text(rule.since), rule=rule.text)
    span = _capital(said(rule_span_text(rule.since, rule.until)))
    return tr("{span}: {rule}.").format(span=span, rule=rule.text)


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]


def _columns() -> tuple[Column[PromiseView], ...]:
    def words(view: PromiseView) -> str:
        return " ".join((view.promise.name + ":", view.headline + ".", *view.sentences))

    return (
        Column(tr("Promise"), lambda view: view.promise.name, words),
        Column("", lambda view: tr(_STATES[view.standing.state]), words),
        Column(tr("Days kept"), lambda view: str(view.standing.days_kept), words, is_number=True),
        Column(tr("Day since start"), lambda view: str(view.standing.day), words, is_number=True),
        Column(tr("Missed"), lambda view: str(view.standing.days_missed), words, is_number=True),
        Column(tr("Rest taken"), lambda view: str(view.standing.rest_taken), words, is_number=True),
        Column(tr("Paused"), lambda view: str(view.standing.days_paused), words, is_number=True),
        Column(tr("Still to keep"), lambda view: str(view.standing.needed), words, is_number=True),
    )
