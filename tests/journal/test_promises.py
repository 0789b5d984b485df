"""Promises: the worked examples of DEVELOPERS.md ('How days are counted') and the rules.

The examples are common practice, no source.
"""

from dataclasses import replace
from datetime import timedelta

import pytest

from app.journal.failures import PlainFailure
from app.journal.printed_numbers import printed_numbers
from app.journal.promise_standing import DayKind, DaysDone, PromiseState, standing
from app.journal.promises import (
    PlannedBreak,
    PromiseRule,
    SharedNumber,
    Stretch,
    day_number,
    rule_on,
    with_break,
    with_breaks_ended,
    with_rule,
)
from tests.journal.a_promise import NOW, START, day, promise


def done(*numbers: int, minutes: float = 30.0, rest: tuple[int, ...] = ()) -> DaysDone:
    return DaysDone({day(n): minutes for n in numbers}, {}, {day(n) for n in rest})


def test_forty_five_days_with_twenty_seven_practised_are_27_kept_on_day_45() -> None:
    practised = [*range(1, 27), 45]
    found = standing(promise(), done(*practised), day(45))
    assert (found.days_kept, found.day, found.days_missed) == (27, 45, 18)
    assert found.needed == 73
    printed = printed_numbers(promise(), found, day(45))
    assert printed is not None
    assert (printed.day_number, printed.days_kept) == (45, 27)


def test_four_days_entered_late_keep_their_own_dates() -> None:
    filed = [n for n in range(1, 31) if n not in (11, 12, 13, 14)]
    before = standing(promise(), done(*filed), day(30))
    after = standing(promise(), done(*range(1, 31)), day(30))
    assert (before.days_kept, before.days_missed) == (26, 4)
    assert (after.days_kept, after.days_missed) == (30, 0)
    assert before.day == after.day == 30
    for n in (11, 12, 13, 14):
        printed = printed_numbers(promise(), after, day(n))
        assert printed is not None
        assert printed.day_number == n
    printed = printed_numbers(promise(), after, day(15))
    assert printed is not None
    assert printed.day_number == 15


def test_seventeen_empty_days_in_a_year() -> None:
    empty = set(range(20, 37))
    found = standing(promise(365), done(*(n for n in range(1, 366) if n not in empty)), day(365))
    assert (found.days_kept, found.day, found.days_missed) == (348, 365, 17)
    assert (found.needed, found.state) == (17, PromiseState.RUNNING)
    assert found.days[-1].number == 365


def test_twenty_minutes_count_where_anything_counts_and_not_where_45_are_asked() -> None:
    twenty = done(1, minutes=20)
    assert standing(promise(), twenty, day(2)).days_kept == 1
    strict = standing(promise(minimum_minutes=45), twenty, day(2))
    assert (strict.days_kept, strict.days_missed) == (0, 1)


def test_one_take_without_minutes_counts_where_anything_counts() -> None:
    # Of the rule of a promise without a minimum: whatever was done keeps the day.
    recorded = DaysDone({}, {day(1): 1}, set())
    assert standing(promise(), recorded, day(2)).days_kept == 1
    assert standing(promise(minimum_takes=2), recorded, day(2)).days_kept == 0


def test_minutes_count_as_they_are_shown() -> None:
    strict = promise(minimum_minutes=45)
    assert standing(strict, done(1, minutes=44.5), day(1)).days_kept == 1
    assert standing(strict, done(1, minutes=44.4), day(1)).days_kept == 0


def test_a_planned_break_pauses_and_says_so() -> None:
    made = with_break(
        promise(30, Stretch.IN_A_ROW), PlannedBreak(day(11), day(17), "a journey"), day(10)
    )
    done_days = done(*range(1, 11), *range(18, 21))
    during = standing(made, done_days, day(12))
    assert during.pause is not None
    assert during.pause.reason == "a journey"
    assert during.days[-1].kind is DayKind.PAUSED
    after = standing(made, done_days, day(20))
    assert (after.days_kept, after.day, after.days_paused) == (13, 20, 7)
    assert (after.run, after.needed, after.days_missed, after.pause) == (13, 17, 0, None)


