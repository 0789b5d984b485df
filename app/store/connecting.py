"""What is asked before a journal is opened: its folder, its lock, the soundness of the file.

By the driver alone: a window stands before the library of the database is loaded.
"""

import sqlite3
from contextlib import closing, suppress
from pathlib import Path

from filelock import FileLock, Timeout

from app.journal.failures import PlainFailure
from app.store.folders import Folders
from app.store.troubles import (
    cannot_write,
    damaged,
    in_use,
    plain_database_failures,
    plain_file_failures,
)

BUSY_TIMEOUT_S = 2.0
_QUICK_CHECK_BYTES = 32 * 1024 * 1024


def take_lock(folders: Folders) -> FileLock:
    """Take the journal's lock, or say that another copy of the program has it.

    The system lets go of it when the process ends, however it ends. Any thread may
    let go of it before.
    """
    lock = FileLock(folders.lock, timeout=0, thread_local=False)
    try:
        with plain_file_failures(folders.journal):
            lock.acquire()
    except Timeout as error:
        raise in_use(folders.journal) from error
    except NotImplementedError as error:
        raise PlainFailure(
            f"The file system that holds the journal in {folders.journal} knows no locks.",
            "Keep the journal on a disk of this computer.",
        ) from error
    return lock


def reading_uri(database: Path, *, immutable: bool = False) -> str:
    """Name a database for opening without writing.

    ``immutable`` is for a folder in which SQLite may not even create its
    shared-memory file; only right when nobody else writes to it.
    """
    return f"{database.resolve().as_uri()}?mode=ro" + ("&immutable=1" if immutable else "")


def check_soundness(database: Path, *, uri: str | None = None, thorough: bool = False) -> None:
    """Refuse a damaged database with a plain failure; changes nothing.

    The quick check reads the whole file, so a large one is checked only after the
    program did not close it properly last time (its write-ahead log is still there);
    damage elsewhere in it shows when it is met, and in a repair.
    """
    unclean = has_log(database)
    quick = thorough or unclean or database.stat().st_size <= _QUICK_CHECK_BYTES
    with (
        plain_database_failures(database),
        closing(
            sqlite3.connect(uri or str(database), uri=uri is not None, timeout=BUSY_TIMEOUT_S)
        ) as connection,
    ):
        connection.execute("SELECT count(*) FROM sqlite_master").fetchone()
        if not quick:
            return
        check = "integrity_check" if thorough else "quick_check"
        if connection.execute(f"PRAGMA {check}(1)").fetchone() != ("ok",):
            raise damaged(database)


def has_log(database: Path) -> bool:
    """Tell whether a write-ahead log waits beside the database."""
    log = database.with_name(f"{database.name}-wal")
    return log.exists() and log.stat().st_size > 0


def check_folder(folders: Folders, *, create: bool) -> None:
    """Make the journal's folder or say that there is none."""
    if folders.journal.is_dir():
        _check_no_folder(folders.database)
        return
    if folders.journal.exists():
        raise PlainFailure(
            f"{folders.journal} is a file, not a folder.", "Choose a folder for the journal."
        )
    if not create:
        raise no_journal(folders)
    try:
        with plain_file_failures(folders.journal):
            folders.journal.mkdir(parents=True, exist_ok=True)
    except (NotADirectoryError, FileNotFoundError) as error:
        raise cannot_write(folders.journal) from error


def _check_no_folder(database: Path) -> None:
    with suppress(PermissionError):  # said when the database is opened
        if database.is_dir():
            raise PlainFailure(
                f"{database} is a folder, where the journal's database should be.",
                "Move that folder away, then run 'passagework repair'.",
            )


def no_journal(folders: Folders) -> PlainFailure:
    """Say that the folder holds no journal."""
    return PlainFailure(
        f"There is no journal in {folders.journal}.",
        "Check the path, or record or import a take to start one there.",
    )


def check_not_lost(folders: Folders) -> None:
    """Refuse to take recordings whose database is missing for an empty journal."""
    if folders.journal_card.exists() or any(folders.day_files()):
        raise PlainFailure(
            f"The journal in {folders.journal} has recordings but its database is missing.",
            "Run 'passagework repair' (with '--journal FOLDER' unless it is the usual one): it"
            " rebuilds the database from the notes beside the recordings.",
        )
