"""All verdicts about one passage together, so that looking at many invents none.

A passage is looked at week against week and first against latest, as a whole, bar by
bar and note by note, in several measures. Every verdict that is given anywhere counts
against the same allowance: of journals without any real change at most one in twenty may
show one. The allowance is shared out between the passages of the journal, and within a
passage between the passage as a whole, its parts, and its trends; inside each share the
differences are corrected by Holm's rule, which holds however they hang together.

References
----------
S. Holm, Scand. J. Statist. 6 (1979) 65.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from analysis.results import FloatArray, Measured, NotMeasurable
from analysis.sides import (
    FEWEST_DAYS_A_SIDE,
    SideChange,
    clear_after_holm,
    compare_notes,
    compare_sides,
)
from analysis.trend import FALSE_VERDICT_RATE

ALGORITHM = "verdicts-1"
PASSAGE_SHARE, PARTS_SHARE, TREND_SHARE = 0.4, 0.3, 0.3
MOST_DAYS_A_SIDE = 10
SAME_TEMPO = 0.08

_DAYS_A_WEEK = 7

PeriodKind = Literal["week", "first_and_latest"]


@dataclass(frozen=True, slots=True)
class Period:
    """Two stretches of practice days that are held against each other, days inclusive."""

    kind: PeriodKind
    a_first: float
    a_last: float
    b_first: float
    b_last: float


@dataclass(frozen=True, slots=True)
class Family:
    """Alike columns of one measure: the passage, its bars, or its notes.

    ``values`` is (takes, columns), NaN where a take has none. A family of several
    columns shares its scatter. ``at_tempo`` says that the tempo moves it, so that only
    takes of one tempo are held against each other where that can be.
    """

    name: str
    values: FloatArray
    at_tempo: bool = False


@dataclass(frozen=True, slots=True)
class JudgedColumn:
    """One column in one period."""

    family: str
    column: int
    period: Period
    result: Measured[SideChange] | NotMeasurable


def periods_of(day: FloatArray) -> tuple[Period, ...]:
    """List what can be held against each other: weeks, and the first days and the latest.

    Parameters
    ----------
    day : (n,) array
        Practice days of the takes as proleptic ordinals (a Monday is 1 modulo 7).

    Returns
    -------
    tuple of Period
        Weeks that follow each other among those with at least four practice days; the
        first and the latest days, at most ten a side and never overlapping.
    """
    days = np.unique(np.floor(day))
    if days.size < 2 * FEWEST_DAYS_A_SIDE:
        return ()
    side = min(MOST_DAYS_A_SIDE, days.size // 2)
    whole = Period("first_and_latest", days[0], days[side - 1], days[-side], days[-1])
    monday = np.floor((days - 1) / _DAYS_A_WEEK) * _DAYS_A_WEEK + 1
    weeks, counts = np.unique(monday, return_counts=True)
    full = weeks[counts >= FEWEST_DAYS_A_SIDE]
    pairs = [
        Period("week", a, a + _DAYS_A_WEEK - 1, b, b + _DAYS_A_WEEK - 1) for a, b in pairwise(full)
    ]
    return (whole, *pairs)


def judge(
    day: FloatArray,
    whole: Sequence[Family],
    parts: Sequence[Family],
    periods: Iterable[Period],
    *,
    passages: int = 1,
    same_tempo: Mapping[Period, NDArray[np.bool_]] | None = None,
) -> tuple[JudgedColumn, ...]:
    """Give all verdicts about one passage.

    Parameters
    ----------
    day : (n,) array
        Practice day of each take.
    whole : sequence of Family
        Measures of the passage as a whole, one column each.
    parts : sequence of Family
        Measures of its bars and notes.
    periods : iterable of Period
    passages : int
        How many passages of the journal are looked at like this.
    same_tempo : mapping, optional
        The takes of a period that were played at one tempo, where that matters.

    Returns
    -------
    tuple of JudgedColumn
        ``is_clear`` is corrected for all of them and for the other passages.
    """
    every = tuple(periods)
    rate = FALSE_VERDICT_RATE / max(1, passages)
    chosen = same_tempo or {}
    of_whole = [one for p in every for one in _of_period(day, whole, p, chosen.get(p))]
    of_parts = [one for p in every for one in _of_period(day, parts, p, chosen.get(p))]
    return (
        *_corrected(of_whole, rate * PASSAGE_SHARE),
        *_corrected(of_parts, rate * PARTS_SHARE),
    )


def trend_comparisons(measures: int, passages: int) -> int:
    """Give what a trend has to be corrected for, beside everything else that is looked at."""
    return int(np.ceil(measures * max(1, passages) / TREND_SHARE))


def at_matched_tempo(day: FloatArray, bpm: FloatArray, period: Period) -> NDArray[np.bool_] | None:
    """Choose the takes of a period that were played at one tempo.

    Parameters
    ----------
    day, bpm : (n,) arrays
        Practice day and tempo of each take; NaN where the tempo is not known.

    Returns
    -------
    (n,) array of bool or None
        Takes of both sides within 8 % of a common tempo, that common tempo being the
        one that leaves most practice days on the poorer side; ``None`` where it leaves
        fewer than four on one of them.
    """
    side_a = (day >= period.a_first) & (day <= period.a_last) & np.isfinite(bpm)
    side_b = (day >= period.b_first) & (day <= period.b_last) & np.isfinite(bpm)
    best, most = None, FEWEST_DAYS_A_SIDE - 1
    for middle in np.unique(bpm[side_a | side_b]):
        near = np.abs(np.log(bpm / middle)) <= np.log1p(SAME_TEMPO)
        days = min(np.unique(day[side & near]).size for side in (side_a, side_b))
        if days > most:
            best, most = near & (side_a | side_b), days
    return best


def tempo_apart(day: FloatArray, bpm: FloatArray, period: Period) -> float | None:
    """How much faster the later side is, as a share; ``None`` where nobody knows."""
    known = np.isfinite(bpm)
    a = bpm[known & (day >= period.a_first) & (day <= period.a_last)]
    b = bpm[known & (day >= period.b_first) & (day <= period.b_last)]
    return float(np.median(b) / np.median(a) - 1.0) if a.size and b.size else None


def _of_period(
    day: FloatArray,
    families: Sequence[Family],
    period: Period,
    same_tempo: NDArray[np.bool_] | None,
) -> list[JudgedColumn]:
    rows_a = (day >= period.a_first) & (day <= period.a_last)
    rows_b = (day >= period.b_first) & (day <= period.b_last)
    found = []
    for family in families:
        values = family.values
        if family.at_tempo and same_tempo is not None:
            values = np.where(same_tempo[:, np.newaxis], values, np.nan)
        a, b = values[rows_a], values[rows_b]
        if family.values.shape[1] == 1:
            known_a, known_b = np.isfinite(a[:, 0]), np.isfinite(b[:, 0])
            results = [
                compare_sides(
                    day[rows_a][known_a], a[known_a, 0], day[rows_b][known_b], b[known_b, 0]
                )
            ]
        else:
            results = compare_notes(day[rows_a], a, day[rows_b], b)
        found += [JudgedColumn(family.name, i, period, one) for i, one in enumerate(results)]
    return found


def _corrected(found: list[JudgedColumn], rate: float) -> list[JudgedColumn]:
    """Call clear only what stays so among everything that was looked at."""
    chances = np.array(
        [one.result.value.chance for one in found if isinstance(one.result, Measured)]
    )
    clear = iter(clear_after_holm(chances, rate).tolist() if chances.size else ())
    return [
        replace(
            one,
            result=Measured(replace(one.result.value, is_clear=next(clear)), one.result.provenance),
        )
        if isinstance(one.result, Measured)
        else one
        for one in found
    ]
