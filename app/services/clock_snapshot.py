"""What the database says of the clock, read once after every change, and its view now.

The view is computed from a snapshot and the present instant alone, so that it can be
asked for many times a second.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date, datetime, tzinfo

from app.journal import forgotten_clock, practice_clock
from app.journal.blocks import Block, ClockRecord
from app.journal.forgotten_clock import ForgottenClock
from app.journal.practice_days import practice_day
from app.services import clock_words
from app.services.clock_views import ClockPhase, ClockView, ItemMinutes
from app.services.items import NOTHING_NAMED, NamedItem, named_items
from app.store.store import Store


@dataclass(frozen=True, slots=True)
class Snapshot:
    """The clock and its practice day as the database has them."""

    zone: tzinfo
    turn_hour: int
    break_after_min: int
    clock: ClockRecord | None
    day: date
    day_min: float
    session_min: float
    blocks: tuple[Block, ...]
    items: Mapping[str, NamedItem] = field(default_factory=dict)

    def day_of(self, now: datetime) -> date:
        """Give the practice day of an instant."""
        return practice_day(now, turn_hour=self.turn_hour, zone=self.zone)

    def named(self, item_id: str | None) -> NamedItem:
        """Give the name and kind of an item, or of none."""
        return self.items.get(item_id or "", NOTHING_NAMED)

    def question(self, now: datetime) -> ForgottenClock | None:
        """Give what a forgotten clock asks."""
        if self.clock is None:
            return None
        return forgotten_clock.forgotten(self.clock, now, zone=self.zone, turn_hour=self.turn_hour)

    def is_old_pause(self, now: datetime) -> bool:
        """Tell whether the clock is paused since another practice day: that was the end."""
        if self.clock is None or self.clock.running:
            return False
        return forgotten_clock.day_has_turned(
            self.clock, now, zone=self.zone, turn_hour=self.turn_hour
        )


def snapshot(store: Store, now: datetime, zone: tzinfo) -> Snapshot:
    """Read everything that the clock's view needs."""
    settings = store.settings.get()
    day = practice_day(now, turn_hour=settings.day_turn_hour, zone=zone)
    clock = store.clock.get()
    blocks = store.blocks.of_days(day, day)
    session = store.sessions.get(clock.session_id) if clock else None
    return Snapshot(
        zone=zone,
        turn_hour=settings.day_turn_hour,
        break_after_min=settings.break_after_min,
        clock=clock,
        day=day,
        day_min=store.sessions.minutes_by_day(day, day).get(day, 0.0),
        session_min=(session.minutes or 0.0) if session else 0.0,
        blocks=blocks,
        items=named_items(store),
    )


def view_of(known: Snapshot, now: datetime) -> ClockView:
    """Give the clock as it stands at an instant."""
    question = known.question(now)
    clock = None if known.is_old_pause(now) else known.clock
    is_counting = clock is not None and question is None
    is_today = known.day == known.day_of(now)
    open_s = practice_clock.open_seconds(clock, now) if clock and is_counting else 0.0
    unbroken_s = practice_clock.unbroken_seconds(clock, now) if clock and is_counting else 0.0
    is_due = clock is not None and practice_clock.break_is_due(clock, now, known.break_after_min)
    return ClockView(
        phase=_phase(clock, question),
        item_id=clock.item_id if clock else None,
        item_title=known.named(clock.item_id).title if clock else "",
        block_s=open_s,
        session_min=known.session_min + open_s / 60 if clock else 0.0,
        today_min=(known.day_min if is_today else 0.0) + open_s / 60,
        items=_item_minutes(known, now if open_s else None) if is_today else (),
        unbroken_min=unbroken_s / 60,
        break_sentence=clock_words.break_sentence(unbroken_s / 60) if is_due and unbroken_s else "",
    )


def _phase(clock: ClockRecord | None, question: ForgottenClock | None) -> ClockPhase:
    if question is not None:
        return "forgotten"
    if clock is None:
        return "stopped"
    return "running" if clock.running else "paused"


def _item_minutes(known: Snapshot, now: datetime | None) -> tuple[ItemMinutes, ...]:
    """Give today's minutes per item, with the block that is open at an instant."""
    blocks = known.blocks
    if known.clock is not None and now is not None:
        still_open = practice_clock.closed_block(known.clock, now)
        blocks += (still_open,) if still_open else ()
    summed = practice_clock.minutes_by_item(blocks)
    return tuple(
        ItemMinutes(item_id, named.title, named.kind, minutes)
        for item_id, minutes in summed.items()
        for named in (known.named(item_id),)
    )
