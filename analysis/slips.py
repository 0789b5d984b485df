"""What only one of two takes plays, and what it looks like: said, not hidden.

A map between two takes leaves out false starts, repeated and skipped bars, stops, and
talk. Here each such stretch gets a kind, from the notes in and around it.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

import numpy as np

from analysis.note_anchors import AnyNote, note_line
from analysis.note_matching import SAME_PITCH_SEMITONES
from analysis.results import Alignment, FloatArray
from analysis.time_map import LEFT_OUT_S, left_out_spans

ALGORITHM = "slips-1"
ALIKE_SHARE = 0.7


class SlipKind(StrEnum):
    """What a stretch that only one take plays looks like."""

    BEFORE = "before"
    AFTER = "after"
    REPEATED = "repeated"
    STOPPED = "stopped"
    ONLY_HERE = "only_here"


@dataclass(frozen=True, slots=True)
class Slip:
    """A stretch of one take that has no counterpart in the other one.

    ``BEFORE`` and ``AFTER`` lie outside of what both play; ``REPEATED`` plays the notes
    beside it once more; ``STOPPED`` holds no notes; ``ONLY_HERE`` is music that the
    other take skipped, or that was added.
    """

    start_s: float
    end_s: float
    kind: SlipKind


def slips(
    alignment: Alignment, notes_a: Sequence[AnyNote], notes_b: Sequence[AnyNote]
) -> tuple[tuple[Slip, ...], tuple[Slip, ...]]:
    """List what only one of two takes plays.

    Parameters
    ----------
    alignment : Alignment
    notes_a, notes_b : sequence of Note or JudgedNote
        In order of their start.

    Returns
    -------
    of_a, of_b : tuple of Slip
        In order; stretches under 0.4 s are not told.
    """
    inside_a, inside_b = left_out_spans(alignment)
    edges_a = (float(alignment.a_s[0]), float(alignment.a_s[-1]))
    edges_b = (float(alignment.b_s[0]), float(alignment.b_s[-1]))
    return _of_take(inside_a, edges_a, notes_a), _of_take(inside_b, edges_b, notes_b)


def _of_take(
    inside: list[tuple[float, float]], edges: tuple[float, float], notes: Sequence[AnyNote]
) -> tuple[Slip, ...]:
    line = note_line(notes, np.zeros(0))
    ends = [note.note.end_s if hasattr(note, "note") else note.end_s for note in notes]
    found = []
    first = float(line.start_s[0]) if line.start_s.size else edges[0]
    last = max(ends, default=edges[1])
    if edges[0] - first >= LEFT_OUT_S:
        found.append(Slip(first, edges[0], SlipKind.BEFORE))
    for start_s, end_s in inside:
        kind = _kind(start_s, end_s, line.start_s, line.pitch)
        found.append(Slip(start_s, end_s, kind))
    if last - edges[1] >= LEFT_OUT_S:
        found.append(Slip(edges[1], last, SlipKind.AFTER))
    return tuple(found)


def _kind(start_s: float, end_s: float, note_s: FloatArray, pitch: FloatArray) -> SlipKind:
    """Tell a stretch that repeats its neighbourhood from a stop and from other music."""
    first, last = np.searchsorted(note_s, (start_s - 0.05, end_s - 0.05))
    own = pitch[first:last]
    own = own[np.isfinite(own)]
    if not own.size:
        return SlipKind.STOPPED
    before = pitch[max(0, first - own.size - 1) : first]
    after = pitch[last : last + own.size + 1]
    alike = max(_common(own, before), _common(own, after)) / own.size
    is_repeated = own.size > 1 and alike >= ALIKE_SHARE
    return SlipKind.REPEATED if is_repeated else SlipKind.ONLY_HERE


def _common(one: FloatArray, other: FloatArray) -> int:
    """Length of the longest common subsequence of pitches."""
    row = np.zeros(other.size + 1, dtype=np.int64)
    for pitch in one:
        diagonal = 0
        for j, against in enumerate(other):
            above = row[j + 1]
            same = abs(pitch - against) <= SAME_PITCH_SEMITONES
            row[j + 1] = max(row[j + 1], row[j], diagonal + same)
            diagonal = above
    return int(row[-1])
