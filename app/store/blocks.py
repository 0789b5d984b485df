"""The blocks of a journal's sessions, and the clock that makes them."""

from collections.abc import Iterable, Mapping
from dataclasses import fields
from datetime import date, datetime

from sqlalchemy import delete, func, insert, select

from app.journal.blocks import Block, ClockRecord
from app.store.models import BLOCK_TABLE, CLOCK_TABLE, SESSION_TABLE
from app.store.work import Work, chunks, pairs, values_of

_BLOCK = BLOCK_TABLE.c
_SESSION = SESSION_TABLE.c
_CLOCK_FIELDS = tuple(field.name for field in fields(ClockRecord))


class BlockRepository:
    """Blocks in and out of the database."""

    def __init__(self, work: Work) -> None:
        self._work = work

    def add(self, block: Block) -> None:
        """Keep a new block; its session and item must be there."""
        with self._work.connection() as connection:
            connection.execute(insert(BLOCK_TABLE), values_of(block))
            self._touch_day_of(block.session_id)

    def of_session(self, session_id: str) -> tuple[Block, ...]:
        """List the blocks of a session in order."""
        return self.of_sessions((session_id,)).get(session_id, ())

    def of_sessions(self, session_ids: Iterable[str]) -> Mapping[str, tuple[Block, ...]]:
        """List the blocks of sessions in order, in one go; a session without is left out."""
        found: dict[str, tuple[Block, ...]] = {}
        with self._work.connection() as connection:
            for some in chunks(session_ids):
                wanted = (
                    select(BLOCK_TABLE)
                    .where(_BLOCK.session_id.in_(some))
                    .order_by(_BLOCK.started_at, _BLOCK.id)
                )
                for row in connection.execute(wanted):
                    block = Block(**row._mapping)
                    found[block.session_id] = (*found.get(block.session_id, ()), block)
        return found

    def of_days(self, first_day: date, last_day: date) -> tuple[Block, ...]:
        """List the blocks of practice days in order, both ends included."""
        wanted = (
            select(BLOCK_TABLE)
            .join(SESSION_TABLE, _SESSION.id == _BLOCK.session_id)
            .where(_SESSION.practice_day.between(first_day, last_day))
            .order_by(_BLOCK.started_at, _BLOCK.id)
        )
        with self._work.connection() as connection:
            return tuple(Block(**row._mapping) for row in connection.execute(wanted))

    def last_use_of_items(self) -> Mapping[str, datetime]:
        """Give when each item was last practised."""
        last = (
            select(_BLOCK.item_id, func.max(_BLOCK.ended_at))
            .where(_BLOCK.item_id.is_not(None))
            .group_by(_BLOCK.item_id)
        )
        with self._work.connection() as connection:
            return pairs(connection.execute(last))

    def _touch_day_of(self, session_id: str) -> None:
        wanted = select(_SESSION.practice_day).where(_SESSION.id == session_id)
        with self._work.connection() as connection:
            self._work.touch_day(connection.execute(wanted).scalar_one())


class ClockRepository:
    """The practice clock in and out of the database; there is one, or none."""

    def __init__(self, work: Work) -> None:
        self._work = work

    def get(self) -> ClockRecord | None:
        """Give the clock; ``None`` where none was started."""
        columns = [CLOCK_TABLE.c[name] for name in _CLOCK_FIELDS]
        with self._work.connection() as connection:
            row = connection.execute(select(*columns)).one_or_none()
        return None if row is None else ClockRecord(**row._mapping)

    def put(self, clock: ClockRecord | None) -> None:
        """Keep the clock as it stands now; ``None`` once it is stopped."""
        with self._work.connection() as connection:
            connection.execute(delete(CLOCK_TABLE))
            if clock is not None:
                connection.execute(insert(CLOCK_TABLE), {"number": 1, **values_of(clock)})
