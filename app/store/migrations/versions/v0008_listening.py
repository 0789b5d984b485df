"""What was decided while listening back."""

import sqlalchemy as sa
from alembic import op

revision = "0008"
down_revision = "0005"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "dismissal",
        sa.Column("id", sa.String(32), nullable=False),
        sa.Column("passage_id", sa.String(32), nullable=True),
        sa.Column("take_id", sa.String(32), nullable=False),
        sa.Column("kind", sa.String(16), nullable=False),
        sa.Column("subject", sa.Text(), nullable=False),
        sa.Column("start_part", sa.Float(), nullable=False),
        sa.Column("end_part", sa.Float(), nullable=False),
        sa.Column("dismissed_at", sa.String(40), nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_dismissal"),
    )
    op.create_index("ix_dismissal_passage_id", "dismissal", ["passage_id"])
    op.create_index("ix_dismissal_take_id", "dismissal", ["take_id"])
    op.create_table(
        "first_listen",
        sa.Column("take_id", sa.String(32), nullable=False),
        sa.Column("began_at", sa.String(40), nullable=False),
        sa.Column("shown_at", sa.String(40), nullable=False),
        sa.PrimaryKeyConstraint("take_id", name="pk_first_listen"),
    )
