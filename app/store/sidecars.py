"""Keep the sidecars saying what the database says.

A change notes, in its own transaction, which sidecars it makes out of date (table
``sidecar_due``); they are written right after the commit and the note is taken away.
If the program dies or the disk fails in between, the change itself stands and the
sidecar is written after the next change or when the journal is opened again. So
neither a crash nor a full disk can leave a sidecar that says more than the database,
and one that says less is always known.
"""

import logging
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from datetime import date, datetime
from pathlib import Path

from sqlalchemy import bindparam, delete, select

from app.journal.failures import PlainFailure
from app.journal.sidecar import Card, DayCard, JournalCard, TakeCard, card_text
from app.store.assignments import (
    AssignmentRepository,
    EarlierHoursRepository,
    OccasionRepository,
)
from app.store.attempts import AttemptRepository, PutAsideRepository
from app.store.blocks import BlockRepository
from app.store.folders import Folders, sync_folder, write_atomically
from app.store.following import (
    BlindTrialRepository,
    PassageBoundsRepository,
    StillThereRepository,
)
from app.store.items import ItemRepository
from app.store.listening import DismissalRepository, FirstListenRepository
from app.store.markers import MarkerRepository
from app.store.models import SIDECAR_DUE_TABLE
from app.store.passages import PassageRepository
from app.store.plans import PlanRepository
from app.store.promises import PromiseRepository, SharedNumberRepository
from app.store.rehearsals import RehearsalRepository
from app.store.remarks import LessonRemarkRepository
from app.store.sessions import RestDayRepository, SessionRepository
from app.store.settings import SettingsRepository
from app.store.shared_clips import SharedClipRepository
from app.store.takes import TakeRepository
from app.store.work import JOURNAL_KEY, SidecarKey, Work

_DUE = SIDECAR_DUE_TABLE.c
_log = logging.getLogger(__name__)


@dataclass(frozen=True, slots=True)
class Records:
    """The repositories a sidecar is filled from."""

    takes: TakeRepository
    passages: PassageRepository
    markers: MarkerRepository
    sessions: SessionRepository
    rest_days: RestDayRepository
    settings: SettingsRepository
    items: ItemRepository
    blocks: BlockRepository
    attempts: AttemptRepository
    put_aside: PutAsideRepository
    promises: PromiseRepository
    shared_numbers: SharedNumberRepository
    assignments: AssignmentRepository
    occasions: OccasionRepository
    earlier_hours: EarlierHoursRepository
    rehearsals: RehearsalRepository
    dismissals: DismissalRepository
    first_listens: FirstListenRepository
    still_there: StillThereRepository
    bounds: PassageBoundsRepository
    blind_trials: BlindTrialRepository
    remarks: LessonRemarkRepository
    shared_clips: SharedClipRepository
    plans: PlanRepository


