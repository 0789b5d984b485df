"""A measure week by week: the median of a week's days, with its interval.

The takes of one day are not independent, so a day counts once. A week holds few days;
how far they lie apart ordinarily is therefore pooled over all weeks, and the interval of
a week's median follows from that: Student's t times the standard error of a median,
sqrt(pi / 2) s / sqrt(n) for normal errors in large samples (Kendall and Stuart, The
Advanced Theory of Statistics, vol. 1, sec. 10.12, from memory). One or two days have their
mean for median, whose error is smaller; the interval is then on the wide side.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy.special import stdtrit

from analysis.results import FloatArray
from analysis.trend import group_medians, pooled_by_day

_DAYS_A_WEEK = 7
_FEWEST_SPARE_DAYS = 4
"""Days beyond one a week that tell the scatter; with fewer there is no interval."""


@dataclass(frozen=True, slots=True)
class WeekMedians:
    """One row a week that has a day with a take; all (m,) arrays.

    ``monday`` is the proleptic ordinal of the week's first day. ``half_width`` is half
    of the median's 95 % interval, NaN where too few days tell. ``scatter`` is the pooled
    spread of the days of a week, NaN likewise.
    """

    monday: FloatArray
    median: FloatArray
    half_width: FloatArray
    day_count: FloatArray
    scatter: float


def week_medians(day: FloatArray, value: FloatArray) -> WeekMedians:
    """Give the median of every week.

    Parameters
    ----------
    day : (n,) array
        Proleptic ordinals of the practice days (:meth:`datetime.date.toordinal`).
    value : (n,) array
        The measure of each take, finite.

    Returns
    -------
    WeekMedians
        Empty arrays where there are no takes.

    Raises
    ------
    ValueError
        If the arrays differ in length, or a number is not finite.
    """
    days, values = pooled_by_day(day, value)
    # Ordinal 1, the first of January of the year 1, is a Monday.
    mondays = days - (days - 1) % _DAYS_A_WEEK
    weeks, member = np.unique(mondays, return_inverse=True)
    median = group_medians(values, member, weeks.size)
    count = np.bincount(member, minlength=weeks.size).astype(np.float64)
    scatter, freedom = _pooled_scatter(values, member, count)
    half = np.full(weeks.size, np.nan)
    if freedom >= _FEWEST_SPARE_DAYS:
        reach = float(stdtrit(freedom, 0.975)) * np.sqrt(np.pi / 2.0)
        half = reach * scatter / np.sqrt(count)
    return WeekMedians(weeks, median, half, count, scatter)


def _pooled_scatter(
    values: FloatArray, member: NDArray[np.intp], count: FloatArray
) -> tuple[float, int]:
    """Give the spread of days about the mean of their week, and its degrees of freedom."""
    freedom = int(values.size - count.size)
    if freedom < _FEWEST_SPARE_DAYS:
        return float("nan"), freedom
    means = np.bincount(member, weights=values, minlength=count.size) / count
    residual = values - means[member]
    return float(np.sqrt(np.sum(residual**2) / freedom)), freedom
