"""``compare --picture``: which files come of it, and what is refused."""

import csv
import struct
import xml.etree.ElementTree as ET
from datetime import UTC, datetime
from pathlib import Path

import pytest

from app.wiring import open_workbench

TAKES = Path(__file__).parents[2] / "sample_audio" / "takes"
FIRST, LAST = (TAKES / f"viola-study-{day}-day.flac" for day in ("first", "last"))
EVENING = datetime(2026, 3, 14, 19, 30, tzinfo=UTC)


def png_size(path):
    """Width and height from the header (W3C, PNG specification, 11.2.1 IHDR)."""
    head = path.read_bytes()[:24]
    assert head[:8] == b"\x89PNG\r\n\x1a\n"
    assert head[12:16] == b"IHDR"
    return struct.unpack(">II", head[16:24])


def rows_of(path):
    with path.open(encoding="utf-8", newline="") as stream:
        return list(csv.DictReader(stream))


def test_two_files_before_and_after(run, tmp_path):
    for suffix in ("png", "svg", "csv"):
        path = tmp_path / f"pair.{suffix}"
        done = run("compare", FIRST, LAST, "--instrument", "viola", "--picture", path, "--json")
        assert done.code == 0
        assert done.json["notes"], "the object on the output is not disturbed"
        assert path.is_file()
    assert min(png_size(tmp_path / "pair.png")) > 400
    assert ET.parse(tmp_path / "pair.svg").getroot().tag.endswith("}svg")  # noqa: S314
    rows = rows_of(tmp_path / "pair.csv")
    notes = [row for row in rows if row["kind"] == "note"]
    told = [note["change_cents"] for note in done.json["notes"]]
    assert [float(row["change"]) for row in notes] == pytest.approx(told, abs=0.01)


def test_a_picture_of_another_kind_is_refused_before_anything_is_measured(run, tmp_path):
    done = run("compare", FIRST, LAST, "--picture", tmp_path / "pair.gif")
    assert done.code == 2
    assert "png, svg or csv" in done.err


def test_files_have_no_weeks(run, tmp_path):
    path = tmp_path / "weeks.png"
    done = run("compare", FIRST, LAST, "--picture", path, "--picture-of", "weeks")
    assert done.code == 2
    assert "takes of a passage" in done.err
    assert not path.exists()


@pytest.fixture
def journal(journal_dir):
    with open_workbench(journal_dir, clock=lambda: EVENING) as bench:
        settings = bench.practising.settings().default_settings
        passage = bench.passages.add("Study", "Opening", "1-8", settings)
        for day, path in ((7, FIRST), (14, LAST)):
            proposals = bench.importing.propose([path], passage.id, EVENING.replace(day=day).date())
            bench.importing.file(proposals)
        for take_id in bench.measuring.waiting():
            bench.measuring.measure(take_id)
    return journal_dir


def test_takes_of_a_passage_give_all_three(run, journal, tmp_path):
    names = ("Opening:2026-03-07:1", "Opening:2026-03-14:1")
    for of in ("weeks", "note-map", "before-after"):
        path = tmp_path / f"{of}.csv"
        done = run("compare", *names, "--picture", path, "--picture-of", of)
        assert done.code == 0, done.err
    weeks = rows_of(tmp_path / "weeks.csv")
    assert [row["first_day"] for row in weeks if row["kind"] == "take"] == [
        "2026-03-07",
        "2026-03-14",
    ]
    note_map = rows_of(tmp_path / "note-map.csv")
    assert {row["day"] for row in note_map} == {"2026-03-07", "2026-03-14"}
    measured = [row for row in note_map if row["cents"]]
    assert len(measured) > 20
    pair = [row for row in rows_of(tmp_path / "before-after.csv") if row["kind"] == "note"]
    # The same take gives the same cents in both pictures.
    of_map = {round(float(r["cents"]), 2) for r in measured if r["day"] == "2026-03-14"}
    assert {round(float(row["after"]), 2) for row in pair} <= of_map
    done = run("compare", *names, "--picture", tmp_path / "w.png", "--picture-of", "weeks",
               "--measure", "beauty")  # fmt: skip
    assert done.code == 2
    assert "mean_absolute_cents" in done.err
