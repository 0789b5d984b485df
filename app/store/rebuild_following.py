"""Write back what the journal's card holds about passages that are followed."""

from sqlalchemy import Connection, delete

from app.journal.sidecar import JournalCard
from app.store.following_models import BLIND_TRIAL_TABLE, PASSAGE_BOUNDS_TABLE, STILL_THERE_TABLE
from app.store.upserting import upsert
from app.store.work import values_of


def write_followed(
    connection: Connection, card: JournalCard, passages: set[str], takes: set[str]
) -> None:
    """Write what was heard of marked problems, the bounds, and blind trials."""
    connection.execute(delete(STILL_THERE_TABLE))
    answers = (answer for answer in card.still_there if answer.take_id in takes)
    upsert(connection, STILL_THERE_TABLE, map(values_of, answers))
    bounds = (one for one in card.bounds if one.id in passages)
    upsert(connection, PASSAGE_BOUNDS_TABLE, map(values_of, bounds))
    trials = (
        trial
        for trial in card.blind_trials
        if trial.passage_id in passages and {trial.first_take_id, trial.second_take_id} <= takes
    )
    upsert(connection, BLIND_TRIAL_TABLE, map(values_of, trials))
