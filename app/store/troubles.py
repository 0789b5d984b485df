"""Turn what the disk and the database refuse into plain failures."""

import errno
import sqlite3
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

from app.journal.failures import PlainFailure

_FULL = {errno.ENOSPC, errno.EDQUOT} if hasattr(errno, "EDQUOT") else {errno.ENOSPC}
_REFUSED = {errno.EROFS, errno.EACCES, errno.EPERM}
_PRIMARY_CODE = 0xFF  # the low byte of an extended SQLite result code


class UnreadableValue(ValueError):  # noqa: N818 - a state of the database, told as "damaged"
    """The database holds a value that the program never wrote."""


def disk_full(folder: Path) -> PlainFailure:
    """Say that nothing more fits on the disk."""
    return PlainFailure(
        f"The disk that holds the journal in {folder} is full, so nothing was changed.",
        "Free some space on it and try again.",
    )


def cannot_write(folder: Path) -> PlainFailure:
    """Say that the journal's folder does not let the program write."""
    return PlainFailure(
        f"The journal in {folder} cannot be written to.",
        "Allow writing to that folder, or choose another folder for the journal.",
    )


def disk_failed(folder: Path, error: BaseException) -> PlainFailure:
    """Say that the disk reported an error of its own."""
    return PlainFailure(
        f"The disk that holds the journal in {folder} reported an error ({error}).",
        "Check that the disk is connected and healthy, then try again.",
    )


def cannot_read(folder: Path) -> PlainFailure:
    """Say that the journal's folder does not even let the program read."""
    return PlainFailure(
        f"The journal in {folder} cannot be read.",
        "Allow reading that folder, or open another journal.",
    )


class DamagedDatabase(PlainFailure):
    """The database file is there but is no sound database of a journal."""


def damaged(database: Path) -> DamagedDatabase:
    """Say that the database cannot be read any more."""
    return DamagedDatabase(
        f"The journal's database {database} is damaged; the recordings are untouched.",
        "Run 'passagework repair' (with '--journal FOLDER' unless it is the usual one): it sets"
        " the damaged file aside and rebuilds the journal from its backup and the notes beside"
        " the recordings.",
    )


def in_use(folder: Path) -> PlainFailure:
    """Say that another copy of the program has the journal open."""
    return PlainFailure(
        f"The journal in {folder} is already open in another copy of the program.",
        "Use that one, or close it first.",
    )


@contextmanager
def plain_file_failures(
    folder: Path, refused: Callable[[Path], PlainFailure] = cannot_write
) -> Iterator[None]:
    """Turn an expected ``OSError`` under the journal into a plain failure.

    ``refused`` words it where the system does not allow something.
    """
    try:
        yield
    except OSError as error:
        if error.errno in _FULL:
            raise disk_full(folder) from error
        if error.errno in _REFUSED:
            raise refused(folder) from error
        if error.errno == errno.EIO:
            raise disk_failed(folder, error) from error
        raise


@contextmanager
def plain_database_failures(database: Path) -> Iterator[None]:
    """Turn an expected database error into a plain failure; bugs pass through."""
    try:
        yield
    except (UnicodeDecodeError, UnreadableValue) as error:
        # The former is the driver's, of a name or a message that is none.
        raise damaged(database) from error
    except Exception as error:
        # The driver's error as it is, or as SQLAlchemy wraps it, which need not be loaded.
        original = getattr(error, "orig", error)
        failure = _failure_of(original, database) if isinstance(original, sqlite3.Error) else None
        if failure is None:
            raise
        raise failure from error


def _failure_of(error: sqlite3.Error, database: Path) -> PlainFailure | None:
    """Name the expected failure behind a database error, if it is one."""
    code = getattr(error, "sqlite_errorcode", None)
    if code is None:
        return None
    if code == sqlite3.SQLITE_ERROR and str(error).startswith(
        ("no such table", "no such column", "malformed database schema")
    ):
        return damaged(database)
    make = _FAILURES.get(code & _PRIMARY_CODE)
    if make is not None:
        return make(database)
    if code & _PRIMARY_CODE == sqlite3.SQLITE_IOERR:
        return disk_failed(database.parent, error)
    return None


_FAILURES: dict[int, Callable[[Path], PlainFailure]] = {
    sqlite3.SQLITE_FULL: lambda database: disk_full(database.parent),
    sqlite3.SQLITE_READONLY: lambda database: cannot_write(database.parent),
    sqlite3.SQLITE_CANTOPEN: lambda database: cannot_write(database.parent),
    sqlite3.SQLITE_PERM: lambda database: cannot_write(database.parent),
    sqlite3.SQLITE_CORRUPT: damaged,
    sqlite3.SQLITE_NOTADB: damaged,
    sqlite3.SQLITE_BUSY: lambda database: in_use(database.parent),
    sqlite3.SQLITE_LOCKED: lambda database: in_use(database.parent),
}
