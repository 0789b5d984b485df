"""A journal that is open, and everything that can be done with it."""

from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path

from app.services.aligning import AligningService
from app.services.assigning import AssignmentService
from app.services.backing_up import BackupService
from app.services.blind_listening import BlindEarService
from app.services.bounds import BoundsService
from app.services.bundling.replying import ReplyService
from app.services.bundling.service import BundleService
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
from app.services.scores import ScoreService
from app.services.shapes import ShapeService
from app.services.sharing.service import ShareService
from app.services.sounding import SoundingService
from app.services.suggesting import SuggestingService
from app.services.watching import WatchService


@dataclass(frozen=True, slots=True)
class Workbench:
    """The services of one open journal; close it when done.

    All services are synchronous. Whatever a service's docstring does not call
    instant belongs off the GUI thread; two threads may use the services at once,
    the store lets one in at a time.
    """

    journal_dir: Path
    read_only: bool
    passages: PassageService
    scores: ScoreService
    practising: PractisingService
    recording: RecordingService
    importing: ImportingService
    filing: FilingService
    measuring: MeasuringService
    listening: ListeningService
    playing: PlayingService
    marking: MarkingService
    comparing: ComparingService
    note_maps: NoteMapService
    looking_back: LookingBackService
    aligning: AligningService
    bounds: BoundsService
    carrying: CarryingService
    changes: ChangeService
    repetitions: RepetitionService
    shapes: ShapeService
    proposing: ProposingService
    blind_ear: BlindEarService
    reporting: ReportingService
    clock: ClockService
    no_retake: NoRetakeService
    input_memory: InputMemory
    items: ItemService
    minutes: MinutesService
    watching: WatchService
    promises: PromiseService
    assignments: AssignmentService
    planning: PlanningService
    record: RecordService
    minutes_import: MinutesImportService
    rehearsals: RehearsalService
    reminders: ReminderService
    latency: LatencyService
    sounding: SoundingService
    suggesting: SuggestingService
    first_listening: FirstListenService
    filming: FilmingService
    backups: BackupService
    exports: ExportService
    bundles: BundleService
    replies: ReplyService
    lessons: LessonService
    sharing: ShareService
    closing: tuple[Callable[[], None], ...] = ()
    working: list[Callable[[], None]] = field(default_factory=list)
    """How whoever works with the services on other threads comes to an end."""

    def close(self) -> None:
        """Stop sound, let go of devices and of the journal; safe to call twice.

        Whoever still works with the services ends first, so that nothing meets a journal
        that is closed.
        """
        for step in (*self.working, *self.closing):
            step()

    def __enter__(self) -> "Workbench":
        return self

    def __exit__(self, *_exception: object) -> None:
        self.close()
