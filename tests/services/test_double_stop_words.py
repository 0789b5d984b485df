"""A double stop carried from the sound to the JSON object and to words; targets in comparisons."""

import json
from importlib.resources import files
from pathlib import Path

import pytest
import soundfile
from jsonschema import Draft202012Validator

from app.journal.records import PlayingSettings
from app.services.compare_views import pair_rows
from app.services.file_comparing import Comparison, compare_files
from app.services.file_measuring import MeasureReport, measure_file
from app.services.lanes import note_rows
from sample_audio.generator import NoteSpec, PhraseSpec, render


def validator(name: str) -> Draft202012Validator:
    return Draft202012Validator(json.loads(files("app.schemas").joinpath(name).read_text("utf-8")))


@pytest.fixture(scope="module")
def sound(tmp_path_factory: pytest.TempPathFactory) -> Path:
    # A minor third, pure (315.6 cents) on an E4 that is 5 cents flat, between plain notes.
    notes = (
        NoteSpec(62.0, 0.8, 3.0),
        NoteSpec(64.0, 1.2, -5.0, second_midi=67.0, second_deviation_cents=10.6),
        NoteSpec(66.0, 0.8, -2.0),
        NoteSpec(67.0, 0.8, 1.0),
        NoteSpec(69.0, 0.8, 22.0, vibrato_rate_hz=6.0, vibrato_extent_cents=12.0),
        NoteSpec(67.0, 0.8, 0.0),
    )
    phrase = render(PhraseSpec(notes, tempo=60.0, level_dbfs=-24.0, seed=21))
    path = tmp_path_factory.mktemp("double stops") / "line.wav"
    soundfile.write(path, phrase.samples, phrase.sample_rate_hz, subtype="PCM_24")
    return path


@pytest.fixture(scope="module")
def report(sound: Path) -> MeasureReport:
    return measure_file(sound, PlayingSettings(tonic="D"))


@pytest.fixture(scope="module")
def comparison(sound: Path) -> Comparison:
    return compare_files(sound, sound, PlayingSettings(tonic="D"))


def test_the_interval_is_judged_first_and_the_strings_after_it(report: MeasureReport) -> None:
    found = json.loads(json.dumps(report.as_json(), allow_nan=False))
    validator("measure.schema.json").validate(found)
    (note,) = [n for n in found["notes"] if n["kind"] == "double_stop"]
    double = note["double_stop"]
    assert double["interval"] == "minor third"
    assert double["interval_cents"] == pytest.approx(315.6, abs=2.0)
    by_target = {r["target"]: r["deviation_cents"] for r in double["readings"]}
    # 6/5 is 315.641 cents, 32/27 294.135, three equal semitones 300 (exact ratios)
    assert by_target["just"] == pytest.approx(0.0, abs=2.0)
    assert by_target["pythagorean"] == pytest.approx(21.5, abs=2.0)
    assert by_target["equal"] == pytest.approx(15.6, abs=2.0)
    assert double["verdict"] == "in_tune"
    assert note["deviation_cents"] == pytest.approx(-5.0, abs=2.0)
    assert double["upper_name"] == "G4"
    assert double["upper_deviation_cents"] == pytest.approx(10.6, abs=2.0)
    assert all(n["double_stop"] is None for n in found["notes"] if n["kind"] == "note")


def test_the_words_say_the_interval_first(report: MeasureReport) -> None:
    (row,) = [r for r in note_rows(report.analysis.notes, ()) if r.kind == "double stop"]
    assert row.remark.startswith("Minor third, the interval against just ")
    assert "Upper string G4: +10." in row.remark


def test_double_stops_enter_no_average(report: MeasureReport) -> None:
    assert report.as_json()["intonation"]["note_count"] == 5


def test_a_comparison_holds_both_notes_against_every_target(comparison: Comparison) -> None:
    found = json.loads(json.dumps(comparison.as_json(), allow_nan=False))
    validator("compare.schema.json").validate(found)
    (sharp,) = [n for n in found["notes"] if n["midi"] == 69]
    for side in ("a_targets", "b_targets"):
        assert sharp[side]["verdict"] == "out"
        targets = {r["target"] for r in sharp[side]["readings"]}
        assert {"equal", "pythagorean", "just"} <= targets
    (row,) = [r for r in pair_rows(comparison) if r.midi == 69]
    assert (row.a_verdict, row.b_verdict) == ("out", "out")
    assert row.a_remark.startswith("Outside every plausible target.")
