"""Reading an alignment: the same musical moment in the other take."""

import numpy as np
from numpy.typing import NDArray

from analysis.results import Alignment, FloatArray

LEFT_OUT_S = 0.4

_STEEPEST = 6.0

Spans = list[tuple[float, float]]


def map_time(alignment: Alignment, a_s: FloatArray) -> FloatArray:
    """Moments of take b that correspond to moments of take a.

    Parameters
    ----------
    alignment : Alignment
    a_s : (n,) array
        Seconds in take a; outside the aligned part the offset of its end is kept.

    Returns
    -------
    (n,) array
        Seconds in take b.
    """
    return _mapped(alignment.a_s, alignment.b_s, a_s)


def map_time_back(alignment: Alignment, b_s: FloatArray) -> FloatArray:
    """Moments of take a that correspond to moments of take b; see :func:`map_time`."""
    return _mapped(alignment.b_s, alignment.a_s, b_s)


def left_out_spans(alignment: Alignment) -> tuple[Spans, Spans]:
    """Stretches inside the aligned part that only one of the takes plays.

    Parameters
    ----------
    alignment : Alignment

    Returns
    -------
    a_spans, b_spans : list of (start_s, end_s)
        In take a and in take b: skipped or repeated bars, stops, false starts; only
        those of at least 0.4 s.
    """
    step_a, step_b = np.diff(alignment.a_s), np.diff(alignment.b_s)
    only_a = _runs(alignment.a_s, step_a > _STEEPEST * step_b)
    only_b = _runs(alignment.b_s, step_b > _STEEPEST * step_a)
    return only_a, only_b


def _mapped(source_s: FloatArray, target_s: FloatArray, at_s: FloatArray) -> FloatArray:
    """Piecewise linear map, continued at its ends with unchanged speed."""
    at = np.asarray(at_s, dtype=np.float64)
    inside = np.interp(at, source_s, target_s)
    before = np.minimum(at - source_s[0], 0.0)
    after = np.maximum(at - source_s[-1], 0.0)
    return np.asarray(inside + before + after, dtype=np.float64)


def _runs(time_s: FloatArray, flag: NDArray[np.bool_]) -> Spans:
    """Spans of consecutive flagged steps that are long enough to be told."""
    edges = np.flatnonzero(np.diff(np.concatenate(([False], flag, [False])).astype(np.int8)))
    spans = [
        (float(time_s[start]), float(time_s[end]))
        for start, end in zip(edges[::2], edges[1::2], strict=True)
    ]
    return [span for span in spans if span[1] - span[0] >= LEFT_OUT_S]
