"""Takes are moved, deleted and found; markers are placed; everything can be undone."""

import hashlib
from dataclasses import replace
from datetime import date

import pytest

from app.journal.failures import PlainFailure
from app.journal.kinds import AimMet, Author, MarkerState
from app.wiring import open_workbench


@pytest.fixture
def row(tone_file, add_take):
    return add_take(tone_file("2026-03-10 18.15.00.wav", seconds=2.0), "Study: opening")


def test_filing_elsewhere_never_touches_the_sound(bench, row):
    before = hashlib.sha256(row.file.read_bytes()).hexdigest(), row.file.stat().st_mtime_ns
    passage = bench.passages.add("Study", "Coda")
    moved = bench.filing.refile(row.id, date(2026, 3, 12), passage.id)
    assert (moved.practice_day, moved.passage_id) == (date(2026, 3, 12), passage.id)
    assert moved.file == row.file
    after = hashlib.sha256(row.file.read_bytes()).hexdigest(), row.file.stat().st_mtime_ns
    assert after == before
    assert '"2026-03-12"' in row.file.with_suffix(".json").read_text(encoding="utf-8")
    assert [r.id for r in bench.practising.day(date(2026, 3, 12))] == [row.id]
    assert bench.practising.day(date(2026, 3, 10)) == ()


def test_a_lost_database_comes_back_from_the_sidecars(bench, journal_dir, clock, row):
    from app.services.repairing import repair

    bench.marking.add(row.id, 1.0, category="rhythm", text="rushed")
    bench.filing.set_aim(row.id, "even bow")
    expected, markers = bench.filing.row(row.id), bench.marking.for_take(row.id)
    bench.close()
    for file in journal_dir.glob("journal.db*"):
        file.unlink()
    for file in (journal_dir / "backups").glob("*"):
        file.unlink()
    found = repair(journal_dir)
    assert found.rebuilt
    assert found.takes == 1
    with open_workbench(journal_dir, clock=clock) as again:
        assert again.filing.row(row.id) == expected
        assert again.marking.for_take(row.id) == markers


def test_an_aim_and_its_answer(bench, row):
    assert bench.filing.set_aim(row.id, " third finger higher ").aim == "third finger higher"
    assert bench.filing.answer_aim(row.id, AimMet.PARTLY).aim_met is AimMet.PARTLY
    assert bench.filing.answer_aim(row.id, None).aim_met is None


def test_a_deleted_take_comes_back_by_undo_and_by_name(bench, row):
    bench.filing.delete(row.id)
    assert bench.filing.takes() == ()
    with pytest.raises(PlainFailure):
        bench.filing.row(row.id)
    assert row.file.exists()
    assert bench.marking.undo() == "take 1 of opening deleted"
    assert [r.id for r in bench.filing.takes()] == [row.id]
    bench.marking.redo()
    assert bench.filing.takes() == ()
    assert bench.filing.restore(row.id).id == row.id


def test_a_take_is_named_in_four_ways(bench, journal_dir, row):
    for text in (
        row.id,
        row.id[:8],
        str(row.file),
        row.file.relative_to(journal_dir).as_posix(),
        "opening:2026-03-10:1",
        "Study: opening:2026-03-10:1",
        "opening:2026-03-10",
    ):
        assert bench.filing.resolve(text) == row.id


@pytest.mark.parametrize(
    "text", ["", "zz", "0000", "opening:2026-03-11:1", "opening:2026-03-10:2", "nothing.wav"]
)
def test_a_take_that_is_not_there_is_said(bench, row, text):
    with pytest.raises(PlainFailure, match="no take"):
        bench.filing.resolve(text)


def test_settings_that_make_no_sense_are_refused(bench, row):
    settings = bench.listening.open_take(row.id).settings
    for wrong in (
        replace(settings, instrument="kazoo"),
        replace(settings, reference_a_hz=200.0),
        replace(settings, temperament="just"),
        replace(settings, pulse_bpm=0.0),
        replace(settings, open_strings=("H9",)),
    ):
        with pytest.raises(PlainFailure) as failure:
            bench.filing.change_settings(row.id, wrong)
        assert failure.value.sentence.endswith(".")


def test_markers_are_placed_changed_deleted_and_undone(bench, row):
    first = bench.marking.add(row.id, 0.5, category="shift", weight=3, text="late")
    span = bench.marking.add(
        row.id, 1.0, 1.5, category="rhythm", author=Author.TEACHER, state=MarkerState.SETTLED
    )
    assert bench.marking.for_take(row.id) == (first, span)
    changed = bench.marking.change(replace(first, text="late again", weight=1))
    assert changed.text == "late again"
    bench.marking.delete(span.id)
    assert bench.marking.for_take(row.id) == (changed,)
    assert bench.marking.undo() == "marker at 0:01.0 deleted"
    assert bench.marking.undo() == "marker at 0:00.5 changed"
    assert {m.text for m in bench.marking.for_take(row.id)} == {"late", ""}
    assert bench.marking.redo() == "marker at 0:00.5 changed"
    assert bench.marking.can_redo
    bench.marking.add(row.id, 0.1, category="sound")
    assert not bench.marking.can_redo
    while bench.marking.undo():
        pass
    assert bench.marking.for_take(row.id) == ()
    assert not bench.marking.can_undo
    assert bench.filing.row(row.id).marker_count == 0


@pytest.mark.parametrize(
    "wrong",
    [
        {"start_s": -1.0},
        {"start_s": 9.0},
        {"start_s": float("nan")},
        {"start_s": 1.0, "end_s": 0.5},
        {"start_s": 1.0, "weight": 0},
        {"start_s": 1.0, "weight": 4},
        {"start_s": 1.0, "category": " "},
    ],
)
def test_markers_that_make_no_sense_are_refused(bench, row, wrong):
    with pytest.raises(PlainFailure):
        bench.marking.add(row.id, **({"category": "sound"} | wrong))
    assert bench.marking.for_take(row.id) == ()
    assert not bench.marking.can_undo


def test_open_markers_come_heaviest_first(bench, row):
    bench.marking.add(row.id, 0.5, category="shift", weight=1, text="light")
    bench.marking.add(row.id, 0.6, category="shift", weight=3, text="heavy")
    bench.marking.add(row.id, 0.7, category="shift", state=MarkerState.SETTLED)
    rows = bench.marking.open_markers(10)
    assert [r.marker.text for r in rows] == ["heavy", "light"]
    assert rows[0].passage_name == "Study: opening"
    assert [r.marker.text for r in bench.practising.today().to_work_on] == ["heavy", "light"]
