"""Passages, sessions, rest days, takes, markers, settings."""

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "passage",
        sa.Column("id", sa.String(32), nullable=False),
        sa.Column("piece", sa.Text(), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("bars", sa.Text(), nullable=False),
        sa.Column("settings", sa.Text(), nullable=False),
        sa.Column("created_at", sa.String(40), nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_passage"),
    )
    op.create_table(
        "session",
        sa.Column("id", sa.String(32), nullable=False),
        sa.Column("practice_day", sa.Date(), nullable=False),
        sa.Column("started_at", sa.String(40), nullable=False),
        sa.Column("minutes", sa.Float(), nullable=True),
        sa.Column("minutes_source", sa.String(16), nullable=True),
        sa.Column("note", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_session"),
    )
    op.create_index("ix_session_practice_day", "session", ["practice_day"])
    op.create_table(
        "rest_day",
        sa.Column("practice_day", sa.Date(), nullable=False),
        sa.Column("planned", sa.Boolean(), nullable=False),
        sa.PrimaryKeyConstraint("practice_day", name="pk_rest_day"),
    )
    _create_take()
    _create_marker()
    op.create_table(
        "setting",
        sa.Column("key", sa.String(64), nullable=False),
        sa.Column("value", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("key", name="pk_setting"),
    )


def _create_take() -> None:
    op.create_table(
        "take",
        sa.Column("id", sa.String(32), nullable=False),
        sa.Column("session_id", sa.String(32), nullable=False),
        sa.Column("passage_id", sa.String(32), nullable=True),
        sa.Column("practice_day", sa.Date(), nullable=False),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("recorded_at", sa.String(40), nullable=False),
        sa.Column("entered_at", sa.String(40), nullable=False),
        sa.Column("origin", sa.String(16), nullable=False),
        sa.Column("file", sa.Text(), nullable=False),
        sa.Column("sha256", sa.String(64), nullable=False),
        sa.Column("duration_s", sa.Float(), nullable=False),
        sa.Column("sample_rate_hz", sa.Integer(), nullable=False),
        sa.Column("channels", sa.Integer(), nullable=False),
        sa.Column("settings", sa.Text(), nullable=False),
        sa.Column("original_name", sa.Text(), nullable=False),
        sa.Column("recorded_at_source", sa.Text(), nullable=False),
        sa.Column("aim", sa.Text(), nullable=False),
        sa.Column("aim_met", sa.String(16), nullable=True),
        sa.Column("dropped_frames", sa.Integer(), nullable=False),
        sa.Column("clipped_samples", sa.Integer(), nullable=False),
        sa.Column("ended", sa.Text(), nullable=False),
        sa.Column("deleted_at", sa.String(40), nullable=True),
        sa.CheckConstraint("number >= 1", name=op.f("ck_take_number")),
        sa.ForeignKeyConstraint(["session_id"], ["session.id"], name="fk_take_session_id"),
        sa.ForeignKeyConstraint(["passage_id"], ["passage.id"], name="fk_take_passage_id"),
        sa.PrimaryKeyConstraint("id", name="pk_take"),
        sa.UniqueConstraint("file", name="uq_take_file"),
    )
    op.create_index("ix_take_session_id", "take", ["session_id"])
    op.create_index("ix_take_sha256", "take", ["sha256"])
    op.create_index(
        "ix_take_passage_id_practice_day_number", "take", ["passage_id", "practice_day", "number"]
    )
    op.create_index("ix_take_practice_day_recorded_at", "take", ["practice_day", "recorded_at"])


def _create_marker() -> None:
    op.create_table(
        "marker",
        sa.Column("id", sa.String(32), nullable=False),
        sa.Column("take_id", sa.String(32), nullable=False),
        sa.Column("start_s", sa.Float(), nullable=False),
        sa.Column("end_s", sa.Float(), nullable=True),
        sa.Column("category", sa.Text(), nullable=False),
        sa.Column("weight", sa.Integer(), nullable=False),
        sa.Column("text", sa.Text(), nullable=False),
        sa.Column("author", sa.String(16), nullable=False),
        sa.Column("state", sa.String(16), nullable=False),
        sa.Column("created_at", sa.String(40), nullable=False),
        sa.Column("changed_at", sa.String(40), nullable=False),
        sa.CheckConstraint("weight BETWEEN 1 AND 3", name=op.f("ck_marker_weight")),
        sa.ForeignKeyConstraint(["take_id"], ["take.id"], name="fk_marker_take_id"),
        sa.PrimaryKeyConstraint("id", name="pk_marker"),
    )
    op.create_index("ix_marker_take_id_start_s", "marker", ["take_id", "start_s"])
    op.create_index("ix_marker_weight_changed_at_id", "marker", ["weight", "changed_at", "id"])
