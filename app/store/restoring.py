"""Bring a journal back to what it was when a backup was made.

What the backup says wins. Recordings are never given up: a take that was filed after
the backup stays, with what its sidecar says. The database that is replaced is moved
to the backups folder and, if it was sound, also kept there as a backup of its own, so
a restore can be taken back by restoring that one.
"""

import shutil
from collections.abc import Callable
from contextlib import ExitStack
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from sqlalchemy import Connection, Table, select

from app.journal.contents import Contents
from app.journal.failures import PlainFailure
from app.journal.stopping import Progress, ShouldStop, Stopped, never_stop, no_progress
from app.store.backups import Backup, back_up, backups_newest_first
from app.store.connecting import check_folder, take_lock
from app.store.database_files import check_usable, is_sound, remove_database, set_aside
from app.store.engines import writing_engine
from app.store.folders import Folders, sync_folder
from app.store.migrating import migrate
from app.store.models import ITEM_TABLE, PASSAGE_TABLE, SESSION_TABLE, TAKE_TABLE
from app.store.rebuild import read_sidecars, write_found
from app.store.store import Store, open_locked, system_clock
from app.store.troubles import plain_database_failures, plain_file_failures

LABEL = "before-restore"


@dataclass(frozen=True, slots=True)
class RestoreReport:
    """What a restore did; files are named relative to the journal.

    Attributes
    ----------
    backup_used : str
    way_back : str
        The backup of what was replaced; empty where that was damaged or missing.
    set_aside : str
        Folder with the database that was replaced; empty where there was none.
    takes : int
        Takes in the journal now, deleted ones included.
    takes_kept : tuple of str
        Recordings that are younger than the backup and stayed.
    """

    backup_used: str
    way_back: str
    set_aside: str
    takes: int
    takes_kept: tuple[str, ...]


def find_backup(folders: Folders, text: str) -> Backup:
    """Find a backup by its date, its file name or the start of either; the newest that fits.

    Raises
    ------
    PlainFailure
        Where none fits.
    """
    name = Path(text.strip()).name
    wanted = name.removeprefix("journal-")
    for backup in backups_newest_first(folders):
        if wanted and backup.path.name.removeprefix("journal-").startswith(wanted):
            return backup
    raise PlainFailure(
        f"There is no backup '{text}' in {folders.backups}.",
        "Run 'passagework repair --backups' to see which there are.",
    )


def restore(
    journal_dir: Path,
    backup: str,
    *,
    clock: Callable[[], datetime] = system_clock,
    progress: Progress = no_progress,
    should_stop: ShouldStop = never_stop,
) -> RestoreReport:
    """Replace a journal's database by a backup of it.

    Parameters
    ----------
    journal_dir : Path
        Its folder; the journal must not be open anywhere.
    backup : str
        Date or file name of the backup, or the start of it.
    clock, progress, should_stop
        As everywhere.

    Raises
    ------
    PlainFailure
        Where there is no such backup, it cannot be used, or the journal is open
        elsewhere or cannot be written to; nothing was changed then.
    Stopped
        Where ``should_stop`` says so; nothing was changed then.
    """
    folders = Folders(journal_dir.expanduser().absolute())
    check_folder(folders, create=False)
    with ExitStack() as held:
        lock = take_lock(folders)
        held.callback(lock.release)
        chosen = find_backup(folders, backup)
        check_usable(chosen.path)
        found = read_sidecars(folders, lambda share: progress(0.8 * share), should_stop)
        building = folders.journal / ".journal.db.restoring"
        held.callback(remove_database, building)
        with plain_file_failures(folders.journal), plain_database_failures(folders.database):
            kept = _build(chosen.path, building, found, folders)
            if should_stop():
                raise Stopped
            now = clock()
            way_back = back_up(folders, now, label=LABEL) if is_sound(folders) else None
            aside = set_aside(folders, now, "replaced")
            building.replace(folders.database)
            sync_folder(folders.journal)
        store = held.enter_context(open_locked(folders, ExitStack(), clock))
        _write_all_sidecars(store)
        progress(1.0)
        return RestoreReport(
            backup_used=folders.relative(chosen.path),
            way_back="" if way_back is None else folders.relative(way_back),
            set_aside=aside,
            takes=len(store.takes.list(include_deleted=True)),
            takes_kept=kept,
        )


def _build(backup: Path, building: Path, found: Contents, folders: Folders) -> tuple[str, ...]:
    """Make the restored database beside the present one; returns the younger recordings."""
    remove_database(building)
    shutil.copyfile(backup, building)
    migrate(building)
    engine = writing_engine(building)
    try:
        with engine.begin() as connection:
            younger = _younger(connection, found, folders)
            write_found(connection, younger)
            # A backup holds no curves: everything is measured again.
            connection.exec_driver_sql("UPDATE measurement SET stale = 1")
    finally:
        engine.dispose()
    return tuple(sorted(take.file for take in younger.takes.values()))


def _younger(connection: Connection, found: Contents, folders: Folders) -> Contents:
    """Give what the sidecars say about takes that the backup does not know, and no more."""
    files = set(connection.scalars(select(TAKE_TABLE.c.file)))
    known = _ids(connection, TAKE_TABLE)
    takes = {
        take.id: take
        for take in found.takes.values()
        if take.id not in known and take.file not in files and folders.absolute(take.file).exists()
    }
    sessions = {take.session_id for take in takes.values()} - _ids(connection, SESSION_TABLE)
    passages, items = _ids(connection, PASSAGE_TABLE), _ids(connection, ITEM_TABLE)
    wanted = {take.passage_id for take in takes.values()} - passages
    return Contents(
        takes=takes,
        markers={take_id: found.markers[take_id] for take_id in takes},
        passages={key: found.passages[key] for key in wanted if key in found.passages},
        sessions={key: found.sessions[key] for key in sessions},
        items={key: item for key, item in found.items.items() if key not in items},
    )


def _ids(connection: Connection, table: Table) -> set[str]:
    return set(connection.scalars(select(table.c.id)))


def _write_all_sidecars(store: Store) -> None:
    """Have every sidecar say what the restored database says."""
    takes = store.takes.list(include_deleted=True)
    store.sidecars.ask_for(
        take_ids=[take.id for take in takes], days=store.sidecars.days(), journal=True
    )
