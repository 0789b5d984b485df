"""Measurements, their curves apart, and the sidecars still to be written."""

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "measurement",
        sa.Column("take_id", sa.String(32), nullable=False),
        sa.Column("algorithm", sa.Text(), nullable=False),
        sa.Column("measured_at", sa.String(40), nullable=False),
        sa.Column("stale", sa.Boolean(), nullable=False),
        sa.Column("failure", sa.Text(), nullable=False),
        sa.Column("headline", sa.Text(), nullable=False),
        sa.Column("summary", sa.LargeBinary(), nullable=False),
        sa.ForeignKeyConstraint(["take_id"], ["take.id"], name="fk_measurement_take_id"),
        sa.PrimaryKeyConstraint("take_id", name="pk_measurement"),
    )
    op.create_table(
        "measurement_curves",
        sa.Column("take_id", sa.String(32), nullable=False),
        sa.Column("curves", sa.LargeBinary(), nullable=False),
        sa.ForeignKeyConstraint(["take_id"], ["take.id"], name="fk_measurement_curves_take_id"),
        sa.PrimaryKeyConstraint("take_id", name="pk_measurement_curves"),
    )
    op.create_table(
        "sidecar_due",
        sa.Column("kind", sa.String(8), nullable=False),
        sa.Column("key", sa.String(32), nullable=False),
        sa.PrimaryKeyConstraint("kind", "key", name="pk_sidecar_due"),
    )
