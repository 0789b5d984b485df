"""One target for a note in both takes.

An open string is held against its pure pitch, a stopped note of the same name against the
temperament: up to 6 cents apart. A note that is taken for the one in one take and for the
other in the next would seem to have moved by that much. So both are held against one
target, after what moves all targets alike, another reference A, has been taken out.
"""

from collections.abc import Iterable, Sequence
from dataclasses import replace

import numpy as np

from analysis.results import Deviation, JudgedNote, Measured
from analysis.units import cents_between


def target_shift_cents(pairs: Iterable[tuple[JudgedNote, JudgedNote]]) -> float:
    """Return by how far the targets of the later take stand above those of the earlier.

    Parameters
    ----------
    pairs : iterable of (JudgedNote, JudgedNote)
        The same note in both takes.

    Returns
    -------
    float
        Median over the pairs that are open strings in both takes or in neither; 0
        without any.
    """
    shifts = [
        cents_between(a.target_hz, b.target_hz)
        for a, b in pairs
        if a.target_hz and b.target_hz and a.is_open_string == b.is_open_string
    ]
    return float(np.median(shifts)) if shifts else 0.0


def on_one_target(
    pieces: Sequence[JudgedNote], target_hz: float | None, shift_cents: float = 0.0
) -> list[JudgedNote]:
    """Hold notes against a target other than their own.

    Parameters
    ----------
    pieces : sequence of JudgedNote
        Notes, or pieces of one.
    target_hz : float or None
        The target; ``None`` leaves the notes as they are.
    shift_cents : float
        How far to move it first.
    """
    if not target_hz:
        return list(pieces)
    return [_moved(piece, target_hz, shift_cents) for piece in pieces]


def _moved(piece: JudgedNote, target_hz: float, shift_cents: float) -> JudgedNote:
    if not piece.target_hz or not isinstance(piece.deviation, Measured):
        return piece
    known = piece.deviation.value
    cents = known.deviation_cents + cents_between(target_hz, piece.target_hz) - shift_cents
    return replace(
        piece,
        deviation=Measured(Deviation(cents, known.uncertainty_cents), piece.deviation.provenance),
    )
