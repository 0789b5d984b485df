"""Reminders: off by default, at the chosen time, once, and not after the day is done."""

from dataclasses import replace
from datetime import date, datetime, timedelta

import pytest

from app.journal.failures import PlainFailure
from app.journal.promises import PromiseRule, Stretch
from app.journal.reminding import is_due
from app.wiring import open_workbench
from tests.services.conftest import ZONE

TODAY = date(2026, 3, 14)  # the clock stands at 19:30


@pytest.fixture
def wished(bench):
    def at(hour, minute=0):
        settings = bench.practising.settings()
        bench.practising.change_settings(replace(settings, reminder_minute=hour * 60 + minute))

    return at


def test_it_is_off_by_default(bench):
    assert bench.reminders.due() == ""


def test_it_comes_once_from_the_chosen_time_on(bench, wished, clock):
    wished(20)
    assert bench.reminders.due() == ""
    clock.now += timedelta(minutes=30)
    assert "if you like" in bench.reminders.due()
    assert bench.reminders.due() == ""
    clock.now += timedelta(days=1)
    assert bench.reminders.due()


def test_a_journal_opened_again_the_same_day_does_not_remind_twice(bench, wished, clock):
    wished(19)
    assert bench.reminders.due()
    bench.close()
    with open_workbench(bench.journal_dir, clock=clock) as again:
        assert again.reminders.due() == ""
        assert again.practising.settings().reminder_minute == 19 * 60
        clock.now += timedelta(days=1)
        assert again.reminders.due()


def test_none_after_the_day_is_done(bench, wished):
    wished(19)
    bench.practising.set_minutes(TODAY, 5)
    assert bench.reminders.due() == ""


def test_none_on_a_rest_day(bench, wished):
    wished(19)
    bench.practising.mark_rest(TODAY, planned=True)
    assert bench.reminders.due() == ""


def test_a_promise_that_asks_for_more_leaves_the_day_open(bench, wished):
    wished(19)
    bench.practising.set_minutes(TODAY, 5)
    rule = PromiseRule(TODAY, Stretch.IN_TOTAL, 10, minimum_minutes=45)
    made = bench.promises.make("Long days", rule).promise
    bench.promises.plan_break(made.id, TODAY, TODAY)
    assert bench.reminders.due() == ""  # paused: nothing is asked
    bench.promises.go_on(made.id)
    assert bench.reminders.due()


def test_after_midnight_it_is_still_the_evening_of_the_day_before() -> None:
    night = datetime(2026, 3, 15, 0, 30, tzinfo=ZONE)

    def due(minute, now, today):
        return is_due(minute, now, today, turn_hour=4, done=False, reminded_on=None)

    assert due(23 * 60, night, TODAY)
    assert due(15, night, TODAY)
    assert not due(60, night, TODAY)
    assert not due(15, datetime(2026, 3, 14, 22, 0, tzinfo=ZONE), TODAY)


def test_a_time_that_is_none(bench, wished):
    with pytest.raises(PlainFailure, match="time of day"):
        wished(24)
