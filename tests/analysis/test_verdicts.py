"""Many verdicts about a passage together: none invented, real ones found, tempo matched."""

import numpy as np
import pytest

from analysis.results import Measured, NotMeasurable, Reason
from analysis.verdicts import (
    Family,
    Period,
    at_matched_tempo,
    judge,
    periods_of,
    tempo_apart,
    trend_comparisons,
)

# Monday 2 February 2026 as a proleptic ordinal.
MONDAY = 739649.0


def week(number, days):
    return MONDAY + 7 * number + np.arange(days)


def test_weeks_with_four_days_are_held_against_the_next_such_week():
    days = np.concatenate((week(0, 5), week(1, 3), week(2, 4), week(3, 6)))
    first, *weeks = periods_of(days)
    assert first.kind == "first_and_latest"
    assert (first.a_first, first.a_last) == (days[0], days[8])
    assert first.b_first > first.a_last
    assert [(p.a_first, p.b_first) for p in weeks] == [
        (MONDAY, MONDAY + 14),
        (MONDAY + 14, MONDAY + 21),
    ]
    assert periods_of(week(0, 7)) == ()


@pytest.mark.parametrize(("days", "side"), [(8, 4), (15, 7), (20, 10), (21, 10), (60, 10)])
def test_the_first_and_the_latest_days_are_ten_a_side_at_most(days, side):
    first, *_ = periods_of(MONDAY + 2.0 * np.arange(days))
    assert (first.a_first, first.a_last) == (MONDAY, MONDAY + 2 * (side - 1))
    assert (first.b_first, first.b_last) == (MONDAY + 2 * (days - side), MONDAY + 2 * (days - 1))


def families(rng, days, change=0.0):
    later = days >= days[days.size // 2]
    whole = [Family(f"m{i}", rng.standard_normal((days.size, 1))) for i in range(4)]
    whole[0].values[later] += change
    notes = rng.standard_normal((days.size, 20))
    notes[later, 3] += change
    return whole, [Family("notes", notes)]


def any_clear(found):
    return [one for one in found if isinstance(one.result, Measured) and one.result.value.is_clear]


def test_without_any_change_hardly_a_passage_shows_a_verdict():
    false = 0
    for seed in range(60):
        rng = np.random.default_rng(seed)
        days = np.concatenate([week(n, 5) for n in range(5)])
        false += bool(any_clear(judge(days, *families(rng, days), periods_of(days))))
    # Passage and parts may use 3.5 % together; more than 8 of 60 would lie
    # beyond its 99.9 % limit (scipy.stats.binom.ppf(0.999, 60, 0.035) = 8).
    assert false <= 8


def test_a_large_change_of_the_passage_and_of_one_note_is_found():
    rng = np.random.default_rng(4)
    days = np.concatenate([week(n, 5) for n in range(4)])
    found = any_clear(judge(days, *families(rng, days, 5.0), periods_of(days)))
    told = {(one.family, one.column) for one in found if one.period.kind == "first_and_latest"}
    assert told == {("m0", 0), ("notes", 3)}


def test_more_passages_ask_for_more_evidence():
    rng = np.random.default_rng(11)
    days = np.concatenate([week(n, 4) for n in range(2)])
    value = np.where(days >= week(1, 1)[0], 2.6, 0.0)[:, np.newaxis]
    whole = [Family("m", value + 0.6 * rng.standard_normal((days.size, 1)))]
    alone = judge(days, whole, [], periods_of(days)[:1])
    among_many = judge(days, whole, [], periods_of(days)[:1], passages=2000)
    assert any_clear(alone)
    assert not any_clear(among_many)
    assert trend_comparisons(7, 3) == 70
    # A passage that nobody has counted yet is still looked at itself.
    uncounted = judge(days, whole, [], periods_of(days)[:1], passages=0)
    assert [one.result for one in uncounted] == [one.result for one in alone]
    assert trend_comparisons(7, 0) == trend_comparisons(7, 1)


def test_fewer_than_four_days_on_a_side_is_too_few_takes():
    days = np.concatenate((week(0, 5), week(1, 5)))
    values = np.arange(10.0)[:, np.newaxis].copy()
    values[:2] = np.nan
    (one,) = judge(days, [Family("m", values)], [], periods_of(days)[:1])
    assert isinstance(one.result, NotMeasurable)
    assert one.result.reason is Reason.TOO_FEW_TAKES


def test_takes_of_one_tempo_are_chosen_where_both_sides_have_them():
    days = np.concatenate((week(0, 7), week(1, 7)))
    period = Period("week", days[0], days[6], days[7], days[13])
    bpm = np.array([80.0] * 7 + [80.0, 81.0, 79.0, 82.0, 110.0, 112.0, 111.0])
    chosen = at_matched_tempo(days, bpm, period)
    assert chosen is not None
    assert chosen.tolist() == [True] * 11 + [False] * 3
    apart = bpm + 40.0 * (days >= days[7])
    assert at_matched_tempo(days, apart, period) is None
    assert tempo_apart(days, apart, period) == pytest.approx(122 / 80 - 1, abs=0.03)


def test_only_measures_that_the_tempo_moves_are_matched():
    days = np.concatenate((week(0, 5), week(1, 5)))
    period = periods_of(days)[0]
    keep = np.ones(10, dtype=np.bool_)
    keep[:2] = False
    values = np.arange(10.0)[:, np.newaxis]
    both = [Family("moved", values, at_tempo=True), Family("not", values.copy())]
    moved, unmoved = judge(days, both, [], [period], same_tempo={period: keep})
    assert isinstance(moved.result, NotMeasurable)
    assert isinstance(unmoved.result, Measured)
