"""Whether to remind of practice now: off unless wished, never after the day is done."""

from collections.abc import Iterable
from datetime import date, datetime

from app.journal.promise_standing import DayKind, PromiseStanding, PromiseState

MINUTES_A_DAY = 24 * 60


def is_minute_of_day(minute: int) -> bool:
    """Tell whether a number is a minute of the day, 0 to 1439."""
    return 0 <= minute < MINUTES_A_DAY


def day_is_done(
    practised_today: bool, rest_today: bool, standings: Iterable[PromiseStanding]
) -> bool:
    """Tell whether nothing is asked of today any more.

    A rest day is done, and so is one on which every running promise is kept, rests or
    is paused. Without any promise a day is done once something was practised.
    """
    if rest_today:
        return True
    running = [one for one in standings if one.state is PromiseState.RUNNING and one.days]
    if not running:
        return practised_today
    return all(one.days[-1].kind is not DayKind.OPEN for one in running)


def is_due(
    minute_of_day: int | None,
    now: datetime,
    today: date,
    *,
    turn_hour: int,
    done: bool,
    reminded_on: date | None,
) -> bool:
    """Tell whether to remind now.

    Parameters
    ----------
    minute_of_day : int or None
        From when on, by the wall clock; ``None``: never. A minute before the turn of
        the day is late in the evening of its practice day.
    now : datetime
    today : date
        The practice day of ``now``.
    turn_hour : int
        When the practice day turns.
    done : bool
        As :func:`day_is_done` says.
    reminded_on : date or None
        The practice day of the last reminder: there is one a day at most.
    """
    if minute_of_day is None or done or reminded_on == today:
        return False
    turn = turn_hour * 60
    since_turn = (now.hour * 60 + now.minute - turn) % MINUTES_A_DAY
    return since_turn >= (minute_of_day - turn) % MINUTES_A_DAY
