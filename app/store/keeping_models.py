"""The tables of promises, assignments and plans. Column names are those of the records."""

from sqlalchemy import (
    Boolean,
    CheckConstraint,
    Column,
    ForeignKey,
    Index,
    Integer,
    String,
    Table,
    Text,
)

from app.journal.assignments import OccasionKind
from app.journal.kinds import Author
from app.journal.plans import PlanLine
from app.journal.promises import PlannedBreak, PromiseRule
from app.journal.rehearsals import Chance
from app.store.columns import Day, EnumText, IdList, Instant, Number, RecordList
from app.store.models import ID_LENGTH, METADATA

PROMISE_TABLE = Table(
    "promise",
    METADATA,
    Column("id", String(ID_LENGTH), primary_key=True),
    Column("name", Text, nullable=False),
    Column("start", Day, nullable=False),
    Column("rules", RecordList(PromiseRule), nullable=False),
    Column("created_at", Instant, nullable=False),
    Column("breaks", RecordList(PlannedBreak), nullable=False),
    Column("closed_on", Day),
)
"""See :class:`app.journal.promises.Promise`."""


SHARED_NUMBER_TABLE = Table(
    "shared_number",
    METADATA,
    Column("id", String(ID_LENGTH), primary_key=True),
    Column("promise_id", ForeignKey("promise.id"), nullable=False),
    Column("practice_day", Day, nullable=False),
    Column("day_number", Integer, nullable=False),
    Column("days_kept", Integer, nullable=False),
    Column("shared_at", Instant, nullable=False),
    Column("take_id", ForeignKey("take.id")),
    Index("ix_shared_number_promise_id_practice_day", "promise_id", "practice_day"),
)
"""See :class:`app.journal.promises.SharedNumber`; rows are added, never changed."""


ASSIGNMENT_TABLE = Table(
    "assignment",
    METADATA,
    Column("id", String(ID_LENGTH), primary_key=True),
    Column("set_on", Day, nullable=False),
    Column("due_on", Day, index=True, nullable=False),
    Column("goal", Text, nullable=False),
    Column("created_at", Instant, nullable=False),
    Column("author", EnumText(Author), nullable=False),
    Column("minutes", Integer),
    Column("item_id", ForeignKey("item.id")),
    Column("passage_id", ForeignKey("passage.id")),
    Column("done_on", Day),
)
"""See :class:`app.journal.assignments.Assignment`."""


OCCASION_TABLE = Table(
    "occasion",
    METADATA,
    Column("id", String(ID_LENGTH), primary_key=True),
    Column("day", Day, index=True, nullable=False),
    Column("kind", EnumText(OccasionKind), nullable=False),
    Column("created_at", Instant, nullable=False),
    Column("name", Text, nullable=False),
    Column("passage_ids", IdList, nullable=False),
)
"""See :class:`app.journal.assignments.Occasion`."""


EARLIER_HOURS_TABLE = Table(
    "earlier_hours",
    METADATA,
    Column("number", Integer, primary_key=True),
    Column("hours", Number, nullable=False),
    Column("until", Day),
    Column("note", Text, nullable=False),
    CheckConstraint("number = 1", name="number"),
)
"""See :class:`app.journal.assignments.EarlierHours`; at most one row, number 1."""


PLAN_TABLE = Table(
    "practice_plan",
    METADATA,
    Column("practice_day", Day, primary_key=True),
    Column("minutes_available", Integer, nullable=False),
    Column("made_at", Instant, nullable=False),
    Column("lines", RecordList(PlanLine), nullable=False),
    Column("break_minutes", Integer, nullable=False),
)
"""See :class:`app.journal.plans.PracticePlan`; one a practice day."""


REHEARSAL_TABLE = Table(
    "rehearsal",
    METADATA,
    Column("id", String(ID_LENGTH), primary_key=True),
    Column("practice_day", Day, nullable=False),
    Column("started_at", Instant, nullable=False),
    Column("chances", RecordList(Chance), nullable=False),
    Column("drawn", Boolean, nullable=False),
    Column("ended_at", Instant),
)
"""See :class:`app.journal.rehearsals.Rehearsal`."""


LESSON_REMARK_TABLE = Table(
    "lesson_remark",
    METADATA,
    Column("id", String(ID_LENGTH), primary_key=True),
    Column("lesson_day", Day, nullable=False),
    Column("first_day", Day, nullable=False),
    Column("last_day", Day, nullable=False),
    Column("text", Text, nullable=False),
    Column("created_at", Instant, nullable=False),
    Column("changed_at", Instant, nullable=False),
    Column("author", EnumText(Author), nullable=False),
)
"""See :class:`app.journal.remarks.LessonRemark`."""


SHARED_CLIP_TABLE = Table(
    "shared_clip",
    METADATA,
    Column("id", String(ID_LENGTH), primary_key=True),
    Column("take_id", ForeignKey("take.id"), nullable=False),
    Column("practice_day", Day, nullable=False),
    Column("shared_at", Instant, nullable=False),
    Column("start_s", Number, nullable=False),
    Column("end_s", Number, nullable=False),
    Column("form", Text, nullable=False),
    Column("file_name", Text, nullable=False),
    Column("numbers", Text, nullable=False),
)
"""See :class:`app.journal.sharing.SharedClip`."""
