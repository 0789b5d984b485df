"""A passage over the weeks: one measure, with its scatter and one plain word."""

import math
from collections.abc import Mapping
from datetime import date

import numpy as np

from analysis.change import Word
from analysis.results import NotMeasurable
from analysis.trend import Trend
from analysis.trend import trend as fit_trend
from analysis.verdicts import trend_comparisons
from app.journal.records import MeasurementHeadline, Passage, Take
from app.services.looked_at import passages_looked_at
from app.services.measures import Measure
from app.services.reading_views import NoReading, Reading
from app.services.readings import TREND_KEYS, measure_named, reading_of
from app.services.views import TrendPoint, TrendView

_HALF_OF_95 = 1.96
# What a rising measure is called, and what a falling one.
TREND_WORDS = {
    "mean_absolute_cents": (Word.WORSE, Word.BETTER),
    "precision_cents": (Word.WORSE, Word.BETTER),
    "within_10_cents": (Word.BETTER, Word.WORSE),
    "accuracy_cents": (Word.SHARPER, Word.FLATTER),
    "mean_bpm": (Word.FASTER, Word.SLOWER),
    "steadiness_cv_percent": (Word.LESS_STEADY, Word.STEADIER),
    "dynamic_span_db": (Word.WIDER, Word.NARROWER),
}


def comparisons_of(day_counts: Mapping[str, int], passage_id: str) -> int:
    """Give what the trends of a passage are corrected for: all measures of all passages.

    Parameters
    ----------
    day_counts : mapping
        As for :func:`app.services.looked_at.passages_looked_at`.
    passage_id : str
    """
    return trend_comparisons(len(TREND_KEYS), passages_looked_at(day_counts, passage_id))


def trend_view(
    passage: Passage,
    key: str,
    takes: tuple[Take, ...],
    headlines: "dict[str, MeasurementHeadline]",
    *,
    comparisons: int = len(TREND_KEYS),
    not_judged: str = "",
) -> TrendView:
    """Follow a measure over the takes of a passage.

    Parameters
    ----------
    passage : Passage
    key : str
        One of :data:`app.services.readings.TREND_KEYS`.
    takes : tuple of Take
        In the order they were played.
    headlines : mapping
        Of the takes that were measured.
    comparisons : int
        How many trends are looked at together; the page offers every measure, so a
        chance verdict of any one counts against all.
    not_judged : str
        Why this measure has no verdict here, in a sentence.
    """
    measure = measure_named(key)
    points = tuple(
        TrendPoint(take.id, take.practice_day, reading.value, reading.uncertainty)
        for take in takes
        if take.id in headlines
        and isinstance(reading := reading_of(headlines[take.id].summary, key), Reading)
    )
    if not points:
        return _without_line(passage, measure, points, "No take of this passage is measured yet.")
    days = np.array([point.practice_day.toordinal() for point in points], dtype=np.float64)
    values = np.array([point.value for point in points])
    if not_judged:
        return _without_line(passage, measure, points, not_judged)
    result = fit_trend(days, values, comparisons=comparisons)
    if isinstance(result, NotMeasurable):
        return _without_line(passage, measure, points, result.sentence)
    return _with_line(passage, measure, points, result.value)


def _without_line(
    passage: Passage, measure: Measure, points: tuple[TrendPoint, ...], sentence: str
) -> TrendView:
    return TrendView(
        passage=passage,
        key=measure.key,
        label=measure.label,
        unit=measure.unit,
        points=points,
        line=(),
        band=(),
        verdict=str(Word.TOO_FEW_TAKES),
        slope=NoReading(sentence),
        scatter=NoReading(sentence),
        sentence=sentence,
    )


def _with_line(
    passage: Passage, measure: Measure, points: tuple[TrendPoint, ...], fitted: Trend
) -> TrendView:
    days = [date.fromordinal(int(day)) for day in fitted.day]
    reach = _HALF_OF_95 * fitted.scatter
    line = [(day, float(y)) for day, y in zip(days, fitted.fitted, strict=True)]
    return TrendView(
        passage=passage,
        key=measure.key,
        label=measure.label,
        unit=measure.unit,
        points=points,
        line=tuple(line),
        band=tuple((day, y - reach, y + reach) for day, y in line),
        verdict=verdict(measure.key, fitted),
        slope=Reading(
            fitted.slope_per_week,
            f"{measure.unit} a week",
            None,
            measure.digits + 1,
            signed=True,
            interval=_finite_interval(fitted),
        ),
        scatter=Reading(fitted.scatter, measure.unit, None, measure.digits),
        sentence="",
        ordinary_difference=fitted.ordinary_difference,
    )


def _finite_interval(fitted: Trend) -> tuple[float, float] | None:
    ends = (fitted.slope_low_per_week, fitted.slope_high_per_week)
    return ends if all(math.isfinite(end) for end in ends) else None


def verdict(key: str, fitted: Trend) -> str:
    """Give the one plain word for a trend; only a clear one gets another than no change.

    'Better' and 'worse' are said of intonation only. A tendency (sharp, flat) is no
    better for going up, so it gets its own words.
    """
    if not fitted.is_clear:
        return str(Word.NO_CLEAR_CHANGE)
    rising, falling = TREND_WORDS[key]
    return str(rising if fitted.slope_per_week > 0 else falling)
