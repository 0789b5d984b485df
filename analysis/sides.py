"""The same passage in two periods: a change is held against the ordinary scatter.

A side is a number of practice days, a week for instance. Takes of one day are pooled,
because they are not independent; a verdict needs four practice days a side.

References
----------
B. L. Welch, Biometrika 34 (1947) 28 (means of unlike spread); S. Holm, Scand. J.
Statist. 6 (1979) 65 (many notes looked at together).
"""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy.special import stdtr, stdtrit

from analysis.results import FloatArray, Measured, NotMeasurable, Provenance, Reason
from analysis.trend import FALSE_VERDICT_RATE, pooled_by_day

ALGORITHM = "sides-3"
FEWEST_DAYS_A_SIDE = 4


@dataclass(frozen=True, slots=True)
class SideChange:
    """Change from side a to side b, in the measure's unit.

    ``low`` and ``high`` bound its 95 % interval, ``scatter`` is the standard deviation
    from day to day it was judged against, ``is_clear`` says whether the change stands
    out after correcting for everything that was looked at together, ``chance`` is the
    two-sided probability of at least such a change without any real one, uncorrected.
    ``a`` and ``b`` are the means of both sides.
    """

    change: float
    low: float
    high: float
    scatter: float
    days_a: int
    days_b: int
    is_clear: bool
    chance: float = 1.0
    a: float = math.nan
    b: float = math.nan


def compare_sides(
    day_a: FloatArray,
    value_a: FloatArray,
    day_b: FloatArray,
    value_b: FloatArray,
    *,
    comparisons: int = 1,
) -> Measured[SideChange] | NotMeasurable:
    """Hold a measure in one period against the same measure in another.

    Parameters
    ----------
    day_a, value_a : (n,) arrays
        Practice day and value of each take of the earlier period.
    day_b, value_b : (m,) arrays
        The same for the later period.
    comparisons : int
        How many verdicts are given together; the chance of any false one stays 5 %.

    Returns
    -------
    Measured[SideChange] or NotMeasurable
        ``TOO_FEW_TAKES`` with fewer than four practice days on a side.
    """
    provenance = Provenance(
        ALGORITHM, {"fewest_days_a_side": FEWEST_DAYS_A_SIDE, "comparisons": comparisons}
    )
    a, b = pooled_by_day(day_a, value_a)[1], pooled_by_day(day_b, value_b)[1]
    if min(a.size, b.size) < FEWEST_DAYS_A_SIDE:
        return _too_few_days(provenance)
    share_a, share_b = a.var(ddof=1) / a.size, b.var(ddof=1) / b.size
    error = math.sqrt(share_a + share_b)
    change = float(b.mean() - a.mean())
    if error == 0.0:
        freedom = float(a.size + b.size - 2)
    else:
        freedom = (share_a + share_b) ** 2 / (share_a**2 / (a.size - 1) + share_b**2 / (b.size - 1))
    reach = error * float(stdtrit(freedom, 1 - FALSE_VERDICT_RATE / 2))
    strict = error * float(stdtrit(freedom, 1 - FALSE_VERDICT_RATE / comparisons / 2))
    scatter = math.sqrt(
        (a.var(ddof=1) * (a.size - 1) + b.var(ddof=1) * (b.size - 1)) / (a.size + b.size - 2)
    )
    result = SideChange(
        change=change,
        low=change - reach,
        high=change + reach,
        scatter=scatter,
        days_a=int(a.size),
        days_b=int(b.size),
        is_clear=abs(change) > strict,
        chance=_chance(change, error, freedom),
        a=float(a.mean()),
        b=float(b.mean()),
    )
    return Measured(result, provenance)


