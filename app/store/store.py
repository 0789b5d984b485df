"""An open journal: its repositories, its folders, its unit of work.

::

    store = open_store(Path("journal"), clock=clock)
    with store.transaction():
        store.sessions.add(session)
        store.takes.add(take)
    store.close()
"""

from collections.abc import Callable
from contextlib import AbstractContextManager, ExitStack
from datetime import UTC, datetime
from pathlib import Path
from types import TracebackType
from typing import Self

from sqlalchemy import Connection, Engine

from app.journal.contents import Contents
from app.store.assignments import (
    AssignmentRepository,
    EarlierHoursRepository,
    OccasionRepository,
)
from app.store.attempts import AttemptRepository, PutAsideRepository
from app.store.backups import back_up
from app.store.blocks import BlockRepository, ClockRepository
from app.store.connecting import (
    check_folder,
    check_not_lost,
    check_soundness,
    no_journal,
    take_lock,
    writing_engine,
)
from app.store.folders import Folders
from app.store.following import (
    BlindTrialRepository,
    PairAlignmentRepository,
    PassageBoundsRepository,
    StillThereRepository,
    TakeOutlineRepository,
)
from app.store.items import ItemRepository
from app.store.listening import DismissalRepository, FirstListenRepository
from app.store.looking import engine_for_looking
from app.store.markers import MarkerRepository
from app.store.measurements import MeasurementRepository
from app.store.migrating import bring_up_to_date, revision_of
from app.store.passages import PassageRepository
from app.store.plans import PlanRepository
from app.store.promises import PromiseRepository, SharedNumberRepository
from app.store.rebuild import gather, write_found
from app.store.rehearsals import RehearsalRepository
from app.store.remarks import LessonRemarkRepository
from app.store.sessions import RestDayRepository, SessionRepository
from app.store.settings import SettingsRepository
from app.store.shared_clips import SharedClipRepository
from app.store.sidecars import Records, Sidecars, note_due
from app.store.tables import Tables
from app.store.takes import TakeRepository
from app.store.troubles import cannot_write
from app.store.work import SidecarKey, Work

Clock = Callable[[], datetime]


def system_clock() -> datetime:
    """Give the present instant with the offset of this machine."""
    return datetime.now(UTC).astimezone()


