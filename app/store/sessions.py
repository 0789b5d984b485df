"""The sessions and the rest days of a journal."""

from collections.abc import Iterable, Mapping
from datetime import date

from sqlalchemy import delete, func, insert, select, update

from app.journal.records import RestDay, Session
from app.store.models import REST_DAY_TABLE, SESSION_TABLE
from app.store.work import Work, chunks, pairs, values_of

_SESSION = SESSION_TABLE.c
_REST = REST_DAY_TABLE.c


class SessionRepository:
    """Sessions in and out of the database."""

    def __init__(self, work: Work) -> None:
        self._work = work

    def add(self, session: Session) -> None:
        """Keep a new session."""
        with self._work.connection() as connection:
            connection.execute(insert(SESSION_TABLE), values_of(session))
            self._work.touch_day(session.practice_day)

    def replace(self, session: Session) -> None:
        """Keep a changed session in the place of the one with its id.

        Raises
        ------
        KeyError
            Where there is none.
        """
        with self._work.connection() as connection:
            before = self.get(session.id)
            if before is None:
                raise KeyError(session.id)
            connection.execute(
                update(SESSION_TABLE).where(_SESSION.id == session.id).values(values_of(session))
            )
            self._work.touch_day(before.practice_day)
            self._work.touch_day(session.practice_day)

    def get(self, session_id: str) -> Session | None:
        """Give a session."""
        wanted = select(SESSION_TABLE).where(_SESSION.id == session_id)
        with self._work.connection() as connection:
            row = connection.execute(wanted).one_or_none()
        return None if row is None else Session(**row._mapping)

    def of_ids(self, session_ids: Iterable[str]) -> Mapping[str, Session]:
        """Give sessions by id in one go."""
        found: dict[str, Session] = {}
        with self._work.connection() as connection:
            for some in chunks(session_ids):
                wanted = select(SESSION_TABLE).where(_SESSION.id.in_(some))
                rows = connection.execute(wanted)
                found |= {row.id: Session(**row._mapping) for row in rows}
        return found

    def of_day(self, practice_day: date) -> tuple[Session, ...]:
        """List the sessions of a practice day in order."""
        return self.list(first_day=practice_day, last_day=practice_day)

    def list(
        self, *, first_day: date | None = None, last_day: date | None = None
    ) -> tuple[Session, ...]:
        """List sessions in order, of all practice days or of some, both ends included."""
        wanted = select(SESSION_TABLE).order_by(
            _SESSION.practice_day, _SESSION.started_at, _SESSION.id
        )
        if first_day is not None:
            wanted = wanted.where(_SESSION.practice_day >= first_day)
        if last_day is not None:
            wanted = wanted.where(_SESSION.practice_day <= last_day)
        with self._work.connection() as connection:
            return tuple(Session(**row._mapping) for row in connection.execute(wanted))

    def minutes_by_day(self, first_day: date, last_day: date) -> Mapping[date, float]:
        """Add up the minutes of each practice day; days without known minutes are left out."""
        summed = (
            select(_SESSION.practice_day, func.sum(_SESSION.minutes))
            .where(
                _SESSION.practice_day.between(first_day, last_day), _SESSION.minutes.is_not(None)
            )
            .group_by(_SESSION.practice_day)
        )
        with self._work.connection() as connection:
            return pairs(connection.execute(summed))

    def first_and_last_day(self) -> tuple[date, date] | None:
        """Give the first and the last practice day with a session."""
        ends = select(func.min(_SESSION.practice_day), func.max(_SESSION.practice_day))
        with self._work.connection() as connection:
            first, last = connection.execute(ends).one()
        return None if first is None else (first, last)


class RestDayRepository:
    """Rest days in and out of the database; one a date."""

    def __init__(self, work: Work) -> None:
        self._work = work

    def put(self, rest: RestDay) -> None:
        """Keep a rest day in the place of what was noted for its date."""
        with self._work.connection() as connection:
            connection.execute(
                delete(REST_DAY_TABLE).where(_REST.practice_day == rest.practice_day)
            )
            connection.execute(insert(REST_DAY_TABLE), values_of(rest))
            self._work.touch_day(rest.practice_day)

    def get(self, practice_day: date) -> RestDay | None:
        """Give the rest day of a date, if it is one."""
        found = self.list(first_day=practice_day, last_day=practice_day)
        return found[0] if found else None

    def remove(self, practice_day: date) -> None:
        """Make a date an ordinary day again."""
        with self._work.connection() as connection:
            connection.execute(delete(REST_DAY_TABLE).where(_REST.practice_day == practice_day))
            self._work.touch_day(practice_day)

    def list(
        self, *, first_day: date | None = None, last_day: date | None = None
    ) -> tuple[RestDay, ...]:
        """List rest days in order, all or some, both ends included."""
        wanted = select(REST_DAY_TABLE).order_by(_REST.practice_day)
        if first_day is not None:
            wanted = wanted.where(_REST.practice_day >= first_day)
        if last_day is not None:
            wanted = wanted.where(_REST.practice_day <= last_day)
        with self._work.connection() as connection:
            return tuple(RestDay(**row._mapping) for row in connection.execute(wanted))
