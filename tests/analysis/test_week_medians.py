"""Medians of weeks: which days make a week, and whether the interval holds the truth."""

from datetime import date

import numpy as np
import pytest
from scipy import stats

from analysis.trend import group_medians
from analysis.week_medians import week_medians


def ordinal(day: str) -> int:
    return date.fromisoformat(day).toordinal()


def test_a_week_begins_on_monday_as_in_iso_8601() -> None:
    # ISO 8601: 2026-W47 runs from Monday 16 to Sunday 22 November 2026.
    days = np.array([ordinal(d) for d in ("2026-11-16", "2026-11-22", "2026-11-23")], float)
    weeks = week_medians(days, np.array([4.0, 8.0, 20.0]))
    assert [date.fromordinal(int(m)).isoformat() for m in weeks.monday] == [
        "2026-11-16",
        "2026-11-23",
    ]
    assert [date.fromordinal(int(m)).isocalendar().week for m in weeks.monday] == [47, 48]
    np.testing.assert_allclose(weeks.median, [6.0, 20.0])


def test_takes_of_one_day_count_once() -> None:
    days = np.array([ordinal("2026-11-16")] * 9 + [ordinal("2026-11-17")], float)
    weeks = week_medians(days, np.array([10.0] * 9 + [2.0]))
    assert weeks.median[0] == 6.0
    assert weeks.day_count[0] == 2.0


def test_too_few_days_have_no_interval() -> None:
    days = np.array([ordinal(d) for d in ("2026-11-16", "2026-11-17", "2026-11-24")], float)
    weeks = week_medians(days, np.array([4.0, 8.0, 20.0]))
    assert np.isnan(weeks.half_width).all()
    assert np.isnan(weeks.scatter)


def test_four_spare_days_are_enough_for_an_interval_by_students_t() -> None:
    days = ordinal("2026-11-16") + np.arange(5.0)
    values = np.array([4.0, 8.0, 5.0, 9.0, 4.0])
    weeks = week_medians(days, values)
    spread = np.std(values, ddof=1)
    half_width = stats.t.ppf(0.975, 4) * np.sqrt(np.pi / 2) * spread / np.sqrt(5)
    assert weeks.scatter == pytest.approx(spread)
    assert weeks.half_width == pytest.approx([half_width])


def test_medians_of_groups_are_those_of_numpy() -> None:
    rng = np.random.default_rng(4)
    member = np.concatenate([np.arange(30), rng.integers(0, 30, 300)])
    values = np.round(rng.normal(size=330), 1)  # with ties
    wanted = [np.median(values[member == group]) for group in range(30)]
    np.testing.assert_array_equal(group_medians(values, member, 30), wanted)


def test_nothing_gives_nothing() -> None:
    assert week_medians(np.empty(0), np.empty(0)).monday.size == 0


def test_what_was_not_measured_may_not_be_handed_in() -> None:
    with pytest.raises(ValueError, match="finite"):
        week_medians(np.array([1.0]), np.array([np.nan]))


def test_the_interval_holds_the_true_level_of_a_week_in_about_95_of_100_cases() -> None:
    """The truth is what the numbers are drawn about; five days a week, eight weeks."""
    rng = np.random.default_rng(20261125)
    start = ordinal("2026-10-05")
    day = np.array([start + 7 * week + d for week in range(8) for d in range(5)], float)
    truth = np.repeat(np.linspace(12.0, 6.0, 8), 5)
    inside = []
    for _ in range(400):
        weeks = week_medians(day, truth + rng.normal(0.0, 1.5, day.size))
        inside.append(np.abs(weeks.median - truth[::5]) <= weeks.half_width)
    share = float(np.mean(inside))
    print(f"share of intervals that hold the truth: {share:.3f}")
    assert 0.94 <= share <= 0.985
