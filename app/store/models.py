"""The tables. Column names are the field names of the records."""

from datetime import date, datetime

from sqlalchemy import (
    Boolean,
    CheckConstraint,
    Date,
    Float,
    ForeignKey,
    Index,
    Integer,
    LargeBinary,
    MetaData,
    String,
    Text,
)
from sqlalchemy.orm import DeclarativeBase, Mapped, mapped_column

from app.journal.blocks import ItemKind
from app.journal.records import AimMet, Author, MarkerState, MinutesSource, Origin, PlayingSettings
from app.journal.scores import BarSpan, PassageScore
from app.store.columns import EnumText, Instant, OneRecord, RecordList, SettingsText

ID_LENGTH = 32


class Base(DeclarativeBase):
    """Names every constraint, so that later migrations can find it."""

    metadata = MetaData(
        naming_convention={
            "ix": "ix_%(table_name)s_%(column_0_N_name)s",
            "uq": "uq_%(table_name)s_%(column_0_N_name)s",
            "ck": "ck_%(table_name)s_%(constraint_name)s",
            "fk": "fk_%(table_name)s_%(column_0_N_name)s",
            "pk": "pk_%(table_name)s",
        }
    )


class PassageModel(Base):
    """See :class:`app.journal.records.Passage`."""

    __tablename__ = "passage"

    id: Mapped[str] = mapped_column(String(ID_LENGTH), primary_key=True)
    piece: Mapped[str] = mapped_column(Text)
    name: Mapped[str] = mapped_column(Text)
    bars: Mapped[str] = mapped_column(Text)
    settings: Mapped[PlayingSettings] = mapped_column(SettingsText)
    created_at: Mapped[datetime] = mapped_column(Instant)
    no_retake: Mapped[bool] = mapped_column(Boolean)
    no_retake_since: Mapped[date | None] = mapped_column(Date)
    score: Mapped[PassageScore | None] = mapped_column(OneRecord(PassageScore))


class SessionModel(Base):
    """See :class:`app.journal.records.Session`."""

    __tablename__ = "session"

    id: Mapped[str] = mapped_column(String(ID_LENGTH), primary_key=True)
    practice_day: Mapped[date] = mapped_column(Date, index=True)
    started_at: Mapped[datetime] = mapped_column(Instant)
    minutes: Mapped[float | None] = mapped_column(Float)
    minutes_source: Mapped[MinutesSource | None] = mapped_column(EnumText(MinutesSource))
    note: Mapped[str] = mapped_column(Text)


class RestDayModel(Base):
    """See :class:`app.journal.records.RestDay`."""

    __tablename__ = "rest_day"

    practice_day: Mapped[date] = mapped_column(Date, primary_key=True)
    planned: Mapped[bool] = mapped_column(Boolean)


class TakeModel(Base):
    """See :class:`app.journal.records.Take`."""

    __tablename__ = "take"
    __table_args__ = (
        CheckConstraint("number >= 1", name="number"),
        Index("ix_take_passage_id_practice_day_number", "passage_id", "practice_day", "number"),
        Index("ix_take_practice_day_recorded_at", "practice_day", "recorded_at"),
    )

    id: Mapped[str] = mapped_column(String(ID_LENGTH), primary_key=True)
    session_id: Mapped[str] = mapped_column(ForeignKey("session.id"), index=True)
    passage_id: Mapped[str | None] = mapped_column(ForeignKey("passage.id"))
    practice_day: Mapped[date] = mapped_column(Date)
    number: Mapped[int] = mapped_column(Integer)
    recorded_at: Mapped[datetime] = mapped_column(Instant)
    entered_at: Mapped[datetime] = mapped_column(Instant)
    origin: Mapped[Origin] = mapped_column(EnumText(Origin))
    file: Mapped[str] = mapped_column(Text, unique=True)
    sha256: Mapped[str] = mapped_column(String(64), index=True)
    duration_s: Mapped[float] = mapped_column(Float)
    sample_rate_hz: Mapped[int] = mapped_column(Integer)
    channels: Mapped[int] = mapped_column(Integer)
    settings: Mapped[PlayingSettings] = mapped_column(SettingsText)
    original_name: Mapped[str] = mapped_column(Text)
    recorded_at_source: Mapped[str] = mapped_column(Text)
    aim: Mapped[str] = mapped_column(Text)
    aim_met: Mapped[AimMet | None] = mapped_column(EnumText(AimMet))
    dropped_frames: Mapped[int] = mapped_column(Integer)
    clipped_samples: Mapped[int] = mapped_column(Integer)
    ended: Mapped[str] = mapped_column(Text)
    deleted_at: Mapped[datetime | None] = mapped_column(Instant)
    no_retake: Mapped[bool] = mapped_column(Boolean)
    retake_reason: Mapped[str] = mapped_column(Text)
    input_device: Mapped[str] = mapped_column(Text)
    peak_dbfs: Mapped[float | None] = mapped_column(Float)
    quiet_dbfs: Mapped[float | None] = mapped_column(Float)
    parts: Mapped[tuple[BarSpan, ...]] = mapped_column(RecordList(BarSpan), server_default="[]")
    input_channel: Mapped[int | None] = mapped_column(Integer)


