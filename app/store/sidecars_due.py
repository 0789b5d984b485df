"""Which sidecars do not yet say what the database says."""

from collections.abc import Iterable

from sqlalchemy import Connection, insert, select

from app.store.models import SIDECAR_DUE_TABLE
from app.store.work import SidecarKey


def note_due(connection: Connection, keys: Iterable[SidecarKey]) -> None:
    """Note inside a transaction which sidecars it makes out of date."""
    rows = [{"kind": kind, "key": key} for kind, key in sorted(keys)]
    connection.execute(insert(SIDECAR_DUE_TABLE).prefix_with("OR IGNORE"), rows)


def is_any_due(connection: Connection) -> bool:
    """Say whether any sidecar is out of date."""
    return connection.execute(select(SIDECAR_DUE_TABLE).limit(1)).first() is not None
