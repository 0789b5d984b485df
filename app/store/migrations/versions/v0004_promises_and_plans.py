"""Promises, shared numbers, assignments, coming dates, earlier hours, plans."""

import sqlalchemy as sa
from alembic import op

revision = "0004"
down_revision = "0003"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "promise",
        sa.Column("id", sa.String(32), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("start", sa.Date(), nullable=False),
        sa.Column("rules", sa.Text(), nullable=False),
        sa.Column("created_at", sa.String(40), nullable=False),
        sa.Column("breaks", sa.Text(), nullable=False),
        sa.Column("closed_on", sa.Date(), nullable=True),
        sa.PrimaryKeyConstraint("id", name="pk_promise"),
    )
    op.create_table(
        "shared_number",
        sa.Column("id", sa.String(32), nullable=False),
        sa.Column("promise_id", sa.String(32), nullable=False),
        sa.Column("practice_day", sa.Date(), nullable=False),
        sa.Column("day_number", sa.Integer(), nullable=False),
        sa.Column("days_kept", sa.Integer(), nullable=False),
        sa.Column("shared_at", sa.String(40), nullable=False),
        sa.Column("take_id", sa.String(32), nullable=True),
        sa.ForeignKeyConstraint(["promise_id"], ["promise.id"], name="fk_shared_number_promise_id"),
        sa.ForeignKeyConstraint(["take_id"], ["take.id"], name="fk_shared_number_take_id"),
        sa.PrimaryKeyConstraint("id", name="pk_shared_number"),
    )
    op.create_index(
        "ix_shared_number_promise_id_practice_day", "shared_number", ["promise_id", "practice_day"]
    )
    _create_assignments()
    op.create_table(
        "practice_plan",
        sa.Column("practice_day", sa.Date(), nullable=False),
        sa.Column("minutes_available", sa.Integer(), nullable=False),
        sa.Column("made_at", sa.String(40), nullable=False),
        sa.Column("lines", sa.Text(), nullable=False),
        sa.Column("break_minutes", sa.Integer(), nullable=False),
        sa.PrimaryKeyConstraint("practice_day", name="pk_practice_plan"),
    )


def _create_assignments() -> None:
    op.create_table(
        "assignment",
        sa.Column("id", sa.String(32), nullable=False),
        sa.Column("set_on", sa.Date(), nullable=False),
        sa.Column("due_on", sa.Date(), nullable=False),
        sa.Column("goal", sa.Text(), nullable=False),
        sa.Column("created_at", sa.String(40), nullable=False),
        sa.Column("author", sa.String(16), nullable=False),
        sa.Column("minutes", sa.Integer(), nullable=True),
        sa.Column("item_id", sa.String(32), nullable=True),
        sa.Column("passage_id", sa.String(32), nullable=True),
        sa.Column("done_on", sa.Date(), nullable=True),
        sa.ForeignKeyConstraint(["item_id"], ["item.id"], name="fk_assignment_item_id"),
        sa.ForeignKeyConstraint(["passage_id"], ["passage.id"], name="fk_assignment_passage_id"),
        sa.PrimaryKeyConstraint("id", name="pk_assignment"),
    )
    op.create_index("ix_assignment_due_on", "assignment", ["due_on"])
    op.create_table(
        "occasion",
        sa.Column("id", sa.String(32), nullable=False),
        sa.Column("day", sa.Date(), nullable=False),
        sa.Column("kind", sa.String(16), nullable=False),
        sa.Column("created_at", sa.String(40), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("passage_ids", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_occasion"),
    )
    op.create_index("ix_occasion_day", "occasion", ["day"])
    op.create_table(
        "earlier_hours",
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("hours", sa.Float(), nullable=False),
        sa.Column("until", sa.Date(), nullable=True),
        sa.Column("note", sa.Text(), nullable=False),
        sa.CheckConstraint("number = 1", name=op.f("ck_earlier_hours_number")),
        sa.PrimaryKeyConstraint("number", name="pk_earlier_hours"),
    )
