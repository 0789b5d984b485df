"""What the demo's violist spent each day on, and how often she recorded."""

import uuid
from collections.abc import Sequence
from dataclasses import replace
from datetime import date, datetime, timedelta
from typing import TYPE_CHECKING

from app.journal.blocks import Attempt, Block, Item
from app.journal.kinds import ItemKind
from app.journal.records import Passage, Session, Take
from app.store.store import Store

if TYPE_CHECKING:
    from sample_audio.scenario import DemoBlock

_PAUSE = timedelta(minutes=2)
_KINDS = {
    "G minor scale": ItemKind.SCALE,
    "Study in G minor": ItemKind.STUDY,
    "Orchestra part": ItemKind.ENSEMBLE,
}


def without_retakes(store: Store, passage: Passage, since: date) -> Passage:
    """Let a passage be recorded once a day from its first day on."""
    ruled = replace(passage, no_retake=True, no_retake_since=since)
    store.passages.replace(ruled)
    return ruled


class Sittings:
    """Keeps the blocks and attempts of the demo's days."""

    def __init__(self, store: Store) -> None:
        self._store = store
        self._items: dict[str, Item] = {}

    def length(self, blocks: "Sequence[DemoBlock]") -> timedelta:
        """Give how long a day's blocks take, pauses between them included."""
        played = sum((timedelta(minutes=block.minutes) for block in blocks), timedelta(0))
        return played + _PAUSE * max(0, len(blocks) - 1)

    def keep(self, session: Session, blocks: "Sequence[DemoBlock]") -> None:
        """Keep the blocks of a session, one after the other from its start."""
        at = session.started_at
        for block in blocks:
            end = at + timedelta(minutes=block.minutes)
            item = self._item(block.item, at)
            self._store.blocks.add(Block(uuid.uuid4().hex, session.id, item.id, at, end))
            at = end + _PAUSE

    def attempts(self, take: Take, discarded: int) -> None:
        """Keep that a take was recorded, after so many attempts that were thrown away."""
        for before in range(discarded, 0, -1):
            started = take.recorded_at - before * timedelta(seconds=take.duration_s + 20)
            self._keep_attempt(uuid.uuid4().hex, take, started)
        self._keep_attempt(take.id, take, take.recorded_at)

    def _keep_attempt(self, attempt_id: str, take: Take, started: datetime) -> None:
        self._store.attempts.put(
            Attempt(attempt_id, take.passage_id, take.practice_day, started, take.duration_s)
        )

    def _item(self, name: str, at: datetime) -> Item:
        if name not in self._items:
            item = Item(uuid.uuid4().hex, _KINDS.get(name, ItemKind.OTHER), name, at)
            self._store.items.add(item)
            self._items[name] = item
        return self._items[name]
