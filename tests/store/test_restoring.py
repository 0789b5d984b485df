"""Going back to a backup: what it says comes back, and no recording is ever given up."""

from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest

from app.journal.failures import PlainFailure
from app.journal.stopping import Stopped
from app.store.backups import back_up, backups_newest_first, thin_out
from app.store.folders import Folders
from app.store.repair import repair
from app.store.restoring import restore
from tests.store.making import (
    DAY,
    NOW,
    Ticking,
    everything,
    make_marker,
    make_passage,
    make_session,
    make_take,
    opened,
    with_recording,
)


def contents(journal: Path) -> dict[str, object]:
    with opened(journal, read_only=True) as store:
        return everything(store)


def change_much(journal: Path) -> str:
    """Change and delete what a player may change, and record another take; gives its id."""
    with opened(journal) as store:
        take = store.takes.list()[0]
        for marker in store.markers.for_take(take.id):
            store.markers.replace(replace(marker, text="written over"))
        store.markers.add(make_marker(take, 9.0))
        session = make_session(DAY + timedelta(days=60), minutes=55.0)
        passage = make_passage("a new one")
        store.passages.add(passage)
        store.sessions.add(session)
        younger = with_recording(store, make_take(session, passage))
        store.takes.add(younger)
        store.markers.add(make_marker(younger, 3.0, text="of the younger take"))
        store.settings.replace(replace(store.settings.get(), day_turn_hour=5))
        return younger.id


def test_everything_written_is_as_it_was_and_younger_recordings_stay(filled: Path) -> None:
    with opened(filled) as store:
        before = everything(store)
        backup = store.back_up()
    sounds = {path: path.read_bytes() for path in filled.rglob("*.flac")}
    younger_id = change_much(filled)
    changed = contents(filled)
    report = restore(filled, backup.name, clock=Ticking())
    after = contents(filled)
    younger = after["takes"].pop(younger_id)  # type: ignore[attr-defined]
    assert report.takes_kept == (younger.file,)
    assert [m.text for m in after["markers"].pop(younger_id)] == ["of the younger take"]  # type: ignore[attr-defined]
    assert {p.name for p in after["passages"]} >= {"a new one"}  # type: ignore[attr-defined]
    for kind in ("takes", "rest_days", "settings", "blocks", "promises", "assignments"):
        assert after[kind] == before[kind], kind
    assert set(before["sessions"]) < set(after["sessions"])  # type: ignore[call-overload]
    assert {p: p.read_bytes() for p in sounds} == sounds
    # The way back leads to what was replaced.
    assert restore(filled, Path(report.way_back).name, clock=Ticking(NOW + timedelta(hours=1)))
    assert contents(filled) == changed


def test_a_rebuild_after_a_restore_says_the_same(filled: Path) -> None:
    with opened(filled) as store:
        backup = store.back_up()
    change_much(filled)
    restore(filled, backup.name, clock=Ticking())
    restored = contents(filled)
    (filled / "journal.db").unlink()
    for path in (filled / "backups").glob("*.db"):
        path.unlink()
    repair(filled, clock=Ticking())
    assert contents(filled) == restored


def test_a_damaged_database_is_kept_whole_when_it_is_replaced(filled: Path) -> None:
    with opened(filled) as store:
        backup = store.back_up()
    database = filled / "journal.db"
    database.write_bytes(b"\xa5" * 40_000)
    report = restore(filled, backup.name, clock=Ticking())
    assert report.way_back == ""
    assert (filled / report.set_aside / "journal.db").read_bytes() == b"\xa5" * 40_000
    assert report.takes == 48


@pytest.mark.parametrize("name", ["journal-1999", "", "nothing", "../journal"])
def test_no_such_backup_changes_nothing(filled: Path, name: str) -> None:
    before = (filled / "journal.db").read_bytes()
    with pytest.raises(PlainFailure, match="no backup"):
        restore(filled, name, clock=Ticking())
    assert (filled / "journal.db").read_bytes() == before


def test_a_damaged_backup_is_refused(filled: Path) -> None:
    with opened(filled) as store:
        backup = store.back_up()
    backup.write_bytes(b"no database at all" * 1000)
    before = contents(filled)
    with pytest.raises(PlainFailure, match="damaged"):
        restore(filled, backup.name, clock=Ticking())
    assert contents(filled) == before


def test_stopping_in_the_middle_changes_nothing(filled: Path) -> None:
    with opened(filled) as store:
        backup = store.back_up()
    files = {path for path in filled.rglob("*") if not path.name.startswith("journal.db-")}
    with pytest.raises(Stopped):
        restore(filled, backup.name, clock=Ticking(), should_stop=lambda: True)
    assert {p for p in filled.rglob("*") if not p.name.startswith("journal.db-")} <= files | {
        filled / ".lock"
    }


def test_an_open_journal_is_not_restored(filled: Path) -> None:
    with opened(filled) as store:
        backup = store.back_up()
        with pytest.raises(PlainFailure, match="already open"):
            restore(filled, backup.name, clock=Ticking())


def test_thinning_out_keeps_labelled_ones_and_foreign_files(filled: Path) -> None:
    folders = Folders(filled)
    for days in range(40):
        back_up(folders, NOW + timedelta(days=days))
    labelled = back_up(folders, NOW - timedelta(days=400), label="before-0002")
    foreign = folders.backups / "journal-my own copy.db"
    foreign.write_bytes(b"mine")
    removed = thin_out(folders)
    left = [backup.path for backup in backups_newest_first(folders)]
    assert labelled in left
    assert foreign.read_bytes() == b"mine"
    assert foreign not in removed
    # 40 days from Sunday 1 March 2026 on: 7 days, then one a week of the weeks before.
    plain = [backup.made_at.date() for backup in backups_newest_first(folders) if not backup.label]
    last = NOW.date() + timedelta(days=39)
    assert plain[:7] == [last - timedelta(days=n) for n in range(7)]
    assert len(plain) == 7 + 5
    assert {day.isoweekday() for day in plain[7:]} == {7}
