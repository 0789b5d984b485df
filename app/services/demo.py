"""The demo journal: an invented scenario, rendered and measured for real."""

from datetime import date
from pathlib import Path

from app.services.stopping import Progress, ShouldStop, never_stop, no_progress


def build_demo(
    journal_dir: Path,
    *,
    end: date,
    progress: Progress = no_progress,
    should_stop: ShouldStop = never_stop,
) -> None:
    """Render, file and measure the demo's takes."""
    raise NotImplementedError
