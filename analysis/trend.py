"""A measure over weeks: robust slope, its interval, and the scatter around the line.

The slope's interval comes from the exact distribution of Kendall's statistic, because
the usual normal approximation promises too much for the handful of practice days that a
passage often has. With no real trend the interval leaves out zero in at most one case of
twenty, or of twenty times ``comparisons`` when many measures are looked at together.

References
----------
P. K. Sen, J. Am. Stat. Assoc. 63 (1968) 1379 (slope and interval);
M. G. Kendall, Biometrika 30 (1938) 81 (distribution of the number of inversions).
"""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy import special

from analysis.results import FloatArray, Measured, NotMeasurable, Provenance, Reason
from analysis.robust_line import pair_slopes

ALGORITHM = "trend-3"
FEWEST_DAYS = 4
FALSE_VERDICT_RATE = 0.05

_EXACT_UP_TO_DAYS = 60
_FEWEST_DAYS_FOR_MAD = 10
_DAYS_A_WEEK = 7.0


@dataclass(frozen=True, slots=True)
class Trend:
    """A measure against the practice days.

    Attributes
    ----------
    slope_per_week, slope_low_per_week, slope_high_per_week : float
        Theil-Sen slope in the measure's unit a week, with its interval: in 95 of 100
        cases the intervals of all trends looked at together hold.
    day, value : (m,) arrays
        The practice days (as given, pooled) and the median of each.
    fitted : (m,) array
        The straight line at those days.
    scatter : float
        Standard deviation of the days around the line (robust from ten days up).
    day_count : int
        Practice days that entered.
    comparisons : int
        How many trends are looked at together.
    is_clear : bool
        Whether the interval leaves out zero.
    """

    slope_per_week: float
    slope_low_per_week: float
    slope_high_per_week: float
    day: FloatArray
    value: FloatArray
    fitted: FloatArray
    scatter: float
    day_count: int
    comparisons: int
    is_clear: bool

    @property
    def ordinary_difference(self) -> float:
        """How far two days differ at most in 95 of 100 cases without any change.

        Where several measures are looked at together, so far that in 95 of 100 cases
        none of them differs more.
        Takes into account that the scatter is itself known from a few days only; days
        that went astray count fully here, because such days do happen.
        """
        residual = self.value - self.fitted
        spare = self.day_count - 2
        deviation = math.sqrt(float(residual @ residual) / spare)
        quantile = float(special.stdtrit(spare, 1 - FALSE_VERDICT_RATE / self.comparisons / 2))
        return quantile * math.sqrt(2.0) * deviation


def trend(
    day: FloatArray, value: FloatArray, *, comparisons: int = 1
) -> Measured[Trend] | NotMeasurable:
    """Fit a robust straight line to a measure over practice days.

    Takes of one day are not independent of each other, so each day enters once,
    by its median.

    Parameters
    ----------
    day : (n,) array
        Practice day of each take, in days (fractions are allowed and rounded down).
    value : (n,) array
        The measure of each take, finite.
    comparisons : int
        How many trends are looked at together; ``is_clear`` is then corrected, so
        that the chance of any false one stays 5 %.

    Returns
    -------
    Measured[Trend] or NotMeasurable
        ``TOO_FEW_TAKES`` under four practice days.

    Raises
    ------
    ValueError
        If the arrays differ in length, or a value is not finite.
    """
    provenance = Provenance(ALGORITHM, {"fewest_days": FEWEST_DAYS, "comparisons": comparisons})
    days, pooled = pooled_by_day(day, value)
    if days.size < FEWEST_DAYS:
        sentence = f"A trend needs takes from at least {FEWEST_DAYS} practice days."
        return NotMeasurable(Reason.TOO_FEW_TAKES, sentence, provenance)
    slopes = pair_slopes(days, pooled)
    slope = float(np.median(slopes))
    fitted = slope * days + np.median(pooled - slope * days)
    low, high = _slope_interval(slopes, days, pooled, FALSE_VERDICT_RATE / comparisons)
    result = Trend(
        slope_per_week=_DAYS_A_WEEK * slope,
        slope_low_per_week=_DAYS_A_WEEK * low,
        slope_high_per_week=_DAYS_A_WEEK * high,
        day=days,
        value=pooled,
        fitted=np.asarray(fitted, dtype=np.float64),
        scatter=_scatter(pooled - fitted),
        day_count=int(days.size),
        comparisons=comparisons,
        is_clear=bool(low > 0 or high < 0),
    )
    return Measured(result, provenance)


