"""The next practice: what to take up, in which order, for how long, and why.

Every passage or assignment that gives a reason becomes one line; the weights below
decide the order, and lines are filled in until the time is used up. The weights are a
design choice of this program. The gaps between revisits grow while nothing is wrong
(each at most twice the one before, 2 to 30 days) and shrink towards a date on which the
passage will be played (15 % of the days that are left); that spaced revisits keep better
than massed ones, with gaps of roughly 10 to 20 % of the time they have to last, is cited
from memory (Cepeda et al., *Psychological Science* 2008). Breaks follow a handbook's
'5 minutes after 25' and are part of the time available.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime

from app.journal.assignments import Assignment, AssignmentProgress, Occasion
from app.journal.failures import PlainFailure
from app.journal.kinds import Author
from app.journal.plans import (
    MOST_MINUTES,
    PlanLine,
    PlanReason,
    PracticePlan,
    ReasonKind,
    breaks_for,
    breaks_within,
)
from app.journal.records import Marker

SHORTEST_LINE_MIN = 5
SHORTEST_GAP, LONGEST_GAP = 2, 30
LONGEST_GAP_WITH_MARKERS = 7
SHARE_OF_TIME_LEFT = 0.15
SOON_DAYS = 3

_NO_RETAKE_WEIGHT = 100.0
_WORSE_WEIGHT = 35.0


@dataclass(frozen=True, slots=True)
class Worsening:
    """A measure of a passage that clearly got worse, and the take that shows it last."""

    take_id: str
    words: str


@dataclass(frozen=True, slots=True)
class PassageFacts:
    """What the journal knows of a passage when a plan is made.

    Attributes
    ----------
    practised_on : tuple of date
        Days with a take or a block, in order.
    last_take_id : str or None
    open_markers : tuple of Marker
        To work on or returned.
    worse : Worsening or None
    no_retake : bool
        One take a day is kept, whatever it is.
    recorded_today : bool
    """

    passage_id: str
    title: str
    practised_on: tuple[date, ...] = ()
    last_take_id: str | None = None
    open_markers: tuple[Marker, ...] = ()
    worse: Worsening | None = None
    no_retake: bool = False
    recorded_today: bool = False


@dataclass(frozen=True, slots=True)
class OpenAssignment:
    """An assignment that is not done, with what it is for in words."""

    assignment: Assignment
    progress: AssignmentProgress
    title: str


@dataclass(frozen=True, slots=True)
class _Weighed:
    weight: float
    minutes: int
    reason: PlanReason


def proposed(
    minutes_available: int,
    today: date,
    *,
    passages: Sequence[PassageFacts],
    assignments: Sequence[OpenAssignment] = (),
    occasions: Sequence[Occasion] = (),
    made_at: datetime,
) -> PracticePlan:
    """Propose a plan.

    Parameters
    ----------
    minutes_available : int
        1 to 1440; lines and breaks together never exceed it.
    today : date
    passages : sequence of PassageFacts
    assignments : sequence of OpenAssignment
    occasions : sequence of Occasion
        Those that are over are not looked at.
    made_at : datetime

    Raises
    ------
    PlainFailure
        Where there is no time.
    """
    if not 1 <= minutes_available <= MOST_MINUTES:
        raise PlainFailure(
            f"A plan needs 1 to {MOST_MINUTES} minutes, not {minutes_available}.",
            "Say how many minutes there are.",
        )
    wishes = [
        *(_passage_wish(facts, assignments, occasions, today) for facts in passages),
        *_other_wishes(assignments, {facts.passage_id for facts in passages}, today),
    ]
    ordered = sorted(
        (wish for wish in wishes if wish is not None),
        key=lambda wish: (-wish[0], wish[1].title, wish[1].id),
    )
    break_minutes = breaks_within(minutes_available)
    lines = _fitted([line for _, line in ordered], minutes_available - break_minutes)
    needed = breaks_for(sum(line.minutes for line in lines))
    return PracticePlan(today, minutes_available, made_at, lines, min(break_minutes, needed))


def gap_days(facts: PassageFacts, today: date, occasion: Occasion | None = None) -> int:
    """Give the days after which a passage is due again.

    Twice the last gap between two days on it, at least 2 and at most 30; with open
    markers the last gap again, 2 to 7; with a date ahead at most 15 % of the days
    until then.
    """
    days = sorted(set(facts.practised_on))[-2:]
    last_gap = (days[1] - days[0]).days if len(days) == 2 else 1
    if facts.open_markers:
        gap = min(max(last_gap, SHORTEST_GAP), LONGEST_GAP_WITH_MARKERS)
    else:
        gap = min(max(2 * last_gap, SHORTEST_GAP), LONGEST_GAP)
    if occasion is not None:
        gap = min(gap, max(1, round(SHARE_OF_TIME_LEFT * (occasion.day - today).days)))
    return gap


def _passage_wish(
    facts: PassageFacts,
    assignments: Sequence[OpenAssignment],
    occasions: Sequence[Occasion],
    today: date,
) -> tuple[float, PlanLine] | None:
    weighed = [
        _weigh_no_retake(facts),
        *(
            _weigh_assignment(known, today)
            for known in assignments
            if known.assignment.passage_id == facts.passage_id and not known.progress.is_done
        ),
        _weigh_markers(facts),
        _weigh_worse(facts),
        _weigh_visit(facts, occasions, today),
    ]
    return _as_wish(
        [one for one in weighed if one is not None],
        PlanLine(facts.passage_id, facts.title, 0, passage_id=facts.passage_id),
    )


def _other_wishes(
    assignments: Sequence[OpenAssignment], passage_ids: set[str], today: date
) -> list[tuple[float, PlanLine] | None]:
    """Give a wish for each item with assignments, and for each set in words only."""
    groups: dict[str, list[OpenAssignment]] = {}
    for known in assignments:
        made = known.assignment
        if made.passage_id not in passage_ids and not known.progress.is_done:
            groups.setdefault(made.item_id or made.id, []).append(known)
    return [
        _as_wish(
            [_weigh_assignment(known, today) for known in group],
            PlanLine(key, group[0].title, 0, item_id=group[0].assignment.item_id),
        )
        for key, group in groups.items()
    ]


def _as_wish(weighed: Sequence[_Weighed], line: PlanLine) -> tuple[float, PlanLine] | None:
    if not weighed:
        return None
    ordered = sorted(weighed, key=lambda one: -one.weight)
    reasons = tuple(one.reason for one in ordered)
    minutes = max(one.minutes for one in ordered)
    return sum(one.weight for one in ordered), replace(line, minutes=minutes, reasons=reasons)


def _fitted(lines: Sequence[PlanLine], minutes: int) -> tuple[PlanLine, ...]:
    fitted: list[PlanLine] = []
    left = minutes
    for line in lines:
        if left < SHORTEST_LINE_MIN and (fitted or left < 1):
            break
        given = min(line.minutes, left)
        left -= given
        fitted.append(replace(line, minutes=given))
    return tuple(fitted)


def _weigh_no_retake(facts: PassageFacts) -> _Weighed | None:
    if not facts.no_retake or facts.recorded_today:
        return None
    sentence = "Today's one take is still to come: warm up, play it slowly, then record."
    reason = PlanReason(ReasonKind.NO_RETAKE, facts.passage_id, sentence)
    return _Weighed(_NO_RETAKE_WEIGHT, 10, reason)


def _weigh_assignment(known: OpenAssignment, today: date) -> _Weighed:
    made, done = known.assignment, known.progress
    days_left = max(0, (made.due_on - today).days)
    minutes = 15
    what = made.goal or "Assigned"
    if done.minutes_left is not None:
        a_day = math.ceil(done.minutes_left / max(1, days_left))
        minutes = min(max(a_day, SHORTEST_LINE_MIN), 30)
        what += f": {done.minutes_done:.0f} of {made.minutes} min done"
    sentence = f"{what}, due {_in_days(days_left)}."
    sentence = sentence[0].upper() + sentence[1:]  # other sentences may stand before it
    reason = PlanReason(ReasonKind.ASSIGNMENT, made.id, sentence)
    return _Weighed(70.0 - 3 * min(days_left, 14), minutes, reason)


def _weigh_markers(facts: PassageFacts) -> _Weighed | None:
    if not facts.open_markers:
        return None
    first = max(facts.open_markers, key=lambda m: (m.weight, m.changed_at, m.id))
    others = len(facts.open_markers) - 1
    from_teacher = any(m.author is Author.TEACHER for m in facts.open_markers)
    weight = 10.0 * first.weight + 4 * min(others, 3) + (8 if from_teacher else 0)
    text = f" '{first.text}'" if first.text else ""
    sentence = f"To work on: {first.category}{text}, weight {first.weight}"
    sentence += f", and {others} more." if others else "."
    reason = PlanReason(ReasonKind.MARKER, first.id, sentence)
    return _Weighed(weight, min(5 + 5 * len(facts.open_markers), 20), reason)


def _weigh_worse(facts: PassageFacts) -> _Weighed | None:
    if facts.worse is None:
        return None
    reason = PlanReason(ReasonKind.WORSE, facts.worse.take_id, facts.worse.words)
    return _Weighed(_WORSE_WEIGHT, 15, reason)


def _weigh_visit(
    facts: PassageFacts, occasions: Sequence[Occasion], today: date
) -> _Weighed | None:
    """Weigh a revisit: for a coming date on which it is played, else for its own sake."""
    ahead = sorted(
        (o for o in occasions if facts.passage_id in o.passage_ids and o.day >= today),
        key=lambda o: (o.day, o.id),
    )
    occasion = ahead[0] if ahead else None
    last = max(facts.practised_on, default=None)
    since = None if last is None else (today - last).days
    gap = gap_days(facts, today, occasion)
    is_due = since is None or since >= gap
    if occasion is not None:
        left = (occasion.day - today).days
        if is_due or (left <= SOON_DAYS and since != 0):
            name = occasion.name or occasion.kind.value
            sentence = f"{name} {_in_days(left)}; {_last_words(since)}"
            reason = PlanReason(ReasonKind.OCCASION, occasion.id, sentence)
            return _Weighed(60.0 - 2 * min(left, 25), 10, reason)
        return None
    if not is_due or since is None:
        return None
    record = facts.last_take_id or facts.passage_id
    reason = PlanReason(ReasonKind.REVISIT, record, f"Worth a visit: {_last_words(since)}")
    return _Weighed(10.0 + min(5.0 * since / gap, 20.0), SHORTEST_LINE_MIN, reason)


def _last_words(since: int | None) -> str:
    if since is None:
        return "not practised yet."
    if since == 0:
        return "last practised today."
    return f"last practised {since} day{'' if since == 1 else 's'} ago."


def _in_days(days: int) -> str:
    return {0: "today", 1: "tomorrow"}.get(days, f"in {days} days")
