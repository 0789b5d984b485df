"""Items, blocks and attempts: what a session was spent on.

Plain frozen values, as in :mod:`app.journal.records`. A session is a list of blocks,
each a stretch of time on one item; minutes per item follow from them.
"""

from dataclasses import dataclass
from datetime import date, datetime

from app.journal.kinds import ItemKind


@dataclass(frozen=True, slots=True)
class Item:
    """What is practised, from the player's own list.

    Attributes
    ----------
    passage_id : str or None
        The passage this item stands for; its name is then the passage's own.
    retired_at : datetime or None
        Since when it is no longer offered; its blocks keep it.
    """

    id: str
    kind: ItemKind
    name: str
    created_at: datetime
    passage_id: str | None = None
    retired_at: datetime | None = None


@dataclass(frozen=True, slots=True)
class Block:
    """A stretch of a session spent on one item; ``item_id`` is ``None`` for no item."""

    id: str
    session_id: str
    item_id: str | None
    started_at: datetime
    ended_at: datetime


@dataclass(frozen=True, slots=True)
class Attempt:
    """A recording that was begun, kept or not.

    Attributes
    ----------
    id : str
        That of the take it became, if it was kept.
    duration_s : float
        Length of what was recorded; 0 until it has ended.
    failure : str
        What the device did, where that spoilt it, in one sentence.
    """

    id: str
    passage_id: str | None
    practice_day: date
    started_at: datetime
    duration_s: float = 0.0
    failure: str = ""


@dataclass(frozen=True, slots=True)
class ClockRecord:
    """The practice clock as it stands, kept at every change so that a crash loses nothing.

    Attributes
    ----------
    session_id, block_id : str
        The session it counts for, and the id of the block that is open or comes next.
    item_id : str or None
        What is being practised.
    running : bool
        False while it is paused.
    since : datetime
        When the open block began, or the pause.
    touched_at : datetime
        When the player last did something with the clock.
    seen_at : datetime or None
        When the program last said that it was alive; ``None`` where nothing has been
        watching since the last touch (the clock was started from the command line).
    unbroken_s : float
        Time played since the last break, before the open block.
    break_put_off_at : datetime or None
        When the player last put a suggested break off.
    """

    session_id: str
    block_id: str
    item_id: str | None
    running: bool
    since: datetime
    touched_at: datetime
    seen_at: datetime | None = None
    unbroken_s: float = 0.0
    break_put_off_at: datetime | None = None
