"""Rhythm against the notation: how late each note comes at the tempo around it."""

from collections.abc import Sequence
from typing import Final

import numpy as np

from analysis.results import FloatArray
from analysis.score_matching import Matching, expected_times, unbroken_runs
from analysis.score_notes import WrittenNote, onsets_of
from analysis.score_results import ScoreRhythm
from analysis.tempo import ONSET_SD_S

ALGORITHM = "score_rhythm-1"
FEWEST_NOTES: Final = 6

_PASSED_OVER: Final = 0.75


def offsets_of(
    written: Sequence[WrittenNote], start_s: FloatArray, matching: Matching
) -> tuple[FloatArray, FloatArray]:
    """Say how late each paired note comes against the notes around it.

    Parameters
    ----------
    written : sequence of WrittenNote
    start_s : (m,) array
        Of the take's notes.
    matching : Matching

    Returns
    -------
    offset_s, quarter_s : (k,) arrays
        One for each pair, positive is late; NaN where too few notes around it tell, or
        where the playing stopped or leapt.
    """
    pairs = np.stack((matching.written, matching.played), axis=1)
    expected, quarter = expected_times(onsets_of(written), start_s, pairs)
    return start_s[pairs[:, 1]] - expected[pairs[:, 0]], quarter[pairs[:, 0]]


def rhythm_of(offset_s: FloatArray, beat_s: FloatArray) -> ScoreRhythm | None:
    """Sum up the offsets; ``None`` with fewer than six of them.

    Parameters
    ----------
    offset_s, beat_s : (k,) arrays
        NaN is passed over.
    """
    known = np.isfinite(offset_s) & np.isfinite(beat_s)
    if np.count_nonzero(known) < FEWEST_NOTES:
        return None
    late, beat = offset_s[known], beat_s[known]
    return ScoreRhythm(
        spread_ms=1e3 * float(np.sqrt(np.mean(late**2))),
        spread_percent=100.0 * float(np.sqrt(np.mean((late / beat) ** 2))),
        floor_ms=1e3 * ONSET_SD_S,
        note_count=int(np.count_nonzero(known)),
    )


def beats_in_take(
    written: Sequence[WrittenNote],
    counted_beats: FloatArray,
    start_s: FloatArray,
    matching: Matching,
) -> FloatArray:
    """Place the score's counted beats in the take, over its longest unbroken run.

    Returns
    -------
    (b,) array
        Seconds, rising; empty where fewer than four beats are covered.
    """
    onset = onsets_of(written)[matching.written]
    runs = _without_gaps(matching, onset, start_s[matching.played])
    if not runs:
        return np.empty(0)
    first, end = max(runs, key=lambda run: onset[run[1] - 1] - onset[run[0]])
    at, when = onset[first:end], start_s[matching.played[first:end]]
    inside = counted_beats[(counted_beats >= at[0] - 1e-6) & (counted_beats <= at[-1] + 1e-6)]
    return np.asarray(np.interp(inside, at, when)) if inside.size >= 4 else np.empty(0)


def _without_gaps(
    matching: Matching, onset: FloatArray, start_s: FloatArray
) -> list[tuple[int, int]]:
    """Cut the runs also where a note was passed over together with its time."""
    usual = float(np.median(np.diff(start_s) / np.diff(onset))) if onset.size > 1 else 0.0
    cut = []
    for first, end in unbroken_runs(onset, start_s):
        begin = first
        for k in range(first + 1, end):
            skipped = matching.written[k] - matching.written[k - 1] > 1
            beats = onset[k] - onset[k - 1]
            if skipped and start_s[k] - start_s[k - 1] < _PASSED_OVER * usual * beats:
                cut.append((begin, k))
                begin = k
        cut.append((begin, end))
    return cut
