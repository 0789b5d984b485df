"""The next practice: proposed from the journal, edited by the player, kept for the day."""

import uuid
from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date, timedelta

from app.journal import plans
from app.journal.failures import PlainFailure
from app.journal.no_retake import holds
from app.journal.planning import OpenAssignment, PassageFacts, Worsening, proposed
from app.journal.plans import PlanLine, PlanReason, PracticePlan, ReasonKind
from app.journal.practice_days import Clock
from app.journal.records import Marker, Passage, Take
from app.services.assigning import AssignmentService
from app.services.day_now import day_now
from app.services.fair_takes import fair_takes
from app.services.keeping_views import PlanView
from app.services.passages import passage_title
from app.services.reading_views import Reading
from app.services.time_spent import minutes_by_target
from app.services.undoing import Undoing
from app.services.wording import counted, minutes_text, reading_text
from app.store.store import Store

_LOOK_BACK = timedelta(days=200)
_RECENT = timedelta(weeks=8)
_MOST_MARKERS = 300
_MEASURE = "mean_absolute_cents"
_NOTHING = (
    "Nothing asks for attention today: play what you like, or mark what to work on while"
    " listening to a take."
)
# NASM-PAMA (warm up, regular breaks); The Musician's Way (5 after 25, stop on pain).
_WARM_UP = "Warm up first, and stop where it hurts. A plan is a proposal, never a duty."


