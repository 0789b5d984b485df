"""Dynamic time warping in a band, coarse to fine, compiled.

Frames are compared by one minus the inner product of their (unit or zero)
harmony vectors plus a weighted distance of their attack vectors. Only the band
around the coarser path is computed, so that memory grows with length, not with
its square.

References
----------
M. Müller, *Fundamentals of Music Processing* (2015), ch. 3; S. Ewert, M. Müller
and P. Grosche, ICASSP 2009 (attack features beside chroma).
"""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from analysis.compiled import compiled

Frames = NDArray[np.float32]
Indices = NDArray[np.int64]

LARGEST_FULL_TABLE = 9_000_000
BAND_S = 0.6
_SIDE_WEIGHT = 1.5
_DIAGONAL_WEIGHT = 2.0
_DIAGONAL, _UP, _LEFT = 0, 1, 2


@dataclass(frozen=True, slots=True)
class WarpingPath:
    """A monotone path through two frame sequences.

    Attributes
    ----------
    a_frame, b_frame : (n,) arrays
        From the first frame of both to the last of both.
    mean_cost : float
        Mean cost a step; 0 is identity.
    """

    a_frame: Indices
    b_frame: Indices
    mean_cost: float


def coarse_to_fine_path(
    a: Frames, b: Frames, harmony_size: int, attack_weight: float, hop_s: float
) -> WarpingPath:
    """Cheapest path between two sequences, refined level by level.

    Parameters
    ----------
    a, b : (n, d), (m, d) arrays
        ``harmony_size`` harmony columns, then attack columns.
    harmony_size : int
    attack_weight : float
        Weight of the attack distance against the harmony distance.
    hop_s : float
        Distance of two frames, seconds.

    Returns
    -------
    WarpingPath
        In frames of the finest level.
    """
    factors = _level_factors(a.shape[0], b.shape[0])
    low = np.zeros(0, dtype=np.int64)
    high = low
    path: WarpingPath | None = None
    previous = 0
    for factor in factors:
        coarse_a, coarse_b = pooled(a, factor, harmony_size), pooled(b, factor, harmony_size)
        if path is None:
            low = np.zeros(coarse_a.shape[0], dtype=np.int64)
            high = np.full(coarse_a.shape[0], coarse_b.shape[0], dtype=np.int64)
        else:
            radius = max(4, round(max(BAND_S / (hop_s * factor) / 4, 1.5 * previous / factor)))
            low, high = _band(
                path, previous // factor, coarse_a.shape[0], coarse_b.shape[0], radius
            )
        path = banded_path(coarse_a, coarse_b, harmony_size, attack_weight, low, high)
        previous = factor
    assert path is not None  # noqa: S101 (there is always at least one level)
    return path


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


def banded_path(  # noqa: PLR0917
    a: Frames, b: Frames, harmony_size: int, attack_weight: float, low: Indices, high: Indices
) -> WarpingPath:
    """Cheapest path that stays inside a band.

    Parameters
    ----------
    a, b : (n, d), (m, d) arrays
    harmony_size, attack_weight
        As in :func:`coarse_to_fine_path`.
    low, high : (n,) arrays
        Half-open range of the columns of each row; both non-decreasing, the first
        row holding column 0 and the last one column ``m - 1``.

    Returns
    -------
    WarpingPath
    """
    starts = np.concatenate(([0], np.cumsum(high - low)))
    steps, total = _fill(a, b, harmony_size, attack_weight, low, high, starts)
    a_frame, b_frame = _trace(steps, low, starts)
    weight = a.shape[0] + b.shape[0]
    return WarpingPath(a_frame, b_frame, float(total) / weight)


def _level_factors(a_count: int, b_count: int) -> list[int]:
    """Pooling factors from coarse to fine; the coarsest fits a full table."""
    factor = 5
    while (a_count / factor) * (b_count / factor) > LARGEST_FULL_TABLE:
        factor *= 2
    factors = [factor]
    while factors[-1] > 5:
        factors.append(max(5, factors[-1] // 4 if factors[-1] % 20 == 0 else factors[-1] // 2))
    return [*factors, 1]


def _band(
    path: WarpingPath, scale: int, a_count: int, b_count: int, radius: int
) -> tuple[Indices, Indices]:
    """Columns around a coarser path, for every row of the finer table."""
    row = np.minimum(np.arange(a_count) // scale, path.a_frame[-1])
    first = np.searchsorted(path.a_frame, row, side="left")
    last = np.searchsorted(path.a_frame, row, side="right") - 1
    low = path.b_frame[first] * scale - radius
    high = (path.b_frame[last] + 1) * scale + radius
    low = np.clip(low, 0, b_count - 1)
    high = np.clip(high, 1, b_count)
    low[0] = 0
    high[-1] = b_count
    return np.maximum.accumulate(low), np.maximum(np.maximum.accumulate(high), low + 1)


@compiled
def _cost(  # noqa: PLR0917
    a: Frames, b: Frames, i: int, j: int, harmony_size: int, attack_weight: float
) -> float:
    """Distance of two frames."""
    similarity = 0.0
    for k in range(harmony_size):
        similarity += a[i, k] * b[j, k]
    distance = 0.0
    for k in range(harmony_size, a.shape[1]):
        difference = a[i, k] - b[j, k]
        distance += difference * difference
    return 1.0 - similarity + attack_weight * math.sqrt(distance)


@compiled
def _fill(  # noqa: PLR0917
    a: Frames,
    b: Frames,
    harmony_size: int,
    attack_weight: float,
    low: Indices,
    high: Indices,
    starts: Indices,
) -> tuple[NDArray[np.int8], float]:
    """Best step into every cell of the band, and the cost of the last cell."""
    steps = np.zeros(starts[-1], dtype=np.int8)
    previous = np.full(b.shape[0] + 1, np.inf)
    current = np.full(b.shape[0] + 1, np.inf)
    for i in range(a.shape[0]):
        if i > 0:
            # Cells of two rows ago must not be read as neighbours.
            for j in range(low[max(0, i - 2)], high[i]):
                current[j + 1] = np.inf
        for j in range(low[i], high[i]):
            cost = _cost(a, b, i, j, harmony_size, attack_weight)
            diagonal = previous[j] + _DIAGONAL_WEIGHT * cost
            up = previous[j + 1] + _SIDE_WEIGHT * cost
            left = current[j] + _SIDE_WEIGHT * cost
            if i == 0 and j == 0:
                current[1] = cost
                continue
            best = diagonal
            step = _DIAGONAL
            if up < best:
                best = up
                step = _UP
            if left < best:
                best = left
                step = _LEFT
            current[j + 1] = best
            steps[starts[i] + j - low[i]] = step
        previous, current = current, previous
    return steps, float(previous[b.shape[0]])


@compiled
def _trace(steps: NDArray[np.int8], low: Indices, starts: Indices) -> tuple[Indices, Indices]:
    """Follow the best steps back from the last cell."""
    count = low.shape[0]
    i = count - 1
    j = low[i] + (starts[i + 1] - starts[i]) - 1
    length = i + j + 2
    a_frame = np.empty(length, dtype=np.int64)
    b_frame = np.empty(length, dtype=np.int64)
    position = length
    while True:
        position -= 1
        a_frame[position] = i
        b_frame[position] = j
        if i == 0 and j == 0:
            break
        step = steps[starts[i] + j - low[i]]
        if i == 0:
            step = _LEFT
        elif j == 0:
            step = _UP
        if step != _LEFT:
            i -= 1
        if step != _UP:
            j -= 1
    return a_frame[position:], b_frame[position:]
