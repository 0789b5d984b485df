from dataclasses import replace

import numpy as np
import pytest

from analysis.change import MeasureChange, Word, compare_takes, take_level_change
from analysis.results import (
    Alignment,
    AverageUncertainty,
    Deviation,
    Dynamics,
    Intonation,
    JudgedNote,
    Measured,
    Note,
    NoteKind,
    NotePitch,
    NotMeasurable,
    Provenance,
    Reason,
    TakeAnalysis,
    Tempo,
)

MADE_HERE = Provenance("test")
NO_PITCH = NotMeasurable(Reason.NO_PITCH, "No pitch.", MADE_HERE)


def judged(start_s, midi, cents=None, uncertainty=2.0):
    note = Note(
        start_s=start_s,
        end_s=start_s + 0.4,
        steady_start_s=start_s + 0.05,
        steady_end_s=start_s + 0.35,
        kind=NoteKind.NOTE,
        level_dbfs=-20.0,
        pitch=Measured(NotePitch(440.0, 1.0, 0.0), MADE_HERE),
        vibrato=Measured(None, MADE_HERE),
    )
    deviation = NO_PITCH if cents is None else Measured(Deviation(cents, uncertainty), MADE_HERE)
    return JudgedNote(note, midi, None, 440.0, False, deviation)


TWICE_AS_SLOW = Alignment(np.array([0.0, 10.0]), np.array([1.0, 21.0]), 1.0)


def test_changes_are_b_minus_a_with_both_uncertainties():
    a = [judged(0.0, 60, 5.0, 3.0), judged(0.5, 62, -4.0, 1.0)]
    b = [judged(1.0, 60, -2.0, 4.0), judged(2.05, 62, 0.0, 1.0)]
    change = compare_takes(a, b, TWICE_AS_SLOW)
    assert [(n.a_index, n.b_index, n.midi) for n in change.notes] == [(0, 0, 60), (1, 1, 62)]
    assert [n.change_cents for n in change.notes] == [-7.0, 4.0]
    assert change.notes[0].uncertainty_cents == pytest.approx(5.0)  # 3-4-5
    assert change.notes[1].uncertainty_cents == pytest.approx(np.sqrt(2.0))
    assert (change.a_only, change.b_only) == ((), ())


def piece(start_s, end_s, midi, cents, uncertainty):
    whole = judged(start_s, midi, cents, uncertainty)
    return replace(whole, note=replace(whole.note, end_s=end_s))


def test_touching_pieces_of_one_note_are_read_together():
    """The mean weighed by one over the squares of the standard errors (textbook)."""
    whole = [judged(1.0, 60, 5.0, 1.0)]
    cut = [piece(1.0, 1.2, 60, 15.0, 2.0), piece(1.204, 1.8, 60, 10.0, 1.0)]
    as_fast = Alignment(np.array([0.0, 10.0]), np.array([0.0, 10.0]), 1.0)
    for first, second, sign in ((whole, cut, 1.0), (cut, whole, -1.0)):
        change = compare_takes(first, second, as_fast)
        assert [n.change_cents for n in change.notes] == [pytest.approx(sign * 6.0)]
        assert change.notes[0].uncertainty_cents == pytest.approx(np.hypot(1.0, np.sqrt(0.8)))
        assert (change.a_only, change.b_only) == ((), ())


@pytest.mark.parametrize("later_a_hz", [440.0, 443.0])
def test_a_note_taken_for_an_open_string_in_one_take_only_has_not_moved(later_a_hz):
    """G3 in pure fifths under A4 is 440 * (2 / 3)**2 Hz, 3.91 cents under equal temperament."""
    pure_hz, equal_hz = 440.0 * (2.0 / 3.0) ** 2, 440.0 * 2.0 ** (-14.0 / 12.0)
    apart = 1200.0 * np.log2(equal_hz / pure_hz)
    assert apart == pytest.approx(3.91, abs=0.005)
    up = later_a_hz / 440.0
    earlier = [
        replace(judged(0.0, 55, 1.0), target_hz=pure_hz, is_open_string=True),
        judged(0.5, 69, 2.0),
        judged(1.0, 69, -3.0),
    ]
    later = [
        replace(judged(1.0, 55, 1.0 - apart), target_hz=equal_hz * up),
        replace(judged(2.0, 69, 4.0), target_hz=440.0 * up),
        replace(judged(3.0, 69, -3.0), target_hz=440.0 * up),
    ]
    change = compare_takes(earlier, later, TWICE_AS_SLOW)
    assert [n.change_cents for n in change.notes] == pytest.approx([0.0, 2.0, 0.0], abs=1e-9)


def test_repeated_notes_with_a_gap_between_stay_two():
    a = [judged(0.0, 60, 5.0)]
    b = [piece(1.0, 1.2, 60, 15.0, 2.0), piece(1.23, 1.8, 60, 10.0, 1.0)]
    change = compare_takes(a, b, TWICE_AS_SLOW)
    assert [n.change_cents for n in change.notes] == [10.0]
    assert change.b_only == (1,)


def test_a_note_left_out_and_one_added_are_named():
    a = [judged(0.0, 60, 0.0), judged(0.5, 62, 0.0), judged(1.0, 64, 0.0)]
    b = [judged(1.0, 60, 1.0), judged(2.5, 65, 1.0), judged(3.0, 64, 1.0)]
    change = compare_takes(a, b, TWICE_AS_SLOW)
    assert [(n.a_index, n.b_index) for n in change.notes] == [(0, 0), (2, 2)]
    assert change.a_only == (1,)
    assert change.b_only == (1,)


