"""The plans of practice days; they stand in the sidecars of the days."""

from datetime import date

from sqlalchemy import delete, insert, select

from app.journal.plans import PracticePlan
from app.store.keeping_models import PLAN_TABLE
from app.store.work import Work, values_of

_PLAN = PLAN_TABLE.c


class PlanRepository:
    """Plans in and out of the database; one a practice day."""

    def __init__(self, work: Work) -> None:
        self._work = work

    def put(self, plan: PracticePlan) -> None:
        """Keep a plan in the place of the one of its day."""
        with self._work.connection() as connection:
            connection.execute(delete(PLAN_TABLE).where(_PLAN.practice_day == plan.practice_day))
            connection.execute(insert(PLAN_TABLE), values_of(plan))
            self._work.touch_day(plan.practice_day)

    def remove(self, practice_day: date) -> None:
        """Take the plan of a day away."""
        with self._work.connection() as connection:
            connection.execute(delete(PLAN_TABLE).where(_PLAN.practice_day == practice_day))
            self._work.touch_day(practice_day)

    def get(self, practice_day: date) -> PracticePlan | None:
        """Give the plan of a day."""
        wanted = select(PLAN_TABLE).where(_PLAN.practice_day == practice_day)
        with self._work.connection() as connection:
            row = connection.execute(wanted).one_or_none()
        return None if row is None else PracticePlan(**row._mapping)

    def days(
        self, *, first_day: date | None = None, last_day: date | None = None
    ) -> tuple[date, ...]:
        """List the days that have a plan, all or some, both ends included."""
        wanted = select(_PLAN.practice_day).order_by(_PLAN.practice_day)
        if first_day is not None:
            wanted = wanted.where(_PLAN.practice_day >= first_day)
        if last_day is not None:
            wanted = wanted.where(_PLAN.practice_day <= last_day)
        with self._work.connection() as connection:
            return tuple(connection.scalars(wanted))
