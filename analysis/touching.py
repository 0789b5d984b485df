"""Pieces of one note that was cut in one take and not in the other.

A swell of the bow or of the breath can look like a new beginning in one take only. The
pieces touch, where two bowed notes leave a gap, and carry one name; where the other take
has a single note at that place they are read together.
"""

import math
from collections.abc import Sequence, Set
from typing import Final

from analysis.results import Deviation, JudgedNote, Measured

TOUCHING_S: Final = 0.005


def pieces_of(notes: Sequence[JudgedNote], index: int, taken: Set[int]) -> tuple[int, ...]:
    """Return the indices of a note and of the pieces that touch it and are not taken.

    Parameters
    ----------
    notes : sequence of JudgedNote
        The notes of a take, in order.
    index : int
        One of them.
    taken : set of int
        Notes with a partner of their own.
    """
    first = last = index
    while _goes_on(notes, first - 1, first, taken):
        first -= 1
    while _goes_on(notes, last + 1, last, taken):
        last += 1
    return tuple(range(first, last + 1))


def _goes_on(notes: Sequence[JudgedNote], other: int, index: int, taken: Set[int]) -> bool:
    if not 0 <= other < len(notes) or other in taken:
        return False
    earlier, later = (notes[i] for i in sorted((other, index)))
    return earlier.midi == later.midi and (later.note.start_s - earlier.note.end_s <= TOUCHING_S)


def joint_deviation(pieces: Sequence[JudgedNote]) -> Deviation | None:
    """Return the deviation of pieces read together, weighed by how sure each is.

    ``None`` where none was measured.
    """
    known = [piece.deviation.value for piece in pieces if isinstance(piece.deviation, Measured)]
    if not known:
        return None
    if len(known) == 1:
        return known[0]
    weights = [1.0 / max(each.uncertainty_cents, 1e-6) ** 2 for each in known]
    mean = sum(w * each.deviation_cents for w, each in zip(weights, known, strict=True))
    return Deviation(mean / sum(weights), 1.0 / math.sqrt(sum(weights)))
