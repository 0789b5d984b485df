"""What was decided while listening back: suggestions put aside, takes first heard blind."""

from typing import ClassVar

from sqlalchemy import ColumnElement, delete, insert, or_, select
from sqlalchemy.sql.expression import and_

from app.journal.first_listen import FirstListen
from app.journal.suggestions import Dismissal
from app.store.kept_by_id import KeptById
from app.store.listening_models import DISMISSAL_TABLE, FIRST_LISTEN_TABLE
from app.store.work import JOURNAL_KEY, Work, values_of

_DISMISSAL = DISMISSAL_TABLE.c
_LISTEN = FIRST_LISTEN_TABLE.c


class DismissalRepository(KeptById[Dismissal]):
    """Suggestions that were put aside."""

    table = DISMISSAL_TABLE
    record = Dismissal
    order: ClassVar[tuple[ColumnElement[object], ...]] = (_DISMISSAL.dismissed_at, _DISMISSAL.id)

    def remove(self, dismissal_id: str) -> None:
        """Forget one; nothing happens where there is none."""
        with self._work.connection() as connection:
            connection.execute(delete(DISMISSAL_TABLE).where(self._has_id(dismissal_id)))
            self._work.touch(JOURNAL_KEY)

    def that_hold_for(self, take_id: str, passage_id: str | None) -> tuple[Dismissal, ...]:
        """List those of a take's passage, and those of the take itself."""
        of_take = and_(_DISMISSAL.passage_id.is_(None), _DISMISSAL.take_id == take_id)
        if passage_id is None:
            return self._all(of_take)
        return self._all(or_(of_take, _DISMISSAL.passage_id == passage_id))


class FirstListenRepository:
    """When the measurements of takes were shown that had been heard without them."""

    def __init__(self, work: Work) -> None:
        self._work = work

    def add(self, listen: FirstListen) -> None:
        """Keep one; of a take that has one already, the earlier moment stays."""
        with self._work.connection() as connection:
            wanted = insert(FIRST_LISTEN_TABLE).prefix_with("OR IGNORE")
            connection.execute(wanted, values_of(listen))
            self._work.touch(JOURNAL_KEY)

    def get(self, take_id: str) -> FirstListen | None:
        """Give that of a take."""
        wanted = select(FIRST_LISTEN_TABLE).where(_LISTEN.take_id == take_id)
        with self._work.connection() as connection:
            row = connection.execute(wanted).one_or_none()
        return None if row is None else FirstListen(**row._mapping)

    def list(self) -> tuple[FirstListen, ...]:
        """List all in the order of time."""
        wanted = select(FIRST_LISTEN_TABLE).order_by(_LISTEN.shown_at, _LISTEN.take_id)
        with self._work.connection() as connection:
            return tuple(FirstListen(**row._mapping) for row in connection.execute(wanted))
