"""Opening, looking at and closing a journal."""

from pathlib import Path

import pytest

from app.journal.failures import PlainFailure
from app.wiring import default_journal_dir, local_now, local_zone, open_workbench


def test_the_variable_names_the_journal(monkeypatch, tmp_path):
    monkeypatch.setenv("PASSAGEWORK_JOURNAL", str(tmp_path / "mine"))
    assert default_journal_dir() == tmp_path / "mine"
    monkeypatch.setenv("PASSAGEWORK_JOURNAL", "~/practice")
    assert default_journal_dir() == Path.home() / "practice"
    monkeypatch.delenv("PASSAGEWORK_JOURNAL")
    assert default_journal_dir().name == "Passagework"


def test_the_clock_knows_its_zone():
    assert local_now().utcoffset() is not None
    assert local_now().astimezone(local_zone()).utcoffset() == local_now().utcoffset()


def test_closing_twice_does_nothing(journal_dir, clock):
    bench = open_workbench(journal_dir, clock=clock)
    bench.close()
    bench.close()
    open_workbench(journal_dir, clock=clock).close()


def test_a_journal_that_is_not_there_is_only_made_when_wanted(journal_dir, clock):
    with pytest.raises(PlainFailure, match="no journal"):
        open_workbench(journal_dir, create=False, clock=clock)
    assert not journal_dir.exists()


def test_looking_only_changes_nothing(bench, journal_dir, clock, tone_file, add_take):
    row = add_take(tone_file(), "Scale")
    with open_workbench(journal_dir, create=False, read_only=True, clock=clock) as looking:
        assert looking.read_only
        assert looking.filing.row(row.id) == row
        before = sorted(path for path in journal_dir.rglob("*") if "journal.db" not in path.name)
        assert looking.listening.waveform(row.id, 0.0, 0.5, 50).time_s.size == 50
        for act in (
            lambda: looking.marking.add(row.id, 0.1, category="sound"),
            lambda: looking.filing.delete(row.id),
            lambda: looking.passages.add("Study", "Coda"),
            lambda: looking.measuring.measure(row.id),
            looking.recording.start,
            lambda: looking.importing.file(looking.importing.propose([tone_file("b.wav", 1)])),
        ):
            with pytest.raises(PlainFailure):
                act()
        after = sorted(path for path in journal_dir.rglob("*") if "journal.db" not in path.name)
        assert after == before
