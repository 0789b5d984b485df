"""The copy of the clock beside the database outlives the database."""

import json
import sqlite3
from contextlib import closing
from datetime import timedelta

import pytest

from app.journal.kinds import ItemKind
from app.services.repairing import repair
from app.wiring import open_workbench


def lose_the_database(journal_dir):
    for path in journal_dir.glob("journal.db*"):
        path.unlink()
    for path in (journal_dir / "backups").glob("*"):
        path.unlink()
    assert repair(journal_dir).rebuilt


def backed_up(journal_dir, tmp_path):
    older = tmp_path / "older.db"
    with (
        closing(sqlite3.connect(journal_dir / "journal.db")) as source,
        closing(sqlite3.connect(older)) as backup,
    ):
        source.backup(backup)
    return older


def go_back_to(older, journal_dir):
    for path in journal_dir.glob("journal.db*"):
        path.unlink()
    older.rename(journal_dir / "journal.db")


@pytest.fixture
def scale(bench):
    return bench.items.add(ItemKind.SCALE, "Scale in D")


def test_the_open_block_outlives_a_lost_database(bench, clock, journal_dir, scale):
    bench.clock.start(scale.id)
    clock.now += timedelta(minutes=7)
    bench.close()
    lose_the_database(journal_dir)
    clock.now += timedelta(minutes=3)
    with open_workbench(journal_dir, clock=clock) as again:
        view = again.clock.state()
        assert (view.phase, view.item_title) == ("running", "Scale in D")
        assert view.block_s == pytest.approx(600)
        again.clock.stop()
        assert again.practising.today().minutes == pytest.approx(10)
        assert len(again.clock.state().items) == 1


def test_a_clock_stopped_since_an_older_backup_stays_stopped(bench, clock, journal_dir, tmp_path):
    bench.clock.start()
    older = backed_up(journal_dir, tmp_path)
    clock.now += timedelta(minutes=5)
    bench.clock.stop()
    bench.close()
    go_back_to(older, journal_dir)
    clock.now += timedelta(hours=9)
    with open_workbench(journal_dir, clock=clock) as again:
        assert again.clock.forgotten() is None
        assert again.clock.state().phase == "stopped"


def test_a_journal_without_a_clock_has_no_copy(bench, journal_dir):
    bench.practising.set_minutes(bench.practising.practice_day_now(), 5)
    bench.close()
    assert not (journal_dir / "clock.json").exists()


def test_a_copy_that_a_crash_left_behind_counts_nothing_twice(bench, clock, journal_dir):
    """Killed after the clock was stopped in the database, before the copy was taken away."""
    bench.clock.start()
    copy = (journal_dir / "clock.json").read_text(encoding="utf-8")
    clock.now += timedelta(minutes=5)
    bench.clock.stop()
    bench.close()
    (journal_dir / "clock.json").write_text(copy, encoding="utf-8")
    with open_workbench(journal_dir, clock=clock) as again:
        assert again.clock.state().phase == "stopped"
        assert again.practising.today().minutes == pytest.approx(5)


def test_after_an_older_backup_the_newer_copy_holds(bench, clock, journal_dir, scale, tmp_path):
    bench.clock.start()
    older = backed_up(journal_dir, tmp_path)
    clock.now += timedelta(minutes=4)
    bench.clock.switch(scale.id)
    bench.close()
    go_back_to(older, journal_dir)
    clock.now += timedelta(minutes=2)
    with open_workbench(journal_dir, clock=clock) as again:
        assert again.clock.state().item_title == "Scale in D"
        assert again.clock.state().block_s == pytest.approx(120)


@pytest.mark.parametrize("text", ["", "[]", "{}", '{"clock": {}, "session": null}', "\x00\xff"])
def test_a_copy_that_makes_no_sense_is_passed_over(bench, clock, journal_dir, text):
    bench.close()
    (journal_dir / "clock.json").write_text(text, encoding="latin-1")
    with open_workbench(journal_dir, clock=clock) as again:
        assert again.clock.state().phase == "stopped"


def test_looking_only_changes_no_copy(bench, clock, journal_dir):
    bench.clock.start()
    bench.close()
    text = (journal_dir / "clock.json").read_text(encoding="utf-8")
    with open_workbench(journal_dir, read_only=True, clock=clock) as looking:
        assert looking.clock.state().phase == "running"
    assert (journal_dir / "clock.json").read_text(encoding="utf-8") == text
    assert json.loads(text)["clock"]["running"] is True
