"""Repair: a journal rebuilt from its sidecars is the journal it was.

Longer than 300 lines: cases of one subject, each of them read by itself.
"""

import json
import shutil
import sqlite3
from collections.abc import Callable
from contextlib import closing
from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest

from app.journal.failures import PlainFailure
from app.journal.sidecar import SCHEMA
from app.journal.stopping import Stopped
from app.store.repair import RepairReport, repair
from app.store.store import Store
from tests.store.making import (
    DAY,
    NOW,
    Ticking,
    everything,
    fill,
    make_marker,
    make_passage,
    make_session,
    make_take,
    opened,
    with_recording,
)

SOUND = RepairReport(
    rebuilt=False,
    set_aside="",
    backup_used="",
    takes=48,
    sidecars_written=0,
    sidecars_unreadable=(),
    recordings_missing=(),
    recordings_changed=(),
    recordings_unfiled=(),
)


def contents(journal: Path) -> dict[str, object]:
    with opened(journal, read_only=True) as store:
        return everything(store)


def lose(journal: Path) -> None:
    (journal / "journal.db").unlink()


def recordings(journal: Path) -> dict[str, bytes]:
    return {str(path): path.read_bytes() for path in sorted(journal.rglob("*.flac"))}


def test_a_sound_journal_stays_as_it_is(filled: Path) -> None:
    before = contents(filled)
    assert repair(filled, clock=Ticking()) == SOUND
    assert contents(filled) == before


def test_a_lost_database_comes_back_from_the_sidecars(filled: Path) -> None:
    before, sounds = contents(filled), recordings(filled)
    lose(filled)
    report = repair(filled, clock=Ticking())
    assert report == replace(SOUND, rebuilt=True)
    assert contents(filled) == before
    assert recordings(filled) == sounds
    with opened(filled) as store:  # measured again, from the recordings
        assert len(store.measurements.waiting("take-1")) == len(store.takes.list())


def test_changes_of_every_kind_reach_the_sidecars(filled: Path) -> None:
    with opened(filled) as store:
        take, other = store.takes.list()[:2]
        passage = store.passages.list()[0]
        markers = store.markers.for_take(take.id)
        refiled_to = make_session(DAY + timedelta(days=40))
        store.sessions.add(refiled_to)
        store.passages.replace(replace(passage, bars="17-24"))
        store.takes.replace(
            replace(
                take,
                session_id=refiled_to.id,
                practice_day=refiled_to.practice_day,
                passage_id=store.passages.list()[-1].id,
                aim="slower",
            )
        )
        store.takes.replace(replace(other, deleted_at=NOW))
        store.markers.remove(markers[0].id)
        store.markers.replace(replace(markers[1], text="still there"))
        store.sessions.replace(replace(store.sessions.list()[0], minutes=99.0))
        store.rest_days.remove(DAY + timedelta(days=10))
        before = everything(store)
    lose(filled)
    repair(filled, clock=Ticking())
    assert contents(filled) == before


def damage(database: Path) -> None:
    with database.open("r+b") as file:
        file.seek(2048)
        file.write(b"\xa5" * 8192)


def test_a_damaged_database_is_set_aside_and_rebuilt(filled: Path) -> None:
    before = contents(filled)
    database = filled / "journal.db"
    damage(database)
    damaged_bytes = database.read_bytes()
    report = repair(filled, clock=Ticking())
    assert report.rebuilt
    assert contents(filled) == before
    aside = filled / report.set_aside
    assert aside.parent == filled / "backups"
    assert (aside / "journal.db").read_bytes() == damaged_bytes
    damage(database)
    again = repair(filled, clock=lambda: NOW)
    damage(database)
    third = repair(filled, clock=lambda: NOW)
    assert len({report.set_aside, again.set_aside, third.set_aside}) == 3
    assert (aside / "journal.db").read_bytes() == damaged_bytes


def test_a_backup_brings_back_what_no_sidecar_says(filled: Path) -> None:
    with opened(filled) as store:
        backup = store.back_up()
        measured = store.measurements.headlines()
        silent = store.takes.list()[0]
        changed = store.takes.list()[1]
        store.takes.replace(replace(changed, aim="after the backup"))
        store.markers.remove(store.markers.for_take(changed.id)[0].id)
        store.rest_days.remove(DAY + timedelta(days=10))
        before = everything(store)
    with opened(filled, read_only=True) as store:
        store.folders.sidecar(silent.file).unlink()
    (filled / "backups" / "journal-9999-01-01.db").write_bytes(b"no database at all" * 100)
    lose(filled)
    report = repair(filled, clock=Ticking())
    assert report.backup_used == f"backups/{backup.name}"
    assert report.sidecars_written == 1
    with opened(filled) as store:
        assert everything(store) == before
        headlines = store.measurements.headlines()
        assert headlines.keys() == measured.keys()
        assert all(headline.stale for headline in headlines.values())  # the curves are gone
        assert store.folders.sidecar(silent.file).exists()


