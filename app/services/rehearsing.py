"""Audition rehearsals: run through in order, one chance each, listened to afterwards.

The window records each passage as any other take (which leads to the filed take's
row); this service says which passage is due and keeps what came of it.
"""

import random
import uuid
from collections.abc import Sequence

from app.journal import rehearsals as rules
from app.journal.failures import PlainFailure
from app.journal.practice_days import Clock, practice_day
from app.journal.records import Passage
from app.journal.rehearsals import Chance, Rehearsal
from app.services.keeping_views import RehearsalView
from app.services.passages import passage_title
from app.services.records_there import passage_there, take_there
from app.services.rows import Rows
from app.store.store import Store

_GONE = "a passage that is no longer there"


class RehearsalService:
    """Runs one rehearsal at a time and keeps all of them.

    Parameters
    ----------
    store : Store
    clock : callable
    chance : random.Random, optional
        Draws the order.
    refusal : PlainFailure, optional
        Raised in place of beginning one, in a journal that takes no new recordings.
    """

    def __init__(
        self,
        store: Store,
        clock: Clock,
        chance: random.Random | None = None,
        refusal: PlainFailure | None = None,
    ) -> None:
        self._refusal = refusal
        self._store = store
        self._clock = clock
        self._chance = chance or random.SystemRandom()
        self._rows = Rows(store)

    def running(self) -> RehearsalView | None:
        """Give the rehearsal that has begun and not ended."""
        open_ones = [one for one in self._store.rehearsals.list() if one.ended_at is None]
        return self._view(open_ones[-1]) if open_ones else None

    def past(self) -> tuple[RehearsalView, ...]:
        """Give the rehearsals that are over, the latest first."""
        over = [one for one in self._store.rehearsals.list() if one.ended_at is not None]
        return tuple(self._view(one) for one in reversed(over))

    def start(self, passage_ids: Sequence[str], *, draw: bool = False) -> RehearsalView:
        """Begin a rehearsal.

        Parameters
        ----------
        passage_ids : sequence of str
            In the order in which to play them.
        draw : bool
            Draw the order by lot instead.

        Raises
        ------
        PlainFailure
            Where one runs already, or a passage is missing or chosen twice.
        """
        if self._refusal is not None:
            raise self._refusal
        if self.running() is not None:
            raise PlainFailure("A rehearsal is running.", "Finish or end it first.")
        for passage_id in passage_ids:
            passage_there(self._store, passage_id)
        now = self._clock()
        turn = self._store.settings.get().day_turn_hour
        order = rules.order_of(passage_ids, draw=draw, chance=self._chance)
        return self._keep(
            Rehearsal(
                uuid.uuid4().hex,
                practice_day(now, turn_hour=turn),
                now,
                tuple(map(Chance, order)),
                drawn=draw,
            )
        )

    def begin(self) -> RehearsalView:
        """Begin the chance of the passage that is due; call it before recording.

        Raises
        ------
        PlainFailure
            Where no rehearsal runs, or this chance was begun already.
        """
        return self._keep(rules.begun(self._running(), self._clock()))

    def recorded(self, take_id: str) -> RehearsalView:
        """Keep the take of the passage that is due; the next one is due then."""
        take = take_there(self._store, take_id)
        changed = rules.recorded(self._running(), take.passage_id, take_id, self._clock())
        return self._keep(changed)

    def spoilt(self, sentence: str) -> RehearsalView:
        """Give the chance back that the device spoilt, with the reason on record."""
        return self._keep(rules.spoilt(self._running(), sentence))

    def move_on(self) -> RehearsalView:
        """Go on to the next passage without a take of this one."""
        return self._keep(rules.passed(self._running(), self._clock()))

    def end(self) -> RehearsalView:
        """End the rehearsal early."""
        return self._keep(rules.ended(self._running(), self._clock()))

    def _running(self) -> Rehearsal:
        found = self.running()
        if found is None:
            raise PlainFailure("No rehearsal is running.", "Start one.")
        return found.rehearsal

    def _keep(self, rehearsal: Rehearsal) -> RehearsalView:
        self._store.rehearsals.put(rehearsal)
        return self._view(rehearsal)

    def _view(self, rehearsal: Rehearsal) -> RehearsalView:
        passages = {passage.id: passage for passage in self._store.passages.list()}
        due = rules.current(rehearsal)
        number = rehearsal.chances.index(due) + 1 if due else len(rehearsal.chances)
        ids = [one.take_id for one in rehearsal.chances if one.take_id is not None]
        takes = self._store.takes.of_ids(ids)
        there = [takes[i] for i in ids if i in takes and takes[i].deleted_at is None]
        return RehearsalView(
            rehearsal=rehearsal,
            due=passages.get(due.passage_id) if due else None,
            number=number,
            titles=tuple(_title(passages, one.passage_id) for one in rehearsal.chances),
            to_listen_to=self._rows.of_takes(there) if rehearsal.ended_at is not None else (),
        )


def _title(passages: dict[str, Passage], passage_id: str) -> str:
    found = passages.get(passage_id)
    return passage_title(found) if found else _GONE
