"""No-retake: the rule of a passage, as the player sees it and switches it."""

from dataclasses import dataclass, replace

from app.journal.failures import PlainFailure
from app.journal.no_retake import MayNotRecord, holds, switched
from app.journal.records import Passage
from app.services.attempts import Attempts
from app.services.records_there import passage_there
from app.store.store import Store

ABOUT = (
    "One take of this passage each practice day, kept whatever it is. It shows what an"
    " ordinary day sounds like, better than the best of five would."
)


@dataclass(frozen=True, slots=True)
class NoRetakeView:
    """Where a passage stands today under its rule.

    Attributes
    ----------
    on : bool
        The rule is switched on for the passage; ``holds`` says that it counts today.
    may_record : bool
    sentence : str
        What the page shows: the rule, or that today's take is made; empty without it.
    instead : tuple of Passage
        What may still be recorded today, for where this passage may not.
    """

    on: bool
    holds: bool
    may_record: bool
    sentence: str
    instead: tuple[Passage, ...] = ()


class NoRetakeService:
    """Switches the rule, explains it, and keeps what a device spoilt."""

    def __init__(self, store: Store, attempts: Attempts) -> None:
        self._store = store
        self._attempts = attempts

    def view(self, passage_id: str) -> NoRetakeView:
        """Give where a passage stands today."""
        passage, today = passage_there(self._store, passage_id), self._attempts.today()
        if not passage.no_retake:
            return NoRetakeView(on=False, holds=False, may_record=True, sentence="")
        if not holds(passage, today):
            sentence = f"{ABOUT} The rule begins tomorrow: today there is a take already."
            return NoRetakeView(on=True, holds=False, may_record=True, sentence=sentence)
        verdict = self._attempts.verdict(passage, today)
        if isinstance(verdict, MayNotRecord):
            refusal = self._attempts.refusal(passage, verdict)
            sentence = f"{refusal.sentence} {refusal.next_step}"
            return NoRetakeView(True, True, False, sentence, self._attempts.still_open())
        if verdict.after_failure:
            sentence = f"Once more, since the device failed: {verdict.after_failure}"
            return NoRetakeView(on=True, holds=True, may_record=True, sentence=sentence)
        return NoRetakeView(on=True, holds=True, may_record=True, sentence=ABOUT)

    def switch(self, passage_id: str, on: bool) -> Passage:
        """Switch the rule of a passage on or off.

        After an attempt of today it begins with the next practice day.
        """
        with self._store.transaction():
            passage, today = passage_there(self._store, passage_id), self._attempts.today()
            count = len(self._attempts.of_day(passage_id, today).attempts)
            changed = switched(passage, on, today, count)
            self._store.passages.replace(changed)
        return changed

    def note_device_failure(self, take_id: str, reason: str) -> None:
        """Keep what the device did to a take; another may then be made the same day.

        The take itself stays. What the program notices by itself (the input went away,
        the disk was full, the program ended) is on record already.

        Parameters
        ----------
        take_id : str
            Of a take that was recorded with this program.
        reason : str
            In the player's words, such as "the microphone was muted"; not empty.
        """
        words = " ".join(reason.split())
        if not words:
            raise PlainFailure(
                "A second take needs the reason on record.", "Say what the device did."
            )
        with self._store.transaction():
            attempt = self._store.attempts.get(take_id)
            if attempt is None:
                raise PlainFailure(
                    "That take was not recorded with this program.", "Choose a take of today."
                )
            self._store.attempts.put(replace(attempt, failure=words))
