"""What was played of a passage in this week a year ago, to be heard against now."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, timedelta

from app.journal.records import Take

_HALF_A_WEEK = timedelta(days=3)
_APART = timedelta(days=30)
"""A take of now lies at least so long after the earlier one."""

_MOST_YEARS = 20


@dataclass(frozen=True, slots=True)
class YearAgo:
    """A take of this week some years ago, and the latest one of the same passage."""

    years: int
    then: Take
    now: Take


def year_ago(takes: Iterable[Take], today: date) -> YearAgo | None:
    """Choose what to remind of.

    Parameters
    ----------
    takes : iterable of Take
        In any order; deleted ones and those without a passage are passed over.
    today : date
        The practice day.

    Returns
    -------
    YearAgo or None
        A take within three days of the same date a year ago; else of two years ago, and
        so on. Of several, of the passage that was played last, the one nearest to the
        date. ``None`` where there is no such take, or none of its passage since.
    """
    known = [take for take in takes if take.deleted_at is None and take.passage_id is not None]
    latest: dict[str | None, Take] = {}
    for take in sorted(known, key=lambda take: take.recorded_at):
        if take.practice_day <= today:
            latest[take.passage_id] = take
    for years in range(1, _MOST_YEARS + 1):
        anniversary = same_day(today, years)
        found = [
            YearAgo(years, take, latest[take.passage_id])
            for take in known
            if abs(take.practice_day - anniversary) <= _HALF_A_WEEK
            and latest[take.passage_id].practice_day - take.practice_day >= _APART
        ]
        if found:
            return min(
                found,
                key=lambda one: (
                    today - one.now.practice_day,
                    abs(one.then.practice_day - anniversary),
                    one.then.recorded_at,
                ),
            )
    return None


def weeks_of_then(today: date) -> tuple[tuple[date, date], ...]:
    """Give the days to look at in earlier years, the latest year first.

    :func:`year_ago` needs the takes of these days and the latest take of each passage;
    others make no difference to it.
    """
    return tuple(
        (day - _HALF_A_WEEK, day + _HALF_A_WEEK)
        for day in (same_day(today, years) for years in range(1, _MOST_YEARS + 1))
    )


def same_day(day: date, years: int) -> date:
    """Give the same date some years earlier; 28 February stands in for a missing 29th."""
    try:
        return day.replace(year=day.year - years)
    except ValueError:
        return day.replace(year=day.year - years, day=28)
