"""A journal that is open, and everything that can be done with it.

Each service is loaded and made when it is first asked for: a window that opens on today, or
a command that counts, needs few of them. Longer than 300 lines because it names them all.
"""

from collections.abc import Callable
from datetime import datetime, tzinfo
from threading import RLock
from typing import TYPE_CHECKING

from app.services.bundling.service import BundleService
from app.services.bundling.visiting import VISITING
from app.store.made_once import made_once
from app.store.store import Store

if TYPE_CHECKING:
    from app.journal.kinds import Author
    from app.services.aligning import AligningService
    from app.services.assigning import AssignmentService
    from app.services.attempts import Attempts
    from app.services.backing_up import BackupService
    from app.services.blind_listening import BlindEarService
    from app.services.bounds import BoundsService
    from app.services.bundling.replying import ReplyService
    from app.services.carrying import CarryingService
    from app.services.changes import ChangeService
    from app.services.clock import ClockService
    from app.services.comparing import ComparingService
    from app.services.exporting.service import ExportService
    from app.services.filing import FilingService
    from app.services.filming import FilmingService
    from app.services.first_listening import FirstListenService
    from app.services.importing import ImportingService
    from app.services.input_levels import InputMemory
    from app.services.inputs import Inputs
    from app.services.items import ItemService
    from app.services.latency import LatencyService
    from app.services.lesson.service import LessonService
    from app.services.lifetime import RecordService
    from app.services.listening import ListeningService
    from app.services.looking_back import LookingBackService
    from app.services.marking import MarkingService
    from app.services.measuring import MeasuringService
    from app.services.minutes import MinutesService
    from app.services.minutes_import import MinutesImportService
    from app.services.no_retake import NoRetakeService
    from app.services.note_map import NoteMapService
    from app.services.passages import PassageService
    from app.services.planning import PlanningService
    from app.services.playing import PlayingService
    from app.services.practising import PractisingService
    from app.services.promising import PromiseService
    from app.services.proposing import ProposingService
    from app.services.recording import RecordingService
    from app.services.rehearsing import RehearsalService
    from app.services.reminding import ReminderService
    from app.services.repetitions import RepetitionService
    from app.services.reporting import ReportingService
    from app.services.score_keeping import ScoreShelf
    from app.services.scores import ScoreService
    from app.services.shapes import ShapeService
    from app.services.sharing.service import ShareService
    from app.services.sounding import SoundingService
    from app.services.suggesting import SuggestingService
    from app.services.take_filing import TakeFiler
    from app.services.undoing import Undoing
    from app.services.watching import WatchService


