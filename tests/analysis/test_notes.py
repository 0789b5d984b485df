"""Notes found in generated phrases: the truth is the generator's, to the sample."""

from typing import Any

import mir_eval
import numpy as np
import pytest

from analysis.blocks import MonoSamples
from analysis.instruments import INSTRUMENTS
from analysis.notes import find_notes
from analysis.onsets import detect_onsets
from analysis.pitch import track_pitch
from analysis.results import Measured, Note, NoteKind, NotMeasurable, Reason
from analysis.units import cents_between, hz_to_midi
from sample_audio.generator import NoteSpec, Phrase, PhraseSpec, render


def notes_of(phrase: Phrase, instrument: str = "violin") -> tuple[Note, ...]:
    player = INSTRUMENTS[instrument]
    result = track_pitch(
        phrase.samples,
        phrase.sample_rate_hz,
        floor_hz=player.floor_hz,
        ceiling_hz=player.ceiling_hz,
    )
    assert isinstance(result, Measured)
    source = MonoSamples(phrase.samples, phrase.sample_rate_hz)
    onset_s, strength = detect_onsets(source, phrase.sample_rate_hz, track=result.value)
    return find_notes(result.value, onset_s, strength, player, source=source)


def played(*notes: NoteSpec, instrument: Any = "violin", **more: Any) -> Phrase:
    return render(PhraseSpec(notes, tempo=60.0, instrument=instrument, **more))


def kinds(notes: tuple[Note, ...]) -> list[NoteKind]:
    return [note.kind for note in notes]


def pitch(note: Note) -> float:
    assert isinstance(note.pitch, Measured)
    return note.pitch.value.pitch_hz


SCALE = tuple(
    NoteSpec(m, 0.5, deviation_cents=d)
    for m, d in zip(
        (62, 64, 66, 67, 69, 69, 71, 73, 74), (3, -9, 14, 0, -22, 6, 8, -2, 5), strict=True
    )
)


@pytest.mark.parametrize("snr_db", [None, 30.0, 20.0])
@pytest.mark.parametrize(
    ("instrument", "down"), [("violin", 0), ("viola", 7), ("cello", 19), ("double bass", 31)]
)
def test_a_scale_with_a_repeated_note(instrument: str, down: int, snr_db: float | None) -> None:
    lower = tuple(NoteSpec(n.midi - down, 0.5, n.deviation_cents) for n in SCALE)
    phrase = played(*lower, instrument=instrument, snr_db=snr_db, seed=4)
    found = notes_of(phrase, instrument)
    true = phrase.truth.notes
    assert len(found) == len(true)
    assert set(kinds(found)) == {NoteKind.NOTE}
    for note, truth in zip(found, true, strict=True):
        assert note.start_s == pytest.approx(truth.start_s, abs=0.006)
        assert note.end_s == pytest.approx(truth.end_s, abs=0.03)
        assert abs(cents_between(truth.centre_hz, pitch(note))) < 1.0
    intervals = [np.array([(n.start_s, n.end_s) for n in ns]) for ns in (true, found)]
    scored = mir_eval.transcription.precision_recall_f1_overlap(
        intervals[0],
        np.array([n.centre_hz for n in true]),
        intervals[1],
        np.array([pitch(n) for n in found]),
        onset_tolerance=0.01,
        pitch_tolerance=2.0,
    )
    assert scored[2] == 1.0


def test_centre_of_a_vibrato_is_the_mean_of_its_cycles() -> None:
    """+-20 cents at 6 Hz around +7 cents is +7, within 1."""
    phrase = played(
        NoteSpec(69, 1.0, 7.0, vibrato_rate_hz=6.0, vibrato_extent_cents=20.0),
        NoteSpec(74, 1.0, -5.0, vibrato_rate_hz=5.2, vibrato_extent_cents=35.0,
                 vibrato_delay_s=0.2),
    )  # fmt: skip
    for note, truth in zip(notes_of(phrase), phrase.truth.notes, strict=True):
        assert isinstance(note.pitch, Measured)
        assert abs(cents_between(truth.centre_hz, pitch(note))) < 1.0
        assert isinstance(note.vibrato, Measured)
        assert note.vibrato.value is not None
        assert note.vibrato.value.rate_hz == pytest.approx(truth.vibrato_rate_hz, abs=0.2)
        assert note.vibrato.value.extent_cents == pytest.approx(truth.vibrato_extent_cents, abs=3.0)


