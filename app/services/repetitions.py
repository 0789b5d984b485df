"""Repetitions: every run through a passage in a longer recording, and how many held.

The caution beside it is meant: a number of repetitions in a row invites to play on when
the hand is tired, and practice can hurt.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np

from analysis.results import FloatArray
from app.journal.bounds import PassageBounds
from app.journal.failures import PlainFailure
from app.journal.records import Passage, Take
from app.journal.scores import Score
from app.services.bounds import BoundsService
from app.services.following_views import RepetitionsView, RunRow
from app.services.long_sounds import read_for_measuring
from app.services.measuring import MeasuringService
from app.services.outlines import Outlines, outline_of_score
from app.services.passages import passage_title
from app.services.reading_views import AnyReading, NoReading, Reading
from app.services.records_there import passage_there, take_there
from app.services.rows import Rows
from app.services.score_aligning import written_notes
from app.services.score_keeping import ScoreShelf
from app.services.stopping import (
    Progress,
    ShouldStop,
    never_stop,
    no_progress,
    part_of,
    stop_if,
    stopped_by,
)
from app.services.wording import counted
from app.store.store import Store

if TYPE_CHECKING:
    from analysis.outline import Outline
    from analysis.results import JudgedNote, Note, TakeAnalysis
    from analysis.run_throughs import RunThrough
    from app.services.long_sounds import MeasurableSound
    from app.services.views import TakeRow

CAUTION = "Rest the hand before the next ten; stop when anything hurts."
_MANY_RUNS = 10
_FEWEST_BEATS = 4
_AROUND_S = 0.3
_SHORTER = 0.7


@dataclass(frozen=True, slots=True)
class _Reference:
    """What runs are held against: a score, or another take of the passage."""

    outline: "Outline"
    score: Score | None = None
    heard: "MeasurableSound | None" = None
    analysis: "TakeAnalysis | None" = None


class RepetitionService:
    """Finds, counts and judges run-throughs."""

    def __init__(
        self,
        store: Store,
        measuring: MeasuringService,
        bounds: BoundsService,
        shelf: ScoreShelf,
    ) -> None:
        self._store = store
        self._measuring = measuring
        self._bounds = bounds
        self._shelf = shelf
        self._outlines = Outlines(store)
        self._rows = Rows(store)

    def find(
        self,
        take_id: str,
        passage_id: str | None = None,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> RepetitionsView:
        """Find every run through a passage in a take.

        Parameters
        ----------
        take_id : str
        passage_id : str, optional
            Which passage; without it that of the take.

        Raises
        ------
        PlainFailure
            Where take or passage are not there, or nothing tells what the passage is.
        """
        from analysis.results import Measured  # noqa: PLC0415 - numba, only when needed
        from analysis.run_throughs import find_run_throughs  # noqa: PLC0415

        take = take_there(self._store, take_id)
        passage = self._passage(passage_id or take.passage_id)
        analysis = self._measuring.analysed(take_id, part_of(progress, 0.0, 0.6), should_stop)
        recording = self._outlines.of_take(take, should_stop)
        reference = self._reference(passage, take, should_stop)
        found = find_run_throughs(reference.outline, recording)
        if not isinstance(found, Measured):
            raise PlainFailure(found.sentence, "Choose a longer passage or another recording.")
        heard = read_for_measuring(
            self._store.folders.absolute(take.file), part_of(progress, 0.6, 0.7), should_stop
        )
        bounds = self._bounds.get(passage.id)
        rows = []
        for number, run in enumerate(found.value, start=1):
            stop_if(should_stop)
            rows.append(self._row(number, run, analysis, heard, reference, bounds, should_stop))
            progress(0.7 + 0.3 * number / len(found.value))
        return _view(self._rows.of_take(take), passage, tuple(rows))

    def _row(  # noqa: PLR0917 - one run with all it is held against
        self,
        number: int,
        run: "RunThrough",
        analysis: "TakeAnalysis",
        heard: "MeasurableSound",
        reference: _Reference,
        bounds: PassageBounds,
        should_stop: ShouldStop,
    ) -> RunRow:
        span = (run.start_s - _AROUND_S, run.end_s + _AROUND_S)
        notes = [n for n in analysis.notes if span[0] <= n.note.start_s < span[1]]
        cents = _mean_absolute(notes)
        beats = _beats(run, notes, heard, reference, should_stop)
        bpm, steadiness = _tempo(beats, run.is_complete)
        holds = bounds.hold(
            cents.value if isinstance(cents, Reading) else None,
            steadiness.value if isinstance(steadiness, Reading) else None,
        )
        return RunRow(
            number=number,
            start_s=run.start_s,
            end_s=run.end_s,
            complete=run.is_complete,
            bpm=bpm,
            mean_absolute_cents=cents,
            steadiness=steadiness,
            holds=holds if run.is_complete else None,
        )

    def _reference(self, passage: Passage, take: Take, should_stop: ShouldStop) -> _Reference:
        score = self._shelf.of_passage(passage, should_stop)
        written = outline_of_score(score) if score is not None else None
        if written is not None:
            return _Reference(written, score=score)
        others = [t for t in self._store.takes.list(passage_id=passage.id) if t.id != take.id]
        shorter = [t for t in others if t.duration_s < _SHORTER * take.duration_s]
        if not others:
            raise PlainFailure(
                f"Nothing tells yet how '{passage_title(passage)}' goes.",
                "Record one take of it alone, or put its score beside it.",
            )
        chosen = (shorter or others)[-1]
        path = self._store.folders.absolute(chosen.file)
        return _Reference(
            self._outlines.of_take(chosen, should_stop),
            heard=read_for_measuring(path, no_progress, should_stop),
            analysis=self._measuring.analysed(chosen.id, no_progress, should_stop),
        )

    def _passage(self, passage_id: str | None) -> Passage:
        if passage_id is None:
            raise PlainFailure("This take belongs to no passage.", "Choose a passage.")
        return passage_there(self._store, passage_id)


def _mean_absolute(notes: "Sequence[JudgedNote]") -> AnyReading:
    from analysis.results import Measured, NoteKind  # noqa: PLC0415

    sizes = [
        abs(note.deviation.value.deviation_cents)
        for note in notes
        if isinstance(note.deviation, Measured) and note.note.kind is NoteKind.NOTE
    ]
    if not sizes:
        return NoReading("No note of this run is measurable.")
    return Reading(float(np.mean(sizes)), "cents", None, 1)


def _beats(
    run: "RunThrough",
    notes: "Sequence[JudgedNote]",
    heard: "MeasurableSound",
    reference: _Reference,
    should_stop: ShouldStop,
) -> FloatArray:
    """Give the times of the passage's beats in a run; empty where they cannot be told."""
    from analysis.alignment import align, map_time  # noqa: PLC0415 - numba, when needed
    from analysis.results import Measured  # noqa: PLC0415
    from analysis.score_following import align_to_score  # noqa: PLC0415
    from analysis.stopping import Stopped as AnalysisStopped  # noqa: PLC0415

    rate = heard.sound.sample_rate_hz
    first = max(0, round((run.start_s - _AROUND_S) * rate))
    piece = heard.sound.samples[first : round((run.end_s + _AROUND_S) * rate)]
    start_s = first / rate
    own = [replace(n, note=_moved(n.note, -start_s)) for n in notes]
    with stopped_by(AnalysisStopped):
        if reference.score is not None:
            beats = np.array(reference.score.counted_beats, dtype=np.float64)
            written = written_notes(reference.score)
            followed = align_to_score(piece, rate, written, notes=own, should_stop=should_stop)
            if not isinstance(followed, Measured):
                return np.empty(0)
            inside = (beats >= followed.value.beats[0] - 1e-6) & (
                beats <= followed.value.beats[-1] + 1e-6
            )
            return followed.value.time_at(beats[inside])
        other, model = reference.heard, reference.analysis
        if other is None or model is None or not isinstance(model.tempo, Measured):
            return np.empty(0)
        found = align(
            other.sound.samples,
            other.sound.sample_rate_hz,
            piece,
            rate,
            notes_a=model.notes,
            notes_b=own,
            should_stop=should_stop,
        )
    if not isinstance(found, Measured):
        return np.empty(0)
    beat_s = model.tempo.value.beat_s
    inside = (beat_s >= found.value.a_s[0] - 0.05) & (beat_s <= found.value.a_s[-1] + 0.05)
    return map_time(found.value, beat_s[inside])


