"""A backup on every day on which something changed, and none otherwise."""

from datetime import UTC, datetime, timedelta
from pathlib import Path

from app.services.repairing import backups_of
from app.wiring import open_workbench

EVENING = datetime(2026, 3, 14, 19, 30, tzinfo=UTC)


def change_something(folder: Path, at: datetime, minutes: float) -> None:
    with open_workbench(folder, clock=lambda: at) as bench:
        bench.practising.set_minutes(at.date(), minutes)


def test_closing_after_a_change_makes_one_backup_a_day(tmp_path: Path) -> None:
    change_something(tmp_path, EVENING, 20)
    change_something(tmp_path, EVENING + timedelta(hours=1), 30)
    assert [row.made_at.date() for row in backups_of(tmp_path)] == [EVENING.date()]
    change_something(tmp_path, EVENING + timedelta(days=1), 30)
    assert len(backups_of(tmp_path)) == 2


def test_looking_alone_makes_none(tmp_path: Path) -> None:
    change_something(tmp_path, EVENING, 20)
    later = EVENING + timedelta(days=3)
    with open_workbench(tmp_path, clock=lambda: later) as bench:
        bench.practising.today()
    with open_workbench(tmp_path, read_only=True, clock=lambda: later) as bench:
        assert not bench.backups.make_if_due()
    assert len(backups_of(tmp_path)) == 1


def test_months_of_use_are_thinned_to_the_rule(tmp_path: Path) -> None:
    for days in range(100):
        change_something(tmp_path, EVENING + timedelta(days=days), days)
    rows = backups_of(tmp_path)
    assert [row.made_at for row in rows] == sorted((r.made_at for r in rows), reverse=True)
    assert len(rows) == 7 + 7  # the newest of eight weeks is one of the seven days
    assert all(row.size_bytes > 1000 and not row.reason for row in rows)
