"""Items, blocks, the running clock, attempts; no-retake; the input of a take."""

import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0002"
branch_labels = None
depends_on = None


def upgrade() -> None:
    _extend_passage()
    _extend_take()
    op.create_table(
        "item",
        sa.Column("id", sa.String(32), nullable=False),
        sa.Column("kind", sa.String(16), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("created_at", sa.String(40), nullable=False),
        sa.Column("passage_id", sa.String(32), nullable=True),
        sa.Column("retired_at", sa.String(40), nullable=True),
        sa.ForeignKeyConstraint(["passage_id"], ["passage.id"], name="fk_item_passage_id"),
        sa.PrimaryKeyConstraint("id", name="pk_item"),
    )
    op.create_table(
        "block",
        sa.Column("id", sa.String(32), nullable=False),
        sa.Column("session_id", sa.String(32), nullable=False),
        sa.Column("item_id", sa.String(32), nullable=True),
        sa.Column("started_at", sa.String(40), nullable=False),
        sa.Column("ended_at", sa.String(40), nullable=False),
        sa.ForeignKeyConstraint(["session_id"], ["session.id"], name="fk_block_session_id"),
        sa.ForeignKeyConstraint(["item_id"], ["item.id"], name="fk_block_item_id"),
        sa.PrimaryKeyConstraint("id", name="pk_block"),
    )
    op.create_index("ix_block_session_id_started_at", "block", ["session_id", "started_at"])
    op.create_index("ix_block_item_id", "block", ["item_id"])
    _create_attempt_and_clock()
    op.create_table(
        "put_aside",
        sa.Column("sha256", sa.String(64), nullable=False),
        sa.PrimaryKeyConstraint("sha256", name="pk_put_aside"),
    )


def _create_attempt_and_clock() -> None:
    op.create_table(
        "attempt",
        sa.Column("id", sa.String(32), nullable=False),
        sa.Column("passage_id", sa.String(32), nullable=True),
        sa.Column("practice_day", sa.Date(), nullable=False),
        sa.Column("started_at", sa.String(40), nullable=False),
        sa.Column("duration_s", sa.Float(), nullable=False),
        sa.Column("failure", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(["passage_id"], ["passage.id"], name="fk_attempt_passage_id"),
        sa.PrimaryKeyConstraint("id", name="pk_attempt"),
    )
    op.create_index("ix_attempt_practice_day_passage_id", "attempt", ["practice_day", "passage_id"])
    op.create_table(
        "clock",
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("session_id", sa.String(32), nullable=False),
        sa.Column("block_id", sa.String(32), nullable=False),
        sa.Column("item_id", sa.String(32), nullable=True),
        sa.Column("running", sa.Boolean(), nullable=False),
        sa.Column("since", sa.String(40), nullable=False),
        sa.Column("touched_at", sa.String(40), nullable=False),
        sa.Column("seen_at", sa.String(40), nullable=True),
        sa.Column("unbroken_s", sa.Float(), nullable=False),
        sa.Column("break_put_off_at", sa.String(40), nullable=True),
        sa.CheckConstraint("number = 1", name=op.f("ck_clock_number")),
        sa.ForeignKeyConstraint(["session_id"], ["session.id"], name="fk_clock_session_id"),
        sa.ForeignKeyConstraint(["item_id"], ["item.id"], name="fk_clock_item_id"),
        sa.PrimaryKeyConstraint("number", name="pk_clock"),
    )


# A column that must not be empty cannot simply be added in SQLite, so both tables are copied.
def _extend_passage() -> None:
    op.create_table(
        "new_passage",
        sa.Column("id", sa.String(32), nullable=False),
        sa.Column("piece", sa.Text(), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("bars", sa.Text(), nullable=False),
        sa.Column("settings", sa.Text(), nullable=False),
        sa.Column("created_at", sa.String(40), nullable=False),
        sa.Column("no_retake", sa.Boolean(), nullable=False),
        sa.Column("no_retake_since", sa.Date(), nullable=True),
        sa.PrimaryKeyConstraint("id", name="pk_passage"),
    )
    op.execute("INSERT INTO new_passage SELECT passage.*, 0, NULL FROM passage")
    op.drop_table("passage")
    op.rename_table("new_passage", "passage")


def _extend_take() -> None:
    op.create_table(
        "new_take",
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
        sa.Column("no_retake", sa.Boolean(), nullable=False),
        sa.Column("retake_reason", sa.Text(), nullable=False),
        sa.Column("input_device", sa.Text(), nullable=False),
        sa.Column("peak_dbfs", sa.Float(), nullable=True),
        sa.Column("quiet_dbfs", sa.Float(), nullable=True),
        sa.CheckConstraint("number >= 1", name=op.f("ck_take_number")),
        sa.ForeignKeyConstraint(["session_id"], ["session.id"], name="fk_take_session_id"),
        sa.ForeignKeyConstraint(["passage_id"], ["passage.id"], name="fk_take_passage_id"),
        sa.PrimaryKeyConstraint("id", name="pk_take"),
        sa.UniqueConstraint("file", name="uq_take_file"),
    )
    op.execute("INSERT INTO new_take SELECT take.*, 0, '', '', NULL, NULL FROM take")
    op.drop_table("take")
    op.rename_table("new_take", "take")
    op.create_index("ix_take_session_id", "take", ["session_id"])
    op.create_index("ix_take_sha256", "take", ["sha256"])
    op.create_index(
        "ix_take_passage_id_practice_day_number", "take", ["passage_id", "practice_day", "number"]
    )
    op.create_index("ix_take_practice_day_recorded_at", "take", ["practice_day", "recorded_at"])
