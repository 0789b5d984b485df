"""The statistics of a trend against scipy.stats, an implementation of its own."""

import numpy as np
import pytest
from scipy import stats

from analysis.trend import FALSE_VERDICT_RATE, _least_squares, _outer_slopes, _scatter, trend


@pytest.mark.parametrize("seed", range(20))
def test_least_squares_are_those_of_linregress(seed):
    random = np.random.default_rng(seed)
    days = np.sort(random.choice(400, int(random.integers(3, 40)), replace=False)).astype(float)
    values = random.normal(size=days.size) + 0.01 * days
    fit = stats.linregress(days, values)
    assert _least_squares(days, values) == pytest.approx((fit.slope, fit.stderr), rel=1e-9)


@pytest.mark.parametrize("seed", range(20))
def test_the_scatter_is_the_median_deviation_scaled_to_a_normal_one(seed):
    residual = np.random.default_rng(seed).normal(0.0, 3.0, 10 + seed)
    robust = stats.median_abs_deviation(residual, scale="normal")
    expected = robust * np.sqrt(residual.size / (residual.size - 2))
    assert _scatter(residual) == pytest.approx(expected, rel=1e-9)


@pytest.mark.parametrize("count", [61, 90, 400])
@pytest.mark.parametrize("tail", [0.025, 0.001])
def test_outer_slopes_of_many_days_take_the_normal_quantile(count, tail):
    pairs = count * (count - 1) // 2
    sd = np.sqrt(count * (count - 1) * (2 * count + 5) / 72)
    expected = max(0, int(np.floor(pairs / 2 + stats.norm.ppf(tail) * sd - 0.5)))
    assert _outer_slopes(count, tail) == expected


@pytest.mark.parametrize("count", [4, 7, 30])
@pytest.mark.parametrize("comparisons", [1, 12])
def test_the_ordinary_difference_takes_the_quantile_of_student(count, comparisons):
    random = np.random.default_rng(count)
    found = trend(np.arange(count) * 3.0, random.normal(size=count), comparisons=comparisons)
    fit = found.value
    residual = fit.value - fit.fitted
    deviation = np.sqrt(residual @ residual / (count - 2))
    quantile = stats.t.ppf(1 - FALSE_VERDICT_RATE / comparisons / 2, count - 2)
    assert fit.ordinary_difference == pytest.approx(quantile * np.sqrt(2.0) * deviation, rel=1e-9)
