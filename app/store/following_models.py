"""The tables of following a passage. Column names are those of the records."""

from sqlalchemy import (
    Boolean,
    Column,
    ForeignKey,
    Index,
    Integer,
    LargeBinary,
    String,
    Table,
    Text,
)

from app.journal.blind_ear import Choice, Question
from app.store.columns import EnumText, Instant, Number
from app.store.models import ID_LENGTH, METADATA

STILL_THERE_TABLE = Table(
    "still_there",
    METADATA,
    Column("id", String(ID_LENGTH), primary_key=True),
    Column("marker_id", String(ID_LENGTH), nullable=False),
    Column("take_id", ForeignKey("take.id"), nullable=False),
    Column("is_there", Boolean, nullable=False),
    Column("answered_at", Instant, nullable=False),
    Index("ix_still_there_marker_id_take_id", "marker_id", "take_id"),
)
"""See :class:`app.journal.still_there.StillThere`.

No foreign key to the marker: its deletion can be undone, and the answers with it.
"""


PASSAGE_BOUNDS_TABLE = Table(
    "passage_bounds",
    METADATA,
    Column("id", ForeignKey("passage.id"), primary_key=True),
    Column("mean_absolute_cents", Number, nullable=False),
    Column("steadiness_cv_percent", Number, nullable=False),
    Column("changed_at", Instant, nullable=False),
    Column("target_bpm", Number),
    Column("step_bpm", Number, nullable=False),
    Column("is_rubato", Boolean, nullable=False),
)
"""See :class:`app.journal.bounds.PassageBounds`."""


BLIND_TRIAL_TABLE = Table(
    "blind_trial",
    METADATA,
    Column("id", String(ID_LENGTH), primary_key=True),
    Column("passage_id", ForeignKey("passage.id"), nullable=False),
    Column("question", EnumText(Question), nullable=False),
    Column("first_take_id", ForeignKey("take.id"), nullable=False),
    Column("second_take_id", ForeignKey("take.id"), nullable=False),
    Column("seed", Integer, nullable=False),
    Column("asked_at", Instant, nullable=False),
    Column("choice", EnumText(Choice)),
    Column("answered_at", Instant),
    Index("ix_blind_trial_passage_id_asked_at", "passage_id", "asked_at"),
)
"""See :class:`app.journal.blind_ear.BlindTrial`."""


PAIR_ALIGNMENT_TABLE = Table(
    "pair_alignment",
    METADATA,
    Column("take_a", ForeignKey("take.id"), primary_key=True),
    Column("take_b", ForeignKey("take.id"), primary_key=True),
    Column("made_from", Text, nullable=False),
    Column("reason", Text, nullable=False),
    Column("sentence", Text, nullable=False),
    Column("block", LargeBinary, nullable=False),
)
"""An alignment of two takes, made once; it can be made again.

``made_from`` tells a stale one: the algorithm and what both takes were when it was
made. Without ``block`` the two do not match, and ``sentence`` says so.
"""


TAKE_OUTLINE_TABLE = Table(
    "take_outline",
    METADATA,
    Column("take_id", ForeignKey("take.id"), primary_key=True),
    Column("made_from", Text, nullable=False),
    Column("block", LargeBinary, nullable=False),
)
"""The harmony of a take in outline, for telling passages apart; it can be made again."""
