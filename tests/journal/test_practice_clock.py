"""The practice clock against a slow, obvious model that looks at every single second.

Longer than 300 lines: cases of one subject, each of them read by itself.
"""

import itertools
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, precondition, rule

from app.journal import forgotten_clock, practice_clock
from app.journal.blocks import Block, ClockRecord
from app.journal.codec import decoded, encoded
from app.journal.forgotten_clock import Forgotten, answered, forgotten
from app.journal.kinds import Ending
from app.journal.practice_clock import (
    break_is_due,
    covered_minutes,
    minutes_by_item,
    paused,
    resumed,
    seconds_between,
    started,
    stopped,
    switched,
)

BERLIN = ZoneInfo("Europe/Berlin")
# The nights on which clocks there go back and forward, and an ordinary evening.
STARTS = (
    datetime(2026, 10, 25, 2, 20, tzinfo=BERLIN, fold=0),
    datetime(2026, 10, 25, 1, 50, tzinfo=BERLIN),
    datetime(2026, 3, 29, 1, 40, tzinfo=BERLIN),
    datetime(2026, 3, 10, 19, 30, tzinfo=BERLIN),
    datetime(2026, 3, 11, 3, 55, tzinfo=BERLIN),
)
ITEMS = (None, "scale", "study", "piece")
EVENING = datetime(2026, 3, 10, 19, 30, tzinfo=BERLIN)


def after(instant: datetime, seconds: float) -> datetime:
    return (instant.astimezone(UTC) + timedelta(seconds=seconds)).astimezone(BERLIN)


class ClockMachine(RuleBasedStateMachine):
    """Runs the clock and, beside it, a list with the item of every second."""

    def __init__(self) -> None:
        super().__init__()
        self.ids = (f"{n:032x}" for n in itertools.count())
        self.clock: ClockRecord | None = None
        self.blocks: list[Block] = []
        # The model: what each second since the start was spent on, and what is going on.
        self.seconds: dict[int, str | None] = {}
        self.item: str | None = None
        self.is_running = False
        self.began = 0
        self.touched = 0
        self.seen: int | None = None
        self.at = 0

    @initialize(start=st.sampled_from(STARTS))
    def begin(self, start: datetime) -> None:
        self.start = start

    @property
    def now(self) -> datetime:
        return after(self.start, self.at)

    def keep(self, step: practice_clock.Step) -> None:
        self.clock = step.clock
        if step.closed is not None:
            self.blocks.append(step.closed)

    def question(self) -> forgotten_clock.ForgottenClock | None:
        return forgotten(self.clock, self.now, zone=BERLIN) if self.clock else None

    def touch(self) -> None:
        self.touched = self.at
        if self.seen is not None:
            self.seen = self.at

    @rule(seconds=st.integers(0, 5) | st.integers(6, 2400))
    def time_passes(self, seconds: int) -> None:
        if self.is_running:
            for second in range(self.at, self.at + seconds):
                self.seconds[second] = self.item
        self.at += seconds

    @precondition(lambda self: self.clock is None)
    @rule(item=st.sampled_from(ITEMS))
    def start_clock(self, item: str | None) -> None:
        self.clock = started("5" * 32, next(self.ids), item, self.now)
        self.item, self.is_running, self.began = item, True, self.at
        self.seen = None
        self.touch()

    @precondition(lambda self: self.clock is not None and self.question() is None)
    @rule()
    def pause(self) -> None:
        was_running = self.is_running
        self.keep(paused(self.clock, self.now, next(self.ids)))
        if was_running:
            self.is_running = False
            self.touch()

    @precondition(lambda self: self.clock is not None and self.question() is None)
    @rule()
    def resume(self) -> None:
        was_running = self.is_running
        self.keep(resumed(self.clock, self.now))
        if not was_running:
            self.is_running, self.began = True, self.at
            self.touch()

    @precondition(lambda self: self.clock is not None and self.question() is None)
    @rule(item=st.sampled_from(ITEMS))
    def switch(self, item: str | None) -> None:
        self.keep(switched(self.clock, item, self.now, next(self.ids)))
        if item != self.item and self.is_running:
            if self.at - self.began < 3:  # a slip of the hand
                for second in range(self.began, self.at):
                    self.seconds[second] = item
            else:
                self.began = self.at
        self.item = item
        self.touch()

    @precondition(lambda self: self.clock is not None and self.question() is None)
    @rule()
    def stop(self) -> None:
        self.keep(stopped(self.clock, self.now))
        self.is_running = False

    @precondition(lambda self: self.clock is not None and self.question() is None)
    @rule()
    def the_program_lives(self) -> None:
        self.clock = practice_clock.seen(self.clock, self.now)
        self.seen = self.at

    @precondition(lambda self: self.clock is not None)
    @rule(gap_s=st.integers(0, 50_000))
    def crash_and_restart(self, gap_s: int) -> None:
        self.clock = decoded(ClockRecord, encoded(self.clock))
        self.time_passes(gap_s)

    @precondition(lambda self: self.question() is not None)
    @rule(data=st.data())
    def answer(self, data: st.DataObject) -> None:
        question = self.question()
        assert question is not None
        endings = [choice.ending for choice in question.choices]
        ending = data.draw(st.sampled_from([*endings, Ending.MINUTES]))
        minutes = None
        if ending is Ending.MINUTES:
            minutes = data.draw(st.integers(0, int(question.most_minutes)))
        self.keep(answered(question, ending, minutes))
        if ending is Ending.NOW and question.reason is not Forgotten.DAY_TURNED:
            self.touch()
            return
        end = {
            Ending.AT_LAST_TOUCH: max(self.touched, self.began),
            Ending.WHEN_LAST_SEEN: self.seen,
            Ending.NOW: self.at,
            Ending.MINUTES: self.began + 60 * (minutes or 0),
        }[ending]
        assert end is not None
        for second in range(end, self.at):
            del self.seconds[second]
        self.is_running = False

    @invariant()
    def minutes_are_the_seconds_that_were_played(self) -> None:
        expected: dict[str | None, int] = {}
        for item in self.seconds.values():
            expected[item] = expected.get(item, 0) + 1
        blocks = list(self.blocks)
        if self.clock is not None and self.clock.running:
            still_open = practice_clock.closed_block(self.clock, self.now)
            blocks += [still_open] if still_open else []
        found = {item: round(minutes * 60) for item, minutes in minutes_by_item(blocks).items()}
        assert found == expected
        assert round(covered_minutes(blocks) * 60) == len(self.seconds)
        assert len({block.id for block in blocks}) == len(blocks)

    @invariant()
    def it_asks_when_nobody_can_vouch(self) -> None:
        question = self.question()
        if not self.is_running or self.clock is None:
            assert question is None
            return

        def day(at: int):
            wall = after(self.start, at)
            return (wall.replace(tzinfo=None) - timedelta(hours=4)).date()

        turned = day(self.touched) != day(self.at)
        untouched = self.at - self.touched > 3 * 3600
        last = self.touched if self.seen is None else max(self.seen, self.touched)
        absent = self.seen is not None and self.at - last > 1800
        assert (question is not None) == (turned or untouched or absent)
        if question is not None:
            minutes = [choice.minutes for choice in question.choices]
            assert minutes == sorted(minutes)
            assert minutes[-1] <= question.most_minutes


