"""Where a written note should lie: equal-tempered, Pythagorean or just targets.

Deliberately independent of the measuring code, so that each checks the other.
"""

import math

from sample_audio.specs import Temperament

_A_PITCH_CLASS = 9
_RATIOS: dict[Temperament, tuple[float, ...]] = {
    "pythagorean": (
        1, 256 / 243, 9 / 8, 32 / 27, 81 / 64, 4 / 3,
        729 / 512, 3 / 2, 128 / 81, 27 / 16, 16 / 9, 243 / 128,
    ),
    "just": (
        1, 16 / 15, 9 / 8, 6 / 5, 5 / 4, 4 / 3,
        45 / 32, 3 / 2, 8 / 5, 5 / 3, 16 / 9, 15 / 8,
    ),
}  # fmt: skip


def target_hz(
    midi: float,
    reference_a_hz: float = 440.0,
    temperament: Temperament = "equal",
    tonic: int = 0,
) -> float:
    """Frequency of a written note.

    Parameters
    ----------
    midi : float
        Note number; a fraction is added in equal-tempered cents.
    reference_a_hz : float
        Frequency of A4 (69), kept in every temperament.
    temperament : str
        ``"equal"``, ``"pythagorean"`` or ``"just"``.
    tonic : int
        Pitch class the ratios count from, 0 = C; unused when equal.

    Returns
    -------
    float
        Hz.
    """
    equal_hz = reference_a_hz * math.exp2((midi - 69.0) / 12.0)
    if temperament == "equal":
        return equal_hz
    offset = _offset_cents(round(midi), temperament, tonic)
    fixed = _offset_cents(_A_PITCH_CLASS, temperament, tonic)
    return equal_hz * math.exp2((offset - fixed) / 1200.0)


def _offset_cents(note: int, temperament: Temperament, tonic: int) -> float:
    degree = (note - tonic) % 12
    return 1200.0 * math.log2(_RATIOS[temperament][degree]) - 100.0 * degree
