"""Write rows over those with the same keys."""

from collections.abc import Iterable
from typing import Any

from sqlalchemy import Connection, Table
from sqlalchemy.dialects.sqlite import insert


def upsert(connection: Connection, table: Table, rows: Iterable[dict[str, Any]]) -> None:
    """Put rows into a table; one whose keys are there already takes the new values."""
    values = list(rows)
    if not values:
        return
    columns = table.columns
    keys = [column.name for column in columns if column.primary_key]
    statement = insert(table)
    changed = {
        column.name: statement.excluded[column.name] for column in columns if not column.primary_key
    }
    if changed:
        statement = statement.on_conflict_do_update(index_elements=keys, set_=changed)
    else:
        statement = statement.on_conflict_do_nothing()
    connection.execute(statement, values)
