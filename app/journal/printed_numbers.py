"""The numbers printed with a clip, and how they stay what they were.

The day number is the days since the start and never moves. The days kept are counted
up to the day of the clip; once they were shared they stay as they were given away, and
a clip filed late changes the totals only.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from app.journal.promise_standing import DayKind, PromiseStanding
from app.journal.promises import Promise, SharedNumber, day_number


@dataclass(frozen=True, slots=True)
class PrintedNumbers:
    """The numbers printed with a clip.

    ``days_kept`` is the number shared first for this day, if it was shared
    (``frozen``); ``days_kept_now`` is what the journal counts today.
    """

    day_number: int
    days_kept: int
    days_kept_now: int
    frozen: bool


def printed_numbers(
    promise: Promise, now: PromiseStanding, day: date, shared: Iterable[SharedNumber] = ()
) -> PrintedNumbers | None:
    """Give the numbers that a clip of a day bears; ``None`` before the start.

    Parameters
    ----------
    promise : Promise
    now : PromiseStanding
        Where it stands today.
    day : date
        The practice day of the clip, whenever it was filed.
    shared : iterable of SharedNumber
        Those of this promise; the earliest one of the day stays for good.
    """
    number = day_number(promise, day)
    if number is None:
        return None
    kept_now = sum(j.kind is DayKind.KEPT for j in now.days if j.day <= day)
    given = [s for s in shared if s.promise_id == promise.id and s.practice_day == day]
    if not given:
        return PrintedNumbers(number, kept_now, kept_now, frozen=False)
    first = min(given, key=lambda s: (s.shared_at, s.id))
    return PrintedNumbers(first.day_number, first.days_kept, kept_now, frozen=True)
