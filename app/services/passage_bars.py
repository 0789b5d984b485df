"""The bars of a passage in its takes: intonation, tempo, steadiness and loudness of each."""

import math
import warnings
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from analysis.results import FloatArray
from app.journal.failures import PlainFailure
from app.journal.records import Passage, Take
from app.journal.scores import Score
from app.services.aligning import AligningService
from app.services.change_columns import BAR_KEYS, STEADINESS, Bar
from app.services.fair_takes import FairTakes
from app.services.map_rows import MapNote
from app.services.measuring import MeasuringService
from app.services.score_keeping import ScoreShelf
from app.services.stopping import Progress, ShouldStop, no_progress, stop_if
from app.store.store import Store

if TYPE_CHECKING:
    from analysis.results import TakeAnalysis
    from analysis.score_following import ScoreAlignment

_FEWEST_NOTES = 2
_FEWEST_LENGTHS = 3
_SAME_BEAT = 1e-6


@dataclass(frozen=True, slots=True)
class BarTable:
    """Bars of the reference take, and each measure as (takes, bars), NaN for none."""

    bars: tuple[Bar, ...]
    values: Mapping[str, FloatArray]


class BarService:
    """Reads takes bar by bar, where the passage has a score that tells its bars."""

    def __init__(
        self,
        store: Store,
        measuring: MeasuringService,
        aligning: AligningService,
        shelf: ScoreShelf,
    ) -> None:
        self._store = store
        self._measuring = measuring
        self._aligning = aligning
        self._shelf = shelf

    def of_takes(  # noqa: PLR0917 - a table from everything it stands on
        self,
        passage: Passage,
        fair: FairTakes,
        notes: Sequence[MapNote],
        cents: FloatArray,
        progress: Progress,
        should_stop: ShouldStop,
    ) -> BarTable:
        """Give the bars on the axis of the latest take; none without a score.

        Parameters
        ----------
        passage : Passage
        fair : FairTakes
            The latest one is the reference.
        notes : sequence of MapNote
            Of the reference.
        cents : (takes, notes) array
            Deviations, NaN where not measured.
        """
        bars = self._bars(passage, fair.takes[-1], should_stop)
        if not bars:
            return BarTable((), {})
        values = {key: np.full((len(fair.takes), len(bars)), np.nan) for key in BAR_KEYS}
        members = [[i for i, n in enumerate(notes) if b.start_s <= n.at_s < b.end_s] for b in bars]
        for row, take in enumerate(fair.takes):
            stop_if(should_stop)
            for column, inside in enumerate(members):
                known = cents[row, inside][np.isfinite(cents[row, inside])]
                if known.size >= _FEWEST_NOTES:
                    values["bar_mean_absolute_cents"][row, column] = np.abs(known).mean()
                    values["bar_precision_cents"][row, column] = known.std(ddof=1)
            bpm, steadiness, level = self._played(fair.takes[-1], take, bars, should_stop)
            values["bar_bpm"][row] = bpm
            values[STEADINESS][row] = steadiness
            if take.id not in fair.no_dynamics:
                values["bar_level_db"][row] = level
            progress((row + 1) / len(fair.takes))
        return BarTable(bars, values)

    def _bars(self, passage: Passage, reference: Take, should_stop: ShouldStop) -> tuple[Bar, ...]:
        from app.services.score_aligning import follow  # noqa: PLC0415 - numba, when needed

        try:
            score = self._shelf.of_passage(passage, should_stop)
        except PlainFailure:
            return ()
        if score is None or not score.bars:
            return ()
        analysis = self._measuring.analysed(reference.id, no_progress, should_stop)
        path = self._store.folders.absolute(reference.file)
        followed = follow(path, score, analysis.notes, should_stop)
        return () if followed is None else bars_in_take(score, followed)

    def _played(
        self, reference: Take, take: Take, bars: Sequence[Bar], should_stop: ShouldStop
    ) -> tuple[FloatArray, FloatArray, FloatArray]:
        """Give tempo, steadiness and loudness (against the take's middle) of each bar."""
        edges = np.array([[bar.start_s, bar.end_s] for bar in bars], dtype=np.float64)
        pulses = [np.array(bar.pulse_s, dtype=np.float64) for bar in bars]
        if take.id != reference.id:
            pair = self._aligning.pair(reference.id, take.id, no_progress, should_stop)
            if not pair.aligned:
                nothing = np.full(len(bars), np.nan)
                return nothing, nothing, nothing
            edges = np.array([[pair.to_b(x) for x in row] for row in edges], dtype=np.float64)
            pulses = [np.array([pair.to_b(x) for x in row], dtype=np.float64) for row in pulses]
        length = edges[:, 1] - edges[:, 0]
        beats = np.array([bar.beats for bar in bars], dtype=np.float64)
        bpm = np.where(length > 0.1, 60.0 * beats / np.maximum(length, 0.1), np.nan)
        analysis = self._measuring.analysed(take.id, no_progress, should_stop)
        steadiness = [
            steadiness_percent(bar.pulse_beats, row) for bar, row in zip(bars, pulses, strict=True)
        ]
        return np.asarray(bpm, dtype=np.float64), np.array(steadiness), _levels(analysis, edges)


