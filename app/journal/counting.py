"""The honest count: days practised and days since the first, never mixed up.

Both are always given. 'Days since the first' counts calendar days with the first one
as day 1, whatever happened in between; 'days practised' counts the days on which
something was done, however short. A take entered late counts for the day on which it
was played.
"""

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from datetime import date, timedelta


@dataclass(frozen=True, slots=True)
class Count:
    """What the days of a journal add up to.

    Attributes
    ----------
    first_day : date or None
        The first practice day with anything on it; ``None`` for an empty journal.
    days_practised : int
        Days with minutes or takes; a short day counts.
    days_since_first : int
        Calendar days from the first to today, both included.
    rest_days : int
        Days without practice that were meant, up to today.
    missed_days : int
        The other days without practice. Today is not over and never among them.
    today_open : bool
        Today has neither practice nor rest yet; then, and only then, it is in none of
        the three counts, which otherwise add up to ``days_since_first``.
    """

    first_day: date | None
    days_practised: int
    days_since_first: int
    rest_days: int
    missed_days: int
    today_open: bool


def practised_days(
    minutes: Mapping[date, float | None], takes: Mapping[date, int]
) -> frozenset[date]:
    """Give the practice days on which something was done, however short.

    Parameters
    ----------
    minutes : mapping
        Minutes of each day, more than 0; ``None`` and 0 say nothing.
    takes : mapping
        Takes of each day.
    """
    with_minutes = {day for day, amount in minutes.items() if amount is not None and amount > 0}
    with_takes = {day for day, amount in takes.items() if amount > 0}
    return frozenset(with_minutes | with_takes)


def count(practised: Collection[date], rest: Collection[date], today: date) -> Count:
    """Count the days up to today.

    Parameters
    ----------
    practised : collection of date
        As :func:`practised_days` gives them; days after today are not looked at.
    rest : collection of date
        Rest days, planned or marked. A rest day on which something was practised is a
        day practised; those before the first day count for nothing.
    today : date
        The present practice day.
    """
    done = {day for day in practised if day <= today}
    if not done:
        return Count(None, 0, 0, 0, 0, today_open=today not in rest)
    first = min(done)
    rested = {day for day in rest if first <= day <= today} - done
    since_first = (today - first).days + 1
    today_open = today not in done and today not in rested
    missed = since_first - len(done) - len(rested) - today_open
    return Count(first, len(done), since_first, len(rested), missed, today_open)


def missed_days(
    practised: Collection[date], rest: Collection[date], today: date
) -> tuple[date, ...]:
    """List the days from the first to yesterday with neither practice nor rest."""
    done = {day for day in practised if day <= today}
    if not done:
        return ()
    first = min(done)
    every = (first + timedelta(days=n) for n in range((today - first).days))
    return tuple(day for day in every if day not in done and day not in rest)
