"""Outlines of takes and scores, made once: what passages are found and told apart by."""

from pathlib import Path
from typing import TYPE_CHECKING

from app.journal.records import Take
from app.journal.scores import Score
from app.services.long_sounds import read_for_measuring
from app.services.stopping import Progress, ShouldStop, no_progress, stopped_by
from app.store.store import Store

if TYPE_CHECKING:
    from analysis.outline import Outline

_USUAL_BPM = 80.0


class Outlines:
    """Gives outlines, from the store where they were made before."""

    def __init__(self, store: Store) -> None:
        self._store = store

    def of_take(self, take: Take, should_stop: ShouldStop) -> "Outline":
        """Give the outline of a take; a recording never changes, so it is made once."""
        from analysis.outline import ALGORITHM, Outline  # noqa: PLC0415 - numba, when needed

        made_from = f"{ALGORITHM}|{take.sha256}"
        kept = self._store.outlines.get(take.id, made_from)
        if kept is not None:
            return Outline.from_bytes(kept)
        found = outline_of_file(self._store.folders.absolute(take.file), no_progress, should_stop)
        block = found.as_bytes()
        if not self._store.read_only:
            self._store.outlines.put(take.id, made_from, block)
        return Outline.from_bytes(block)


def outline_of_file(path: Path, progress: Progress, should_stop: ShouldStop) -> "Outline":
    """Give the outline of a recording.

    Raises
    ------
    PlainFailure
        Where it cannot be read.
    """
    from analysis.outline import outline  # noqa: PLC0415 - numba, only when needed
    from analysis.stopping import Stopped as AnalysisStopped  # noqa: PLC0415

    found = read_for_measuring(path, progress, should_stop)
    with stopped_by(AnalysisStopped):
        return outline(
            found.sound.samples,
            found.sound.sample_rate_hz,
            should_stop=found.watched(should_stop),
        )


def outline_of_score(score: Score) -> "Outline | None":
    """Give the outline of what is written; ``None`` for a score without notes."""
    from analysis.outline import outline_of  # noqa: PLC0415 - numba, only when needed
    from analysis.written_features import written_features  # noqa: PLC0415
    from app.services.score_aligning import written_notes  # noqa: PLC0415

    written = written_notes(score)
    if not written.midi.size:
        return None
    return outline_of(written_features(written, score.tempo_bpm or _USUAL_BPM))
