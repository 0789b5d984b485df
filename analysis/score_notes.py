"""A written note, as the measures see it: what any score must tell of each note."""

from collections.abc import Sequence
from typing import Protocol

import numpy as np

from analysis.results import FloatArray


class WrittenNote(Protocol):
    """One note of a score, at the pitch that sounds; positions in quarter notes.

    See :class:`app.journal.scores.ScoreNote`, which fits, for what each one means.
    """

    @property
    def onset_beats(self) -> float:
        """Quarter notes from the beginning of the score, repeats unfolded."""

    @property
    def duration_beats(self) -> float:
        """Quarter notes; 0 for a grace note."""

    @property
    def midi_pitch(self) -> int:
        """Sounding note number (69 is A4)."""

    @property
    def step(self) -> str:
        """Letter of the spelling."""

    @property
    def alter(self) -> int:
        """Sharps (positive) or flats of the spelling."""

    @property
    def octave(self) -> int:
        """Octave of the letter."""

    @property
    def bar(self) -> int:
        """Number of the bar as printed."""

    @property
    def beat(self) -> float:
        """Place in the bar, 1.0 being the first beat."""

    @property
    def slurred(self) -> bool:
        """Under a slur from the note before it."""

    @property
    def grace(self) -> bool:
        """A grace note."""

    @property
    def harmonic(self) -> bool:
        """A harmonic."""

    @property
    def technique(self) -> str:
        """``"pizzicato"``, ``"tremolo"``, ``"trill"`` or empty."""

    @property
    def string(self) -> int | None:
        """Number of the string where it is printed, 1 being the highest."""

    @property
    def finger(self) -> int | None:
        """Finger where it is printed."""

    @property
    def chord(self) -> tuple[int, ...]:
        """Lower note numbers that sound with it."""


def onsets_of(written: Sequence[WrittenNote]) -> FloatArray:
    """List where the notes begin.

    Returns
    -------
    (n,) array
        Quarter notes.
    """
    return np.array([note.onset_beats for note in written], dtype=np.float64)


def written_name(note: WrittenNote) -> str:
    """Name a note as it is spelled: ``'Bb4'``."""
    sign = "#" * note.alter if note.alter > 0 else "b" * -note.alter
    return f"{note.step}{sign}{note.octave}"
