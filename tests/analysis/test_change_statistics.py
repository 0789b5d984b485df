"""The statistics of change, number for number, against scipy and the formulas of handbooks."""

import math
from datetime import date

import numpy as np
import pytest
from scipy import stats

from analysis.results import Measured
from analysis.sides import clear_after_holm, compare_notes, compare_sides
from analysis.trend import trend
from analysis.verdicts import (
    Family,
    Period,
    at_matched_tempo,
    judge,
    periods_of,
    tempo_apart,
    trend_comparisons,
)

DAYS = np.array([0.0, 1, 3, 4, 7, 9, 10, 14, 15, 18, 21, 22, 25, 29, 30])


def noisy_line(days, slope=0.3, sd=1.5, seed=4):
    return 5.0 + slope * days + np.random.default_rng(seed).normal(0, sd, days.size)


@pytest.mark.parametrize("count", [4, 6, 11, 15])
def test_the_slope_is_scipys_theil_sen(count):
    days, values = DAYS[:count], noisy_line(DAYS)[:count]
    slope, intercept, _low, _high = stats.theilslopes(values, days)
    found = trend(days, values).value
    assert found.slope_per_week == pytest.approx(7 * slope)
    # The line through the median of the residuals, not of the values.
    expected = slope * days + np.median(values - slope * days)
    assert found.fitted == pytest.approx(expected)
    assert abs(intercept - (found.fitted[0] - slope * days[0])) < 2.0


@pytest.mark.parametrize("count", [40, 80])
@pytest.mark.parametrize("seed", range(5))
def test_the_interval_is_scipys_within_one_rank_of_the_normal_approximation(seed, count):
    # scipy takes the normal approximation of Sen (1968); here the distribution is exact
    # up to 60 days.
    days = np.arange(float(count))
    values = noisy_line(days, seed=seed)
    _, _, low, high = stats.theilslopes(values, days, alpha=0.95)
    first, second = np.triu_indices(days.size, 1)
    slopes = np.sort((values[second] - values[first]) / (days[second] - days[first]))
    found = trend(days, values).value
    for mine, theirs in (
        (found.slope_low_per_week / 7, low),
        (found.slope_high_per_week / 7, high),
    ):
        apart = abs(int(np.searchsorted(slopes, mine)) - int(np.searchsorted(slopes, theirs)))
        assert apart <= 2


# Kendall's rank correlation, two-sided 5 %: the smallest number of concordant less
# discordant pairs that is rare enough (Kendall, "Rank Correlation Methods", table 1; from
# memory, and enumerated here). The interval leaves out (pairs - that number) / 2 + 0 slopes.
@pytest.mark.parametrize("count", [6, 7, 8])
def test_few_days_leave_out_as_many_slopes_as_kendalls_distribution_allows(count):
    from itertools import permutations

    days = np.arange(float(count))
    inversions = [
        sum(a > b for i, a in enumerate(order) for b in order[i + 1 :])
        for order in permutations(range(count))
    ]
    chance = np.cumsum(np.bincount(inversions)) / math.factorial(count)
    rank = int(np.sum(chance <= 0.025))
    values = noisy_line(days)
    first, second = np.triu_indices(count, 1)
    slopes = np.sort((values[second] - values[first]) / (days[second] - days[first]))
    found = trend(days, values).value
    assert found.slope_low_per_week == pytest.approx(7 * slopes[rank - 1])
    assert found.slope_high_per_week == pytest.approx(7 * slopes[-rank])


def test_four_days_fall_back_on_the_least_squares_interval():
    days, values = DAYS[:4], noisy_line(DAYS)[:4]
    fit = stats.linregress(days, values)
    reach = stats.t.ppf(0.975, 2) * fit.stderr
    found = trend(days, values).value
    assert found.slope_low_per_week == pytest.approx(7 * (fit.slope - reach))
    assert found.slope_high_per_week == pytest.approx(7 * (fit.slope + reach))


def test_the_interval_holds_the_true_slope_about_95_times_in_100():
    days = np.arange(0.0, 60.0, 1.5)
    held = 0
    for seed in range(400):
        found = trend(days, noisy_line(days, slope=0.2, seed=seed)).value
        held += found.slope_low_per_week <= 7 * 0.2 <= found.slope_high_per_week
    assert 0.92 <= held / 400 <= 0.985


def test_the_scatter_is_a_standard_deviation_about_the_line():
    days = np.arange(200.0)
    assert trend(days, noisy_line(days, sd=3.0)).value.scatter == pytest.approx(3.0, rel=0.15)
    few = trend(DAYS[:5], noisy_line(DAYS)[:5]).value
    residual = few.value - few.fitted
    assert few.scatter == pytest.approx(math.sqrt(float(residual @ residual) / 3))
    many = trend(DAYS, noisy_line(DAYS)).value
    residual = many.value - many.fitted
    mad = np.median(np.abs(residual - np.median(residual))) / stats.norm.ppf(0.75)
    assert many.scatter == pytest.approx(mad * math.sqrt(15 / 13))


