"""The library's engines on the database file, with the settings of every connection."""

import sqlite3
from pathlib import Path
from typing import Any

from sqlalchemy import URL, Connection, Engine, create_engine, event
from sqlalchemy.pool import QueuePool

from app.store.connecting import BUSY_TIMEOUT_S


def writing_engine(database: Path) -> Engine:
    """Give an engine that writes: WAL, synced commits, foreign keys on."""
    engine = create_engine(
        URL.create("sqlite", database=str(database)),
        connect_args={"check_same_thread": False, "timeout": BUSY_TIMEOUT_S},
    )
    _set_up(engine, ("foreign_keys = ON", "journal_mode = WAL", "synchronous = FULL"), "IMMEDIATE")
    return engine


def reading_engine(uri: str) -> Engine:
    """Give an engine that cannot write to a database named by :func:`reading_uri`."""

    def connect() -> sqlite3.Connection:
        return sqlite3.connect(uri, uri=True, check_same_thread=False, timeout=BUSY_TIMEOUT_S)

    engine = create_engine("sqlite://", creator=connect, poolclass=QueuePool)
    _set_up(engine, ("foreign_keys = ON", "query_only = ON"), "DEFERRED")
    return engine


def _set_up(engine: Engine, pragmas: tuple[str, ...], begin: str) -> None:
    @event.listens_for(engine, "connect")
    def configure(connection: Any, _record: object) -> None:
        # The driver's own transactions would start too late (not before reads, not
        # before schema changes), so it starts none and BEGIN below does.
        connection.isolation_level = None
        for pragma in pragmas:
            connection.execute(f"PRAGMA {pragma}")

    @event.listens_for(engine, "begin")
    def start(connection: Connection) -> None:
        connection.exec_driver_sql(f"BEGIN {begin}")
