"""Conversions between hertz, MIDI note numbers, cents and note names.

Source of the formulas: p = 69 + 12 log2(f / 440) and cents = 1200 log2(f2 / f1),
with ISO 16:1975's standard tuning frequency A4 = 440 Hz as the default reference.
"""

import re
from typing import Final, overload

import numpy as np
from numpy.typing import ArrayLike, NDArray

FloatArray = NDArray[np.float64]

A4_MIDI: Final = 69
CENTS_PER_OCTAVE: Final = 1200.0

_NAMES: Final = ("C", "C#", "D", "D#", "E", "F", "F#", "G", "G#", "A", "A#", "B")
_STEPS: Final = {"C": 0, "D": 2, "E": 4, "F": 5, "G": 7, "A": 9, "B": 11}
_ACCIDENTALS: Final = {"": 0, "#": 1, "♯": 1, "b": -1, "♭": -1, "##": 2, "x": 2, "bb": -2}
_NOTE: Final = re.compile(r"([A-Ga-g])(##|#|♯|x|bb|b|♭)?(-?\d+)?\Z")


@overload
def hz_to_midi(frequency_hz: float, reference_a_hz: float = 440.0) -> float: ...
@overload
def hz_to_midi(frequency_hz: FloatArray, reference_a_hz: float = 440.0) -> FloatArray: ...
def hz_to_midi(
    frequency_hz: float | FloatArray, reference_a_hz: float = 440.0
) -> float | FloatArray:
    """Convert frequencies to fractional MIDI note numbers.

    Parameters
    ----------
    frequency_hz : float or array
        Frequencies above 0 Hz; NaN stays NaN.
    reference_a_hz : float
        Frequency of A4 (note number 69).

    Returns
    -------
    float or array
        Note numbers of the same shape; 69 is A4, one unit is 100 cents.
    """
    midi = A4_MIDI + 12.0 * np.log2(np.asarray(frequency_hz, dtype=np.float64) / reference_a_hz)
    return float(midi) if midi.ndim == 0 else midi


@overload
def midi_to_hz(midi: float, reference_a_hz: float = 440.0) -> float: ...
@overload
def midi_to_hz(midi: FloatArray, reference_a_hz: float = 440.0) -> FloatArray: ...
def midi_to_hz(midi: float | FloatArray, reference_a_hz: float = 440.0) -> float | FloatArray:
    """Convert (fractional) MIDI note numbers to equal-tempered frequencies in Hz.

    Parameters
    ----------
    midi : float or array
        Note numbers; 69 is A4.
    reference_a_hz : float
        Frequency of A4.

    Returns
    -------
    float or array
        Frequencies in Hz, same shape.
    """
    hertz = reference_a_hz * np.exp2((np.asarray(midi, dtype=np.float64) - A4_MIDI) / 12.0)
    return float(hertz) if hertz.ndim == 0 else hertz


@overload
def cents_between(f1_hz: float, f2_hz: float) -> float: ...
@overload
def cents_between(f1_hz: ArrayLike, f2_hz: ArrayLike) -> FloatArray | float: ...
def cents_between(f1_hz: ArrayLike, f2_hz: ArrayLike) -> FloatArray | float:
    """Return the interval from ``f1_hz`` up to ``f2_hz`` in cents.

    Parameters
    ----------
    f1_hz, f2_hz : float or array
        Frequencies above 0 Hz; arrays broadcast.

    Returns
    -------
    float or array
        1200 log2(f2 / f1): positive where ``f2_hz`` is the higher.
    """
    ratio = np.asarray(f2_hz, dtype=np.float64) / np.asarray(f1_hz, dtype=np.float64)
    cents = CENTS_PER_OCTAVE * np.log2(ratio)
    return float(cents) if cents.ndim == 0 else cents


def note_name(midi: int) -> str:
    """Name a MIDI note in scientific pitch notation, with sharps (``61`` is ``'C#4'``)."""
    return f"{_NAMES[midi % 12]}{midi // 12 - 1}"


def pitch_class_name(pitch_class: int) -> str:
    """Name a pitch class 0 to 11 without its octave, with sharps (``1`` is ``'C#'``)."""
    return _NAMES[pitch_class % 12]


def parse_note_name(name: str) -> int:
    """Return the MIDI note number of a name such as ``'Eb4'``, ``'C#-1'`` or ``'F♯3'``.

    Raises
    ------
    ValueError
        If the name is not a letter A to G, at most one accidental sign and an octave.
    """
    letter, accidental, octave = _parsed(name)
    if octave is None:
        raise ValueError(f"{name!r} has no octave; write for example 'A4'")
    return 12 * (int(octave) + 1) + _STEPS[letter] + _ACCIDENTALS[accidental]


def parse_pitch_class(name: str) -> int:
    """Return the pitch class (0 is C, 9 is A) of a name such as ``'Eb'``; an octave is ignored.

    Raises
    ------
    ValueError
        If the name is not a note name.
    """
    letter, accidental, _ = _parsed(name)
    return (_STEPS[letter] + _ACCIDENTALS[accidental]) % 12


def _parsed(name: str) -> tuple[str, str, str | None]:
    match = _NOTE.match(name.strip())
    if match is None:
        raise ValueError(f"{name!r} is not a note name; write for example 'A4', 'C#5' or 'Eb3'")
    return match.group(1).upper(), match.group(2) or "", match.group(3)
