"""What the record shows: weeks, months, weekdays, hours, and times that rose steeply.

Everything here is adding up; where a time is busier or quieter than another is for
:mod:`app.journal.change_points` to say. Weeks begin on Monday.
"""

import math
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, date, timedelta
from itertools import pairwise
from statistics import median

from app.journal.blocks import Block
from app.journal.change_points import Change, changes

FEWEST_WEEKS = 6
"""Nothing is claimed from fewer whole weeks."""

MOST_WEEKS = 104
STEEP_RATIO, STEEP_EXTRA_MIN, WEEKS_BEFORE = 1.5, 90.0, 4
HOURS_A_DAY = 24
_WEEK = timedelta(days=7)


@dataclass(frozen=True, slots=True)
class SpanMinutes:
    """The minutes of a week or month and the days on which anything was done."""

    first_day: date
    last_day: date
    minutes: float
    days_practised: int
    is_over: bool


@dataclass(frozen=True, slots=True)
class Weekday:
    """A weekday, 0 = Monday: how many there were, and the minutes on them altogether."""

    weekday: int
    days: int
    days_practised: int
    minutes: float


@dataclass(frozen=True, slots=True)
class Period:
    """A stretch of whole weeks between two changes of level.

    ``change`` is the one it begins with, ``None`` for the first; ``median_minutes`` is
    of its weeks.
    """

    first_day: date
    last_day: date
    median_minutes: float
    change: Change | None


@dataclass(frozen=True, slots=True)
class SteepRise:
    """The last seven days against the mean week of the four before them, in minutes."""

    minutes: float
    mean_before: float


def weeks(
    minutes: Mapping[date, float], practised: Collection[date], first: date, today: date
) -> tuple[SpanMinutes, ...]:
    """Give every week from that of the first day to that of today."""
    start = first - timedelta(days=first.weekday())
    spans = []
    while start <= today:
        spans.append((start, start + _WEEK - timedelta(days=1)))
        start += _WEEK
    return _spans(spans, minutes, practised, today)


def months(
    minutes: Mapping[date, float], practised: Collection[date], first: date, today: date
) -> tuple[SpanMinutes, ...]:
    """Give every calendar month from that of the first day to that of today."""
    start = first.replace(day=1)
    spans = []
    while start <= today:
        following = (start + timedelta(days=32)).replace(day=1)
        spans.append((start, following - timedelta(days=1)))
        start = following
    return _spans(spans, minutes, practised, today)


def weekdays(
    minutes: Mapping[date, float], practised: Collection[date], first: date, last: date
) -> tuple[Weekday, ...]:
    """Give what was done on Mondays, Tuesdays and so on, both ends included."""
    counts, done, sums = [0] * 7, [0] * 7, [0.0] * 7
    for n in range((last - first).days + 1):
        day = first + timedelta(days=n)
        counts[day.weekday()] += 1
        done[day.weekday()] += day in practised
        sums[day.weekday()] += minutes.get(day, 0.0)
    return tuple(Weekday(n, counts[n], done[n], sums[n]) for n in range(7))


def minutes_by_hour(blocks: Iterable[Block]) -> tuple[float, ...]:
    """Add up the minutes practised in each hour of the wall clock, 0 to 23.

    The wall clock is that of the place where a block was played.
    """
    found = [0.0] * HOURS_A_DAY
    for block in blocks:
        zone = block.started_at.tzinfo
        at, end = block.started_at.astimezone(UTC), block.ended_at.astimezone(UTC)
        while at < end:
            local = at.astimezone(zone)
            seconds_left = 3600 - local.minute * 60 - local.second - local.microsecond / 1e6
            until = min(end, at + timedelta(seconds=seconds_left))
            found[local.hour] += (until - at).total_seconds() / 60
            at = until
    return tuple(found)


def periods(whole_weeks: Sequence[SpanMinutes]) -> tuple[Period, ...]:
    """Cut the last two years of whole weeks where the minutes change their level.

    Parameters
    ----------
    whole_weeks : sequence of SpanMinutes
        Weeks that are over and lie wholly in the journal; under six: nothing is said.
    """
    recent = whole_weeks[-MOST_WEEKS:]
    if len(recent) < FEWEST_WEEKS:
        return ()
    found = changes([week.minutes for week in recent])
    starts = [0, *(change.index for change in found)]
    ends = [*(change.index for change in found), len(recent)]
    return tuple(
        Period(
            first_day=recent[start].first_day,
            last_day=recent[end - 1].last_day,
            median_minutes=median(week.minutes for week in recent[start:end]),
            change=change,
        )
        for start, end, change in zip(starts, ends, [None, *found], strict=True)
    )


def whole(all_weeks: Sequence[SpanMinutes], first: date) -> tuple[SpanMinutes, ...]:
    """Leave out the week that is not over, and the first one if it began before the journal."""
    return tuple(week for week in all_weeks if week.is_over and week.first_day >= first)


def steep_rise(minutes: Mapping[date, float], first: date, today: date) -> SteepRise | None:
    """Tell of minutes that rose steeply: half as much again, and 90 minutes more.

    The two thresholds are a design choice of this program; the advice to raise practice
    time slowly is NASM-PAMA's. ``None`` also where the journal is younger than the five
    weeks that are compared.
    """
    last_week = _sum(minutes, today - timedelta(days=6), today)
    start = today - timedelta(days=6) - WEEKS_BEFORE * _WEEK
    if first > start:
        return None
    before = _sum(minutes, start, today - timedelta(days=7)) / WEEKS_BEFORE
    if last_week >= STEEP_RATIO * before and last_week - before >= STEEP_EXTRA_MIN:
        return SteepRise(last_week, before)
    return None


def longest_pause(
    practised: Collection[date], since: date, today: date
) -> tuple[date, date] | None:
    """Give the first and last day of the longest time without practice since a day."""
    days = sorted({day for day in practised if since <= day <= today})
    gaps = [
        (one + timedelta(days=1), other - timedelta(days=1))
        for one, other in pairwise(days)
        if (other - one).days > 1
    ]
    return max(gaps, key=lambda gap: (gap[1] - gap[0], gap[1]), default=None)


def _spans(
    spans: Sequence[tuple[date, date]],
    minutes: Mapping[date, float],
    practised: Collection[date],
    today: date,
) -> tuple[SpanMinutes, ...]:
    return tuple(
        SpanMinutes(
            first_day=start,
            last_day=end,
            minutes=_sum(minutes, start, end),
            days_practised=sum(
                start + timedelta(days=n) in practised for n in range((end - start).days + 1)
            ),
            is_over=end < today,
        )
        for start, end in spans
    )


def _sum(minutes: Mapping[date, float], start: date, end: date) -> float:
    days = (start + timedelta(days=n) for n in range((end - start).days + 1))
    return math.fsum(minutes.get(day, 0.0) for day in days)
