"""Dynamic time warping with gaps, in a band, coarse to fine, compiled.

Frames are compared by how unlike their harmony is (one minus the inner product of
unit or zero vectors, squared) plus a weighted distance of their attacks. A stretch that
has no counterpart in the other sequence (a false start, a repeated bar, talk at the
end) is passed over at a fixed price a frame instead of being forced onto something.
Only the band around the coarser path is computed, so that memory grows with length,
not with its square.

References
----------
M. Müller, *Fundamentals of Music Processing* (2015), ch. 3; S. Ewert, M. Müller
and P. Grosche, ICASSP 2009 (attack features beside chroma); S. B. Needleman and
C. D. Wunsch, J. Mol. Biol. 48 (1970) (gaps at a fixed price).
"""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from analysis.compiled import compiled
from analysis.stopping import StopQuestion, stop_if_asked

Frames = NDArray[np.float32]
Indices = NDArray[np.int64]

_CELLS_AT_ONCE = 4_000_000
LARGEST_FULL_TABLE = 20_000_000
BAND_S = 0.3
GAP_COST = 0.4
ATTACK_WEIGHT = 0.4
_FINEST_FULL_FACTOR = 5
_SIDE_WEIGHT = 1.5
_DIAGONAL_WEIGHT = 2.0
_DIAGONAL, _UP, _LEFT, _UP_GAP, _LEFT_GAP = 0, 1, 2, 3, 4


@dataclass(frozen=True, slots=True)
class WarpingPath:
    """A monotone path through two frame sequences.

    Attributes
    ----------
    a_frame, b_frame : (n,) arrays
        From the first frame of both to the last of both.
    is_gap : (n,) array
        Steps that pass over a frame without a counterpart.
    cost : (n,) array
        Distance of the two frames at each step; 0 is identity.
    """

    a_frame: Indices
    b_frame: Indices
    is_gap: NDArray[np.bool_]
    cost: NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class _Band:
    """Half-open range of columns for each row, both (n,) and non-decreasing."""

    low: Indices
    high: Indices


def coarse_to_fine_path(
    a: Frames,
    b: Frames,
    harmony_size: int,
    hop_s: float,
    *,
    should_stop: StopQuestion | None = None,
) -> WarpingPath:
    """Cheapest path between two sequences, refined level by level.

    Parameters
    ----------
    a, b : (n, d), (m, d) arrays
        ``harmony_size`` harmony columns, then attack columns; at least one row each.
    harmony_size : int
    hop_s : float
        Distance of two frames, seconds.
    should_stop : callable, optional
        Asked every few million cells.

    Returns
    -------
    WarpingPath
        In frames of the finest level.
    """
    factors = level_factors(a.shape[0], b.shape[0])
    path: WarpingPath | None = None
    previous = 1
    for factor in factors:
        coarse_a, coarse_b = pooled(a, factor, harmony_size), pooled(b, factor, harmony_size)
        rows, columns = coarse_a.shape[0], coarse_b.shape[0]
        if path is None:
            band = _Band(np.zeros(rows, np.int64), np.full(rows, columns, np.int64))
        else:
            scale = previous // factor
            radius = max(2 * scale, round(BAND_S / (hop_s * factor)))
            band = _band_around(path, scale, (rows, columns), radius)
        path = banded_path(
            coarse_a, coarse_b, harmony_size, band.low, band.high, should_stop=should_stop
        )
        previous = factor
    assert path is not None  # noqa: S101 - there is always at least one level
    return path


def level_factors(a_count: int, b_count: int) -> list[int]:
    """Pooling factors from coarse to fine; the coarsest fits a full table."""
    factors = [_FINEST_FULL_FACTOR, 1]
    while (a_count / factors[0]) * (b_count / factors[0]) > LARGEST_FULL_TABLE:
        factors.insert(0, factors[0] * 2)
    return factors


def pooled(frames: Frames, factor: int, harmony_size: int) -> Frames:
    """Average ``factor`` frames into one; harmony is brought back to unit length."""
    if factor == 1:
        return frames
    starts = np.arange(0, frames.shape[0], factor)
    counts = np.diff(np.append(starts, frames.shape[0]))
    mean = np.add.reduceat(frames, starts, axis=0) / counts[:, np.newaxis]
    harmony = mean[:, :harmony_size]
    length = np.linalg.norm(harmony, axis=1, keepdims=True)
    mean[:, :harmony_size] = np.where(length > 0.3, harmony / np.maximum(length, 1e-9), 0.0)
    return np.ascontiguousarray(mean, dtype=np.float32)