def test_a_crash_in_the_middle_of_a_repair_is_no_loss(
    filled: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = contents(filled)
    damage(filled / "journal.db")

    def die(*_args: object) -> None:
        raise KeyboardInterrupt

    with monkeypatch.context() as patch:
        patch.setattr("app.store.repair.sync_folder", die)
        patch.setattr("app.store.repair.remove_database", lambda _database: None)
        patch.setattr(Path, "replace", _dying_before("journal.db", Path.replace))
        with pytest.raises(KeyboardInterrupt):
            repair(filled, clock=Ticking())
    with pytest.raises(PlainFailure):
        opened(filled)
    assert repair(filled, clock=Ticking()).rebuilt
    assert contents(filled) == before
    assert not list(filled.glob("*rebuilding*"))


def _dying_before(
    name: str, original: Callable[[Path, Path], Path]
) -> Callable[[Path, Path], Path]:
    def replace_file(self: Path, target: Path) -> Path:
        if Path(target).name == name and self.name != name:
            raise KeyboardInterrupt
        return original(self, target)

    return replace_file


def test_stopping_leaves_everything_as_it_was(filled: Path) -> None:
    damage(filled / "journal.db")
    before = (filled / "journal.db").read_bytes()
    names = sorted(str(path) for path in filled.rglob("*"))
    for allowed in (0, 5, 20):
        left = iter(range(allowed))
        with pytest.raises(Stopped):
            repair(filled, clock=Ticking(), should_stop=lambda left=left: next(left, None) is None)
        assert (filled / "journal.db").read_bytes() == before
        assert sorted(str(path) for path in filled.rglob("*")) == names


def test_progress_goes_up_to_one(filled: Path) -> None:
    lose(filled)
    shares: list[float] = []
    repair(filled, clock=Ticking(), progress=shares.append)
    assert shares == sorted(shares)
    assert 0 < shares[0] < 0.1
    assert shares[-1] == 1.0


def test_missing_changed_and_unfiled_recordings_are_named(filled: Path) -> None:
    with opened(filled, read_only=True) as store:
        one, two = store.takes.list()[:2]
        store.folders.absolute(one.file).unlink()
        store.folders.absolute(two.file).write_bytes(b"other sound")
        day = store.folders.day(DAY)
    shutil.copyfile(filled / two.file, day / "from the phone.m4a")
    (day / ".hidden").touch()
    report = repair(filled, clock=Ticking())
    assert report.recordings_missing == (one.file,)
    assert report.recordings_changed == (two.file,)
    assert report.recordings_unfiled == ("2026/2026-03-01/from the phone.m4a",)
    assert repair(filled, compare_bytes=False, clock=Ticking()).recordings_changed == ()


def test_a_bad_sidecar_costs_only_its_take(filled: Path) -> None:
    with opened(filled, read_only=True) as store:
        one, two, three = store.takes.list()[:3]
        kept = len(store.takes.list(include_deleted=True))
        paths = [store.folders.sidecar(take.file) for take in (one, two, three)]
    paths[0].write_text("{ scribble", encoding="utf-8")
    paths[1].write_bytes(b"\xff\xfe\x00")
    data = json.loads(paths[2].read_text(encoding="utf-8"))
    data["take"]["file"] = "../../elsewhere.flac"
    paths[2].write_text(json.dumps(data), encoding="utf-8")
    lose(filled)
    report = repair(filled, clock=Ticking())
    assert len(report.sidecars_unreadable) == 3
    assert report.takes == kept - 3
    assert set(report.recordings_unfiled) == {one.file, two.file, three.file}


def test_a_folder_that_was_renamed_by_hand(filled: Path) -> None:
    with opened(filled, read_only=True) as store:
        takes = store.takes.of_day(DAY)
    (filled / "2026" / "2026-03-01").rename(filled / "2026" / "2026-03-01 concert")
    lose(filled)
    report = repair(filled, clock=Ticking())
    assert report.recordings_missing == ()
    with opened(filled, read_only=True) as store:
        for take in takes:
            found = store.takes.get(take.id)
            assert found is not None
            assert found.file == take.file.replace("2026-03-01/", "2026-03-01 concert/")
            assert found.practice_day == DAY


def test_a_day_copied_by_hand_is_not_filed_twice(filled: Path) -> None:
    before = contents(filled)
    shutil.copytree(filled / "2026" / "2026-03-01", filled / "2026" / "2026-03-01 copy")
    lose(filled)
    report = repair(filled, clock=Ticking())
    assert contents(filled) == before
    assert len(report.recordings_unfiled) == 4


def test_two_takes_that_claim_one_recording(filled: Path) -> None:
    with opened(filled, read_only=True) as store:
        take = store.takes.list()[0]
        sidecar = store.folders.sidecar(take.file)
        count = len(store.takes.list(include_deleted=True))
    data = json.loads(sidecar.read_text(encoding="utf-8"))
    data["take"]["id"] = "e" * 32
    data["written_at"] = "2030-01-01T00:00:00+00:00"
    data["markers"] = [data["markers"][0] | {"weight": 9, "take_id": "other"}]
    sidecar.with_name("second.json").write_text(json.dumps(data), encoding="utf-8")
    lose(filled)
    report = repair(filled, clock=Ticking())
    assert report.takes == count
    assert len(report.sidecars_unreadable) == 1
    with opened(filled, read_only=True) as store:
        assert store.takes.get(take.id) is None
        (marker,) = store.markers.for_take("e" * 32)
        assert marker.weight == 3


def test_without_the_cards_of_days_and_journal(filled: Path) -> None:
    with opened(filled, read_only=True) as store:
        takes = store.takes.list(include_deleted=True)
        sessions = [s for s in store.sessions.list() if s.note != "no take"]
    for path in [*filled.rglob("day.json"), filled / "journal.json"]:
        path.unlink()
    lose(filled)
    repair(filled, clock=Ticking())
    with opened(filled, read_only=True) as store:
        assert store.takes.list(include_deleted=True) == takes
        assert list(store.sessions.list()) == sessions
        assert {passage.bars for passage in store.passages.list()} == {"1-8"}


def test_no_passage_but_its_take(store: Store, journal: Path) -> None:
    session, passage = make_session(), make_passage()
    store.sessions.add(session)
    store.passages.add(passage)
    take = with_recording(store, make_take(session, passage))
    store.takes.add(take)
    store.markers.add(make_marker(take))
    sidecar = store.folders.sidecar(take.file)
    store.close()
    data = json.loads(sidecar.read_text(encoding="utf-8"))
    data["passage"] = None
    sidecar.write_text(json.dumps(data), encoding="utf-8")
    (journal / "journal.json").unlink()
    lose(journal)
    repair(journal, clock=Ticking())
    with opened(journal) as again:
        assert again.takes.list() == (replace(take, passage_id=None),)


def test_a_recording_that_is_lost_keeps_its_take(filled: Path) -> None:
    before = contents(filled)
    for path in filled.rglob("*.flac"):
        path.unlink()
    lose(filled)
    report = repair(filled, clock=Ticking())
    assert len(report.recordings_missing) == report.takes == 48
    assert contents(filled) == before


def test_repair_needs_a_journal_that_nobody_has_open(store: Store, journal: Path) -> None:
    with pytest.raises(PlainFailure, match="already open"):
        repair(journal)
    with pytest.raises(PlainFailure, match="There is no journal"):
        repair(journal / "nowhere")
    fill(store, days=1)


def test_repair_of_a_folder_without_a_journal(tmp_path: Path) -> None:
    (tmp_path / "letters.txt").touch()
    with pytest.raises(PlainFailure, match="There is no journal"):
        repair(tmp_path)
    assert not (tmp_path / "journal.db").exists()


def test_a_newer_journal_is_not_repaired(filled: Path) -> None:
    with opened(filled) as store, store.transaction() as connection:
        connection.exec_driver_sql("UPDATE alembic_version SET version_num = '9999'")
    before = (filled / "journal.db").read_bytes()
    with pytest.raises(PlainFailure, match="newer version"):
        repair(filled)
    assert (filled / "journal.db").read_bytes() == before


def test_sidecars_of_a_newer_version_are_not_rebuilt_from(filled: Path) -> None:
    card = filled / "2026" / "2026-03-01" / "day.json"
    data = json.loads(card.read_text(encoding="utf-8"))
    card.write_text(json.dumps(data | {"schema": SCHEMA + 1}), encoding="utf-8")
    damage(filled / "journal.db")
    before = (filled / "journal.db").read_bytes()
    with pytest.raises(PlainFailure, match="newer version"):
        repair(filled)
    assert (filled / "journal.db").read_bytes() == before


def test_rows_that_refer_to_nothing_are_damage_too(filled: Path) -> None:
    before = contents(filled)
    with closing(sqlite3.connect(filled / "journal.db")) as connection, connection:
        connection.execute("DELETE FROM passage")  # another program, without foreign keys
    assert repair(filled, clock=Ticking()).rebuilt
    assert contents(filled) == before


def test_a_sidecar_can_be_asked_for(store: Store) -> None:
    session = make_session()
    store.sessions.add(session)
    take = make_take(session)
    store.takes.add(take)
    sidecar = store.folders.sidecar(take.file)
    sidecar.unlink()
    with store.transaction():
        store.write_sidecar(take.id)
        store.write_sidecar("0" * 32)  # a take that is not there needs none
        assert not sidecar.exists()
    assert sidecar.exists()
    assert store.sidecars.due() == frozenset()


def test_only_damage_is_a_reason_to_rebuild(filled: Path) -> None:
    with closing(sqlite3.connect(filled / "journal.db")) as other:
        other.execute("PRAGMA journal_mode = DELETE")
        other.execute("BEGIN EXCLUSIVE")  # another program is at it
        with pytest.raises(PlainFailure, match="open in another copy"):
            repair(filled)
    assert not (filled / "backups").exists()
