"""Check a journal, and mend what can be mended.

A damaged or lost database is rebuilt from its newest sound backup and the sidecars.
The damaged one is moved to the backups folder, never overwritten and never removed.
The new one is complete before the old one is touched.
"""

import hashlib
import shutil
from collections.abc import Callable, Mapping
from contextlib import ExitStack
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from app.journal.contents import Contents
from app.journal.failures import PlainFailure
from app.journal.records import Take
from app.journal.stopping import Progress, ShouldStop, Stopped, never_stop, no_progress
from app.store.backups import backups_newest_first
from app.store.connecting import check_folder, no_journal, take_lock
from app.store.database_files import check_usable, is_sound, remove_database, set_aside
from app.store.engines import writing_engine
from app.store.folders import SIDECAR_SUFFIX, Folders, sync_folder
from app.store.migrating import migrate
from app.store.rebuild import read_sidecars, write_found
from app.store.store import Store, open_locked, system_clock
from app.store.troubles import plain_database_failures, plain_file_failures

_HASH_BLOCK = 1 << 20


@dataclass(frozen=True, slots=True)
class RepairReport:
    """What a repair found and did; files are named relative to the journal.

    Attributes
    ----------
    rebuilt : bool
        The database was damaged or missing and was made again.
    set_aside : str
        Folder with the damaged database; empty where there was none.
    backup_used : str
        The backup it was rebuilt from besides the sidecars; may be empty.
    takes : int
        Takes in the journal now, deleted ones included.
    sidecars_written : int
        Sidecars that were missing or out of date.
    sidecars_unreadable, recordings_missing, recordings_changed : tuple of str
        A changed recording has other bytes than when it was filed.
    recordings_unfiled : tuple of str
        Files in the day folders that belong to no take: import them.
    """

    rebuilt: bool
    set_aside: str
    backup_used: str
    takes: int
    sidecars_written: int
    sidecars_unreadable: tuple[str, ...]
    recordings_missing: tuple[str, ...]
    recordings_changed: tuple[str, ...]
    recordings_unfiled: tuple[str, ...]


def repair(
    journal_dir: Path,
    *,
    compare_bytes: bool = True,
    clock: Callable[[], datetime] = system_clock,
    progress: Progress = no_progress,
    should_stop: ShouldStop = never_stop,
) -> RepairReport:
    """Check a journal and mend what can be mended.

    Parameters
    ----------
    journal_dir : Path
        Its folder; the journal must not be open anywhere.
    compare_bytes : bool
        Also read every recording and compare its checksum.
    clock, progress, should_stop
        As everywhere.

    Raises
    ------
    PlainFailure
        Where there is no journal, it is open elsewhere, cannot be written to, or was
        made by a newer version.
    Stopped
        Where ``should_stop`` says so; a rebuild is then not begun or complete.
    """
    folders = Folders(journal_dir.expanduser().absolute())
    check_folder(folders, create=False)
    with ExitStack() as held:
        lock = take_lock(folders)
        held.callback(lock.release)
        found, aside, backup = Contents(), "", ""
        _check_is_journal(folders)
        rebuilt = not is_sound(folders)
        if rebuilt:
            found, aside, backup = _rebuilt(
                folders, clock(), _share(progress, 0.0, 0.5), should_stop
            )
        store = held.enter_context(open_locked(folders, ExitStack(), clock))
        written = _refresh_sidecars(store)
        takes = store.takes.list(include_deleted=True)
        missing = tuple(t.file for t in takes if not folders.absolute(t.file).is_file())
        there = {t.file: t for t in takes} if compare_bytes else {}
        for file in missing:
            there.pop(file, None)
        changed = _changed(folders, there, _share(progress, 0.5, 1.0), should_stop)
        progress(1.0)
        return RepairReport(
            rebuilt=rebuilt,
            set_aside=aside,
            backup_used=backup,
            takes=len(takes),
            sidecars_written=written,
            sidecars_unreadable=tuple(found.unreadable),
            recordings_missing=missing,
            recordings_changed=changed,
            recordings_unfiled=unfiled_recordings(folders, {t.file for t in takes}),
        )


def unfiled_recordings(folders: Folders, filed: set[str]) -> tuple[str, ...]:
    """List the files in the day folders that are neither a filed recording nor a sidecar."""
    return tuple(
        relative
        for path in folders.day_files()
        if path.suffix.lower() != SIDECAR_SUFFIX and not path.name.startswith(".")
        if (relative := folders.relative(path)) not in filed
    )


def sha256_of(path: Path) -> str:
    """Give the SHA-256 of a file's bytes, as 64 hexadecimal digits."""
    digest = hashlib.sha256()
    with path.open("rb") as file:
        while block := file.read(_HASH_BLOCK):
            digest.update(block)
    return digest.hexdigest()


def _check_is_journal(folders: Folders) -> None:
    if folders.database.exists() or folders.journal_card.exists() or any(folders.day_files()):
        return
    raise no_journal(folders)


def _rebuilt(
    folders: Folders, now: datetime, progress: Progress, should_stop: ShouldStop
) -> tuple[Contents, str, str]:
    found = read_sidecars(folders, progress, should_stop)
    if found.newer:  # what this version does not know would be lost with the next change
        raise PlainFailure(
            f"Notes beside the recordings in {folders.journal} were written by a newer"
            " version of the program.",
            "Install the newest version and repair with that; nothing was changed.",
        )
    building = folders.journal / ".journal.db.rebuilding"
    with plain_file_failures(folders.journal), plain_database_failures(folders.database):
        try:
            backup = _start_from_backup(folders, building)
            _fill(building, found)
            if should_stop():
                raise Stopped
            aside = set_aside(folders, now, "damaged")
            building.replace(folders.database)
            sync_folder(folders.journal)
        finally:
            remove_database(building)
    return found, aside, backup


def _fill(building: Path, found: Contents) -> None:
    migrate(building)
    engine = writing_engine(building)
    try:
        with engine.begin() as connection:
            write_found(connection, found)
            # What a backup brought has lost its curves: it is measured again.
            connection.exec_driver_sql("UPDATE measurement SET stale = 1")
    finally:
        engine.dispose()


def _start_from_backup(folders: Folders, building: Path) -> str:
    remove_database(building)
    for backup in backups_newest_first(folders):
        try:
            check_usable(backup.path)
        except PlainFailure:
            continue
        shutil.copyfile(backup.path, building)
        return folders.relative(backup.path)
    return ""


def _refresh_sidecars(store: Store) -> int:
    """Write every sidecar that is not there; returns how many."""
    folders = store.folders
    takes = store.takes.list(include_deleted=True)
    lost = [t.id for t in takes if not folders.sidecar(t.file).exists()]
    lost_days = [day for day in store.sidecars.days() if not folders.day_card(day).exists()]
    store.sidecars.ask_for(take_ids=lost, days=lost_days, journal=not folders.journal_card.exists())
    return len(lost) + len(lost_days)


def _changed(
    folders: Folders, takes: Mapping[str, Take], progress: Progress, should_stop: ShouldStop
) -> tuple[str, ...]:
    changed = []
    for done, (file, take) in enumerate(takes.items()):
        if should_stop():
            raise Stopped
        try:
            same = sha256_of(folders.absolute(file)) == take.sha256
        except OSError:
            same = False
        if not same:
            changed.append(file)
        progress((done + 1) / len(takes))
    return tuple(changed)


def _share(progress: Progress, start: float, end: float) -> Progress:
    return lambda share: progress(start + (end - start) * share)
