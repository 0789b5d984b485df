"""Assignments, coming dates and the hours from before the journal."""

from datetime import date

from sqlalchemy import delete, insert, select

from app.journal.assignments import Assignment, EarlierHours, Occasion
from app.store.keeping_models import ASSIGNMENT_TABLE, EARLIER_HOURS_TABLE, OCCASION_TABLE
from app.store.kept_by_id import KeptById
from app.store.work import JOURNAL_KEY, Work, values_of

_ASSIGNMENT = ASSIGNMENT_TABLE.c
_OCCASION = OCCASION_TABLE.c
_EARLIER = EARLIER_HOURS_TABLE.c


class AssignmentRepository(KeptById[Assignment]):
    """Assignments by the day they are due."""

    table = ASSIGNMENT_TABLE
    record = Assignment
    order = (_ASSIGNMENT.due_on, _ASSIGNMENT.created_at, _ASSIGNMENT.id)

    def remove(self, assignment_id: str) -> Assignment | None:
        """Take an assignment away and give it back."""
        with self._work.connection() as connection:
            assignment = self.get(assignment_id)
            connection.execute(delete(ASSIGNMENT_TABLE).where(_ASSIGNMENT.id == assignment_id))
            self._work.touch(JOURNAL_KEY)
            return assignment

    def list(
        self, *, first_due: date | None = None, last_due: date | None = None
    ) -> tuple[Assignment, ...]:
        """List assignments, all or some, both ends included."""
        conditions = []
        if first_due is not None:
            conditions.append(_ASSIGNMENT.due_on >= first_due)
        if last_due is not None:
            conditions.append(_ASSIGNMENT.due_on <= last_due)
        return self._all(*conditions)


class OccasionRepository:
    """Lessons, auditions and concerts in and out of the database."""

    def __init__(self, work: Work) -> None:
        self._work = work

    def put(self, occasion: Occasion) -> None:
        """Keep an occasion, in the place of the one with its id if there is one."""
        with self._work.connection() as connection:
            connection.execute(delete(OCCASION_TABLE).where(_OCCASION.id == occasion.id))
            connection.execute(insert(OCCASION_TABLE), values_of(occasion))
            self._work.touch(JOURNAL_KEY)

    def remove(self, occasion_id: str) -> None:
        """Take an occasion away."""
        with self._work.connection() as connection:
            connection.execute(delete(OCCASION_TABLE).where(_OCCASION.id == occasion_id))
            self._work.touch(JOURNAL_KEY)

    def list(self, *, first_day: date | None = None) -> tuple[Occasion, ...]:
        """List occasions in order, all or from a day on."""
        wanted = select(OCCASION_TABLE).order_by(_OCCASION.day, _OCCASION.id)
        if first_day is not None:
            wanted = wanted.where(_OCCASION.day >= first_day)
        with self._work.connection() as connection:
            return tuple(Occasion(**row._mapping) for row in connection.execute(wanted))


class EarlierHoursRepository:
    """The one entry of hours from before the journal."""

    def __init__(self, work: Work) -> None:
        self._work = work

    def get(self) -> EarlierHours | None:
        """Give the entry; ``None`` where none was made."""
        wanted = select(_EARLIER.hours, _EARLIER.until, _EARLIER.note)
        with self._work.connection() as connection:
            row = connection.execute(wanted).one_or_none()
        return None if row is None else EarlierHours(**row._mapping)

    def put(self, earlier: EarlierHours | None) -> None:
        """Keep the entry in the place of the one before; ``None`` takes it away."""
        with self._work.connection() as connection:
            connection.execute(delete(EARLIER_HOURS_TABLE))
            if earlier is not None:
                connection.execute(insert(EARLIER_HOURS_TABLE), {"number": 1, **values_of(earlier)})
            self._work.touch(JOURNAL_KEY)