ClockMachine.TestCase.settings = settings(max_examples=60, stateful_step_count=30, deadline=None)
TestClock = ClockMachine.TestCase


def test_an_hour_is_an_hour_on_the_night_the_clocks_change():
    # 25 October 2026, 03:00 summer time: back to 02:00 (EU directive 2000/84/EC).
    before = datetime(2026, 10, 25, 2, 30, tzinfo=BERLIN, fold=0)
    later = datetime(2026, 10, 25, 2, 30, tzinfo=BERLIN, fold=1)
    assert seconds_between(before, later) == 3600
    block = stopped(started("s" * 32, "b" * 32, None, before), later).closed
    assert minutes_by_item([block]) == {None: 60.0}
    # 29 March 2026, 02:00: forward to 03:00.
    before = datetime(2026, 3, 29, 1, 30, tzinfo=BERLIN)
    later = datetime(2026, 3, 29, 3, 30, tzinfo=BERLIN)
    assert seconds_between(before, later) == 3600


def test_a_clock_set_back_counts_nothing_twice_and_goes_on():
    clock = started("s" * 32, "b" * 32, "scale", EVENING)
    back = after(EVENING, -3600)
    assert practice_clock.open_seconds(clock, back) == 0
    assert stopped(clock, back).closed is None
    going = practice_clock.seen(clock, back)
    assert practice_clock.open_seconds(going, after(back, 600)) == 600


def test_overlapping_blocks_count_once():
    first = Block("1" * 32, "s" * 32, "scale", EVENING, after(EVENING, 600))
    second = replace(first, id="2" * 32, item_id="study", started_at=after(EVENING, 300),
                     ended_at=after(EVENING, 900))  # fmt: skip
    inside = replace(first, id="3" * 32, started_at=after(EVENING, 60),
                     ended_at=after(EVENING, 120))  # fmt: skip
    assert covered_minutes([second, first, inside]) == 15.0
    # The rule of minutes: overlapping blocks count once; of each item for itself.
    assert minutes_by_item([second, first, inside]) == {"scale": 10.0, "study": 10.0}


