"""The promises of a journal, and the numbers that were shared from them."""

from sqlalchemy import delete, insert, select

from app.journal.promises import Promise, SharedNumber
from app.store.keeping_models import PROMISE_TABLE, SHARED_NUMBER_TABLE
from app.store.kept_by_id import KeptById
from app.store.work import JOURNAL_KEY, Work, values_of

_PROMISE = PROMISE_TABLE.c
_SHARED = SHARED_NUMBER_TABLE.c


class PromiseRepository(KeptById[Promise]):
    """Promises in the order of their starts; past ones stay."""

    table = PROMISE_TABLE
    record = Promise
    order = (_PROMISE.start, _PROMISE.created_at, _PROMISE.id)

    def remove(self, promise_id: str) -> None:
        """Take a promise away of which no number was shared."""
        with self._work.connection() as connection:
            connection.execute(delete(PROMISE_TABLE).where(_PROMISE.id == promise_id))
            self._work.touch(JOURNAL_KEY)


class SharedNumberRepository:
    """Numbers that were given away with a clip; added once, never changed or removed."""

    def __init__(self, work: Work) -> None:
        self._work = work

    def add(self, shared: SharedNumber) -> None:
        """Keep a number; its promise and its take must be there."""
        with self._work.connection() as connection:
            connection.execute(insert(SHARED_NUMBER_TABLE), values_of(shared))
            self._work.touch(JOURNAL_KEY)

    def list(self, promise_id: str | None = None) -> tuple[SharedNumber, ...]:
        """List the shared numbers in the order in which they were shared."""
        wanted = select(SHARED_NUMBER_TABLE).order_by(_SHARED.shared_at, _SHARED.id)
        if promise_id is not None:
            wanted = wanted.where(_SHARED.promise_id == promise_id)
        with self._work.connection() as connection:
            return tuple(SharedNumber(**row._mapping) for row in connection.execute(wanted))
