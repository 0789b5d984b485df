"""Two strings at once, and what only looks like it; the generator holds the truth."""

from typing import Any

import numpy as np
import pytest

from analysis.results import JudgedNote, Measured, NoteKind, NotMeasurable, Reason, TakeAnalysis
from analysis.take import TakeSettings, analyse_take
from analysis.units import cents_between
from sample_audio.generator import NoteSpec, Phrase, PhraseSpec, render

# Cents by which the intervals of a just triad differ from equal temperament: exact ratios
# 5/4, 6/5, 4/3, 3/2, 5/3.
JUST = {0: 0.0, 3: 15.641, 4: -13.686, 5: -1.955, 7: 1.955, 9: -15.641}


def phrase(*notes: NoteSpec, instrument: Any = "cello", **more: Any) -> Phrase:
    return render(PhraseSpec(notes, tempo=60.0, instrument=instrument, level_dbfs=-24.0, **more))


def together(*phrases: Phrase) -> tuple[np.ndarray, int]:
    samples = np.zeros(max(p.samples.size for p in phrases))
    for one in phrases:
        samples[: one.samples.size] += one.samples
    return samples, phrases[0].sample_rate_hz


def measured(sound: tuple[np.ndarray, int], instrument: str = "cello") -> TakeAnalysis:
    return analyse_take(*sound, TakeSettings(instrument))


def pitches(judged: JudgedNote) -> tuple[float, float]:
    assert isinstance(judged.note.pitch, Measured)
    assert judged.note.second_pitch_hz is not None
    return judged.note.pitch.value.pitch_hz, judged.note.second_pitch_hz


@pytest.mark.parametrize("interval", [0, 12])
@pytest.mark.parametrize(("instrument", "low"), [("violin", 62), ("viola", 60), ("cello", 48)])
def test_a_unison_and_an_octave_that_beat_are_two_strings(
    instrument: str, low: int, interval: int
) -> None:
    played = phrase(
        NoteSpec(low, 1.4, 4.0, second_midi=low + interval, second_deviation_cents=-4.0),
        instrument=instrument,
        seed=5,
    )
    (note,) = measured((played.samples, played.sample_rate_hz), instrument).notes
    assert note.note.kind is NoteKind.DOUBLE_STOP
    truth = played.truth.notes[0]
    assert truth.second_centre_hz is not None
    true = sorted((truth.centre_hz, truth.second_centre_hz))
    for found_hz, true_hz in zip(pitches(note), true, strict=True):
        assert abs(cents_between(true_hz, found_hz)) < 1.0


@pytest.mark.parametrize("extent", [8.0, 15.0, 30.0])
@pytest.mark.parametrize(
    ("instrument", "midi"), [("violin", 76), ("viola", 60), ("cello", 45), ("double bass", 42)]
)
def test_a_vibrato_is_not_two_strings(instrument: str, midi: int, extent: float) -> None:
    played = phrase(
        NoteSpec(midi, 1.5, vibrato_rate_hz=5.5, vibrato_extent_cents=extent),
        instrument=instrument,
        seed=6,
    )
    found = measured((played.samples, played.sample_rate_hz), instrument).notes
    assert [n.note.kind for n in found] == [NoteKind.NOTE]


def test_a_pitch_that_is_corrected_is_not_a_unison() -> None:
    played = phrase(NoteSpec(57, 0.7, -7.0), NoteSpec(57, 0.7, 3.0, articulation="legato"), seed=7)
    found = measured((played.samples, played.sample_rate_hz)).notes
    assert {n.note.kind for n in found} == {NoteKind.NOTE}


@pytest.mark.parametrize("chord", [(0, 4, 7), (0, 3, 7), (0, 5, 9)])
@pytest.mark.parametrize(("instrument", "root"), [("cello", 60), ("cello", 55), ("violin", 74)])
def test_a_just_triad_is_not_the_low_note_it_repeats_with(
    instrument: str, root: int, chord: tuple[int, ...]
) -> None:
    voices = [
        phrase(NoteSpec(root + step, 1.5, JUST[step]), instrument=instrument, seed=step)
        for step in chord
    ]
    for judged in measured(together(*voices), instrument).notes:
        assert isinstance(judged.note.pitch, NotMeasurable)
        assert judged.note.pitch.reason is Reason.TWO_NOTES_SOUND


@pytest.mark.parametrize(
    ("old", "new"), [(54, 59), (62, 61), (57, 64), (50, 55), (60, 63), (62, 66)]
)
@pytest.mark.parametrize("overlap_s", [0.1, 0.2])
def test_a_note_let_go_under_the_next_makes_no_third_note(
    old: int, new: int, overlap_s: float
) -> None:
    sound = together(
        phrase(NoteSpec(old, 1.0 + overlap_s, release_s=overlap_s), seed=old),
        phrase(NoteSpec(new, 1.0, attack_s=0.05), lead_in_s=1.3, seed=new),
    )
    for judged in measured(sound).notes:
        if judged.note.kind is NoteKind.NOTE and isinstance(judged.note.pitch, Measured):
            assert judged.midi in (old, new)
            # a tail may sound in it, which its interval has to say
            pitch = judged.note.pitch.value
            away = min(
                abs(cents_between(440.0 * 2.0 ** ((m - 69) / 12), pitch.pitch_hz))
                for m in (old, new)
            )
            assert away <= max(pitch.uncertainty_cents, 1.5)


def test_an_open_string_that_rings_under_a_note_is_no_double_stop() -> None:
    note = phrase(NoteSpec(59, 1.2), instrument="violin", seed=8)
    ring = phrase(
        NoteSpec(62, 1.5, level_db=-12.0, articulation="pizzicato"), instrument="violin", seed=9
    )
    found = measured(together(note, ring), "violin").notes
    assert found[0].note.kind is NoteKind.NOTE
    assert found[0].midi == 59


@pytest.mark.parametrize("instrument", ["violin", "cello"])
def test_double_stops_are_recognised_in_most_cases_and_never_one_wrong_note(
    instrument: str,
) -> None:
    rng = np.random.default_rng(31)
    lowest = {"violin": 55, "cello": 36}[instrument]
    notes = [
        NoteSpec(
            low := lowest + int(rng.integers(0, 20)),
            1.2,
            float(rng.normal(0.0, 6.0)),
            second_midi=low + interval,
            second_deviation_cents=float(rng.normal(0.0, 6.0)),
        )
        for interval in (3, 4, 5, 6, 7, 8, 9, 10)
    ]
    played = phrase(*notes, instrument=instrument, snr_db=30.0, reverb_time_s=0.5, seed=31)
    found = measured((played.samples, played.sample_rate_hz), instrument).notes
    recognised, both = 0, 0
    for truth in played.truth.notes:
        middle_s = (truth.start_s + truth.end_s) / 2
        over = [n for n in found if n.note.start_s <= middle_s <= n.note.end_s]
        assert {n.note.kind for n in over} <= {NoteKind.DOUBLE_STOP}
        recognised += bool(over)
        assert truth.second_centre_hz is not None
        true = (truth.centre_hz, truth.second_centre_hz)
        if over and over[0].note.second_pitch_hz is not None:
            errors = [abs(cents_between(t, f)) for t, f in zip(true, pitches(over[0]), strict=True)]
            both += max(errors) <= 5.0
    assert recognised >= 7
    assert both >= 6
