"""Open a journal to look only: nothing in its folder is changed."""

import shutil
import sqlite3
import tempfile
from contextlib import ExitStack, closing
from pathlib import Path

from sqlalchemy import Engine

from app.store.connecting import (
    check_not_lost,
    check_soundness,
    has_log,
    no_journal,
    reading_uri,
)
from app.store.engines import reading_engine
from app.store.folders import Folders
from app.store.migrating import HEAD, check_known, migrate, revision_of
from app.store.troubles import cannot_read, plain_database_failures, plain_file_failures


def engine_for_looking(folders: Folders, held: ExitStack) -> Engine:
    """Give an engine that reads the journal's database where it lies.

    If the folder does not let SQLite read there, or the database is of an older form,
    it reads a temporary copy, which ``held`` removes.

    Raises
    ------
    PlainFailure
        As for opening, except that no lock and no permission to write is needed.
    """
    with plain_file_failures(folders.journal, cannot_read):
        return _engine_for_looking(folders, held)


def _engine_for_looking(folders: Folders, held: ExitStack) -> Engine:
    database = folders.database
    if not database.exists() or database.stat().st_size == 0:
        check_not_lost(folders)
        raise no_journal(folders)
    uri = _readable_uri(database)
    if uri is not None:
        check_soundness(database, uri=uri)
        revision = revision_of(database, uri=uri)
        check_known(revision, database)
        if revision == HEAD:
            return reading_engine(uri)
    copy = _copied(folders, held)
    with plain_database_failures(database):
        check_soundness(copy)
        revision = revision_of(copy)
        check_known(revision, database)
        if revision is None:
            raise no_journal(folders)
        migrate(copy)
    return reading_engine(reading_uri(copy))


def _readable_uri(database: Path) -> str | None:
    """Find a way of reading the database in its place."""
    ways = [reading_uri(database)]
    if not has_log(database):
        ways.append(reading_uri(database, immutable=True))
    for uri in ways:
        try:
            with closing(sqlite3.connect(uri, uri=True)) as connection:
                connection.execute("SELECT count(*) FROM sqlite_master").fetchone()
        except sqlite3.DatabaseError as error:
            if error.sqlite_errorcode & 0xFF in _NOT_THIS_WAY:
                continue
            # Whatever else is wrong with it, the check that follows says so.
        except UnicodeDecodeError:  # a damaged schema; that check says so too
            pass
        return uri
    return None


_NOT_THIS_WAY = {sqlite3.SQLITE_CANTOPEN, sqlite3.SQLITE_READONLY}


def _copied(folders: Folders, held: ExitStack) -> Path:
    place = Path(
        held.enter_context(
            tempfile.TemporaryDirectory(prefix="passagework-", ignore_cleanup_errors=True)
        )
    )
    copy = place / folders.database.name
    shutil.copyfile(folders.database, copy)
    if has_log(folders.database):
        log = f"{folders.database.name}-wal"
        shutil.copyfile(folders.journal / log, place / log)
    return copy