class PlanningService:
    """Proposes a plan for the practice day and keeps what the player makes of it."""

    def __init__(
        self, store: Store, clock: Clock, assignments: AssignmentService, undoing: Undoing
    ) -> None:
        self._store = store
        self._clock = clock
        self._undoing = undoing
        self._assignments = assignments

    def today(self) -> PlanView | None:
        """Give today's plan as it was kept; ``None`` where none was made."""
        plan = self._store.plans.get(self._today())
        return None if plan is None else _view(plan)

    def propose(self, minutes_available: int) -> PlanView:
        """Make a plan for today without keeping it.

        Loads the statistics the first time (under a second): not for the GUI thread.

        Parameters
        ----------
        minutes_available : int
            Lines and breaks together never exceed it.

        Raises
        ------
        PlainFailure
            Where there is no time.
        """
        today = self._today()
        plan = proposed(
            minutes_available,
            today,
            passages=self._facts(today),
            assignments=[
                OpenAssignment(row.assignment, row.progress, row.title)
                for row in self._assignments.open()
            ],
            occasions=self._store.occasions.list(first_day=today),
            made_at=self._clock(),
        )
        return _view(plan)

    def make(self, minutes_available: int) -> PlanView:
        """Make a plan for today and keep it, in the place of the one there was."""
        return self.keep(self.propose(minutes_available).plan, "plan made")

    def keep(self, plan: PracticePlan, words: str = "plan changed") -> PlanView:
        """Keep a plan as it is; ``words`` say what was done, for undoing it."""
        self._undoing.make(words, self._store.plans.get(plan.practice_day), plan)
        return _view(plan)

    def drop(self) -> None:
        """Do without today's plan."""
        plan = self._store.plans.get(self._today())
        if plan is not None:
            self._undoing.make("plan put away", plan, None)

    def add_line(
        self,
        title: str,
        minutes: int,
        *,
        passage_id: str | None = None,
        item_id: str | None = None,
    ) -> PlanView:
        """Add a line of the player's own at the end."""
        line_id = uuid.uuid4().hex  # its own: the passage may be in the plan already
        cited = passage_id or item_id or line_id
        reason = PlanReason(ReasonKind.OWN, cited, "Your own choice.")
        line = PlanLine(line_id, " ".join(title.split()), minutes, (reason,), passage_id, item_id)
        return self.keep(plans.with_line(self._plan(), line), "line added to the plan")

    def change_line(
        self, line_id: str, *, title: str | None = None, minutes: int | None = None
    ) -> PlanView:
        """Give a line other words or minutes; its reasons stay."""
        plan = self._plan()
        line = _line(plan, line_id)
        if title is not None:
            line = replace(line, title=" ".join(title.split()))
        if minutes is not None:
            line = replace(line, minutes=minutes)
        return self.keep(plans.with_line(plan, line))

    def remove_line(self, line_id: str) -> PlanView:
        """Leave a line out."""
        return self.keep(plans.without_line(self._plan(), line_id), "line left out")

    def reorder(self, line_ids: Sequence[str]) -> PlanView:
        """Put the lines in another order."""
        return self.keep(plans.in_order(self._plan(), line_ids), "lines put in order")

    def tick(self, line_id: str, done: bool = True) -> PlanView:
        """Tick a line off, or take the tick away."""
        plan = self._plan()
        _line(plan, line_id)
        return self.keep(
            plans.ticked(plan, line_id, self._clock() if done else None), "tick in the plan"
        )

    def _plan(self) -> PracticePlan:
        plan = self._store.plans.get(self._today())
        if plan is None:
            raise PlainFailure("There is no plan for today.", "Make one first.")
        return plan

    def _facts(self, today: date) -> list[PassageFacts]:
        takes = self._takes_by_passage(today)
        spent = minutes_by_target(self._store, today - _LOOK_BACK, today)
        last_ever = self._store.takes.last_of_passages()
        markers = self._open_markers()
        day_counts = self._store.takes.day_counts_of_passages()
        facts = []
        for passage in self._store.passages.list():
            own = takes.get(passage.id, [])
            days = {take.practice_day for take in own} | set(spent.get(passage.id, {}))
            if not days and passage.id in last_ever:
                days = {last_ever[passage.id]}
            facts.append(
                PassageFacts(
                    passage_id=passage.id,
                    title=passage_title(passage),
                    practised_on=tuple(sorted(days)),
                    last_take_id=own[-1].id if own else None,
                    open_markers=tuple(markers.get(passage.id, ())),
                    worse=self._worsening(
                        passage,
                        [t for t in own if t.practice_day > today - _RECENT],
                        day_counts,
                    ),
                    no_retake=holds(passage, today),
                    recorded_today=any(take.practice_day == today for take in own),
                )
            )
        return facts

    def _takes_by_passage(self, today: date) -> Mapping[str, list[Take]]:
        found: dict[str, list[Take]] = defaultdict(list)
        for take in self._store.takes.list(first_day=today - _LOOK_BACK, last_day=today):
            if take.passage_id is not None:
                found[take.passage_id].append(take)
        return found

    def _open_markers(self) -> Mapping[str, list[Marker]]:
        markers = self._store.markers.list_open(_MOST_MARKERS)
        takes = self._store.takes.of_ids({marker.take_id for marker in markers})
        found: dict[str, list[Marker]] = defaultdict(list)
        for marker in markers:
            passage_id = takes[marker.take_id].passage_id
            if passage_id is not None:
                found[passage_id].append(marker)
        return found

    def _worsening(
        self, passage: Passage, takes: Sequence[Take], day_counts: Mapping[str, int]
    ) -> Worsening | None:
        """Tell of a passage whose intonation clearly got worse over the last weeks.

        Of takes that are comparable, and as surely as its trend would have to be.
        """
        fair = fair_takes(takes).with_measure(_MEASURE)
        headlines = self._store.measurements.headlines([take.id for take in fair])
        if not headlines:
            return None
        from app.services.trends import (  # noqa: PLC0415 - scipy, only when needed
            comparisons_of,
            trend_view,
        )

        comparisons = comparisons_of(day_counts, passage.id)
        trend = trend_view(passage, _MEASURE, fair, dict(headlines), comparisons=comparisons)
        if trend.verdict != "worse" or not isinstance(trend.slope, Reading):
            return None
        words = f"{trend.label} {reading_text(trend.slope)}"
        return Worsening(
            trend.points[-1].take_id, f"{words} over {counted(len(trend.points), 'take')}."
        )

    def _today(self) -> date:
        return day_now(self._store, self._clock)


def _line(plan: PracticePlan, line_id: str) -> PlanLine:
    for line in plan.lines:
        if line.id == line_id:
            return line
    raise PlainFailure("That line is not in today's plan.", "Look at the plan again.")


def _view(plan: PracticePlan) -> PlanView:
    cautions = [_WARM_UP] if plan.lines else []
    if plan.break_minutes:
        cautions.append(
            f"{minutes_text(plan.break_minutes)} of it are breaks: 5 min after every 25."
        )
    return PlanView(
        plan=plan,
        minutes_done=sum(line.minutes for line in plan.lines if line.done_at is not None),
        cautions=tuple(cautions),
        sentence="" if plan.lines else _NOTHING,
    )
