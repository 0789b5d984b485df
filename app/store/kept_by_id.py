"""What the repositories of plain records with an id have in common."""

from typing import Any, ClassVar, Generic, Protocol, TypeVar

from sqlalchemy import ColumnElement, Table, insert, select, update

from app.store.work import JOURNAL_KEY, Work, values_of


class HasId(Protocol):
    """A record that is kept by its id."""

    @property
    def id(self) -> str:
        """32 hex digits."""


RecordT = TypeVar("RecordT", bound=HasId)


class KeptById(Generic[RecordT]):
    """Records of one kind in and out of the database; the journal's card follows.

    A repository names its ``table``, its ``record`` and the columns of its ``order``.
    """

    table: ClassVar[Table]
    record: ClassVar[type[Any]]
    order: ClassVar[tuple[ColumnElement[Any], ...]]

    def __init__(self, work: Work) -> None:
        self._work = work

    def add(self, record: RecordT) -> None:
        """Keep a new record; what it refers to must be there."""
        with self._work.connection() as connection:
            connection.execute(insert(self.table), values_of(record))
            self._work.touch(JOURNAL_KEY)

    def replace(self, record: RecordT) -> None:
        """Keep a changed record in the place of the one with its id.

        Raises
        ------
        KeyError
            Where there is none.
        """
        changed_row = update(self.table).where(self._has_id(record.id)).values(values_of(record))
        with self._work.connection() as connection:
            if connection.execute(changed_row).rowcount != 1:
                raise KeyError(record.id)
            self._work.touch(JOURNAL_KEY)

    def get(self, record_id: str) -> RecordT | None:
        """Give a record."""
        found = self._all(self._has_id(record_id))
        return found[0] if found else None

    def list(self) -> tuple[RecordT, ...]:
        """List all records in their order."""
        return self._all()

    def _all(self, *conditions: ColumnElement[bool]) -> tuple[RecordT, ...]:
        wanted = select(self.table).where(*conditions).order_by(*self.order)
        with self._work.connection() as connection:
            return tuple(self.record(**row._mapping) for row in connection.execute(wanted))

    def _has_id(self, record_id: str) -> ColumnElement[bool]:
        return self.table.c.id == record_id
