"""Dynamic time warping with gaps, coarse to fine.

Frames are compared by how unlike their harmony is (one minus the inner product of
unit or zero vectors, squared) plus a weighted distance of their attacks. A stretch that
has no counterpart in the other sequence (a false start, a repeated bar, talk at the
end) is passed over at a price instead of being forced onto something. Only the band
around the coarser path is computed, so that memory grows with length, not with its square.

References
----------
S. Ewert, M. Müller and P. Grosche, ICASSP 2009 (attack features beside chroma).
"""

import numpy as np

from analysis.stopping import StopQuestion
from analysis.warping_table import (
    PLAIN,
    Band,
    Frames,
    Indices,
    Prices,
    WarpingPath,
    banded_path,
)

LARGEST_FULL_TABLE = 20_000_000
BAND_S = 0.3
LARGEST_RATIO = 3.3
_RATIO_OVER_S = 2.0
_ROUGHER = 2
_FINEST_FULL_FACTOR = 5


def coarse_to_fine_path(
    a: Frames,
    b: Frames,
    harmony_size: int,
    hop_s: float,
    *,
    prices: Prices = PLAIN,
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
    prices : Prices
        What it costs beyond unlike frames to leave the usual course of both.
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
        at_factor = Prices(prices.gap_opening_s / (hop_s * factor), prices.hold)
        if path is None:
            path = _coarsest((a, b, harmony_size), factor, hop_s, at_factor, should_stop)
        else:
            coarse_a, coarse_b = pooled(a, factor, harmony_size), pooled(b, factor, harmony_size)
            scale = previous // factor
            radius = max(2 * scale, round(BAND_S / (hop_s * factor)))
            band = _band_around(path, scale, (coarse_a.shape[0], coarse_b.shape[0]), radius)
            # A band is too narrow to avoid a held note in, so none has a price.
            only_gaps = Prices(at_factor.gap_opening_s)
            path = banded_path(
                coarse_a, coarse_b, harmony_size, band, only_gaps, should_stop=should_stop
            )
        previous = factor
    assert path is not None  # noqa: S101 - there is always at least one level
    return path


def _coarsest(
    sequences: tuple[Frames, Frames, int],
    factor: int,
    hop_s: float,
    prices: Prices,
    should_stop: StopQuestion | None,
) -> WarpingPath:
    """Cheapest path in frames pooled by ``factor``, which decides what only one plays.

    Where to hold has a price, the slower of the two is brought to the tempo of the other
    first, which a still coarser path tells. Then to hold a frame is the exception: a bar that
    only one plays is not spread over the long notes around it.
    """
    a, b, _ = sequences
    by_a = by_b = float(factor)
    if prices.hold:
        rough = factor * _ROUGHER
        gaps = Prices(prices.gap_opening_s / _ROUGHER)
        path = _full_path(sequences, (rough, rough), gaps, should_stop)
        ratio = usual_ratio(path, round(_RATIO_OVER_S / (hop_s * rough)))
        by_a, by_b = factor / min(ratio, 1.0), factor * max(ratio, 1.0)
    found = _full_path(sequences, (by_a, by_b), prices, should_stop)
    a_frame = pool_starts(a.shape[0], by_a)[found.a_frame] // factor
    b_frame = pool_starts(b.shape[0], by_b)[found.b_frame] // factor
    return WarpingPath(a_frame, b_frame, found.is_gap, found.cost)


def _full_path(
    sequences: tuple[Frames, Frames, int],
    factors: tuple[float, float],
    prices: Prices,
    should_stop: StopQuestion | None,
) -> WarpingPath:
    a, b, harmony_size = sequences
    even_a, even_b = pooled(a, factors[0], harmony_size), pooled(b, factors[1], harmony_size)
    rows, columns = even_a.shape[0], even_b.shape[0]
    band = Band(np.zeros(rows, np.int64), np.full(rows, columns, np.int64))
    return banded_path(even_a, even_b, harmony_size, band, prices, should_stop=should_stop)


def usual_ratio(path: WarpingPath, over: int) -> float:
    """How much longer b usually takes than a where both go on, 0.3 to 3.3."""
    gaps = np.concatenate(([0], np.cumsum(path.is_gap)))
    first = np.searchsorted(path.a_frame, np.arange(0, path.a_frame[-1] - over, max(over // 4, 1)))
    last = np.searchsorted(path.a_frame, path.a_frame[first] + over) if first.size else first
    whole = gaps[last] == gaps[first]
    first, last = first[whole], last[whole]
    if not first.size:
        return 1.0
    slope = (path.b_frame[last] - path.b_frame[first]) / (path.a_frame[last] - path.a_frame[first])
    return float(np.clip(np.median(slope), 1 / LARGEST_RATIO, LARGEST_RATIO))


def level_factors(a_count: int, b_count: int) -> list[int]:
    """Pooling factors from coarse to fine; the coarsest fits a full table."""
    factors = [_FINEST_FULL_FACTOR, 1]
    while (a_count / factors[0]) * (b_count / factors[0]) > LARGEST_FULL_TABLE:
        factors.insert(0, factors[0] * 2)
    return factors


def pool_starts(count: int, factor: float) -> Indices:
    """First frame of each that pooling makes."""
    starts: Indices = np.rint(np.arange(0, count, factor)).astype(np.int64)
    return np.asarray(starts[starts < count])


def pooled(frames: Frames, factor: float, harmony_size: int) -> Frames:
    """Average ``factor`` frames into one; harmony is brought back to unit length."""
    if factor == 1:
        return frames
    starts = pool_starts(frames.shape[0], factor)
    counts = np.diff(np.append(starts, frames.shape[0]))
    mean = np.add.reduceat(frames, starts, axis=0) / counts[:, np.newaxis]
    harmony = mean[:, :harmony_size]
    length = np.linalg.norm(harmony, axis=1, keepdims=True)
    mean[:, :harmony_size] = np.where(length > 0.3, harmony / np.maximum(length, 1e-9), 0.0)
    return np.ascontiguousarray(mean, dtype=np.float32)


def _band_around(path: WarpingPath, scale: int, shape: tuple[int, int], radius: int) -> Band:
    """Columns around a coarser path, for every row of the finer table."""
    row = np.minimum(np.arange(shape[0]) // scale, path.a_frame[-1])
    first = np.searchsorted(path.a_frame, row, side="left")
    last = np.searchsorted(path.a_frame, row, side="right") - 1
    low = np.clip(path.b_frame[first] * scale - radius, 0, shape[1] - 1)
    high = np.clip((path.b_frame[last] + 1) * scale + radius, 1, shape[1])
    low[0], high[-1] = 0, shape[1]
    return Band(low, np.maximum(high, low + 1))
