"""The promises of a journal, and the numbers that were shared from them."""

from sqlalchemy import insert, select, update

from app.journal.promises import Promise, SharedNumber
from app.store.keeping_models import PromiseModel, SharedNumberModel
from app.store.work import JOURNAL_KEY, Work, values_of

_PROMISE = PromiseModel.__table__.c
_SHARED = SharedNumberModel.__table__.c


class PromiseRepository:
    """Promises in and out of the database; past ones stay."""

    def __init__(self, work: Work) -> None:
        self._work = work

    def add(self, promise: Promise) -> None:
        """Keep a new promise."""
        with self._work.connection() as connection:
            connection.execute(insert(PromiseModel), values_of(promise))
            self._work.touch(JOURNAL_KEY)

    def replace(self, promise: Promise) -> None:
        """Keep a changed promise in the place of the one with its id.

        Raises
        ------
        KeyError
            Where there is none.
        """
        with self._work.connection() as connection:
            changed = connection.execute(
                update(PromiseModel).where(_PROMISE.id == promise.id).values(values_of(promise))
            )
            if changed.rowcount != 1:
                raise KeyError(promise.id)
            self._work.touch(JOURNAL_KEY)

    def get(self, promise_id: str) -> Promise | None:
        """Give a promise."""
        wanted = select(PromiseModel.__table__).where(_PROMISE.id == promise_id)
        with self._work.connection() as connection:
            row = connection.execute(wanted).one_or_none()
        return None if row is None else Promise(**row._mapping)

    def list(self) -> tuple[Promise, ...]:
        """List all promises in the order of their starts."""
        wanted = select(PromiseModel.__table__).order_by(
            _PROMISE.start, _PROMISE.created_at, _PROMISE.id
        )
        with self._work.connection() as connection:
            return tuple(Promise(**row._mapping) for row in connection.execute(wanted))


class SharedNumberRepository:
    """Numbers that were given away with a clip; added once, never changed or removed."""

    def __init__(self, work: Work) -> None:
        self._work = work

    def add(self, shared: SharedNumber) -> None:
        """Keep a number; its promise and its take must be there."""
        with self._work.connection() as connection:
            connection.execute(insert(SharedNumberModel), values_of(shared))
            self._work.touch(JOURNAL_KEY)

    def list(self, promise_id: str | None = None) -> tuple[SharedNumber, ...]:
        """List the shared numbers in the order in which they were shared."""
        wanted = select(SharedNumberModel.__table__).order_by(_SHARED.shared_at, _SHARED.id)
        if promise_id is not None:
            wanted = wanted.where(_SHARED.promise_id == promise_id)
        with self._work.connection() as connection:
            return tuple(SharedNumber(**row._mapping) for row in connection.execute(wanted))
