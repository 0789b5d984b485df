import numpy as np
import pytest

from analysis.instruments import INSTRUMENTS
from analysis.intonation import (
    Tuning,
    judge_notes,
    measure_intonation,
    tuning_of_take,
    unjudged,
)
from analysis.results import (
    Intonation,
    JudgedNote,
    Measured,
    Note,
    NoteKind,
    NotePitch,
    NotMeasurable,
    Provenance,
    Reason,
    TargetKind,
    Vibrato,
)
from analysis.tuning import Temperament, open_string_targets_hz, target_hz
from analysis.units import midi_to_hz

P = Provenance("test-1")


def note(
    hertz: float,
    start: float = 0.0,
    kind: NoteKind = NoteKind.NOTE,
    vibrato: Vibrato | None = None,
    length: float = 0.5,
) -> Note:
    return Note(
        start, start + length, start, start + length, kind, -20.0,
        Measured(NotePitch(hertz, 1.0, 0.0), P), Measured(vibrato, P),
    )  # fmt: skip


def off(midi: float, cents: float, reference: float = 440.0) -> float:
    return midi_to_hz(midi + cents / 100.0, reference)


def deviation(judged: JudgedNote) -> float:
    assert isinstance(judged.deviation, Measured)
    return judged.deviation.value.deviation_cents


def summed(notes: tuple[Note, ...], tuning: Tuning) -> Intonation:
    result = measure_intonation(judge_notes(notes, tuning), tuning)
    assert isinstance(result, Measured)
    return result.value


@pytest.mark.parametrize("reference", [415.0, 440.0, 443.0])
def test_deviation_and_name(reference: float) -> None:
    tuning = Tuning(reference_a_hz=reference)
    (judged,) = judge_notes((note(off(61, -14.0, reference)),), tuning)
    assert (judged.midi, judged.name) == (61, "C#4")
    assert deviation(judged) == pytest.approx(-14.0)
    assert judged.target_hz == pytest.approx(midi_to_hz(61, reference))


@pytest.mark.parametrize(("temperament", "cents"), [
    # the third above the tonic, from exact ratios: 81/64 is 407.820 and 5/4 is 386.314 cents
    (Temperament.EQUAL, 0.0), (Temperament.PYTHAGOREAN, 7.820), (Temperament.JUST, -13.686),
])  # fmt: skip
def test_leading_third_is_held_against_its_temperament(
    temperament: Temperament, cents: float
) -> None:
    # C#5 over A4, A being the tonic and the reference
    tuning = Tuning(temperament=temperament, tonic="A")
    (judged,) = judge_notes((note(off(73, cents)),), tuning)
    assert judged.midi == 73
    assert deviation(judged) == pytest.approx(0.0, abs=6e-4)


def test_unclear_targets_are_not_guessed() -> None:
    for cents in (40.5, 47.0, -44.0):
        (judged,) = judge_notes((note(off(64, cents)),), Tuning())
        assert isinstance(judged.deviation, NotMeasurable)
        assert judged.deviation.reason is Reason.TARGET_UNCLEAR
    (judged,) = judge_notes((note(off(64, 38.0)),), Tuning())
    assert deviation(judged) == pytest.approx(38.0)


@pytest.mark.parametrize("instrument", ["violin", "viola", "cello", "double bass"])
def test_open_strings_in_pure_intervals_are_not_out(instrument: str) -> None:
    player = INSTRUMENTS[instrument]
    tuning = Tuning(instrument=player)
    for midi, hertz in open_string_targets_hz(player).items():
        (judged,) = judge_notes((note(hertz),), tuning)
        assert judged.midi == midi
        assert deviation(judged) == pytest.approx(0.0, abs=1e-6)
        assert judged.is_open_string
        # with vibrato it is stopped, unless there is no lower string to stop it on
        (stopped,) = judge_notes((note(hertz, vibrato=Vibrato(6.0, 20.0)),), tuning)
        assert stopped.is_open_string == (midi == min(open_string_targets_hz(player)))


@pytest.mark.parametrize("instrument", ["violin", "viola", "cello", "double bass"])
def test_a_note_taken_for_an_open_string_says_that_it_may_be_stopped(instrument: str) -> None:
    strings = open_string_targets_hz(INSTRUMENTS[instrument])
    tuning = Tuning(instrument=INSTRUMENTS[instrument])
    for midi, hertz in strings.items():
        (judged,) = judge_notes((note(hertz * 2.0 ** (4.0 / 1200.0)),), tuning)
        assert judged.is_open_string
        assert judged.may_be_stopped == (midi != min(strings))
        # what it would be as a stopped note is said as well
        equal = next(r for r in judged.readings if r.target is TargetKind.EQUAL)
        assert equal.deviation_cents == pytest.approx(
            1200.0 * np.log2(hertz / off(midi, 0.0)) + 4.0, abs=0.01
        )


def test_a_stopped_note_well_off_an_open_string_is_held_against_its_temperament() -> None:
    (judged,) = judge_notes((note(off(62, -12.0)),), Tuning())
    assert not judged.is_open_string
    assert deviation(judged) == pytest.approx(-12.0)