def compare_notes(
    day_a: FloatArray,
    deviation_a: FloatArray,
    day_b: FloatArray,
    deviation_b: FloatArray,
) -> list[Measured[SideChange] | NotMeasurable]:
    """Hold every note of a passage in one period against itself in another.

    A single note is played too rarely to know its own scatter; all notes of the
    passage share theirs, but a note that scatters more than the others is judged by
    its own. The verdicts are corrected for the number of notes (Holm),
    so that a passage without any change shows a false one in at most 5 % of cases.

    Parameters
    ----------
    day_a : (n,) array
        Practice day of each take of the earlier period.
    deviation_a : (n, notes) array
        Deviation of every note in cents; NaN where a note was not measured.
    day_b, deviation_b : (m,), (m, notes) arrays
        The same for the later period.

    Returns
    -------
    list of Measured[SideChange] or NotMeasurable
        One for each note; ``TOO_FEW_TAKES`` where a side has fewer than four days.
    """
    provenance = Provenance(ALGORITHM, {"fewest_days_a_side": FEWEST_DAYS_A_SIDE, "pooled": True})
    a, b = _daily_medians(day_a, deviation_a), _daily_medians(day_b, deviation_b)
    count_a, count_b = np.isfinite(a).sum(axis=0), np.isfinite(b).sum(axis=0)
    enough = np.minimum(count_a, count_b) >= FEWEST_DAYS_A_SIDE
    notes = np.flatnonzero(enough)
    results: list[Measured[SideChange] | NotMeasurable] = [
        _too_few_days(provenance) for _ in range(deviation_a.shape[1])
    ]
    if not notes.size:
        return results
    a, b, count_a, count_b = a[:, notes], b[:, notes], count_a[notes], count_b[notes]
    scatter = _note_scatter(a, b)
    change = np.nanmean(b, axis=0) - np.nanmean(a, axis=0)
    error = scatter * np.sqrt(1 / count_a + 1 / count_b)
    freedom = _freedom(a, b)
    reach = error * float(stdtrit(freedom, 1 - FALSE_VERDICT_RATE / 2))
    with np.errstate(divide="ignore", invalid="ignore"):
        chance = 2 * stdtr(freedom, -np.abs(change) / error)
    clear = clear_after_holm(np.nan_to_num(chance, nan=1.0))
    for k, note in enumerate(notes):
        results[note] = Measured(
            SideChange(
                change=float(change[k]),
                low=float(change[k] - reach[k]),
                high=float(change[k] + reach[k]),
                scatter=float(scatter[k]),
                days_a=int(count_a[k]),
                days_b=int(count_b[k]),
                is_clear=bool(clear[k]),
                chance=float(np.nan_to_num(chance[k], nan=1.0)),
                a=float(np.nanmean(a[:, k])),
                b=float(np.nanmean(b[:, k])),
            ),
            provenance,
        )
    return results


def _too_few_days(provenance: Provenance) -> NotMeasurable:
    sentence = f"A verdict needs at least {FEWEST_DAYS_A_SIDE} practice days on each side."
    return NotMeasurable(Reason.TOO_FEW_TAKES, sentence, provenance)


def _daily_medians(day: FloatArray, deviation: FloatArray) -> FloatArray:
    """Median of each note on each practice day, (days, notes); NaN where never measured."""
    whole = np.floor(np.asarray(day, dtype=np.float64))
    rows = [_column_medians(deviation[whole == each]) for each in np.unique(whole)]
    return np.array(rows, dtype=np.float64).reshape(len(rows), deviation.shape[1])


def _column_medians(block: FloatArray) -> FloatArray:
    """Median of the finite entries of each column; NaN where there is none."""
    medians = np.full(block.shape[1], np.nan)
    known = np.isfinite(block).any(axis=0)
    medians[known] = np.nanmedian(block[:, known], axis=0)
    return medians


def _note_scatter(a: FloatArray, b: FloatArray) -> FloatArray:
    """Day-to-day standard deviation of each note, at least that of all notes together."""
    squares = np.nansum((a - np.nanmean(a, axis=0)) ** 2, axis=0)
    squares += np.nansum((b - np.nanmean(b, axis=0)) ** 2, axis=0)
    freedom = np.isfinite(a).sum(axis=0) + np.isfinite(b).sum(axis=0) - 2
    together = float(squares.sum()) / int(freedom.sum())
    return np.asarray(np.sqrt(np.maximum(squares / freedom, together)), dtype=np.float64)


def _freedom(a: FloatArray, b: FloatArray) -> float:
    """Degrees of freedom of the shared scatter, notes of one day being alike.

    With a correlation r between the notes of a day, m notes witness their scatter like
    m / (1 + (m - 1) r^2) independent ones.
    """
    residual = np.vstack((a - np.nanmean(a, axis=0), b - np.nanmean(b, axis=0)))
    notes = residual.shape[1]
    days = a.shape[0] + b.shape[0] - 2
    counts = np.isfinite(residual).sum(axis=1)
    of_days = np.nansum(residual, axis=1) / np.maximum(counts, 1)
    single = float(np.nanmean(residual**2))
    if notes == 1 or single == 0.0:
        return float(days)
    alike = (notes * float(np.mean(of_days**2)) / single - 1) / (notes - 1)
    shared = min(max(alike, 0.0), 1.0)
    return float(days * notes / (1 + (notes - 1) * shared * shared))


def _chance(change: float, error: float, freedom: float) -> float:
    """Probability of at least such a change by scatter alone."""
    if error == 0.0:
        return 0.0 if change else 1.0
    return float(2 * stdtr(freedom, -abs(change) / error))


def clear_after_holm(chance: FloatArray, rate: float = FALSE_VERDICT_RATE) -> NDArray[np.bool_]:
    """Tell which of several differences stay clear when any false one shall be rare.

    Parameters
    ----------
    chance : (n,) array
        Two-sided probabilities of the differences without any real one.
    rate : float
        How often any of them may be called clear all the same.

    Returns
    -------
    (n,) array of bool
    """
    order = np.argsort(chance)
    allowed = rate / (chance.size - np.arange(chance.size))
    passed = np.logical_and.accumulate(chance[order] <= allowed)
    clear = np.zeros(chance.size, dtype=np.bool_)
    clear[order[passed]] = True
    return clear
