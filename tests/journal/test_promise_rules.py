"""What a promise's rules may ask for, and what is refused.

Common practice, no source: no day has more minutes than it has, and a promise asks for something.
"""

from dataclasses import replace
from datetime import timedelta

import pytest

from app.journal.failures import PlainFailure
from app.journal.promises import (
    MOST_DAYS,
    PlannedBreak,
    Promise,
    PromiseRule,
    Stretch,
    checked,
    with_break,
)
from tests.journal.a_promise import NOW, START, day, promise


@pytest.mark.parametrize(
    "pause",
    [
        PlannedBreak(day(4), day(6)),
        PlannedBreak(day(9), day(7)),
        PlannedBreak(day(12), day(20)),
        PlannedBreak(day(8), day(10)),  # one day is in both
        PlannedBreak(day(15), day(20)),
        PlannedBreak(day(11), day(12)),
    ],
)
def test_breaks_that_cannot_be(pause: PlannedBreak) -> None:
    made = with_break(promise(), PlannedBreak(day(10), day(15)), day(5))
    with pytest.raises(PlainFailure):
        with_break(made, pause, day(5))


@pytest.mark.parametrize("pause", [PlannedBreak(day(8), day(9)), PlannedBreak(day(16), day(16))])
def test_breaks_may_follow_each_other_at_once(pause: PlannedBreak) -> None:
    made = with_break(promise(), PlannedBreak(day(10), day(15)), day(5))
    assert pause in with_break(made, pause, day(5)).breaks


@pytest.mark.parametrize(
    "change",
    [
        {"days": 0},
        {"days": MOST_DAYS + 1},
        {"minimum_minutes": 0},
        {"minimum_minutes": 1441},
        {"minimum_takes": 0},
        {"minimum_takes": 101},
        {"rest_days": -1},
        {"rest_days": MOST_DAYS + 1},
        {"rest_weekdays": (0, 1, 2, 3, 4, 5, 6)},
        {"rest_weekdays": (7,)},
        {"end": START - timedelta(days=1)},
    ],
)
def test_rules_that_make_no_sense(change: dict[str, object]) -> None:
    rule = replace(PromiseRule(START, Stretch.IN_TOTAL, 10), **change)  # type: ignore[arg-type]
    with pytest.raises(PlainFailure):
        checked(Promise("p", "x", START, (rule,), NOW))


def test_the_most_that_a_rule_can_ask_for_and_the_least() -> None:
    most = PromiseRule(
        START, Stretch.IN_TOTAL, MOST_DAYS, 1440, 100, rest_days=MOST_DAYS, end=START
    )
    plain = PromiseRule(START, Stretch.IN_TOTAL, 1)
    for rule in (most, replace(most, minimum_minutes=1, minimum_takes=1, days=1), plain):
        assert checked(Promise("p", "x", START, (rule,), NOW)).rules == (rule,)
    assert (plain.rest_days, plain.needs_both, plain.anything_counts) == (0, False, True)


def test_rules_follow_one_another_from_the_start_on() -> None:
    first, second = (PromiseRule(day(n), Stretch.IN_TOTAL, 30) for n in (1, 5))
    made = promise()
    for rules in ((), (second,), (first, first), (first, second, second), (second, first)):
        with pytest.raises(ValueError, match="follow one another"):
            checked(replace(made, rules=rules))
    assert checked(replace(made, rules=(first, second))).rules == (first, second)


def test_a_promise_has_a_name() -> None:
    with pytest.raises(PlainFailure, match="name"):
        checked(replace(promise(), name="  "))
