"""The demo journal: whole or not at all, and never over somebody's own."""

import json
import os
import time
from datetime import date, datetime, timedelta
from pathlib import Path
from types import SimpleNamespace

import pytest

from app.journal.failures import PlainFailure
from app.services.demo import build_demo, building, demo_end, is_demo
from app.services.demo.summary import summarise
from app.services.pictures import pictures
from app.services.reading_views import Reading
from app.services.stopping import Stopped
from app.wiring import open_workbench
from sample_audio import scenario

END = date(2026, 3, 14)


@pytest.fixture(autouse=True)
def short_story(monkeypatch):
    """Tell only the first days and the last one: five takes instead of forty."""
    whole = scenario.demo_days

    def some(end):
        days = whole(end)
        return (*days[:9], days[-1])

    monkeypatch.setattr("sample_audio.scenario.demo_days", some)


@pytest.fixture(scope="module")
def demo_dir(tmp_path_factory):
    """Build once; the tests that use it only look."""
    journal = tmp_path_factory.mktemp("demo") / "journal"
    whole = scenario.demo_days
    patch = pytest.MonkeyPatch()
    patch.setattr("sample_audio.scenario.demo_days", lambda end: (*whole(end)[:2], whole(end)[-1]))
    told = []
    try:
        build_demo(journal, end=END, progress=told.append)
    finally:
        patch.undo()
    assert told == sorted(told)
    assert told[-1] == 1.0
    return journal


def test_every_take_is_filed_and_measured_for_real(demo_dir):
    with open_workbench(demo_dir, create=False) as bench:
        rows = bench.filing.takes()
        assert len(rows) == 4
        assert {row.state for row in rows} == {"measured"}
        assert bench.measuring.waiting() == ()
        assert all(isinstance(row.intonation, Reading) for row in rows)
        assert all(row.file.suffix == ".flac" and row.file.exists() for row in rows)
        assert rows[0].practice_day == END - timedelta(days=scenario.DAY_COUNT - 1)
        assert rows[-1].practice_day == END
        assert not any(row.is_late_entry for row in rows)
        assert bench.recording.unfinished() == ()
        first = bench.marking.for_take(rows[0].id)
        assert len(first) == len(scenario.demo_days(END)[0].takes[0].markers)
        # Measured on the decoded file again, the take gives the same numbers.
        kept = bench.measuring.report(rows[0].id).as_json()
        again = bench.measuring.measure_file(
            rows[0].file, bench.listening.open_take(rows[0].id).settings
        ).as_json()
        assert again | {"file": ""} == kept | {"file": ""}


