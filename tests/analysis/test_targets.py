"""Plausible targets; interval sizes are exact ratios computed from their definitions."""

import numpy as np
import pytest

from analysis.instruments import INSTRUMENTS
from analysis.intonation import Tuning, judge_notes, measure_intonation
from analysis.results import (
    JudgedNote,
    Measured,
    Note,
    NoteKind,
    NotePitch,
    Provenance,
    TargetKind,
    TargetReading,
    Verdict,
    Vibrato,
)
from analysis.units import midi_to_hz

P = Provenance("test-1")
LEADING_NOTE_CENTS = 1200 * np.log2(243 / 128) - 1100  # Pythagorean, +9.775 above equal
JUST_LEADING_CENTS = 1200 * np.log2(15 / 8) - 1100  # -11.731
JUST_THIRD_CENTS = 1200 * np.log2(5 / 4) - 400  # -13.686


def note(midi: float, start: float = 0.0, *, width: float = 1.0, vibrato: bool = False) -> Note:
    shake = Vibrato(6.0, 20.0) if vibrato else None
    return Note(
        start, start + 0.5, start, start + 0.5, NoteKind.NOTE, -20.0,
        Measured(NotePitch(midi_to_hz(midi), width, 0.0), P), Measured(shake, P),
    )  # fmt: skip


def judged(midi: float, tuning: Tuning, *, width: float = 1.0) -> JudgedNote:
    (found,) = judge_notes((note(midi, width=width, vibrato=True),), tuning)
    return found


def reading(found: JudgedNote, target: TargetKind) -> TargetReading:
    return next(r for r in found.readings if r.target is target)


def test_a_leading_note_is_not_wrong_by_equal_temperament_alone() -> None:
    """G#5 in A, played as the leading note of a pure-fifth scale."""
    found = judged(80 + LEADING_NOTE_CENTS / 100, Tuning(tonic="A"))
    assert isinstance(found.deviation, Measured)
    assert found.deviation.value.deviation_cents == pytest.approx(9.775, abs=1e-3)
    assert found.verdict is Verdict.DEPENDS
    assert found.depends_on_temperament
    assert reading(found, TargetKind.PYTHAGOREAN).deviation_cents == pytest.approx(0.0, abs=1e-6)
    assert reading(found, TargetKind.JUST).deviation_cents == pytest.approx(21.506, abs=1e-3)
    assert found.plausible_high_cents == pytest.approx(9.775, abs=1e-3)
    assert found.plausible_low_cents == pytest.approx(-11.731, abs=1e-3)


@pytest.mark.parametrize(
    ("cents", "verdict"),
    [
        (0.0, Verdict.IN_TUNE),
        (4.0, Verdict.IN_TUNE),
        (7.820, Verdict.DEPENDS),  # the Pythagorean third, 81/64
        (JUST_THIRD_CENTS, Verdict.DEPENDS),
        (-17.0, Verdict.DEPENDS),  # lower than all, by less than is heard
        (-20.0, Verdict.OUT),
        (14.0, Verdict.OUT),
    ],
)
def test_a_third_is_out_only_outside_all_targets(cents: float, verdict: Verdict) -> None:
    assert judged(73 + cents / 100, Tuning(tonic="A")).verdict is verdict


def test_what_is_less_sure_is_out_later() -> None:
    assert judged(73.14, Tuning(tonic="A"), width=8.0).verdict is Verdict.DEPENDS
    assert judged(73.18, Tuning(tonic="A"), width=8.0).verdict is Verdict.OUT


def test_without_a_tonic_every_key_is_plausible() -> None:
    found = judged(80.098, Tuning())
    assert found.verdict is Verdict.DEPENDS
    assert [r.target for r in found.readings] == [TargetKind.EQUAL]
    assert found.plausible_high_cents >= LEADING_NOTE_CENTS - 1e-6
    assert found.plausible_low_cents <= JUST_LEADING_CENTS + 1e-6
    assert judged(80.35, Tuning()).verdict is Verdict.OUT
    # no key moves the A
    assert judged(69.08, Tuning(instrument=INSTRUMENTS["voice"])).verdict is Verdict.OUT


def test_with_a_piano_only_equal_targets_count() -> None:
    found = judged(80 + LEADING_NOTE_CENTS / 100, Tuning(tonic="A", only_equal=True))
    assert found.verdict is Verdict.OUT
    assert [r.target for r in found.readings] == [TargetKind.EQUAL]
    assert not found.depends_on_temperament


def test_a_ringing_note_is_held_against_the_string_as_tuned() -> None:
    """The D string four cents under pure tuning; the stopped D an octave up matches it."""
    pure_d = 62 + (700 - 1200 * np.log2(3 / 2)) / 100  # a pure fifth under the A
    notes = (
        note(pure_d - 0.04, 0.0),
        note(pure_d - 0.04, 1.0),
        note(74 + pure_d - 62 - 0.04, 2.0, vibrato=True),
    )
    string_d, _, upper = judge_notes(notes, Tuning())
    assert string_d.is_open_string
    found = reading(upper, TargetKind.OPEN_STRING)
    assert found.string == "D4"
    assert found.deviation_cents == pytest.approx(0.0, abs=1e-6)
    assert found.uncertainty_cents == pytest.approx(np.hypot(1.0, np.sqrt(2) / 2))
    summed = measure_intonation(judge_notes(notes, Tuning()), Tuning())
    assert isinstance(summed, Measured)
    (string,) = summed.value.strings
    assert (string.name, string.count) == ("D4", 2)
    assert string.deviation_cents == pytest.approx(-4.0, abs=1e-6)


def test_a_mistuned_string_is_known_by_its_sameness() -> None:
    flat = tuple(note(62 - 0.14 + 0.004 * k, float(k)) for k in range(4))
    assert all(found.is_open_string for found in judge_notes(flat, Tuning()))
    # a finger does not come down four times within a cent; two notes prove nothing
    spread = tuple(note(62 - 0.14 + 0.06 * k, float(k)) for k in range(-2, 2))
    assert not any(found.is_open_string for found in judge_notes(spread[:2], Tuning()))


def test_a_string_that_was_not_heard_stands_at_its_pure_pitch() -> None:
    found = judged(74.0, Tuning())
    assert reading(found, TargetKind.OPEN_STRING_PURE).deviation_cents == pytest.approx(
        1200 * np.log2(3 / 2) - 700, abs=1e-6
    )
    assert judged(73.0, Tuning()).readings == (TargetReading(TargetKind.EQUAL, 0.0, 1.0),)
