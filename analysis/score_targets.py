"""Target pitches of written notes: an F sharp is not a G flat.

A Pythagorean pitch follows from the spelling alone: every letter and accidental has its
place in the chain of fifths. A just one follows from the spelling and the tonic: the
degrees of the usual 5-limit scale, other accidentals a chromatic semitone of 25/24 away
(augmented unison 25/24, augmented second 75/64, diminished fourth 32/25, augmented fifth
25/16: the intervals' usual names in tables of just intervals).
"""

from fractions import Fraction
from typing import Final

import numpy as np

from analysis.spelling import spelled_name
from analysis.tuning import Temperament
from analysis.units import A4_MIDI, parse_pitch_class

_CHAIN: Final = "FCGDAEB"
_LETTERS: Final = "CDEFGAB"
_SEMITONES: Final = (0, 2, 4, 5, 7, 9, 11)
_FIFTH_CENTS: Final = 1200.0 * float(np.log2(1.5))
_CHROMATIC: Final = Fraction(25, 24)
# Degree of the scale (0 is the tonic's letter) and accidentals against the major scale.
_JUST: Final = {
    (0, 0): Fraction(1),
    (1, -1): Fraction(16, 15),
    (1, 0): Fraction(9, 8),
    (2, -1): Fraction(6, 5),
    (2, 0): Fraction(5, 4),
    (3, 0): Fraction(4, 3),
    (3, 1): Fraction(45, 32),
    (4, 0): Fraction(3, 2),
    (5, -1): Fraction(8, 5),
    (5, 0): Fraction(5, 3),
    (6, -1): Fraction(16, 9),
    (6, 0): Fraction(15, 8),
}


def fifths_of(step: str, alter: int) -> int:
    """Give a note's place in the chain of fifths: C is 0, G 1, F -1, F sharp 6."""
    return _CHAIN.index(step) - 1 + 7 * alter


def spelled_offset_cents(
    step: str, alter: int, temperament: Temperament, tonic: str | None
) -> float | None:
    """Say how far a spelled note's target lies from equal temperament, A being common.

    Parameters
    ----------
    step, alter
        Letter, and sharps (positive) or flats.
    temperament : Temperament
    tonic : str or None
        Note name; only just targets need one.

    Returns
    -------
    float or None
        Signed cents, 0 for every A; ``None`` for a just target without a tonic.
    """
    if temperament is Temperament.EQUAL:
        return 0.0
    own_a = _a_of_key(tonic)
    if temperament is Temperament.PYTHAGOREAN:
        # Each fifth of the chain is wider than the tempered one by the same amount.
        return (fifths_of(step, alter) - fifths_of(*own_a)) * (_FIFTH_CENTS - 700.0)
    if tonic is None:
        return None
    return _just_cents(step, alter, tonic) - _just_cents(*own_a, tonic)


def _a_of_key(tonic: str | None) -> tuple[str, int]:
    """Give the note of the key that stands on the A: B double flat in D flat major.

    The same as without a score, so that adding one moves no target of the key.
    """
    if tonic is None:
        return "A", 0
    name = spelled_name(A4_MIDI, tonic)
    return name[0], name.count("#") - name.count("b")


def _just_cents(step: str, alter: int, tonic: str) -> float:
    """How far a degree of the just scale lies from the tempered one, cents."""
    letter, root = tonic.strip()[0].upper(), parse_pitch_class(tonic)
    degree = (_LETTERS.index(step) - _LETTERS.index(letter)) % 7
    own = _SEMITONES[_LETTERS.index(step)] + alter
    semitones = own - root
    # Against the major scale on the tonic, in semitones: 0, or the accidentals it takes.
    against_major = (semitones - _SEMITONES[degree] + 6) % 12 - 6
    if (degree, against_major) in _JUST:
        ratio = _JUST[degree, against_major]
    else:
        ratio = _JUST[degree, 0] * _CHROMATIC**against_major
    tempered = _SEMITONES[degree] + against_major
    return 1200.0 * float(np.log2(float(ratio))) - 100.0 * tempered
