"""Which dated backups stay: the last days, then weeks, then years.

Counted are days, weeks and years *that have a backup*: after a pause of months the
last backups before it are still there.
"""

from collections.abc import Callable, Hashable, Iterable
from datetime import datetime

DAILY = 7
WEEKLY = 8


def kept(made: Iterable[datetime]) -> frozenset[datetime]:
    """Choose the backups that stay.

    Parameters
    ----------
    made : iterable of datetime
        When each was made, all in one zone or all without.

    Returns
    -------
    frozenset of datetime
        The newest one of each of the last 7 days and the last 8 ISO 8601 weeks that
        have any, and the newest one of every year.
    """
    newest_first = sorted(made, reverse=True)
    return frozenset(
        _newest_of_each(newest_first, datetime.date)[:DAILY]
        + _newest_of_each(newest_first, lambda at: at.isocalendar()[:2])[:WEEKLY]
        + _newest_of_each(newest_first, lambda at: at.year)
    )


def _newest_of_each(
    newest_first: Iterable[datetime], period: Callable[[datetime], Hashable]
) -> list[datetime]:
    found: dict[Hashable, datetime] = {}
    for at in newest_first:
        found.setdefault(period(at), at)
    return list(found.values())
