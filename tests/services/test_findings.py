"""What is listed beside the numbers, carried from the sound to the words."""

import json

import numpy as np
import pytest
import soundfile

from app.journal.records import PlayingSettings
from app.services.file_comparing import compare_files
from app.services.file_measuring import MeasureReport, measure_file
from app.services.findings import (
    finding_readings,
    habit_readings,
    notice_sentences,
    place_rows,
)
from app.services.lanes import note_rows
from app.services.reading_views import Reading
from app.services.readings import basis_text, named_readings, reading_of
from app.services.wording import reading_text
from sample_audio.generator import NoteSpec, Phrase, PhraseSpec, render

# G minor, the leading note and the thirds as a player of pure fifths has them
LINE = (
    (67, 0.0), (70, -6.0), (74, 2.0), (78, 10.0), (79, 4.0), (78, 10.0),
    (75, -12.0), (74, 2.0), (72, -4.0), (70, -6.0), (69, 0.0), (67, 30.0),
)  # fmt: skip


@pytest.fixture(scope="module")
def phrase() -> Phrase:
    notes = tuple(NoteSpec(float(m), 1.0, d) for m, d in LINE)
    swell = ((0.0, -14.0), (6.0, 0.0), (12.0, -14.0))
    return render(PhraseSpec(notes, tempo=60.0, dynamics=swell, room_noise_dbfs=-75.0, seed=5))


@pytest.fixture(scope="module")
def report(phrase, tmp_path_factory) -> MeasureReport:
    path = tmp_path_factory.mktemp("sound") / "line.wav"
    sound = np.column_stack([phrase.samples, phrase.samples])
    soundfile.write(path, sound, phrase.sample_rate_hz, subtype="FLOAT")
    return measure_file(path, PlayingSettings(tonic="G", pulse_bpm=60.0))


def test_no_average_is_naked(report):
    lines = {line.key: line for line in named_readings(report.as_json())}
    for key in (
        "mean_absolute_cents", "accuracy_cents", "precision_cents",
        "within_10_cents", "within_25_cents", "steadiness_cv_percent", "drift_bpm_per_min",
        "drift_cents_per_min",
    ):  # fmt: skip
        reading = lines[key].reading
        assert isinstance(reading, Reading), key
        assert reading.uncertainty is not None, key
        assert "±" in reading_text(reading)
    assert lines["mean_absolute_cents"].basis == "100 % of the notes, 100 % of the sounding time"
    assert lines["mean_absolute_cents"].basis in lines["mean_absolute_cents"].explanation
    assert lines["mean_bpm"].basis == ""


def test_the_interval_holds_what_was_played(report):
    found = report.as_json()["intonation"]
    truth = np.mean(np.abs([d for _, d in LINE]))
    wide = found["mean_absolute_uncertainty_cents"]
    assert abs(found["mean_absolute_cents"] - truth) <= max(wide, 0.3)
    assert found["measured_time_share"] == pytest.approx(1.0)


def test_notes_are_spelled_and_side_by_side(report):
    notes = report.as_json()["notes"]
    assert [n["spelled"] for n in notes[:4]] == ["G4", "Bb4", "D5", "F#5"]
    assert [n["name"] for n in notes[:4]] == ["G4", "A#4", "D5", "F#5"]
    assert notes[3]["verdict"] == "depends"
    assert notes[3]["depends_on_temperament"] is True
    targets = {r["target"]: r["deviation_cents"] for r in notes[3]["readings"]}
    assert set(targets) == {"equal", "pythagorean", "just"}
    # 243/128 lies 9.775 cents above equal, and the A, 9/8, in common 3.910
    assert targets["equal"] - targets["pythagorean"] == pytest.approx(9.775 - 3.910, abs=0.01)
    assert notes[-1]["verdict"] == "out"
    ringing = [r for r in notes[2]["readings"] if r["target"].startswith("open_string")]
    assert ringing[0]["string"] == "D4"
    rows = note_rows(report.analysis.notes, report.analysis.left_out)
    assert rows[1].name == "Bb4"
    assert rows[3].remark.startswith("Depends on the temperament: equal +10.")
    assert rows[-1].remark.startswith("Outside every plausible target.")
    assert "Against the open D4 string" in rows[2].remark


def test_swells_and_notices_are_listed(report):
    found = report.as_json()
    kinds = [swell["kind"] for swell in found["dynamics"]["swells"]]
    assert kinds == ["crescendo", "diminuendo"]
    assert found["dynamics"]["swells"][0]["change_db"] == pytest.approx(14.0, abs=3.0)
    assert [n["code"] for n in found["notices"]] == ["dual_mono"]
    assert len(notice_sentences(found)) == 1
    rows = place_rows(found)
    assert [row.kind for row in rows] == kinds
    labels = [line.label for line in finding_readings(found)]
    assert labels[0] == "Please note"
    assert any(label.startswith("Crescendo, 0:0") for label in labels)


def test_habits_are_listed_farthest_first(report):
    lines = habit_readings(report.as_json())
    assert lines[0].label == "G4, 2 notes"
    assert any(line.label == "F#5, 2 notes" for line in lines)
    reading = next(line.reading for line in lines if line.label.startswith("F#5"))
    assert isinstance(reading, Reading)
    assert reading.value == pytest.approx(10.0, abs=0.5)
    assert reading.uncertainty is not None
    every = habit_readings(report.as_json(), fewest=1)
    assert len(every) == len({m for m, _ in LINE})
    single = next(h for h in report.as_json()["intonation"]["habits"] if h["count"] == 1)
    assert single["spread_cents"] is None


def test_an_old_summary_has_no_such_lines():
    assert finding_readings({}) == ()
    assert place_rows({"tempo": {"places": None}, "dynamics": [], "left_out": "?"}) == ()
    assert basis_text({"intonation": {"measured_share": 1.0}}) == ""
    old = {"intonation": {"status": "measured", "mean_absolute_cents": 8.0}}
    reading = reading_of(old, "mean_absolute_cents")
    assert isinstance(reading, Reading)
    assert reading.uncertainty is None


def test_takes_recorded_otherwise_say_so(phrase, tmp_path):
    mono, twice = tmp_path / "mono.wav", tmp_path / "twice.wav"
    rate = phrase.sample_rate_hz
    soundfile.write(mono, phrase.samples, rate, subtype="FLOAT")
    soundfile.write(twice, np.column_stack([phrase.samples] * 2), rate, subtype="FLOAT")
    said = compare_files(mono, twice, PlayingSettings()).as_json()["confounders"]
    assert any("3 dB" in sentence for sentence in said)
    unknown = PlayingSettings(automatic_gain="unknown")
    said = compare_files(mono, mono, unknown).as_json()["confounders"]
    assert any("automatically" in sentence for sentence in said)
    assert json.dumps(said, allow_nan=False)
