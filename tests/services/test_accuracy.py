"""The accuracy table: its scoring against mir_eval, its rows, its seeds, its schema."""

import ast
import json
import re
from importlib.resources import files
from pathlib import Path

import mir_eval
import numpy as np
import parselmouth
import pytest
from jsonschema import Draft202012Validator

from analysis.instruments import INSTRUMENTS
from analysis.results import (
    Measured,
    Note,
    NoteKind,
    NotePitch,
    PitchTrack,
    Provenance,
)
from app.services.accuracy import loudness, notes, tempo
from app.services.accuracy import phrases as held_out
from app.services.accuracy.running import run_check, sections
from app.services.accuracy.scoring import f_measure, frame_errors, matched
from app.services.accuracy.table import Row, Section, add_up, percentile_of, share_of
from app.services.stopping import Stopped
from sample_audio.generator import place_phrase, render

REPOSITORY = Path(__file__).parents[2]
MADE_HERE = Provenance("test")


def spans(starts):
    return np.column_stack((starts, np.asarray(starts) + 0.05))


@pytest.mark.parametrize("seed", range(30))
def test_matching_pairs_as_many_notes_as_mir_eval(seed):
    rng = np.random.default_rng(seed)
    true_s = np.sort(rng.uniform(0.0, 2.0, 25))
    found_s = np.sort(true_s + rng.normal(0.0, 0.03, 25))[: int(rng.integers(15, 26))]
    true_hz = 440.0 * 2.0 ** (rng.integers(-3, 4, 25) / 12.0)
    found_hz = true_hz[: found_s.size] * 2.0 ** (rng.normal(0.0, 30.0, found_s.size) / 1200.0)
    by_both = mir_eval.transcription.match_notes(
        spans(true_s), true_hz, spans(found_s), found_hz, offset_ratio=None
    )
    by_onset = mir_eval.transcription.match_note_onsets(spans(true_s), spans(found_s))
    assert len(matched(true_s, found_s, true_hz, found_hz)) == len(by_both)
    assert len(matched(true_s, found_s)) == len(by_onset)


def test_matching_published_example():
    # mir_eval.transcription: onset errors 30, 49, 60 ms and pitch 10, 49, 0 cents: F .667
    true_s = np.array([1.0, 2.0, 3.0])
    found_s = true_s + np.array([0.030, 0.049, 0.060])
    hz = np.full(3, 440.0)
    found_hz = hz * 2.0 ** (np.array([10.0, 49.0, 0.0]) / 1200.0)
    pairs = matched(true_s, found_s, hz, found_hz)
    assert pairs == [(0, 0), (1, 1)]
    assert f_measure(len(pairs), 3, 3) == pytest.approx(0.667, abs=5e-4)
    precision, recall, f1, _ = mir_eval.transcription.precision_recall_f1_overlap(
        spans(true_s), hz, spans(found_s), found_hz, offset_ratio=None
    )
    assert (precision, recall) == pytest.approx((2 / 3, 2 / 3))
    assert f_measure(len(pairs), 3, 3) == pytest.approx(f1)


def test_an_onset_exactly_50_ms_off_still_counts():
    assert matched(np.array([1.0]), np.array([1.05])) == [(0, 0)]
    assert matched(np.array([1.0]), np.array([1.0502])) == []


def test_rows_are_held_missed_or_shown():
    def row(value, **bounds):
        return Row("m", "cents", "s", value, **bounds)

    assert row(1.0, at_most=1.0).verdict == "held"
    assert row(1.01, at_most=1.0).verdict == "missed"
    assert row(91.9, at_least=92.0, at_most=98.0).verdict == "missed"
    assert row(98.1, at_least=92.0, at_most=98.0).verdict == "missed"
    assert row(95.0, at_least=92.0, at_most=98.0).verdict == "held"
    assert row(None, at_most=1.0).verdict == "missed"
    assert row(7.0).verdict == "shown"


def test_nothing_measured_is_no_number():
    assert percentile_of([], 50) is None
    assert share_of([]) is None
    assert share_of([1.0, 0.0, 1.0, 1.0]) == 75.0
    empty = notes.section(0)
    rows = empty.rows(add_up([]))
    judged = [row for row in rows if row.verdict != "shown"]
    assert all(row.verdict == "missed" for row in judged if "F-measure" not in row.measure)
    assert all(row.value is None for row in rows if "F-measure" not in row.measure)


def test_a_wrong_note_is_seen():
    """The scoring itself: a note an octave low, 20 cents off and outside its interval."""
    true = place_phrase(held_out.phrase_of(held_out.FIRST_SEED + 1))
    found = []
    for number, note in enumerate(true):
        hz = note.centre_hz * (0.5 if number == 0 else 2.0 ** ((20.0 if number == 1 else 0) / 1200))
        pitch = Measured(NotePitch(hz, 3.0, 0.0), MADE_HERE)
        at = (note.start_s, note.end_s, note.steady_start_s, note.steady_end_s)
        found.append(Note(*at, NoteKind.NOTE, -20.0, pitch, Measured(None, MADE_HERE)))
    tally = {}
    notes.score_notes(tuple(found), true, tally)
    assert sum(tally["octave"]) == 1.0
    assert tally["octave"][0] == 1.0
    assert (sum(tally["pairs"]), sum(tally["true"])) == (len(true) - 1, len(true))
    assert tally["measured"] == [0.0] + [1.0] * (len(true) - 1)
    errors = tally.get("centre", []) + tally.get("centre of short", [])
    assert max(errors) == pytest.approx(20.0, abs=1e-6)
    assert tally["in interval"].count(0.0) == 1