@given(st.lists(st.tuples(st.integers(0, 3000), st.integers(1, 900)), max_size=8))
def test_covered_minutes_are_the_minutes_in_any_block(spans):
    blocks = [
        Block(f"{n:032x}", "s" * 32, None, after(EVENING, a), after(EVENING, a + length))
        for n, (a, length) in enumerate(spans)
    ]
    inside = {second for a, length in spans for second in range(a, a + length)}
    assert covered_minutes(blocks) * 60 == pytest.approx(len(inside))


def test_a_break_is_suggested_after_the_time_set():
    clock = started("s" * 32, "b" * 32, None, EVENING)
    assert not break_is_due(clock, after(EVENING, 29 * 60 + 59), 30)
    assert break_is_due(clock, after(EVENING, 30 * 60), 30)
    assert not break_is_due(clock, after(EVENING, 30 * 60), 45)
    assert not break_is_due(clock, after(EVENING, 5 * 3600), 0)


def test_a_short_pause_is_no_break_and_a_longer_one_is():
    clock = started("s" * 32, "b" * 32, None, EVENING)
    resting = paused(clock, after(EVENING, 25 * 60), "c" * 32).clock
    assert not break_is_due(resting, after(EVENING, 60 * 60), 30)
    short = resumed(resting, after(EVENING, 26 * 60)).clock
    assert break_is_due(short, after(EVENING, 31 * 60), 30)
    rested = resumed(resting, after(EVENING, 28 * 60)).clock
    assert not break_is_due(rested, after(EVENING, 31 * 60), 30)
    assert practice_clock.unbroken_seconds(rested, after(EVENING, 31 * 60)) == 180


def test_a_break_put_off_comes_again_after_ten_minutes():
    clock = started("s" * 32, "b" * 32, None, EVENING)
    later = practice_clock.break_put_off(clock, after(EVENING, 30 * 60))
    assert not break_is_due(later, after(EVENING, 39 * 60), 30)
    assert break_is_due(later, after(EVENING, 40 * 60), 30)
    going = switched(later, "study", after(EVENING, 41 * 60), "c" * 32).clock
    assert break_is_due(going, after(EVENING, 41 * 60), 30)  # switching items is no break


def test_forgotten_overnight_asks_and_offers():
    clock = started("s" * 32, "b" * 32, "scale", EVENING)
    clock = practice_clock.seen(clock, after(EVENING, 2400))
    question = forgotten(clock, after(EVENING, 12 * 3600), zone=BERLIN)
    assert question.reason is Forgotten.DAY_TURNED
    assert [(c.ending, c.minutes) for c in question.choices] == [
        (Ending.AT_LAST_TOUCH, 0.0),
        (Ending.WHEN_LAST_SEEN, 40.0),
        (Ending.NOW, 720.0),
    ]
    assert answered(question, Ending.AT_LAST_TOUCH) == practice_clock.Step(None)
    seen = answered(question, Ending.WHEN_LAST_SEEN)
    assert (seen.clock, minutes_by_item([seen.closed])) == (None, {"scale": 40.0})
    typed = answered(question, Ending.MINUTES, 25)
    assert minutes_by_item([typed.closed]) == {"scale": 25.0}
    for minutes in (None, -1, 721):
        with pytest.raises(ValueError, match="minutes fit"):
            answered(question, Ending.MINUTES, minutes)


def test_a_short_crash_asks_nothing():
    clock = practice_clock.seen(started("s" * 32, "b" * 32, None, EVENING), after(EVENING, 30))
    assert forgotten(clock, after(EVENING, 20 * 60), zone=BERLIN) is None
    question = forgotten(clock, after(EVENING, 40 * 60), zone=BERLIN)
    assert question.reason is Forgotten.ABSENT
    going = answered(question, Ending.NOW)
    assert going.closed is None
    assert practice_clock.open_seconds(going.clock, after(EVENING, 41 * 60)) == 41 * 60


def test_what_was_not_offered_is_no_answer():
    question = forgotten(started("s" * 32, "b" * 32, None, EVENING), after(EVENING, 4 * 3600),
                         zone=BERLIN)  # fmt: skip
    assert question.reason is Forgotten.UNTOUCHED
    with pytest.raises(ValueError, match="not offered"):
        answered(question, Ending.WHEN_LAST_SEEN)
