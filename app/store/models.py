"""The tables. Column names are the field names of the records."""

from sqlalchemy import (
    Boolean,
    CheckConstraint,
    Column,
    ForeignKey,
    Index,
    Integer,
    LargeBinary,
    MetaData,
    String,
    Table,
    Text,
)

from app.journal.kinds import AimMet, Author, ItemKind, MarkerState, MinutesSource, Origin
from app.journal.scores import BarSpan, PassageScore
from app.store.columns import Day, EnumText, Instant, Number, OneRecord, RecordList, SettingsText

ID_LENGTH = 32


METADATA = MetaData(
    naming_convention={
        "ix": "ix_%(table_name)s_%(column_0_N_name)s",
        "uq": "uq_%(table_name)s_%(column_0_N_name)s",
        "ck": "ck_%(table_name)s_%(constraint_name)s",
        "fk": "fk_%(table_name)s_%(column_0_N_name)s",
        "pk": "pk_%(table_name)s",
    }
)
"""Names every constraint, so that later migrations can find it."""


PASSAGE_TABLE = Table(
    "passage",
    METADATA,
    Column("id", String(ID_LENGTH), primary_key=True),
    Column("piece", Text, nullable=False),
    Column("name", Text, nullable=False),
    Column("bars", Text, nullable=False),
    Column("settings", SettingsText, nullable=False),
    Column("created_at", Instant, nullable=False),
    Column("no_retake", Boolean, nullable=False),
    Column("no_retake_since", Day),
    Column("score", OneRecord(PassageScore)),
)
"""See :class:`app.journal.records.Passage`."""


SESSION_TABLE = Table(
    "session",
    METADATA,
    Column("id", String(ID_LENGTH), primary_key=True),
    Column("practice_day", Day, index=True, nullable=False),
    Column("started_at", Instant, nullable=False),
    Column("minutes", Number),
    Column("minutes_source", EnumText(MinutesSource)),
    Column("note", Text, nullable=False),
)
"""See :class:`app.journal.records.Session`."""


REST_DAY_TABLE = Table(
    "rest_day",
    METADATA,
    Column("practice_day", Day, primary_key=True),
    Column("planned", Boolean, nullable=False),
)
"""See :class:`app.journal.records.RestDay`."""


TAKE_TABLE = Table(
    "take",
    METADATA,
    Column("id", String(ID_LENGTH), primary_key=True),
    Column("session_id", ForeignKey("session.id"), index=True, nullable=False),
    Column("passage_id", ForeignKey("passage.id")),
    Column("practice_day", Day, nullable=False),
    Column("number", Integer, nullable=False),
    Column("recorded_at", Instant, nullable=False),
    Column("entered_at", Instant, nullable=False),
    Column("origin", EnumText(Origin), nullable=False),
    Column("file", Text, unique=True, nullable=False),
    Column("sha256", String(64), index=True, nullable=False),
    Column("duration_s", Number, nullable=False),
    Column("sample_rate_hz", Integer, nullable=False),
    Column("channels", Integer, nullable=False),
    Column("settings", SettingsText, nullable=False),
    Column("original_name", Text, nullable=False),
    Column("recorded_at_source", Text, nullable=False),
    Column("aim", Text, nullable=False),
    Column("aim_met", EnumText(AimMet)),
    Column("dropped_frames", Integer, nullable=False),
    Column("clipped_samples", Integer, nullable=False),
    Column("ended", Text, nullable=False),
    Column("deleted_at", Instant),
    Column("no_retake", Boolean, nullable=False),
    Column("retake_reason", Text, nullable=False),
    Column("input_device", Text, nullable=False),
    Column("peak_dbfs", Number),
    Column("quiet_dbfs", Number),
    Column("parts", RecordList(BarSpan), server_default="[]", nullable=False),
    Column("input_channel", Integer),
    CheckConstraint("number >= 1", name="number"),
    Index("ix_take_passage_id_practice_day_number", "passage_id", "practice_day", "number"),
    Index("ix_take_practice_day_recorded_at", "practice_day", "recorded_at"),
)
"""See :class:`app.journal.records.Take`."""


ITEM_TABLE = Table(
    "item",
    METADATA,
    Column("id", String(ID_LENGTH), primary_key=True),
    Column("kind", EnumText(ItemKind), nullable=False),
    Column("name", Text, nullable=False),
    Column("created_at", Instant, nullable=False),
    Column("passage_id", ForeignKey("passage.id")),
    Column("retired_at", Instant),
)
"""See :class:`app.journal.blocks.Item`."""