def test_scordatura_moves_the_open_strings() -> None:
    tuning = Tuning(instrument=INSTRUMENTS["violin"], open_strings=("A3", "D4", "A4", "E5"))
    (judged,) = judge_notes((note(220.0 * 1.0001),), tuning)
    assert judged.midi == 57
    (judged,) = judge_notes((note(195.556),), tuning)  # the old G string is no string now
    assert not judged.is_open_string


def test_twenty_up_and_twenty_down_do_not_hide_each_other() -> None:
    notes = tuple(note(off(60 + 2 * k, 20.0 if k % 2 else -20.0), k) for k in range(10))
    result = summed(notes, Tuning())
    assert isinstance(result.accuracy_cents, Measured)
    assert result.accuracy_cents.value.deviation_cents == pytest.approx(0.0, abs=1e-9)
    assert result.mean_absolute_cents == pytest.approx(20.0)
    assert result.precision_cents == pytest.approx(20.0 * np.sqrt(10 / 9))
    assert result.within_10_cents == 0.0
    assert result.within_25_cents == 1.0


def test_accuracy_and_precision_are_apart() -> None:
    flat = summed(tuple(note(off(60 + k, -12.0), k) for k in range(8)), Tuning())
    assert isinstance(flat.accuracy_cents, Measured)
    assert flat.accuracy_cents.value.deviation_cents == pytest.approx(-12.0)
    assert flat.precision_cents == pytest.approx(0.0, abs=1e-9)


def test_only_notes_enter_and_the_share_is_said() -> None:
    refused = NotMeasurable(Reason.TOO_SHORT, "Too short.", P)
    short = Note(4.0, 4.1, 4.0, 4.1, NoteKind.NOTE, -20.0, refused, refused)
    notes = (
        *(note(off(60, 5.0), k) for k in range(3)),
        note(off(62, 30.0), 3.0, NoteKind.GRACE),
        short,
        note(off(64, 45.0), 5.0),
    )
    result = summed(notes, Tuning())
    assert result.note_count == 3
    assert result.measured_share == pytest.approx(3 / 6)
    assert result.measured_time_share == pytest.approx(1.5 / 2.6)
    assert result.mean_absolute_cents == pytest.approx(5.0)


def test_habits_by_pitch() -> None:
    notes = tuple(
        note(off(midi, cents), k)
        for k, (midi, cents) in enumerate([(60, 4.0), (64, -8.0), (60, 8.0), (64, -8.0)])
    )
    rows = summed(notes, Tuning()).habits
    assert [(r.midi, r.name, r.count) for r in rows] == [(60, "C4", 2), (64, "E4", 2)]
    assert rows[0].mean_cents == pytest.approx(6.0)
    assert rows[1].spread_cents == pytest.approx(0.0, abs=1e-9)


def test_an_estimated_a_hides_accuracy_and_says_so() -> None:
    rng = np.random.default_rng(0)
    notes = tuple(
        note(off(int(m), -20.0 + d), k)
        for k, (m, d) in enumerate(zip(rng.integers(55, 80, 40), rng.normal(0, 5, 40), strict=True))
    )
    tuning = tuning_of_take(
        notes,
        reference_a_hz="auto",
        temperament=Temperament.EQUAL,
        tonic=None,
        instrument=INSTRUMENTS["voice"],
    )
    assert isinstance(tuning, Tuning)
    result = summed(notes, tuning)
    assert result.offset_cents == pytest.approx(-20.0, abs=3.0)
    assert result.reference_a_uncertainty_cents is not None
    assert isinstance(result.accuracy_cents, NotMeasurable)
    assert result.accuracy_cents.reason is Reason.REFERENCE_ESTIMATED
    assert result.precision_cents == pytest.approx(5.0, abs=1.5)


def test_too_little_to_sum_up() -> None:
    nothing = measure_intonation((), Tuning())
    assert isinstance(nothing, NotMeasurable)
    assert nothing.reason is Reason.NO_NOTES
    few = measure_intonation(judge_notes((note(440.0), note(441.0)), Tuning()), Tuning())
    assert isinstance(few, NotMeasurable)
    assert few.reason is Reason.TOO_FEW_NOTES
    no_a = tuning_of_take(
        (note(440.0),),
        reference_a_hz="auto",
        temperament=Temperament.EQUAL,
        tonic=None,
        instrument=INSTRUMENTS["violin"],
    )
    assert isinstance(no_a, NotMeasurable)
    (left,) = unjudged((note(440.0),), no_a)
    assert left.midi is None
    assert left.deviation is no_a


def test_pythagorean_scale_played_in_tune_reads_zero() -> None:
    scale = (62, 64, 66, 67, 69, 71, 73, 74)
    notes = tuple(
        note(target_hz(m, 442.0, Temperament.PYTHAGOREAN, "D"), k) for k, m in enumerate(scale)
    )
    tuning = Tuning(442.0, Temperament.PYTHAGOREAN, "D")
    assert summed(notes, tuning).mean_absolute_cents == pytest.approx(0.0, abs=1e-6)
    # against equal temperament the leading note alone reads 9.8 cents sharp of it
    assert summed(notes, Tuning(442.0)).mean_absolute_cents > 2.0