def pooled_by_day(day: FloatArray, value: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Median of a measure for each practice day.

    Parameters
    ----------
    day, value : (n,) arrays
        Finite.

    Returns
    -------
    days, medians : (m,) arrays
        In ascending order of the day.

    Raises
    ------
    ValueError
        If the arrays differ in length, or a number is not finite.
    """
    whole = np.floor(np.asarray(day, dtype=np.float64))
    measured = np.asarray(value, dtype=np.float64)
    if whole.shape != measured.shape:
        raise ValueError("every value needs a day")
    if not (np.isfinite(whole).all() and np.isfinite(measured).all()):
        raise ValueError("days and values must be finite; leave out what was not measurable")
    days, member = np.unique(whole, return_inverse=True)
    return days, group_medians(measured, member, days.size)


def group_medians(values: FloatArray, member: NDArray[np.intp], group_count: int) -> FloatArray:
    """Median of each group of values, all at once.

    Parameters
    ----------
    values : (n,) array
        Finite.
    member : (n,) array of int
        The group of each value, 0 to ``group_count`` - 1; every group has a value.
    group_count : int

    Returns
    -------
    (group_count,) array
    """
    ordered = values[np.lexsort((values, member))]
    count = np.bincount(member, minlength=group_count)
    first = np.cumsum(count) - count
    lower, upper = ordered[first + (count - 1) // 2], ordered[first + count // 2]
    return np.asarray((lower + upper) / 2.0, dtype=np.float64)


def _slope_interval(
    slopes: FloatArray, days: FloatArray, values: FloatArray, error_rate: float
) -> tuple[float, float]:
    """Interval that misses the true slope with at most the given probability."""
    rank = _outer_slopes(days.size, error_rate / 2)
    if rank > 0:
        return float(slopes[rank - 1]), float(slopes[-rank])
    # So few days that no order of them is rare enough: the least-squares interval.
    slope, error = _least_squares(days, values)
    reach = float(special.stdtrit(days.size - 2, 1 - error_rate / 2)) * error
    return slope - reach, slope + reach


def _least_squares(days: FloatArray, values: FloatArray) -> tuple[float, float]:
    """Give the least-squares slope and its standard error, from three days or more."""
    centred = days - days.mean()
    spread = float(centred @ centred)
    slope = float(centred @ values) / spread
    residual = values - values.mean() - slope * centred
    return slope, math.sqrt(float(residual @ residual) / (days.size - 2) / spread)


def _outer_slopes(count: int, tail: float) -> int:
    """How many slopes may be left out at each end, by Kendall's distribution."""
    pairs = count * (count - 1) // 2
    if count > _EXACT_UP_TO_DAYS:
        sd = math.sqrt(count * (count - 1) * (2 * count + 5) / 72)
        return max(0, math.floor(pairs / 2 + float(special.ndtri(tail)) * sd - 0.5))
    # Distribution of the inversions of a random order, one more element at a time.
    chance = np.ones(1)
    for size in range(2, count + 1):
        chance = np.convolve(chance, np.full(size, 1.0 / size))
    return int(np.searchsorted(np.cumsum(chance), tail, side="right"))


def _scatter(residual: FloatArray) -> float:
    """Estimate the standard deviation around a fitted line; two degrees of freedom went into it."""
    spare = residual.size - 2
    if residual.size < _FEWEST_DAYS_FOR_MAD:
        return math.sqrt(float(residual @ residual) / spare)
    off = float(np.median(np.abs(residual - np.median(residual))))
    robust = off / float(special.ndtri(0.75))  # as wide as a normal deviation
    return robust * math.sqrt(residual.size / spare)
