"""Remarks of lessons."""

import sqlalchemy as sa
from alembic import op

revision = "0012"
down_revision = "0010"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "lesson_remark",
        sa.Column("id", sa.String(32), nullable=False),
        sa.Column("lesson_day", sa.Date(), nullable=False),
        sa.Column("first_day", sa.Date(), nullable=False),
        sa.Column("last_day", sa.Date(), nullable=False),
        sa.Column("text", sa.Text(), nullable=False),
        sa.Column("created_at", sa.String(40), nullable=False),
        sa.Column("changed_at", sa.String(40), nullable=False),
        sa.Column("author", sa.String(16), nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_lesson_remark"),
    )
