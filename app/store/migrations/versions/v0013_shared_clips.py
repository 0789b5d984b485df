"""Clips that were made to be shared."""

import sqlalchemy as sa
from alembic import op

revision = "0013"
down_revision = "0012"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "shared_clip",
        sa.Column("id", sa.String(32), nullable=False),
        sa.Column("take_id", sa.String(32), nullable=False),
        sa.Column("practice_day", sa.Date(), nullable=False),
        sa.Column("shared_at", sa.String(40), nullable=False),
        sa.Column("start_s", sa.Float(), nullable=False),
        sa.Column("end_s", sa.Float(), nullable=False),
        sa.Column("form", sa.Text(), nullable=False),
        sa.Column("file_name", sa.Text(), nullable=False),
        sa.Column("numbers", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(["take_id"], ["take.id"], name="fk_shared_clip_take_id"),
        sa.PrimaryKeyConstraint("id", name="pk_shared_clip"),
    )
