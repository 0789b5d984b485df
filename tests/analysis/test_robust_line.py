"""The robust slope and the quantiles against scipy.stats, an implementation of its own."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from analysis.averages import _inflation
from analysis.robust_line import robust_slope
from analysis.sides import compare_sides

levels = st.lists(st.integers(-20, 20).map(float), min_size=2, max_size=40)


@given(levels, st.integers(0, 2**32 - 1))
def test_slope_and_interval_are_those_of_the_library(values: list[float], seed: int) -> None:
    x = np.cumsum(np.random.default_rng(seed).uniform(0.1, 3.0, len(values)))
    slope, _, low, high = stats.theilslopes(values, x, alpha=0.95)  # whole numbers: many ties
    line = robust_slope(x, np.array(values))
    assert (line.slope, line.low, line.high) == pytest.approx((slope, low, high), rel=1e-12)


def test_a_line_needs_two_points() -> None:
    with pytest.raises(ValueError, match="two points"):
        robust_slope(np.array([1.0]), np.array([1.0]))
    with pytest.raises(ValueError, match="a y for every x"):
        robust_slope(np.array([1.0, 2.0]), np.array([1.0, 2.0, 3.0]))


@given(st.floats(0.0, 60.0), st.floats(0.01, 20.0))
def test_what_errors_add_to_a_size_is_the_mean_of_a_folded_normal(
    size: float, sigma: float
) -> None:
    added = _inflation(np.array([size]), np.array([sigma]))[0]
    expected = stats.foldnorm(size / sigma, scale=sigma).mean() - size
    assert added == pytest.approx(expected, rel=1e-9, abs=1e-12 * (size + sigma))


def test_interval_and_chance_of_two_sides_are_those_of_the_library() -> None:
    rng = np.random.default_rng(5)
    for _ in range(50):
        a, b = rng.normal(0, 3, 6), rng.normal(1, 1, 9)
        change = compare_sides(np.arange(6.0), a, np.arange(9.0) + 20, b).value
        welch = stats.ttest_ind(b, a, equal_var=False)
        interval = welch.confidence_interval(0.95)
        assert (change.low, change.high) == pytest.approx((interval.low, interval.high), rel=1e-10)
        assert change.chance == pytest.approx(welch.pvalue, rel=1e-10)
