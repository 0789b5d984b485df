"""Opening a journal: lock, refusals, looking only, damage.

The tests may run as root, for whom no folder is read-only, so that case is played in
three ways: as another user, on a read-only mount where the machine allows one, and by
an ``OSError`` as the system would raise it.

Longer than 300 lines: cases of one subject, each of them read by itself.
"""

import errno
import os
import shutil
import sqlite3
import subprocess
import sys
import tempfile
import textwrap
import threading
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path

import pytest

from app.journal.failures import PlainFailure
from app.store import connecting, folders
from app.store.folders import Folders
from app.store.migrating import HEAD
from app.store.repair import repair
from app.store.store import Store
from tests.store.making import everything, fill, make_marker, make_session, make_take, opened


def files_under(folder: Path) -> dict[str, tuple[int, int]]:
    return {
        str(path.relative_to(folder)): (path.stat().st_size, path.stat().st_mtime_ns)
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }


def test_everything_is_there_after_a_restart(journal: Path) -> None:
    with opened(journal) as store:
        fill(store)
        before = everything(store)
    with opened(journal) as store:
        assert everything(store) == before


def test_settings_of_the_connection(store: Store) -> None:
    with store.transaction() as connection:

        def pragma(name: str) -> object:
            return connection.exec_driver_sql(f"PRAGMA {name}").scalar_one()

        assert pragma("journal_mode") == "wal"
        assert pragma("foreign_keys") == 1
        assert pragma("synchronous") == 2  # FULL: a commit is on the disk


def test_a_closed_journal_leaves_no_log_behind(journal: Path) -> None:
    with opened(journal) as store:
        fill(store)
    assert not connecting.has_log(journal / "journal.db")


HOLDER = """
    import sys
    from pathlib import Path
    from app.store.store import open_store

    store = open_store(Path(sys.argv[1]))
    print("open", flush=True)
    sys.stdin.read()
"""


@contextmanager
def held_by_another_process(journal: Path) -> Iterator["subprocess.Popen[str]"]:
    process = subprocess.Popen(
        [sys.executable, "-c", textwrap.dedent(HOLDER), str(journal)],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
    )
    assert process.stdout is not None
    assert process.stdin is not None
    try:
        assert process.stdout.readline() == "open\n"
        yield process
    finally:
        process.kill()
        process.wait()
        process.stdin.close()
        process.stdout.close()


def test_a_second_copy_is_refused_until_the_first_is_gone(filled: Path) -> None:
    with opened(filled) as store:
        before = everything(store)
    with held_by_another_process(filled) as process:
        with pytest.raises(PlainFailure, match="already open in another copy") as told:
            opened(filled)
        assert told.value.next_step
        with opened(filled, read_only=True) as looking:
            assert everything(looking) == before
        process.kill()  # the lock goes with the process, however it ends
        process.wait()
        with opened(filled) as store:
            assert everything(store) == before


def test_a_second_copy_in_the_same_process_is_refused(store: Store, journal: Path) -> None:
    with pytest.raises(PlainFailure, match="already open"):
        opened(journal)
    store.settings.get()


def test_looking_sees_what_the_writer_committed(journal: Path, store: Store) -> None:
    fill(store)
    with opened(journal, read_only=True) as looking:
        assert everything(looking) == everything(store)
        with store.transaction():
            session = make_session()
            store.sessions.add(session)
            assert looking.sessions.get(session.id) is None
        assert looking.sessions.get(session.id) == session


def test_looking_changes_nothing(filled: Path) -> None:
    before = files_under(filled)
    with opened(filled, read_only=True) as looking:
        assert looking.read_only
        with pytest.raises(PlainFailure, match="cannot be written to"):
            looking.sessions.add(make_session())
        looking.takes.list()
    after = files_under(filled)
    assert {name: after[name] for name in before} == before
    assert set(after) - set(before) <= {"journal.db-wal", "journal.db-shm"}


@pytest.mark.parametrize("read_only", [False, True])
def test_no_journal_there(tmp_path: Path, read_only: bool) -> None:
    with pytest.raises(PlainFailure, match="There is no journal"):
        opened(tmp_path / "nowhere", create=False, read_only=read_only)
    assert not (tmp_path / "nowhere").exists()
    with pytest.raises(PlainFailure, match="There is no journal"):
        opened(tmp_path, create=False, read_only=read_only)
    assert not (tmp_path / "journal.db").exists()


