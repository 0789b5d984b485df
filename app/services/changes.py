"""What changed in a passage: week over week, first against latest, whole, bars and notes."""

import math
from collections.abc import Mapping, Sequence
from datetime import date
from typing import TYPE_CHECKING, Literal

import numpy as np

from analysis.results import FloatArray
from app.journal.failures import PlainFailure
from app.journal.records import MeasurementHeadline, Passage
from app.services.bounds import BoundsService
from app.services.change_columns import NOTES, STEADINESS, Columns, columns_of
from app.services.change_words import change_word, label_of, unit_of
from app.services.choosing import Choosing
from app.services.fair_takes import FairTakes, fair_takes, tunings_text
from app.services.following_views import ChangeReport, VerdictRow
from app.services.looked_at import FEWEST_DAYS, passages_looked_at
from app.services.note_map import NoteMapService
from app.services.passage_bars import BarService
from app.services.reading_views import AnyReading, NoReading, Reading
from app.services.readings import reading_of
from app.services.records_there import passage_there
from app.services.stopping import Progress, ShouldStop, never_stop, no_progress, part_of
from app.services.wording import counted
from app.store.store import Store

if TYPE_CHECKING:
    from analysis.verdicts import JudgedColumn, Period

WHOLE_KEYS = (
    "mean_absolute_cents",
    "precision_cents",
    "accuracy_cents",
    "mean_bpm",
    "steadiness_cv_percent",
    "dynamic_span_db",
)
TEMPO_KEYS = frozenset({"mean_absolute_cents", "precision_cents", "steadiness_cv_percent"})
TEMPO_TOLD = 0.08


