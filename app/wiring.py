"""Puts the rooms together: beside the program's start the only module that sees all of them."""

import os
from collections.abc import Callable
from datetime import date, datetime, tzinfo
from pathlib import Path

from app.journal.records import Author
from app.services.aligning import AligningService
from app.services.assigning import AssignmentService
from app.services.attempts import Attempts
from app.services.backing_up import BackupService
from app.services.blind_listening import BlindEarService
from app.services.bounds import BoundsService
from app.services.bundling.replying import ReplyService
from app.services.bundling.service import BundleService
from app.services.bundling.visiting import VISITING
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
from app.services.lesson.gathering import Gatherer
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
from app.services.passage_bars import BarService
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
from app.services.stopping import Progress, ShouldStop, never_stop, no_progress
from app.services.suggesting import SuggestingService
from app.services.take_filing import TakeFiler
from app.services.undoing import Undoing
from app.services.watching import WatchService
from app.services.workbench import Workbench
from app.store.store import Store, open_store

__all__ = [
    "Workbench",
    "build_demo",
    "default_journal_dir",
    "local_now",
    "open_workbench",
]

JOURNAL_VARIABLE = "PASSAGEWORK_JOURNAL"


def local_now() -> datetime:
    """Give the instant now in the machine's time zone."""
    return datetime.now().astimezone()


def local_zone() -> tzinfo:
    """Give the machine's time zone, with its summer time rules."""
    import tzlocal  # noqa: PLC0415 - reads files; only when a journal is opened

    return tzlocal.get_localzone()


def default_journal_dir() -> Path:
    """Give the player's journal: ``PASSAGEWORK_JOURNAL``, or one in the documents folder."""
    chosen = os.environ.get(JOURNAL_VARIABLE, "").strip()
    if chosen:
        return Path(chosen).expanduser()
    import platformdirs  # noqa: PLC0415 - only when needed

    return Path(platformdirs.user_documents_dir()) / "Passagework"


def open_workbench(
    journal_dir: Path,
    *,
    create: bool = True,
    read_only: bool = False,
    clock: Callable[[], datetime] = local_now,
) -> Workbench:
    """Open a journal.

    Parameters
    ----------
    journal_dir : Path
    create : bool
        Start a journal where there is none.
    read_only : bool
        Look only; another copy of the program may have it open.
    clock : callable
        Gives the present instant, timezone-aware.

    Raises
    ------
    PlainFailure
        Where it cannot be opened; the sentence says why.
    """
    store = open_store(journal_dir, create=create, read_only=read_only, clock=clock)
    try:
        return _workbench(store, clock)
    except BaseException:
        store.close()
        raise


def _workbench(store: Store, clock: Callable[[], datetime]) -> Workbench:
    zone = local_zone()
    undoing = Undoing(store)
    assignments = AssignmentService(store, clock, undoing)
    promises = PromiseService(store, clock, undoing)
    bundles = BundleService(store, clock)
    is_visit = bundles.visiting is not None
    refusal = VISITING if is_visit else None
    practice_clock = ClockService(store, clock, zone, refusal)
    filer = TakeFiler(store, clock, refusal)
    attempts = Attempts(store, clock)
    passages = PassageService(store, clock)
    shelf = ScoreShelf(store)
    measuring = MeasuringService(store, clock, shelf)
    listening = ListeningService(store, measuring)
    aligning = AligningService(store, measuring)
    comparing = ComparingService(store, measuring, listening, aligning)
    bounds = BoundsService(store, clock)
    note_maps = NoteMapService(store, comparing, shelf)
    inputs = Inputs(store)
    recording = RecordingService(
        store, clock, filer, attempts, touch_clock=practice_clock.touch, inputs=inputs
    )
    playing = PlayingService(store)
    importing = ImportingService(store, clock, filer, zone, attempts)
    practising = PractisingService(store, clock, practice_clock)
    sounding = SoundingService(store, clock, zone, inputs, refusal)
    author = Author.TEACHER if is_visit else Author.SELF
    marking = MarkingService(store, clock, undoing, author)
    suggesting = SuggestingService(store, clock, listening, marking, undoing)
    backups = BackupService(store, clock)
    minutes, record = MinutesService(store), RecordService(store, clock)
    gatherer = Gatherer(
        store,
        comparing=comparing,
        assignments=assignments,
        promises=promises,
        minutes=minutes,
        record=record,
    )
    return Workbench(
        journal_dir=store.folders.journal,
        read_only=store.read_only,
        passages=passages,
        scores=ScoreService(store, clock, passages, shelf),
        practising=practising,
        recording=recording,
        importing=importing,
        filing=FilingService(store, clock, undoing, passages, attempts),
        measuring=measuring,
        listening=listening,
        playing=playing,
        marking=marking,
        comparing=comparing,
        note_maps=note_maps,
        looking_back=LookingBackService(store, clock),
        aligning=aligning,
        bounds=bounds,
        carrying=CarryingService(store, clock, measuring, aligning, bounds),
        changes=ChangeService(
            store, bounds, note_maps, BarService(store, measuring, aligning, shelf)
        ),
        repetitions=RepetitionService(store, measuring, bounds, shelf),
        shapes=ShapeService(store, measuring, aligning, shelf),
        proposing=ProposingService(store, shelf),
        blind_ear=BlindEarService(store, clock),
        reporting=ReportingService(store, comparing, assignments, promises),
        clock=practice_clock,
        no_retake=NoRetakeService(store, attempts),
        input_memory=InputMemory(store),
        items=ItemService(store, clock, changed=practice_clock.refresh),
        minutes=minutes,
        watching=WatchService(store, clock, importing),
        promises=promises,
        assignments=assignments,
        planning=PlanningService(store, clock, assignments, undoing),
        record=record,
        minutes_import=MinutesImportService(store, practising),
        rehearsals=RehearsalService(store, clock, refusal=refusal),
        reminders=ReminderService(store, clock, promises),
        latency=LatencyService(store, clock, inputs),
        sounding=sounding,
        suggesting=suggesting,
        first_listening=FirstListenService(store, clock, listening, suggesting),
        filming=FilmingService(store, playing),
        backups=backups,
        bundles=bundles,
        replies=ReplyService(store, clock, bundles),
        sharing=ShareService(store, clock, listening, promises),
        lessons=LessonService(
            store, clock, gatherer, comparing=comparing, assignments=assignments, author=author
        ),
        exports=ExportService(store, clock, measuring, practising),
        closing=(
            playing.unload,
            sounding.close,
            recording.close,
            practice_clock.close,
            backups.close,
            store.close,
        ),
    )


def build_demo(
    journal_dir: Path,
    *,
    end: date,
    progress: Progress = no_progress,
    should_stop: ShouldStop = never_stop,
) -> None:
    """Build the demo journal in a new folder; see :func:`app.services.demo.build_demo`."""
    from app.services.demo import build_demo as build  # noqa: PLC0415 - only for the demo

    build(journal_dir, end=end, progress=progress, should_stop=should_stop)
