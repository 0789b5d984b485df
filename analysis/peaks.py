"""Finding the peaks of a curve.

As ``scipy.signal.find_peaks`` does, to which tests hold it; why that is not used is said in
:mod:`analysis.filters`.
"""

import numpy as np
from numpy.typing import NDArray

from analysis.compiled import compiled

FloatArray = NDArray[np.float64]
IntArray = NDArray[np.int64]


def find_peaks(
    curve: FloatArray,
    *,
    height: float | None = None,
    distance: int = 1,
    prominence: float | None = None,
) -> IntArray:
    """Find where a curve is higher than on both sides.

    Parameters
    ----------
    curve : (n,) array
        Finite.
    height : float, optional
        Lowest peak that counts.
    distance : int
        Of peaks less far apart than this the higher ones stay.
    prominence : float, optional
        How far the curve has to fall on both sides before it is higher again, or ends.

    Returns
    -------
    (m,) array of int
        Ascending; of a flat top its middle. The curve's ends are no peaks.
    """
    values = np.ascontiguousarray(curve, dtype=np.float64)
    peaks = _tops(values)
    if height is not None:
        peaks = peaks[values[peaks] >= height]
    if distance > 1 and peaks.size > 1:
        peaks = peaks[_far_enough(peaks, np.argsort(values[peaks]), distance)]
    if prominence is not None:
        peaks = peaks[_prominences(values, peaks) >= prominence]
    return peaks


def _tops(curve: FloatArray) -> IntArray:
    """Middle of every stretch of one value that is higher than what is before and behind it."""
    first = np.concatenate(([0], np.flatnonzero(curve[1:] != curve[:-1]) + 1))
    level = curve[first]
    top = 1 + np.flatnonzero((level[1:-1] > level[:-2]) & (level[1:-1] > level[2:]))
    return np.asarray((first[top] + first[top + 1] - 1) // 2, dtype=np.int64)


@compiled
def _far_enough(peaks: IntArray, by_height: IntArray, distance: int) -> NDArray[np.bool_]:
    """Drop the neighbours of each peak that stays, from the highest down."""
    stays = np.ones(peaks.size, dtype=np.bool_)
    for here in by_height[::-1]:
        if not stays[here]:
            continue
        for step in (-1, 1):
            other = here + step
            while 0 <= other < peaks.size and abs(peaks[other] - peaks[here]) < distance:
                stays[other] = False
                other += step
    return stays


@compiled
def _prominences(curve: FloatArray, peaks: IntArray) -> FloatArray:
    """How far the curve falls beside each peak, on the side where it falls less."""
    found = np.empty(peaks.size)
    for number in range(peaks.size):
        top = curve[peaks[number]]
        saddle = -np.inf
        for step in (-1, 1):
            lowest = top
            place = peaks[number]
            while 0 <= place < curve.size and curve[place] <= top:
                lowest = min(lowest, curve[place])
                place += step
            saddle = max(saddle, lowest)
        found[number] = top - saddle
    return found
