"""Audition rehearsals."""

import sqlalchemy as sa
from alembic import op

revision = "0005"
down_revision = "0004"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "rehearsal",
        sa.Column("id", sa.String(32), nullable=False),
        sa.Column("practice_day", sa.Date(), nullable=False),
        sa.Column("started_at", sa.String(40), nullable=False),
        sa.Column("chances", sa.Text(), nullable=False),
        sa.Column("drawn", sa.Boolean(), nullable=False),
        sa.Column("ended_at", sa.String(40), nullable=True),
        sa.PrimaryKeyConstraint("id", name="pk_rehearsal"),
    )
