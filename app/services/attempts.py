"""Recordings that are begun: whether they may be, and that they were."""

from contextlib import suppress
from dataclasses import dataclass, replace
from datetime import date

from app.journal.blocks import Attempt
from app.journal.failures import PlainFailure
from app.journal.no_retake import MayNotRecord, MayRecord, attempt_of, holds, may_record
from app.journal.practice_days import Clock
from app.journal.records import Passage, Take
from app.services.day_now import day_now, day_of
from app.services.passages import passage_title
from app.services.views import PendingTake
from app.store.store import Store


@dataclass(frozen=True, slots=True)
class DayOfPassage:
    """The attempts of a passage on a practice day, in order, and the takes it has."""

    attempts: tuple[Attempt, ...]
    takes: tuple[Take, ...]


class Attempts:
    """Keeps every recording that is begun, and asks the no-retake rule before."""

    def __init__(self, store: Store, clock: Clock) -> None:
        self._store = store
        self._clock = clock

    def today(self) -> date:
        """Give the practice day it is now."""
        return day_now(self._store, self._clock)

    def of_day(self, passage_id: str, day: date) -> DayOfPassage:
        """Give the attempts of a passage on a practice day.

        A take that came from elsewhere, without a recording of this program, stands for
        one attempt.
        """
        attempts = self._store.attempts.list(passage_id=passage_id, first_day=day, last_day=day)
        takes = self._store.takes.list(passage_id=passage_id, first_day=day, last_day=day)
        known = {attempt.id for attempt in attempts}
        others = [attempt_of(take) for take in takes if take.id not in known]
        in_order = sorted((*attempts, *others), key=lambda a: a.started_at.timestamp())
        return DayOfPassage(tuple(in_order), takes)

    def verdict(self, passage: Passage, day: date) -> MayRecord | MayNotRecord:
        """Ask the rule about a passage on a practice day."""
        if not holds(passage, day):
            return MayRecord(under_rule=False)
        return may_record(passage, day, self.of_day(passage.id, day).attempts)

    def permission(self, passage_id: str | None) -> MayRecord:
        """Ask the rule whether a passage may be recorded now.

        Raises
        ------
        PlainFailure
            Where its take of today is made; names what can be recorded instead.
        """
        passage = self._store.passages.get(passage_id)
        if passage is None:
            return MayRecord(under_rule=False)
        verdict = self.verdict(passage, self.today())
        if isinstance(verdict, MayNotRecord):
            raise self.refusal(passage, verdict)
        return verdict

    def refusal(self, passage: Passage, verdict: MayNotRecord) -> PlainFailure:
        """Say kindly that the take of today is made, and offer something else."""
        at = f"{verdict.first.started_at:%H:%M}"
        others = self.still_open()
        next_step = "Listen to the one you have; tomorrow brings the next."
        if others:
            next_step = (
                f"Record another passage, such as '{passage_title(others[0])}',"
                " or listen to the one you have; tomorrow brings the next."
            )
        return PlainFailure(
            f"Today's take of '{passage_title(passage)}' was made at {at} and stands as it is:"
            " this passage has one take a day.",
            next_step,
        )

    def still_open(self) -> tuple[Passage, ...]:
        """Give the passages that may be recorded now, those practised last first."""
        day, last = self.today(), self._store.takes.last_of_passages()
        free = [
            passage
            for passage in self._store.passages.list()
            if isinstance(self.verdict(passage, day), MayRecord)
        ]
        return tuple(sorted(free, key=lambda p: last.get(p.id, date.min), reverse=True))

    def begun(self, pending: PendingTake) -> None:
        """Keep that a recording begins, on the practice day under which its take is filed."""
        self._store.attempts.put(
            Attempt(
                pending.id,
                pending.passage_id,
                day_of(self._store, pending.started_at),
                pending.started_at,
            )
        )

    def nothing_came(self, pending: PendingTake) -> None:
        """Forget a recording of which there is no sound at all."""
        self._store.attempts.remove(pending.id)

    def ended(self, pending: PendingTake) -> None:
        """Keep how long a recording became, and what the device did to it.

        The sound is safe whatever happens here: where the disk refuses, the same is
        tried again when the take is filed.
        """
        with suppress(PlainFailure), self._store.transaction():
            known = self._store.attempts.get(pending.id)
            self._store.attempts.put(
                Attempt(
                    pending.id,
                    known.passage_id if known else self._passage_of(pending),
                    known.practice_day if known else day_of(self._store, pending.started_at),
                    pending.started_at,
                    pending.duration_s,
                    pending.ended or (known.failure if known else ""),
                )
            )

    def refiled(self, take: Take, day: date, passage_id: str | None) -> bool:
        """Move the attempt of a take that is filed elsewhere.

        Returns
        -------
        bool
            Whether the take counts as the one of its passage and day there. Under the
            same passage it stays what it was.
        """
        attempt = self._store.attempts.get(take.id)
        if attempt is not None:
            moved = replace(attempt, passage_id=passage_id, practice_day=day)
            self._store.attempts.put(moved)
        if passage_id == take.passage_id:
            return take.no_retake
        return self.is_the_one(passage_id, day, but=take.id)

    def is_the_one(self, passage_id: str | None, day: date, but: str = "") -> bool:
        """Tell whether a take from elsewhere is a day's one take of its passage.

        ``but`` leaves an attempt out: that of the take itself.
        """
        passage = self._store.passages.get(passage_id)
        if passage is None:
            return False
        others = [a for a in self.of_day(passage.id, day).attempts if a.id != but]
        verdict = may_record(passage, day, others)
        return isinstance(verdict, MayRecord) and verdict.under_rule

    def _passage_of(self, pending: PendingTake) -> str | None:
        passage = self._store.passages.get(pending.passage_id)
        return passage.id if passage else None