class Workbench:
    """The services of one open journal; close it when done.

    All services are synchronous. Whatever a service's docstring does not call
    instant belongs off the GUI thread; two threads may use the services at once,
    the store lets one in at a time.

    Parameters
    ----------
    store : Store
        The journal; closed with the workbench.
    clock : callable
        Gives the present instant, timezone-aware.
    zone : tzinfo
        The machine's time zone.

    Attributes
    ----------
    journal_dir : Path
    read_only : bool
    bundles : BundleService
    working : list of callable
        How whoever works with the services on other threads comes to an end.
    """

    def __init__(self, store: Store, clock: Callable[[], datetime], zone: tzinfo) -> None:
        self.making = RLock()
        self._store, self._clock, self._zone = store, clock, zone
        self.journal_dir, self.read_only = store.folders.journal, store.read_only
        self.working: list[Callable[[], None]] = []
        self.bundles = BundleService(store, clock)
        is_visit = self.bundles.visiting is not None
        self._refusal = VISITING if is_visit else None

    @property
    def has_unfiled(self) -> bool:
        """True where a recording lies that was not filed, or began and holds no sound."""
        return any(self._store.folders.recording.glob("*"))

    def load(self) -> None:
        """Load what reads and writes the journal, which the first who asks otherwise does."""
        self._store.load()

    def close(self) -> None:
        """Stop sound, let go of devices and of the journal; safe to call twice.

        Whoever still works with the services ends first, so that nothing meets a journal
        that is closed.
        """
        for step in self.working:
            step()
        made = vars(self)
        if "playing" in made:
            self.playing.unload()
        if "sounding" in made:
            self.sounding.close()
        if "recording" in made:
            self.recording.close()
        if "clock" in made:
            self.clock.close()
        self.backups.close()
        self._store.close()

    def __enter__(self) -> "Workbench":
        return self

    def __exit__(self, *_exception: object) -> None:
        self.close()

    @made_once
    def clock(self) -> "ClockService":
        """Give the practice clock."""
        from app.services.clock import ClockService

        return ClockService(self._store, self._clock, self._zone, self._refusal)

    @made_once
    def backups(self) -> "BackupService":
        from app.services.backing_up import BackupService

        return BackupService(self._store, self._clock)

    @made_once
    def _author(self) -> "Author":
        from app.journal.kinds import Author

        return Author.SELF if self._refusal is None else Author.TEACHER

    @made_once
    def _undoing(self) -> "Undoing":
        from app.services.undoing import Undoing

        return Undoing(self._store)

    @made_once
    def _filer(self) -> "TakeFiler":
        from app.services.take_filing import TakeFiler

        return TakeFiler(self._store, self._clock, self._refusal)

    @made_once
    def _attempts(self) -> "Attempts":
        from app.services.attempts import Attempts

        return Attempts(self._store, self._clock)

    @made_once
    def _shelf(self) -> "ScoreShelf":
        from app.services.score_keeping import ScoreShelf

        return ScoreShelf(self._store)

    @made_once
    def _inputs(self) -> "Inputs":
        from app.services.inputs import Inputs

        return Inputs(self._store)

    @made_once
    def passages(self) -> "PassageService":
        from app.services.passages import PassageService

        return PassageService(self._store, self._clock)

    @made_once
    def scores(self) -> "ScoreService":
        from app.services.scores import ScoreService

        return ScoreService(self._store, self._clock, self.passages, self._shelf)

    @made_once
    def practising(self) -> "PractisingService":
        from app.services.practising import PractisingService

        return PractisingService(self._store, self._clock, self.clock, self._refusal)

    @made_once
    def recording(self) -> "RecordingService":
        from app.services.recording import RecordingService

        return RecordingService(
            self._store,
            self._clock,
            self._filer,
            self._attempts,
            touch_clock=self.clock.touch,
            inputs=self._inputs,
        )

    @made_once
    def importing(self) -> "ImportingService":
        from app.services.importing import ImportingService

        return ImportingService(self._store, self._clock, self._filer, self._zone, self._attempts)

    @made_once
    def filing(self) -> "FilingService":
        from app.services.filing import FilingService

        return FilingService(self._store, self._clock, self._undoing, self.passages, self._attempts)

    @made_once
    def measuring(self) -> "MeasuringService":
        from app.services.measuring import MeasuringService

        return MeasuringService(self._store, self._clock, self._shelf)

    @made_once
    def listening(self) -> "ListeningService":
        from app.services.listening import ListeningService

        return ListeningService(self._store, self.measuring)

    @made_once
    def playing(self) -> "PlayingService":
        from app.services.playing import PlayingService

        return PlayingService(self._store)

    @made_once
    def marking(self) -> "MarkingService":
        from app.services.marking import MarkingService

        return MarkingService(self._store, self._clock, self._undoing, self._author)

    @made_once
    def comparing(self) -> "ComparingService":
        from app.services.comparing import ComparingService

        return ComparingService(self._store, self.measuring, self.listening, self.aligning)

    @made_once
    def note_maps(self) -> "NoteMapService":
        from app.services.note_map import NoteMapService

        return NoteMapService(self._store, self.comparing, self._shelf)

    @made_once
    def looking_back(self) -> "LookingBackService":
        from app.services.looking_back import LookingBackService

        return LookingBackService(self._store, self._clock)

    @made_once
    def aligning(self) -> "AligningService":
        from app.services.aligning import AligningService

        return AligningService(self._store, self.measuring)

    @made_once
    def bounds(self) -> "BoundsService":
        from app.services.bounds import BoundsService

        return BoundsService(self._store, self._clock)

    @made_once
    def carrying(self) -> "CarryingService":
        from app.services.carrying import CarryingService

        return CarryingService(self._store, self._clock, self.measuring, self.aligning, self.bounds)

    @made_once
    def changes(self) -> "ChangeService":
        from app.services.changes import ChangeService
        from app.services.passage_bars import BarService

        return ChangeService(
            self._store,
            self.bounds,
            self.note_maps,
            BarService(self._store, self.measuring, self.aligning, self._shelf),
        )

    @made_once
    def repetitions(self) -> "RepetitionService":
        from app.services.repetitions import RepetitionService

        return RepetitionService(self._store, self.measuring, self.bounds, self._shelf)

    @made_once
    def shapes(self) -> "ShapeService":
        from app.services.shapes import ShapeService

        return ShapeService(self._store, self.measuring, self.aligning, self._shelf)

    @made_once
    def proposing(self) -> "ProposingService":
        from app.services.proposing import ProposingService

        return ProposingService(self._store, self._shelf)

    @made_once
    def blind_ear(self) -> "BlindEarService":
        from app.services.blind_listening import BlindEarService

        return BlindEarService(self._store, self._clock)

    @made_once
    def reporting(self) -> "ReportingService":
        from app.services.reporting import ReportingService

        return ReportingService(self._store, self.comparing, self.assignments, self.promises)

    @made_once
    def no_retake(self) -> "NoRetakeService":
        from app.services.no_retake import NoRetakeService

        return NoRetakeService(self._store, self._attempts)

    @made_once
    def input_memory(self) -> "InputMemory":
        from app.services.input_levels import InputMemory

        return InputMemory(self._store)

    @made_once
    def items(self) -> "ItemService":
        from app.services.items import ItemService

        return ItemService(self._store, self._clock, changed=self.clock.refresh)

    @made_once
    def minutes(self) -> "MinutesService":
        from app.services.minutes import MinutesService

        return MinutesService(self._store)

    @made_once
    def watching(self) -> "WatchService":
        from app.services.watching import WatchService

        return WatchService(self._store, self._clock, self.importing)

    @made_once
    def promises(self) -> "PromiseService":
        from app.services.promising import PromiseService

        return PromiseService(self._store, self._clock, self._undoing)

    @made_once
    def assignments(self) -> "AssignmentService":
        from app.services.assigning import AssignmentService

        return AssignmentService(self._store, self._clock, self._undoing)

    @made_once
    def planning(self) -> "PlanningService":
        from app.services.planning import PlanningService

        return PlanningService(self._store, self._clock, self.assignments, self._undoing)

    @made_once
    def record(self) -> "RecordService":
        from app.services.lifetime import RecordService

        return RecordService(self._store, self._clock)

    @made_once
    def minutes_import(self) -> "MinutesImportService":
        from app.services.minutes_import import MinutesImportService

        return MinutesImportService(self._store, self.practising)

    @made_once
    def rehearsals(self) -> "RehearsalService":
        from app.services.rehearsing import RehearsalService

        return RehearsalService(self._store, self._clock, refusal=self._refusal)

    @made_once
    def reminders(self) -> "ReminderService":
        from app.services.reminding import ReminderService

        return ReminderService(self._store, self._clock, self.promises)

    @made_once
    def latency(self) -> "LatencyService":
        from app.services.latency import LatencyService

        return LatencyService(self._store, self._clock, self._inputs)

    @made_once
    def sounding(self) -> "SoundingService":
        from app.services.sounding import SoundingService

        return SoundingService(self._store, self._clock, self._zone, self._inputs, self._refusal)

    @made_once
    def suggesting(self) -> "SuggestingService":
        from app.services.suggesting import SuggestingService

        return SuggestingService(
            self._store, self._clock, self.listening, self.marking, self._undoing
        )

    @made_once
    def first_listening(self) -> "FirstListenService":
        from app.services.first_listening import FirstListenService

        return FirstListenService(self._store, self._clock, self.listening, self.suggesting)

    @made_once
    def filming(self) -> "FilmingService":
        from app.services.filming import FilmingService

        return FilmingService(self._store, self.playing)

    @made_once
    def exports(self) -> "ExportService":
        from app.services.exporting.service import ExportService

        return ExportService(self._store, self._clock, self.measuring, self.practising)

    @made_once
    def replies(self) -> "ReplyService":
        from app.services.bundling.replying import ReplyService

        return ReplyService(self._store, self._clock, self.bundles)

    @made_once
    def lessons(self) -> "LessonService":
        from app.services.lesson.gathering import Gatherer
        from app.services.lesson.service import LessonService

        return LessonService(
            self._store,
            self._clock,
            Gatherer(
                self._store,
                comparing=self.comparing,
                assignments=self.assignments,
                promises=self.promises,
                minutes=self.minutes,
                record=self.record,
            ),
            assignments=self.assignments,
            author=self._author,
        )

    @made_once
    def sharing(self) -> "ShareService":
        from app.services.sharing.service import ShareService

        return ShareService(self._store, self._clock, self.listening, self.promises)
