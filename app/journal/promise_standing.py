"""Where a promise stands: days kept and days since the start, never mixed up.

Every day from the start on is one of five things, looked at in this order:

kept
    What was done meets the rule of that day, whatever else the day was.
paused
    It lies in a planned break.
rest
    Its weekday has no duty, or it is marked as rest and the rule still allows one.
open
    It is not over yet.
missed
    Everything else.

The numbers are counted from these and kept apart. The number a day bears is the days
since the start and depends on two dates only: neither a missed day, nor a pause, nor a
clip filed late moves it. Rest and pause neither add to a run of days in a row nor end
it. Once the promise is kept its count stands still.
"""

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from enum import StrEnum

from app.journal.promises import (
    PlannedBreak,
    Promise,
    PromiseRule,
    Stretch,
    break_on,
    rule_on,
)

_DAY = timedelta(days=1)


class DayKind(StrEnum):
    """What a day is to a promise."""

    KEPT = "kept"
    PAUSED = "paused"
    REST = "rest"
    OPEN = "open"
    MISSED = "missed"


class PromiseState(StrEnum):
    """Where a promise is in its life."""

    AHEAD = "ahead"
    RUNNING = "running"
    KEPT = "kept"
    ENDED = "ended"


@dataclass(frozen=True, slots=True)
class DaysDone:
    """What was done: minutes and takes of each practice day, and the days marked as rest."""

    minutes: Mapping[date, float]
    takes: Mapping[date, int]
    rest: Collection[date]


@dataclass(frozen=True, slots=True)
class JudgedDay:
    """One day of a promise.

    ``days_kept`` counts the days kept up to it, itself included. ``run`` counts those
    since the last missed day, ``rest_used`` the marked rest days among those allowed.
    ``over_rest`` marks a missed day that was meant as rest, when no more was allowed.
    """

    day: date
    number: int
    kind: DayKind
    days_kept: int
    run: int
    rest_used: int
    over_rest: bool


@dataclass(frozen=True, slots=True)
class PromiseStanding:
    """Where a promise stands on a day.

    Attributes
    ----------
    rule : PromiseRule
        The one in force.
    day : int
        Days since the start, counting on to today or to the day it ended or was kept;
        0 before the start.
    days_kept, days_missed, rest_taken, days_paused : int
        Together with an open day they add up to ``day``.
    today_open : bool
        The last day is not over and nothing is decided about it.
    needed : int
        Days still to keep: of the present run, or in total.
    run, longest_run : int
        Days kept since the last missed day, and the most there were between two.
    run_began, last_missed : date or None
    rest_left : int
        Rest days that may still be marked.
    over_rest : int
        Missed days that were marked as rest when none was left.
    days_left : int or None
        Days on which something can still be kept; ``None`` without an end date.
    kept_on, ended_on : date or None
    pause : PlannedBreak or None
        The break the day lies in.
    days : tuple of JudgedDay
    """

    state: PromiseState
    rule: PromiseRule
    day: int
    days_kept: int
    days_missed: int
    rest_taken: int
    days_paused: int
    today_open: bool
    needed: int
    run: int
    longest_run: int
    run_began: date | None
    last_missed: date | None
    rest_left: int
    over_rest: int
    days_left: int | None
    kept_on: date | None
    ended_on: date | None
    pause: PlannedBreak | None
    days: tuple[JudgedDay, ...]

    @property
    def is_alive(self) -> bool:
        """Whether it runs or is still to begin."""
        return self.state in (PromiseState.RUNNING, PromiseState.AHEAD)

    @property
    def within_reach(self) -> bool:
        """Whether the days that are left are enough."""
        return self.days_left is None or self.needed <= self.days_left


def meets(rule: PromiseRule, minutes: float, takes: int) -> bool:
    """Tell whether what was done on a day is what the rule asks for.

    Parameters
    ----------
    rule : PromiseRule
    minutes : float
        Of the whole day; compared as shown, rounded to the whole minute.
    takes : int
    """
    if rule.anything_counts:
        return minutes > 0 or takes > 0
    answers = []
    if rule.minimum_minutes is not None:
        answers.append(int(minutes + 0.5) >= rule.minimum_minutes)
    if rule.minimum_takes is not None:
        answers.append(takes >= rule.minimum_takes)
    return all(answers) if rule.needs_both else any(answers)


