"""Takes held against their score: generated takes with known slips, in three rooms."""

from dataclasses import replace

import numpy as np
import pytest

from analysis.results import Measured, NotMeasurable, Reason, SlipKind, StretchKind
from analysis.score_matching import match_to_score
from analysis.score_take import WrittenLine
from analysis.score_targets import spelled_offset_cents
from analysis.take import TakeSettings, analyse_take
from analysis.tuning import Temperament, temperament_offset_cents
from app.journal.scores import ScoreNote
from sample_audio.generator import render
from sample_audio.specs import NoteSpec, PhraseSpec

# An invented melody in G major: MIDI note number and beats.
MELODY = (
    (67, 1), (69, 0.5), (71, 0.5), (72, 1), (74, 1), (71, 1), (67, 1), (67, 1), (64, 1),
    (66, 0.5), (67, 0.5), (69, 1), (62, 2), (74, 1), (72, 0.5), (71, 0.5), (69, 1), (69, 1),
    (71, 0.5), (72, 0.5), (74, 0.5), (76, 0.5), (78, 1), (79, 1), (76, 1), (74, 0.5),
    (72, 0.5), (71, 1), (69, 1), (67, 2),
)  # fmt: skip
SHARPS = ("C", "C#", "D", "D#", "E", "F", "F#", "G", "G#", "A", "A#", "B")
FLATS = ("C", "Db", "D", "Eb", "E", "F", "Gb", "G", "Ab", "A", "Bb", "B")
ROOMS = {
    "dry": {},
    "room": {"reverb_time_s": 0.5, "reverb_db": -9.0},
    "20 dB": {"snr_db": 20.0},
}