@pytest.mark.parametrize("comparisons", [1, 7])
def test_the_ordinary_difference_of_two_days_follows_students_t(comparisons):
    found = trend(DAYS, noisy_line(DAYS), comparisons=comparisons).value
    residual = found.value - found.fitted
    deviation = math.sqrt(float(residual @ residual) / 13)
    quantile = stats.t.ppf(1 - 0.05 / comparisons / 2, 13)
    assert found.ordinary_difference == pytest.approx(quantile * math.sqrt(2) * deviation)
    assert found.ordinary_difference > 0


@pytest.mark.parametrize(("n", "m", "shift"), [(4, 4, 0.0), (6, 10, 1.0), (10, 5, 4.0)])
def test_two_sides_are_held_apart_by_welchs_test(n, m, shift):
    random = np.random.default_rng(n * m)
    a, b = random.normal(0, 1.0, n), random.normal(shift, 2.5, m)
    test = stats.ttest_ind(b, a, equal_var=False)
    interval = test.confidence_interval(0.95)
    found = compare_sides(np.arange(n), a, np.arange(m), b).value
    assert found.change == pytest.approx(b.mean() - a.mean())
    assert (found.low, found.high) == pytest.approx((interval.low, interval.high))
    assert found.chance == pytest.approx(test.pvalue)
    assert found.is_clear == (test.pvalue < 0.05)
    assert (found.a, found.b) == pytest.approx((a.mean(), b.mean()))
    pooled = ((n - 1) * a.var(ddof=1) + (m - 1) * b.var(ddof=1)) / (n + m - 2)
    assert found.scatter == pytest.approx(math.sqrt(pooled))


def test_more_comparisons_ask_for_more():
    random = np.random.default_rng(1)
    a, b = random.normal(0, 1.0, 8), random.normal(1.2, 1.0, 8)
    day = np.arange(8)
    chance = compare_sides(day, a, day, b).value.chance
    for comparisons in (1, 3, 10, 50):
        found = compare_sides(day, a, day, b, comparisons=comparisons).value
        assert found.is_clear == (chance < 0.05 / comparisons)


@pytest.mark.parametrize("comparisons", [1, 4])
def test_a_change_is_clear_from_exactly_the_corrected_quantile_on(comparisons):
    # Two sides of four days with the standard error 1: by Welch's formula, 6 degrees of freedom.
    day, scattered = np.arange(4), np.sqrt(1.5) * np.array([-1.0, -1.0, 1.0, 1.0])
    bound = stats.t.ppf(1 - 0.05 / comparisons / 2, 6)
    for factor, is_clear in ((0.999, False), (1.001, True)):
        moved = scattered + factor * bound
        found = compare_sides(day, scattered, day, moved, comparisons=comparisons).value
        assert found.is_clear == is_clear


def test_notes_without_any_scatter_are_different_or_they_are_not():
    day, level = np.arange(4), np.tile([3.0, 5.0], (4, 1))
    same, moved = compare_notes(day, level, day, level + np.array([0.0, 1.0]))
    assert (same.value.is_clear, same.value.scatter, same.value.chance) == (False, 0.0, 1.0)
    assert (moved.value.is_clear, moved.value.change, moved.value.chance) == (True, 1.0, 0.0)


def test_sides_without_any_scatter_are_different_or_they_are_not():
    day, level = np.arange(4), np.full(4, 3.0)
    same, other = compare_sides(day, level, day, level), compare_sides(day, level, day, level + 1)
    assert (same.value.chance, same.value.is_clear) == (1.0, False)
    assert (other.value.chance, other.value.is_clear) == (0.0, True)


def test_one_note_alone_is_held_apart_by_students_test():
    # With a single note nothing is pooled: the classical test with common variance.
    random = np.random.default_rng(3)
    a, b = random.normal(2.0, 3.0, (6, 1)), random.normal(5.0, 3.0, (7, 1))
    test = stats.ttest_ind(b[:, 0], a[:, 0])
    interval = test.confidence_interval(0.95)
    (one,) = compare_notes(np.arange(6), a, np.arange(7), b)
    assert isinstance(one, Measured)
    found = one.value
    assert (found.low, found.high) == pytest.approx((interval.low, interval.high))
    assert found.chance == pytest.approx(test.pvalue)


def test_notes_share_their_scatter_and_a_wild_one_keeps_its_own():
    random = np.random.default_rng(8)
    sd = np.array([1.0, 1.0, 1.0, 6.0])
    a, b = random.normal(30.0, sd, (9, 4)), random.normal(32.0, sd, (9, 4))
    squares = ((a - a.mean(0)) ** 2).sum(0) + ((b - b.mean(0)) ** 2).sum(0)
    own = np.sqrt(squares / 16)
    together = math.sqrt(squares.sum() / 64)
    found = [one.value.scatter for one in compare_notes(np.arange(9), a, np.arange(9), b)]
    assert found == pytest.approx(np.maximum(own, together))
    assert own[3] > together


