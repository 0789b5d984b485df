"""The honest count, against a slow and obvious one."""

from datetime import date, timedelta

from hypothesis import given
from hypothesis import strategies as st

from app.journal.counting import Count, count, missed_days, practised_days

START = date(2026, 1, 1)
some_days = st.sets(st.integers(0, 60).map(lambda n: START + timedelta(days=n)))


def test_forty_five_days_with_twenty_seven_practised() -> None:
    # Common practice, no source: the two numbers of such a stretch are 27 and 45.
    practised = [START + timedelta(days=n) for n in range(44) if n < 26] + [date(2026, 2, 14)]
    counted = count(practised, (), date(2026, 2, 14))
    assert counted == Count(START, 27, 45, 0, 18, today_open=False)


def test_an_empty_journal() -> None:
    assert count((), (), START) == Count(None, 0, 0, 0, 0, today_open=True)


def test_today_is_not_missed_before_it_is_over() -> None:
    yesterday = START - timedelta(days=1)
    counted = count([yesterday], (), START)
    assert (counted.days_since_first, counted.missed_days, counted.today_open) == (2, 0, True)
    assert count([yesterday], (), START + timedelta(days=1)).missed_days == 1


def test_short_days_count() -> None:
    minutes = {START: 0.5, START + timedelta(days=1): 0.0, START + timedelta(days=2): None}
    takes = {START + timedelta(days=3): 1, START + timedelta(days=4): 0}
    assert practised_days(minutes, takes) == {START, START + timedelta(days=3)}


def test_a_late_entry_counts_on_its_own_day() -> None:
    today = START + timedelta(days=9)
    before = count([START, today], (), today)
    after = count([START, START + timedelta(days=4), today], (), today)
    assert after.days_since_first == before.days_since_first == 10
    assert after.days_practised == before.days_practised + 1
    assert after.missed_days == before.missed_days - 1


def test_practising_on_a_rest_day_is_practising() -> None:
    counted = count([START, START + timedelta(days=1)], [START + timedelta(days=1)], START)
    assert (counted.days_practised, counted.rest_days) == (1, 0)


@given(some_days, some_days, st.integers(0, 60).map(lambda n: START + timedelta(days=n)))
def test_against_looking_at_every_day(practised: set[date], rest: set[date], today: date) -> None:
    counted = count(practised, rest, today)
    kept = rested = missed = since = 0
    missed_list = []
    day = START
    while day <= today:
        begun = since > 0 or day in practised
        if begun:
            since += 1
            if day in practised:
                kept += 1
            elif day in rest:
                rested += 1
            elif day < today:
                missed += 1
                missed_list.append(day)
        day += timedelta(days=1)
    assert counted.days_practised == kept
    assert counted.days_since_first == since
    assert counted.rest_days == rested
    assert counted.missed_days == missed
    assert missed_days(practised, rest, today) == tuple(missed_list)
    if since:
        assert kept + rested + missed + counted.today_open == since
