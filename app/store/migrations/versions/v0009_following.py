"""Following a passage: answers by ear, bounds, blind trials, alignments made once."""

import sqlalchemy as sa
from alembic import op

revision = "0009"
down_revision = "0008"
branch_labels = None
depends_on = None


def upgrade() -> None:
    _answers()
    _trials()
    _made_once()


def _answers() -> None:
    op.create_table(
        "still_there",
        sa.Column("id", sa.String(32), nullable=False),
        sa.Column("marker_id", sa.String(32), nullable=False),
        sa.Column("take_id", sa.String(32), nullable=False),
        sa.Column("is_there", sa.Boolean(), nullable=False),
        sa.Column("answered_at", sa.String(40), nullable=False),
        sa.ForeignKeyConstraint(["take_id"], ["take.id"], name="fk_still_there_take_id"),
        sa.PrimaryKeyConstraint("id", name="pk_still_there"),
    )
    op.create_index("ix_still_there_marker_id_take_id", "still_there", ["marker_id", "take_id"])
    op.create_table(
        "passage_bounds",
        sa.Column("id", sa.String(32), nullable=False),
        sa.Column("mean_absolute_cents", sa.Float(), nullable=False),
        sa.Column("steadiness_cv_percent", sa.Float(), nullable=False),
        sa.Column("changed_at", sa.String(40), nullable=False),
        sa.Column("target_bpm", sa.Float(), nullable=True),
        sa.Column("step_bpm", sa.Float(), nullable=False),
        sa.Column("is_rubato", sa.Boolean(), nullable=False),
        sa.ForeignKeyConstraint(["id"], ["passage.id"], name="fk_passage_bounds_id"),
        sa.PrimaryKeyConstraint("id", name="pk_passage_bounds"),
    )


def _trials() -> None:
    op.create_table(
        "blind_trial",
        sa.Column("id", sa.String(32), nullable=False),
        sa.Column("passage_id", sa.String(32), nullable=False),
        sa.Column("question", sa.String(16), nullable=False),
        sa.Column("first_take_id", sa.String(32), nullable=False),
        sa.Column("second_take_id", sa.String(32), nullable=False),
        sa.Column("seed", sa.Integer(), nullable=False),
        sa.Column("asked_at", sa.String(40), nullable=False),
        sa.Column("choice", sa.String(16), nullable=True),
        sa.Column("answered_at", sa.String(40), nullable=True),
        sa.ForeignKeyConstraint(["passage_id"], ["passage.id"], name="fk_blind_trial_passage_id"),
        sa.ForeignKeyConstraint(
            ["first_take_id"], ["take.id"], name="fk_blind_trial_first_take_id"
        ),
        sa.ForeignKeyConstraint(
            ["second_take_id"], ["take.id"], name="fk_blind_trial_second_take_id"
        ),
        sa.PrimaryKeyConstraint("id", name="pk_blind_trial"),
    )
    op.create_index("ix_blind_trial_passage_id_asked_at", "blind_trial", ["passage_id", "asked_at"])


def _made_once() -> None:
    op.create_table(
        "pair_alignment",
        sa.Column("take_a", sa.String(32), nullable=False),
        sa.Column("take_b", sa.String(32), nullable=False),
        sa.Column("made_from", sa.Text(), nullable=False),
        sa.Column("reason", sa.Text(), nullable=False),
        sa.Column("sentence", sa.Text(), nullable=False),
        sa.Column("block", sa.LargeBinary(), nullable=False),
        sa.ForeignKeyConstraint(["take_a"], ["take.id"], name="fk_pair_alignment_take_a"),
        sa.ForeignKeyConstraint(["take_b"], ["take.id"], name="fk_pair_alignment_take_b"),
        sa.PrimaryKeyConstraint("take_a", "take_b", name="pk_pair_alignment"),
    )
    op.create_table(
        "take_outline",
        sa.Column("take_id", sa.String(32), nullable=False),
        sa.Column("made_from", sa.Text(), nullable=False),
        sa.Column("block", sa.LargeBinary(), nullable=False),
        sa.ForeignKeyConstraint(["take_id"], ["take.id"], name="fk_take_outline_take_id"),
        sa.PrimaryKeyConstraint("take_id", name="pk_take_outline"),
    )
