"""Target pitches: temperaments, the reference A, open strings in pure intervals."""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from typing import Final

import numpy as np
from numpy.typing import NDArray
from scipy.special import stdtrit

from analysis.instruments import Instrument
from analysis.units import A4_MIDI, midi_to_hz, parse_note_name, parse_pitch_class

FloatArray = NDArray[np.float64]

STANDARD_A_HZ: Final = 440.0
LOWEST_A_HZ: Final = 380.0
HIGHEST_A_HZ: Final = 480.0


class Temperament(StrEnum):
    """How the twelve notes are tuned against each other."""

    EQUAL = "equal"
    PYTHAGOREAN = "pythagorean"
    JUST = "just"


# Semitones above the tonic as exact ratios. Pythagorean: the chain of fifths from five
# below to six above the tonic. Just: the usual 5-limit chromatic scale.
_PYTHAGOREAN: Final = tuple(
    Fraction(a, b)
    for a, b in (
        (1, 1), (256, 243), (9, 8), (32, 27), (81, 64), (4, 3),
        (729, 512), (3, 2), (128, 81), (27, 16), (16, 9), (243, 128),
    )
)  # fmt: skip
_JUST: Final = tuple(
    Fraction(a, b)
    for a, b in (
        (1, 1), (16, 15), (9, 8), (6, 5), (5, 4), (4, 3),
        (45, 32), (3, 2), (8, 5), (5, 3), (16, 9), (15, 8),
    )
)  # fmt: skip
_RATIOS: Final = {Temperament.PYTHAGOREAN: _PYTHAGOREAN, Temperament.JUST: _JUST}
_PURE_STEPS: Final = {7: Fraction(3, 2), 5: Fraction(4, 3), 12: Fraction(2), 0: Fraction(1)}


def temperament_offset_cents(midi: int, temperament: Temperament, tonic: str | None) -> float:
    """Return how far a note's target lies from equal temperament, A being common to both.

    Parameters
    ----------
    midi : int
        The written note as a MIDI number (sounding).
    temperament : Temperament
        Equal needs no tonic; the others do.
    tonic : str or None
        Note name of the tonic, ``'D'`` or ``'Eb'``; the octave does not matter.

    Returns
    -------
    float
        Signed cents; 0 for every A.

    Raises
    ------
    ValueError
        If the temperament needs a tonic and there is none, or it is not a note name.
    """
    if temperament is Temperament.EQUAL:
        return 0.0
    if tonic is None:
        raise ValueError(f"{temperament.value} targets need a tonic, for example 'D'")
    root = parse_pitch_class(tonic)
    ratios = _RATIOS[temperament]

    def against_equal(pitch_class: int) -> float:
        degree = (pitch_class - root) % 12
        return 1200.0 * float(np.log2(float(ratios[degree]))) - 100.0 * degree

    return against_equal(midi % 12) - against_equal(A4_MIDI % 12)


def target_hz(
    midi: int,
    reference_a_hz: float = STANDARD_A_HZ,
    temperament: Temperament = Temperament.EQUAL,
    tonic: str | None = None,
) -> float:
    """Return the frequency a note should have.

    Parameters
    ----------
    midi : int
        MIDI note number of the written note (69 is A4).
    reference_a_hz : float
        Frequency of A4; every temperament keeps its A on it.
    temperament, tonic
        See :func:`temperament_offset_cents`.

    Returns
    -------
    float
        Target frequency in Hz.

    Raises
    ------
    ValueError
        If the temperament needs a tonic and there is none.
    """
    offset = temperament_offset_cents(midi, temperament, tonic)
    return midi_to_hz(midi + offset / 100.0, reference_a_hz)


def open_string_targets_hz(
    instrument: Instrument,
    reference_a_hz: float = STANDARD_A_HZ,
    strings: Sequence[str] | None = None,
) -> dict[int, float]:
    """Return the frequency of every open string, by its MIDI number.

    Strings a fifth, fourth, octave or unison apart are tuned pure, outwards from the
    A string; any other step, and every step of an instrument that is not tuned in pure
    intervals, is equal-tempered.

    Parameters
    ----------
    instrument : Instrument
        Supplies the strings and how they are tuned.
    reference_a_hz : float
        Frequency of A4.
    strings : sequence of str, optional
        Sounding note names of the strings where they differ (scordatura), low to high.

    Returns
    -------
    dict
        MIDI number of each string to its frequency in Hz; empty without strings.
    """
    midis = [parse_note_name(s) for s in (strings or instrument.open_strings)]
    if not midis:
        return {}
    anchor = next((i for i, m in enumerate(midis) if m % 12 == A4_MIDI % 12), len(midis) - 1)
    hertz = [midi_to_hz(m, reference_a_hz) for m in midis]
    outwards = [(i, i - 1) for i in range(anchor + 1, len(midis))]
    outwards += [(i, i + 1) for i in range(anchor - 1, -1, -1)]
    for this, neighbour in outwards:
        step = midis[this] - midis[neighbour]
        pure = _PURE_STEPS.get(abs(step)) if instrument.pure_strings else None
        if pure is None:
            hertz[this] = hertz[neighbour] * 2.0 ** (step / 12.0)
        else:
            hertz[this] = hertz[neighbour] * float(pure if step >= 0 else 1 / pure)
    return dict(zip(midis, hertz, strict=True))


