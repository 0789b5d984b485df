"""The plausible targets of a note: temperaments, keys, and the open string it rings with.

Just and Pythagorean thirds differ by a syntonic comma (21.5 cents), so one table of
targets cannot call a note wrong. A note is *out* only outside all plausible targets, by
more than its uncertainty and by more than is heard; otherwise its readings stand side
by side. Without a tonic the plausible targets are those of every key that holds both
the note and the A.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

import numpy as np

from analysis.results import (
    Measured,
    Note,
    NoteKind,
    StringPitch,
    TargetKind,
    TargetReading,
    Verdict,
)
from analysis.score_targets import spelled_offset_cents
from analysis.tuning import Temperament, target_hz, temperament_offset_cents
from analysis.units import A4_MIDI, cents_between, hz_to_midi, note_name, pitch_class_name

# About the smallest difference that is heard between two tones (a rule of thumb of
# acoustics textbooks; read second-hand only).
HEARD_FROM_CENTS: Final = 5.0

OPEN_STRING_CENTS: Final = 6.0
_MISTUNED_CENTS: Final = 25.0
_SAME_STRING_SPREAD_CENTS: Final = 2.5
_FEWEST_OF_A_MISTUNED: Final = 3

_HALF_95: Final = 1.96
_KINDS: Final = {
    Temperament.EQUAL: TargetKind.EQUAL,
    Temperament.PYTHAGOREAN: TargetKind.PYTHAGOREAN,
    Temperament.JUST: TargetKind.JUST,
}
_TEMPERED: Final = (Temperament.PYTHAGOREAN, Temperament.JUST)
_SCALES: Final = (
    frozenset({0, 2, 4, 5, 7, 9, 11}),
    frozenset({0, 2, 3, 5, 7, 8, 9, 10, 11}),
)
"""Degrees of the major, and of the minor scale with its raised sixth and seventh."""


@dataclass(frozen=True, slots=True)
class Plausible:
    """What one note is held against, and what follows from it."""

    readings: tuple[TargetReading, ...]
    low_cents: float
    high_cents: float
    depends_on_temperament: bool
    verdict: Verdict


def strings_as_tuned(
    notes: Iterable[Note], strings: dict[int, float], reference_a_hz: float
) -> tuple[StringPitch, ...]:
    """Read the open strings from the notes that were played on them.

    Parameters
    ----------
    notes : iterable of Note
        Of a take.
    strings : dict
        MIDI number of each string to its purely tuned frequency.
    reference_a_hz : float
        The A in use.

    Returns
    -------
    tuple of StringPitch
        Low to high; strings that were not heard alone are missing. The lowest string's
        own note can only be the string. Any other may be stopped on the string below: it
        is taken for open without vibrato where it lies within 6 cents of pure tuning,
        or where three or more such notes agree to within 2.5 cents, as no finger does.
    """
    own: dict[int, list[tuple[float, float, bool]]] = {}
    for note in notes:
        if note.kind is not NoteKind.NOTE or not isinstance(note.pitch, Measured):
            continue
        pitch = note.pitch.value
        midi = round(hz_to_midi(pitch.pitch_hz, reference_a_hz))
        if midi in strings:
            cents = cents_between(strings[midi], pitch.pitch_hz)
            own.setdefault(midi, []).append((cents, pitch.uncertainty_cents, vibrates(note)))
    found = (
        _string_pitch(midi, strings[midi], heard, is_lowest=midi == min(strings))
        for midi, heard in sorted(own.items())
    )
    return tuple(string for string in found if string is not None)


def vibrates(note: Note) -> bool:
    """Say whether a note was found to have vibrato."""
    return isinstance(note.vibrato, Measured) and note.vibrato.value is not None


def _string_pitch(
    midi: int, pure_hz: float, heard: list[tuple[float, float, bool]], *, is_lowest: bool
) -> StringPitch | None:
    still = [(cents, width) for cents, width, vibrato in heard if is_lowest or not vibrato]
    near = [(c, w) for c, w in still if is_lowest or abs(c) <= OPEN_STRING_CENTS]
    within = [(c, w) for c, w in still if abs(c) <= _MISTUNED_CENTS]
    agree = (
        len(within) >= _FEWEST_OF_A_MISTUNED
        and float(np.std([c for c, _ in within], ddof=1)) <= _SAME_STRING_SPREAD_CENTS
    )
    alone = within if agree else near
    if not alone:
        return None
    cents = np.array([c for c, _ in alone])
    widths = np.array([w for _, w in alone])
    mean = float(np.mean(cents))
    own = float(np.sqrt(np.sum(widths**2))) / len(cents)
    spread = float(np.std(cents, ddof=1)) if len(cents) > 1 else 0.0
    width = float(np.hypot(own, _HALF_95 * spread / np.sqrt(len(cents))))
    hertz = pure_hz * 2.0 ** (mean / 1200.0)
    return StringPitch(midi, note_name(midi), hertz, mean, width, len(cents))


def plausible_targets(
    midi: int,
    pitch_hz: float,
    uncertainty_cents: float,
    target_in_use_hz: float,
    *,
    reference_a_hz: float,
    tonic: str | None,
    strings: dict[int, float],
    tuned: tuple[StringPitch, ...],
    only_equal: bool = False,
    written: tuple[str, int] | None = None,
) -> Plausible:
    """Hold a note against every plausible target.

    Parameters
    ----------
    midi : int
        The written note.
    pitch_hz, uncertainty_cents : float
        Where it lies, and half of the 95 % interval of its deviation.
    target_in_use_hz : float
        The target its deviation was taken from.
    reference_a_hz, tonic
        What the temperaments are built on; without a tonic every key counts that holds
        both the note and the A.
    strings : dict
        MIDI number of each open string to its purely tuned frequency.
    tuned : tuple of StringPitch
        From :func:`strings_as_tuned`.
    only_equal : bool
        The note is played with an equal-tempered instrument.
    written : (str, int), optional
        Letter and accidentals of the note where a score spells it.

    Returns
    -------
    Plausible
    """
    in_use = cents_between(target_hz(midi, reference_a_hz), target_in_use_hz)
    deviation = cents_between(target_in_use_hz, pitch_hz)
    against_equal = deviation + in_use
    offsets = _temperament_offsets(midi % 12, tonic, only_equal)
    if written is not None and not only_equal:
        offsets = _spelled_offsets(*written, tonic, offsets)
    readings = [
        TargetReading(_KINDS[temperament], against_equal - offset, uncertainty_cents)
        for temperament, offset in offsets.named
    ]
    ringing = _ringing(midi, pitch_hz, uncertainty_cents, strings, tuned)
    targets = [offsets.low - in_use, offsets.high - in_use, 0.0]
    moved = offsets.high - offsets.low
    if ringing is not None:
        readings.append(ringing)
        targets.append(deviation - ringing.deviation_cents)
    low, high = min(targets), max(targets)
    return Plausible(
        readings=tuple(readings),
        low_cents=low,
        high_cents=high,
        depends_on_temperament=moved > abs(deviation) > uncertainty_cents,
        verdict=_verdict(deviation, low, high, uncertainty_cents),
    )


def _verdict(deviation: float, low: float, high: float, uncertainty: float) -> Verdict:
    unheard = max(uncertainty, HEARD_FROM_CENTS)
    if abs(deviation) <= unheard:
        return Verdict.IN_TUNE
    outside = max(low - deviation, deviation - high)
    return Verdict.OUT if outside > unheard else Verdict.DEPENDS


@dataclass(frozen=True, slots=True)
class _Offsets:
    """Targets of a pitch class, cents above equal temperament with the A in common."""

    named: tuple[tuple[Temperament, float], ...]
    low: float
    high: float


@lru_cache(maxsize=1024)
def _temperament_offsets(pitch_class: int, tonic: str | None, only_equal: bool) -> _Offsets:
    named = [(Temperament.EQUAL, 0.0)]
    every = [0.0]
    if not only_equal and tonic is not None:
        named += [(t, temperament_offset_cents(pitch_class, t, tonic)) for t in _TEMPERED]
        every = [offset for _, offset in named]
    elif not only_equal:
        for key in range(12):
            if any({(pitch_class - key) % 12, (A4_MIDI - key) % 12} <= s for s in _SCALES):
                name = pitch_class_name(key)
                every += [temperament_offset_cents(pitch_class, t, name) for t in _TEMPERED]
    return _Offsets(tuple(named), min(every), max(every))


def _spelled_offsets(step: str, alter: int, tonic: str | None, every: _Offsets) -> _Offsets:
    """Give the targets of a spelled note; without a tonic every key's stay plausible."""
    spelled = [
        (temperament, offset)
        for temperament in (Temperament.EQUAL, *_TEMPERED)
        if (offset := spelled_offset_cents(step, alter, temperament, tonic)) is not None
    ]
    found = [offset for _, offset in spelled]
    if tonic is None:
        found += [every.low, every.high]
    return _Offsets(tuple(spelled), min(found), max(found))


def _ringing(
    midi: int,
    pitch_hz: float,
    uncertainty_cents: float,
    strings: dict[int, float],
    tuned: tuple[StringPitch, ...],
) -> TargetReading | None:
    """Hold a note against the open string of its name that lies nearest."""
    named = [s for s in strings if s % 12 == midi % 12]
    if not named:
        return None
    string = min(named, key=lambda s: (abs(s - midi), s))
    octave = 2.0 ** ((midi - string) / 12)
    as_tuned = next((t for t in tuned if t.midi == string), None)
    hertz = as_tuned.pitch_hz if as_tuned else strings[string]
    width = float(np.hypot(uncertainty_cents, as_tuned.uncertainty_cents if as_tuned else 0.0))
    kind = TargetKind.OPEN_STRING if as_tuned else TargetKind.OPEN_STRING_PURE
    return TargetReading(kind, cents_between(hertz * octave, pitch_hz), width, note_name(string))