class Store:
    """A journal that is open; made by :func:`open_store`.

    Repositories may be called from any thread; transactions run one after the other.

    Attributes
    ----------
    takes, passages, markers, sessions, rest_days, measurements, settings, items, blocks,
    clock, attempts, put_aside, promises, shared_numbers, assignments, occasions,
    earlier_hours, plans, rehearsals, dismissals, first_listens, still_there, bounds,
    blind_trials, alignments, outlines, remarks, shared_clips
        The repositories. A call outside :meth:`transaction` is one of its own.
    folders : Folders
        Where the files lie.
    read_only : bool
        Changes are refused.
    was_changed : bool
        Something was written since it was opened.
    """

    def __init__(
        self, folders: Folders, engine: Engine, held: ExitStack, *, read_only: bool, clock: Clock
    ) -> None:
        self.folders = folders
        self.read_only = read_only
        self.was_changed = False
        self._clock = clock
        self._held = held
        self._work = Work(
            engine,
            folders.database,
            before_commit=self._note_due,
            after_commit=self._write_due,
        )
        self.takes = TakeRepository(self._work)
        self.passages = PassageRepository(self._work)
        self.markers = MarkerRepository(self._work)
        self.sessions = SessionRepository(self._work)
        self.rest_days = RestDayRepository(self._work)
        self.measurements = MeasurementRepository(self._work)
        self.settings = SettingsRepository(self._work)
        self.items = ItemRepository(self._work)
        self.blocks = BlockRepository(self._work)
        self.clock = ClockRepository(self._work)
        self.attempts = AttemptRepository(self._work)
        self.put_aside = PutAsideRepository(self._work)
        self.promises = PromiseRepository(self._work)
        self.shared_numbers = SharedNumberRepository(self._work)
        self.assignments = AssignmentRepository(self._work)
        self.occasions = OccasionRepository(self._work)
        self.earlier_hours = EarlierHoursRepository(self._work)
        self.plans = PlanRepository(self._work)
        self.rehearsals = RehearsalRepository(self._work)
        self.tables = Tables(self._work)
        self.dismissals = DismissalRepository(self._work)
        self.first_listens = FirstListenRepository(self._work)
        self.still_there = StillThereRepository(self._work)
        self.bounds = PassageBoundsRepository(self._work)
        self.blind_trials = BlindTrialRepository(self._work)
        self.alignments = PairAlignmentRepository(self._work)
        self.outlines = TakeOutlineRepository(self._work)
        self.remarks = LessonRemarkRepository(self._work)
        self.shared_clips = SharedClipRepository(self._work)
        self.sidecars = Sidecars(
            folders,
            self._work,
            Records(
                self.takes,
                self.passages,
                self.markers,
                self.sessions,
                self.rest_days,
                self.settings,
                self.items,
                self.blocks,
                self.attempts,
                self.put_aside,
                self.promises,
                self.shared_numbers,
                self.assignments,
                self.occasions,
                self.earlier_hours,
                self.rehearsals,
                self.dismissals,
                self.first_listens,
                self.still_there,
                self.bounds,
                self.blind_trials,
                self.remarks,
                self.shared_clips,
                self.plans,
            ),
            clock,
        )

    def transaction(self) -> AbstractContextManager[Connection]:
        """Run a block as one change: all of it or nothing.

        Sidecars follow by themselves, after the commit. Inside another transaction
        this is a savepoint: a failure undoes the inner block only.
        """
        return self._work.transaction()

    def revision(self, *tables: str) -> object:
        """Give a value that stays equal as long as nothing in these tables is changed.

        Ask for it in the transaction that reads what is to be kept. A journal that is only
        looked at may be changed by somebody else: there it is never equal.
        """
        return object() if self.read_only else self._work.changes_of(tables)

    def write_sidecar(self, take_id: str) -> None:
        """Ask for the sidecar of a take to be written again with this transaction."""
        with self._work.connection():
            self._work.touch_take(take_id)

    def contents(self) -> Contents:
        """Give everything the journal says, measurements left out."""
        found = Contents()
        gather(self.sidecars.cards(), found)
        return found

    def put_contents(self, contents: Contents) -> None:
        """Write contents over what the journal says; what they do not mention stays."""
        with self.transaction() as connection:
            write_found(connection, contents)
            self.sidecars.ask_for(take_ids=contents.takes, days=contents.days, journal=True)

    def back_up(self) -> Path:
        """Copy the database (without curves) to the backups and say where."""
        if self.read_only:
            raise cannot_write(self.folders.journal)
        with self._work.exclusive():
            return back_up(self.folders, self._clock())

    def close(self) -> None:
        """Let go of the database and the lock; closing again does nothing.

        Waits for a transaction of another thread; later ones are refused.
        """
        self._work.close()
        self._held.close()

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        traceback: TracebackType | None,
    ) -> None:
        self.close()

    def _note_due(self, connection: Connection, keys: frozenset[SidecarKey]) -> None:
        note_due(connection, keys)
        self.was_changed = True

    def _write_due(self, _keys: frozenset[SidecarKey]) -> None:
        self.sidecars.write_due()


def open_store(
    journal_dir: Path,
    *,
    create: bool = True,
    read_only: bool = False,
    clock: Clock = system_clock,
) -> Store:
    """Open a journal.

    Parameters
    ----------
    journal_dir : Path
        Its folder.
    create : bool
        Start a journal where there is none.
    read_only : bool
        Look only: no lock is taken, nothing is written, not even a migration (an
        older database is migrated in a temporary copy).
    clock : callable
        Gives the present instant; stamps backups and sidecars.

    Raises
    ------
    PlainFailure
        Where there is no journal, another copy of the program has it open, the
        folder cannot be written to, the disk is full, or the database is damaged,
        missing beside its recordings, or made by a newer version.
    """
    folders = Folders(journal_dir.expanduser().absolute())
    check_folder(folders, create=create and not read_only)
    held = ExitStack()
    if read_only:
        with held:
            engine = engine_for_looking(folders, held)
            return Store(folders, engine, held.pop_all(), read_only=True, clock=clock)
    with held:
        lock = take_lock(folders)
        held.callback(lock.release)
        _check_database(folders, create=create)
        return open_locked(folders, held.pop_all(), clock)


def open_locked(folders: Folders, held: ExitStack, clock: Clock) -> Store:
    """Open a journal whose lock is held and whose database was checked.

    ``held`` is let go of when the store is closed, or at once if this fails.
    """
    with held:
        bring_up_to_date(folders, clock())
        engine = writing_engine(folders.database)
        held.callback(engine.dispose)
        kept = ExitStack()
        store = Store(folders, engine, kept, read_only=False, clock=clock)
        store.sidecars.write_due()
        kept.enter_context(held.pop_all())
    return store


def _check_database(folders: Folders, *, create: bool) -> None:
    """Never start an empty database where there was one: that would hide the loss."""
    if _has_content(folders.database):
        check_soundness(folders.database)
        if revision_of(folders.database) is not None:
            return
    check_not_lost(folders)
    if not create:
        raise no_journal(folders)


def _has_content(database: Path) -> bool:
    return database.exists() and database.stat().st_size > 0