def written(melody=MELODY, names=SHARPS, **marks):
    onset, notes = 0.0, []
    for midi, beats in melody:
        name = names[midi % 12]
        alter = name.count("#") - name.count("b")
        notes.append(
            ScoreNote(onset, beats, midi, name[0], alter, midi // 12 - 1,
                      bar=int(onset // 4) + 1, beat=onset % 4 + 1, **marks)
        )  # fmt: skip
        onset += beats
    return WrittenLine(tuple(notes), np.arange(0.0, onset), "invented")


def played(melody, seed=1, deviations=None, shifts=None, **room):
    rng = np.random.default_rng(seed)
    notes = tuple(
        NoteSpec(
            midi,
            beats,
            deviation_cents=float(rng.normal(0, 6)) if deviations is None else deviations[k],
            vibrato_rate_hz=5.5 if beats >= 1 else 0.0,
            vibrato_extent_cents=15.0 if beats >= 1 else 0.0,
            onset_shift_s=float(rng.normal(0, 0.008)) if shifts is None else shifts[k],
        )
        for k, (midi, beats) in enumerate(melody)
    )
    return render(PhraseSpec(notes, tempo=80, seed=seed, **room))


def held(phrase, line, **settings):
    return analyse_take(phrase.samples, phrase.sample_rate_hz, TakeSettings(**settings), score=line)


def slips(analysis):
    assert isinstance(analysis.score, Measured)
    return [
        (slip.kind, slip.written.index if slip.written else None, slip.played)
        for slip in analysis.score.value.slips
    ]


TAKES = {
    "clean": (MELODY, []),
    "a rest for a note": (
        (*MELODY[:10], (None, 0.5), *MELODY[11:]),
        [(SlipKind.MISSING, 10, "")],
    ),
    "a note passed over": ((*MELODY[:20], *MELODY[21:]), [(SlipKind.MISSING, 20, "")]),
    "a wrong note": (
        (*MELODY[:14], (73, 0.5), *MELODY[15:]),
        [(SlipKind.WRONG, 14, "C#5")],
    ),
    "a note added": (
        (*MELODY[:11], (69, 0.5), (71, 0.5), *MELODY[12:]),
        [(SlipKind.ADDED, None, "B4")],
    ),
}


@pytest.mark.parametrize("room", ROOMS)
@pytest.mark.parametrize("take", TAKES)
def test_every_slip_is_found_and_none_invented(take, room):
    melody, expected = TAKES[take]
    analysis = held(played(melody, **ROOMS[room]), written())
    assert slips(analysis) == expected
    assert analysis.score.value.matched_count >= len(MELODY) - 3
    assert analysis.tempo.value.anchor == "score"
    assert analysis.tempo.value.mean_bpm == pytest.approx(80.0, rel=0.01)


def test_a_false_start_is_a_stretch_and_no_row_of_added_notes():
    analysis = held(played((*MELODY[:5], (None, 1.5), *MELODY)), written())
    assert slips(analysis) == []
    (stretch,) = analysis.score.value.stretches
    assert (stretch.kind, stretch.count) == (StretchKind.NOT_WRITTEN, 5)
    assert stretch.start_s < 1.0
    assert analysis.tempo.value.mean_bpm == pytest.approx(80.0, rel=0.01)


def test_skipped_bars_are_a_stretch_and_no_row_of_missing_notes():
    analysis = held(played((*MELODY[:8], *MELODY[14:])), written())
    assert slips(analysis) == []
    (stretch,) = analysis.score.value.stretches
    assert (stretch.kind, stretch.count) == (StretchKind.NOT_PLAYED, 6)
    assert (stretch.first.index, stretch.last.index) == (8, 13)


def test_notes_that_come_late_are_told_by_how_much():
    late = [0.0] * len(MELODY)
    late[13], late[22] = 0.06, -0.05
    analysis = held(played(MELODY, shifts=late, deviations=[0.0] * len(MELODY)), written())
    offsets = {pair.written.index: pair for pair in analysis.score.value.pairs}
    assert offsets[13].offset_ms == pytest.approx(60, abs=15)
    assert offsets[22].offset_ms == pytest.approx(-50, abs=15)
    assert offsets[13].offset_percent == pytest.approx(100 * 0.06 / 0.75, abs=2.5)
    others = [abs(p.offset_ms) for k, p in offsets.items() if k not in (13, 22)]
    assert np.median(others) < 8.0


def test_the_rhythm_is_held_against_the_notation_and_not_against_evenness():
    flat = [0.0] * len(MELODY)
    even = held(played(MELODY, shifts=flat, deviations=flat), written()).score.value.rhythm
    assert even.spread_ms < 12.0
    # The same line with its dotted pairs played even is no longer as written.
    dotted = [(69, 0.75), (71, 0.25)]
    other = written((*MELODY[:1], *dotted, *MELODY[3:]))
    uneven = held(played(MELODY, shifts=flat, deviations=flat), other).score.value
    assert uneven.rhythm.spread_ms > even.spread_ms
    early = next(pair for pair in uneven.pairs if pair.written.index == 2)
    assert early.offset_ms == pytest.approx(-0.25 * 750, abs=40)


def test_f_sharp_is_not_g_flat_in_pythagorean():
    # They lie a Pythagorean comma apart, 23.46 cents (any table of intervals).
    melody = ((67, 1), (66, 1), (69, 1), (66, 1), (67, 1), (66, 1), (69, 1), (67, 2))
    phrase = played(melody, deviations=[0.0] * len(melody), shifts=[0.0] * len(melody))
    settings = {"temperament": Temperament.PYTHAGOREAN, "tonic": "G"}
    found = {}
    for names in (SHARPS, FLATS):
        analysis = held(phrase, written(melody, names), **settings)
        note = analysis.notes[1]
        found[note.spelled] = note.deviation.value.deviation_cents
    assert set(found) == {"F#4", "Gb4"}
    assert found["Gb4"] - found["F#4"] == pytest.approx(23.46, abs=0.01)
    habits = {row.spelled for row in analysis.intonation.value.habits}
    assert "Gb4" in habits


@pytest.mark.parametrize("temperament", [Temperament.PYTHAGOREAN, Temperament.JUST])
@pytest.mark.parametrize("tonic", ["C", "G", "D", "A", "E", "F", "Bb", "Eb", "Db", "F#"])
def test_a_note_as_its_key_spells_it_has_the_same_target_with_and_without_a_score(
    temperament, tonic
):
    from analysis.spelling import spelled_name

    for midi in range(60, 72):
        name = spelled_name(midi, tonic)
        alter = name.count("#") - name.count("b")
        offset = spelled_offset_cents(name[0], alter, temperament, tonic)
        assert offset == pytest.approx(temperament_offset_cents(midi, temperament, tonic))


@pytest.mark.parametrize(
    ("step", "alter", "ratio"),
    [("C", 1, 25 / 24), ("D", 1, 75 / 64), ("F", -1, 32 / 25), ("G", 1, 25 / 16), ("E", -1, 6 / 5)],
)
def test_just_intervals_have_their_usual_ratios(step, alter, ratio):
    # Chromatic semitone, augmented second, diminished fourth, augmented fifth, minor third
    # over C: the ratios of tables of just intervals (common practice).
    semitones = {"C": 0, "D": 2, "E": 4, "F": 5, "G": 7}[step] + alter
    cents = spelled_offset_cents(step, alter, Temperament.JUST, "C")
    tonic = spelled_offset_cents("C", 0, Temperament.JUST, "C")
    assert cents - tonic + 100 * semitones == pytest.approx(1200 * np.log2(ratio))


def test_a_note_far_out_is_told_by_what_is_written():
    # Half a tone apart nothing but the score tells which of the two was meant.
    out = [0.0] * len(MELODY)
    out[11] = -52.0
    analysis = held(played(MELODY, deviations=out, shifts=[0.0] * len(MELODY)), written())
    note = analysis.notes[11]
    assert note.spelled == "A4"
    assert note.deviation.value.deviation_cents == pytest.approx(-52.0, abs=3.0)
    assert slips(analysis) == []


def test_wrong_notes_enter_no_average_of_intonation():
    melody, _ = TAKES["a wrong note"]
    flat = [0.0] * len(melody)
    flat[14] = 30.0
    analysis = held(played(melody, deviations=flat, shifts=[0.0] * len(melody)), written())
    assert analysis.intonation.value.mean_absolute_cents < 2.0


def test_habits_by_string_and_finger_come_only_from_what_is_printed():
    line = written()
    marked = tuple(
        replace(note, string=2, finger=3) if note.midi_pitch == 71 else note for note in line.notes
    )
    out = [15.0 if midi == 71 else 0.0 for midi, _ in MELODY]
    phrase = played(MELODY, deviations=out, shifts=[0.0] * len(MELODY))
    plain = held(phrase, line).score.value
    assert plain.string_habits == plain.finger_habits == ()
    reading = held(phrase, replace(line, notes=marked)).score.value
    (string,), (finger,) = reading.string_habits, reading.finger_habits
    assert (string.number, finger.number, string.count) == (2, 3, 5)
    assert string.mean_cents == pytest.approx(15.0, abs=2.0)


def test_grace_notes_are_kept_out():
    line = written()
    grace = ScoreNote(7.0, 0.0, 69, "A", 0, 4, bar=2, beat=4.0, grace=True)
    analysis = held(played(MELODY), replace(line, notes=(*line.notes[:6], grace, *line.notes[6:])))
    assert slips(analysis) == []
    assert analysis.score.value.written_count == len(MELODY)


def test_harmonics_are_held_against_the_pitch_that_sounds():
    # Touched at half the string the A string sounds an octave up, at a fifth of it two
    # octaves and a third (the partials of a string).
    melody = ((67, 1), (81, 2), (67, 1), (76, 1), (71, 1), (67, 2))
    line = written(melody)
    notes = tuple(
        replace(n, midi_pitch=69, octave=4, harmonic=True) if n.midi_pitch == 81 else n
        for n in line.notes
    )
    analysis = held(played(melody, deviations=[0.0] * 6), replace(line, notes=notes))
    assert slips(analysis) == []


def test_another_piece_does_not_follow_the_score():
    other = tuple((midi, 1) for midi in (60, 63, 60, 58, 63, 65, 70, 68, 61, 63, 56, 58, 61, 63))
    analysis = held(played(other), written())
    assert isinstance(analysis.score, NotMeasurable)
    assert analysis.score.reason is Reason.NO_MATCH
    assert isinstance(analysis.intonation, Measured)


def test_long_lines_are_matched_in_order():
    rng = np.random.default_rng(5)
    pitches = rng.integers(55, 90, 1500)
    line = written(tuple((int(p), 0.5) for p in pitches))
    start_s = np.arange(1500) * 0.3
    kept = np.delete(np.arange(1500), [100, 700])
    matching = match_to_score(line.notes, start_s[kept], pitches[kept].astype(float))
    assert np.all(np.diff(matching.written) > 0)
    assert set(range(1500)) - set(matching.written.tolist()) == {100, 700}
