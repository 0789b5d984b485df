"""Measuring takes and keeping what was measured."""

from collections.abc import Iterable
from dataclasses import replace
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

from app.journal.failures import PlainFailure
from app.journal.practice_days import Clock
from app.journal.records import MeasurementHeadline, PlayingSettings, StoredMeasurement, Take
from app.services import file_measuring
from app.services.file_measuring import (
    MeasureReport,
    analyse_sound,
    notice_of,
    without_score,
    written_line,
)
from app.services.latest import Latest
from app.services.long_sounds import read_for_measuring
from app.services.records_there import take_there
from app.services.rows import Rows
from app.services.score_keeping import ScoreShelf, held_against
from app.services.stopping import (
    Progress,
    ShouldStop,
    never_stop,
    no_progress,
    part_of,
    stop_if,
)
from app.services.views import TakeRow
from app.store.store import Store

if TYPE_CHECKING:
    from analysis.results import TakeAnalysis
    from app.journal.scores import Score

__all__ = ["MeasureReport", "MeasuringService"]

_MOST_DECODED = 3
_LARGEST_DECODED_BYTES = 4_000_000


def current_algorithm() -> str:
    """Give the version of the measuring code; loads it (a second, the first time)."""
    from analysis.take import ALGORITHM  # noqa: PLC0415 - scipy and numba, only when needed

    return ALGORITHM


