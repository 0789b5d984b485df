"""Two strings at once: the interval between them is judged first, then their pitches.

Two strings that sound together are heard against each other long before they are heard
against an absolute pitch. The interval is held against the ratio of small numbers at
which it does not beat (5-limit just intonation), against Pythagorean tuning and against
equal temperament; the ratios are those of any handbook of tuning (A. J. Ellis's appendix
to Helmholtz's 'On the Sensations of Tone', table of intervals; transcribed).
"""

from fractions import Fraction
from typing import Final

import numpy as np

from analysis.results import (
    Measured,
    Note,
    NoteKind,
    TargetKind,
    TargetReading,
    TwoStrings,
    Verdict,
)
from analysis.take_tuning import Tuning
from analysis.targets import HEARD_FROM_CENTS
from analysis.tuning import target_hz
from analysis.units import cents_between, hz_to_midi, note_name

_UNCLEAR_FROM_CENTS: Final = 40.0
_NAMES: Final = (
    "unison", "minor second", "major second", "minor third", "major third", "fourth",
    "tritone", "fifth", "minor sixth", "major sixth", "minor seventh", "major seventh",
)  # fmt: skip
_OCTAVES: Final = ("octave", "two octaves", "three octaves")
_JUST: Final = tuple(
    Fraction(p, q)
    for p, q in (
        (1, 1), (16, 15), (9, 8), (6, 5), (5, 4), (4, 3),
        (45, 32), (3, 2), (8, 5), (5, 3), (9, 5), (15, 8),
    )
)  # fmt: skip
_PYTHAGOREAN: Final = tuple(
    Fraction(p, q)
    for p, q in (
        (1, 1), (256, 243), (9, 8), (32, 27), (81, 64), (4, 3),
        (729, 512), (3, 2), (128, 81), (27, 16), (16, 9), (243, 128),
    )
)  # fmt: skip


def interval_name(semitones: int) -> str:
    """Name an interval; beyond the octave with the octaves it holds.

    >>> interval_name(9), interval_name(16)
    ('major sixth', 'octave and major third')
    """
    octaves, rest = divmod(semitones, 12)
    if octaves == 0:
        return _NAMES[rest]
    whole = _OCTAVES[min(octaves, len(_OCTAVES)) - 1]
    return f"{whole} and {_NAMES[rest]}" if rest else whole


def interval_targets_cents(semitones: int, *, only_equal: bool = False) -> dict[TargetKind, float]:
    """Return the sizes an interval may have, in cents, the just one first.

    Parameters
    ----------
    semitones : int
        At least 0.
    only_equal : bool
        Whether an equal-tempered instrument plays too.
    """
    octaves, rest = divmod(semitones, 12)
    equal = {TargetKind.EQUAL: 100.0 * semitones}
    if only_equal:
        return equal
    just, pythagorean = (
        1200.0 * (octaves + float(np.log2(float(ratios[rest])))) for ratios in (_JUST, _PYTHAGOREAN)
    )
    return {TargetKind.JUST: just, TargetKind.PYTHAGOREAN: pythagorean} | equal


def judge_two_strings(note: Note, tuning: Tuning) -> TwoStrings | None:
    """Judge the interval of a double stop, and the pitch of its upper string.

    Parameters
    ----------
    note : Note
    tuning : Tuning
        What its pitches are held against.

    Returns
    -------
    TwoStrings or None
        ``None`` for any other note, where a pitch is not known, and where the interval lies
        so far between two that nobody can say which was meant.
    """
    upper_hz = note.second_pitch_hz
    if note.kind is not NoteKind.DOUBLE_STOP or upper_hz is None:
        return None
    if not isinstance(note.pitch, Measured):
        return None
    lower = note.pitch.value
    size = cents_between(lower.pitch_hz, upper_hz)
    semitones = max(round(size / 100.0), 0)
    if abs(size - 100.0 * semitones) >= _UNCLEAR_FROM_CENTS:
        return None
    width = float(np.sqrt(2.0)) * lower.uncertainty_cents
    targets = interval_targets_cents(semitones, only_equal=tuning.only_equal)
    upper_midi, upper_cents = _against_target(upper_hz, tuning)
    reference_width = tuning.reference_uncertainty_cents or 0.0
    return TwoStrings(
        interval=interval_name(semitones),
        semitones=semitones,
        interval_cents=size,
        uncertainty_cents=width,
        readings=tuple(TargetReading(k, size - cents, width) for k, cents in targets.items()),
        verdict=_verdict(size, tuple(targets.values()), max(width, HEARD_FROM_CENTS)),
        upper_midi=upper_midi,
        upper_name=note_name(upper_midi),
        upper_deviation_cents=upper_cents,
        upper_uncertainty_cents=float(np.hypot(lower.uncertainty_cents, reference_width)),
    )


def _verdict(size: float, targets: tuple[float, ...], unheard: float) -> Verdict:
    """In tune at the first target, out outside of all of them."""
    if abs(size - targets[0]) <= unheard:
        return Verdict.IN_TUNE
    outside = max(min(targets) - size, size - max(targets))
    return Verdict.OUT if outside > unheard else Verdict.DEPENDS


def _against_target(pitch_hz: float, tuning: Tuning) -> tuple[int, float]:
    near = round(hz_to_midi(pitch_hz, tuning.reference_a_hz))
    midi, target = min(
        (
            (m, target_hz(m, tuning.reference_a_hz, tuning.temperament, tuning.tonic))
            for m in (near - 1, near, near + 1)
        ),
        key=lambda choice: abs(cents_between(choice[1], pitch_hz)),
    )
    return midi, cents_between(target, pitch_hz)