@dataclass(frozen=True, slots=True)
class ReferenceEstimate:
    """An estimated reference A with half of its 95 % interval in cents."""

    reference_a_hz: float
    uncertainty_cents: float
    note_count: int


def estimate_reference_a(
    pitch_hz: FloatArray,
    uncertainty_cents: FloatArray,
    temperament: Temperament = Temperament.EQUAL,
    tonic: str | None = None,
) -> ReferenceEstimate | None:
    """Estimate the A a player tuned to from the pitches of the notes of a take.

    The offsets from the temperament's grid wrap around at half a semitone, so the
    starting point is the densest place of the circle; from there an iteratively
    re-weighted mean (Tukey's biweight) sets stray notes aside. The interval is a
    Student interval of that mean: it covers the player's own scatter.

    Parameters
    ----------
    pitch_hz, uncertainty_cents : (n,) arrays
        Centres of the measured notes and half widths of their 95 % intervals.
    temperament, tonic
        The grid the notes are held against.

    Returns
    -------
    ReferenceEstimate or None
        ``None`` with fewer than five notes, or where no offset stands out.
    """
    keep = np.isfinite(pitch_hz)
    if np.count_nonzero(keep) < _FEWEST_NOTES:
        return None
    midi = 69.0 + 12.0 * np.log2(pitch_hz[keep] / STANDARD_A_HZ)
    weight = 1.0 / (_PLAYER_SCATTER_CENTS**2 + (uncertainty_cents[keep] / 1.96) ** 2)
    grid = np.array([temperament_offset_cents(k, temperament, tonic) for k in range(12)])
    centre = _densest_offset(midi, weight, grid)
    offsets = _offsets_from_grid(midi, centre, grid)
    return _biweight_interval(offsets, weight, centre)


_FEWEST_NOTES: Final = 5
_TUKEY: Final = 4.685
_PLAYER_SCATTER_CENTS: Final = 8.0


def _offsets_from_grid(midi: FloatArray, centre_cents: float, grid: FloatArray) -> FloatArray:
    """Offset in cents of each note from its nearest grid note shifted by the centre."""
    shifted = midi - centre_cents / 100.0
    below = np.floor(shifted).astype(np.int64)
    best = np.full(midi.shape, np.inf)
    for step in (-1, 0, 1, 2):
        candidate = below + step
        offset = 100.0 * (shifted - candidate) - grid[candidate % 12]
        best = np.where(np.abs(offset) < np.abs(best), offset, best)
    return best


def _densest_offset(midi: FloatArray, weight: FloatArray, grid: FloatArray) -> float:
    centres = np.arange(-50.0, 50.0, 1.0)
    density = [
        float(np.sum(weight * np.exp(-0.5 * (_offsets_from_grid(midi, c, grid) / 10.0) ** 2)))
        for c in centres
    ]
    return float(centres[int(np.argmax(density))])


def _biweight_interval(
    offsets: FloatArray, weight: FloatArray, centre: float
) -> ReferenceEstimate | None:
    """Biweight mean with the interval of an M-estimate (Mosteller and Tukey)."""
    mean, share = 0.0, np.zeros_like(offsets)
    for _ in range(12):
        residual = offsets - mean
        scale = max(float(np.median(np.abs(residual))) * 1.4826, 1.0)
        share = np.clip(1.0 - (residual / (_TUKEY * scale)) ** 2, 0.0, None)
        mean += float(np.sum(weight * share**2 * residual) / np.sum(weight * share**2))
    pull = weight * share**2 * (offsets - mean)
    stiffness = weight * share * (5.0 * share - 4.0)
    count = int(np.count_nonzero(share))
    if count < _FEWEST_NOTES or np.sum(stiffness) <= 0.0:
        return None
    error = float(np.sqrt(np.sum(pull**2)) / np.sum(stiffness)) * np.sqrt(count / (count - 1.0))
    reference = STANDARD_A_HZ * 2.0 ** ((centre + mean) / 1200.0)
    if not LOWEST_A_HZ <= reference <= HIGHEST_A_HZ:
        return None
    return ReferenceEstimate(reference, float(stdtrit(count - 1, 0.975)) * error, count)