class MeasuringService:
    """Measures takes and keeps the result with its algorithm version and parameters."""

    def __init__(self, store: Store, clock: Clock, shelf: ScoreShelf | None = None) -> None:
        self._store = store
        self._clock = clock
        self._shelf = shelf or ScoreShelf(store)
        self._rows = Rows(store)
        self._decoded: Latest[str, tuple[datetime, TakeAnalysis]] = Latest(_MOST_DECODED)

    def waiting(self) -> tuple[str, ...]:
        """Give the takes that are not measured, or stale, the newest first.

        Stale: measured by an older algorithm or with other settings. A take on which
        this algorithm failed does not wait. Loads the measuring code.
        """
        return self._store.measurements.waiting(current_algorithm())

    def measure(
        self,
        take_id: str,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> TakeRow:
        """Measure a take and keep the result.

        A take that cannot be read gets a stored failure, so that it does not wait for
        ever; the failure is raised too.

        Raises
        ------
        PlainFailure
            Where the take is not there or its file cannot be read.
        Stopped
            Once `should_stop` says so; nothing is kept then.
        """
        take = take_there(self._store, take_id)
        score_name = held_against(self._store, take)
        try:
            path = self._store.folders.absolute(take.file)
            found = read_for_measuring(path, part_of(progress, 0.0, 0.1), should_stop)
            stop_if(should_stop)
            settings, watched = take.settings, found.watched(should_stop)
            score, why_not = self._score(take, should_stop)
            line = written_line(score, score_name) if score else None
            rest = part_of(progress, 0.1, 0.98)
            analysis = analyse_sound(found.sound, settings, rest, watched, score=line)
            if why_not is not None:
                analysis = replace(analysis, score=without_score(why_not))
        except PlainFailure as failure:
            self._keep_failure(take, failure)
            raise
        stop_if(should_stop)
        report = MeasureReport(take.file, analysis, settings, notice_of(found.sound))
        self.keep(report, take, score_name)
        progress(1.0)
        return self._rows.of_take(take_there(self._store, take_id))

    def measure_all(
        self,
        take_ids: Iterable[str],
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> tuple[TakeRow, ...]:
        """Measure several takes; one that fails keeps its failure and the rest goes on."""
        ids = tuple(take_ids)
        rows = []
        for number, take_id in enumerate(ids):
            stop_if(should_stop)
            step = part_of(progress, number / len(ids), (number + 1) / len(ids))
            try:
                rows.append(self.measure(take_id, step, should_stop))
            except PlainFailure:
                rows.append(self._rows.of_take(take_there(self._store, take_id)))
        return tuple(rows)

    def measure_file(
        self,
        path: Path,
        settings: PlayingSettings,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> MeasureReport:
        """Measure a file that need not be in any journal; nothing is kept."""
        return file_measuring.measure_file(path, settings, progress, should_stop)

    def report(self, take_id: str) -> MeasureReport:
        """Give what was measured on a take.

        Raises
        ------
        PlainFailure
            Where the take is not measured, or its measurement must be made again.
        """
        take = take_there(self._store, take_id)
        analysis = self.analysis(take_id)
        if analysis is None:
            raise PlainFailure("This take is not measured yet.", "Measure it first.")
        return MeasureReport(take.file, analysis, take.settings)

    def analysis(self, take_id: str) -> "TakeAnalysis | None":
        """Give the analysis of a take; ``None`` where there is none that can be read."""
        return self._analysis_of(self._store.measurements.headline(take_id))

    def _analysis_of(self, headline: MeasurementHeadline | None) -> "TakeAnalysis | None":
        from app.services.encoding import UnreadableMeasurement, decode  # noqa: PLC0415

        if headline is None or headline.failure:
            return None
        known = self._decoded.get(headline.take_id)
        if known is not None and known[0] == headline.measured_at:
            return known[1]
        kept = self._store.measurements.get(headline.take_id)
        if kept is None or not kept.curves:
            return None
        try:
            found = decode(kept.curves)
        except UnreadableMeasurement:
            return None
        if len(kept.curves) <= _LARGEST_DECODED_BYTES:
            # One take is held against many others in turn: the last ones are asked for again.
            self._decoded.put(kept.take_id, (kept.measured_at, found))
        return found

    def analysed(
        self,
        take_id: str,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> "TakeAnalysis":
        """Give the analysis of a take, measuring it first where that is due."""
        headline = self._store.measurements.headline(take_id)
        is_current = (
            headline is not None
            and not headline.stale
            and headline.algorithm == current_algorithm()
        )
        analysis = self._analysis_of(headline) if is_current else None
        if analysis is None:
            self.measure(take_id, progress, should_stop)
            analysis = self.analysis(take_id)
        if analysis is None:
            raise PlainFailure("This take could not be measured.", "Listen to it instead.")
        return analysis

    def keep(self, report: MeasureReport, take: Take, score_name: str = "") -> None:
        """Keep what was measured on a take; stale where what it rests on changed meanwhile.

        Parameters
        ----------
        report : MeasureReport
        take : Take
            As it was when measuring began.
        score_name : str
            The score it was measured with, by its name; empty: without one.
        """
        from app.services.encoding import encode  # noqa: PLC0415 - numpy only when needed

        summary = report.as_json()
        if report.notice:
            summary["notice"] = report.notice
        curves = encode(report.analysis)
        self._decoded.forget(take.id)
        with self._store.transaction():
            self._store.measurements.put(
                StoredMeasurement(
                    take_id=take.id,
                    algorithm=report.analysis.provenance.algorithm,
                    measured_at=self._clock(),
                    summary=summary,
                    curves=curves,
                )
            )
            now = self._store.takes.get(take.id)
            if now is not None and (
                now.settings != report.settings or held_against(self._store, now) != score_name
            ):
                self._store.measurements.mark_stale(take.id)

    def _score(self, take: Take, should_stop: ShouldStop) -> "tuple[Score | None, str | None]":
        """Give the take's score, or the sentence why it cannot be read any more."""
        try:
            return self._shelf.of_take(take, should_stop), None
        except PlainFailure as failure:
            return None, failure.sentence

    def _keep_failure(self, take: Take, failure: PlainFailure) -> None:
        self._store.measurements.put(
            StoredMeasurement(
                take_id=take.id,
                algorithm=current_algorithm(),
                measured_at=self._clock(),
                failure=failure.sentence,
            )
        )