def test_a_missed_day_begins_a_new_run_and_renumbers_nothing() -> None:
    found = standing(promise(30, Stretch.IN_A_ROW), done(*range(1, 21), 22, 23), day(23))
    assert (found.days_kept, found.day, found.days_missed) == (22, 23, 1)
    assert (found.run, found.longest_run, found.needed) == (2, 20, 28)
    assert (found.run_began, found.last_missed) == (day(22), day(21))
    assert found.state is PromiseState.RUNNING
    assert [judged.number for judged in found.days] == list(range(1, 24))


def test_rest_by_number_is_marked_and_used_up() -> None:
    made = promise(30, Stretch.IN_TOTAL, rest_days=2)
    found = standing(made, done(*range(1, 8), rest=(8, 9, 10)), day(11))
    assert (found.rest_taken, found.days_missed, found.over_rest) == (2, 1, 1)
    assert (found.rest_left, found.today_open) == (0, True)


def test_rest_that_is_left_counts_down_by_one() -> None:
    made = promise(30, Stretch.IN_TOTAL, rest_days=5)
    left = [
        standing(made, done(1, rest=tuple(range(2, 2 + used))), day(2 + used)).rest_left
        for used in range(5)
    ]
    assert left == [5, 4, 3, 2, 1]


def test_a_clip_of_an_earlier_day_bears_what_was_kept_up_to_then() -> None:
    found = standing(promise(), done(*range(1, 11)), day(10))
    for n in (1, 4, 9):
        printed = printed_numbers(promise(), found, day(n))
        assert printed is not None
        assert (printed.days_kept, printed.days_kept_now) == (n, n)


def test_a_new_run_has_its_own_rest_days() -> None:
    made = promise(30, Stretch.IN_A_ROW, rest_days=1)
    found = standing(made, done(1, 2, 4, 6, 8, rest=(3, 7)), day(8))
    assert [judged.kind.value for judged in found.days] == [
        "kept", "kept", "rest", "kept", "missed", "kept", "rest", "kept",
    ]  # fmt: skip
    assert (found.run, found.rest_left) == (2, 0)


def test_rest_on_sundays_needs_no_mark() -> None:
    made = promise(30, Stretch.IN_A_ROW, rest_weekdays=(6,))
    found = standing(made, done(1, 2, 3, 5, 6), day(6))  # day 4 is a Sunday
    assert (found.rest_taken, found.days_kept, found.run) == (1, 5, 5)


def test_practice_on_a_rest_day_is_kept() -> None:
    made = promise(30, rest_weekdays=(3,))
    assert standing(made, done(1), day(1)).days_kept == 1


def test_today_is_open_until_it_is_over() -> None:
    found = standing(promise(), done(1), day(2))
    assert (found.today_open, found.days_missed, found.day) == (True, 0, 2)
    assert standing(promise(), done(1), day(3)).days_missed == 1


def test_the_end_date() -> None:
    made = promise(5, end=day(10))
    running = standing(made, done(1, 2, 3), day(8))
    assert (running.days_left, running.needed, running.within_reach) == (3, 2, True)
    assert not standing(made, done(1), day(9)).within_reach
    # Today counts among the days left while nothing was done on it yet.
    lefts = [standing(made, done(1, 2, 3), day(today)).days_left for today in range(4, 11)]
    assert lefts == [7, 6, 5, 4, 3, 2, 1]
    assert standing(made, done(1, 2, 3, 8), day(8)).days_left == 2
    ended = standing(made, done(1, 2, 3), day(40))
    assert (ended.state, ended.day, ended.ended_on) == (PromiseState.ENDED, 10, day(10))
    assert (ended.days_kept, ended.days_missed, ended.needed) == (3, 7, 2)