def test_a_file_in_the_place_of_the_folder(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("not a folder")
    for place in (tmp_path / "file", tmp_path / "file" / "journal"):
        with pytest.raises(PlainFailure):
            opened(place)
    assert (tmp_path / "file").read_text() == "not a folder"


@contextmanager
def mounted_read_only(folder: Path) -> Iterator[None]:
    mount = shutil.which("mount")
    if os.name == "nt" or mount is None:
        pytest.skip("no read-only mount on this machine")
    steps = (["--bind", str(folder), str(folder)], ["-o", "remount,ro,bind", str(folder)])
    for step in steps:
        done = subprocess.run([mount, *step], capture_output=True, text=True, check=False)
        if done.returncode != 0:
            subprocess.run(["umount", str(folder)], capture_output=True, check=False)
            pytest.skip(f"no read-only mount on this machine: {done.stderr.strip()}")
    try:
        yield
    finally:
        subprocess.run(["umount", str(folder)], check=True)


@pytest.mark.skipif(not Path("/proc/self").exists(), reason="needs a file system without folders")
def test_a_place_where_no_folder_can_be_made() -> None:
    with pytest.raises(PlainFailure, match="cannot be written to"):
        opened(Path("/proc/no journal"))


def test_a_read_only_disk(filled: Path) -> None:
    with opened(filled) as store:
        before = everything(store)
    with mounted_read_only(filled):
        with pytest.raises(PlainFailure, match="cannot be written to") as told:
            opened(filled)
        assert told.value.next_step
        with opened(filled, read_only=True) as looking:
            assert everything(looking) == before
    with opened(filled) as store:
        assert everything(store) == before


def test_a_read_only_disk_after_a_crash(filled: Path, tmp_path: Path) -> None:
    with opened(filled) as store:
        store.settings.replace(store.settings.get())
        before = everything(store)
        # What a crash leaves: the database and its log, without the shared memory.
        crashed = tmp_path / "crashed"
        shutil.copytree(filled, crashed, ignore=shutil.ignore_patterns("*-shm", ".lock"))
    assert connecting.has_log(crashed / "journal.db")
    with mounted_read_only(crashed), opened(crashed, read_only=True) as looking:
        assert everything(looking) == before


def refuse(code: int) -> OSError:
    return OSError(code, os.strerror(code))


@pytest.mark.parametrize(
    ("code", "words"),
    [
        (errno.EACCES, "cannot be written to"),
        (errno.EROFS, "cannot be written to"),
        (errno.ENOSPC, "is full"),
        (errno.EIO, "reported an error"),
    ],
)
def test_a_folder_that_refuses(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, code: int, words: str
) -> None:
    def no_mkdir(*_args: object, **_options: object) -> None:
        raise refuse(code)

    monkeypatch.setattr(Path, "mkdir", no_mkdir)
    with pytest.raises(PlainFailure, match=words):
        opened(tmp_path / "new")
    assert not (tmp_path / "new").exists()


def test_a_file_system_without_locks(journal: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def no_lock(*_args: object, **_options: object) -> None:
        raise NotImplementedError

    monkeypatch.setattr(connecting.FileLock, "acquire", no_lock)
    with pytest.raises(PlainFailure, match="knows no locks"):
        opened(journal)


def test_a_full_disk_undoes_the_change_and_says_so(store: Store) -> None:
    session = make_session()
    store.sessions.add(session)
    before = everything(store)
    # A page limit makes SQLite answer exactly as it does on a full disk.
    with store.transaction() as connection:
        pages = connection.exec_driver_sql("PRAGMA page_count").scalar_one()
        connection.exec_driver_sql(f"PRAGMA max_page_count = {pages}")
    with pytest.raises(PlainFailure, match="is full, so nothing was changed"):
        _add_many(store)
    assert everything(store) == before
    with store.transaction() as connection:
        connection.exec_driver_sql("PRAGMA max_page_count = 1000000")
    _add_many(store)
    assert len(store.takes.list()) == 200


def _add_many(store: Store) -> None:
    session = store.sessions.list()[0]
    with store.transaction():
        for number in range(1, 201):
            take = make_take(session, None, number)
            store.takes.add(take)
            store.markers.add(make_marker(take, text="x" * 500))


def test_a_sidecar_that_does_not_fit_follows_later(
    journal: Path, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    def no_space(_handle: int) -> None:
        raise refuse(errno.ENOSPC)

    with opened(journal) as store:
        session = make_session()
        store.sessions.add(session)
        take = make_take(session)
        with monkeypatch.context() as patch:
            patch.setattr(folders.os, "fsync", no_space)
            store.takes.add(take)  # the change itself stands
        assert store.takes.list() == (take,)
        assert store.sidecars.due() == {("take", take.id)}
        assert not store.folders.sidecar(take.file).exists()
        assert "could not be written yet" in caplog.text
    assert not list(journal.rglob("*.part"))
    with opened(journal) as store:
        assert store.sidecars.due() == frozenset()
        assert store.folders.sidecar(take.file).exists()


def damage_header(database: Path) -> None:
    with database.open("r+b") as file:
        file.write(b"no database any more")


def damage_middle(database: Path) -> None:
    size = database.stat().st_size
    with database.open("r+b") as file:
        file.seek(4096)
        file.write(b"\xa5" * (size - 3 * 4096))


def cut_off(database: Path) -> None:
    with database.open("r+b") as file:
        file.truncate(database.stat().st_size // 2)


def another_program(database: Path) -> None:
    database.unlink()
    with closing(sqlite3.connect(database)) as connection:
        connection.execute("CREATE TABLE song (id INTEGER)")


def text_file(database: Path) -> None:
    database.write_text("dear diary\n" * 1000)


@pytest.mark.parametrize(
    "harm", [damage_header, damage_middle, cut_off, another_program, text_file]
)
@pytest.mark.parametrize("read_only", [False, True])
def test_a_damaged_database_is_left_alone_and_told_about(
    filled: Path, harm: object, read_only: bool
) -> None:
    database = filled / "journal.db"
    assert callable(harm)
    harm(database)
    bytes_before = database.read_bytes()
    for _ in range(2):  # the second time is no different
        with pytest.raises(PlainFailure, match="damaged; the recordings are untouched") as told:
            opened(filled, read_only=read_only)
        assert "passagework repair" in told.value.next_step
    assert database.read_bytes() == bytes_before


@pytest.mark.parametrize("read_only", [False, True])
@pytest.mark.parametrize("left", [None, b""])
def test_a_lost_database_is_not_replaced_by_an_empty_one(
    filled: Path, read_only: bool, left: bytes | None
) -> None:
    (filled / "journal.db").unlink()
    if left is not None:
        (filled / "journal.db").write_bytes(left)
    with pytest.raises(PlainFailure, match="its database is missing") as told:
        opened(filled, read_only=read_only)
    assert "passagework repair" in told.value.next_step


def test_damage_met_later_is_told_about(filled: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    damage_middle(filled / "journal.db")
    monkeypatch.setattr(connecting, "_QUICK_CHECK_BYTES", 0)  # as for a large one
    with pytest.raises(PlainFailure, match="damaged"), opened(filled) as store:
        everything(store)


@pytest.mark.parametrize("read_only", [False, True])
def test_a_newer_version_made_it(journal: Path, read_only: bool) -> None:
    opened(journal).close()
    database = journal / "journal.db"
    with closing(sqlite3.connect(database)) as connection, connection:
        connection.execute("UPDATE alembic_version SET version_num = '9999'")
    before = database.read_bytes()
    with pytest.raises(PlainFailure, match="made by a newer version") as told:
        opened(journal, read_only=read_only)
    assert "newest version" in told.value.next_step
    assert database.read_bytes() == before
    assert HEAD != "9999"
    assert Folders(journal).backups.exists() is False


def test_opening_does_not_load_what_only_a_migration_needs(journal: Path) -> None:
    opened(journal).close()
    code = """
        import sys
        from pathlib import Path
        from app.store.store import open_store

        open_store(Path(sys.argv[1])).close()
        heavy = {"alembic", "mako", "numpy", "PySide6"} & set(sys.modules)
        assert not heavy, heavy
    """
    subprocess.run([sys.executable, "-c", textwrap.dedent(code), str(journal)], check=True)


def test_opened_in_one_thread_and_closed_in_another(journal: Path) -> None:
    stores: list[Store] = []
    thread = threading.Thread(target=lambda: stores.append(opened(journal)))
    thread.start()
    thread.join()
    stores[0].settings.get()
    stores[0].close()
    opened(journal).close()


def test_a_disk_that_is_full_at_the_very_end(filled: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    damage_header(filled / "journal.db")
    before = files_under(filled)

    def refuse_to_write(*_args: object) -> None:
        raise refuse(errno.ENOSPC)

    monkeypatch.setattr("app.store.repair.write_found", refuse_to_write)
    with pytest.raises(PlainFailure, match="is full"):
        repair(filled)
    assert files_under(filled) == before


def test_a_disk_that_fills_up_right_after_the_change(
    store: Store, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    session = make_session()
    store.sessions.add(session)
    take = make_take(session)

    def refuse_to_forget(_done: object) -> None:
        raise PlainFailure("The disk is full.", "Free some space.")

    monkeypatch.setattr(store.sidecars, "_forget", refuse_to_forget)
    store.takes.add(take)  # it was made: nobody is told otherwise
    assert store.takes.list() == (take,)
    assert store.folders.sidecar(take.file).exists()
    assert "stay noted as due" in caplog.text
    monkeypatch.undo()
    assert store.sidecars.write_due() == 0
    assert store.sidecars.due() == frozenset()


def test_a_journal_that_may_not_be_read(filled: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse_to_connect(*_args: object, **_options: object) -> sqlite3.Connection:
        failure = sqlite3.OperationalError("unable to open database file")
        failure.sqlite_errorcode = sqlite3.SQLITE_CANTOPEN
        raise failure

    def refuse_to_copy(*_args: object) -> None:
        raise refuse(errno.EACCES)

    monkeypatch.setattr("app.store.looking.sqlite3.connect", refuse_to_connect)
    monkeypatch.setattr("app.store.looking.shutil.copyfile", refuse_to_copy)
    with pytest.raises(PlainFailure, match="cannot be read"):
        opened(filled, read_only=True)


def test_looking_makes_no_backup(filled: Path) -> None:
    with opened(filled, read_only=True) as store, pytest.raises(PlainFailure):
        store.back_up()
    assert not (filled / "backups").exists()


UNPRIVILEGED = """
    import os, sys
    from pathlib import Path
    from app.journal.failures import PlainFailure
    from app.store import repair
    from app.store.store import open_store
    import sqlalchemy.dialects.sqlite

    if os.geteuid() == 0:
        os.seteuid(65534)
    journal = Path(sys.argv[1])
    for options in ({}, {"read_only": True}):
        try:
            with open_store(journal, **options) as store:
                print(len(store.takes.list(include_deleted=True)))
        except PlainFailure as failure:
            print(failure.sentence.removeprefix(f"The journal in {journal} "))
    try:
        repair.repair(journal)
    except PlainFailure as failure:
        print(failure.sentence.removeprefix(f"The journal in {journal} "))
"""


@pytest.mark.skipif(os.name == "nt", reason="permissions of another kind")
@pytest.mark.parametrize(
    ("mode", "expected"),
    [
        (0o555, ["cannot be written to.", "48", "cannot be written to."]),
        (0o000, ["cannot be written to.", "cannot be read.", "cannot be written to."]),
    ],
)
def test_permissions_as_an_ordinary_user_meets_them(
    filled: Path, mode: int, expected: list[str]
) -> None:
    with tempfile.TemporaryDirectory() as place:  # under a folder everybody may enter
        Path(place).chmod(0o755)
        journal = Path(place) / "journal"
        shutil.copytree(filled, journal)
        (journal / ".lock").unlink()
        journal.chmod(mode)
        try:
            done = subprocess.run(
                [sys.executable, "-c", textwrap.dedent(UNPRIVILEGED), str(journal)],
                capture_output=True,
                text=True,
                check=True,
            )
        finally:
            journal.chmod(0o755)
    assert done.stdout.splitlines() == expected
