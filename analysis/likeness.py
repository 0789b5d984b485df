"""Which of several passages a take is, or none of them.

Every passage is held against the take as a whole; a confidence comes from how much
better the best one fits than the others, and than music that is none of them.
"""

import math
from collections.abc import Hashable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Generic, TypeVar

import numpy as np

from analysis.matched_path import MATCHED_COST
from analysis.outline import STEP_S, Outline
from analysis.stopping import StopQuestion, stop_if_asked
from analysis.warping import pooled
from analysis.warping_table import GAP_COST, Band, Frames, WarpingPath, banded_path

ALGORITHM = "likeness-2"
NONE_DISTANCE = 0.07
SHARPNESS = 100.0
EVEN, MOST_UNEVEN, UNEVEN_WEIGHT = 0.15, 0.6, 0.1
LEAST_CONFIDENCE = 0.7
MOST_CONFIDENCE = 0.99  # of 50 answers above 0.97 one was wrong on seeds not tuned on
SHORTEST_S = 2.0
MOST_CELLS = 4_000_000
_RATIO_OVER_S, _LEAST_RATIO, _FEWEST_MATCHED = 0.8, 0.1, 20

K = TypeVar("K", bound=Hashable)


@dataclass(frozen=True, slots=True)
class Proposal(Generic[K]):
    """Which passage a take is.

    Attributes
    ----------
    key : the passage, or ``None`` for none of them
    confidence : float
        0 to 1, that of the answer, be it a passage or none of them.
    ranked : tuple of (key, confidence, distance)
        All passages, the likeliest first.
    """

    key: K | None
    confidence: float
    ranked: tuple[tuple[K, float, float], ...]


def distance(
    take: Outline, reference: Outline, *, should_stop: StopQuestion | None = None
) -> float:
    """How unlike a passage a take is: 0 for the same harmony in the same rhythm.

    The mean cost of the take's rows on the best path through some of the reference; a row that
    finds no counterpart costs as much as a gap. Another rhythm shows in a path that
    jumps ahead and waits, which no rubato does from note to note. A take of one part of
    the passage is like it, a passage that is one part of the take is not.
    """
    pooling = math.ceil(math.sqrt(take.frames.shape[0] * reference.frames.shape[0] / MOST_CELLS))
    path, rows = _path_within(take.frames, reference.frames, pooling, should_stop)
    cost = np.full(rows, np.inf)
    np.minimum.at(cost, path.a_frame, np.where(path.is_gap, GAP_COST, path.cost))
    uneven = min(_unevenness(path, rows, STEP_S * pooling), MOST_UNEVEN) - EVEN
    return float(np.mean(np.minimum(cost, GAP_COST))) + UNEVEN_WEIGHT * max(0.0, uneven)


def _path_within(
    take: Frames, reference: Frames, pooling: int, should_stop: StopQuestion | None
) -> tuple[WarpingPath, int]:
    """Cheapest path of a take through some part of a reference, and the take's rows.

    A row before the take and one after it are like anything, by a column of their own: what
    of the reference lies beyond the take waits on them at no price.
    """
    size = take.shape[1]
    short, whole = pooled(take, pooling, size), pooled(reference, pooling, size)
    rows, columns = short.shape[0] + 2, whole.shape[0]
    framed = np.zeros((rows, size + 1), dtype=np.float32)
    framed[1:-1, :size] = short
    framed[[0, -1], size] = 1.0
    beside = np.hstack((whole, np.ones((columns, 1), dtype=np.float32)))
    everywhere = Band(np.zeros(rows, np.int64), np.full(rows, columns, np.int64))
    path = banded_path(framed, beside, size + 1, everywhere, should_stop=should_stop)
    own = (path.a_frame > 0) & (path.a_frame < rows - 1)
    inside = WarpingPath(path.a_frame[own] - 1, path.b_frame[own], path.is_gap[own], path.cost[own])
    return inside, rows - 2


def _unevenness(path: WarpingPath, rows: int, step_s: float) -> float:
    """How much the ratio of the two tempos ordinarily differs from itself, as a logarithm.

    Rubato changes it little from one note to the next; another rhythm makes the path jump
    ahead and wait.
    """
    matched = ~path.is_gap & (path.cost < MATCHED_COST)
    if np.count_nonzero(matched) < _FEWEST_MATCHED:
        return MOST_UNEVEN
    count = np.bincount(path.a_frame[matched], minlength=rows)
    column = np.bincount(path.a_frame[matched], path.b_frame[matched], rows)
    played = np.flatnonzero(count)
    course = np.interp(np.arange(rows), played, column[played] / count[played])
    over = min(round(_RATIO_OVER_S / step_s), rows // 3)
    ratio = np.log(np.maximum((course[over:] - course[:-over]) / over, _LEAST_RATIO))
    return float(np.median(np.abs(ratio - np.median(ratio))))


def propose(
    take: Outline,
    references: Mapping[K, Sequence[Outline]],
    *,
    should_stop: StopQuestion | None = None,
) -> Proposal[K]:
    """Tell which passage a take is.

    Parameters
    ----------
    take : Outline
    references : mapping
        Outlines of takes or scores of each passage; the nearest one speaks for it.
    should_stop : callable, optional
        Asked for each passage and often while it is held against the take.

    Returns
    -------
    Proposal
        None of them, with confidence 1, for a take of under two seconds of sound.

    Raises
    ------
    Stopped
        If ``should_stop`` said so.
    """
    if take.duration_s < SHORTEST_S:
        return Proposal(None, 1.0, ())
    distances: dict[K, float] = {}
    for key, outlines in references.items():
        stop_if_asked(should_stop)
        usable = [one for one in outlines if one.duration_s >= SHORTEST_S]
        if usable:
            distances[key] = min(distance(take, one, should_stop=should_stop) for one in usable)
    return judged(distances.items())


def judged(distances: Iterable[tuple[K, float]]) -> Proposal[K]:
    """Turn distances into a proposal."""
    listed = sorted(distances, key=lambda pair: pair[1])
    weights = [math.exp(-SHARPNESS * value) for _, value in listed]
    nothing = math.exp(-SHARPNESS * NONE_DISTANCE)
    total = sum(weights) + nothing
    ranked = tuple(
        (key, weight / total, value) for (key, value), weight in zip(listed, weights, strict=True)
    )
    if ranked and ranked[0][1] >= LEAST_CONFIDENCE:
        return Proposal(ranked[0][0], min(ranked[0][1], MOST_CONFIDENCE), ranked)
    none = max(nothing / total, 1.0 - ranked[0][1]) if ranked else 1.0
    return Proposal(None, min(none, MOST_CONFIDENCE) if ranked else none, ranked)