class ItemModel(Base):
    """See :class:`app.journal.blocks.Item`."""

    __tablename__ = "item"

    id: Mapped[str] = mapped_column(String(ID_LENGTH), primary_key=True)
    kind: Mapped[ItemKind] = mapped_column(EnumText(ItemKind))
    name: Mapped[str] = mapped_column(Text)
    created_at: Mapped[datetime] = mapped_column(Instant)
    passage_id: Mapped[str | None] = mapped_column(ForeignKey("passage.id"))
    retired_at: Mapped[datetime | None] = mapped_column(Instant)


class BlockModel(Base):
    """See :class:`app.journal.blocks.Block`."""

    __tablename__ = "block"
    __table_args__ = (Index("ix_block_session_id_started_at", "session_id", "started_at"),)

    id: Mapped[str] = mapped_column(String(ID_LENGTH), primary_key=True)
    session_id: Mapped[str] = mapped_column(ForeignKey("session.id"))
    item_id: Mapped[str | None] = mapped_column(ForeignKey("item.id"), index=True)
    started_at: Mapped[datetime] = mapped_column(Instant)
    ended_at: Mapped[datetime] = mapped_column(Instant)


class AttemptModel(Base):
    """See :class:`app.journal.blocks.Attempt`."""

    __tablename__ = "attempt"
    __table_args__ = (Index("ix_attempt_practice_day_passage_id", "practice_day", "passage_id"),)

    id: Mapped[str] = mapped_column(String(ID_LENGTH), primary_key=True)
    passage_id: Mapped[str | None] = mapped_column(ForeignKey("passage.id"))
    practice_day: Mapped[date] = mapped_column(Date)
    started_at: Mapped[datetime] = mapped_column(Instant)
    duration_s: Mapped[float] = mapped_column(Float)
    failure: Mapped[str] = mapped_column(Text)


class ClockModel(Base):
    """See :class:`app.journal.blocks.ClockRecord`; at most one row, number 1."""

    __tablename__ = "clock"
    __table_args__ = (CheckConstraint("number = 1", name="number"),)

    number: Mapped[int] = mapped_column(Integer, primary_key=True)
    session_id: Mapped[str] = mapped_column(ForeignKey("session.id"))
    block_id: Mapped[str] = mapped_column(String(ID_LENGTH))
    item_id: Mapped[str | None] = mapped_column(ForeignKey("item.id"))
    running: Mapped[bool] = mapped_column(Boolean)
    since: Mapped[datetime] = mapped_column(Instant)
    touched_at: Mapped[datetime] = mapped_column(Instant)
    seen_at: Mapped[datetime | None] = mapped_column(Instant)
    unbroken_s: Mapped[float] = mapped_column(Float)
    break_put_off_at: Mapped[datetime | None] = mapped_column(Instant)


class PutAsideModel(Base):
    """A clip of the watched folder that the player did not want, by its content."""

    __tablename__ = "put_aside"

    sha256: Mapped[str] = mapped_column(String(64), primary_key=True)


class MarkerModel(Base):
    """See :class:`app.journal.records.Marker`."""

    __tablename__ = "marker"
    __table_args__ = (
        CheckConstraint("weight BETWEEN 1 AND 3", name="weight"),
        Index("ix_marker_take_id_start_s", "take_id", "start_s"),
        Index("ix_marker_weight_changed_at_id", "weight", "changed_at", "id"),
    )

    id: Mapped[str] = mapped_column(String(ID_LENGTH), primary_key=True)
    take_id: Mapped[str] = mapped_column(ForeignKey("take.id"))
    start_s: Mapped[float] = mapped_column(Float)
    end_s: Mapped[float | None] = mapped_column(Float)
    category: Mapped[str] = mapped_column(Text)
    weight: Mapped[int] = mapped_column(Integer)
    text: Mapped[str] = mapped_column(Text)
    author: Mapped[Author] = mapped_column(EnumText(Author))
    state: Mapped[MarkerState] = mapped_column(EnumText(MarkerState))
    created_at: Mapped[datetime] = mapped_column(Instant)
    changed_at: Mapped[datetime] = mapped_column(Instant)


class SettingModel(Base):
    """One of the journal's settings: its field name and its value as JSON."""

    __tablename__ = "setting"

    key: Mapped[str] = mapped_column(String(64), primary_key=True)
    value: Mapped[str] = mapped_column(Text)


class MeasurementModel(Base):
    """See :class:`app.journal.records.StoredMeasurement`.

    ``headline`` repeats the summary without its lists: short enough to be read for
    thousands of takes at once. ``summary`` is compressed.
    """

    __tablename__ = "measurement"

    take_id: Mapped[str] = mapped_column(ForeignKey("take.id"), primary_key=True)
    algorithm: Mapped[str] = mapped_column(Text)
    measured_at: Mapped[datetime] = mapped_column(Instant)
    stale: Mapped[bool] = mapped_column(Boolean)
    failure: Mapped[str] = mapped_column(Text)
    headline: Mapped[str] = mapped_column(Text)
    summary: Mapped[bytes] = mapped_column(LargeBinary)


class CurvesModel(Base):
    """The arrays of a measurement, apart: they are large and can be made again."""

    __tablename__ = "measurement_curves"

    take_id: Mapped[str] = mapped_column(ForeignKey("take.id"), primary_key=True)
    curves: Mapped[bytes] = mapped_column(LargeBinary)


class SidecarDueModel(Base):
    """A sidecar that does not yet say what the database says."""

    __tablename__ = "sidecar_due"

    kind: Mapped[str] = mapped_column(String(8), primary_key=True)
    key: Mapped[str] = mapped_column(String(ID_LENGTH), primary_key=True)
