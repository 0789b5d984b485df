"""The notes of a take, or its attacks where the notes are not known, as one line."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from analysis.alignment_features import AlignmentFeatures
from analysis.results import FloatArray, JudgedNote, Measured, Note, NoteKind
from analysis.units import hz_to_midi

LEAD_IN_S = 0.25
JOINED_S = 0.1
BESIDE_S = 0.07
NOTE_WINDOW_S, ATTACK_WINDOW_S = 2.0, 0.3

AnyNote = Note | JudgedNote


@dataclass(frozen=True, slots=True)
class NoteLine:
    """Notes as a line: starts in seconds, note numbers (NaN for none), and level rises.

    ``rise_s`` are moments at which the level rises, whether or not a note begins there.
    ``taken_over`` marks notes without a clear pitch of their own. ``window_s`` is how far
    from where it is expected a partner may lie; ``is_coarse`` says that starts are known
    to a frame only.
    """

    start_s: FloatArray
    pitch: FloatArray
    rise_s: FloatArray
    taken_over: NDArray[np.bool_] | None = None
    window_s: float = NOTE_WINDOW_S
    is_coarse: bool = False


def note_line(notes: Sequence[AnyNote], rise_s: FloatArray) -> NoteLine:
    """Read the notes of a take as a line.

    A note without a clear pitch that leads straight into another takes over its pitch.
    """
    plain = [note.note if isinstance(note, JudgedNote) else note for note in notes]
    start = np.array([note.start_s for note in plain], dtype=np.float64)
    end = np.array([note.end_s for note in plain], dtype=np.float64)
    pitch = np.array([_pitch_of(note) for note in plain], dtype=np.float64)
    taken_over = np.zeros(start.size, dtype=np.bool_)
    for i in range(start.size - 2, -1, -1):
        short = end[i] - start[i] <= LEAD_IN_S
        if np.isnan(pitch[i]) and short and start[i + 1] - end[i] <= JOINED_S:
            pitch[i], taken_over[i] = pitch[i + 1], True
    return NoteLine(start, pitch, rise_s, taken_over)


def heard_line(features: AlignmentFeatures) -> NoteLine:
    """Read the attacks of a take whose notes are not known as a line, pitch classes for pitch.

    An attack on the class that sounds already may be the end of the note before; the rise
    of the level beside it tells when the new one begins.
    """
    attack_s, classes, rise_s = features.attack_s, features.attack_class, features.rise_s
    again = np.concatenate(([False], classes[1:] == classes[:-1]))
    if rise_s.size:
        nearest = nearest_of(rise_s, attack_s)
        told = ~again | (np.abs(nearest - attack_s) <= BESIDE_S)
        attack_s = np.where(again, nearest, attack_s)[told]
        classes = classes[told]
    start_s, first = np.unique(attack_s, return_index=True)
    return NoteLine(start_s, classes[first], rise_s, window_s=ATTACK_WINDOW_S, is_coarse=True)


def nearest_of(moments_s: FloatArray, to_s: FloatArray) -> FloatArray:
    """Give the nearest of ascending moments, at least one, to each of some others, (n,)."""
    after = np.clip(np.searchsorted(moments_s, to_s), 1, max(moments_s.size - 1, 1))
    before_s, after_s = moments_s[after - 1], moments_s[np.minimum(after, moments_s.size - 1)]
    return np.where(np.abs(before_s - to_s) <= np.abs(after_s - to_s), before_s, after_s)


def _pitch_of(note: Note) -> float:
    if not isinstance(note.pitch, Measured) or note.kind is NoteKind.DOUBLE_STOP:
        return np.nan
    return float(hz_to_midi(note.pitch.value.pitch_hz))