def test_no_vibrato_and_too_short_to_tell_are_different_answers() -> None:
    phrase = played(NoteSpec(69, 1.0), NoteSpec(71, 0.2))
    long, short = notes_of(phrase)
    assert isinstance(long.vibrato, Measured)
    assert long.vibrato.value is None
    assert isinstance(short.vibrato, NotMeasurable)
    assert short.vibrato.reason is Reason.TOO_SHORT


def test_slurred_notes_part_where_the_pitch_passes_the_middle() -> None:
    phrase = played(
        NoteSpec(69, 0.5), NoteSpec(70, 0.5, articulation="legato"),
        NoteSpec(72, 0.1, articulation="legato"), NoteSpec(70, 0.5, articulation="legato"),
    )  # fmt: skip
    starts = [note.start_s for note in notes_of(phrase)]
    np.testing.assert_allclose(starts, [n.start_s for n in phrase.truth.notes], atol=0.006)


def test_drift_inside_a_note_is_its_slope() -> None:
    (note,) = notes_of(played(NoteSpec(69, 2.0, drift_cents=10.0)))
    assert isinstance(note.pitch, Measured)
    assert note.pitch.value.drift_cents_per_s == pytest.approx(5.0, abs=0.3)


@pytest.mark.parametrize(("interval", "rate"), [(200.0, 6.5), (100.0, 9.0)])
def test_trills_have_no_one_pitch(interval: float, rate: float) -> None:
    phrase = played(
        NoteSpec(69, 0.6),
        NoteSpec(71, 1.5, articulation="trill", trill_cents=interval, repeat_rate_hz=rate),
        NoteSpec(69, 0.6),
    )
    found = notes_of(phrase)
    assert kinds(found) == [NoteKind.NOTE, NoteKind.TRILL, NoteKind.NOTE]
    assert isinstance(found[1].pitch, NotMeasurable)
    assert found[1].pitch.reason is Reason.NOT_A_NOTE


def test_a_wide_vibrato_is_no_trill() -> None:
    phrase = played(NoteSpec(69, 1.5, vibrato_rate_hz=6.5, vibrato_extent_cents=45.0))
    assert kinds(notes_of(phrase)) == [NoteKind.NOTE]


def test_tremolo_slide_and_grace() -> None:
    found = notes_of(
        played(
            NoteSpec(67, 0.6),
            NoteSpec(69, 1.5, articulation="tremolo", repeat_rate_hz=10.0),
            NoteSpec(62, 0.8),
            NoteSpec(69, 1.2, articulation="slide_in", glide_s=0.4),
            NoteSpec(74, 0.08),
            NoteSpec(73, 1.0, articulation="legato", glide_s=0.015),
        )
    )
    assert kinds(found) == [
        NoteKind.NOTE, NoteKind.TREMOLO, NoteKind.NOTE, NoteKind.SLIDE, NoteKind.NOTE,
        NoteKind.GRACE, NoteKind.NOTE,
    ]  # fmt: skip


def test_plucked_notes_are_told_from_bowed_ones() -> None:
    plucked = [NoteSpec(m, 0.6, articulation="pizzicato") for m in (67, 69, 62, 74)]
    found = notes_of(played(NoteSpec(67, 0.6), *plucked, NoteSpec(67, 0.6)))
    assert kinds(found) == [NoteKind.NOTE] + [NoteKind.PIZZICATO] * 4 + [NoteKind.NOTE]
    for note in found[1:-1]:
        assert note.steady_start_s - note.start_s >= 0.035
        assert isinstance(note.vibrato, NotMeasurable)


@pytest.mark.parametrize(
    ("instrument", "low", "interval"),
    [
        ("violin", 62, 7), ("violin", 67, 4), ("violin", 64, 9), ("violin", 69, 3),
        ("viola", 55, 5), ("viola", 50, 8), ("cello", 50, 7), ("cello", 43, 7), ("cello", 47, 4),
    ],
)  # fmt: skip
def test_two_strings_sounding_together(instrument: str, low: int, interval: int) -> None:
    phrase = played(
        NoteSpec(low, 0.8),
        NoteSpec(low, 0.8, 4.0, second_midi=low + interval, second_deviation_cents=-3.0),
        NoteSpec(low + 2, 0.8),
        instrument=instrument,
    )
    found = notes_of(phrase, instrument)
    assert kinds(found) == [NoteKind.NOTE, NoteKind.DOUBLE_STOP, NoteKind.NOTE]
    truth = phrase.truth.notes[1]
    assert found[1].second_pitch_hz is not None
    assert truth.second_centre_hz is not None
    assert abs(cents_between(truth.centre_hz, pitch(found[1]))) < 5.0
    assert abs(cents_between(truth.second_centre_hz, found[1].second_pitch_hz)) < 5.0


