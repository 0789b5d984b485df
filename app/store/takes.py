"""The takes of a journal."""

from collections.abc import Iterable, Mapping
from datetime import date

from sqlalchemy import Row, Select, and_, func, insert, select, update

from app.journal.naming import next_number
from app.journal.records import Take
from app.store.models import TAKE_TABLE
from app.store.work import Work, chunks, pairs, values_of

_TAKE = TAKE_TABLE.c


class TakeRepository:
    """Takes in and out of the database; a take is never removed from it."""

    def __init__(self, work: Work) -> None:
        self._work = work

    def add(self, take: Take) -> None:
        """Keep a new take; its session and passage must be there."""
        with self._work.connection() as connection:
            connection.execute(insert(TAKE_TABLE), values_of(take))
            self._work.touch_take(take.id)

    def replace(self, take: Take) -> None:
        """Keep a changed take in the place of the one with its id.

        Raises
        ------
        KeyError
            Where there is none.
        """
        with self._work.connection() as connection:
            changed = connection.execute(
                update(TAKE_TABLE).where(_TAKE.id == take.id).values(values_of(take))
            )
            if changed.rowcount != 1:
                raise KeyError(take.id)
            self._work.touch_take(take.id)

    def get(self, take_id: str) -> Take | None:
        """Give a take, deleted or not."""
        return self._first(_select().where(_TAKE.id == take_id))

    def of_ids(self, take_ids: Iterable[str]) -> Mapping[str, Take]:
        """Give takes by id, deleted or not, in one go."""
        found: dict[str, Take] = {}
        for some in chunks(take_ids):
            found |= {t.id: t for t in self._all(_select().where(_TAKE.id.in_(some)))}
        return found

    def list(
        self,
        *,
        passage_id: str | None = None,
        first_day: date | None = None,
        last_day: date | None = None,
        include_deleted: bool = False,
    ) -> tuple[Take, ...]:
        """List takes in the order in which they were played.

        Parameters
        ----------
        passage_id : str, optional
            Only takes of this passage.
        first_day, last_day : date, optional
            Only takes of these practice days, both included.
        include_deleted : bool
            Also those the player deleted.
        """
        wanted = _select().order_by(_TAKE.practice_day, _TAKE.recorded_at, _TAKE.number, _TAKE.id)
        if passage_id is not None:
            wanted = wanted.where(_TAKE.passage_id == passage_id)
        if first_day is not None:
            wanted = wanted.where(_TAKE.practice_day >= first_day)
        if last_day is not None:
            wanted = wanted.where(_TAKE.practice_day <= last_day)
        if not include_deleted:
            wanted = wanted.where(_TAKE.deleted_at.is_(None))
        return self._all(wanted)

    def of_day(self, practice_day: date, *, include_deleted: bool = False) -> tuple[Take, ...]:
        """List the takes of one practice day."""
        return self.list(
            first_day=practice_day, last_day=practice_day, include_deleted=include_deleted
        )

    def next_number(self, practice_day: date, passage_id: str | None) -> int:
        """Give the number of a new take; those of deleted takes are not used again."""
        numbers = select(_TAKE.number).where(
            _TAKE.practice_day == practice_day, _TAKE.passage_id.is_not_distinct_from(passage_id)
        )
        with self._work.connection() as connection:
            return next_number(connection.scalars(numbers))

    def starting_with(self, id_start: str) -> tuple[Take, ...]:
        """List takes whose id begins so; an id is hexadecimal in lower case."""
        start = id_start.lower()
        if not start or not set(start) <= set("0123456789abcdef"):
            return ()
        return self._all(_select().where(_TAKE.id.between(start, start + "g")))

    def by_file(self, relative: str) -> Take | None:
        """Give the take of a recording, named relative to the journal."""
        return self._first(_select().where(_TAKE.file == relative))

    def by_sha256(self, sha256: str) -> tuple[Take, ...]:
        """List the takes whose recording has these bytes, deleted or not."""
        return self._all(_select().where(_TAKE.sha256 == sha256).order_by(_TAKE.entered_at))

    def counts_by_day(self, first_day: date, last_day: date) -> Mapping[date, int]:
        """Count the takes of each practice day that has any."""
        counted = (
            select(_TAKE.practice_day, func.count())
            .where(_TAKE.practice_day.between(first_day, last_day), _TAKE.deleted_at.is_(None))
            .group_by(_TAKE.practice_day)
        )
        with self._work.connection() as connection:
            return pairs(connection.execute(counted))

    def last_of_passages(self) -> Mapping[str, date]:
        """Give the last practice day with a take, for each passage that has any."""
        last = (
            select(_TAKE.passage_id, func.max(_TAKE.practice_day))
            .where(_TAKE.passage_id.is_not(None), _TAKE.deleted_at.is_(None))
            .group_by(_TAKE.passage_id)
        )
        with self._work.connection() as connection:
            return pairs(connection.execute(last))

    def latest_of_passages(self, until: date) -> tuple[Take, ...]:
        """Give the take that was played last of each passage, up to a practice day."""
        latest = (
            select(_TAKE.passage_id, func.max(_TAKE.recorded_at).label("recorded_at"))
            .where(
                _TAKE.passage_id.is_not(None),
                _TAKE.deleted_at.is_(None),
                _TAKE.practice_day <= until,
            )
            .group_by(_TAKE.passage_id)
            .subquery()
        )
        same = and_(
            latest.c.passage_id == _TAKE.passage_id, latest.c.recorded_at == _TAKE.recorded_at
        )
        wanted = _select().join(latest, same)
        return self._all(wanted.where(_TAKE.deleted_at.is_(None), _TAKE.practice_day <= until))

    def day_counts_of_passages(self) -> Mapping[str, int]:
        """Count the practice days with a take, for each passage that has any."""
        counted = (
            select(_TAKE.passage_id, func.count(_TAKE.practice_day.distinct()))
            .where(_TAKE.passage_id.is_not(None), _TAKE.deleted_at.is_(None))
            .group_by(_TAKE.passage_id)
        )
        with self._work.connection() as connection:
            return pairs(connection.execute(counted))

    def first_and_last_day(self) -> tuple[date, date] | None:
        """Give the first and the last practice day with a take."""
        ends = select(func.min(_TAKE.practice_day), func.max(_TAKE.practice_day)).where(
            _TAKE.deleted_at.is_(None)
        )
        with self._work.connection() as connection:
            first, last = connection.execute(ends).one()
        return None if first is None else (first, last)

    def _first(self, wanted: Select[*tuple[object, ...]]) -> Take | None:
        found = self._all(wanted.limit(1))
        return found[0] if found else None

    def _all(self, wanted: Select[*tuple[object, ...]]) -> tuple[Take, ...]:
        with self._work.connection() as connection:
            return tuple(_take_of(row) for row in connection.execute(wanted))


def _select() -> Select[*tuple[object, ...]]:
    return select(TAKE_TABLE)


def _take_of(row: Row[*tuple[object, ...]]) -> Take:
    return Take(**row._mapping)
