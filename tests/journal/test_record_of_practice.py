"""Weeks, months, weekdays, hours, changes of level and steep rises."""

import random
from datetime import date, datetime, timedelta, timezone
from itertools import pairwise
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.journal.blocks import Block
from app.journal.change_points import approximate_p, changes, mean_ranks, pettitt
from app.journal.record_of_practice import (
    longest_pause,
    minutes_by_hour,
    months,
    periods,
    steep_rise,
    weekdays,
    weeks,
    whole,
)

START = date(2026, 1, 5)  # a Monday


def day(n: int) -> date:
    return START + timedelta(days=n)


def test_weeks_begin_on_monday_and_months_on_the_first() -> None:
    minutes = {day(0): 30.0, day(6): 30.0, day(7): 45.0, day(40): 10.0}
    found = weeks(minutes, set(minutes), day(2), day(40))
    assert [week.minutes for week in found] == [60, 45, 0, 0, 0, 10]
    assert [week.days_practised for week in found] == [2, 1, 0, 0, 0, 1]
    assert [week.is_over for week in found] == [True] * 5 + [False]
    assert len(whole(found, day(2))) == 4  # neither the week begun before, nor the present one
    by_month = months(minutes, set(minutes), day(2), day(40))
    assert [(m.first_day, m.last_day, m.minutes) for m in by_month] == [
        (date(2026, 1, 1), date(2026, 1, 31), 105.0),
        (date(2026, 2, 1), date(2026, 2, 28), 10.0),
    ]


def test_weekdays_over_a_leap_day() -> None:
    first, last = date(2028, 2, 28), date(2028, 3, 12)  # Mon 28 Feb to Sun 12 Mar
    minutes = {date(2028, 2, 29): 20.0, date(2028, 3, 7): 40.0}
    found = weekdays(minutes, set(minutes), first, last)
    assert [row.days for row in found] == [2] * 7
    assert (found[1].minutes, found[1].days_practised) == (60.0, 2)


def test_hours_are_those_of_the_wall_clock() -> None:
    zone = timezone(timedelta(hours=1))
    start = datetime(2026, 3, 1, 18, 50, tzinfo=zone)
    hours = minutes_by_hour([Block("b", "s", None, start, start + timedelta(minutes=80))])
    assert (hours[18], hours[19], hours[20]) == (10, 60, 10)
    berlin = ZoneInfo("Europe/Berlin")  # the clocks go forward at 02:00 on 29 Mar 2026
    night = datetime(2026, 3, 29, 1, 30, tzinfo=berlin)
    end = datetime(2026, 3, 29, 3, 15, tzinfo=berlin)
    hours = minutes_by_hour([Block("b", "s", None, night, end)])
    assert (hours[1], hours[2], hours[3]) == (30, 0, 15)


@given(st.lists(st.tuples(st.integers(0, 90_000), st.integers(0, 20_000)), max_size=5))
def test_no_minute_of_a_block_is_lost(spans: list[tuple[int, int]]) -> None:
    zero = datetime(2026, 3, 28, tzinfo=ZoneInfo("Europe/Berlin"))
    blocks = [
        Block("b", "s", None, zero + timedelta(seconds=a), zero + timedelta(seconds=a))
        for a, _ in spans
    ]
    blocks = [
        Block(b.id, "s", None, b.started_at, later(b.started_at, length))
        for b, (_, length) in zip(blocks, spans, strict=True)
    ]
    total = sum(length for _, length in spans) / 60
    assert sum(minutes_by_hour(blocks)) == pytest.approx(total)


def later(instant: datetime, seconds: int) -> datetime:
    return datetime.fromtimestamp(instant.timestamp() + seconds, instant.tzinfo)


def test_ranks_and_the_statistic_against_pairwise_signs() -> None:
    # Pettitt's own definition: U_t is the sum of sign(x_j - x_i) over i <= t < j.
    chance = random.Random(3)
    for _ in range(50):
        values = [float(chance.randint(0, 6)) for _ in range(chance.randint(3, 20))]
        sums = [
            sum(
                (values[j] > values[i]) - (values[j] < values[i])
                for i in range(t)
                for j in range(t, len(values))
            )
            for t in range(1, len(values))
        ]
        index, statistic = pettitt(values)
        assert statistic == pytest.approx(max(abs(u) for u in sums))
        assert abs(sums[index - 1]) == pytest.approx(statistic)
    assert mean_ranks([5, 1, 5, 2]) == [3.5, 1, 3.5, 2]


def test_the_permutation_p_agrees_with_the_published_approximation() -> None:
    chance = random.Random(5)
    values = [chance.gauss(0, 1) for _ in range(30)] + [chance.gauss(1.6, 1) for _ in range(30)]
    (found,) = changes(values)
    assert found.p_value <= 0.002
    assert approximate_p(found.statistic, 60) < 0.002
    assert abs(found.index - 30) <= 3
    assert found.low <= 30 <= found.high


def test_two_changes_are_found_in_order() -> None:
    levels = [200] * 12 + [420] * 10 + [120] * 12
    exact = 0
    for seed in range(20):
        chance = random.Random(seed)
        found = changes([level + chance.gauss(0, 40) for level in levels])
        assert all(one.index < other.index for one, other in pairwise(found))
        exact += [change.index for change in found] == [12, 22]
    assert exact >= 15


def test_without_any_change_at_most_one_series_in_twenty_shows_one() -> None:
    chance = random.Random(11)
    shown = sum(bool(changes([chance.gauss(300, 80) for _ in range(26)])) for _ in range(200))
    assert shown <= 18  # 5 % of 200 and two and a half standard deviations


def test_nothing_is_claimed_from_a_few_weeks() -> None:
    minutes = {day(n): 10.0 if n < 21 else 100.0 for n in range(35)}
    five = whole(weeks(minutes, set(minutes), START, day(35)), START)
    assert len(five) == 5
    assert periods(five) == ()
    longer = {day(n): 10.0 + n % 7 if n < 70 else 100.0 - n % 7 for n in range(140)}
    found = periods(whole(weeks(longer, set(longer), START, day(140)), START))
    assert [(p.first_day, p.last_day) for p in found] == [(day(0), day(69)), (day(70), day(139))]
    assert found[0].change is None
    assert found[1].change is not None
    assert found[1].median_minutes > found[0].median_minutes


def test_an_even_record_has_one_period() -> None:
    minutes = {day(n): 30.0 for n in range(140)}
    assert len(periods(whole(weeks(minutes, set(minutes), START, day(140)), START))) == 1


def test_a_steep_rise_and_what_is_none() -> None:
    steady = {day(n): 30.0 for n in range(28)}
    steep = steady | {day(n): 60.0 for n in range(28, 35)}
    found = steep_rise(steep, START, day(34))
    assert found is not None
    assert (found.minutes, found.mean_before) == (420.0, 210.0)
    assert steep_rise(steady | {day(n): 40.0 for n in range(28, 35)}, START, day(34)) is None
    short = {day(n): 5.0 for n in range(28)} | {day(n): 15.0 for n in range(28, 35)}
    assert steep_rise(short, START, day(34)) is None  # three times as much, and 70 minutes
    assert steep_rise(steep, day(1), day(34)) is None  # the journal is too young to compare
    assert steep_rise({day(n): 20.0 for n in range(28, 35)}, START, day(34)) is not None


def test_the_longest_pause() -> None:
    practised = {day(0), day(1), day(9), day(12)}
    assert longest_pause(practised, START, day(30)) == (day(2), day(8))
    assert longest_pause({day(0), day(1)}, START, day(30)) is None
