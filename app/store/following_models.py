"""The tables of following a passage. Column names are those of the records."""

from datetime import datetime

from sqlalchemy import Boolean, Float, ForeignKey, Index, Integer, LargeBinary, String, Text
from sqlalchemy.orm import Mapped, mapped_column

from app.journal.blind_ear import Choice, Question
from app.store.columns import EnumText, Instant
from app.store.models import ID_LENGTH, Base


class StillThereModel(Base):
    """See :class:`app.journal.still_there.StillThere`.

    No foreign key to the marker: its deletion can be undone, and the answers with it.
    """

    __tablename__ = "still_there"
    __table_args__ = (Index("ix_still_there_marker_id_take_id", "marker_id", "take_id"),)

    id: Mapped[str] = mapped_column(String(ID_LENGTH), primary_key=True)
    marker_id: Mapped[str] = mapped_column(String(ID_LENGTH))
    take_id: Mapped[str] = mapped_column(ForeignKey("take.id"))
    is_there: Mapped[bool] = mapped_column(Boolean)
    answered_at: Mapped[datetime] = mapped_column(Instant)


class PassageBoundsModel(Base):
    """See :class:`app.journal.bounds.PassageBounds`."""

    __tablename__ = "passage_bounds"

    id: Mapped[str] = mapped_column(ForeignKey("passage.id"), primary_key=True)
    mean_absolute_cents: Mapped[float] = mapped_column(Float)
    steadiness_cv_percent: Mapped[float] = mapped_column(Float)
    changed_at: Mapped[datetime] = mapped_column(Instant)
    target_bpm: Mapped[float | None] = mapped_column(Float)
    step_bpm: Mapped[float] = mapped_column(Float)
    is_rubato: Mapped[bool] = mapped_column(Boolean)


class BlindTrialModel(Base):
    """See :class:`app.journal.blind_ear.BlindTrial`."""

    __tablename__ = "blind_trial"
    __table_args__ = (Index("ix_blind_trial_passage_id_asked_at", "passage_id", "asked_at"),)

    id: Mapped[str] = mapped_column(String(ID_LENGTH), primary_key=True)
    passage_id: Mapped[str] = mapped_column(ForeignKey("passage.id"))
    question: Mapped[Question] = mapped_column(EnumText(Question))
    first_take_id: Mapped[str] = mapped_column(ForeignKey("take.id"))
    second_take_id: Mapped[str] = mapped_column(ForeignKey("take.id"))
    seed: Mapped[int] = mapped_column(Integer)
    asked_at: Mapped[datetime] = mapped_column(Instant)
    choice: Mapped[Choice | None] = mapped_column(EnumText(Choice))
    answered_at: Mapped[datetime | None] = mapped_column(Instant)


class PairAlignmentModel(Base):
    """An alignment of two takes, made once; it can be made again.

    ``made_from`` tells a stale one: the algorithm and what both takes were when it was
    made. Without ``block`` the two do not match, and ``sentence`` says so.
    """

    __tablename__ = "pair_alignment"

    take_a: Mapped[str] = mapped_column(ForeignKey("take.id"), primary_key=True)
    take_b: Mapped[str] = mapped_column(ForeignKey("take.id"), primary_key=True)
    made_from: Mapped[str] = mapped_column(Text)
    reason: Mapped[str] = mapped_column(Text)
    sentence: Mapped[str] = mapped_column(Text)
    block: Mapped[bytes] = mapped_column(LargeBinary)


class TakeOutlineModel(Base):
    """The harmony of a take in outline, for telling passages apart; it can be made again."""

    __tablename__ = "take_outline"

    take_id: Mapped[str] = mapped_column(ForeignKey("take.id"), primary_key=True)
    made_from: Mapped[str] = mapped_column(Text)
    block: Mapped[bytes] = mapped_column(LargeBinary)
