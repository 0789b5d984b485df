"""The takes of some days in one format, into a folder."""

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from app.journal.failures import PlainFailure
from app.services.exporting.service import ExportService, TakeFormat
from app.services.stopping import Progress, ShouldStop, never_stop, no_progress, stop_if
from app.services.wording import counted


@dataclass(frozen=True, slots=True)
class SeveralWritten:
    """The files that were written, and why takes were left out, each reason once."""

    files: tuple[Path, ...]
    left_out: int
    reasons: tuple[str, ...]

    @property
    def sentence(self) -> str:
        """What came of it, in words."""
        text = f"{counted(len(self.files), 'file')} written."
        if self.left_out:
            text += f" {counted(self.left_out, 'take')} left out: {' '.join(self.reasons)}"
        return text


def write_takes(
    exports: ExportService,
    take_ids: Sequence[str],
    kind: TakeFormat,
    folder: Path,
    *,
    progress: Progress = no_progress,
    should_stop: ShouldStop = never_stop,
) -> SeveralWritten:
    """Write each take under its proposed name.

    A take that cannot be written this way (not measured, say) is left out with its
    reason. Stopped in between, those that are finished stay.

    Raises
    ------
    PlainFailure
        Where there is no such folder or no take.
    Stopped
        Once `should_stop` says so.
    """
    if not folder.is_dir():
        raise PlainFailure(f"There is no folder {folder}.", "Choose a folder that is there.")
    if not take_ids:
        raise PlainFailure("There is no take in these days.", "Choose other days.")
    files: list[Path] = []
    reasons: list[str] = []
    for done, take_id in enumerate(take_ids):
        stop_if(should_stop)
        try:
            files.append(exports.take(take_id, kind, folder, should_stop))
        except PlainFailure as failure:
            reasons.append(failure.sentence)
        progress((done + 1) / len(take_ids))
    return SeveralWritten(tuple(files), len(reasons), tuple(dict.fromkeys(reasons)))
