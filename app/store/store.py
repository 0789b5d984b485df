"""An open journal: its repositories, its folders, its unit of work.

Repositories are loaded and made when they are first asked for. Longer than 300 lines because
it names them all.

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
from functools import partial
from pathlib import Path
from threading import RLock
from types import TracebackType
from typing import TYPE_CHECKING, Self

from app.store.connecting import (
    check_folder,
    check_not_lost,
    check_soundness,
    no_journal,
    take_lock,
)
from app.store.folders import Folders
from app.store.made_once import made_once
from app.store.migrating import bring_up_to_date, revision_of
from app.store.sidecars_due import is_any_due, note_due
from app.store.troubles import cannot_write
from app.store.work import SidecarKey, Work

if TYPE_CHECKING:
    from sqlalchemy import Connection, Engine

    from app.journal.contents import Contents
    from app.store.assignments import (
        AssignmentRepository,
        EarlierHoursRepository,
        OccasionRepository,
    )
    from app.store.attempts import AttemptRepository, PutAsideRepository
    from app.store.blocks import BlockRepository, ClockRepository
    from app.store.following import (
        BlindTrialRepository,
        PairAlignmentRepository,
        PassageBoundsRepository,
        StillThereRepository,
        TakeOutlineRepository,
    )
    from app.store.items import ItemRepository
    from app.store.listening import DismissalRepository, FirstListenRepository
    from app.store.markers import MarkerRepository
    from app.store.measurements import MeasurementRepository
    from app.store.passages import PassageRepository
    from app.store.plans import PlanRepository
    from app.store.promises import PromiseRepository, SharedNumberRepository
    from app.store.rehearsals import RehearsalRepository
    from app.store.remarks import LessonRemarkRepository
    from app.store.sessions import RestDayRepository, SessionRepository
    from app.store.settings import SettingsRepository
    from app.store.shared_clips import SharedClipRepository
    from app.store.sidecars import Sidecars
    from app.store.tables import Tables
    from app.store.takes import TakeRepository

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
        self,
        folders: Folders,
        make_engine: "Callable[[], Engine]",
        held: ExitStack,
        *,
        read_only: bool,
        clock: Clock,
    ) -> None:
        self.folders = folders
        self.read_only = read_only
        self.was_changed = False
        self._clock = clock
        self._held = held
        self.making = RLock()
        self._work = Work(
            make_engine,
            folders.database,
            before_commit=self._note_due,
            after_commit=self._write_due,
        )

    def load(self) -> None:
        """Load the library of the database, which the first transaction otherwise does."""
        self._work.load()

    def transaction(self) -> "AbstractContextManager[Connection]":
        """Run a block as one change: all of it or nothing.

        Sidecars follow by themselves, after the commit. Inside another transaction
        this is a savepoint: a failure undoes the inner block only.
        """
        return self._work.transaction()

    def revision(self, *tables: str) -> object:
        """Give a value that stays equal as long as nothing in these tables is changed.

        Ask for it before what is to be kept is read. A journal that is only looked at may
        be changed by somebody else: there it is never equal.
        """
        return object() if self.read_only else self._work.changes_of(tables)

    def write_sidecar(self, take_id: str) -> None:
        """Ask for the sidecar of a take to be written again with this transaction."""
        with self._work.connection():
            self._work.touch_take(take_id)

    def contents(self) -> "Contents":
        """Give everything the journal says, measurements left out."""
        from app.journal.contents import Contents
        from app.store.rebuild import gather

        found = Contents()
        gather(self.sidecars.cards(), found)
        return found

    def put_contents(self, contents: "Contents") -> None:
        """Write contents over what the journal says; what they do not mention stays."""
        from app.store.rebuild import write_found

        with self.transaction() as connection:
            write_found(connection, contents)
            self.sidecars.ask_for(take_ids=contents.takes, days=contents.days, journal=True)

    def back_up(self) -> Path:
        """Copy the database (without curves) to the backups and say where."""
        from app.store.backups import back_up

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

    @made_once
    def takes(self) -> "TakeRepository":
        from app.store.takes import TakeRepository

        return TakeRepository(self._work)

    @made_once
    def passages(self) -> "PassageRepository":
        from app.store.passages import PassageRepository

        return PassageRepository(self._work)

    @made_once
    def markers(self) -> "MarkerRepository":
        from app.store.markers import MarkerRepository

        return MarkerRepository(self._work)

    @made_once
    def sessions(self) -> "SessionRepository":
        from app.store.sessions import SessionRepository

        return SessionRepository(self._work)

    @made_once
    def rest_days(self) -> "RestDayRepository":
        from app.store.sessions import RestDayRepository

        return RestDayRepository(self._work)

    @made_once
    def measurements(self) -> "MeasurementRepository":
        from app.store.measurements import MeasurementRepository

        return MeasurementRepository(self._work)

    @made_once
    def settings(self) -> "SettingsRepository":
        from app.store.settings import SettingsRepository

        return SettingsRepository(self._work)

    @made_once
    def items(self) -> "ItemRepository":
        from app.store.items import ItemRepository

        return ItemRepository(self._work)

    @made_once
    def blocks(self) -> "BlockRepository":
        from app.store.blocks import BlockRepository

        return BlockRepository(self._work)

    @made_once
    def clock(self) -> "ClockRepository":
        from app.store.blocks import ClockRepository

        return ClockRepository(self._work)

    @made_once
    def attempts(self) -> "AttemptRepository":
        from app.store.attempts import AttemptRepository

        return AttemptRepository(self._work)

    @made_once
    def put_aside(self) -> "PutAsideRepository":
        from app.store.attempts import PutAsideRepository

        return PutAsideRepository(self._work)

    @made_once
    def promises(self) -> "PromiseRepository":
        from app.store.promises import PromiseRepository

        return PromiseRepository(self._work)

    @made_once
    def shared_numbers(self) -> "SharedNumberRepository":
        from app.store.promises import SharedNumberRepository

        return SharedNumberRepository(self._work)

    @made_once
    def assignments(self) -> "AssignmentRepository":
        from app.store.assignments import AssignmentRepository

        return AssignmentRepository(self._work)

    @made_once
    def occasions(self) -> "OccasionRepository":
        from app.store.assignments import OccasionRepository

        return OccasionRepository(self._work)

    @made_once
    def earlier_hours(self) -> "EarlierHoursRepository":
        from app.store.assignments import EarlierHoursRepository

        return EarlierHoursRepository(self._work)

    @made_once
    def plans(self) -> "PlanRepository":
        from app.store.plans import PlanRepository

        return PlanRepository(self._work)

    @made_once
    def rehearsals(self) -> "RehearsalRepository":
        from app.store.rehearsals import RehearsalRepository

        return RehearsalRepository(self._work)

    @made_once
    def tables(self) -> "Tables":
        from app.store.tables import Tables

        return Tables(self._work)

    @made_once
    def dismissals(self) -> "DismissalRepository":
        from app.store.listening import DismissalRepository

        return DismissalRepository(self._work)

    @made_once
    def first_listens(self) -> "FirstListenRepository":
        from app.store.listening import FirstListenRepository

        return FirstListenRepository(self._work)

    @made_once
    def still_there(self) -> "StillThereRepository":
        from app.store.following import StillThereRepository

        return StillThereRepository(self._work)

    @made_once
    def bounds(self) -> "PassageBoundsRepository":
        from app.store.following import PassageBoundsRepository

        return PassageBoundsRepository(self._work)

    @made_once
    def blind_trials(self) -> "BlindTrialRepository":
        from app.store.following import BlindTrialRepository

        return BlindTrialRepository(self._work)

    @made_once
    def alignments(self) -> "PairAlignmentRepository":
        from app.store.following import PairAlignmentRepository

        return PairAlignmentRepository(self._work)

    @made_once
    def outlines(self) -> "TakeOutlineRepository":
        from app.store.following import TakeOutlineRepository

        return TakeOutlineRepository(self._work)

    @made_once
    def remarks(self) -> "LessonRemarkRepository":
        from app.store.remarks import LessonRemarkRepository

        return LessonRemarkRepository(self._work)

    @made_once
    def shared_clips(self) -> "SharedClipRepository":
        from app.store.shared_clips import SharedClipRepository

        return SharedClipRepository(self._work)

    @made_once
    def sidecars(self) -> "Sidecars":
        """Give what is written beside the recordings."""
        from app.store.sidecars import Records, Sidecars

        records = Records(
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
        )
        return Sidecars(self.folders, self._work, records, self._clock)

    def _note_due(self, connection: "Connection", keys: frozenset[SidecarKey]) -> None:
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
        from app.store.looking import engine_for_looking

        with held:
            engine = engine_for_looking(folders, held)
            return Store(folders, lambda: engine, held.pop_all(), read_only=True, clock=clock)
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
        is_due = is_any_due(folders.database)
        make_engine = partial(_engine, folders.database)
        store = Store(folders, make_engine, held.pop_all(), read_only=False, clock=clock)
    try:
        if is_due:
            store.sidecars.write_due()
    except BaseException:
        store.close()
        raise
    return store


def _engine(database: Path) -> "Engine":
    from app.store.engines import writing_engine

    return writing_engine(database)


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
