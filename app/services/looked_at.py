"""How many passages a journal gives verdicts about: all share one allowance of false ones."""

from collections.abc import Mapping

FEWEST_DAYS = 8
"""Practice days from which on a passage can have a verdict: four a side."""


def passages_looked_at(day_counts: Mapping[str, int], passage_id: str) -> int:
    """Count the passages that have days enough for a verdict, this one always.

    Parameters
    ----------
    day_counts : mapping
        Practice days with a take, by passage
        (:meth:`app.store.takes.TakeRepository.day_counts_of_passages`).
    passage_id : str
    """
    others = (count for one, count in day_counts.items() if one != passage_id)
    return 1 + sum(count >= FEWEST_DAYS for count in others)
