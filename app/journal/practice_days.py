"""The practice day of an instant.

Practice after midnight belongs to the day before: a practice day begins when the
wall clock of the place reads the hour of the day's turn (04:00 unless set
otherwise) and ends when it does so again. The wall clock decides, not elapsed
hours, so a practice day lasts 23 or 25 hours when the clocks change. On a journey
the place where the playing happened counts: an instant that carries its own offset
(a phone clip) is filed by that offset.
"""

from collections.abc import Callable
from datetime import UTC, date, datetime, time, timedelta, tzinfo

Clock = Callable[[], datetime]
"""Gives the present instant, timezone-aware."""

DEFAULT_TURN_HOUR = 4
LAST_TURN_HOUR = 11


def practice_day(
    instant: datetime, *, turn_hour: int = DEFAULT_TURN_HOUR, zone: tzinfo | None = None
) -> date:
    """Give the practice day on which an instant lies.

    Parameters
    ----------
    instant : datetime
        Timezone-aware.
    turn_hour : int
        Hour of the wall clock at which the day turns, 0 to 11.
    zone : tzinfo, optional
        Where the playing happened; without it the instant's own offset counts.

    Raises
    ------
    ValueError
        For an instant without an offset or a turn outside 0 to 11.
    """
    _check_turn(turn_hour)
    local = local_time(instant, zone)
    if local.hour < turn_hour:
        return local.date() - timedelta(days=1)
    return local.date()


def local_time(instant: datetime, zone: tzinfo | None = None) -> datetime:
    """Give what the wall clock of the place shows at an instant, still aware."""
    if instant.utcoffset() is None:
        msg = "an instant needs a time zone"
        raise ValueError(msg)
    return instant if zone is None else instant.astimezone(zone)


def day_span(
    day: date, zone: tzinfo, *, turn_hour: int = DEFAULT_TURN_HOUR
) -> tuple[datetime, datetime]:
    """Give the first instant of a practice day and the first one after it.

    Both are in UTC. A date that a place skipped altogether has an empty span.
    """
    return (
        _turn_of(day, zone, turn_hour),
        _turn_of(day + timedelta(days=1), zone, turn_hour),
    )


def next_turn(instant: datetime, zone: tzinfo, *, turn_hour: int = DEFAULT_TURN_HOUR) -> datetime:
    """Give the instant (UTC) at which the practice day of ``instant`` ends."""
    day = practice_day(instant, turn_hour=turn_hour, zone=zone)
    return day_span(day, zone, turn_hour=turn_hour)[1]


def _turn_of(day: date, zone: tzinfo, turn_hour: int) -> datetime:
    """Find the first instant at which the wall clock has reached the turn of a day."""
    _check_turn(turn_hour)
    wall = datetime.combine(day, time(turn_hour), tzinfo=zone)
    after = wall.replace(fold=0).astimezone(UTC)
    before = wall.replace(fold=1).astimezone(UTC)
    if before >= after:
        return after  # the ordinary case, or an hour that comes twice: its first time
    # The clocks jump over the turn. The jump itself is the turn; a whole second,
    # because zone rules know nothing finer.
    low, high = int(before.timestamp()), int(after.timestamp())
    while high - low > 1:
        middle = (low + high) // 2
        local = datetime.fromtimestamp(middle, UTC).astimezone(zone).replace(tzinfo=None)
        if local >= wall.replace(tzinfo=None):
            high = middle
        else:
            low = middle
    return datetime.fromtimestamp(high, UTC)


def is_turn_hour(hour: int) -> bool:
    """Tell whether the day may turn at this hour."""
    return 0 <= hour <= LAST_TURN_HOUR


def _check_turn(turn_hour: int) -> None:
    if not is_turn_hour(turn_hour):
        msg = f"the day turns at a full hour from 0 to {LAST_TURN_HOUR}, not at {turn_hour}"
        raise ValueError(msg)
