"""Promises: so many days, and a rule for what makes a day count.

A promise has one rule at a time. A changed rule holds from a day on that is not over;
the days before keep the rule they were practised under, so no day that was kept can be
taken away afterwards. What a promise comes to is worked out in
:mod:`app.journal.promise_standing`.
"""

from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta
from enum import StrEnum

from app.journal.failures import PlainFailure

MOST_DAYS = 36_500
MINUTES_A_DAY = 24 * 60
DAYS_A_WEEK = 7


class Stretch(StrEnum):
    """How the days of a promise are counted."""

    IN_A_ROW = "in_a_row"
    IN_TOTAL = "in_total"


@dataclass(frozen=True, slots=True)
class PromiseRule:
    """What is promised, from a day on.

    Attributes
    ----------
    since : date
        The first day it holds.
    stretch : Stretch
        In a row: a missed day begins a new run. In total: it costs that day only.
    days : int
        How many days are to be kept.
    minimum_minutes, minimum_takes : int or None
        What a day must reach. Minutes count as they are shown, rounded to the whole
        minute. Both ``None``: anything counts.
    needs_both : bool
        Where both are asked: the day needs both, otherwise one of them is enough.
    rest_days : int
        Days marked as rest that are allowed: within each run of days in a row, or
        over the whole of days in total.
    rest_weekdays : tuple of int
        Weekdays without a duty, 0 = Monday; they need no mark and use up no rest day.
    end : date or None
        The last day that counts.
    """

    since: date
    stretch: Stretch
    days: int
    minimum_minutes: int | None = None
    minimum_takes: int | None = None
    needs_both: bool = False
    rest_days: int = 0
    rest_weekdays: tuple[int, ...] = ()
    end: date | None = None

    @property
    def anything_counts(self) -> bool:
        """Whether a minute or a take is enough."""
        return self.minimum_minutes is None and self.minimum_takes is None


@dataclass(frozen=True, slots=True)
class PlannedBreak:
    """Days on which a promise pauses, both ends included."""

    first_day: date
    last_day: date
    reason: str = ""


@dataclass(frozen=True, slots=True)
class Promise:
    """A promise with the history of its rules.

    Attributes
    ----------
    start : date
        Day 1.
    rules : tuple of PromiseRule
        In the order of their days; the first one holds since the start.
    breaks : tuple of PlannedBreak
        In order, none overlapping.
    closed_on : date or None
        The day on which the player ended it.
    """

    id: str
    name: str
    start: date
    rules: tuple[PromiseRule, ...]
    created_at: datetime
    breaks: tuple[PlannedBreak, ...] = ()
    closed_on: date | None = None


@dataclass(frozen=True, slots=True)
class SharedNumber:
    """The numbers of a practice day as they were given away with a clip; never changed."""

    id: str
    promise_id: str
    practice_day: date
    day_number: int
    days_kept: int
    shared_at: datetime
    take_id: str | None = None


def rule_on(promise: Promise, day: date) -> PromiseRule:
    """Give the rule that holds on a day; before the start the first one."""
    holding = promise.rules[0]
    for rule in promise.rules[1:]:
        if rule.since <= day:
            holding = rule
    return holding


def day_number(promise: Promise, day: date) -> int | None:
    """Give the number a day bears: days since the start, day 1 itself included.

    It depends on nothing but the two dates. ``None`` before the start.
    """
    number = (day - promise.start).days + 1
    return number if number >= 1 else None


def break_on(promise: Promise, day: date) -> PlannedBreak | None:
    """Give the planned break a day lies in."""
    for pause in promise.breaks:
        if pause.first_day <= day <= pause.last_day:
            return pause
    return None


