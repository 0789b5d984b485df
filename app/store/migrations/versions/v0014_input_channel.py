"""The channel of the input that a take was recorded from."""

import sqlalchemy as sa
from alembic import op

revision = "0014"
down_revision = "0013"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.add_column("take", sa.Column("input_channel", sa.Integer(), nullable=True))