def test_the_measured_notes_are_those_that_were_rendered(demo_dir):
    """Against the generator's truth: nine notes in ten found, and on the whole to 2 cents."""
    from sample_audio.generator import place_phrase

    take = scenario.demo_days(END)[0].takes[0]
    truths = place_phrase(take.phrase)
    with open_workbench(demo_dir, create=False) as bench:
        row = bench.filing.takes()[0]
        notes = bench.listening.open_take(row.id).notes
    errors = []
    for truth in truths:
        near = [n for n in notes if abs(n.start_s - truth.start_s) < 0.06]
        if near and isinstance(near[0].deviation, Reading) and near[0].midi == truth.midi:
            errors.append(abs(near[0].deviation.value - truth.deviation_cents))
    assert len(errors) >= 0.9 * sum(truth.second_midi is None for truth in truths)
    assert sorted(errors)[len(errors) // 2] < 2.0


def test_summary_and_pictures_without_a_display(demo_dir, tmp_path):
    with open_workbench(demo_dir, create=False) as bench:
        text = summarise(bench)
        made = pictures(bench, tmp_path / "pictures")
    assert "4 takes, 4 measured." in text
    assert "cents" in text
    assert all(path.read_bytes().startswith(b"\x89PNG") for path in made)
    assert {path.name for path in made} >= {"days.png", "1-last-take.png"}


def test_the_days_have_blocks_and_the_takes_their_attempts(demo_dir):
    from app.journal.no_retake import ChosenAs

    first = END - timedelta(days=scenario.DAY_COUNT - 1)
    with open_workbench(demo_dir, create=False) as bench:
        told = scenario.demo_days(END)
        for day in (told[0], told[1], told[-1]):
            expected: dict[str, float] = {}
            for block in day.blocks:
                expected[block.item] = expected.get(block.item, 0.0) + block.minutes
            found = bench.minutes.by_item(day.date, day.date)
            assert {row.title: pytest.approx(row.minutes) for row in found} == expected
        rows = bench.filing.takes()
        opening, crossings = bench.passages.list()
        assert opening.no_retake or crossings.no_retake
        kinds = {row.chosen_as for row in rows}
        assert ChosenAs.NO_RETAKE in kinds
        assert kinds <= {ChosenAs.NO_RETAKE, ChosenAs.ONLY_TAKE, ChosenAs.BEST_OF_SEVERAL}
        effort = bench.minutes.recording(first, END)
        assert effort.attempts >= effort.kept == len(rows)
        blocks = bench.minutes._store.blocks.of_days(first, END)
        assert max(block.ended_at for block in blocks) <= max(row.recorded_at for row in rows)


def test_the_violist_promised_and_was_set_something(demo_dir):
    evening = datetime.combine(END, datetime.min.time()).astimezone() + timedelta(hours=22)
    with open_workbench(demo_dir, create=False, clock=lambda: evening) as bench:
        (view,) = bench.promises.running()
        assert view.headline.endswith(f"kept, day {scenario.DAY_COUNT}")
        assert len(view.rules) == 2
        assert len(bench.assignments.open()) == 2
        assert [row.title for row in bench.assignments.coming()] == ["lesson", "open seat"]
        assert bench.promises.shared_days(END - timedelta(days=9), END)
        plan = bench.planning.propose(45).plan
        assert plan.lines
        assert plan.minutes_planned <= 45
        assert bench.record.lifetime().earlier.hours == 1900


def test_a_finished_demo_is_known(demo_dir):
    assert is_demo(demo_dir)
    assert demo_end(demo_dir) == END


def test_stopping_leaves_nothing(tmp_path):
    asked = iter([False] * 3)
    with pytest.raises(Stopped):
        build_demo(tmp_path / "journal", end=END, should_stop=lambda: next(asked, True))
    assert list(tmp_path.iterdir()) == []


def test_what_a_killed_run_left_is_tidied_a_day_later(tmp_path):
    old, young = tmp_path / ".journal-0123abcd", tmp_path / ".journal-4567cdef"
    for folder in (old, young):
        (folder / "2026").mkdir(parents=True)
    yesterday = time.time() - 25 * 3600
    os.utime(old, (yesterday, yesterday))
    with pytest.raises(Stopped):
        build_demo(tmp_path / "journal", end=END, should_stop=lambda: True)
    assert list(tmp_path.iterdir()) == [young]


def test_a_journal_of_somebody_is_left_alone(tmp_path):
    journal = tmp_path / "journal"
    with open_workbench(journal):
        pass
    before = sorted(path.name for path in journal.iterdir())
    with pytest.raises(PlainFailure, match="left alone"):
        build_demo(journal, end=END)
    assert sorted(path.name for path in journal.iterdir()) == before


def test_a_folder_with_anything_else_is_left_alone(tmp_path):
    (tmp_path / "letters.txt").write_text("dear")
    with pytest.raises(PlainFailure, match="left alone"):
        build_demo(tmp_path, end=END)
    assert Path(tmp_path / "letters.txt").read_text() == "dear"


def test_a_damaged_mark_is_no_finished_demo(tmp_path):
    (tmp_path / "demo.json").write_text("{")
    assert demo_end(tmp_path) is None
    (tmp_path / "demo.json").write_text(json.dumps({"demo": 0, "end": "2026-01-01"}))
    assert demo_end(tmp_path) is None


@pytest.mark.parametrize(
    ("hours_before_its_last_take", "moves"), [(-2, False), (3, True), (14, True), (40, False)]
)
def test_no_take_of_the_last_day_lies_ahead(hours_before_its_last_take, moves):
    zone = datetime.now().astimezone().tzinfo
    ends = (datetime.now(zone) + timedelta(hours=hours_before_its_last_take)).replace(tzinfo=None)
    take = SimpleNamespace(time_of_day=ends.time())
    day = SimpleNamespace(
        date=ends.date(), takes=(take,), instant=lambda at: datetime.combine(ends.date(), at)
    )
    earlier = building._earlier(day, zone)
    assert bool(earlier) == moves
    if moves:
        assert ends - earlier[day.date] < datetime.now()
