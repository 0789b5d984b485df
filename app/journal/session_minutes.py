"""The minutes of a session: from one source at a time, so that none counts twice.

Minutes come from the clock (the blocks), from the player's own hand, or from listening
to when the instrument sounded. They are three views of the same sitting and are never
added up:

1. typed minutes stand for everything that was practised on the day up to the moment
   they were typed;
2. else the time the blocks cover counts, overlapping blocks once;
3. else the sounding minutes. Under a running clock they are a part of its minutes.

What is practised after minutes were typed belongs to a new session, whose minutes are
added to them.
"""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import datetime, timedelta

from app.journal.blocks import Block
from app.journal.kinds import MinutesSource
from app.journal.practice_clock import covered_minutes, seconds_between
from app.journal.records import Session

SAME_SITTING = timedelta(hours=1)
"""The clock started again within this time goes on with the same session."""


def counted(
    session: Session, blocks: Sequence[Block] = (), sounding_min: float | None = None
) -> Session:
    """Give a session with the minutes that count.

    Parameters
    ----------
    session : Session
        With its typed minutes, if it has any: those stay.
    blocks : sequence of Block
        All blocks of this session.
    sounding_min : float, optional
        Minutes in which the instrument sounded.
    """
    if session.minutes_source is MinutesSource.TYPED:
        return session
    if blocks:
        minutes, source = covered_minutes(blocks), MinutesSource.CLOCK
    elif sounding_min is not None:
        minutes, source = sounding_min, MinutesSource.SOUNDING
    else:
        return session
    return replace(session, minutes=minutes, minutes_source=source)


def to_go_on_with(
    sessions: Sequence[Session], blocks: Mapping[str, Sequence[Block]], now: datetime
) -> Session | None:
    """Give the session of a day that a clock started now belongs to; ``None``: a new one.

    Parameters
    ----------
    sessions : sequence of Session
        All of the practice day, in order.
    blocks : mapping of str to sequence of Block
        Of each session.
    """
    if not sessions:
        return None
    last = sessions[-1]
    has_blocks = bool(blocks.get(last.id))
    if last.minutes_source is MinutesSource.CLOCK:
        is_free = True
    else:
        # Without minutes of its own it may be covered by minutes typed for the whole day.
        any_typed = any(s.minutes_source is MinutesSource.TYPED for s in sessions)
        is_free = last.minutes is None and not has_blocks and not any_typed
    ends = [block.ended_at for block in blocks.get(last.id, ())]
    # A session filed for later today would begin after its own first block.
    if not is_free or seconds_between(now, last.started_at) > 0:
        return None
    quiet_s = seconds_between(max([last.started_at, *ends], key=_instant), now)
    return last if quiet_s <= SAME_SITTING.total_seconds() else None


def _instant(moment: datetime) -> float:
    return moment.timestamp()
