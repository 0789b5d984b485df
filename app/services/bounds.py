"""The player's own bounds for a passage, and the tempo ladder climbed inside them."""

from collections.abc import Mapping

from app.journal.bounds import PassageBounds, checked
from app.journal.practice_days import Clock
from app.journal.tempo_ladder import Ladder, LadderTake, ladder
from app.services.following_views import LadderView
from app.services.reading_views import Reading
from app.services.readings import reading_of
from app.services.records_there import passage_there
from app.services.wording import counted
from app.store.store import Store

USUAL_CENTS, USUAL_STEADINESS_PERCENT = 15.0, 5.0


class BoundsService:
    """Keeps bounds and says how far up the ladder a passage is."""

    def __init__(self, store: Store, clock: Clock) -> None:
        self._store = store
        self._clock = clock

    def get(self, passage_id: str) -> PassageBounds:
        """Give the bounds of a passage; usual ones where the player set none.

        Without a target of its own the beat stated for the passage is the target.
        """
        kept = self._store.bounds.get(passage_id)
        if kept is not None:
            return kept
        passage = self._store.passages.get(passage_id)
        return PassageBounds(
            id=passage_id,
            mean_absolute_cents=USUAL_CENTS,
            steadiness_cv_percent=USUAL_STEADINESS_PERCENT,
            changed_at=self._clock(),
            target_bpm=passage.settings.pulse_bpm if passage else None,
        )

    def set(self, bounds: PassageBounds) -> PassageBounds:
        """Keep the bounds of a passage.

        Raises
        ------
        PlainFailure
            Where they make no sense or there is no such passage.
        """
        passage_there(self._store, bounds.id)
        kept = checked(bounds)
        self._store.bounds.put(kept)
        return kept

    def ladder(self, passage_id: str) -> LadderView:
        """Say how far up a passage is: the tempos that held its bounds on two days."""
        passage, bounds = passage_there(self._store, passage_id), self.get(passage_id)
        takes = self._store.takes.list(passage_id=passage_id)
        headlines = self._store.measurements.headlines([take.id for take in takes])
        played = [
            LadderTake(
                take.id,
                take.practice_day,
                bpm,
                _number(headlines[take.id].summary, "mean_absolute_cents"),
                _number(headlines[take.id].summary, "steadiness_cv_percent"),
            )
            for take in takes
            if take.id in headlines
            and (bpm := _number(headlines[take.id].summary, "mean_bpm")) is not None
        ]
        climbed = ladder(played, bounds)
        return LadderView(passage, bounds, climbed, ladder_text(climbed, bounds))


def _number(summary: Mapping[str, object], key: str) -> float | None:
    reading = reading_of(summary, key)
    return reading.value if isinstance(reading, Reading) else None


def ladder_text(climbed: Ladder, bounds: PassageBounds) -> str:
    """Tell in a sentence or two where a passage stands."""
    asked = f"within {bounds.mean_absolute_cents:g} cents"
    if not bounds.is_rubato:
        asked += f" and an unevenness of up to {bounds.steadiness_cv_percent:g} %"
    if not climbed.judged:
        return "No take of this passage has both a tempo and an intonation yet."
    if climbed.held_bpm is None:
        said = f"No tempo was held {asked} on two days yet."
    else:
        said = f"Held {asked} on two days: up to {climbed.held_bpm:.0f} BPM."
    if climbed.next_bpm is not None:
        said += f" The next step is {climbed.next_bpm:.0f} BPM"
        said += f", the target {climbed.target_bpm:.0f}." if climbed.target_bpm else "."
    elif climbed.target_bpm is not None:
        said += " The target is reached."
    if climbed.not_judged:
        said += f" {counted(climbed.not_judged, 'take')} could not be judged."
    return said
