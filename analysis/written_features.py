"""What a written line would sound like to the aligner: features made from notes.

Every written note becomes the harmony of its first partials, an attack, and a rise of
the level, so that a score is aligned with a take as another take would be.
"""

from dataclasses import dataclass

import numpy as np

from analysis.alignment_features import (
    HARMONY_SIZE,
    HOP_S,
    AlignmentFeatures,
    held_attacks,
)
from analysis.results import FloatArray

_PARTIALS = 8
_PLAIN_RISE, _REPEATED_RISE = 0.6, 1.0
_SHORTEST_S = 0.03


@dataclass(frozen=True, slots=True)
class WrittenNotes:
    """The notes a score asks for, in order of their onset; all (n,).

    ``onset_beats`` and ``duration_beats`` are in beats from the beginning, a duration of
    0 is a grace note; ``midi`` are sounding note numbers. Notes of a chord share their
    onset.
    """

    onset_beats: FloatArray
    duration_beats: FloatArray
    midi: FloatArray

    @property
    def end_beats(self) -> float:
        """Where the last note ends."""
        return float(np.max(self.onset_beats + self.duration_beats))


def written_features(notes: WrittenNotes, bpm: float) -> AlignmentFeatures:
    """Sound a score without sounding it.

    Parameters
    ----------
    notes : WrittenNotes
        At least one.
    bpm : float
        Beats a minute at which it is laid out.

    Returns
    -------
    AlignmentFeatures
        The first note begins at its onset, beat 0 at 0 s.
    """
    second = 60.0 / bpm
    start = notes.onset_beats * second
    end = start + np.maximum(notes.duration_beats * second, _SHORTEST_S)
    first_s = float(start.min())
    count = max(1, round((float(end.max()) - first_s) / HOP_S))
    chroma = np.zeros((count, HARMONY_SIZE))
    attacks = np.zeros((count, HARMONY_SIZE))
    rise = np.zeros((count, 1))
    previous = np.nan
    for begin, stop, midi in zip(start, end, notes.midi, strict=True):
        harmony = _harmony(float(midi))
        first = min(count - 1, round((float(begin) - first_s) / HOP_S))
        last = max(first + 1, round((float(stop) - first_s) / HOP_S))
        chroma[first:last] += harmony
        attacks[first] += harmony
        repeated = midi == previous
        rise[first] = max(rise[first, 0], _REPEATED_RISE if repeated else _PLAIN_RISE)
        previous = midi
    chroma /= np.maximum(np.linalg.norm(chroma, axis=1, keepdims=True), 1e-12)
    attacks /= np.maximum(np.linalg.norm(attacks, axis=1, keepdims=True), 1.0)
    frames = np.hstack((chroma, held_attacks(attacks), held_attacks(rise)))
    return AlignmentFeatures(np.ascontiguousarray(frames, dtype=np.float32), first_s)


def _harmony(midi: float) -> FloatArray:
    """Chroma of the partials of one note, unit length."""
    partial = np.arange(1, _PARTIALS + 1)
    place = np.rint(midi + 12 * np.log2(partial)).astype(np.int64) % HARMONY_SIZE
    harmony = np.zeros(HARMONY_SIZE)
    np.add.at(harmony, place, 1.0 / partial)
    return np.asarray(harmony / np.linalg.norm(harmony), dtype=np.float64)