def test_a_kept_promise_stands_still() -> None:
    found = standing(promise(5, Stretch.IN_A_ROW), done(1, 2, 4, 5, 6, 7, 8), day(30))
    assert (found.state, found.kept_on, found.day) == (PromiseState.KEPT, day(8), 8)
    assert (found.days_kept, found.days_missed, found.needed) == (7, 1, 0)


def test_a_promise_in_total_is_kept_on_the_day_that_makes_it_full() -> None:
    found = standing(promise(5), done(1, 2, 4, 5, 7, 8, 9), day(30))
    assert (found.state, found.kept_on, found.day) == (PromiseState.KEPT, day(7), 7)
    assert (found.days_kept, found.days_missed, found.needed) == (5, 2, 0)
    assert [judged.days_kept for judged in found.days] == [1, 2, 2, 3, 4, 4, 5]


def test_takes_or_minutes_and_takes_and_minutes() -> None:
    one = DaysDone({day(1): 50.0, day(2): 10.0, day(3): 50.0}, {day(2): 1, day(3): 1}, ())
    either = promise(minimum_minutes=45, minimum_takes=1)
    both = promise(minimum_minutes=45, minimum_takes=1, needs_both=True)
    assert standing(either, one, day(3)).days_kept == 3
    assert standing(both, one, day(3)).days_kept == 1


def test_a_changed_rule_says_from_when_and_leaves_the_days_before() -> None:
    made = promise(20)
    minutes = done(*range(1, 11), minutes=20)
    stricter = with_rule(
        made, PromiseRule(day(8), Stretch.IN_TOTAL, 20, minimum_minutes=45), day(8)
    )
    found = standing(stricter, minutes, day(11))
    assert [judged.kind.value for judged in found.days[:10]] == ["kept"] * 7 + ["missed"] * 3
    assert [rule.since for rule in stricter.rules] == [day(1), day(8)]
    assert rule_on(stricter, day(7)).anything_counts
    with pytest.raises(PlainFailure, match="over"):
        with_rule(made, PromiseRule(day(7), Stretch.IN_TOTAL, 20), day(8))


def test_a_smaller_number_of_days_keeps_the_promise_from_then_on_only() -> None:
    made = promise(30, Stretch.IN_A_ROW)
    practised = done(*range(1, 21), 23, 24)
    smaller = with_rule(made, PromiseRule(day(24), Stretch.IN_A_ROW, 15), day(24))
    found = standing(smaller, practised, day(24))
    assert (found.state, found.needed) == (PromiseState.RUNNING, 13)


def test_a_shared_number_is_frozen_and_the_first_one_counts() -> None:
    made = promise()
    before = standing(made, done(1, 2, 5), day(5))
    printed = printed_numbers(made, before, day(5))
    assert printed is not None
    assert (printed.day_number, printed.days_kept, printed.frozen) == (5, 3, False)
    first = SharedNumber("1", "p", day(5), 5, 3, NOW)
    second = replace(first, id="2", days_kept=4, shared_at=NOW + timedelta(days=1))
    after = standing(made, done(1, 2, 3, 5), day(5))
    again = printed_numbers(made, after, day(5), [second, first])
    assert again is not None
    assert (again.days_kept, again.days_kept_now, again.frozen) == (3, 4, True)
    assert after.days_kept == 4


def test_no_number_before_the_start() -> None:
    ahead = standing(promise(), done(), START - timedelta(days=2))
    assert (ahead.state, ahead.day, ahead.needed) == (PromiseState.AHEAD, 0, 100)
    assert day_number(promise(), START - timedelta(days=1)) is None
    assert printed_numbers(promise(), ahead, START - timedelta(days=1)) is None


def test_going_on_before_the_break_is_over() -> None:
    made = with_break(promise(), PlannedBreak(day(5), day(15)), day(5))
    assert with_breaks_ended(made, day(9)).breaks == (PlannedBreak(day(5), day(8)),)
    assert with_breaks_ended(made, day(5)).breaks == ()
    assert with_breaks_ended(made, day(20)).breaks == made.breaks
    assert with_breaks_ended(made, day(2)).breaks == made.breaks
