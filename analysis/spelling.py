"""Names of notes by the tonic: what is A# in B major is Bb in G minor.

A MIDI number has lost its spelling. With a tonic every degree is taken from the chain
of fifths between five below and six above it (the same chain as the Pythagorean
targets), which spells all notes of the major, and of the harmonic and melodic minor
scales as they are written.
"""

from typing import Final

from analysis.units import note_name, parse_pitch_class

_CHAIN: Final = "FCGDAEB"
_FIRST_OF_CHAIN: Final = -1  # F, counted in fifths from C
_LOWEST_FIFTH, _HIGHEST_FIFTH = -5, 6


def spelled_name(midi: int, tonic: str | None) -> str:
    """Name a note as it is written in a key.

    Parameters
    ----------
    midi : int
        MIDI note number (69 is A4).
    tonic : str or None
        Note name of the tonic, ``'G'`` or ``'Eb'``; without one the name has sharps.

    Returns
    -------
    str
        Scientific pitch notation, ``'Bb4'``; the octave is that of the letter (B#3 sounds
        as C4).

    Raises
    ------
    ValueError
        If the tonic is not a note name.
    """
    if tonic is None:
        return note_name(midi)
    degree = (midi - parse_pitch_class(tonic)) % 12
    above = next(f for f in range(_LOWEST_FIFTH, _HIGHEST_FIFTH + 1) if 7 * f % 12 == degree)
    place = _fifths_above_c(tonic) + above - _FIRST_OF_CHAIN
    accidental, letter = divmod(place, 7)
    sign = "#" * accidental if accidental > 0 else "b" * -accidental
    return f"{_CHAIN[letter]}{sign}{(midi - accidental) // 12 - 1}"


def _fifths_above_c(tonic: str) -> int:
    """Return the place of a note in the chain of fifths, C being 0, G 1, F -1."""
    letter = tonic.strip()[0].upper()
    natural = _CHAIN.index(letter) + _FIRST_OF_CHAIN
    raised = (parse_pitch_class(tonic) - parse_pitch_class(letter) + 6) % 12 - 6
    return natural + 7 * raised
