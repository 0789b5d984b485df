"""Today's plan: a proposal with the reason beside each line, never a duty."""

from collections.abc import Callable
from datetime import date
from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QSpinBox, QWidget

from app.journal.kinds import ItemKind
from app.ui.desk import Desk
from app.ui.language import tr
from app.ui.models.rows import Column
from app.ui.widgets.basics import Button, Card, fill, heading, row, sentence, soft
from app.ui.widgets.choices import short_passage
from app.ui.widgets.table import RowTable
from app.ui.words import minutes_text

if TYPE_CHECKING:
    from app.journal.plans import PlanLine
    from app.services.keeping_views import PlanView

_USUAL_MIN = 45
_LONGEST_MIN = 480
_MOST_ROWS = 4


class PlanCard(Card):
    """Proposes, shows, reorders and ticks off; the time is the player's.

    Signals
    -------
    practiseWanted(ItemRow)
        The clock is to go over to a line's item.
    assignmentsWanted()
        The player wants to see what is set.
    rehearsalWanted()
        The player wants to rehearse an audition.
    """

    practiseWanted = Signal(object)
    assignmentsWanted = Signal()
    rehearsalWanted = Signal()

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self._desk = desk
        self._plan: PlanView | None = None
        self._is_proposal = False
        self._proposed_on: date | None = None
        self._title = heading(tr("Plan"))
        self.minutes = QSpinBox()
        self.minutes.setRange(5, _LONGEST_MIN)
        self.minutes.setSingleStep(5)
        self.minutes.setValue(_USUAL_MIN)
        self.minutes.setSuffix(" min")
        self.minutes.setAccessibleName(tr("Minutes there are today"))
        self.propose = Button(tr("Propose"), action_id="practice.plan", name=tr("Propose a plan"))
        self._set = Button(tr("Set work"), action_id="practice.assignments", plain=True)
        self._rehearse = Button(tr("Rehearse"), action_id="practice.rehearsal", plain=True)
        self.table: RowTable[PlanLine] = RowTable(tr("Today's plan"), self._columns(), stretch=3)
        self._words = sentence()
        self._cautions = soft()
        self._tools = QWidget()
        self._build()
        self.propose.clicked.connect(self.make)
        self._set.clicked.connect(self.assignmentsWanted)
        self._rehearse.clicked.connect(self.rehearsalWanted)
        self.table.rowOpened.connect(self._tick)

    def _columns(self) -> tuple[Column["PlanLine"], ...]:
        return (
            Column("", lambda line: tr("done") if line.done_at else "", _words),
            Column(tr("What"), lambda line: short_passage(line.title), _words),
            Column(tr("Min"), lambda line: str(line.minutes), write=self._write, is_number=True),
            Column(tr("Why"), _why, _reasons),
        )

    def _build(self) -> None:
        head = row()
        fill(head, self._title, 1, self._rehearse, self._set, self.minutes, self.propose)
        tools = row(self._tools)
        for words, name, slot in (
            (tr("Practise it"), tr("Clock on the chosen line"), self._practise),
            (tr("Done"), tr("Tick the chosen line off, or take the tick away"), self._tick_chosen),
            (tr("Up"), tr("Move the line up"), lambda: self._move(-1)),
            (tr("Down"), tr("Move the line down"), lambda: self._move(1)),
            (tr("Leave out"), tr("Leave the line out"), self._leave_out),
        ):
            button = Button(words, name=name, plain=True)
            button.clicked.connect(slot)
            tools.addWidget(button)
        tools.addStretch(1)
        fill(self.box, head, self._words, self.table, self._tools, self._cautions)

    def show_plan(self, plan: "PlanView | None") -> None:
        """Show today's plan; ``None``: none was made."""
        if plan is None and self._is_proposal:
            return  # nothing was kept yet: what was proposed stays in sight
        self._plan = plan
        self._is_proposal = False
        lines = plan.plan.lines if plan else ()
        self.table.show_rows(lines)
        self.table.fit(_MOST_ROWS)
        for part in (self.table, self._tools):
            part.setVisible(bool(lines))
        if plan is None:
            self._title.setText(tr("Plan"))
            self._words.setText("")
        else:
            done, planned = minutes_text(plan.minutes_done), plan.plan.minutes_planned
            self._title.setText(
                tr("Plan: {done} of {planned} done").format(
                    done=done, planned=minutes_text(planned)
                )
                if lines
                else tr("Plan")
            )
            self._words.setText(plan.sentence)
        self._words.setVisible(bool(self._words.text()))
        self._cautions.setText(" ".join(plan.cautions) if plan else "")
        self._cautions.setVisible(bool(self._cautions.text()))

    def propose_for(self, day: date) -> None:
        """Propose a plan for the day's first look; it is kept once the player touches it."""
        if self._plan is not None or self._proposed_on == day:
            return
        self._proposed_on = day
        minutes, planning = self.minutes.value(), self._desk.workbench.planning
        self._desk.jobs.analyse(
            lambda _progress, _should_stop: planning.propose(minutes),
            self._show_proposal,
            subject="plan",
        )

    def _show_proposal(self, plan: "PlanView") -> None:
        if self._plan is None and plan.plan.lines:
            self.show_plan(plan)
            self._is_proposal = True
            self._title.setText(
                tr("Plan, proposed: {planned}").format(
                    planned=minutes_text(plan.plan.minutes_planned)
                )
            )

    def make(self) -> None:
        """Propose a plan for the minutes that the field says."""
        minutes, planning = self.minutes.value(), self._desk.workbench.planning
        self._desk.jobs.analyse(
            lambda _progress, _should_stop: planning.make(minutes), self.show_plan, subject="plan"
        )

    def _tick(self, line: "PlanLine") -> None:
        planning = self._desk.workbench.planning
        self._keep(lambda: planning.tick(line.id, line.done_at is None))

    def _tick_chosen(self) -> None:
        if self.table.chosen is not None:
            self._tick(self.table.chosen)

    def _practise(self) -> None:
        line = self.table.chosen
        if line is None or not (line.item_id or line.passage_id):
            self._desk.tell(tr("The chosen line is no item."), tr("Choose a line with a passage."))
            return
        kind = ItemKind.PASSAGE if line.passage_id else ItemKind.OTHER

        from app.services.clock_views import ItemRow  # noqa: PLC0415 - not for the first look

        item = ItemRow(line.item_id or "", line.title, kind, line.passage_id, None)
        self.practiseWanted.emit(item)

    def _move(self, by: int) -> None:
        at = self.table.currentIndex().row()
        ids = [line.id for line in self.table.rows_model.rows]
        if 0 <= at < len(ids) and 0 <= at + by < len(ids):
            ids[at], ids[at + by] = ids[at + by], ids[at]
            planning = self._desk.workbench.planning
            self._desk.jobs.store(
                self._on_kept(lambda: planning.reorder(ids)),
                lambda plan: self._moved(plan, at + by),
            )

    def _moved(self, plan: "PlanView", at: int) -> None:
        self.show_plan(plan)
        self.table.choose(at)

    def _leave_out(self) -> None:
        line, planning = self.table.chosen, self._desk.workbench.planning
        if line is not None:
            self._keep(lambda: planning.remove_line(line.id))

    def _write(self, line: "PlanLine", text: str) -> "PlanLine | None":
        planning = self._desk.workbench.planning
        if not text.strip().isdigit():
            self._desk.tell(tr("Minutes are a whole number."), tr("Type one, such as 10."))
            return None
        self._keep(lambda: planning.change_line(line.id, minutes=int(text)))
        return None

    def _keep(self, step: Callable[[], "PlanView"]) -> None:
        self._desk.jobs.store(self._on_kept(step), self.show_plan)

    def _on_kept(self, step: Callable[[], "PlanView"]) -> Callable[[], "PlanView"]:
        """Let a step on a proposal keep it first."""
        proposal = self._plan if self._is_proposal else None
        planning = self._desk.workbench.planning

        def keep_and_step() -> "PlanView":
            if proposal is not None:
                planning.keep(proposal.plan, "plan made")
            return step()

        return keep_and_step


def _why(line: "PlanLine") -> str:
    return line.reasons[0].sentence if line.reasons else ""


def _reasons(line: "PlanLine") -> str:
    return " ".join(reason.sentence for reason in line.reasons)


def _words(line: "PlanLine") -> str:
    done = tr(", done") if line.done_at else ""
    return f"{line.title}, {minutes_text(line.minutes)}{done}. {_reasons(line)}"
