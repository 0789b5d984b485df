"""What the measuring needs to know about an instrument.

Ranges are common practice, no source (the bowed strings' agree with the usual
orchestration handbooks); open strings after the standard tunings. All pitches are
sounding pitches: the double bass is listed an octave below its notation.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final

from analysis.units import midi_to_hz, parse_note_name

BASS_EXTENSION_MIDI: Final = 24
"""C1, the lowest note of a double bass with extension."""


@dataclass(frozen=True, slots=True)
class Instrument:
    """One instrument, as far as measuring goes.

    Attributes
    ----------
    name : str
        The name players use; the key in :data:`INSTRUMENTS`.
    lowest_midi, highest_midi : int
        Sounding range that is searched for a pitch.
    open_strings : tuple of str
        Names of the open strings, low to high; empty where there are none.
    pure_strings : bool
        The open strings are tuned to each other in pure fifths (or fourths), not
        to a tempered scale.
    window_periods : float
        Length of the analysis window in periods of the lowest note. Three resolve
        the lowest note and keep its vibrato; wind and voice use the same.
    plucked : bool
        Notes start hard and die away; there is no steady bow.
    single_line : bool
        One note at a time is the rule, so intonation can be measured.
    """

    name: str
    lowest_midi: int
    highest_midi: int
    open_strings: tuple[str, ...] = ()
    pure_strings: bool = False
    window_periods: float = 3.0
    plucked: bool = False
    single_line: bool = True

    @property
    def floor_hz(self) -> float:
        """Lowest frequency searched: a semitone and a half under the lowest note."""
        return midi_to_hz(self.lowest_midi - 1.5)

    @property
    def ceiling_hz(self) -> float:
        """Highest frequency searched: two semitones above the highest note."""
        return midi_to_hz(self.highest_midi + 2.0)


def _named(name: str, lowest: str, highest: str, **features: object) -> Instrument:
    return Instrument(name, parse_note_name(lowest), parse_note_name(highest), **features)  # type: ignore[arg-type]


_ALL: Final = (
    _named("violin", "G3", "A7", open_strings=("G3", "D4", "A4", "E5"), pure_strings=True),
    _named("viola", "C3", "E6", open_strings=("C3", "G3", "D4", "A4"), pure_strings=True),
    _named("cello", "C2", "C6", open_strings=("C2", "G2", "D3", "A3"), pure_strings=True),
    _named("double bass", "C1", "D5", open_strings=("E1", "A1", "D2", "G2"), pure_strings=True),
    _named("voice", "C2", "E6"),
    _named("flute", "B3", "D7"),
    _named("oboe", "A#3", "A6"),
    _named("clarinet", "D3", "C7"),
    _named("bassoon", "A#1", "E5"),
    _named("saxophone", "C#2", "E6"),
    _named("horn", "B1", "F5"),
    _named("trumpet", "E3", "D6"),
    _named("trombone", "E2", "F5"),
    _named("recorder", "F3", "D7"),
    _named(
        "guitar",
        "E2",
        "E6",
        open_strings=("E2", "A2", "D3", "G3", "B3", "E4"),
        plucked=True,
        single_line=False,
    ),
    _named("piano", "A1", "C8", plucked=True, single_line=False),
    _named("other", "C2", "C7"),
)

INSTRUMENTS: Final[Mapping[str, Instrument]] = MappingProxyType({i.name: i for i in _ALL})
"""Every known instrument by its name."""


def instrument(name: str) -> Instrument:
    """Look an instrument up by its name; case and surrounding blanks do not matter.

    Raises
    ------
    ValueError
        If the name is not known; the message lists the names that are.
    """
    found = INSTRUMENTS.get(name.strip().lower())
    if found is None:
        raise ValueError(f"unknown instrument {name!r}; known are {', '.join(INSTRUMENTS)}")
    return found
