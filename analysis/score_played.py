"""The two sides that are held against each other: notes as played, places as written."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from analysis.results import FloatArray, JudgedNote, Measured
from analysis.score_notes import WrittenNote, written_name
from analysis.score_results import WrittenPlace
from analysis.units import hz_to_midi

SAME_PITCH_SEMITONES: Final = 0.6
_INSET: Final = 0.2
_MOST_OF_A_SPAN: Final = 0.5


@dataclass(frozen=True, slots=True)
class Played:
    """The notes of a take that were matched, with their pitch against the A in use.

    ``track_s`` and ``track_midi`` are the pitch track itself, NaN where nothing sounds.
    """

    notes: tuple[JudgedNote, ...]
    index: tuple[int, ...]
    pitch_midi: FloatArray
    track_s: FloatArray
    track_midi: FloatArray

    def start_s(self, at: int) -> float:
        """Give where a note begins."""
        return self.notes[at].note.start_s

    def end_s(self, at: int) -> float:
        """Give where a note ends."""
        return self.notes[at].note.end_s

    def sounds(self, midi: int, start_s: float, end_s: float) -> bool:
        """Say whether a pitch sounds through most of a span, note or not."""
        inset = _INSET * (end_s - start_s)
        first, last = np.searchsorted(self.track_s, (start_s + inset, end_s - inset))
        near = np.abs(self.track_midi[first:last] - midi) <= SAME_PITCH_SEMITONES
        return bool(near.size and np.mean(near) >= _MOST_OF_A_SPAN)

    def name(self, at: int) -> str:
        """Name what sounded, by the key where there is one."""
        return self.notes[at].spelled or self.notes[at].name or ""


def place_of(written: Sequence[WrittenNote], index: int) -> WrittenPlace:
    """Give a written note as results name it."""
    note = written[index]
    return WrittenPlace(
        index=index,
        name=written_name(note),
        midi=note.midi_pitch,
        bar=note.bar,
        beat=note.beat,
        onset_beats=note.onset_beats,
    )


def pitches_of(notes: Sequence[JudgedNote], reference_a_hz: float) -> list[float]:
    """List the pitches of notes as note numbers against an A; NaN where there is none."""
    return [
        float(hz_to_midi(j.note.pitch.value.pitch_hz, reference_a_hz))
        if isinstance(j.note.pitch, Measured)
        else float("nan")
        for j in notes
    ]
