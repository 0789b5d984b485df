"""The machine-readable objects against their schema files."""

import json
import math
from importlib.resources import files

import numpy as np
import pytest
import soundfile
from jsonschema import Draft202012Validator

from app.journal.records import PlayingSettings
from app.services.file_comparing import compare_files
from app.services.file_measuring import measure_file

# The names other programs rely on, as fixed for schema 1.
TOP = {
    "schema", "file", "duration_s", "sample_rate_hz", "algorithm", "parameters",
    "pitch", "notes", "intonation", "tempo", "dynamics",
}  # fmt: skip
PITCH = {"status", "hop_s", "voiced_fraction"}
CURVES = {"time_s", "f0_hz", "confidence"}
NOTE = {
    "start_s", "end_s", "midi", "name", "pitch_hz", "deviation_cents", "uncertainty_cents",
    "vibrato", "kind", "status", "reason",
}  # fmt: skip
VIBRATO = {"status", "reason", "rate_hz", "extent_cents"}
INTONATION = {
    "status", "reason", "reference_a_hz", "temperament", "offset_cents", "accuracy_cents",
    "mean_absolute_cents", "precision_cents", "within_10_cents", "within_25_cents",
    "measured_share",
}  # fmt: skip
TEMPO = {
    "status", "reason", "mean_bpm", "steadiness_cv_percent", "drift_bpm_per_min", "beat_s",
}  # fmt: skip
DYNAMICS = {
    "status", "reason", "integrated_lufs", "max_momentary_lufs", "max_short_term_lufs",
    "dynamic_span_db", "noise_floor_dbfs", "true_peak_dbtp", "clipped_samples",
}  # fmt: skip


def validator(name):
    schema = json.loads(files("app.schemas").joinpath(name).read_text(encoding="utf-8"))
    Draft202012Validator.check_schema(schema)
    return Draft202012Validator(schema)


def strict(found):
    """Go through real JSON, which must hold no NaN."""
    return json.loads(json.dumps(found, allow_nan=False))


@pytest.fixture(scope="module")
def report(wav_a):
    return measure_file(wav_a, PlayingSettings(pulse_bpm=96.0))


@pytest.mark.parametrize("curves", [False, True])
def test_a_measured_take_fits_the_schema(report, curves):
    found = strict(report.as_json(curves))
    validator("measure.schema.json").validate(found)
    assert set(found) >= TOP
    assert set(found["pitch"]) >= PITCH
    assert (set(found["pitch"]) >= CURVES) == curves
    assert all(set(note) >= NOTE and set(note["vibrato"]) >= VIBRATO for note in found["notes"])
    assert set(found["intonation"]) >= INTONATION
    assert set(found["tempo"]) >= TEMPO
    assert set(found["dynamics"]) >= DYNAMICS
    assert found["schema"] == 1


def test_every_part_of_the_object_is_described_in_the_schema(report):
    described = validator("measure.schema.json").schema["properties"]
    found = strict(report.as_json(curves=True))
    assert set(found) <= set(described)
    for name, part in found.items():
        if isinstance(part, dict) and "properties" in described[name]:
            assert set(part) <= set(described[name]["properties"]), name


def test_unvoiced_frames_are_null(report):
    pitch = strict(report.as_json(True))["pitch"]
    assert None in pitch["f0_hz"]
    assert len(pitch["time_s"]) == len(pitch["f0_hz"]) == len(pitch["confidence"])
    assert pitch["time_s"][1] - pitch["time_s"][0] == pytest.approx(pitch["hop_s"], abs=1e-6)


def test_numbers_are_those_that_were_played(report, phrase_a):
    """Against the generator's own truth: 1 cent and 10 ms, on clean sound."""
    found = report.as_json()
    assert len(found["notes"]) == len(phrase_a.truth.notes)
    for note, truth in zip(found["notes"], phrase_a.truth.notes, strict=True):
        assert note["midi"] == truth.midi
        assert note["deviation_cents"] == pytest.approx(truth.deviation_cents, abs=1.0)
        assert note["start_s"] == pytest.approx(truth.start_s, abs=0.01)
    assert found["tempo"]["mean_bpm"] == pytest.approx(96.0, abs=0.5)


@pytest.mark.parametrize(
    ("name", "samples", "rate"),
    [
        ("silence", np.zeros(48_000), 48_000),
        ("one sample", np.array([0.5]), 48_000),
        ("noise", np.random.default_rng(1).normal(0, 0.1, 48_000), 48_000),
        ("8 kHz", 0.2 * np.sin(2 * math.pi * 440 * np.arange(16_000) / 8_000), 8_000),
    ],
)
def test_what_cannot_be_measured_is_null_with_a_reason(tmp_path, name, samples, rate):
    path = tmp_path / f"{name}.wav"
    soundfile.write(path, samples, rate, subtype="PCM_16")
    found = strict(measure_file(path, PlayingSettings()).as_json(True))
    validator("measure.schema.json").validate(found)
    for group in ("pitch", "intonation", "tempo", "dynamics"):
        part = found[group]
        if part["status"] == "not_measurable":
            assert part["reason"]
            assert part["sentence"]
            numbers = [v for k, v in part.items() if k not in ("status", "reason", "sentence")]
            assert all(value in (None, []) for value in numbers)


def test_an_estimated_a_leaves_accuracy_open(wav_a):
    found = measure_file(wav_a, PlayingSettings(reference_a_hz=None)).as_json()
    validator("measure.schema.json").validate(strict(found))
    assert found["parameters"]["reference_a_hz"] == "auto"
    assert found["intonation"]["accuracy_cents"] is None
    assert found["intonation"]["accuracy_reason"] == "reference_estimated"
    assert found["intonation"]["mean_absolute_cents"] is not None


def test_a_comparison_fits_its_schema(wav_a, wav_b):
    found = strict(compare_files(wav_a, wav_b, PlayingSettings(pulse_bpm=96.0)).as_json())
    validator("compare.schema.json").validate(found)
    assert found["alignment"]["status"] == "measured"
    assert len(found["alignment"]["a_s"]) == len(found["alignment"]["b_s"]) > 8
    assert len(found["notes"]) == 8
    for note in found["notes"]:
        assert note["change_cents"] == pytest.approx(6.0, abs=1.5)
    assert found["changes"]["accuracy_cents"]["change"] == pytest.approx(6.0, abs=1.0)


def test_sounds_without_a_common_passage_do_not_match(wav_a, tmp_path):
    path = tmp_path / "silence.wav"
    soundfile.write(path, np.zeros(96_000), 48_000)
    found = strict(compare_files(wav_a, path, PlayingSettings()).as_json())
    validator("compare.schema.json").validate(found)
    assert found["alignment"]["status"] == "not_measurable"
    assert found["notes"] == []
