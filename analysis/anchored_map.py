"""Pulls a map between two takes onto the notes that both of them share."""

import numpy as np
from numpy.typing import NDArray

from analysis.note_anchors import Anchors, anchors_of
from analysis.note_lines import JOINED_S, NoteLine
from analysis.results import Alignment, FloatArray
from analysis.short_spectra import Source
from analysis.soft_attacks import at_their_beginnings
from analysis.stopping import StopQuestion
from analysis.time_map import LEFT_OUT_S, Spans, map_time

Lines = tuple[NoteLine, NoteLine]
Edges = tuple[FloatArray, FloatArray]


def pulled_onto_notes(
    alignment: Alignment,
    gaps: tuple[Spans, Spans],
    lines: Lines,
    sources: tuple[Source, Source] | None,
    should_stop: StopQuestion | None,
) -> Alignment:
    """Move the map so that it is exact at the onsets of the notes both takes share."""
    a, b = lines
    window_s = min(a.window_s, b.window_s)
    inside = (a.start_s >= alignment.a_s[0] - window_s) & (
        a.start_s <= alignment.a_s[-1] + window_s
    )
    expected = map_time(alignment, a.start_s)
    found = anchors_of(a, b, np.where(inside, expected, np.nan), window_s)
    if found is None:
        return alignment
    if sources is not None:
        found = at_their_beginnings(found, lines, sources, should_stop)
    correction = found.b_s - map_time(alignment, found.a_s)
    moved = alignment.b_s + np.interp(alignment.a_s, found.a_s, correction)
    # The points between two anchors may not lie outside of them; where time runs evenly
    # between them nothing tells more than a straight line.
    after = np.searchsorted(found.a_s, alignment.a_s, side="right")
    lowest = np.concatenate(([-np.inf], found.b_s))[after]
    highest = np.concatenate((found.b_s, [np.inf]))[after]
    edges = _with_ends(alignment, found)
    is_even = np.concatenate(
        ([_is_held(lines, edges, 0)], found.is_even, [_is_held(lines, edges, -2)])
    )
    kept = ~(is_even & ~_hold_a_gap(gaps, edges))[after]
    kept[[0, -1]] = True
    joined_a = np.concatenate((alignment.a_s[kept], found.a_s))
    joined_b = np.concatenate((np.clip(moved, lowest, highest)[kept], found.b_s))
    order = np.lexsort((joined_b, joined_a))
    return Alignment(
        a_s=joined_a[order],
        b_s=np.maximum.accumulate(joined_b[order]),
        confidence=alignment.confidence,
    )


def _with_ends(alignment: Alignment, found: Anchors) -> Edges:
    """Give the anchors of both takes between the ends of the map."""
    return (
        np.concatenate((alignment.a_s[:1], found.a_s, alignment.a_s[-1:])),
        np.concatenate((alignment.b_s[:1], found.b_s, alignment.b_s[-1:])),
    )


def _is_held(lines: Lines, edges: Edges, place: int) -> bool:
    """Tell whether nothing begins in either take between two edges: it is held, or dies away."""
    return not any(
        np.any(
            (line.start_s > at_s[place] + JOINED_S) & (line.start_s < at_s[place + 1] - JOINED_S)
        )
        for line, at_s in zip(lines, edges, strict=True)
    )


def _hold_a_gap(gaps: tuple[Spans, Spans], edges: Edges) -> NDArray[np.bool_]:
    """Tell between which edges one take goes on alone, whatever its notes say.

    Of repeated notes the one before a stop may be taken to last until the one after it.
    """
    holds = np.zeros(edges[0].size - 1, dtype=np.bool_)
    for spans, at_s in zip(gaps, edges, strict=True):
        for begin, end in spans:
            inside = np.minimum(at_s[1:], end) - np.maximum(at_s[:-1], begin)
            holds |= inside >= LEFT_OUT_S
    return holds
