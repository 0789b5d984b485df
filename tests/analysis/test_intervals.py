"""The interval of a double stop held against its sizes."""

import pytest

from analysis.intervals import interval_name, interval_targets_cents, judge_two_strings
from analysis.results import (
    Measured,
    Note,
    NoteKind,
    NotePitch,
    NotMeasurable,
    Provenance,
    Reason,
    TargetKind,
    Verdict,
)
from analysis.take_tuning import Tuning
from analysis.tuning import Temperament

MADE = Provenance("test")


def double_stop(
    lower_hz: float, upper_hz: float | None, kind: NoteKind = NoteKind.DOUBLE_STOP
) -> Note:
    no = NotMeasurable(Reason.TWO_NOTES_SOUND, "Two.", MADE)
    return Note(
        0.0, 1.0, 0.1, 0.9, kind, -20.0, Measured(NotePitch(lower_hz, 1.0, 0.0), MADE), no, upper_hz
    )


@pytest.mark.parametrize(
    ("semitones", "just", "pythagorean"),
    [
        # Cents of 16/15, 6/5, 32/27, 5/4, 81/64, 4/3, 45/32, 729/512, 3/2, 8/5, 128/81, 5/3,
        # 27/16, 15/8, 243/128 (exact ratios; any table of intervals).
        (0, 0.0, 0.0), (1, 111.731, 90.225), (3, 315.641, 294.135), (4, 386.314, 407.820),
        (5, 498.045, 498.045), (6, 590.224, 611.730), (7, 701.955, 701.955),
        (8, 813.686, 792.180), (9, 884.359, 905.865), (11, 1088.269, 1109.775),
        (12, 1200.0, 1200.0), (16, 1586.314, 1607.820),
    ],
)  # fmt: skip
def test_the_sizes_of_intervals(semitones: int, just: float, pythagorean: float) -> None:
    found = interval_targets_cents(semitones)
    assert found[TargetKind.JUST] == pytest.approx(just, abs=0.001)
    assert found[TargetKind.PYTHAGOREAN] == pytest.approx(pythagorean, abs=0.001)
    assert found[TargetKind.EQUAL] == 100.0 * semitones


def test_with_a_piano_only_the_equal_size_counts() -> None:
    assert list(interval_targets_cents(4, only_equal=True)) == [TargetKind.EQUAL]


@pytest.mark.parametrize(
    ("semitones", "name"),
    [(0, "unison"), (9, "major sixth"), (12, "octave"), (16, "octave and major third"),
     (24, "two octaves")],
)  # fmt: skip
def test_names(semitones: int, name: str) -> None:
    assert interval_name(semitones) == name


def test_a_pure_third_in_the_wrong_place_is_in_tune_as_an_interval() -> None:
    # G4 30 cents flat, with a pure third on it: the strings agree, both pitches are flat.
    lower = 392.0 * 2.0 ** (-30.0 / 1200.0)
    found = judge_two_strings(double_stop(lower, lower * 5.0 / 4.0), Tuning())
    assert found is not None
    assert found.interval == "major third"
    assert found.verdict is Verdict.IN_TUNE
    by_target = {r.target: r.deviation_cents for r in found.readings}
    assert by_target[TargetKind.JUST] == pytest.approx(0.0, abs=0.01)
    assert by_target[TargetKind.EQUAL] == pytest.approx(-13.686, abs=0.01)
    assert by_target[TargetKind.PYTHAGOREAN] == pytest.approx(-21.506, abs=0.01)
    assert found.upper_name == "B4"
    assert found.upper_deviation_cents == pytest.approx(-43.686, abs=0.1)


@pytest.mark.parametrize(
    ("cents", "verdict"),
    [(386.3, Verdict.IN_TUNE), (400.0, Verdict.DEPENDS), (407.8, Verdict.DEPENDS),
     (420.0, Verdict.OUT), (370.0, Verdict.OUT)],
)  # fmt: skip
def test_a_third_is_out_only_outside_all_its_sizes(cents: float, verdict: Verdict) -> None:
    found = judge_two_strings(double_stop(220.0, 220.0 * 2.0 ** (cents / 1200.0)), Tuning())
    assert found is not None
    assert found.verdict is verdict


def test_nothing_is_said_of_an_interval_that_could_be_either() -> None:
    assert judge_two_strings(double_stop(220.0, 220.0 * 2.0 ** (350.0 / 1200.0)), Tuning()) is None


def test_other_notes_have_no_interval() -> None:
    assert judge_two_strings(double_stop(220.0, None), Tuning()) is None
    assert judge_two_strings(double_stop(220.0, 330.0, NoteKind.NOTE), Tuning()) is None


def test_the_upper_string_is_held_against_the_targets_in_use() -> None:
    tuning = Tuning(temperament=Temperament.JUST, tonic="A")
    found = judge_two_strings(double_stop(440.0, 550.0), tuning)  # the just third on A
    assert found is not None
    assert found.upper_name == "C#5"
    assert found.upper_deviation_cents == pytest.approx(0.0, abs=0.01)
