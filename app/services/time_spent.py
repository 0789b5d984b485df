"""Minutes and takes by what they were for, day by day."""

from collections import defaultdict
from collections.abc import Mapping
from datetime import date

from app.journal.blocks import Block
from app.journal.practice_clock import covered_minutes
from app.store.store import Store

MinutesOfDays = Mapping[date, float]


def minutes_by_target(store: Store, first_day: date, last_day: date) -> dict[str, MinutesOfDays]:
    """Give the minutes of each item and each passage on each practice day.

    Keys are the ids of items and of passages; time that two blocks cover counts once.
    Only what the clock knows: typed minutes belong to nothing.
    """
    blocks = store.blocks.of_days(first_day, last_day)
    sessions = store.sessions.of_ids({block.session_id for block in blocks})
    passage_of = {item.id: item.passage_id for item in store.items.list()}
    gathered: dict[str, dict[date, list[Block]]] = defaultdict(lambda: defaultdict(list))
    for block in blocks:
        day = sessions[block.session_id].practice_day
        for target in (block.item_id, passage_of.get(block.item_id or "")):
            if target is not None:
                gathered[target][day].append(block)
    return {
        target: {day: covered_minutes(some) for day, some in days.items()}
        for target, days in gathered.items()
    }


def takes_by_passage(
    store: Store, first_day: date, last_day: date
) -> dict[str, Mapping[date, int]]:
    """Count the takes of each passage on each practice day."""
    counts: dict[str, dict[date, int]] = defaultdict(lambda: defaultdict(int))
    for take in store.takes.list(first_day=first_day, last_day=last_day):
        if take.passage_id is not None:
            counts[take.passage_id][take.practice_day] += 1
    return {passage_id: dict(days) for passage_id, days in counts.items()}
