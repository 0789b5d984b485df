"""The unit of work: one transaction at a time, and what it owes to the sidecars."""

import threading
from collections import Counter
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from dataclasses import fields
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Any

from app.journal.codec import encoded
from app.store.troubles import plain_database_failures

if TYPE_CHECKING:
    from sqlalchemy import ClauseElement, Connection, Engine

SidecarKey = tuple[str, str]
"""Kind of the sidecar (take, day, journal), and the id or date it is for."""

JOURNAL_KEY: SidecarKey = ("journal", "")

MAX_VARIABLES = 500
"""How many values one statement carries; SQLite has a limit."""


class Work:
    """Transactions of one open journal, from any thread, one after the other.

    A repository called outside a transaction makes one of its own. A transaction
    inside another is a savepoint of it: if it fails, only its own part is undone.

    Parameters
    ----------
    make_engine : callable
        Gives one of :mod:`app.store.engines`; asked with the first transaction, when
        the library is loaded.
    database : Path
        For the words of a failure.
    before_commit, after_commit : callable
        Told, inside the outermost transaction and after it, which sidecars no longer
        say what the database says.
    """

    def __init__(
        self,
        make_engine: Callable[[], "Engine"],
        database: Path,
        *,
        before_commit: Callable[["Connection", frozenset[SidecarKey]], None],
        after_commit: Callable[[frozenset[SidecarKey]], None],
    ) -> None:
        self._make_engine = make_engine
        self._engine: Engine | None = None
        self._database = database
        self._before_commit = before_commit
        self._after_commit = after_commit
        self._lock = threading.RLock()
        self._connection: Connection | None = None
        self._touched: set[SidecarKey] = set()
        self._closed = False
        self._changes: Counter[str] = Counter()

    def close(self) -> None:
        """Refuse transactions from now on; waits for the one that is running."""
        with self._lock:
            self._closed = True
            if self._engine is not None:
                self._engine.dispose()

    def load(self) -> None:
        """Load the library and make the engine, if that has not been done."""
        with self._lock:
            self._loaded_engine()

    @contextmanager
    def transaction(self) -> Iterator["Connection"]:
        """Run a block as one change: all of it or nothing."""
        with self._lock:
            if self._connection is None:
                with self._outermost() as connection:
                    yield connection
            else:
                with self._connection.begin_nested():
                    yield self._connection

    @contextmanager
    def connection(self) -> Iterator["Connection"]:
        """Give the running transaction's connection, or a transaction of its own."""
        with self._lock:
            if self._connection is None:
                with self._outermost() as connection:
                    yield connection
            else:
                yield self._connection

    def touch(self, *keys: SidecarKey) -> None:
        """Note that sidecars no longer say what the database says."""
        self._touched.update(keys)

    def touch_take(self, take_id: str) -> None:
        """Note it for the sidecar of a take."""
        self.touch(("take", take_id))

    def touch_day(self, practice_day: date) -> None:
        """Note it for the sidecar of a practice day."""
        self.touch(("day", practice_day.isoformat()))

    def changes_of(self, tables: Iterable[str]) -> tuple[int, ...]:
        """Count the statements that changed each of these tables since the journal was opened."""
        return tuple(self._changes[table] for table in tables)

    def _loaded_engine(self) -> "Engine":
        if self._engine is None:
            from sqlalchemy import event  # noqa: PLC0415 - a window stands before it is loaded

            engine = self._make_engine()
            event.listen(engine, "after_execute", self._note_change)
            self._engine = engine
        return self._engine

    def _note_change(
        self, _connection: "Connection", statement: "ClauseElement", *_how: object
    ) -> None:
        from sqlalchemy import UpdateBase  # noqa: PLC0415

        if isinstance(statement, UpdateBase):
            self._changes[str(statement.table)] += 1

    @contextmanager
    def exclusive(self) -> Iterator[None]:
        """Keep other threads' transactions out of a block that makes none itself."""
        with self._lock:
            yield

    @contextmanager
    def _outermost(self) -> Iterator["Connection"]:
        if self._closed:
            # The lock is gone, and another copy of the program may hold it.
            msg = "the journal is closed"
            raise RuntimeError(msg)
        self._touched.clear()
        with (
            plain_database_failures(self._database),
            self._loaded_engine().connect() as connection,
            connection.begin(),
        ):
            self._connection = connection
            try:
                yield connection
                touched = frozenset(self._touched)
                if touched:
                    self._before_commit(connection, touched)
            finally:
                self._connection = None
        if touched:
            self._after_commit(touched)


def values_of(record: Any) -> dict[str, Any]:
    """Give a record's fields as a row's columns.

    Raises
    ------
    ValueError
        Where a field holds what the record does not promise (an infinite number, an
        instant without an offset): it could not go into a sidecar either.
    """
    encoded(record)
    return {field.name: getattr(record, field.name) for field in fields(record)}


def chunks(items: Iterable[str]) -> Iterator[list[str]]:
    """Cut a list of ids into pieces that fit one statement."""
    everything = list(dict.fromkeys(items))
    for start in range(0, len(everything), MAX_VARIABLES):
        yield everything[start : start + MAX_VARIABLES]


def pairs(rows: Iterable[Any]) -> dict[Any, Any]:
    """Give two-column rows as a dictionary."""
    return {row[0]: row[1] for row in rows}
