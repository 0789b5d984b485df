"""The recordings that were begun, kept or not, and the clips that were put aside."""

from collections.abc import Iterable, Mapping
from datetime import date

from sqlalchemy import delete, select
from sqlalchemy.dialects.sqlite import insert

from app.journal.blocks import Attempt
from app.store.models import ATTEMPT_TABLE, PUT_ASIDE_TABLE
from app.store.work import JOURNAL_KEY, Work, values_of

_ATTEMPT = ATTEMPT_TABLE.c
_ASIDE = PUT_ASIDE_TABLE.c


class AttemptRepository:
    """Attempts in and out of the database."""

    def __init__(self, work: Work) -> None:
        self._work = work

    def put(self, attempt: Attempt) -> None:
        """Keep an attempt in the place of what is known of it."""
        values = values_of(attempt)
        with self._work.connection() as connection:
            before = self.get(attempt.id)
            statement = insert(ATTEMPT_TABLE).values(values)
            connection.execute(statement.on_conflict_do_update(index_elements=["id"], set_=values))
            self._work.touch_day(attempt.practice_day)
            if before is not None:
                self._work.touch_day(before.practice_day)

    def remove(self, attempt_id: str) -> None:
        """Forget an attempt of which nothing was recorded."""
        with self._work.connection() as connection:
            before = self.get(attempt_id)
            if before is not None:
                connection.execute(delete(ATTEMPT_TABLE).where(_ATTEMPT.id == attempt_id))
                self._work.touch_day(before.practice_day)

    def get(self, attempt_id: str) -> Attempt | None:
        """Give an attempt."""
        wanted = select(ATTEMPT_TABLE).where(_ATTEMPT.id == attempt_id)
        with self._work.connection() as connection:
            row = connection.execute(wanted).one_or_none()
        return None if row is None else Attempt(**row._mapping)

    def list(
        self,
        *,
        passage_id: str | None = None,
        first_day: date | None = None,
        last_day: date | None = None,
    ) -> tuple[Attempt, ...]:
        """List attempts in order, of one passage or all, of some practice days or all."""
        wanted = select(ATTEMPT_TABLE).order_by(
            _ATTEMPT.practice_day, _ATTEMPT.started_at, _ATTEMPT.id
        )
        if passage_id is not None:
            wanted = wanted.where(_ATTEMPT.passage_id == passage_id)
        if first_day is not None:
            wanted = wanted.where(_ATTEMPT.practice_day >= first_day)
        if last_day is not None:
            wanted = wanted.where(_ATTEMPT.practice_day <= last_day)
        with self._work.connection() as connection:
            return tuple(Attempt(**row._mapping) for row in connection.execute(wanted))

    def by_passage_and_day(
        self, days: Iterable[date]
    ) -> Mapping[tuple[str | None, date], tuple[Attempt, ...]]:
        """Group the attempts between the first and the last of some days."""
        wanted = tuple(days)
        found: dict[tuple[str | None, date], tuple[Attempt, ...]] = {}
        if wanted:
            for attempt in self.list(first_day=min(wanted), last_day=max(wanted)):
                key = (attempt.passage_id, attempt.practice_day)
                found[key] = (*found.get(key, ()), attempt)
        return found


class PutAsideRepository:
    """Clips of the watched folder that are not offered again, by their SHA-256."""

    def __init__(self, work: Work) -> None:
        self._work = work

    def add(self, sha256: str) -> None:
        """Keep the content of a clip in mind; once more does nothing."""
        with self._work.connection() as connection:
            statement = insert(PUT_ASIDE_TABLE).values(sha256=sha256)
            connection.execute(statement.on_conflict_do_nothing())
            self._work.touch(JOURNAL_KEY)

    def remove(self, sha256: str) -> None:
        """Let a clip be offered again."""
        with self._work.connection() as connection:
            connection.execute(delete(PUT_ASIDE_TABLE).where(_ASIDE.sha256 == sha256))
            self._work.touch(JOURNAL_KEY)

    def list(self) -> tuple[str, ...]:
        """List all of them."""
        with self._work.connection() as connection:
            return tuple(connection.scalars(select(_ASIDE.sha256).order_by(_ASIDE.sha256)))
