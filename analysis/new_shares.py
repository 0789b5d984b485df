"""How much of each moment around an attack is the new note, and where that begins to rise.

Compiled, because it is asked for every note of two takes.
"""

import math
from typing import Final

import numpy as np
from numpy.typing import NDArray

from analysis.compiled import compiled, compiled_for_sums
from analysis.results import FloatArray

Rows = NDArray[np.float32]

HOP_S: Final = 0.004
EARLIEST_S: Final = 0.2
LATEST_S: Final = 0.1
FURTHEST_APART_S: Final = 0.08
LOW_SHARE, HIGH_SHARE = 0.12, 0.3
BACK_OF_RAMP: Final = 0.4
_RISEN_SHARE: Final = 0.6
_ALIKE: Final = 0.9
# In hops.
_EARLIEST, _LATEST = round(EARLIEST_S / HOP_S), round(LATEST_S / HOP_S)
_REACH: Final = round(FURTHEST_APART_S / HOP_S)
_MIDDLE, _OLD_ENDS, _TEMPLATE, _EDGE = 15, 25, 62, 5
_STEP: Final = 4
_FULL: Final = 8


@compiled
def rising_share(rows: Rows, first: int, before: float, after: float, start: int) -> FloatArray:
    """How much of each moment around a start is the new note.

    Parameters
    ----------
    rows : (n, bins) array
        Spectra, a hop apart; the first and the last stand for what lies beyond them.
    first : int
        Hop of the first row.
    before, after : float
        Hops at which the note before began, and the one after does.
    start : int
        Hop at which the note begins, as far as is known.

    Returns
    -------
    (76,) array
        From 0.2 s before ``start`` to 0.1 s after it; empty where nobody can tell, because
        the note before sounds alike.
    """
    new_first = min(start + _MIDDLE, (start + after) / 2)
    new = _mean(rows, first, new_first, min(after - _EDGE, start + _TEMPLATE))
    old_last = max(start - _OLD_ENDS, (before + start) / 2)
    old = _mean(rows, first, max(before + _EDGE, start - _TEMPLATE), old_last)
    both, of_new, of_old = _product(new, old), _product(new, new), _product(old, old)
    if both > _ALIKE * max(math.sqrt(of_new * of_old), 1e-30):
        return np.empty(0)
    determinant = max(of_new * of_old - both**2, 1e-12 * of_new * of_old + 1e-30)
    share = np.zeros(_EARLIEST + _LATEST + 1)
    for place in range(share.size):
        hop = start - _EARLIEST + place
        if hop < max(before + _EDGE, first):
            continue
        row = rows[_index(rows, first, hop)]
        by_new, by_old = _product(row, new), _product(row, old)
        # Some of each, none of which may be less than nothing.
        if of_old * by_new < both * by_old:
            continue
        if of_new * by_old < both * by_new:
            share[place] = by_new / max(of_new, 1e-30)
        else:
            share[place] = (of_old * by_new - both * by_old) / determinant
    return share


@compiled
def _mean(rows: Rows, first: int, begin: float, end: float) -> Rows:
    """Mean spectrum of a stretch, of its middle where it is short."""
    if end - begin < _STEP:
        begin = end = (begin + max(begin, end)) / 2
    mean = np.zeros(rows.shape[1], dtype=np.float32)
    count = 0
    while begin + count * _STEP < end + 0.5:
        mean += rows[_index(rows, first, round(begin + count * _STEP))]
        count += 1
    return mean / np.float32(count)


@compiled
def _index(rows: Rows, first: int, hop: int) -> int:
    return int(min(max(hop - first, 0), rows.shape[0] - 1))


@compiled_for_sums
def _product(first: Rows, second: Rows) -> float:
    total = np.float32(0.0)
    for k in range(first.shape[0]):
        total += first[k] * second[k]
    return float(total)


@compiled
def offset_between(first: FloatArray, second: FloatArray) -> float:
    """By how many places a rise lies later in the second of two curves, parts of one included.

    Parameters
    ----------
    first, second : (n,) arrays
        Shares that rise to about 1.

    Returns
    -------
    float
        Where the two differ least, at most 0.08 s either way.
    """
    one, other = _to_full(first), _to_full(second)
    difference = np.empty(2 * _REACH + 1)
    for lag in range(-_REACH, _REACH + 1):
        begin, end = max(-lag, 0), one.size - max(lag, 0)
        squares = 0.0
        for place in range(begin, end):
            squares += (one[place] - other[place + lag]) ** 2
        difference[lag + _REACH] = squares / (end - begin)
    best = int(np.argmin(difference))
    if best in (0, difference.size - 1):
        return float(best - _REACH)
    left, middle, right = difference[best - 1], difference[best], difference[best + 1]
    bend = left - 2 * middle + right
    return best - _REACH + (0.5 * (left - right) / bend if bend > 0 else 0.0)


@compiled
def _to_full(curve: FloatArray) -> FloatArray:
    """Give a curve that ends at about 1, nothing of it above or under 0."""
    full = max(float(np.median(curve[-_FULL:])), 1e-9)
    return np.minimum(np.maximum(curve / full, 0.0), 1.0)


@compiled
def ramp_start(share: FloatArray) -> float:
    """Where a rising share begins: its early part, run back to nothing; NaN if it never rises."""
    middle = int(np.argmax(share >= _RISEN_SHARE * np.max(share)))
    # Where the two notes have partials in common, some of the new one seems to sound before.
    least = float(np.min(share[: middle + 1]))
    height = float(np.max(share)) - least
    low = _last_below(share, middle, least + LOW_SHARE * height)
    high = _last_below(share, middle, least + HIGH_SHARE * height)
    return low - BACK_OF_RAMP * (high - low) - _EARLIEST


@compiled
def _last_below(value: FloatArray, before: int, level: float) -> float:
    """Last crossing of a level before an index, by straight lines; NaN where there is none."""
    place = before
    while place >= 0 and not value[place] < level:
        place -= 1
    if place < 0 or place + 1 >= value.size:
        return math.nan
    return float(place + (level - value[place]) / (value[place + 1] - value[place]))
