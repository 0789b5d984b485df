"""A measure over weeks: robust slope with an interval, and one plain word."""

from dataclasses import dataclass

import numpy as np
from scipy import stats

from analysis.results import FloatArray, Measured, NotMeasurable, Provenance, Reason

ALGORITHM = "trend-1"
FEWEST_DAYS = 4


@dataclass(frozen=True, slots=True)
class Trend:
    """A measure against the practice days.

    Attributes
    ----------
    slope_per_week, slope_low_per_week, slope_high_per_week : float
        Theil-Sen slope in the measure's unit a week, with its 95 % interval.
    day, value : (m,) arrays
        The practice days (as given, pooled) and the median of each.
    fitted : (m,) array
        The straight line at those days.
    scatter : float
        Robust standard deviation of the days around the line.
    day_count : int
        Practice days that entered.
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
    is_clear: bool


def trend(day: FloatArray, value: FloatArray) -> Measured[Trend] | NotMeasurable:
    """Fit a robust straight line to a measure over practice days.

    Takes of one day are not independent of each other, so each day enters once,
    by its median.

    Parameters
    ----------
    day : (n,) array
        Practice day of each take, in days (fractions are allowed and rounded down).
    value : (n,) array
        The measure of each take, finite.

    Returns
    -------
    Measured[Trend] or NotMeasurable
        ``TOO_FEW_TAKES`` under four practice days.

    References
    ----------
    P. K. Sen, J. Am. Stat. Assoc. 63 (1968) 1379.
    """
    provenance = Provenance(ALGORITHM, {"fewest_days": FEWEST_DAYS})
    days, pooled = pooled_by_day(day, value)
    if days.size < FEWEST_DAYS:
        sentence = f"A trend needs takes from at least {FEWEST_DAYS} practice days."
        return NotMeasurable(Reason.TOO_FEW_TAKES, sentence, provenance)
    slope, intercept, low, high = stats.theilslopes(pooled, days, alpha=0.95)
    fitted = intercept + slope * days
    scatter = float(stats.median_abs_deviation(pooled - fitted, scale="normal"))
    result = Trend(
        slope_per_week=7 * float(slope),
        slope_low_per_week=7 * float(low),
        slope_high_per_week=7 * float(high),
        day=days,
        value=pooled,
        fitted=np.asarray(fitted, dtype=np.float64),
        scatter=scatter,
        day_count=int(days.size),
        is_clear=bool(low > 0 or high < 0),
    )
    return Measured(result, provenance)


def pooled_by_day(day: FloatArray, value: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Median of a measure for each practice day.

    Parameters
    ----------
    day, value : (n,) arrays

    Returns
    -------
    days, medians : (m,) arrays
        In ascending order of the day.
    """
    whole = np.floor(np.asarray(day, dtype=np.float64))
    measured = np.asarray(value, dtype=np.float64)
    days = np.unique(whole)
    return days, np.array([np.median(measured[whole == each]) for each in days])
