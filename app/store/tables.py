"""The journal's tables as they stand, for taking everything out of it."""

from collections.abc import Iterator
from dataclasses import dataclass

from sqlalchemy import LargeBinary, Table

from app.store.every_table import METADATA
from app.store.work import Work

DERIVED = frozenset({"measurement_curves", "pair_alignment", "take_outline", "sidecar_due"})
"""What can be made again from the recordings, or is the program's own bookkeeping."""

Cell = str | int | float | None


@dataclass(frozen=True, slots=True)
class TableRows:
    """A table by name: its columns, and its rows as SQLite keeps them."""

    name: str
    columns: tuple[str, ...]
    rows: tuple[tuple[Cell, ...], ...]


class Tables:
    """Reads whole tables; every table there is, but for what is derived."""

    def __init__(self, work: Work) -> None:
        self._work = work

    def names(self) -> tuple[str, ...]:
        """List the tables that hold what the player did and wrote."""
        return tuple(sorted(set(METADATA.tables) - DERIVED))

    def read(self) -> Iterator[TableRows]:
        """Give one table after the other; compressed columns are left out."""
        for name in self.names():
            yield self._read(METADATA.tables[name])

    def _read(self, table: Table) -> TableRows:
        columns = [c.name for c in table.columns if not isinstance(c.type, LargeBinary)]
        keys = ", ".join(f'"{column}"' for column in columns)
        order = ", ".join(f'"{column.name}"' for column in table.primary_key)
        with self._work.connection() as connection:
            # As it is kept: instants and lists stay the ISO 8601 and JSON text they are.
            rows = connection.exec_driver_sql(
                f'SELECT {keys} FROM "{table.name}" ORDER BY {order}'  # noqa: S608 - our names
            ).fetchall()
        return TableRows(table.name, tuple(columns), tuple(tuple(row) for row in rows))