class ChangeService:
    """Gives all verdicts about a passage together, corrected for all that is looked at."""

    def __init__(
        self, store: Store, bounds: BoundsService, note_maps: NoteMapService, bars: BarService
    ) -> None:
        self._store = store
        self._bounds = bounds
        self._note_maps = note_maps
        self._bars = bars
        self._choosing = Choosing(store)

    def report(
        self,
        passage_id: str,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> ChangeReport:
        """Say what changed; long the first time, when the takes are aligned.

        Raises
        ------
        PlainFailure
            Where there is no such passage.
        """
        from analysis.verdicts import judge, periods_of  # noqa: PLC0415 - scipy, when needed

        passage = passage_there(self._store, passage_id)
        takes = self._store.takes.list(passage_id=passage_id)
        headlines = dict(self._store.measurements.headlines([take.id for take in takes]))
        measured = [t for t in takes if t.id in headlines and not headlines[t.id].failure]
        fair = fair_takes(measured)
        days = {take.practice_day for take in fair.takes}
        if len(days) < FEWEST_DAYS:
            return _too_few(passage, len(days), fair)
        day = np.array([t.practice_day.toordinal() for t in fair.takes], dtype=np.float64)
        periods = periods_of(day)
        rubato = self._bounds.get(passage_id).is_rubato
        whole = self._whole(fair, headlines, rubato=rubato)
        parts = self._parts(passage, fair, part_of(progress, 0.0, 0.9), should_stop, rubato=rubato)
        matched, notices = _matched(day, whole, periods)
        found = judge(
            day,
            whole.families,
            parts.families,
            periods,
            passages=passages_looked_at(self._store.takes.day_counts_of_passages(), passage_id),
            same_tempo=matched,
        )
        progress(1.0)
        if rubato:
            notices.append("Steadiness is not judged: the tempo of this passage is meant to move.")
        said = (self._choosing.in_trend(fair.takes), tunings_text(fair.takes))
        return ChangeReport(
            passage=passage,
            rows=tuple(_row(one, whole if one.family in WHOLE_KEYS else parts) for one in found),
            left_out=(*fair.left_out, *parts.left_out),
            notices=(*notices, *(sentence for sentence in said if sentence)),
            sentence="",
        )

    def _whole(
        self, fair: FairTakes, headlines: Mapping[str, MeasurementHeadline], *, rubato: bool
    ) -> Columns:
        """Read the measures of the passage as a whole."""
        keys = [k for k in WHOLE_KEYS if not (rubato and k == "steadiness_cv_percent")]
        table = np.array(
            [
                [
                    _number(headlines[take.id], key) if fair.has(take, key) else math.nan
                    for key in keys
                ]
                for take in fair.takes
            ],
            dtype=np.float64,
        )
        return columns_of(
            {key: table[:, i : i + 1] for i, key in enumerate(keys)}, at_tempo=TEMPO_KEYS
        )

    def _parts(
        self,
        passage: Passage,
        fair: FairTakes,
        progress: Progress,
        should_stop: ShouldStop,
        *,
        rubato: bool,
    ) -> Columns:
        """Read notes and bars on the axis of one take that stays the same from day to day."""
        try:
            reference_id = self._note_maps.reference_of(fair.takes)
            view = self._note_maps.of_passage(
                passage.id, reference_id, part_of(progress, 0.0, 0.7), should_stop
            )
        except PlainFailure as failure:
            return columns_of({}, left_out=(failure.sentence,))
        place = {row.take_ids[0]: row for row in view.takes}
        notes = np.full((len(fair.takes), len(view.notes)), np.nan)
        for i, take in enumerate(fair.takes):
            if take.id in place and take.id not in fair.no_intonation:
                cells = place[take.id].cells
                notes[i] = [math.nan if cell is None else cell.cents for cell in cells]
        bars = self._bars.of_takes(
            passage, fair, view.notes, notes, part_of(progress, 0.7, 1.0), should_stop
        )
        of_bars = {k: v for k, v in bars.values.items() if not (rubato and k == STEADINESS)}
        return columns_of(
            {NOTES: notes, **of_bars},
            at_tempo=frozenset(
                {NOTES, "bar_mean_absolute_cents", "bar_precision_cents", STEADINESS}
            ),
            notes=view.notes,
            bars=bars.bars,
            left_out=view.left_out,
        )


def _number(headline: MeasurementHeadline, key: str) -> float:
    reading = reading_of(headline.summary, key)
    return reading.value if isinstance(reading, Reading) else math.nan


def _too_few(passage: Passage, days: int, fair: FairTakes) -> ChangeReport:
    sentence = (
        f"Too few takes: {days} practice days so far; a change needs {FEWEST_DAYS // 2} on"
        " each side."
    )
    return ChangeReport(passage, (), fair.left_out, (), sentence)


def _matched(
    day: FloatArray, whole: Columns, periods: "Sequence[Period]"
) -> "tuple[dict[Period, np.ndarray[tuple[int], np.dtype[np.bool_]]], list[str]]":
    """Choose takes of one tempo where the two sides differ, or say that they do."""
    from analysis.verdicts import at_matched_tempo, tempo_apart  # noqa: PLC0415

    bpm = whole.values["mean_bpm"][:, 0]
    chosen, notices = {}, []
    for period in periods:
        apart = tempo_apart(day, bpm, period)
        if apart is None or abs(apart) <= TEMPO_TOLD:
            continue
        more = "faster" if apart > 0 else "slower"
        when = _when(period)
        matched = at_matched_tempo(day, bpm, period)
        if matched is not None:
            chosen[period] = matched
            left = int(np.count_nonzero(_inside(day, period) & ~matched))
            out = f" ({counted(left, 'take')} left out)" if left else ""
            notices.append(
                f"{when}: the later takes are {100 * abs(apart):.0f} % {more}; intonation and"
                f" steadiness are compared at matched tempo{out}."
            )
        else:
            notices.append(
                f"{when}: the later takes are {100 * abs(apart):.0f} % {more}, and too few were"
                " played at one tempo; that alone can change the rest."
            )
    return chosen, notices


def _inside(day: FloatArray, period: "Period") -> "np.ndarray[tuple[int], np.dtype[np.bool_]]":
    a = (day >= period.a_first) & (day <= period.a_last)
    return np.asarray(a | ((day >= period.b_first) & (day <= period.b_last)), dtype=np.bool_)


def _when(period: "Period") -> str:
    if period.kind == "first_and_latest":
        return "First against latest"
    return f"Week of {date.fromordinal(int(period.b_first)).isoformat()}"


def _row(one: "JudgedColumn", columns: Columns) -> VerdictRow:
    from analysis.results import Measured  # noqa: PLC0415

    place = columns.place(one.family, one.column)
    unit, digits, signed = unit_of(one.family)
    period: Literal["week", "first_and_latest"] = one.period.kind
    why_not = columns.why_not(one.family, one.column)
    if isinstance(one.result, Measured):
        value = one.result.value
        change: AnyReading = Reading(
            value.change, unit, None, digits, signed=True, interval=(value.low, value.high)
        )
        a: AnyReading = Reading(value.a, unit, None, digits, signed=signed)
        b: AnyReading = Reading(value.b, unit, None, digits, signed=signed)
        scatter: AnyReading = Reading(value.scatter, unit, None, digits)
        days, clear = (value.days_a, value.days_b), value.is_clear
    else:
        a = b = change = scatter = NoReading(why_not or one.result.sentence)
        days, clear = (0, 0), False
    return VerdictRow(
        scope=place.scope,
        place=place.name,
        at_s=place.at_s,
        midi=place.midi,
        key=one.family,
        label=label_of(one.family),
        period=period,
        a_from=date.fromordinal(int(one.period.a_first)),
        a_to=date.fromordinal(int(one.period.a_last)),
        b_from=date.fromordinal(int(one.period.b_first)),
        b_to=date.fromordinal(int(one.period.b_last)),
        a=a,
        b=b,
        change=change,
        scatter=scatter,
        days_a=days[0],
        days_b=days[1],
        word="not measurable" if why_not else change_word(one),
        is_clear=clear,
    )