class Sidecars:
    """Writes the sidecars of an open journal."""

    def __init__(
        self, folders: Folders, work: Work, records: Records, clock: Callable[[], datetime]
    ) -> None:
        self._folders = folders
        self._work = work
        self._records = records
        self._clock = clock

    def due(self) -> frozenset[SidecarKey]:
        """List the sidecars that do not yet say what the database says."""
        with self._work.connection() as connection:
            rows = connection.execute(select(_DUE.kind, _DUE.key))
            return frozenset((kind, key) for kind, key in rows)

    def ask_for(
        self, *, take_ids: Iterable[str] = (), days: Iterable[date] = (), journal: bool = False
    ) -> None:
        """Have sidecars written again, for instance because they are gone."""
        with self._work.connection():
            for take_id in take_ids:
                self._work.touch_take(take_id)
            for day in days:
                self._work.touch_day(day)
            if journal:
                self._work.touch(JOURNAL_KEY)

    def days(
        self, *, first_day: date | None = None, last_day: date | None = None
    ) -> tuple[date, ...]:
        """List the practice days that have something to say in a card of their own."""
        records, span = self._records, {"first_day": first_day, "last_day": last_day}
        with self._work.connection():
            found = {session.practice_day for session in records.sessions.list(**span)}
            found |= {rest.practice_day for rest in records.rest_days.list(**span)}
            found |= {
                attempt.practice_day
                for attempt in records.attempts.list(first_day=first_day, last_day=last_day)
            }
            found |= set(records.plans.days(**span))
        return tuple(sorted(found))

    def cards(
        self, *, first_day: date | None = None, last_day: date | None = None
    ) -> tuple[Card, ...]:
        """Give what the sidecars of some days say, or would say, and the journal's own.

        Deleted takes have cards too.
        """
        records, now = self._records, self._clock()
        with self._work.connection():
            takes = records.takes.list(first_day=first_day, last_day=last_day, include_deleted=True)
            days = self.days(first_day=first_day, last_day=last_day)
            return (
                *self._take_cards([take.id for take in takes], now),
                *(self._day_card(day, now) for day in days),
                self._journal_card(now),
            )

    def write_due(self) -> int:
        """Write the sidecars that are due; returns how many still are.

        A disk that refuses is no failure of the change that was made: it is logged,
        and what is due stays due.
        """
        with self._work.exclusive():
            with self._work.connection():
                due = self.due()
                cards = self._cards(due)
            if not due:
                return 0
            done = due - {
                key for key, (path, card) in cards.items() if not self._written(path, card)
            }
            for folder in {cards[key][0].parent for key in done & cards.keys()}:
                sync_folder(folder)
            try:
                self._forget(done)
            except PlainFailure as failure:
                # They are written; written once more they will say the same.
                _log.warning("sidecars stay noted as due: %s", failure.sentence)
            return len(due) - len(done)

    def _forget(self, done: Iterable[SidecarKey]) -> None:
        rows = [{"of_kind": kind, "of_key": key} for kind, key in done]
        if not rows:
            return
        those = (_DUE.kind == bindparam("of_kind")) & (_DUE.key == bindparam("of_key"))
        with self._work.connection() as connection:
            connection.execute(delete(SIDECAR_DUE_TABLE).where(those), rows)

    def _written(self, path: Path, card: Card) -> bool:
        try:
            write_atomically(path, card_text(card), sync=False)
        except (OSError, ValueError) as error:  # the database may hold what no sidecar can
            _log.warning("sidecar %s could not be written yet: %s", path, error)
            return False
        return True

    # A take whose change was undone before the commit has no card, and needs none.
    def _cards(self, keys: Iterable[SidecarKey]) -> Mapping[SidecarKey, tuple[Path, Card]]:
        now = self._clock()
        cards: dict[SidecarKey, tuple[Path, Card]] = {}
        take_ids = [key for kind, key in keys if kind == "take"]
        for card in self._take_cards(take_ids, now):
            cards["take", card.take.id] = (self._folders.sidecar(card.take.file), card)
        for kind, key in keys:
            if kind == "day":
                day = date.fromisoformat(key)
                cards[kind, key] = (self._folders.day_card(day), self._day_card(day, now))
        if JOURNAL_KEY in keys:
            cards[JOURNAL_KEY] = (self._folders.journal_card, self._journal_card(now))
        return cards

    def _take_cards(self, take_ids: Iterable[str], now: datetime) -> Iterable[TakeCard]:
        takes = self._records.takes.of_ids(take_ids)
        markers = self._records.markers.for_takes(takes)
        passages = {passage.id: passage for passage in self._records.passages.list()}
        sessions = self._records.sessions.of_ids(take.session_id for take in takes.values())
        for take in takes.values():
            yield TakeCard(
                written_at=now,
                take=take,
                session=sessions[take.session_id],
                passage=passages[take.passage_id] if take.passage_id else None,
                markers=markers.get(take.id, ()),
            )

    def _day_card(self, day: date, now: datetime) -> DayCard:
        blocks = self._records.blocks.of_days(day, day)
        used = {block.item_id for block in blocks}
        items = self._records.items.list() if used else ()
        return DayCard(
            written_at=now,
            practice_day=day,
            sessions=self._records.sessions.of_day(day),
            rest=self._records.rest_days.get(day),
            blocks=blocks,
            items=tuple(item for item in items if item.id in used),
            attempts=self._records.attempts.list(first_day=day, last_day=day),
            plan=self._records.plans.get(day),
        )

    def _journal_card(self, now: datetime) -> JournalCard:
        return JournalCard(
            written_at=now,
            passages=self._records.passages.list(),
            settings=self._records.settings.get(),
            items=self._records.items.list(),
            put_aside=self._records.put_aside.list(),
            promises=self._records.promises.list(),
            shared_numbers=self._records.shared_numbers.list(),
            assignments=self._records.assignments.list(),
            occasions=self._records.occasions.list(),
            earlier_hours=self._records.earlier_hours.get(),
            rehearsals=self._records.rehearsals.list(),
            dismissals=self._records.dismissals.list(),
            first_listens=self._records.first_listens.list(),
            still_there=self._records.still_there.list(),
            bounds=self._records.bounds.list(),
            blind_trials=self._records.blind_trials.list(),
            remarks=self._records.remarks.list(),
            shared_clips=self._records.shared_clips.list(),
        )
