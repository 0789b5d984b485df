"""A copy of the practice clock beside the database, for when the database is lost.

``<journal>/clock.json`` says what the database says of the clock, and since when. It is
believed where the database knows nothing of a clock, or is older, as after a rebuild or
from a backup: the clock runs on, or is stopped. What was open is asked about like any
clock that was forgotten, and nothing counts that the database has as a block already.
"""

import json
from contextlib import suppress
from dataclasses import dataclass, replace
from datetime import datetime
from pathlib import Path

from app.journal.blocks import ClockRecord
from app.journal.codec import decoded, encoded
from app.journal.failures import PlainFailure
from app.journal.practice_clock import is_later
from app.journal.practice_days import Clock
from app.journal.records import Session
from app.store.folders import write_atomically
from app.store.store import Store

NAME = "clock.json"


@dataclass(frozen=True, slots=True)
class _Note:
    """What the copy says: since when, which clock, counting for which session."""

    written_at: datetime
    clock: ClockRecord | None = None
    session: Session | None = None


class ClockNote:
    """Keeps the copy, and believes it where the database is older."""

    def __init__(self, store: Store, clock: Clock) -> None:
        self._store = store
        self._now = clock
        self._path: Path = store.folders.journal / NAME
        self._written: ClockRecord | None = None

    def follow(self, clock: ClockRecord | None) -> None:
        """Say what the database says of the clock now.

        A disk that refuses the copy has refused nothing that counts: the clock is in the
        database.
        """
        if self._store.read_only or clock == self._written:
            return
        session = self._store.sessions.get(clock.session_id) if clock else None
        note = {
            "written_at": self._now().isoformat(),
            "clock": encoded(clock) if clock else None,
            "session": encoded(session) if session else None,
        }
        with suppress(OSError, PlainFailure):
            write_atomically(self._path, json.dumps(note, ensure_ascii=False, indent=2))
            self._written = clock

    def take_up(self) -> None:
        """Put what the copy says into a database that is older, or has lost its clock."""
        note = None if self._store.read_only else self._read()
        if note is None:
            return
        self._written = note.clock
        with self._store.transaction():
            known = self._store.clock.get()
            if known is None:
                if note.clock is not None and note.session is not None:
                    self._put_back(note.clock, note.session)
            elif is_later(note.written_at, _last_change(known)) and not _is_same(known, note.clock):
                self._store.clock.put(None)
                if note.clock is not None and note.session is not None:
                    self._put_back(note.clock, note.session)

    def _put_back(self, clock: ClockRecord, session: Session) -> None:
        if self._store.sessions.get(clock.session_id) is None:
            self._store.sessions.add(session)
        blocks = self._store.blocks.of_session(clock.session_id)
        if any(is_later(block.ended_at, clock.since) for block in blocks):
            return  # what was open has become a block since: the copy is the older one
        if clock.item_id is not None and self._store.items.get(clock.item_id) is None:
            clock = replace(clock, item_id=None)
        self._store.clock.put(clock)

    def _read(self) -> _Note | None:
        try:
            return decoded(_Note, json.loads(self._path.read_text(encoding="utf-8")))
        except (OSError, ValueError):
            return None


def _last_change(clock: ClockRecord) -> datetime:
    times = (clock.since, clock.touched_at, clock.seen_at or clock.touched_at)
    return max(times, key=lambda time: time.timestamp())


def _is_same(clock: ClockRecord, other: ClockRecord | None) -> bool:
    """Tell whether two records are of one clock in one state."""
    return other is not None and (clock.block_id, clock.running, clock.item_id) == (
        other.block_id,
        other.running,
        other.item_id,
    )
