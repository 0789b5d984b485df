"""Everything a journal says, as plain records: read from sidecars, merged, written again."""

from dataclasses import dataclass, field
from datetime import date

from app.journal.blocks import Item
from app.journal.records import Marker, Passage, Session, Take
from app.journal.sidecar import DayCard, JournalCard


@dataclass(slots=True)
class Contents:
    """What the sidecars of a journal say, each record once; markers by take.

    ``unreadable`` names sidecars that could not be read; ``newer`` is true where a
    newer version wrote one of them.
    """

    takes: dict[str, Take] = field(default_factory=dict)
    markers: dict[str, tuple[Marker, ...]] = field(default_factory=dict)
    passages: dict[str, Passage] = field(default_factory=dict)
    sessions: dict[str, Session] = field(default_factory=dict)
    days: dict[date, DayCard] = field(default_factory=dict)
    items: dict[str, Item] = field(default_factory=dict)
    journal: JournalCard | None = None
    unreadable: list[str] = field(default_factory=list)
    newer: bool = False
