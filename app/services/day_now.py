"""The practice day of an instant by the rule of an open journal, and what came after its day."""

from datetime import date, datetime, timedelta

from app.journal.failures import PlainFailure
from app.journal.practice_days import Clock, practice_day
from app.journal.records import Take
from app.services.wording import day_text
from app.store.store import Store

FARTHEST_AHEAD = timedelta(days=1)
"""Between the places of the earth where the calendar is ahead and behind."""


def day_of(store: Store, instant: datetime) -> date:
    """Give the practice day of an instant; its own offset counts."""
    return practice_day(instant, turn_hour=store.settings.get().day_turn_hour)


def day_now(store: Store, clock: Clock) -> date:
    """Give the practice day it is now."""
    return day_of(store, clock())


def check_has_come(store: Store, clock: Clock, day: date) -> None:
    """Refuse a day on which nobody can have played yet.

    Up to `FARTHEST_AHEAD` may have come where a clip was made, or where the player is now.

    Raises
    ------
    PlainFailure
        For a later day.
    """
    if day > day_now(store, clock) + FARTHEST_AHEAD:
        raise PlainFailure(
            f"{day_text(day)} has not come yet.", "Give the day on which it was played."
        )


def is_late(take: Take, turn_hour: int) -> bool:
    """Tell whether a take was filed after the practice day it was played on was over.

    Parameters
    ----------
    take : Take
    turn_hour : int
        At which the journal's day turns, 0 to 11.
    """
    return practice_day(take.entered_at, turn_hour=turn_hour) > take.practice_day
