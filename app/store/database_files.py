"""The database as files: whether one can be relied on, and moving it out of the way."""

import sqlite3
from contextlib import closing, suppress
from datetime import datetime
from pathlib import Path

from sqlalchemy import LargeBinary, select

from app.store.backups import free_name
from app.store.connecting import check_soundness, reading_uri
from app.store.engines import reading_engine
from app.store.folders import Folders
from app.store.migrating import HEAD, check_known, revision_of
from app.store.troubles import DamagedDatabase, damaged, plain_database_failures


def is_sound(folders: Folders) -> bool:
    """Tell whether the database can be relied on; a newer one is refused."""
    database = folders.database
    if not database.exists() or database.stat().st_size == 0:
        return False
    try:  # only damage is a reason to rebuild: a disk that fails or a busy file is not
        check_soundness(database, thorough=True)
        revision = revision_of(database)
        with plain_database_failures(database), closing(sqlite3.connect(database)) as connection:
            broken = connection.execute("PRAGMA foreign_key_check").fetchone() is not None
        check_rows(database, revision)
    except DamagedDatabase:
        return False
    check_known(revision, database)
    return revision is not None and not broken


def check_usable(backup: Path) -> None:
    """Refuse a backup that is damaged or that a newer version made.

    Raises
    ------
    PlainFailure
        Says which of the two it is.
    """
    check_soundness(backup, thorough=True)
    revision = revision_of(backup)
    check_known(revision, backup)
    if revision is None:
        raise damaged(backup)
    check_rows(backup, revision)


def check_rows(database: Path, revision: str | None) -> None:
    """Read every row; one of an older form only once it is brought up to date.

    Raises
    ------
    DamagedDatabase
        Where a value is none that the program wrote.
    """
    if revision != HEAD:
        return
    from app.store.every_table import METADATA  # noqa: PLC0415 - only for a repair

    engine = reading_engine(reading_uri(database))
    try:
        with plain_database_failures(database), engine.connect() as connection:
            for table in METADATA.sorted_tables:
                columns = [column for column in table.c if not isinstance(column.type, LargeBinary)]
                for _row in connection.execute(select(*columns)):
                    pass
    finally:
        engine.dispose()


def set_aside(folders: Folders, now: datetime, label: str) -> str:
    """Move the database with its log out of the way, never over another; returns where to."""
    # What SQLite shares between processes says nothing; an empty log neither.
    parts = [part for part in _parts(folders.database) if not part.name.endswith("-shm")]
    parts = [part for part in parts if part.exists() and part.stat().st_size > 0]
    if not parts:
        remove_database(folders.database)
        return ""
    place = free_name(folders.backups / f"{label}-{now:%Y-%m-%d-%H%M%S}")
    place.mkdir(parents=True)
    for part in parts:
        part.replace(place / part.name)
    remove_database(folders.database)
    return folders.relative(place)


def remove_database(database: Path) -> None:
    """Remove a database file with what SQLite keeps beside it."""
    for part in _parts(database):
        with suppress(OSError):
            part.unlink(missing_ok=True)


def _parts(database: Path) -> tuple[Path, ...]:
    return tuple(database.with_name(database.name + end) for end in ("", "-wal", "-shm"))