def test_a_note_that_fades_ends_where_it_ends() -> None:
    for dynamics in (((0.0, 0.0), (3.0, -25.0)), ((0.0, -20.0), (3.0, 0.0))):
        (note,) = notes_of(played(NoteSpec(62, 3.0), dynamics=dynamics))
        assert note.start_s == pytest.approx(0.3, abs=0.01)
        assert note.end_s == pytest.approx(3.3, abs=0.03)


def test_staccato_ends_before_the_silence() -> None:
    phrase = played(*[NoteSpec(m, 0.3, articulation="staccato") for m in (67, 69, 71, 67)])
    for note, truth in zip(notes_of(phrase), phrase.truth.notes, strict=True):
        assert note.end_s == pytest.approx(truth.end_s, abs=0.03)


def test_a_room_does_not_cut_up_a_vibrato() -> None:
    phrase = played(
        NoteSpec(86, 1.5, vibrato_rate_hz=6.0, vibrato_extent_cents=30.0),
        NoteSpec(79, 1.0, vibrato_rate_hz=6.0, vibrato_extent_cents=20.0),
        reverb_time_s=0.8,
        seed=3,
    )
    found = notes_of(phrase)
    assert len(found) == 2
    for note, truth in zip(found, phrase.truth.notes, strict=True):
        assert abs(hz_to_midi(pitch(note)) - hz_to_midi(truth.centre_hz)) < 0.05


def test_intervals_hold_the_truth() -> None:
    """19 of 20 stated intervals hold the truth on phrases with room and noise."""
    rng = np.random.default_rng(9)
    held, count = 0, 0
    for seed in range(12):
        specs = [
            NoteSpec(
                int(rng.integers(57, 80)),
                float(rng.uniform(0.2, 0.8)),
                float(rng.normal(0, 10)),
                vibrato_rate_hz=6.0,
                vibrato_extent_cents=float(rng.choice([0.0, 15.0, 25.0])),
                attack_s=0.03,
            )
            for _ in range(10)
        ]
        phrase = played(
            *specs, snr_db=25.0, reverb_time_s=0.4 if seed % 2 else None, reverb_db=-14.0,
            pitch_jitter_cents=1.5, seed=seed,
        )  # fmt: skip
        for note in notes_of(phrase):
            truth = min(phrase.truth.notes, key=lambda t: abs(t.start_s - note.start_s))
            if isinstance(note.pitch, Measured) and note.kind is NoteKind.NOTE:
                error = cents_between(truth.centre_hz, note.pitch.value.pitch_hz)
                held += abs(error) <= note.pitch.value.uncertainty_cents
                count += 1
    assert count > 90
    assert held / count >= 0.9


def test_nothing_in_nothing_out() -> None:
    track = track_pitch(
        np.sin(np.arange(48_000) * 0.06) * 0.1, 48_000, floor_hz=180.0, ceiling_hz=3950.0
    )
    assert isinstance(track, Measured)
    assert find_notes(track.value, np.empty(0), np.empty(0), INSTRUMENTS["violin"]) == ()


@pytest.mark.parametrize("seed", [6, 7, 8, 9])
def test_short_bowed_notes_in_a_room_are_not_plucked(seed: int) -> None:
    """In the room the end of a short note dies away as a plucked note does."""
    steps = (2, 0, 4, 5, 2, 7) * 2
    notes = [
        NoteSpec(60 + step, 0.13, attack_s=0.02, level_db=-3.0 * (k % 3))
        for k, step in enumerate(steps)
    ]
    room = {"reverb_time_s": 0.7, "reverb_db": -10.0}
    found = notes_of(played(*notes, instrument="viola", seed=seed, **room), "viola")
    assert len(found) >= 9
    assert NoteKind.PIZZICATO not in kinds(found)
