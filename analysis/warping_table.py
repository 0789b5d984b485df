"""The table of a warping path: gaps at a price, in a band, compiled.

Three states share a cell: both go on together, only a goes on, or only b does. To begin a
stretch that only one plays has a price of its own, so that a skipped bar is one stretch and
not many between notes that happen to be alike.

References
----------
M. Müller, *Fundamentals of Music Processing* (2015), ch. 3; S. B. Needleman and
C. D. Wunsch, J. Mol. Biol. 48 (1970) (gaps at a fixed price); O. Gotoh, J. Mol. Biol. 162
(1982) (a price for each gap beside that of its length, in three states).
"""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from analysis.compiled import compiled
from analysis.stopping import StopQuestion, stop_if_asked

Frames = NDArray[np.float32]
Indices = NDArray[np.int64]

GAP_COST = 0.4
ATTACK_WEIGHT = 0.4
_CELLS_AT_ONCE = 4_000_000
_SIDE_WEIGHT = 1.5
_DIAGONAL_WEIGHT = 2.0
_TOGETHER, _ONLY_A, _ONLY_B = 0, 1, 2
# How both came together, in the low bits of a step: the way, and from which state; then
# whether the other two states go on.
_DIAGONAL, _UP, _LEFT = 0, 3, 6
_WAYS, _A_WENT_ON, _B_WENT_ON, _B_AFTER_A = 15, 16, 32, 64


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
class Band:
    """Half-open range of columns for each row, both (n,) and non-decreasing."""

    low: Indices
    high: Indices


@dataclass(frozen=True, slots=True)
class Prices:
    """What a path pays beside the unlikeness of frames.

    ``gap_opening_s`` is paid for each stretch that only one plays, as seconds of a price of
    1 a frame; ``hold`` for each frame one of the two waits, once both are at one tempo.
    """

    gap_opening_s: float = 0.0
    hold: float = 0.0


PLAIN = Prices()


def banded_path(
    a: Frames,
    b: Frames,
    harmony_size: int,
    band: Band,
    prices: Prices = PLAIN,
    *,
    should_stop: StopQuestion | None = None,
) -> WarpingPath:
    """Cheapest path that stays inside a band.

    Parameters
    ----------
    a, b : (n, d), (m, d) arrays
    harmony_size : int
    band : Band
        The first row holds column 0 and the last one column ``m - 1``.
    prices : Prices
        With ``gap_opening_s`` in frames.
    should_stop : callable, optional
        Asked every few million cells.

    Returns
    -------
    WarpingPath
    """
    low, high = band.low, band.high
    starts = np.concatenate((np.zeros(1, np.int64), np.cumsum(high - low)))
    steps = np.zeros(starts[-1], dtype=np.int8)
    costs = np.zeros(starts[-1], dtype=np.float32)
    totals = np.full((2, 3, b.shape[0] + 1), np.inf)
    b_columns = np.ascontiguousarray(b.T)
    first = 0
    while first < a.shape[0]:
        stop_if_asked(should_stop)
        last = int(np.searchsorted(starts, starts[first] + _CELLS_AT_ONCE, side="right")) - 1
        last = min(max(last, first + 1), a.shape[0])
        _fill(
            (a, b_columns, harmony_size),
            (low, high, starts),
            (first, last),
            (totals, steps, costs),
            (prices.gap_opening_s, prices.hold),
        )
        first = last
    state = int(np.argmin(totals[(a.shape[0] - 1) % 2, :, b.shape[0]]))
    a_frame, b_frame, is_gap, cost = _trace(steps, costs, low, starts, state)
    return WarpingPath(a_frame, b_frame, is_gap, cost)


