"""A comparison as the Compare page shows it."""

import math
from collections.abc import Mapping
from typing import TYPE_CHECKING

import numpy as np

from analysis.change import Word
from analysis.results import Measured, NotMeasurable
from app.services.file_comparing import Comparison
from app.services.lanes import deviation_reading
from app.services.machine_readable import measure_object
from app.services.note_remarks import remark_of
from app.services.reading_views import AnyReading, NoReading, Reading
from app.services.readings import CHANGE_KEYS, measure_named, reading_of
from app.services.trends import TREND_WORDS
from app.services.views import ChangeRow, CompareView, NotePairRow, TakeView, TrendView

if TYPE_CHECKING:
    from analysis.change import MeasureChange

_LONGEST_MAP = 4000


def compare_view(found: Comparison, a: TakeView, b: TakeView) -> CompareView:
    """Put a comparison of two takes into rows."""
    alignment = found.alignment
    is_aligned = isinstance(alignment, Measured)
    sentence = alignment.sentence if isinstance(alignment, NotMeasurable) else ""
    a_s, b_s = np.empty(0), np.empty(0)
    if isinstance(alignment, Measured):
        stride = max(1, math.ceil(alignment.value.a_s.size / _LONGEST_MAP))
        a_s, b_s = alignment.value.a_s[::stride], alignment.value.b_s[::stride]
    return CompareView(
        a=a,
        b=b,
        aligned=is_aligned,
        sentence=sentence,
        alignment_a_s=a_s,
        alignment_b_s=b_s,
        notes=pair_rows(found),
        changes=change_rows(found),
        confounders=found.confounders,
        how_judged=found.how_judged,
    )


def pair_rows(found: Comparison) -> tuple[NotePairRow, ...]:
    """Give the notes of both takes."""
    if found.change is None:
        return ()
    rows = []
    for pair in found.change.notes:
        a = found.a.analysis.notes[pair.a_index]
        b = found.b.analysis.notes[pair.b_index]
        change = Reading(pair.change_cents, "cents", pair.uncertainty_cents, 1, signed=True)
        rows.append(
            NotePairRow(
                name=a.spelled or a.name or "",
                midi=pair.midi,
                a_start_s=a.note.start_s,
                b_start_s=b.note.start_s,
                a_deviation=deviation_reading(a),
                b_deviation=deviation_reading(b),
                change=change,
                a_verdict=str(a.verdict or ""),
                b_verdict=str(b.verdict or ""),
                a_remark=remark_of(a),
                b_remark=remark_of(b),
            )
        )
    return tuple(rows)


def words_of(found: Comparison, trends: Mapping[str, TrendView]) -> dict[str, str]:
    """Judge the measures of two takes of a passage, each against its trend.

    The trends hold the ordinary scatter between days that a change is judged against.
    """
    words = {}
    for key in CHANGE_KEYS:
        result = found.measures[key]
        if isinstance(result, Measured):
            value = result.value
            change = Reading(value.change, value.unit, value.uncertainty)
            words[key] = _word(key, change, trends.get(key))
    return words


def change_rows(found: Comparison) -> tuple[ChangeRow, ...]:
    """Give the measures of both takes, with the words of those that were judged."""
    summary_a = measure_object(found.a.analysis, found.a.name)
    summary_b = measure_object(found.b.analysis, found.b.name)
    return tuple(
        _change_row(
            key,
            (reading_of(summary_a, key), reading_of(summary_b, key)),
            found.measures[key],
            found.word(key),
            found.no_interval(key),
        )
        for key in CHANGE_KEYS
    )


def _change_row(
    key: str,
    sides: tuple[AnyReading, AnyReading],
    result: "Measured[MeasureChange] | NotMeasurable",
    word: str,
    no_interval: str,
) -> ChangeRow:
    measure = measure_named(key)
    if isinstance(result, NotMeasurable):
        missing = NoReading(result.sentence)
        return ChangeRow(key, measure.label, *sides, missing, word)
    value = result.value
    change = Reading(value.change, value.unit, value.uncertainty, measure.digits, signed=True)
    return ChangeRow(key, measure.label, *sides, change, word, no_interval)


def _word(key: str, change: Reading, trend: TrendView | None) -> str:
    """Judge a change of two takes against how far two days of the passage differ anyway.

    What measuring alone leaves open is added to that.
    """
    if trend is None or trend.ordinary_difference is None:
        return str(Word.TOO_FEW_TAKES)
    if abs(change.value) <= math.hypot(trend.ordinary_difference, change.uncertainty or 0.0):
        return str(Word.NO_CLEAR_CHANGE)
    rising, falling = TREND_WORDS[key]
    return str(rising if change.value > 0 else falling)