@pytest.mark.parametrize("cents", [(None, 3.0), (3.0, None), (None, None)])
def test_a_pair_without_a_measured_pitch_has_no_change_but_is_no_stranger(cents):
    a, b = [judged(0.0, 60, cents[0])], [judged(1.0, 60, cents[1])]
    change = compare_takes(a, b, TWICE_AS_SLOW)
    assert (change.notes, change.a_only, change.b_only) == ((), (), ())


def test_the_same_pitch_at_another_place_is_no_pair():
    change = compare_takes([judged(0.0, 60, 0.0)], [judged(4.0, 60, 0.0)], TWICE_AS_SLOW)
    assert (change.notes, change.a_only, change.b_only) == ((), (0,), (0,))


def test_takes_without_notes():
    change = compare_takes([], [judged(1.0, 60, 0.0)], TWICE_AS_SLOW)
    assert (change.notes, change.a_only, change.b_only) == ((), (), (0,))


def analysis(*, bpm=80.0, precision=9.0, span=14.0, accuracy=None, tempo=True, sure=None):
    intonation = Intonation(
        reference_a_hz=440.0,
        reference_a_uncertainty_cents=None,
        temperament="equal",
        tonic=None,
        offset_cents=0.0,
        accuracy_cents=Measured(accuracy or Deviation(-3.0, 2.0), MADE_HERE),
        mean_absolute_cents=8.0,
        precision_cents=precision,
        within_10_cents=0.6,
        within_25_cents=0.95,
        measured_share=1.0,
        measured_time_share=1.0,
        note_count=20,
        habits=(),
        uncertainty=sure and AverageUncertainty(sure, 2.0 * sure, 0.1, 0.1),
    )
    beats = np.arange(10) * 60 / bpm
    pulse = Tempo("given", bpm, 0.3, 4.0, 1.0, 0.0, beats, beats[:0], beats[:0])
    dynamics = Dynamics(
        -20.0, -15.0, -17.0, Measured(span, MADE_HERE), -60.0, -3.0, 0, beats, beats
    )
    return TakeAnalysis(
        duration_s=12.0,
        sample_rate_hz=48_000,
        pitch=NO_PITCH,
        notes=(),
        intonation=Measured(intonation, MADE_HERE),
        tempo=Measured(pulse, MADE_HERE)
        if tempo
        else NotMeasurable(Reason.NO_CLEAR_PULSE, "No beat.", MADE_HERE),
        dynamics=Measured(dynamics, MADE_HERE),
        provenance=MADE_HERE,
    )


def test_take_level_changes_carry_unit_and_uncertainty_and_no_verdict():
    changes = take_level_change(
        analysis(), analysis(bpm=88.0, precision=6.5, span=17.0, accuracy=Deviation(1.0, 1.5))
    )
    assert set(changes) == {
        "accuracy_cents",
        "mean_absolute_cents",
        "precision_cents",
        "mean_bpm",
        "steadiness_cv_percent",
        "dynamic_span_db",
    }
    accuracy = changes["accuracy_cents"]
    assert isinstance(accuracy, Measured)
    assert accuracy.value == MeasureChange(
        "accuracy_cents", "cents", -3.0, 1.0, 4.0, 2.5, Word.TOO_FEW_TAKES
    )
    tempo, precision = changes["mean_bpm"], changes["precision_cents"]
    assert isinstance(tempo, Measured)
    assert isinstance(precision, Measured)
    assert tempo.value.change == pytest.approx(8.0)
    assert tempo.value.uncertainty == pytest.approx(np.hypot(0.3, 0.3))
    assert precision.value.change == pytest.approx(-2.5)
    assert precision.value.uncertainty is None


def test_the_uncertainties_of_both_takes_add_in_squares():
    changes = take_level_change(analysis(sure=0.3), analysis(sure=0.4))
    for key, uncertainty in (("mean_absolute_cents", 0.5), ("precision_cents", 1.0)):
        change = changes[key]
        assert isinstance(change, Measured)
        assert change.value.uncertainty == pytest.approx(uncertainty)  # 3-4-5
    span = changes["dynamic_span_db"]
    assert isinstance(span, Measured)
    assert span.value.uncertainty is None


@pytest.mark.parametrize("sure", [(0.3, None), (None, 0.4)])
def test_a_change_from_or_to_a_number_without_an_uncertainty_has_none(sure):
    changes = take_level_change(*(analysis(sure=each) for each in sure))
    for key in ("mean_absolute_cents", "precision_cents"):
        change = changes[key]
        assert isinstance(change, Measured)
        assert change.value.uncertainty is None


@pytest.mark.parametrize("sides", [(True, False), (False, True)])
def test_what_one_take_lacks_is_not_measurable_with_its_reason(sides):
    a, b = (analysis(tempo=has_tempo) for has_tempo in sides)
    result = take_level_change(a, b)["mean_bpm"]
    assert isinstance(result, NotMeasurable)
    assert result.reason is Reason.NO_CLEAR_PULSE


def test_words_are_plain():
    assert str(Word.NO_CLEAR_CHANGE) == "no clear change"
    assert str(Word.TOO_FEW_TAKES) == "too few takes"
