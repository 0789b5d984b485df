"""Bring a database to the present form, from every earlier one.

All pending changes run in one transaction, after a backup: a database is either in
its old form or in the new one. SQLAlchemy and Alembic are imported only when there is
something to change; an ordinary start reads one row.
"""

import sqlite3
from contextlib import closing
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

from app.journal.failures import PlainFailure
from app.store.backups import back_up
from app.store.folders import Folders
from app.store.troubles import damaged, plain_database_failures

if TYPE_CHECKING:
    from sqlalchemy import Connection
    from sqlalchemy.engine.interfaces import DBAPIConnection
    from sqlalchemy.pool import ConnectionPoolEntry

REVISIONS = ("0001", "0002", "0003", "0004", "0005", "0008", "0009", "0010", "0012", "0013", "0014")
HEAD = REVISIONS[-1]

_SCRIPTS = Path(__file__).with_name("migrations")


def revision_of(database: Path, *, uri: str | None = None) -> str | None:
    """Read the revision of a database; ``None`` for a file without any tables.

    Raises
    ------
    PlainFailure
        For a database that cannot be read or that is not a journal's.
    """
    with (
        plain_database_failures(database),
        closing(sqlite3.connect(uri or str(database), uri=uri is not None)) as connection,
    ):
        tables = {name for (name,) in connection.execute("SELECT name FROM sqlite_master")}
        if not tables:
            return None
        if "alembic_version" not in tables:
            raise damaged(database)
        row = connection.execute("SELECT version_num FROM alembic_version").fetchone()
    return None if row is None else str(row[0])


def check_known(revision: str | None, database: Path) -> None:
    """Refuse a database that a newer version of the program made."""
    if revision is not None and revision not in REVISIONS:
        raise PlainFailure(
            f"The journal's database {database} was made by a newer version of the program.",
            "Install the newest version; nothing was changed.",
        )


def bring_up_to_date(folders: Folders, now: datetime) -> Path | None:
    """Migrate the journal's database if it is older; returns the backup made before.

    A file without tables gets them all. Call this with the journal's lock held.
    """
    revision = revision_of(folders.database) if folders.database.exists() else None
    check_known(revision, folders.database)
    if revision == HEAD:
        return None
    backup = None
    if revision is not None:
        backup = back_up(folders, now, label=f"before-{HEAD}")
    with plain_database_failures(folders.database):
        migrate(folders.database)
    return backup


def migrate(database: Path, target: str = "head") -> None:
    """Run the migration scripts up to a revision, in one transaction."""
    from alembic import command  # noqa: PLC0415 - only when there is something to change
    from alembic.config import Config  # noqa: PLC0415
    from sqlalchemy import URL, create_engine, event  # noqa: PLC0415
    from sqlalchemy.pool import NullPool  # noqa: PLC0415

    config = Config()
    config.set_main_option("script_location", str(_SCRIPTS).replace("%", "%%"))
    config.set_main_option("path_separator", "os")
    engine = create_engine(URL.create("sqlite", database=str(database)), poolclass=NullPool)

    @event.listens_for(engine, "connect")
    def configure(connection: "DBAPIConnection", _record: "ConnectionPoolEntry") -> None:
        # Foreign keys stay off: a batch change drops and renames whole tables.
        connection.isolation_level = None

    with engine.connect() as connection:
        connection.exec_driver_sql("PRAGMA journal_mode = WAL")
        connection.rollback()
        connection.exec_driver_sql("BEGIN IMMEDIATE")
        if _broken_rows(connection):
            raise damaged(database)
        config.attributes["connection"] = connection
        command.upgrade(config, target)
        if broken := _broken_rows(connection):
            msg = f"the migration left {broken} rows that refer to nothing"
            raise RuntimeError(msg)
        connection.commit()
    engine.dispose()


def _broken_rows(connection: "Connection") -> int:
    return len(connection.exec_driver_sql("PRAGMA foreign_key_check").fetchall())
