"""A take held against what is written for it, by its sound and its notes."""

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from app.journal.scores import Score
from app.services.long_sounds import read_for_measuring
from app.services.stopping import ShouldStop, no_progress, stopped_by

if TYPE_CHECKING:
    from analysis.results import JudgedNote
    from analysis.score_following import ScoreAlignment
    from analysis.written_features import WrittenNotes


def written_notes(score: Score) -> "WrittenNotes":
    """Give the notes of a score as the aligner wants them, chords with all their notes."""
    from analysis.written_features import WrittenNotes  # noqa: PLC0415 - scipy, when needed

    rows = [
        (note.onset_beats, note.duration_beats, float(midi))
        for note in score.notes
        for midi in (*note.chord, note.midi_pitch)
    ]
    table = np.array(rows, dtype=np.float64).reshape(-1, 3)
    return WrittenNotes(table[:, 0], table[:, 1], table[:, 2])


def follow(
    path: Path, score: Score, notes: "Sequence[JudgedNote]", should_stop: ShouldStop
) -> "ScoreAlignment | None":
    """Find each written beat in a recording; ``None`` where it is not this music."""
    from analysis.results import Measured  # noqa: PLC0415
    from analysis.score_following import align_to_score  # noqa: PLC0415 - numba, when needed
    from analysis.stopping import Stopped as AnalysisStopped  # noqa: PLC0415

    found = read_for_measuring(path, no_progress, should_stop)
    with stopped_by(AnalysisStopped):
        aligned = align_to_score(
            found.sound.samples,
            found.sound.sample_rate_hz,
            written_notes(score),
            notes=notes,
            should_stop=found.watched(should_stop),
        )
    return aligned.value if isinstance(aligned, Measured) else None
