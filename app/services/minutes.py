"""Where the minutes went: item by item, and recording against practising."""

from datetime import date

from app.journal.practice_clock import minutes_by_item
from app.services.clock_views import EffortView, ItemMinutes
from app.services.items import NOTHING_NAMED, named_items
from app.services.wording import counted, minutes_text
from app.store.store import Store


class MinutesService:
    """Adds up blocks and attempts over practice days."""

    def __init__(self, store: Store) -> None:
        self._store = store

    def by_item(self, first_day: date, last_day: date) -> tuple[ItemMinutes, ...]:
        """Give the minutes of each item on some practice days, the most first.

        Only what the clock knows: typed minutes belong to no item. The open block of a
        running clock is not among them; it counts once it closes.
        """
        summed = minutes_by_item(self._store.blocks.of_days(first_day, last_day))
        known = named_items(self._store)
        rows = [
            ItemMinutes(item_id, named.title, named.kind, minutes)
            for item_id, minutes in summed.items()
            for named in (known.get(item_id or "", NOTHING_NAMED),)
        ]
        return tuple(sorted(rows, key=lambda row: -row.minutes))

    def recording(
        self, first_day: date, last_day: date, passage_id: str | None = None
    ) -> EffortView:
        """Hold the time spent on recording against the time practised.

        Parameters
        ----------
        first_day, last_day : date
            Both included.
        passage_id : str, optional
            Only recordings of this passage; the minutes practised stay those of all.
        """
        attempts = self._store.attempts.list(
            passage_id=passage_id, first_day=first_day, last_day=last_day
        )
        takes = self._store.takes.of_ids(attempt.id for attempt in attempts)
        kept = sum(take.deleted_at is None for take in takes.values())
        recording_min = sum(attempt.duration_s for attempt in attempts) / 60
        by_day = self._store.sessions.minutes_by_day(first_day, last_day)
        practised_min = sum(by_day.values()) if by_day else None
        return EffortView(
            attempts=len(attempts),
            kept=kept,
            recording_min=recording_min,
            practised_min=practised_min,
            sentence=_sentence(len(attempts), kept, recording_min, practised_min),
        )


def _sentence(attempts: int, kept: int, recording_min: float, practised_min: float | None) -> str:
    if not attempts:
        return "Nothing was recorded."
    spent = minutes_text(recording_min) if recording_min >= 1 else "under a minute"
    if practised_min is None:
        return f"{counted(attempts, 'recording')}, {kept} kept: {spent} of recording."
    return (
        f"{counted(attempts, 'recording')}, {kept} kept: {spent} of recording,"
        f" {minutes_text(practised_min)} practised in all."
    )