def standing(promise: Promise, done: DaysDone, today: date) -> PromiseStanding:
    """Work out where a promise stands.

    Parameters
    ----------
    promise : Promise
    done : DaysDone
        At least from the start to today; what lies outside is not looked at.
    today : date
        The present practice day.
    """
    until = today if promise.closed_on is None else min(today, promise.closed_on)
    rule = rule_on(promise, until)
    last = until if rule.end is None else min(until, rule.end)
    days = tuple(_judged(promise, done, rule, last, today))
    kept_on = days[-1].day if days and _is_reached(rule, days[-1]) else None
    state = _state(promise, rule, kept_on, today)
    kinds = [judged.kind for judged in days]
    is_open = bool(days) and days[-1].kind is DayKind.OPEN
    run = _last_run(days)
    counted = len(run) if rule.stretch is Stretch.IN_A_ROW else kinds.count(DayKind.KEPT)
    running = state in (PromiseState.RUNNING, PromiseState.AHEAD)
    return PromiseStanding(
        state=state,
        rule=rule,
        day=days[-1].number if days else 0,
        days_kept=kinds.count(DayKind.KEPT),
        days_missed=kinds.count(DayKind.MISSED),
        rest_taken=kinds.count(DayKind.REST),
        days_paused=kinds.count(DayKind.PAUSED),
        today_open=is_open,
        needed=max(0, rule.days - counted),
        run=len(run),
        longest_run=max((judged.run for judged in days), default=0),
        run_began=run[0] if run else None,
        last_missed=max((j.day for j in days if j.kind is DayKind.MISSED), default=None),
        rest_left=max(0, rule.rest_days - (days[-1].rest_used if days else 0)),
        over_rest=sum(judged.over_rest for judged in days),
        days_left=_days_left(promise, rule, last, is_open) if running else None,
        kept_on=kept_on,
        ended_on=last if state is PromiseState.ENDED else None,
        pause=break_on(promise, last) if running else None,
        days=days,
    )


def _judged(
    promise: Promise, done: DaysDone, rule_now: PromiseRule, last: date, today: date
) -> Iterator[JudgedDay]:
    """Judge day after day, to the last one or to that on which the promise is kept."""
    rest = frozenset(done.rest)
    kept = run = rest_used = 0
    for number in range(1, (last - promise.start).days + 2):
        day = promise.start + (number - 1) * _DAY
        rule = rule_on(promise, day)
        is_rest_marked = day in rest
        kind = DayKind.MISSED
        if meets(rule, done.minutes.get(day, 0.0) or 0.0, done.takes.get(day, 0)):
            kind = DayKind.KEPT
            kept, run = kept + 1, run + 1
        elif break_on(promise, day):
            kind = DayKind.PAUSED
        elif day.weekday() in rule.rest_weekdays:
            kind = DayKind.REST
        elif is_rest_marked and rest_used < rule.rest_days:
            kind = DayKind.REST
            rest_used += 1
        elif day in (today, promise.closed_on):
            kind = DayKind.OPEN
        else:
            run = 0
            if rule.stretch is Stretch.IN_A_ROW:
                rest_used = 0
        over_rest = kind is DayKind.MISSED and is_rest_marked
        judged = JudgedDay(day, number, kind, kept, run, rest_used, over_rest)
        yield judged
        if rule.since == rule_now.since and _is_reached(rule, judged):
            return


def _is_reached(rule: PromiseRule, judged: JudgedDay) -> bool:
    counted = judged.run if rule.stretch is Stretch.IN_A_ROW else judged.days_kept
    return judged.day >= rule.since and counted >= rule.days


def _state(promise: Promise, rule: PromiseRule, kept_on: date | None, today: date) -> PromiseState:
    if kept_on is not None:
        return PromiseState.KEPT
    is_closed = promise.closed_on is not None and promise.closed_on <= today
    if is_closed or (rule.end is not None and rule.end < today):
        return PromiseState.ENDED
    return PromiseState.AHEAD if today < promise.start else PromiseState.RUNNING


def _last_run(days: tuple[JudgedDay, ...]) -> tuple[date, ...]:
    """Give the days kept since the last missed day."""
    found: list[date] = []
    for judged in days:
        if judged.kind is DayKind.KEPT:
            found.append(judged.day)
        elif judged.kind is DayKind.MISSED:
            found.clear()
    return tuple(found)


def _days_left(promise: Promise, rule: PromiseRule, last: date, is_open: bool) -> int | None:
    if rule.end is None:
        return None
    begun = max(last, promise.start - _DAY)
    return max(0, (rule.end - begun).days) + is_open
