"""The audition rehearsals of a journal."""

from sqlalchemy import delete, insert, select

from app.journal.rehearsals import Rehearsal
from app.store.keeping_models import REHEARSAL_TABLE
from app.store.work import JOURNAL_KEY, Work, values_of

_REHEARSAL = REHEARSAL_TABLE.c


class RehearsalRepository:
    """Rehearsals in and out of the database."""

    def __init__(self, work: Work) -> None:
        self._work = work

    def put(self, rehearsal: Rehearsal) -> None:
        """Keep a rehearsal, in the place of the one with its id if there is one."""
        with self._work.connection() as connection:
            connection.execute(delete(REHEARSAL_TABLE).where(_REHEARSAL.id == rehearsal.id))
            connection.execute(insert(REHEARSAL_TABLE), values_of(rehearsal))
            self._work.touch(JOURNAL_KEY)

    def get(self, rehearsal_id: str) -> Rehearsal | None:
        """Give a rehearsal."""
        wanted = select(REHEARSAL_TABLE).where(_REHEARSAL.id == rehearsal_id)
        with self._work.connection() as connection:
            row = connection.execute(wanted).one_or_none()
        return None if row is None else Rehearsal(**row._mapping)

    def list(self) -> tuple[Rehearsal, ...]:
        """List all rehearsals in the order in which they began."""
        wanted = select(REHEARSAL_TABLE).order_by(_REHEARSAL.started_at, _REHEARSAL.id)
        with self._work.connection() as connection:
            return tuple(Rehearsal(**row._mapping) for row in connection.execute(wanted))
