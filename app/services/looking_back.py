"""What this week was like a year ago."""

from dataclasses import dataclass
from datetime import date

from app.journal.practice_days import Clock
from app.journal.year_ago import weeks_of_then, year_ago
from app.services.day_now import day_now
from app.services.passages import passage_title
from app.services.wording import day_text
from app.store.store import Store


@dataclass(frozen=True, slots=True)
class YearAgoView:
    """Two takes to hear one after the other, and the line that says which."""

    then_take_id: str
    now_take_id: str
    years: int
    sentence: str


class LookingBackService:
    """Finds takes worth hearing again; not for the GUI thread."""

    def __init__(self, store: Store, clock: Clock) -> None:
        self._store = store
        self._clock = clock
        self._known: tuple[object, YearAgoView | None] | None = None

    def this_week(self) -> YearAgoView | None:
        """Give a passage's take of this week a year ago (or more), where there is one."""
        today = day_now(self._store, self._clock)
        at = (today, self._store.revision("take", "passage"))
        if self._known is None or self._known[0] != at:
            self._known = (at, self._found(today))
        return self._known[1]

    def _found(self, today: date) -> YearAgoView | None:
        takes = self._store.takes
        known = {take.id: take for take in takes.latest_of_passages(today)}
        for first, last in weeks_of_then(today):
            known |= {take.id: take for take in takes.list(first_day=first, last_day=last)}
        found = year_ago(known.values(), today)
        if found is None or found.then.passage_id is None:
            return None
        passage = self._store.passages.get(found.then.passage_id)
        if passage is None:
            return None
        when = "A year" if found.years == 1 else f"{found.years} years"
        return YearAgoView(
            found.then.id,
            found.now.id,
            found.years,
            f"{when} ago this week: {passage_title(passage)}, {day_text(found.then.practice_day)}.",
        )
