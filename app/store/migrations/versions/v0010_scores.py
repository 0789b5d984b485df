"""The score of a passage, and the bars of it that a take holds."""

import sqlalchemy as sa
from alembic import op

revision = "0010"
down_revision = "0009"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.add_column("passage", sa.Column("score", sa.Text(), nullable=True))
    op.add_column("take", sa.Column("parts", sa.Text(), nullable=False, server_default="[]"))
