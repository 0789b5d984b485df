"""The tables of promises, assignments and plans. Column names are those of the records."""

from datetime import date, datetime

from sqlalchemy import (
    Boolean,
    CheckConstraint,
    Date,
    Float,
    ForeignKey,
    Index,
    Integer,
    String,
    Text,
)
from sqlalchemy.orm import Mapped, mapped_column

from app.journal.assignments import OccasionKind
from app.journal.plans import PlanLine
from app.journal.promises import PlannedBreak, PromiseRule
from app.journal.records import Author
from app.journal.rehearsals import Chance
from app.store.columns import EnumText, IdList, Instant, RecordList
from app.store.models import ID_LENGTH, Base


class PromiseModel(Base):
    """See :class:`app.journal.promises.Promise`."""

    __tablename__ = "promise"

    id: Mapped[str] = mapped_column(String(ID_LENGTH), primary_key=True)
    name: Mapped[str] = mapped_column(Text)
    start: Mapped[date] = mapped_column(Date)
    rules: Mapped[tuple[PromiseRule, ...]] = mapped_column(RecordList(PromiseRule))
    created_at: Mapped[datetime] = mapped_column(Instant)
    breaks: Mapped[tuple[PlannedBreak, ...]] = mapped_column(RecordList(PlannedBreak))
    closed_on: Mapped[date | None] = mapped_column(Date)


class SharedNumberModel(Base):
    """See :class:`app.journal.promises.SharedNumber`; rows are added, never changed."""

    __tablename__ = "shared_number"
    __table_args__ = (
        Index("ix_shared_number_promise_id_practice_day", "promise_id", "practice_day"),
    )

    id: Mapped[str] = mapped_column(String(ID_LENGTH), primary_key=True)
    promise_id: Mapped[str] = mapped_column(ForeignKey("promise.id"))
    practice_day: Mapped[date] = mapped_column(Date)
    day_number: Mapped[int] = mapped_column(Integer)
    days_kept: Mapped[int] = mapped_column(Integer)
    shared_at: Mapped[datetime] = mapped_column(Instant)
    take_id: Mapped[str | None] = mapped_column(ForeignKey("take.id"))


class AssignmentModel(Base):
    """See :class:`app.journal.assignments.Assignment`."""

    __tablename__ = "assignment"

    id: Mapped[str] = mapped_column(String(ID_LENGTH), primary_key=True)
    set_on: Mapped[date] = mapped_column(Date)
    due_on: Mapped[date] = mapped_column(Date, index=True)
    goal: Mapped[str] = mapped_column(Text)
    created_at: Mapped[datetime] = mapped_column(Instant)
    author: Mapped[Author] = mapped_column(EnumText(Author))
    minutes: Mapped[int | None] = mapped_column(Integer)
    item_id: Mapped[str | None] = mapped_column(ForeignKey("item.id"))
    passage_id: Mapped[str | None] = mapped_column(ForeignKey("passage.id"))
    done_on: Mapped[date | None] = mapped_column(Date)


class OccasionModel(Base):
    """See :class:`app.journal.assignments.Occasion`."""

    __tablename__ = "occasion"

    id: Mapped[str] = mapped_column(String(ID_LENGTH), primary_key=True)
    day: Mapped[date] = mapped_column(Date, index=True)
    kind: Mapped[OccasionKind] = mapped_column(EnumText(OccasionKind))
    created_at: Mapped[datetime] = mapped_column(Instant)
    name: Mapped[str] = mapped_column(Text)
    passage_ids: Mapped[tuple[str, ...]] = mapped_column(IdList)


class EarlierHoursModel(Base):
    """See :class:`app.journal.assignments.EarlierHours`; at most one row, number 1."""

    __tablename__ = "earlier_hours"
    __table_args__ = (CheckConstraint("number = 1", name="number"),)

    number: Mapped[int] = mapped_column(Integer, primary_key=True)
    hours: Mapped[float] = mapped_column(Float)
    until: Mapped[date | None] = mapped_column(Date)
    note: Mapped[str] = mapped_column(Text)


class PlanModel(Base):
    """See :class:`app.journal.plans.PracticePlan`; one a practice day."""

    __tablename__ = "practice_plan"

    practice_day: Mapped[date] = mapped_column(Date, primary_key=True)
    minutes_available: Mapped[int] = mapped_column(Integer)
    made_at: Mapped[datetime] = mapped_column(Instant)
    lines: Mapped[tuple[PlanLine, ...]] = mapped_column(RecordList(PlanLine))
    break_minutes: Mapped[int] = mapped_column(Integer)


class RehearsalModel(Base):
    """See :class:`app.journal.rehearsals.Rehearsal`."""

    __tablename__ = "rehearsal"

    id: Mapped[str] = mapped_column(String(ID_LENGTH), primary_key=True)
    practice_day: Mapped[date] = mapped_column(Date)
    started_at: Mapped[datetime] = mapped_column(Instant)
    chances: Mapped[tuple[Chance, ...]] = mapped_column(RecordList(Chance))
    drawn: Mapped[bool] = mapped_column(Boolean)
    ended_at: Mapped[datetime | None] = mapped_column(Instant)


class LessonRemarkModel(Base):
    """See :class:`app.journal.remarks.LessonRemark`."""

    __tablename__ = "lesson_remark"

    id: Mapped[str] = mapped_column(String(ID_LENGTH), primary_key=True)
    lesson_day: Mapped[date] = mapped_column(Date)
    first_day: Mapped[date] = mapped_column(Date)
    last_day: Mapped[date] = mapped_column(Date)
    text: Mapped[str] = mapped_column(Text)
    created_at: Mapped[datetime] = mapped_column(Instant)
    changed_at: Mapped[datetime] = mapped_column(Instant)
    author: Mapped[Author] = mapped_column(EnumText(Author))


class SharedClipModel(Base):
    """See :class:`app.journal.sharing.SharedClip`."""

    __tablename__ = "shared_clip"

    id: Mapped[str] = mapped_column(String(ID_LENGTH), primary_key=True)
    take_id: Mapped[str] = mapped_column(ForeignKey("take.id"))
    practice_day: Mapped[date] = mapped_column(Date)
    shared_at: Mapped[datetime] = mapped_column(Instant)
    start_s: Mapped[float] = mapped_column(Float)
    end_s: Mapped[float] = mapped_column(Float)
    form: Mapped[str] = mapped_column(Text)
    file_name: Mapped[str] = mapped_column(Text)
    numbers: Mapped[str] = mapped_column(Text)
