"""Measuring takes and files."""

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from app.journal.records import PlayingSettings
from app.services.stopping import Progress, ShouldStop, never_stop, no_progress
from app.services.views import TakeRow

if TYPE_CHECKING:
    from analysis.results import TakeAnalysis


@dataclass(frozen=True, slots=True)
class MeasureReport:
    """What was measured on one file."""

    file: str
    analysis: "TakeAnalysis"
    settings: PlayingSettings

    def as_json(self, curves: bool = False) -> dict[str, object]:
        """Give the machine-readable object (app/schemas/measure.schema.json)."""
        raise NotImplementedError


class MeasuringService:
    """Measures takes and keeps the result with its algorithm version."""

    def waiting(self) -> tuple[str, ...]:
        """Give the takes that are not measured, or by an older algorithm."""
        raise NotImplementedError

    def measure(
        self,
        take_id: str,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> TakeRow:
        """Measure a take and keep the result."""
        raise NotImplementedError

    def measure_file(
        self,
        path: Path,
        settings: PlayingSettings,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> MeasureReport:
        """Measure a file that need not be in any journal."""
        raise NotImplementedError
