"""Judges a warping path: what of it tells the same passage, and the map of that.

The map is monotone and smooth; the path itself is a staircase of whole frames.
"""

from dataclasses import dataclass

import numpy as np
from scipy import ndimage

from analysis.alignment_features import HOP_S, AlignmentFeatures
from analysis.results import Alignment
from analysis.time_map import LEFT_OUT_S, Spans
from analysis.warping_table import WarpingPath

MATCHED_COST = 0.25
STRETCH_S = 2.0
LARGEST_RATIO = 3.3

_SMOOTHING_FRAMES = 9
_MAP_STEP_FRAMES = 5
_BRIDGED_S = 0.3


@dataclass(frozen=True, slots=True)
class Match:
    """The stretches of a path that match, and their share of the shorter take."""

    path: WarpingPath
    share: float


def judged_path(path: WarpingPath) -> Match:
    """Keep the stretches of a path that tell the same passage, and say how much they are.

    Unrelated music finds a counterpart for many single notes; only stretches of some
    seconds at a plausible ratio of tempos tell that it is the same passage.
    """
    matched = np.flatnonzero(~path.is_gap & (path.cost < MATCHED_COST))
    if not matched.size:
        return Match(path, 0.0)
    breaks = np.flatnonzero(np.diff(matched) > round(_BRIDGED_S / HOP_S))
    first = matched[np.concatenate(([0], breaks + 1))]
    last = matched[np.concatenate((breaks, [matched.size - 1]))]
    long_a = path.a_frame[last] - path.a_frame[first] + 1
    long_b = path.b_frame[last] - path.b_frame[first] + 1
    total_a, total_b = int(path.a_frame[-1]) + 1, int(path.b_frame[-1]) + 1
    needed = min(STRETCH_S / HOP_S, 0.4 * min(total_a, total_b))
    told = (np.maximum(long_a, long_b) >= needed) & (np.minimum(long_a, long_b) >= needed / 2)
    told &= (long_a < LARGEST_RATIO * long_b) & (long_b < LARGEST_RATIO * long_a)
    if not told.any():
        return Match(path, 0.0)
    share = max(long_a[told].sum() / total_a, long_b[told].sum() / total_b)
    inside = np.zeros(path.cost.size, dtype=np.bool_)
    for begin, end in zip(first[told], last[told], strict=True):
        inside[begin : end + 1] = True
    kept = WarpingPath(
        path.a_frame[inside], path.b_frame[inside], path.is_gap[inside], path.cost[inside]
    )
    return Match(kept, float(share))


def smooth_map(
    features_a: AlignmentFeatures, features_b: AlignmentFeatures, match: Match
) -> Alignment:
    """Turn the staircase of a warping path into a smooth monotone map."""
    path = match.path
    rows = np.arange(path.a_frame[0], path.a_frame[-1] + 1)
    played, first = np.unique(path.a_frame, return_index=True)
    last = np.append(first[1:], path.a_frame.size) - 1
    middle = (path.b_frame[first] + path.b_frame[last]) / 2
    column = np.interp(rows, played, middle)
    smooth = ndimage.uniform_filter1d(column, min(_SMOOTHING_FRAMES, rows.size), mode="nearest")
    smooth[0], smooth[-1] = path.b_frame[0], path.b_frame[-1]
    smooth = np.maximum.accumulate(np.minimum(smooth, path.b_frame[-1]))
    kept = np.unique(np.append(np.arange(0, rows.size, _MAP_STEP_FRAMES), rows.size - 1))
    return Alignment(
        a_s=features_a.start_s + rows[kept] * HOP_S,
        b_s=features_b.start_s + smooth[kept] * HOP_S,
        confidence=min(1.0, match.share),
    )


def gap_spans(
    features_a: AlignmentFeatures, features_b: AlignmentFeatures, match: Match
) -> tuple[Spans, Spans]:
    """Stretches of either take that a path passes over, seconds; only those worth telling."""
    path = match.path
    is_jump = np.maximum(np.diff(path.a_frame), np.diff(path.b_frame)) > 1
    edges = np.flatnonzero(np.diff(np.concatenate(([0], path.is_gap[1:] | is_jump, [0]))))
    first, last = edges[::2], edges[1::2]
    spans: tuple[Spans, Spans] = ([], [])
    frames = ((features_a, path.a_frame), (features_b, path.b_frame))
    for told, (features, frame) in zip(spans, frames, strict=True):
        begin_s = features.start_s + HOP_S * frame[first]
        end_s = features.start_s + HOP_S * frame[last]
        long = end_s - begin_s >= LEFT_OUT_S
        told.extend(zip(begin_s[long].tolist(), end_s[long].tolist(), strict=True))
    return spans
