"""A clock found running for longer than anybody can vouch for.

When the practice day has turned since the player last touched it, or nobody has touched
it for three hours, or the machine was off or asleep for half an hour, a running clock
raises a question instead of counting on. Only the player's answer turns the time into
minutes; nothing is invented.
"""

from dataclasses import dataclass
from datetime import date, datetime, timedelta, tzinfo
from enum import StrEnum

from app.journal.blocks import ClockRecord
from app.journal.kinds import Ending
from app.journal.practice_clock import (
    Step,
    closed_block,
    is_later,
    later,
    seconds_between,
    touched,
)
from app.journal.practice_days import DEFAULT_TURN_HOUR, practice_day

LONGEST_UNTOUCHED = timedelta(hours=3)
LONGEST_ABSENCE = timedelta(minutes=30)

_JUST_NOW_S = 120.0  # 'when last seen' would say the same as 'now'


class Forgotten(StrEnum):
    """Why a running clock is asked about."""

    DAY_TURNED = "day_turned"
    UNTOUCHED = "untouched"
    ABSENT = "absent"


@dataclass(frozen=True, slots=True)
class Choice:
    """One answer that is offered, and the minutes the open block would get by it."""

    ending: Ending
    ended_at: datetime
    minutes: float


@dataclass(frozen=True, slots=True)
class ForgottenClock:
    """A clock found running for longer than anybody can vouch for.

    Attributes
    ----------
    clock : ClockRecord
    reason : Forgotten
    found_at : datetime
    choices : tuple of Choice
        From the fewest minutes to the most. :attr:`Ending.MINUTES`, a number the player
        types, is always possible besides.
    """

    clock: ClockRecord
    reason: Forgotten
    found_at: datetime
    choices: tuple[Choice, ...]

    @property
    def most_minutes(self) -> float:
        """The most that a typed answer may be: all the time since the block began."""
        return seconds_between(self.clock.since, self.found_at) / 60


def forgotten(
    clock: ClockRecord, now: datetime, *, zone: tzinfo, turn_hour: int = DEFAULT_TURN_HOUR
) -> ForgottenClock | None:
    """Give the question that a clock raises, or ``None`` where it may run on.

    A paused clock counts nothing and raises none.
    """
    if not clock.running:
        return None
    reason = _reason(clock, now, zone, turn_hour)
    if reason is None:
        return None
    return ForgottenClock(clock, reason, now, _choices(clock, now))


def answered(question: ForgottenClock, ending: Ending, minutes: float | None = None) -> Step:
    """Give what an answer makes of the clock.

    'Until now' on the same practice day lets the clock run on; every other answer closes
    the open block where the player says and stops the clock.

    Parameters
    ----------
    question : ForgottenClock
    ending : Ending
        One of the choices, or :attr:`Ending.MINUTES`.
    minutes : float, optional
        For :attr:`Ending.MINUTES`: how long was played, 0 to ``question.most_minutes``.

    Raises
    ------
    ValueError
        For an answer that was not offered, or minutes that do not fit into the time.
    """
    clock = question.clock
    if ending is Ending.NOW and question.reason is not Forgotten.DAY_TURNED:
        return Step(touched(clock, question.found_at))
    if ending is Ending.MINUTES:
        if minutes is None or not 0 <= minutes <= question.most_minutes:
            msg = f"between 0 and {question.most_minutes:.0f} minutes fit, not {minutes}"
            raise ValueError(msg)
        return Step(None, closed_block(clock, later(clock.since, minutes * 60)))
    for choice in question.choices:
        if choice.ending is ending:
            return Step(None, closed_block(clock, choice.ended_at))
    msg = f"{ending} was not offered"
    raise ValueError(msg)


def day_has_turned(
    clock: ClockRecord, now: datetime, *, zone: tzinfo, turn_hour: int = DEFAULT_TURN_HOUR
) -> bool:
    """Tell whether the clock was last touched on an earlier practice day."""
    return _day(clock.touched_at, zone, turn_hour) < _day(now, zone, turn_hour)


def _reason(clock: ClockRecord, now: datetime, zone: tzinfo, turn_hour: int) -> Forgotten | None:
    if day_has_turned(clock, now, zone=zone, turn_hour=turn_hour):
        return Forgotten.DAY_TURNED
    if seconds_between(clock.touched_at, now) > LONGEST_UNTOUCHED.total_seconds():
        return Forgotten.UNTOUCHED
    if clock.seen_at is not None:
        last = clock.seen_at if is_later(clock.seen_at, clock.touched_at) else clock.touched_at
        if seconds_between(last, now) > LONGEST_ABSENCE.total_seconds():
            return Forgotten.ABSENT
    return None


def _choices(clock: ClockRecord, now: datetime) -> tuple[Choice, ...]:
    last_touch = clock.touched_at if is_later(clock.touched_at, clock.since) else clock.since
    ends = [(Ending.AT_LAST_TOUCH, last_touch)]
    seen_at = clock.seen_at
    is_away = seen_at is not None and seconds_between(seen_at, now) > _JUST_NOW_S
    if seen_at is not None and is_away and is_later(seen_at, last_touch):
        ends.append((Ending.WHEN_LAST_SEEN, seen_at))
    ends.append((Ending.NOW, now))
    return tuple(Choice(word, end, seconds_between(clock.since, end) / 60) for word, end in ends)


def _day(instant: datetime, zone: tzinfo, turn_hour: int) -> date:
    return practice_day(instant, turn_hour=turn_hour, zone=zone)