def bars_in_take(score: Score, followed: "ScoreAlignment") -> tuple[Bar, ...]:
    """Give the bars of a score that a take plays, where they begin and end in it."""
    starts = [bar.onset_beats for bar in score.bars]
    ends = [*starts[1:], score.end_beats]
    first, last = float(followed.beats[0]), float(followed.beats[-1])
    begun = np.array([note.onset_beats for note in score.notes if not note.grace])
    sounding = [b for b in score.counted_beats if np.abs(begun - b).min(initial=1.0) < _SAME_BEAT]
    found = []
    for bar, begin, end in zip(score.bars, starts, ends, strict=True):
        if begin < first - 1e-6 or begin >= last or end <= begin:
            continue
        start_s, end_s = (float(t) for t in followed.time_at(np.array([begin, min(end, last)])))
        again = f", time {bar.turn}" if bar.turn > 1 else ""
        on = tuple(beat for beat in sounding if begin <= beat <= min(end, last))
        on_s = tuple(float(t) for t in followed.time_at(np.array(on))) if on else ()
        name = f"bar {bar.number}{again}"
        found.append(Bar(name, start_s, end_s, min(end, last) - begin, on, on_s))
    return tuple(found)


def steadiness_percent(beats: Sequence[float], time_s: FloatArray) -> float:
    """Give the spread of the lengths of a bar's beats, in per cent of their mean.

    Parameters
    ----------
    beats : sequence of float
        Where they are written, quarter notes.
    time_s : (n,) array
        Where they begin in the take.

    Returns
    -------
    float
        Coefficient of variation (n - 1); NaN for fewer than three lengths.
    """
    if len(beats) <= _FEWEST_LENGTHS:
        return math.nan
    lengths = np.diff(time_s) / np.diff(np.asarray(beats, dtype=np.float64))
    mean = float(lengths.mean())
    return 100.0 * float(lengths.std(ddof=1)) / mean if mean > 0 else math.nan


def _levels(analysis: "TakeAnalysis", edges: FloatArray) -> FloatArray:
    from analysis.results import Measured  # noqa: PLC0415
    from analysis.shape import STEP_S, loudness_at  # noqa: PLC0415 - scipy, when needed

    levels = np.full(len(edges), np.nan)
    if not isinstance(analysis.dynamics, Measured):
        return levels
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", RuntimeWarning)  # a silent bar has no level
        for i, (start_s, end_s) in enumerate(edges):
            at = np.arange(start_s, max(end_s, start_s + STEP_S), STEP_S)
            levels[i] = float(np.nanmean(loudness_at(analysis.dynamics.value, at)))
        middle = float(np.nanmedian(levels))
    return levels - middle if math.isfinite(middle) else levels
