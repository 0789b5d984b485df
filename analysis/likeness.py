"""Which of several passages a take is, or none of them.

Every passage is held against the take as a whole; a confidence comes from how much
better the best one fits than the others, and than music that is none of them.
"""

import math
from collections.abc import Hashable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Generic, TypeVar

import numpy as np
from scipy import ndimage

from analysis.matched_path import MATCHED_COST
from analysis.outline import STEP_S, Outline
from analysis.stopping import StopQuestion, stop_if_asked
from analysis.warping import coarse_to_fine_path
from analysis.warping_table import GAP_COST, WarpingPath

ALGORITHM = "likeness-1"
NONE_DISTANCE = 0.07
SHARPNESS = 80.0
EVEN_S, MOST_UNEVEN_S, UNEVEN_WEIGHT = 0.09, 0.4, 0.3
LEAST_CONFIDENCE = 0.7
SHORTEST_S = 2.0
_COURSE_S, _LEAST_SLOPE, _FEWEST_MATCHED = 3.0, 0.1, 20

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

    The mean cost of the take's rows on the best path through the reference; a row that
    finds no counterpart costs as much as a gap. Another rhythm shows in a path that
    jumps ahead and waits, which no rubato does from note to note. A take of one half of
    the passage is like it, a passage that is one half of the take is not.
    """
    path = coarse_to_fine_path(
        take.frames, reference.frames, take.frames.shape[1], STEP_S, should_stop=should_stop
    )
    rows = take.frames.shape[0]
    cost = np.full(rows, np.inf)
    np.minimum.at(cost, path.a_frame, np.where(path.is_gap, GAP_COST, path.cost))
    uneven_s = min(_unevenness_s(path, rows) - EVEN_S, MOST_UNEVEN_S)
    return float(np.mean(np.minimum(cost, GAP_COST))) + UNEVEN_WEIGHT * max(0.0, uneven_s)


def _unevenness_s(path: WarpingPath, rows: int) -> float:
    """How far a path ordinarily lies from its own course over three seconds."""
    matched = ~path.is_gap & (path.cost < MATCHED_COST)
    if np.count_nonzero(matched) < _FEWEST_MATCHED:
        return MOST_UNEVEN_S
    count = np.bincount(path.a_frame[matched], minlength=rows)
    column = np.bincount(path.a_frame[matched], path.b_frame[matched], rows)
    played = np.flatnonzero(count)
    course = np.interp(np.arange(rows), played, column[played] / count[played])
    window = round(_COURSE_S / STEP_S)
    usual = ndimage.uniform_filter1d(course, window, mode="nearest")
    # At the ends the course is not known on both sides.
    inside = slice(window // 2, rows - window // 2) if rows > window + window // 4 else slice(rows)
    slope = max((course[-1] - course[0]) / rows, _LEAST_SLOPE)
    away = np.median(np.abs(course - usual)[inside])
    return float(away * STEP_S / math.sqrt(slope))


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
        return Proposal(ranked[0][0], ranked[0][1], ranked)
    none = nothing / total
    return Proposal(None, max(none, 1.0 - ranked[0][1]) if ranked else 1.0, ranked)
