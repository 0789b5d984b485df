"""Puts the rooms together: the only module beside the program's start that sees all of them."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from app.services.comparing import ComparingService
from app.services.filing import FilingService
from app.services.importing import ImportingService
from app.services.listening import ListeningService
from app.services.marking import MarkingService
from app.services.measuring import MeasuringService
from app.services.passages import PassageService
from app.services.playing import PlayingService
from app.services.practising import PractisingService
from app.services.recording import RecordingService
from app.services.reporting import ReportingService


def local_now() -> datetime:
    """Give the instant now in the machine's time zone."""
    return datetime.now().astimezone()


@dataclass(frozen=True, slots=True)
class Workbench:
    """A journal that is open, and everything that can be done with it."""

    journal_dir: Path
    read_only: bool
    passages: PassageService
    practising: PractisingService
    recording: RecordingService
    importing: ImportingService
    filing: FilingService
    measuring: MeasuringService
    listening: ListeningService
    playing: PlayingService
    marking: MarkingService
    comparing: ComparingService
    reporting: ReportingService

    def close(self) -> None:
        """Stop sound, let go of devices and of the journal."""
        raise NotImplementedError


def default_journal_dir() -> Path:
    """Give the player's journal: ``PASSAGEWORK_JOURNAL``, or one in the documents folder."""
    raise NotImplementedError


def open_workbench(
    journal_dir: Path,
    *,
    create: bool = True,
    read_only: bool = False,
    clock: Callable[[], datetime] = local_now,
) -> Workbench:
    """Open a journal; PlainFailure where that cannot be."""
    raise NotImplementedError
