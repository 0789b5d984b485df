"""The practice clock: pure rules, the present instant handed in.

Every function takes the clock as it stands and gives the clock as it will stand,
together with the blocks that closed. Time is the difference of instants, never of wall
clocks, so a night on which the clocks change counts right; an instant that lies before
the last one (the machine's clock was set back) counts as no time at all.

A clock that runs on untouched is not trusted for ever: :mod:`app.journal.forgotten_clock`.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta

from app.journal.blocks import Block, ClockRecord

SLIP_S = 3.0
"""A block shorter than this is a slip of the hand: its time goes to the item after it."""

SHORTEST_BREAK = timedelta(minutes=3)
DEFAULT_BREAK_AFTER_MIN = 30
BREAK_AGAIN_AFTER = timedelta(minutes=10)


@dataclass(frozen=True, slots=True)
class Step:
    """What became of the clock; ``clock`` is ``None`` once it is stopped."""

    clock: ClockRecord | None
    closed: Block | None = None


def seconds_between(start: datetime, end: datetime) -> float:
    """Give the time that passed between two instants, 0 where the second is no later.

    Python subtracts two datetimes of one zone by their wall clocks, which is an hour
    wrong across a change of the clocks; instants are subtracted here.
    """
    return max(0.0, (end.astimezone(UTC) - start.astimezone(UTC)).total_seconds())


def is_later(one: datetime, other: datetime) -> bool:
    """Tell whether an instant lies after another, whatever their wall clocks show."""
    return one.astimezone(UTC) > other.astimezone(UTC)


def closed_block(clock: ClockRecord, ended_at: datetime) -> Block | None:
    """Give the open block as it would close at an instant; ``None`` for no time at all."""
    if seconds_between(clock.since, ended_at) <= 0:
        return None
    return Block(clock.block_id, clock.session_id, clock.item_id, clock.since, ended_at)


def started(session_id: str, block_id: str, item_id: str | None, now: datetime) -> ClockRecord:
    """Give a clock that begins to run."""
    return ClockRecord(session_id, block_id, item_id, running=True, since=now, touched_at=now)


def paused(clock: ClockRecord, now: datetime, next_block_id: str) -> Step:
    """Pause: the open block closes. A paused clock stays as it is."""
    if not clock.running:
        return Step(clock)
    closed = closed_block(clock, now)
    played_s = clock.unbroken_s + seconds_between(clock.since, now)
    resting = replace(
        touched(clock, now),
        running=False,
        since=now,
        unbroken_s=played_s,
        block_id=next_block_id if closed else clock.block_id,
    )
    return Step(resting, closed)


def resumed(clock: ClockRecord, now: datetime) -> Step:
    """Go on after a pause; one of three minutes or more was a break."""
    if clock.running:
        return Step(clock)
    had_break = seconds_between(clock.since, now) >= SHORTEST_BREAK.total_seconds()
    going = replace(touched(clock, now), running=True, since=now)
    if had_break:
        going = replace(going, unbroken_s=0.0, break_put_off_at=None)
    return Step(going)


def switched(clock: ClockRecord, item_id: str | None, now: datetime, next_block_id: str) -> Step:
    """Go over to another item; while paused only the item changes.

    What was open for less than :data:`SLIP_S` becomes part of the new item's block.
    """
    if item_id == clock.item_id:
        return Step(touched(clock, now))
    if not clock.running or seconds_between(clock.since, now) < SLIP_S:
        return Step(replace(touched(clock, now), item_id=item_id))
    going = replace(
        touched(clock, now),
        item_id=item_id,
        since=now,
        block_id=next_block_id,
        unbroken_s=clock.unbroken_s + seconds_between(clock.since, now),
    )
    return Step(going, closed_block(clock, now))


def stopped(clock: ClockRecord, now: datetime) -> Step:
    """Stop: the open block closes and the clock is gone."""
    return Step(None, closed_block(clock, now) if clock.running else None)


def moved(clock: ClockRecord, session_id: str, now: datetime, next_block_id: str) -> Step:
    """Let the clock count for another session from now on, without a break."""
    if not clock.running:
        return Step(replace(clock, session_id=session_id))
    closed = closed_block(clock, now)
    going = replace(
        clock,
        session_id=session_id,
        block_id=next_block_id if closed else clock.block_id,
        since=now,
        unbroken_s=clock.unbroken_s + seconds_between(clock.since, now),
    )
    return Step(going, closed)


def seen(clock: ClockRecord, now: datetime) -> ClockRecord:
    """Note that the program is alive."""
    return replace(_not_ahead(clock, now), seen_at=now)


def touched(clock: ClockRecord, now: datetime) -> ClockRecord:
    """Note that the player is there: the clock was used, or a take was recorded."""
    last_seen = None if clock.seen_at is None else now
    return replace(_not_ahead(clock, now), touched_at=now, seen_at=last_seen)


def open_seconds(clock: ClockRecord, now: datetime) -> float:
    """Give how long the open block lasts by now; 0 while paused."""
    return seconds_between(clock.since, now) if clock.running else 0.0


def unbroken_seconds(clock: ClockRecord, now: datetime) -> float:
    """Give how long has been played without a break of three minutes."""
    if clock.running:
        return clock.unbroken_s + seconds_between(clock.since, now)
    rested = seconds_between(clock.since, now) >= SHORTEST_BREAK.total_seconds()
    return 0.0 if rested else clock.unbroken_s


def break_is_due(clock: ClockRecord, now: datetime, after_min: int) -> bool:
    """Tell whether a break should be suggested.

    Parameters
    ----------
    clock : ClockRecord
    now : datetime
    after_min : int
        Minutes of playing after which; 0: never.
    """
    if after_min <= 0 or not clock.running:
        return False
    if clock.break_put_off_at is not None:
        since_then = seconds_between(clock.break_put_off_at, now)
        if since_then < BREAK_AGAIN_AFTER.total_seconds():
            return False
    return unbroken_seconds(clock, now) >= after_min * 60


def break_put_off(clock: ClockRecord, now: datetime) -> ClockRecord:
    """Suggest the break again in ten minutes."""
    return replace(touched(clock, now), break_put_off_at=now)


def later(instant: datetime, seconds: float) -> datetime:
    """Give the instant that many seconds later, on the same offset's wall clock."""
    moment = instant.astimezone(UTC) + timedelta(seconds=seconds)
    return moment.astimezone(instant.tzinfo)


def minutes_by_item(blocks: Sequence[Block]) -> dict[str | None, float]:
    """Give the minutes of each item, in the order in which they first came.

    Where two blocks of one item overlap, the time counts once.
    """
    found: dict[str | None, list[Block]] = {}
    for block in sorted(blocks, key=lambda b: (b.started_at.astimezone(UTC), b.id)):
        found.setdefault(block.item_id, []).append(block)
    return {item_id: covered_minutes(some) for item_id, some in found.items()}


def covered_minutes(blocks: Sequence[Block]) -> float:
    """Give the minutes that blocks cover; where two overlap, the time counts once."""
    spans = sorted((b.started_at.astimezone(UTC), b.ended_at.astimezone(UTC)) for b in blocks)
    total_s, reached = 0.0, datetime.min.replace(tzinfo=UTC)
    for start, end in spans:
        total_s += seconds_between(max(start, reached), end)
        reached = max(reached, end)
    return total_s / 60


def _not_ahead(clock: ClockRecord, now: datetime) -> ClockRecord:
    """After the machine's clock was set back, count from now rather than not at all."""
    return replace(clock, since=now) if is_later(clock.since, now) else clock