def test_frame_errors_are_those_of_a_track_that_is_3_cents_sharp():
    phrase = render(held_out.phrase_of(held_out.FIRST_SEED + 2))
    time_s = np.arange(0.0, phrase.truth.time_s[-1], 0.005)
    f0 = np.interp(time_s, phrase.truth.time_s, phrase.truth.f0_hz) * 2.0 ** (3.0 / 1200.0)
    track = PitchTrack(time_s, f0, np.ones_like(f0), np.ones_like(f0), 0.005)
    assert np.median(frame_errors(track, phrase.truth)) == pytest.approx(3.0, abs=1e-6)


def test_praat_does_what_the_table_says_of_it():
    """praat-parselmouth 0.4, to within a twentieth of the stated figure."""
    for condition, stated in notes.PRAAT_MEDIAN_CENTS.items():
        errors = []
        for seed in range(held_out.FIRST_SEED, held_out.FIRST_SEED + notes.PHRASES):
            phrase = render(held_out.phrase_of(seed, condition))
            player = INSTRUMENTS[held_out.instrument_of(seed)]
            pitch = parselmouth.Sound(phrase.samples, phrase.sample_rate_hz).to_pitch_ac(
                time_step=0.005, pitch_floor=player.floor_hz, pitch_ceiling=player.ceiling_hz
            )
            f0 = pitch.selected_array["frequency"].copy()
            f0[f0 == 0.0] = np.nan
            errors += frame_errors(PitchTrack(pitch.xs(), f0, f0, f0, 0.005), phrase.truth)
        assert np.median(errors) == pytest.approx(stated, rel=0.05), condition


def test_the_table_does_not_depend_on_the_processes():
    def few():
        table = (
            notes.section(1),
            Section("Tempo", (("hard", 120), ("drift", 12)), tempo.measure_pulse, lambda _: ()),
            Section("Dynamics", (("3341 #9", 0),), loudness.measure_case, lambda _: ()),
        )
        told = []
        return table, told

    table, told = few()
    alone = run_check(told.append, chosen=table, workers=0)
    spread = run_check(chosen=table, workers=2)
    assert alone.sections == spread.sections
    assert told == sorted(told)
    assert told[-1] == 1.0
    with pytest.raises(Stopped):
        run_check(should_stop=lambda: True, chosen=table, workers=0)


def test_the_object_fits_its_schema():
    schema = json.loads(
        files("app.schemas").joinpath("check.schema.json").read_text(encoding="utf-8")
    )
    Draft202012Validator.check_schema(schema)
    short = Section("Dynamics", (("3341 #1", 0),), loudness.measure_case, loudness.section().rows)
    report = run_check(chosen=(short,), workers=0)
    found = json.loads(json.dumps(report.as_json(), allow_nan=False))
    Draft202012Validator(schema).validate(found)
    rows = found["sections"][0]["rows"]
    first = next(row for row in rows if row["measure"] == "Tech 3341 #1 I")
    assert first["verdict"] == "held"
    assert first["measured"] == pytest.approx(-23.0, abs=0.1)  # EBU Tech 3341 (transcribed)
    missing = next(row for row in rows if row["measure"].startswith("Tech 3342 #1"))
    assert missing["measured"] is None
    assert missing["verdict"] == "missed"
    assert found["missed"] == sum(row["verdict"] == "missed" for row in rows)


def test_every_section_asks_for_something_and_has_a_bound():
    names = [section.name for section in sections()]
    assert len(set(names)) == len(names)
    for section in sections():
        assert section.pieces
        rows = section.rows({})
        assert any(row.verdict != "shown" for row in rows), section.name
        assert all(row.source for row in rows)


def test_held_out_seeds_are_used_nowhere_else():
    seed = re.compile(r"\b81\d[_]?\d{3}\b")
    elsewhere = [
        path
        for room in ("analysis", "tests/analysis", "tests/benchmarks", "sample_audio")
        for path in (REPOSITORY / room).rglob("*.py")
        if seed.search(path.read_text(encoding="utf-8"))
    ]
    assert elsewhere == []


def test_the_command_needs_no_test_library():
    folder = REPOSITORY / "app/services/accuracy"
    for path in folder.glob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            names = [a.name for a in node.names] if isinstance(node, ast.Import) else []
            if isinstance(node, ast.ImportFrom):
                names = [node.module or ""]
            for name in names:
                assert name.split(".")[0] not in {"mir_eval", "parselmouth", "pyloudnorm"}, path
