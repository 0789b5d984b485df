"""What the commands need from the rest of the house, handed in by the program's start."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date, datetime
from pathlib import Path
from typing import TYPE_CHECKING, Protocol

from app.journal.failures import PlainFailure
from app.services.stopping import Progress, ShouldStop

if TYPE_CHECKING:
    import typer

    from app.services.repairing import RepairReport, RestoreReport
    from app.services.window_end import WindowEnd
    from app.services.workbench import Workbench


class OpenWorkbench(Protocol):
    """Opens a journal."""

    def __call__(
        self, journal_dir: Path, *, create: bool = True, read_only: bool = False
    ) -> "Workbench":
        """Open the journal in a folder; PlainFailure where that cannot be."""


class BuildDemo(Protocol):
    """Builds the demo journal."""

    def __call__(
        self, journal_dir: Path, *, end: date, progress: Progress, should_stop: ShouldStop
    ) -> None:
        """Build it in a new folder, whole or not at all."""


class Repair(Protocol):
    """Checks and mends a journal."""

    def __call__(
        self, journal_dir: Path, progress: Progress, should_stop: ShouldStop
    ) -> "RepairReport":
        """Check a journal that is not open, and mend what can be mended."""


class Restore(Protocol):
    """Goes back to a backup."""

    def __call__(
        self, journal_dir: Path, backup: str, progress: Progress, should_stop: ShouldStop
    ) -> "RestoreReport":
        """Replace the database of a journal that is not open by a backup of it."""


class Visit(Protocol):
    """Opens a bundle."""

    def __call__(self, bundle: Path, progress: Progress, should_stop: ShouldStop) -> Path:
        """Make a journal of its own out of a bundle, once; gives its folder."""


class RunWindow(Protocol):
    """Shows the window and returns when it is closed."""

    def __call__(self, workbench: "Workbench", *, told: str = "") -> "WindowEnd":
        """Show it; `told` is a sentence to begin with."""


@dataclass(frozen=True, slots=True)
class Program:
    """The doors out of the command line."""

    open_workbench: OpenWorkbench
    default_journal_dir: Callable[[], Path]
    build_demo: BuildDemo
    repair: Repair
    restore: Restore
    visit: Visit
    run_window: RunWindow
    show_failure: Callable[[PlainFailure], None]
    now: Callable[[], datetime]

    @staticmethod
    def of(context: "typer.Context") -> "Program":
        """Give the program that a command runs in."""
        found = context.find_object(Program)
        if found is None:
            raise RuntimeError("the command line was started without a Program")
        return found

    def journal(self, chosen: Path | None) -> Path:
        """Give the folder of the journal that is meant."""
        return chosen if chosen is not None else self.default_journal_dir()