def banded_path(
    a: Frames,
    b: Frames,
    harmony_size: int,
    low: Indices,
    high: Indices,
    *,
    should_stop: StopQuestion | None = None,
) -> WarpingPath:
    """Cheapest path that stays inside a band.

    Parameters
    ----------
    a, b : (n, d), (m, d) arrays
    harmony_size : int
    low, high : (n,) arrays
        Half-open range of the columns of each row; both non-decreasing, the first
        row holding column 0 and the last one column ``m - 1``.
    should_stop : callable, optional
        Asked every few million cells.

    Returns
    -------
    WarpingPath
    """
    starts = np.concatenate((np.zeros(1, np.int64), np.cumsum(high - low)))
    steps = np.zeros(starts[-1], dtype=np.int8)
    costs = np.zeros(starts[-1], dtype=np.float32)
    totals = np.full((2, b.shape[0] + 1), np.inf)
    first = 0
    while first < a.shape[0]:
        stop_if_asked(should_stop)
        last = int(np.searchsorted(starts, starts[first] + _CELLS_AT_ONCE, side="right")) - 1
        last = min(max(last, first + 1), a.shape[0])
        _fill((a, b, harmony_size), (low, high, starts), (first, last), totals, (steps, costs))
        first = last
    a_frame, b_frame, is_gap, cost = _trace(steps, costs, low, starts)
    return WarpingPath(a_frame, b_frame, is_gap, cost)


def _band_around(path: WarpingPath, scale: int, shape: tuple[int, int], radius: int) -> _Band:
    """Columns around a coarser path, for every row of the finer table."""
    row = np.minimum(np.arange(shape[0]) // scale, path.a_frame[-1])
    first = np.searchsorted(path.a_frame, row, side="left")
    last = np.searchsorted(path.a_frame, row, side="right") - 1
    low = np.clip(path.b_frame[first] * scale - radius, 0, shape[1] - 1)
    high = np.clip((path.b_frame[last] + 1) * scale + radius, 1, shape[1])
    low[0], high[-1] = 0, shape[1]
    return _Band(low, np.maximum(high, low + 1))


@compiled
def _cost(a: Frames, b: Frames, i: int, j: int, harmony_size: int) -> float:
    """Distance of two frames."""
    similarity = 0.0
    for k in range(harmony_size):
        similarity += a[i, k] * b[j, k]
    distance = 0.0
    for k in range(harmony_size, a.shape[1]):
        difference = a[i, k] - b[j, k]
        distance += difference * difference
    # Squared, because a small difference says 'another player, another string', not
    # 'another note'; over a held note it must not outweigh an attack.
    unlike = 1.0 - similarity
    return unlike * unlike + ATTACK_WEIGHT * math.sqrt(distance)


@compiled
def _fill(
    sequences: tuple[Frames, Frames, int],
    band: tuple[Indices, Indices, Indices],
    rows: tuple[int, int],
    totals: NDArray[np.float64],
    cells: tuple[NDArray[np.int8], NDArray[np.float32]],
) -> None:
    """Best step into every cell of some rows, and the distance there.

    ``totals`` holds what the two rows before cost, the even row first.
    """
    a, b, harmony_size = sequences
    low, high, starts = band
    steps, costs = cells
    for i in range(rows[0], rows[1]):
        current, previous = totals[i % 2], totals[(i + 1) % 2]
        if i > 1:
            # What two rows ago left in this buffer must not be read as a neighbour.
            current[low[i - 2] + 1 : high[i - 2] + 1] = np.inf
        for j in range(low[i], high[i]):
            cell = starts[i] + j - low[i]
            cost = _cost(a, b, i, j, harmony_size)
            costs[cell] = cost
            if i == 0 and j == 0:
                current[1] = cost
                continue
            side = min(_SIDE_WEIGHT * cost, GAP_COST)
            is_gap = side < _SIDE_WEIGHT * cost
            best, step = previous[j] + _DIAGONAL_WEIGHT * cost, _DIAGONAL
            if previous[j + 1] + side < best:
                best, step = previous[j + 1] + side, _UP_GAP if is_gap else _UP
            if current[j] + side < best:
                best, step = current[j] + side, _LEFT_GAP if is_gap else _LEFT
            current[j + 1] = best
            steps[cell] = step


@compiled
def _trace(
    steps: NDArray[np.int8], costs: NDArray[np.float32], low: Indices, starts: Indices
) -> tuple[Indices, Indices, NDArray[np.bool_], NDArray[np.float64]]:
    """Follow the best steps back from the last cell."""
    i = low.shape[0] - 1
    j = low[i] + (starts[i + 1] - starts[i]) - 1
    length = i + j + 2
    a_frame = np.empty(length, dtype=np.int64)
    b_frame = np.empty(length, dtype=np.int64)
    is_gap = np.zeros(length, dtype=np.bool_)
    cost = np.empty(length)
    position = length
    while True:
        position -= 1
        cell = starts[i] + j - low[i]
        step = steps[cell]
        a_frame[position] = i
        b_frame[position] = j
        is_gap[position] = step in (_UP_GAP, _LEFT_GAP)
        cost[position] = costs[cell]
        if i == 0 and j == 0:
            break
        if step not in (_LEFT, _LEFT_GAP):
            i -= 1
        if step not in (_UP, _UP_GAP):
            j -= 1
    return a_frame[position:], b_frame[position:], is_gap[position:], cost[position:]
