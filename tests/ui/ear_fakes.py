"""Stand-ins for suggestions, the first listen and films."""

from collections.abc import Callable
from dataclasses import replace

from app.journal.failures import PlainFailure
from app.journal.kinds import Author
from app.services.first_listening import hidden
from app.services.reading_views import Reading
from app.services.suggestion_views import (
    AgreementRow,
    AgreementView,
    FirstListenView,
    SuggestionRow,
    SuggestionsView,
)

MOST = 5


def make_suggestion(at: int) -> SuggestionRow:
    start_s = 1.5 + 2.2 * at
    if at % 3 == 2:
        text = f"Drags by {5 + at} ± 1 % from 0:0{at}.1 to 0:0{at}.9"
        reading = Reading(-5.0 - at, "%", 1.0, signed=True)
        evidence = (f"{5 + at} ± 1 % slower than the take's mean tempo.",)
        kind, category = "drags", "rhythm"
    else:
        text = f"F#5 {18 + at} ± 4 cents flat, three times"
        reading = Reading(-18.0 - at, "cents", 4.0, signed=True)
        evidence = ("0:03.2: 18 ± 4 cents flat", "0:07.1: 20 ± 5 cents flat", "3 of 4 notes.")
        kind, category = "flat", "intonation"
    places = ((start_s, start_s + 0.5),)
    return SuggestionRow(
        f"{kind}:{at}", kind, category, start_s, start_s + 0.5, text, reading, evidence, places
    )


class FakeSuggesting:
    def __init__(self, marking: object) -> None:
        self._marking = marking
        self.rows = [make_suggestion(at) for at in range(7)]
        self.aside: list[SuggestionRow] = []

    def for_take(self, take_id, *, show_all=False):
        marked = {round(marker.start_s, 3) for marker in self._marking.for_take(take_id)}
        rows = [row for row in self.rows if round(row.start_s, 3) not in marked]
        shown = rows if show_all else rows[:MOST]
        return SuggestionsView(take_id, tuple(shown), len(rows) - len(shown), len(self.aside))

    def accept(self, take_id, key):
        row = next(row for row in self.rows if row.key == key)
        return self._marking.add(
            take_id, row.start_s, row.end_s, category=row.category, text=row.text
        )

    def dismiss(self, take_id, key):
        row = next(row for row in self.rows if row.key == key)
        self.rows.remove(row)
        self.aside.append(row)

    def bring_back(self, take_id):
        count = len(self.aside)
        self.rows += self.aside
        self.aside.clear()
        return count


class FakeFirstListening:
    def __init__(self, bench: object) -> None:
        self._bench = bench
        self.is_on = False
        self.seen: set[str] = set()
        self.before: set[str] = set()

    def open_take(self, take_id):
        view = self._bench.listening.open_take(take_id)
        return hidden(view) if self.state(take_id).is_hidden else view

    def switch(self, on):
        self.is_on = on
        self.before = {marker.id for marker in self._bench.state.markers.values()}

    def state(self, take_id):
        own = tuple(
            marker
            for marker in self._bench.marking.for_take(take_id)
            if marker.author is Author.SELF and marker.id not in self.before
        )
        if take_id not in self.seen:
            return FirstListenView(self.is_on, self.is_on, own, None)
        view = FirstListenView(self.is_on, False, own, None)
        rows = (
            AgreementRow("hit", 3.1, 3.6, "F#5 18 ± 4 cents flat", "intonation"),
            AgreementRow("missed", 7.0, 7.4, "F#5 20 ± 5 cents flat", ""),
            AgreementRow("heard_only", 9.2, 11.4, "", "sound: scratch at the frog"),
        )
        words = "1 of 2 measured places heard and marked."
        return replace(view, agreement=AgreementView(rows, 1, 1, 1, words))

    def show(self, take_id, *, heard_nothing=False):
        if not self.state(take_id).own_markers and not heard_nothing:
            raise PlainFailure("No marker of yours stands on this take yet.", "Mark what you hear.")
        self.seen.add(take_id)
        return self.state(take_id)


class FakeFilming:
    """No take was filmed, unless a test says so."""

    def __init__(self) -> None:
        self.sizes: dict[str, tuple[int, int]] = {}
        self.make_reel: Callable[..., object] | None = None

    def size(self, take_id):
        return self.sizes.get(take_id)

    def reel(self, take_id, show, fail):
        assert self.make_reel is not None
        return self.make_reel(take_id, show, fail)
