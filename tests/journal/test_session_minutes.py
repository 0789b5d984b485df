"""One source of minutes at a time: nothing counts twice."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from app.journal.blocks import Block
from app.journal.kinds import MinutesSource
from app.journal.records import Session
from app.journal.session_minutes import counted, to_go_on_with

START = datetime(2026, 3, 10, 18, 0, tzinfo=UTC)
BARE = Session("1" * 32, START.date(), START)
TYPED = replace(BARE, minutes=40.0, minutes_source=MinutesSource.TYPED)
CLOCK = replace(BARE, minutes=30.0, minutes_source=MinutesSource.CLOCK)


def block(session: Session, at_min: float, minutes: float) -> Block:
    start = session.started_at + timedelta(minutes=at_min)
    return Block(f"{at_min}", session.id, None, start, start + timedelta(minutes=minutes))


BLOCKS = (block(BARE, 0, 20), block(BARE, 15, 10), block(BARE, 40, 5))


@pytest.mark.parametrize(
    ("session", "blocks", "sounding_min", "minutes", "source"),
    [
        (BARE, (), None, None, None),
        (BARE, (), 12.0, 12.0, MinutesSource.SOUNDING),
        (BARE, BLOCKS, None, 30.0, MinutesSource.CLOCK),  # 20 + 5 more + 5
        (BARE, BLOCKS, 12.0, 30.0, MinutesSource.CLOCK),  # sounding is a part of the clock's
        (TYPED, BLOCKS, 12.0, 40.0, MinutesSource.TYPED),
        (TYPED, (), 99.0, 40.0, MinutesSource.TYPED),
        (CLOCK, (*BLOCKS, block(BARE, 60, 10)), None, 40.0, MinutesSource.CLOCK),
    ],
)
def test_the_source_that_counts(session, blocks, sounding_min, minutes, source):
    found = counted(session, blocks, sounding_min)
    assert (found.minutes, found.minutes_source) == (minutes, source)


@pytest.mark.parametrize(
    ("sessions", "blocks", "after_min", "goes_on"),
    [
        ((), {}, 0, False),
        ((BARE,), {}, 5, True),  # a take was recorded, then the clock started
        ((BARE,), {}, 61, False),
        ((CLOCK,), {CLOCK.id: (block(CLOCK, 0, 30),)}, 80, True),
        ((CLOCK,), {CLOCK.id: (block(CLOCK, 0, 30),)}, 91, False),
        ((TYPED,), {}, 5, False),  # what was typed is closed: the new minutes add to it
        ((TYPED, replace(BARE, id="2" * 32)), {}, 5, False),  # may be covered by what was typed
        ((TYPED, replace(CLOCK, id="2" * 32)), {}, 35, True),  # came after it
        ((BARE,), {BARE.id: (block(BARE, 0, 30),)}, 35, False),  # its minutes were taken away
        ((BARE,), {}, -5, False),  # a take filed for later today
        ((BARE,), {}, -1 / 60, False),  # however little later
    ],
)
def test_which_session_a_clock_goes_on_with(sessions, blocks, after_min, goes_on):
    now = START + timedelta(minutes=after_min)
    found = to_go_on_with(sessions, blocks, now)
    assert found == (sessions[-1] if goes_on else None)