def _moved(note: "Note", by_s: float) -> "Note":
    return replace(
        note,
        start_s=note.start_s + by_s,
        end_s=note.end_s + by_s,
        steady_start_s=note.steady_start_s + by_s,
        steady_end_s=note.steady_end_s + by_s,
    )


def _tempo(beat_s: FloatArray, complete: bool) -> tuple[AnyReading, AnyReading]:
    """Give mean tempo and steadiness from the times of beats."""
    interval = np.diff(beat_s)
    if interval.size < _FEWEST_BEATS or np.any(interval <= 0):
        missing = NoReading("The beats of this run cannot be told.")
        return missing, missing
    bpm = Reading(60.0 * interval.size / float(beat_s[-1] - beat_s[0]), "BPM", None, 1)
    if not complete:
        return bpm, NoReading("This run breaks off.")
    spread = 100.0 * float(interval.std(ddof=1) / interval.mean())
    return bpm, Reading(spread, "%", None, 1)


def _view(take: "TakeRow", passage: Passage, runs: tuple[RunRow, ...]) -> RepetitionsView:
    whole = [run for run in runs if run.complete]
    longest = row = 0
    for run in whole:
        row = row + 1 if run.holds else 0
        longest = max(longest, row)
    return RepetitionsView(
        take=take,
        passage=passage,
        runs=runs,
        complete=len(whole),
        longest_in_a_row=longest,
        in_a_row_now=row,
        sentence=_sentence(len(runs), len(whole), longest),
    )


def _sentence(found: int, whole: int, longest: int) -> str:
    if not found:
        return "The passage was not found in this recording."
    said = f"{counted(whole, 'whole run', 'whole runs')}"
    if found > whole:
        said += f" and {counted(found - whole, 'broken-off one', 'broken-off ones')}"
    said += f"; at most {longest} in a row inside your bounds."
    return f"{said} {CAUTION}" if found >= _MANY_RUNS else said