@compiled
def _fill_costs(
    sequences: tuple[Frames, Frames, int], i: int, low: int, costs: NDArray[np.float32]
) -> None:
    """Distances of one frame of a to as many of b as ``costs`` holds, from ``low`` on.

    Columns of b lie side by side, so that the processor works on several at a time.
    """
    a, b_columns, harmony_size = sequences
    count = costs.shape[0]
    alike, apart = np.zeros(count), np.zeros(count)
    for k in range(harmony_size):
        own, column = a[i, k], b_columns[k, low : low + count]
        for j in range(count):
            alike[j] += own * column[j]
    for k in range(harmony_size, a.shape[1]):
        own, column = a[i, k], b_columns[k, low : low + count]
        for j in range(count):
            difference = own - column[j]
            apart[j] += difference * difference
    # Squared, because a small difference says 'another player, another string', not
    # 'another note'; over a held note it must not outweigh an attack.
    for j in range(count):
        unlike = 1.0 - alike[j]
        costs[j] = unlike * unlike + ATTACK_WEIGHT * math.sqrt(apart[j])


@compiled
def _fill(
    sequences: tuple[Frames, Frames, int],
    band: tuple[Indices, Indices, Indices],
    rows: tuple[int, int],
    tables: tuple[NDArray[np.float64], NDArray[np.int8], NDArray[np.float32]],
    prices: tuple[float, float],
) -> None:
    """Best step into every cell of some rows, in each state, and the distance there.

    ``totals`` holds by state what the two rows before cost, the even row first.
    """
    low, high, starts = band
    totals, steps, costs = tables
    opening, hold = prices
    for i in range(rows[0], rows[1]):
        current, previous = totals[i % 2], totals[(i + 1) % 2]
        if i > 1:
            # What two rows ago left in this buffer must not be read as a neighbour.
            current[:, low[i - 2] + 1 : high[i - 2] + 1] = np.inf
        _fill_costs(sequences, i, low[i], costs[starts[i] : starts[i + 1]])
        for j in range(low[i], high[i]):
            cell = starts[i] + j - low[i]
            cost = costs[cell]
            if i == 0 and j == 0:
                current[_TOGETHER, 1] = cost
                continue
            # Together: both go on, or one holds what the other has reached; a gap may end here.
            side = _SIDE_WEIGHT * cost + hold
            best, step = np.inf, 0
            for state in (_TOGETHER, _ONLY_A, _ONLY_B):
                if previous[state, j] + _DIAGONAL_WEIGHT * cost < best:
                    best = previous[state, j] + _DIAGONAL_WEIGHT * cost
                    step = _DIAGONAL + state
                if previous[state, j + 1] + side < best:
                    best, step = previous[state, j + 1] + side, _UP + state
                if current[state, j] + side < best:
                    best, step = current[state, j] + side, _LEFT + state
            current[_TOGETHER, j + 1] = best
            # Only a goes on.
            best = previous[_TOGETHER, j + 1] + opening
            if previous[_ONLY_A, j + 1] <= best:
                best = previous[_ONLY_A, j + 1]
                step += _A_WENT_ON
            current[_ONLY_A, j + 1] = best + GAP_COST
            # Only b goes on; what both play otherwise counts as one stretch.
            best = current[_TOGETHER, j] + opening
            if current[_ONLY_B, j] <= best:
                best = current[_ONLY_B, j]
                step += _B_WENT_ON
            if current[_ONLY_A, j] < best:
                best = current[_ONLY_A, j]
                step += _B_AFTER_A - (step & _B_WENT_ON)
            current[_ONLY_B, j + 1] = best + GAP_COST
            steps[cell] = step


@compiled
def _trace(
    steps: NDArray[np.int8],
    costs: NDArray[np.float32],
    low: Indices,
    starts: Indices,
    state: int,
) -> tuple[Indices, Indices, NDArray[np.bool_], NDArray[np.float64]]:
    """Follow the best steps back from a state of the last cell."""
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
        is_gap[position] = state != _TOGETHER
        cost[position] = costs[cell]
        if i == 0 and j == 0:
            break
        if state == _ONLY_A:
            i -= 1
            state = _ONLY_A if step & _A_WENT_ON else _TOGETHER
        elif state == _ONLY_B:
            j -= 1
            if step & _B_AFTER_A:
                state = _ONLY_A
            elif not step & _B_WENT_ON:
                state = _TOGETHER
        else:
            way = step & _WAYS
            if way < _LEFT:
                i -= 1
            if way < _UP or way >= _LEFT:
                j -= 1
            state = way % 3
    return a_frame[position:], b_frame[position:], is_gap[position:], cost[position:]
