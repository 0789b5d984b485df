"""What leaves the journal is read by the formats' own libraries and says the same."""

import csv
import io
import json
import math
from datetime import UTC, date, datetime, timedelta
from pathlib import Path

import icalendar
import jams
import mido
import pytest

from app.journal.failures import PlainFailure
from app.journal.kinds import Author, MarkerState
from app.journal.records import PlayingSettings
from app.services.exporting.jams_file import markers_of
from app.services.exporting.midi_file import BEND_RANGE_SEMITONES, TICKS_PER_SECOND, midi_bytes
from app.services.exporting.service import DaysFormat, TakeFormat
from app.services.stopping import Stopped
from app.services.workbench import Workbench
from app.store.every_table import METADATA
from app.store.tables import DERIVED
from app.wiring import open_workbench

REMARK = "Ganz ♭, „tief“"
EVENING = datetime(2026, 3, 14, 19, 30, tzinfo=UTC)
TAKE = Path(__file__).parents[2] / "sample_audio" / "takes" / "viola-study-first-day.flac"

# The reference library calls its validator in a way that is going out of use.
OF_THE_REFERENCE = pytest.mark.filterwarnings("ignore:Passing a schema:DeprecationWarning")


@pytest.fixture(scope="module")
def journal(tmp_path_factory) -> Path:
    folder = tmp_path_factory.mktemp("exporting") / "journal"
    with open_workbench(folder, clock=lambda: EVENING) as bench:
        passage = bench.passages.add("Study", "Opening", "1-8", PlayingSettings("viola"))
        filed = bench.importing.file(bench.importing.propose([TAKE], passage.id, date(2026, 3, 7)))
        take_id = filed[0].id
        bench.measuring.measure(take_id)
        bench.marking.add(
            take_id, 1.25, 2.5, category="intonation", weight=3, text="Ganz ♭, „tief“"
        )
        bench.marking.add(
            take_id, 0.5, category="=1+1", author=Author.TEACHER, state=MarkerState.SETTLED
        )
        bench.practising.set_minutes(date(2026, 3, 7), 42.5)
        bench.practising.mark_rest(date(2026, 3, 9), planned=True)
        bench.practising.mark_rest(date(2026, 3, 10), planned=False)
    return folder


@pytest.fixture
def bench(journal):
    with open_workbench(journal, create=False, read_only=True, clock=lambda: EVENING) as opened:
        yield opened


def rows_of(path: Path) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(path.read_text(encoding="utf-8"))))


def take_of(bench: Workbench) -> str:
    return bench.filing.takes()[0].id


@OF_THE_REFERENCE
def test_a_jams_file_is_valid_and_holds_notes_pitch_beats_and_markers(bench, tmp_path):
    # Reference: the jams package with the schema of the format, strict.
    take_id = take_of(bench)
    path = bench.exports.take(take_id, TakeFormat.JAMS, tmp_path)
    read = jams.load(str(path), validate=True, strict=True)
    measured = bench.measuring.report(take_id).as_json(curves=True)
    notes = read.search(namespace="note_hz")[0]
    sounding = [note for note in measured["notes"] if note["pitch_hz"] is not None]
    assert [row.value for row in notes.data] == [note["pitch_hz"] for note in sounding]
    assert [row.time for row in notes.data] == pytest.approx([n["start_s"] for n in sounding])
    contour = read.search(namespace="pitch_contour")[0]
    frequencies = [row.value["frequency"] for row in contour.data if row.value["voiced"]]
    assert frequencies == [f0 for f0 in measured["pitch"]["f0_hz"] if f0 is not None]
    assert len(read.search(namespace="beat")) == 1
    assert read.file_metadata.duration == pytest.approx(measured["duration_s"], abs=1e-3)


def test_markers_come_back_from_a_jams_file_as_they_were(bench, tmp_path):
    take_id = take_of(bench)
    path = bench.exports.take(take_id, TakeFormat.JAMS, tmp_path / "out.jams")
    back = markers_of(json.loads(path.read_text(encoding="utf-8")))
    kept = bench.marking.for_take(take_id)
    assert [
        (m["start_s"], m["end_s"], m["category"], m["text"], m["weight"], m["author"], m["state"])
        for m in back
    ] == [(m.start_s, m.end_s, m.category, m.text, m.weight, m.author, m.state) for m in kept]


def test_csv_notes_and_markers_come_back_number_for_number(bench, tmp_path):
    take_id = take_of(bench)
    notes = bench.exports.take(take_id, TakeFormat.NOTES_CSV, tmp_path)
    rows = rows_of(notes)
    measured = bench.measuring.report(take_id).as_json()["notes"]
    assert len(rows) == len(measured)
    for row, note in zip(rows, measured, strict=True):
        for key in ("start_s", "pitch_hz", "deviation_cents", "uncertainty_cents"):
            assert (float(row[key]) if row[key] else None) == note[key]
        assert row["reason"] == (note["reason"] or "")
    markers = bench.exports.take(take_id, TakeFormat.MARKERS_CSV, tmp_path)
    read = rows_of(markers)
    assert [row["text"] for row in read] == ["", REMARK]
    assert [row["state"] for row in read] == ["settled", "to_work_on"]


def sounding_of(content: bytes) -> list[tuple[float, float]]:
    """Play a MIDI file: start in seconds, frequency by note number and bend (MIDI 1.0)."""
    bend, now, found = 0, 0.0, []
    for message in mido.MidiFile(file=io.BytesIO(content)):
        now += message.time
        if message.type == "pitchwheel":
            bend = message.pitch
        elif message.type == "note_on" and message.velocity:
            semitones = message.note - 69 + bend / 8192 * BEND_RANGE_SEMITONES
            found.append((now, 440 * 2 ** (semitones / 12)))
    return found


