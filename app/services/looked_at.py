"""How many passages a journal gives verdicts about: all share one allowance of false ones."""

from datetime import date

from app.store.store import Store

FEWEST_DAYS = 8
"""Practice days from which on a passage can have a verdict: four a side."""


def passages_looked_at(store: Store, passage_id: str) -> int:
    """Count the passages that have days enough for a verdict, this one always."""
    days: dict[str, set[date]] = {passage_id: set()}
    for take in store.takes.list():
        if take.passage_id is not None:
            days.setdefault(take.passage_id, set()).add(take.practice_day)
    return sum(len(found) >= FEWEST_DAYS or one == passage_id for one, found in days.items())
