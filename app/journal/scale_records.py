"""What a scale, an arpeggio or a row of broken thirds is asked for with."""

from dataclasses import dataclass
from enum import StrEnum


class Figure(StrEnum):
    """In which order the notes of a key are played."""

    SCALE = "scale"
    ARPEGGIO = "arpeggio"
    BROKEN_THIRDS = "broken thirds"


class Mode(StrEnum):
    """Which notes a key has."""

    MAJOR = "major"
    NATURAL_MINOR = "natural minor"
    HARMONIC_MINOR = "harmonic minor"
    MELODIC_MINOR = "melodic minor"
    CHROMATIC = "chromatic"
    DOMINANT_SEVENTH = "dominant seventh"
    DIMINISHED_SEVENTH = "diminished seventh"


class Rhythm(StrEnum):
    """How the notes share the beat."""

    EVEN = "even"
    DOTTED = "dotted"
    REVERSE_DOTTED = "short-long"


MODES_OF: dict[Figure, tuple[Mode, ...]] = {
    Figure.SCALE: (
        Mode.MAJOR,
        Mode.NATURAL_MINOR,
        Mode.HARMONIC_MINOR,
        Mode.MELODIC_MINOR,
        Mode.CHROMATIC,
    ),
    Figure.ARPEGGIO: (
        Mode.MAJOR,
        Mode.NATURAL_MINOR,
        Mode.DOMINANT_SEVENTH,
        Mode.DIMINISHED_SEVENTH,
    ),
    Figure.BROKEN_THIRDS: (
        Mode.MAJOR,
        Mode.NATURAL_MINOR,
        Mode.HARMONIC_MINOR,
        Mode.MELODIC_MINOR,
    ),
}
"""The modes that each figure is played in."""


@dataclass(frozen=True, slots=True)
class ScaleSpec:
    """A scale, an arpeggio or broken thirds, up and down again.

    Attributes
    ----------
    tonic : str
        Spelled, without octave: ``"Eb"``; as it sounds, not as a transposing instrument
        reads it.
    start_octave : int
        Octave of the first note (4 begins at middle C).
    octaves : int
        1 to 4.
    notes_a_beat : int
        1, 2, 3 or 4.
    slurred : int
        Notes in one bow or breath; 1: each its own.
    lowest_midi : int
        The instrument's lowest note; broken thirds leave out their last turn where it
        would lie below.
    """

    tonic: str
    mode: Mode = Mode.MAJOR
    figure: Figure = Figure.SCALE
    start_octave: int = 4
    octaves: int = 1
    notes_a_beat: int = 2
    rhythm: Rhythm = Rhythm.EVEN
    slurred: int = 1
    lowest_midi: int = 0
