"""Moments at which a map between two takes is certain: notes that both of them share.

In a room the tail of one note blurs the beginning of the next, and an attack on a pitch
that already sounds may leave no trace in the list of notes. So an unclear beginning
counts as part of the note it leads into, and a note whose partner is missing is looked
for among the rises of the other take's level, where the notes around it leave room.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from analysis.note_lines import JOINED_S, NoteLine
from analysis.note_matching import SAME_PITCH_SEMITONES, match_notes
from analysis.results import FloatArray

RISE_WINDOW_S = 0.15
LEAST_PART = 0.35
EVEN_RATIO = 1.7
LONGEST_EVEN_S = 6.0
EARLIEST_LATE_S, LATEST_S = 0.025, 0.07
FEWEST_USUAL = 7
LARGEST_RATIO = 3.3
STRAY_S = 0.25
MAD_TO_SPREAD = 1.4826  # of a normal distribution

Pairs = tuple[NDArray[np.int64], NDArray[np.int64]]


@dataclass(frozen=True, slots=True)
class Anchors:
    """Equal moments ``a_s[i]``, ``b_s[i]``, both increasing.

    ``is_even[i]`` says that time runs evenly from anchor ``i`` to the next.
    """

    a_s: FloatArray
    b_s: FloatArray
    is_even: NDArray[np.bool_]


def anchors_of(a: NoteLine, b: NoteLine, expected_s: FloatArray, window_s: float) -> Anchors | None:
    """Pair the notes of two takes and what is left of them with rises of the level.

    Parameters
    ----------
    a, b : NoteLine
    expected_s : (n,) array
        Where each note of take a should start in take b; NaN where it cannot.
    window_s : float
        How far from there it may be found.

    Returns
    -------
    Anchors or None
        ``None`` where no note is shared.
    """
    index_a, index_b = _pairs(a, b, expected_s, window_s)
    near = np.abs(b.start_s[index_b] - expected_s[index_a]) <= window_s
    index_a, index_b = index_a[near], index_b[near]
    if not index_a.size or not b.start_s.size:
        return None
    if index_a.size >= FEWEST_USUAL:
        index_a, index_b = _without_strays(a, b, expected_s, (index_a, index_b))
    a_s = a.start_s[index_a]
    b_s = _at_their_rise(b.start_s[index_b], expected_s[index_a], b)
    found_a, found_b = _missing(a, b, a_s, b_s)
    back_b, back_a = _missing(b, a, b_s, a_s)
    joined_a = np.concatenate((a_s, found_a, back_a))
    joined_b = np.concatenate((b_s, found_b, back_b))
    order = np.argsort(joined_a, kind="stable")
    joined_a, joined_b = joined_a[order], joined_b[order]
    kept = _increasing(joined_a, joined_b)
    joined_a, joined_b = joined_a[kept], joined_b[kept]
    return Anchors(joined_a, joined_b, _runs_evenly(a, b, joined_a, joined_b))


def _pairs(a: NoteLine, b: NoteLine, expected_s: FloatArray, window_s: float) -> Pairs:
    """Pair the notes: first those that begin a new pitch, then the others between them.

    A note that differs from the one before it can hardly be mistaken for its neighbour;
    one attack that was missed among repeated notes shifts all that follow.
    """
    pitch = np.where(np.isfinite(expected_s), a.pitch, np.nan)
    expected = np.where(np.isfinite(expected_s), expected_s, 0.0)
    new_a = np.where(_begins_anew(a), pitch, np.nan)
    new_b = np.where(_begins_anew(b), b.pitch, np.nan)
    first_a, first_b = _arrays(match_notes(expected, new_a, b.start_s, new_b, window_s))
    if not first_a.size:
        return _arrays(match_notes(expected, pitch, b.start_s, b.pitch, window_s))
    expected = _between(a.start_s, expected, a.start_s[first_a], b.start_s[first_b])
    edges_a = [-1, *first_a.tolist(), a.start_s.size]
    edges_b = [-1, *first_b.tolist(), b.start_s.size]
    pairs: list[tuple[int, int]] = []
    for place in range(len(edges_a) - 1):
        own = slice(edges_a[place] + 1, edges_a[place + 1])
        other = slice(edges_b[place] + 1, edges_b[place + 1])
        near = match_notes(expected[own], pitch[own], b.start_s[other], b.pitch[other], window_s)
        pairs += [(i + own.start, j + other.start) for i, j in near]
        if place < len(first_a):
            pairs.append((int(first_a[place]), int(first_b[place])))
    return _arrays(pairs)


def _begins_anew(line: NoteLine) -> NDArray[np.bool_]:
    """Tell which notes have another pitch than the one before.

    A note after one that took over its pitch does too: either of them may be the one.
    """
    before = np.concatenate(([np.nan], line.pitch[:-1]))
    anew = ~(np.abs(line.pitch - before) <= SAME_PITCH_SEMITONES)
    if line.taken_over is not None and line.taken_over.size:
        anew[1:] |= line.taken_over[:-1]
    return np.asarray(anew, dtype=np.bool_)


def _between(
    start_s: FloatArray, expected_s: FloatArray, anchor_a: FloatArray, anchor_b: FloatArray
) -> FloatArray:
    """Where notes are expected once the certain ones are known.

    Between two certain notes that are not far apart time runs evenly; elsewhere the
    correction is spread over the map.
    """
    here = np.interp(anchor_a, start_s, expected_s)
    moved = expected_s + np.interp(start_s, anchor_a, anchor_b - here)
    even = np.interp(start_s, anchor_a, anchor_b)
    after = np.searchsorted(anchor_a, start_s, side="right")
    edges = np.concatenate(([-np.inf], anchor_a, [np.inf]))
    gap = np.diff(edges)[after]
    return np.asarray(np.where(gap <= LONGEST_EVEN_S, even, moved), dtype=np.float64)


def _arrays(pairs: list[tuple[int, int]]) -> Pairs:
    index = np.array(pairs, dtype=np.int64).reshape(-1, 2)
    return index[:, 0], index[:, 1]


def _without_strays(a: NoteLine, b: NoteLine, expected_s: FloatArray, pairs: Pairs) -> Pairs:
    """Drop single pairs that lie far from where the pairs on both sides say they should.

    A note that was read as its neighbour pairs with the neighbour's partner. Beside a bar
    that only one of the takes plays nobody can say so.
    """
    index_a, index_b = pairs
    off = b.start_s[index_b] - expected_s[index_a]
    wide = np.concatenate((off[2:3], off, off[-3:-2]))
    before, after = wide[:-2], wide[2:]
    spread = MAD_TO_SPREAD * float(np.median(np.abs(off - (before + after) / 2)))
    far = max(STRAY_S, 4.0 * spread)
    kept = np.minimum(np.abs(off - before), np.abs(off - after)) <= far
    kept |= np.abs(after - before) > far
    around = np.arange(off.size)
    first, last = np.maximum(around - 1, 0), np.minimum(around + 1, off.size - 1)
    own_s = a.start_s[index_a[last]] - a.start_s[index_a[first]]
    kept |= expected_s[index_a[last]] - expected_s[index_a[first]] > LARGEST_RATIO * own_s
    return index_a[kept], index_b[kept]


def _missing(
    own: NoteLine, other: NoteLine, own_s: FloatArray, other_s: FloatArray
) -> tuple[FloatArray, FloatArray]:
    """Find where in the other take notes without a partner begin.

    First among the notes that have no partner there, which were read as another pitch;
    then among the rises of its level.
    """
    free = np.setdiff1d(other.start_s, other_s)
    first, second = _beside(own.start_s, free, own_s, other_s)
    joined, joined_other = np.concatenate((own_s, first)), np.concatenate((other_s, second))
    order = np.argsort(joined, kind="stable")
    joined, joined_other = joined[order], joined_other[order]
    kept = _increasing(joined, joined_other)
    third, fourth = _beside(own.start_s, other.rise_s, joined[kept], joined_other[kept])
    return np.concatenate((first, third)), np.concatenate((second, fourth))


def _beside(
    start_s: FloatArray, rise_s: FloatArray, own_s: FloatArray, other_s: FloatArray
) -> tuple[FloatArray, FloatArray]:
    """Find moments of the other take at which notes without a partner begin.

    Only between two anchors, near where they should be if time runs evenly, and well
    apart from everything that is taken.
    """
    lonely = np.setdiff1d(start_s, own_s)
    inside = (lonely > own_s[0]) & (lonely < own_s[-1])
    lonely = lonely[inside]
    after = np.searchsorted(own_s, lonely)
    even = np.interp(lonely, own_s, other_s)
    ratio = (other_s[after] - other_s[after - 1]) / np.maximum(
        own_s[after] - own_s[after - 1], 1e-9
    )
    neighbours = np.sort(start_s)
    place = np.searchsorted(neighbours, lonely)
    before_s = lonely - neighbours[np.maximum(place - 1, 0)]
    after_s = neighbours[np.minimum(place + 1, neighbours.size - 1)] - lonely
    apart = np.where(after_s > 0, np.minimum(before_s, after_s), before_s) * ratio
    # Where only one take goes on, time does not run evenly.
    apart = np.where((ratio > LARGEST_RATIO) | (ratio < 1 / LARGEST_RATIO), -1.0, apart)
    found_own, found_other = [], []
    for moment, target, free in zip(lonely, even, apart, strict=True):
        near = min(RISE_WINDOW_S, LEAST_PART * free)
        place = np.flatnonzero(np.abs(rise_s - target) <= near)
        if place.size:
            best = place[np.argmin(np.abs(rise_s[place] - target))]
            found_own.append(moment)
            found_other.append(rise_s[best])
    return np.array(found_own, dtype=np.float64), np.array(found_other, dtype=np.float64)


def _at_their_rise(start_s: FloatArray, expected_s: FloatArray, line: NoteLine) -> FloatArray:
    """Move a start that was found late to the rise of the level just before it.

    Only where the rest of the sound says so too, and no other note begins there.
    """
    place = np.searchsorted(line.rise_s, start_s - 1e-6) - 1
    rise = np.where(place >= 0, line.rise_s[np.maximum(place, 0)], -np.inf)
    other = np.searchsorted(line.start_s, start_s - 1e-6) - 1
    before = np.where(other >= 0, line.start_s[np.maximum(other, 0)], -np.inf)
    late = start_s - rise
    nearer = np.abs(rise - expected_s) < np.abs(start_s - expected_s)
    moved = (late > EARLIEST_LATE_S) & (late < LATEST_S) & nearer & (before < rise - JOINED_S)
    return np.asarray(np.where(moved, rise, start_s), dtype=np.float64)


def _increasing(a_s: FloatArray, b_s: FloatArray) -> NDArray[np.bool_]:
    """Keep what increases in both takes; the notes were chosen so, the rises may not be."""
    kept = np.ones(a_s.size, dtype=np.bool_)
    last = 0
    for i in range(1, a_s.size):
        kept[i] = a_s[i] > a_s[last] and b_s[i] > b_s[last]
        last = i if kept[i] else last
    return kept


def _runs_evenly(a: NoteLine, b: NoteLine, a_s: FloatArray, b_s: FloatArray) -> NDArray[np.bool_]:
    """Tell for each stretch between anchors whether a straight line says all there is.

    So it is inside a single note of both, and where notes of one take are not told
    apart in the other although they had their time there.
    """
    if a_s.size < 2:
        return np.zeros(0, dtype=np.bool_)
    inside_a = np.diff(np.searchsorted(np.sort(a.start_s), a_s))
    inside_b = np.diff(np.searchsorted(np.sort(b.start_s), b_s))
    anew = a.start_s[_begins_anew(a) & np.isfinite(a.pitch)]
    no_change = np.searchsorted(anew, a_s[1:]) <= np.searchsorted(anew, a_s[:-1], side="right")
    ratio = np.log(np.diff(b_s) / np.diff(a_s))
    usual = np.array([np.median(ratio[max(0, i - 4) : i + 5]) for i in range(ratio.size)])
    plausible = np.abs(ratio - usual) <= np.log(EVEN_RATIO)
    single = (inside_a <= 1) & (inside_b <= 1)
    merged = ((inside_a <= 1) | (inside_b <= 1) | no_change) & plausible
    return np.asarray(single | merged, dtype=np.bool_)