@pytest.mark.parametrize(("alike", "freedom"), [(0.0, 8 * 6), (1.0, 8)])
def test_notes_of_one_day_that_move_together_witness_less(alike, freedom):
    # Effective degrees of freedom m n / (1 + (m - 1) r^2) of m equally correlated notes: all
    # of them without correlation, one note's worth with full correlation.
    random = np.random.default_rng(12)
    reaches = []
    for _ in range(60):
        day_part, own = random.normal(size=(10, 1)), random.normal(size=(10, 6))
        values = math.sqrt(alike) * day_part + math.sqrt(1 - alike) * own
        one = compare_notes(np.arange(5), values[:5], np.arange(5), values[5:])[0].value
        error = one.scatter * math.sqrt(2 / 5)
        reaches.append((one.high - one.low) / 2 / error)
    assert np.median(reaches) == pytest.approx(stats.t.ppf(0.975, freedom), rel=0.02)


def test_holms_steps():
    # S. Holm, "A simple sequentially rejective multiple test procedure" (1979): the smallest
    # against 5 % / n, the next against 5 % / (n - 1), and none after the first that fails.
    chance = np.array([0.04, 0.0101, 0.012, 0.6, 0.013])
    # 0.0101 > 0.05 / 5 fails at the first step.
    assert not clear_after_holm(chance).any()
    chance[1] = 0.0099
    # then 0.012 < 0.05 / 4, 0.013 < 0.05 / 3, but 0.04 > 0.05 / 2.
    assert clear_after_holm(chance).tolist() == [False, True, True, False, True]


def test_weeks_begin_on_monday_and_end_on_sunday():
    monday = date(2023, 3, 27).toordinal()
    played = (0, 2, 3, 6, 7, 8, 9, 13, 14, 21, 22, 23, 24)
    days = np.array([monday + n for n in played], dtype=np.float64)
    whole, *weeks = periods_of(days)
    assert whole == Period("first_and_latest", days[0], days[5], days[-6], days[-1])
    assert weeks == [
        Period("week", monday, monday + 6, monday + 7, monday + 13),
        Period("week", monday + 7, monday + 13, monday + 21, monday + 27),
    ]


def test_takes_at_one_tempo_are_chosen_where_most_days_have_it():
    day = np.arange(16.0)
    bpm = np.array([60.0, 60, 60, 60, 90, 90, 90, 90, 61, 62, 63, 64, 120, 120, 60, np.nan])
    period = Period("first_and_latest", 0, 7, 8, 15)
    chosen = at_matched_tempo(day, bpm, period)
    assert chosen is not None
    assert np.flatnonzero(chosen).tolist() == [0, 1, 2, 3, 8, 9, 10, 11, 14]
    assert tempo_apart(day, bpm, period) == pytest.approx(63 / 75 - 1)
    # Two takes of one day are one day.
    same_day = np.array([0.0, 0, 0, 0, 4, 5, 6, 7, 8, 8, 8, 8, 12, 13, 14, 15])
    assert at_matched_tempo(same_day, bpm, period) is None


def test_what_rises_is_as_clear_as_what_falls():
    for sign in (1.0, -1.0):
        assert trend(DAYS, sign * noisy_line(DAYS)).value.is_clear


def test_the_last_day_of_a_period_belongs_to_it():
    day = np.arange(8.0)
    bpm = np.full(8, 60.0)
    chosen = at_matched_tempo(day, bpm, Period("first_and_latest", 0, 3, 4, 7))
    assert chosen is not None
    assert chosen.all()
    later = np.array([60.0] * 4 + [66.0, 66.0, 66.0, 90.0])
    early = Period("first_and_latest", 0, 3, 4, 6)
    assert tempo_apart(day, later, early) == pytest.approx(0.1)


@pytest.mark.parametrize("columns", [1, 2])
def test_days_outside_a_period_say_nothing_of_it(columns):
    # Ten level days; a day before, one between and one after would each move a side's mean.
    day = np.array([0.0, 10, 11, 12, 13, 15, 20, 21, 22, 23, 30])
    level = np.array([99.0, 1, 2, 1, 2, 99, 3, 4, 3, 4, 99])
    values = np.repeat(level[:, np.newaxis], columns, axis=1)
    whole = [Family("measure", values)]
    (found, *_rest) = judge(day, whole, [], [Period("week", 10, 13, 20, 23)])
    assert (found.result.value.a, found.result.value.b) == (1.5, 3.5)


def test_a_trend_is_corrected_for_one_passage_at_least():
    assert trend_comparisons(3, 0) == trend_comparisons(3, 1)
    assert trend_comparisons(3, 2) == pytest.approx(2 * trend_comparisons(3, 1), abs=1)
    assert trend_comparisons(3, 1) >= 3
