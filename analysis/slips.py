"""What only one of two takes plays, and what it looks like: said, not hidden.

A map between two takes leaves out false starts, repeated and skipped bars, stops, and
talk. Here each such stretch gets a kind, from the notes in and around it.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

import numpy as np

from analysis.note_lines import AnyNote, note_line
from analysis.note_matching import SAME_PITCH_SEMITONES
from analysis.results import Alignment, FloatArray, JudgedNote
from analysis.time_map import LEFT_OUT_S, left_out_spans

ALGORITHM = "slips-2"
HELD_LONGER_S = 0.8
ALIKE_SHARE = 0.8
SILENT_SHARE = 0.4


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
        In order; stretches under 0.4 s are not told, nor one under 0.8 s in which no note
        begins: a note that is held longer.
    """
    inside_a, inside_b = left_out_spans(alignment)
    edges_a = (float(alignment.a_s[0]), float(alignment.a_s[-1]))
    edges_b = (float(alignment.b_s[0]), float(alignment.b_s[-1]))
    return _of_take(inside_a, edges_a, notes_a), _of_take(inside_b, edges_b, notes_b)


def _of_take(
    inside: list[tuple[float, float]], edges: tuple[float, float], notes: Sequence[AnyNote]
) -> tuple[Slip, ...]:
    line = note_line(notes, np.zeros(0))
    plain = [note.note if isinstance(note, JudgedNote) else note for note in notes]
    end_s = np.array([note.end_s for note in plain], dtype=np.float64)
    found = []
    first = float(line.start_s[0]) if line.start_s.size else edges[0]
    last = float(end_s.max()) if end_s.size else edges[1]
    if edges[0] - first >= LEFT_OUT_S:
        found.append(Slip(first, edges[0], SlipKind.BEFORE))
    for begin, end in inside:
        sounding = np.clip(np.minimum(end_s, end) - np.maximum(line.start_s, begin), 0, None)
        if sounding.sum() < SILENT_SHARE * (end - begin):
            kind = SlipKind.STOPPED
        else:
            first_note, last_note = np.searchsorted(line.start_s, (begin - 0.05, end - 0.05))
            if first_note == last_note and end - begin < HELD_LONGER_S:
                continue
            kind = _kind(int(first_note), int(last_note), line.pitch)
        found.append(Slip(begin, end, kind))
    if last - edges[1] >= LEFT_OUT_S:
        found.append(Slip(edges[1], last, SlipKind.AFTER))
    return tuple(found)


def _kind(first: int, last: int, pitch: FloatArray) -> SlipKind:
    """Tell notes that are played twice in a row from other music.

    Which of the two turns was left out, or a part of each, is chance; so what is looked
    for is a line that agrees with itself one turn later.
    """
    count = last - first
    for turn in range(max(2, count - 1), count + 2):
        around = pitch[max(0, first - turn) : last + turn]
        if count < 2 or around.size < 2 * turn:
            continue
        alike = np.abs(around[turn:] - around[:-turn]) <= SAME_PITCH_SEMITONES
        most = np.convolve(alike, np.ones(turn), mode="valid").max(initial=0.0)
        if most >= ALIKE_SHARE * turn:
            return SlipKind.REPEATED
    return SlipKind.ONLY_HERE
