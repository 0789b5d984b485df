"""Which sidecars do not yet say what the database says."""

import sqlite3
from collections.abc import Iterable
from contextlib import closing
from pathlib import Path
from typing import TYPE_CHECKING

from app.store.connecting import BUSY_TIMEOUT_S
from app.store.troubles import plain_database_failures

if TYPE_CHECKING:
    from sqlalchemy import Connection

    from app.store.work import SidecarKey


def note_due(connection: "Connection", keys: Iterable["SidecarKey"]) -> None:
    """Note inside a transaction which sidecars it makes out of date."""
    from sqlalchemy import insert  # noqa: PLC0415 - loaded by whoever has a connection

    from app.store.models import SIDECAR_DUE_TABLE  # noqa: PLC0415

    rows = [{"kind": kind, "key": key} for kind, key in sorted(keys)]
    connection.execute(insert(SIDECAR_DUE_TABLE).prefix_with("OR IGNORE"), rows)


def is_any_due(database: Path) -> bool:
    """Say whether any sidecar is out of date; asks as one who writes.

    Raises
    ------
    PlainFailure
        Where the database cannot be written to, or somebody else writes.
    """
    with (
        plain_database_failures(database),
        closing(sqlite3.connect(database, timeout=BUSY_TIMEOUT_S)) as connection,
    ):
        connection.isolation_level = None
        connection.execute("PRAGMA journal_mode = WAL")
        connection.execute("BEGIN IMMEDIATE")
        found = connection.execute("SELECT 1 FROM sidecar_due LIMIT 1").fetchone() is not None
        connection.execute("COMMIT")
    return found
