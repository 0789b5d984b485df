"""What was done on an assignment, and hours from before the journal."""

import math
from dataclasses import replace
from datetime import UTC, date, datetime, timedelta

import pytest

from app.journal.assignments import (
    Assignment,
    EarlierHours,
    checked_assignment,
    checked_earlier,
    progress,
)
from app.journal.failures import PlainFailure

NOW = datetime(2026, 3, 1, 18, tzinfo=UTC)
DAY = NOW.date()
WEEK = DAY + timedelta(days=7)
ASKED = Assignment("a", DAY, WEEK, "", NOW, minutes=60)


def on(*amounts: float, first: date = DAY) -> dict[date, float]:
    return {first + timedelta(days=n): amount for n, amount in enumerate(amounts)}


def test_minutes_between_its_days_count() -> None:
    before = on(500, first=DAY - timedelta(days=1))
    after = on(500, first=WEEK + timedelta(days=1))
    found = progress(ASKED, before | on(10, 0, 15.5) | after, {}, WEEK + timedelta(days=3))
    assert (found.minutes_done, found.days, found.minutes_left) == (25.5, 2, 34.5)
    assert (found.is_done, found.is_past) == (False, True)


def test_the_day_of_the_lesson_belongs_to_it() -> None:
    assert progress(ASKED, on(59.5, first=WEEK), {}, WEEK).is_done
    assert not progress(ASKED, on(59.4, first=WEEK), {}, WEEK).is_done


def test_a_goal_is_done_when_the_player_says_so() -> None:
    worded = replace(ASKED, goal="even shifts")
    assert not progress(worded, on(90), {}, DAY).is_done
    assert progress(replace(worded, done_on=DAY), {}, {}, DAY).is_done


def test_takes_and_minutes_of_one_day_are_one_day() -> None:
    found = progress(ASKED, on(10), {DAY: 2, DAY + timedelta(days=1): 1}, DAY + timedelta(days=1))
    assert (found.days, found.takes) == (2, 3)


def test_what_may_be_kept() -> None:
    assert checked_assignment(replace(ASKED, goal=" a  b ")).goal == "a b"
    for wrong in (
        replace(ASKED, minutes=None),
        replace(ASKED, minutes=0),
        replace(ASKED, due_on=DAY - timedelta(days=1)),
    ):
        with pytest.raises(PlainFailure):
            checked_assignment(wrong)
    assert checked_earlier(EarlierHours(1200, DAY, " x ")) == EarlierHours(1200.0, DAY, "x")
    for hours in (0.0, -1.0, math.inf, math.nan, 1e6):
        with pytest.raises(PlainFailure):
            checked_earlier(EarlierHours(hours))
