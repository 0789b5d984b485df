"""The items as lines with keys: in the player's own order, with today's minutes."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from app.ui.keys import ITEM_KEY_COUNT
from app.ui.language import tr
from app.ui.words import minutes_text

if TYPE_CHECKING:
    from app.services.clock_views import ClockView, ItemMinutes, ItemRow


@dataclass(frozen=True, slots=True)
class ItemLine:
    """An item as it is shown: its key, if it has one, and its minutes of today in words."""

    title: str
    key: str
    minutes: str
    is_now: bool
    row: "ItemRow | None"

    @property
    def words(self) -> str:
        """The line as it is read aloud."""
        parts = [self.title]
        if self.is_now:
            parts.append(tr("being practised"))
        if self.minutes:
            parts.append(tr("{minutes} today").format(minutes=self.minutes))
        if self.key:
            parts.append(tr("key {key}").format(key=self.key))
        return ", ".join(parts)


def item_ref(row: "ItemRow") -> str:
    """Name an item so that the name stays when a passage becomes an item."""
    return row.passage_id or row.id


def in_order(rows: Sequence["ItemRow"], order: Sequence[str]) -> tuple["ItemRow", ...]:
    """Put items in the kept order; new ones go to the end, so that keys keep their item."""
    known = {item_ref(row): row for row in rows}
    kept = [known.pop(ref) for ref in order if ref in known]
    return (*kept, *known.values())


def item_lines(rows: Sequence["ItemRow"], view: "ClockView") -> tuple[ItemLine, ...]:
    """Give the lines to show; what was practised today and is not offered comes last."""
    is_on = view.phase in ("running", "paused")
    spent = {entry.item_id: entry for entry in view.items}
    lines = []
    for at, row in enumerate(rows):
        entry = spent.pop(row.id, None) if row.id else None
        key = str(at + 1) if at < ITEM_KEY_COUNT else ""
        is_now = is_on and bool(row.id) and row.id == view.item_id
        lines.append(ItemLine(row.title, key, _minutes(entry), is_now, row))
    for item_id, entry in spent.items():
        is_now = is_on and item_id == view.item_id
        lines.append(ItemLine(entry.title, "", _minutes(entry), is_now, None))
    return tuple(lines)


def after(rows: Sequence["ItemRow"], item_id: str | None) -> "ItemRow | None":
    """Give the item that follows another one, around the end; the first for none."""
    if not rows:
        return None
    ids = [row.id for row in rows]
    at = ids.index(item_id) if item_id and item_id in ids else -1
    return rows[(at + 1) % len(rows)]


def _minutes(entry: "ItemMinutes | None") -> str:
    if entry is None or entry.minutes <= 0:
        return ""
    return minutes_text(entry.minutes) if entry.minutes >= 1 else tr("under 1 min")
