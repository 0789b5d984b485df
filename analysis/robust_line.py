"""A straight line that single strays do not move: the median of the slopes of all pairs.

``scipy.stats`` has it too, but takes a second to load, which would be a good part of
measuring a first take; tests hold the two to each other.

References
----------
P. K. Sen, J. Am. Stat. Assoc. 63 (1968) 1379: the slope and its interval from the
variance of Kendall's statistic, equation 2.6 (ties included).
"""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy import special

FloatArray = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class RobustSlope:
    """Slope of a Theil-Sen line and the bounds of its 95 % interval, in y a unit of x."""

    slope: float
    low: float
    high: float


def robust_slope(x: FloatArray, y: FloatArray) -> RobustSlope:
    """Fit a Theil-Sen line.

    Parameters
    ----------
    x : (n,) array
        Ascending, no two alike; at least two.
    y : (n,) array

    Returns
    -------
    RobustSlope
        The interval is the large-sample one, of independent errors.

    Raises
    ------
    ValueError
        If there are fewer than two points, or the arrays differ in length.
    """
    if x.size < 2 or x.shape != y.shape:
        raise ValueError("a line needs two points, and a y for every x")
    slopes = pair_slopes(x, y)
    reach = -float(special.ndtri(0.05 / 2)) * math.sqrt(_kendall_variance(y))
    below = max(round((slopes.size - reach) / 2) - 1, 0)
    above = min(round((slopes.size + reach) / 2), slopes.size - 1)
    return RobustSlope(float(np.median(slopes)), float(slopes[below]), float(slopes[above]))


def pair_slopes(x: FloatArray, y: FloatArray) -> FloatArray:
    """Give the slopes between all pairs of points, ascending.

    Parameters
    ----------
    x : (n,) array
        Ascending, no two alike.
    y : (n,) array

    Returns
    -------
    (n (n - 1) / 2,) array
    """
    first, second = np.triu_indices(x.size, 1)
    return np.asarray(np.sort((y[second] - y[first]) / (x[second] - x[first])), dtype=np.float64)


def _kendall_variance(y: FloatArray) -> float:
    """Variance of Kendall's statistic without any trend; ties in ``y`` take from it."""
    counts = np.unique(y, return_counts=True)[1].tolist()
    return (_weight(y.size) - sum(_weight(count) for count in counts)) / 18.0


def _weight(count: int) -> int:
    return count * (count - 1) * (2 * count + 5)