def test_a_midi_file_sounds_at_the_measured_pitches_and_times(bench, tmp_path):
    take_id = take_of(bench)
    path = bench.exports.take(take_id, TakeFormat.MIDI, tmp_path)
    notes = [
        n for n in bench.measuring.report(take_id).as_json()["notes"] if n["pitch_hz"] is not None
    ]
    played = sounding_of(path.read_bytes())
    assert len(played) == len(notes)
    for (start_s, pitch_hz), note in zip(played, notes, strict=True):
        assert start_s == pytest.approx(note["start_s"], abs=1 / TICKS_PER_SECOND)
        assert abs(1200 * math.log2(pitch_hz / note["pitch_hz"])) < 0.02


def test_overlapping_notes_and_extreme_pitches_make_a_sound_midi_file():
    notes = [
        {"start_s": 0.0, "end_s": 1.0, "pitch_hz": 440.0 * 2 ** (49.9 / 1200)},
        {"start_s": 0.5, "end_s": 0.5, "pitch_hz": 5.0},
        {"start_s": 0.6, "end_s": 0.9, "pitch_hz": None},
        {"start_s": 0.6, "end_s": 0.9, "pitch_hz": 30_000.0},
    ]
    content = midi_bytes("Übung 音", notes)
    file = mido.MidiFile(file=io.BytesIO(content))
    ons = [m for m in file.tracks[0] if m.type == "note_on"]
    offs = [m for m in file.tracks[0] if m.type == "note_off"]
    assert [m.note for m in ons] == [m.note for m in offs] == [69, 0, 127]
    assert sounding_of(content)[0][1] == pytest.approx(notes[0]["pitch_hz"], rel=1e-5)


def test_a_calendar_holds_the_days_practised_and_the_rest_and_no_missed_ones(bench, tmp_path):
    # Reference: the icalendar package; line length by RFC 5545, section 3.1.
    path = bench.exports.days(DaysFormat.ICALENDAR, date(2026, 3, 1), date(2026, 3, 14), tmp_path)
    content = path.read_bytes()
    assert all(len(line) <= 75 for line in content.split(b"\r\n"))
    events = icalendar.Calendar.from_ical(content).walk("VEVENT")
    days = {event.decoded("dtstart"): str(event["summary"]) for event in events}
    assert days == {
        date(2026, 3, 7): "Practised: 43 min, 1 take",
        date(2026, 3, 9): "Rest day, planned",
        date(2026, 3, 10): "Rest day",
    }
    assert all(e.decoded("dtend") - e.decoded("dtstart") == timedelta(days=1) for e in events)
    again = bench.exports.days(
        DaysFormat.ICALENDAR, date(2026, 3, 1), date(2026, 3, 14), tmp_path / "again.ics"
    )
    uids = [str(event["uid"]) for event in events]
    read = icalendar.Calendar.from_ical(again.read_bytes()).walk("VEVENT")
    assert [str(event["uid"]) for event in read] == uids


def test_days_as_csv(bench, tmp_path):
    path = bench.exports.days(DaysFormat.CSV, date(2025, 12, 31), date(2026, 3, 14), tmp_path)
    rows = rows_of(path)
    assert len(rows) == 74
    assert {row["practice_day"]: row["minutes"] for row in rows}["2026-03-07"] == "42.5"


def test_everything_means_every_table_and_every_recording(bench, journal, tmp_path):
    folder = bench.exports.everything(tmp_path / "all")
    tables = {path.stem for path in (folder / "tables").glob("*.csv")}
    assert tables == set(METADATA.tables) - DERIVED
    markers = rows_of(folder / "tables" / "marker.csv")
    assert {row["category"] for row in markers} == {"intonation", "=1+1"}
    for recording in journal.glob("2026/*/*.flac"):
        copy = folder / "recordings" / recording.relative_to(journal)
        assert copy.read_bytes() == recording.read_bytes()
        assert copy.with_suffix(".json").exists()
        measured = folder / "measured" / recording.relative_to(journal).with_suffix(".json")
        assert json.loads(measured.read_text(encoding="utf-8"))["schema"] == 1


def test_nothing_is_written_over_and_stopping_leaves_nothing(bench, tmp_path):
    take_id = take_of(bench)
    path = bench.exports.take(take_id, TakeFormat.MIDI, tmp_path)
    with pytest.raises(PlainFailure, match="exists already"):
        bench.exports.take(take_id, TakeFormat.MIDI, tmp_path)
    with pytest.raises(PlainFailure, match="not empty"):
        bench.exports.everything(tmp_path)
    with pytest.raises(Stopped):
        bench.exports.everything(tmp_path / "all", should_stop=lambda: True)
    with pytest.raises(PlainFailure, match="not there"):
        bench.exports.take(take_id, TakeFormat.JAMS, tmp_path / "nowhere" / "x.jams")
    assert list(tmp_path.iterdir()) == [path]


@OF_THE_REFERENCE
def test_a_take_that_is_not_measured_says_so(tmp_path):
    with open_workbench(tmp_path / "journal", clock=lambda: EVENING) as bench:
        filed = bench.importing.file(bench.importing.propose([TAKE], None, date(2026, 3, 7)))
        bench.marking.add(filed[0].id, 1.0, category="sound")
        with pytest.raises(PlainFailure, match="not measured yet"):
            bench.exports.take(filed[0].id, TakeFormat.MIDI, tmp_path)
        path = bench.exports.take(filed[0].id, TakeFormat.JAMS, tmp_path)
        assert len(jams.load(str(path), validate=True, strict=True).annotations) == 1
