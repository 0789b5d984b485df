"""A plan for one practice day: lines with minutes and the reason for each.

Plain frozen values as in :mod:`app.journal.records`. A plan is a proposal: the player
edits it, reorders it, ticks lines off or leaves it alone, and nothing counts against
what was not done. How one is made: :mod:`app.journal.planning`.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime
from enum import StrEnum

from app.journal.failures import PlainFailure

MOST_MINUTES = 24 * 60
PLAY_BEFORE_BREAK_MIN = 25
BREAK_MIN = 5


class ReasonKind(StrEnum):
    """Why something is proposed, and what sort of record ``record_id`` names."""

    NO_RETAKE = "no_retake"
    ASSIGNMENT = "assignment"
    MARKER = "marker"
    WORSE = "worse"
    OCCASION = "occasion"
    REVISIT = "revisit"
    OWN = "own"


@dataclass(frozen=True, slots=True)
class PlanReason:
    """One reason, and the record that shows it.

    ``record_id`` is that of the passage (no_retake, revisit, where it was never
    recorded), take (worse, revisit), marker, assignment or occasion.
    """

    kind: ReasonKind
    record_id: str
    sentence: str


@dataclass(frozen=True, slots=True)
class PlanLine:
    """What to practise, for how long and why; the first reason is the weightiest."""

    id: str
    title: str
    minutes: int
    reasons: tuple[PlanReason, ...] = ()
    passage_id: str | None = None
    item_id: str | None = None
    done_at: datetime | None = None


@dataclass(frozen=True, slots=True)
class PracticePlan:
    """The plan of a practice day; its lines and its breaks fit into the minutes there are."""

    practice_day: date
    minutes_available: int
    made_at: datetime
    lines: tuple[PlanLine, ...] = ()
    break_minutes: int = 0

    @property
    def id(self) -> str:
        """The practice day: there is one plan a day."""
        return self.practice_day.isoformat()

    @property
    def minutes_planned(self) -> int:
        """Lines and breaks together."""
        return sum(line.minutes for line in self.lines) + self.break_minutes


def breaks_within(minutes_available: int) -> int:
    """Give the minutes of rest that belong into a time: 5 after every 25 that go on."""
    return BREAK_MIN * ((minutes_available - 1) // (PLAY_BEFORE_BREAK_MIN + BREAK_MIN))


def breaks_for(minutes_played: int) -> int:
    """Give the minutes of rest for a time of playing: 5 after every 25 that go on."""
    return BREAK_MIN * (max(0, minutes_played - 1) // PLAY_BEFORE_BREAK_MIN)


def with_line(plan: PracticePlan, line: PlanLine) -> PracticePlan:
    """Add a line at the end, or put it in the place of the one with its id.

    Raises
    ------
    PlainFailure
        Where the plan would no longer fit into the minutes there are.
    """
    _check_title(line)
    known = [old.id for old in plan.lines]
    if line.id in known:
        lines = tuple(line if old.id == line.id else old for old in plan.lines)
    else:
        lines = (*plan.lines, line)
    changed = replace(plan, lines=lines)
    if changed.minutes_planned > max(plan.minutes_available, plan.minutes_planned):
        raise PlainFailure(
            f"That would be {changed.minutes_planned} minutes,"
            f" and there are {plan.minutes_available}.",
            "Shorten or leave out another line first, or give the plan more minutes.",
        )
    return changed


def without_line(plan: PracticePlan, line_id: str) -> PracticePlan:
    """Leave a line out."""
    return replace(plan, lines=tuple(line for line in plan.lines if line.id != line_id))


def in_order(plan: PracticePlan, line_ids: Sequence[str]) -> PracticePlan:
    """Put the lines in another order; those not named follow in their old order."""
    place = {line_id: n for n, line_id in enumerate(line_ids)}
    lines = sorted(plan.lines, key=lambda line: place.get(line.id, len(place)))
    return replace(plan, lines=tuple(lines))


def ticked(plan: PracticePlan, line_id: str, done_at: datetime | None) -> PracticePlan:
    """Tick a line off, or take the tick away with ``None``."""
    lines = tuple(
        replace(line, done_at=done_at) if line.id == line_id else line for line in plan.lines
    )
    return replace(plan, lines=lines)


def _check_title(line: PlanLine) -> None:
    if not line.title.strip():
        raise PlainFailure("A line of a plan says what to practise.", "Give it a few words.")
    if not 1 <= line.minutes <= MOST_MINUTES:
        raise PlainFailure("A line of a plan has at least one minute.", "Give it minutes.")
