"""The practice day of an instant by the rule of an open journal, and what came after its day."""

from datetime import date, datetime

from app.journal.practice_days import Clock, practice_day
from app.journal.records import Take
from app.store.store import Store


def day_of(store: Store, instant: datetime) -> date:
    """Give the practice day of an instant; its own offset counts."""
    return practice_day(instant, turn_hour=store.settings.get().day_turn_hour)


def day_now(store: Store, clock: Clock) -> date:
    """Give the practice day it is now."""
    return day_of(store, clock())


def is_late(take: Take, turn_hour: int) -> bool:
    """Tell whether a take was filed after the practice day it was played on was over.

    Parameters
    ----------
    take : Take
    turn_hour : int
        At which the journal's day turns, 0 to 11.
    """
    return practice_day(take.entered_at, turn_hour=turn_hour) > take.practice_day