BLOCK_TABLE = Table(
    "block",
    METADATA,
    Column("id", String(ID_LENGTH), primary_key=True),
    Column("session_id", ForeignKey("session.id"), nullable=False),
    Column("item_id", ForeignKey("item.id"), index=True),
    Column("started_at", Instant, nullable=False),
    Column("ended_at", Instant, nullable=False),
    Index("ix_block_session_id_started_at", "session_id", "started_at"),
)
"""See :class:`app.journal.blocks.Block`."""


ATTEMPT_TABLE = Table(
    "attempt",
    METADATA,
    Column("id", String(ID_LENGTH), primary_key=True),
    Column("passage_id", ForeignKey("passage.id")),
    Column("practice_day", Day, nullable=False),
    Column("started_at", Instant, nullable=False),
    Column("duration_s", Number, nullable=False),
    Column("failure", Text, nullable=False),
    Index("ix_attempt_practice_day_passage_id", "practice_day", "passage_id"),
)
"""See :class:`app.journal.blocks.Attempt`."""


CLOCK_TABLE = Table(
    "clock",
    METADATA,
    Column("number", Integer, primary_key=True),
    Column("session_id", ForeignKey("session.id"), nullable=False),
    Column("block_id", String(ID_LENGTH), nullable=False),
    Column("item_id", ForeignKey("item.id")),
    Column("running", Boolean, nullable=False),
    Column("since", Instant, nullable=False),
    Column("touched_at", Instant, nullable=False),
    Column("seen_at", Instant),
    Column("unbroken_s", Number, nullable=False),
    Column("break_put_off_at", Instant),
    CheckConstraint("number = 1", name="number"),
)
"""See :class:`app.journal.blocks.ClockRecord`; at most one row, number 1."""


PUT_ASIDE_TABLE = Table(
    "put_aside",
    METADATA,
    Column("sha256", String(64), primary_key=True),
)
"""A clip of the watched folder that the player did not want, by its content."""


MARKER_TABLE = Table(
    "marker",
    METADATA,
    Column("id", String(ID_LENGTH), primary_key=True),
    Column("take_id", ForeignKey("take.id"), nullable=False),
    Column("start_s", Number, nullable=False),
    Column("end_s", Number),
    Column("category", Text, nullable=False),
    Column("weight", Integer, nullable=False),
    Column("text", Text, nullable=False),
    Column("author", EnumText(Author), nullable=False),
    Column("state", EnumText(MarkerState), nullable=False),
    Column("created_at", Instant, nullable=False),
    Column("changed_at", Instant, nullable=False),
    CheckConstraint("weight BETWEEN 1 AND 3", name="weight"),
    Index("ix_marker_take_id_start_s", "take_id", "start_s"),
    Index("ix_marker_weight_changed_at_id", "weight", "changed_at", "id"),
)
"""See :class:`app.journal.records.Marker`."""


SETTING_TABLE = Table(
    "setting",
    METADATA,
    Column("key", String(64), primary_key=True),
    Column("value", Text, nullable=False),
)
"""One of the journal's settings: its field name and its value as JSON."""


MEASUREMENT_TABLE = Table(
    "measurement",
    METADATA,
    Column("take_id", ForeignKey("take.id"), primary_key=True),
    Column("algorithm", Text, nullable=False),
    Column("measured_at", Instant, nullable=False),
    Column("stale", Boolean, nullable=False),
    Column("failure", Text, nullable=False),
    Column("headline", Text, nullable=False),
    Column("summary", LargeBinary, nullable=False),
)
"""See :class:`app.journal.records.StoredMeasurement`.

``headline`` repeats the summary without its lists: short enough to be read for
thousands of takes at once. ``summary`` is compressed.
"""


CURVES_TABLE = Table(
    "measurement_curves",
    METADATA,
    Column("take_id", ForeignKey("take.id"), primary_key=True),
    Column("curves", LargeBinary, nullable=False),
)
"""The arrays of a measurement, apart: they are large and can be made again."""


SIDECAR_DUE_TABLE = Table(
    "sidecar_due",
    METADATA,
    Column("kind", String(8), primary_key=True),
    Column("key", String(ID_LENGTH), primary_key=True),
)
"""A sidecar that does not yet say what the database says."""