def checked(promise: Promise) -> Promise:
    """Give a promise as it may be kept: tidy name, rules that make sense.

    Raises
    ------
    PlainFailure
        For a number of days, a minimum, rest or end date that makes no sense.
    """
    name = " ".join(promise.name.split())
    if not name:
        raise PlainFailure("A promise needs a name.", "Give it one, e.g. 'Forty days of scales'.")
    rules = tuple(_checked_rule(rule) for rule in promise.rules)
    days = [rule.since for rule in rules]
    if not days or days[0] != promise.start or days != sorted(set(days)):
        msg = "the rules of a promise begin with its start and follow one another"
        raise ValueError(msg)
    return replace(promise, name=name, rules=rules)


def with_rule(promise: Promise, rule: PromiseRule, today: date) -> Promise:
    """Change the rule from a day on; rules planned for later than that fall away.

    Raises
    ------
    PlainFailure
        For a rule that would judge days that are over, or that makes no sense.
    """
    if rule.since < today:
        raise PlainFailure(
            f"A rule cannot be changed for days that are over ({rule.since}).",
            "Let the new rule begin today or later; the days before keep their own.",
        )
    since = max(rule.since, promise.start)
    earlier = tuple(old for old in promise.rules if old.since < since)
    return checked(replace(promise, rules=(*earlier, replace(rule, since=since))))


def with_break(promise: Promise, pause: PlannedBreak, today: date) -> Promise:
    """Plan a break.

    Raises
    ------
    PlainFailure
        For one that begins on a day that is over, ends before it begins, or touches
        another one.
    """
    if pause.first_day < today:
        raise PlainFailure(
            "A break can be planned from today on, not for days that are over.",
            "Mark those days as rest, if the promise allows rest.",
        )
    if pause.last_day < pause.first_day:
        raise PlainFailure("The break would end before it begins.", "Swap the two days.")
    for other in promise.breaks:
        if pause.first_day <= other.last_day and other.first_day <= pause.last_day:
            raise PlainFailure(
                f"There is a break from {other.first_day} to {other.last_day} already.",
                "Choose other days, or end that one first.",
            )
    breaks = sorted((*promise.breaks, pause), key=lambda known: known.first_day)
    return replace(promise, breaks=tuple(breaks))


def with_breaks_ended(promise: Promise, today: date) -> Promise:
    """Go on today: the break that runs ends with yesterday, those planned ahead stay."""
    kept = []
    for pause in promise.breaks:
        if not pause.first_day <= today <= pause.last_day:
            kept.append(pause)
        elif pause.first_day < today:
            kept.append(replace(pause, last_day=today - timedelta(days=1)))
    return replace(promise, breaks=tuple(kept))


def _checked_rule(rule: PromiseRule) -> PromiseRule:
    if not 1 <= rule.days <= MOST_DAYS:
        raise PlainFailure(
            f"A promise is for 1 to {MOST_DAYS} days, not {rule.days}.", "Choose such a number."
        )
    minutes, takes = rule.minimum_minutes, rule.minimum_takes
    if minutes is not None and not 1 <= minutes <= MINUTES_A_DAY:
        raise PlainFailure(
            f"A day cannot ask for {minutes} minutes.",
            f"Choose 1 to {MINUTES_A_DAY}, or none: then anything counts.",
        )
    if takes is not None and not 1 <= takes <= 100:
        raise PlainFailure(
            f"A day cannot ask for {takes} takes.", "Choose 1 to 100, or none: anything counts."
        )
    weekdays = tuple(sorted(set(rule.rest_weekdays)))
    if not set(weekdays) < set(range(DAYS_A_WEEK)):
        raise PlainFailure(
            "Rest on every day of the week leaves nothing to promise.",
            "Choose at most six weekdays, from 0 (Monday) to 6.",
        )
    if not 0 <= rule.rest_days <= MOST_DAYS:
        raise PlainFailure("Rest days allowed are a number from 0 on.", "Choose 0 for none.")
    if rule.end is not None and rule.end < rule.since:
        raise PlainFailure(
            f"The promise would end on {rule.end}, before its rule begins on {rule.since}.",
            "Choose a later end, or none.",
        )
    return replace(rule, rest_weekdays=weekdays)
