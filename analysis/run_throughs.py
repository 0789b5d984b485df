"""Every run through a passage in a longer recording.

Local alignment (T. F. Smith and M. S. Waterman, J. Mol. Biol. 147 (1981) 195) of the
passage with the recording, by harmony: a row of the passage that finds its counterpart
gains, waiting and skipping cost. So a run may be slower or faster, may break off, and
what lies between two runs belongs to none.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from analysis.compiled import compiled
from analysis.outline import STEP_S, Outline
from analysis.results import Measured, NotMeasurable, Provenance, Reason
from analysis.warping_table import Frames

ALGORITHM = "run-throughs-1"
LIKE = 0.2
WAIT = 0.05
LEAST_SHARE = 0.3
LEAST_S = 2.0
LEAST_LIKENESS = 0.7
PART_LIKENESS = 0.75
EDGE_SHARE = 0.08
LARGEST_RATIO = 3.0
_WORST = 0.5


@dataclass(frozen=True, slots=True)
class RunThrough:
    """One run through a passage.

    Attributes
    ----------
    start_s, end_s : float
        In the recording.
    from_share, to_share : float
        Which part of the passage was played, 0 to 1.
    likeness : float
        0 to 1: how well what was played fits the passage.
    """

    start_s: float
    end_s: float
    from_share: float
    to_share: float
    likeness: float

    @property
    def is_complete(self) -> bool:
        """Whether the passage was played from its beginning to its end."""
        return self.from_share <= EDGE_SHARE and self.to_share >= 1 - EDGE_SHARE


def find_run_throughs(
    passage: Outline, recording: Outline
) -> Measured[tuple[RunThrough, ...]] | NotMeasurable:
    """Find all runs through a passage, whole or broken off.

    Parameters
    ----------
    passage : Outline
        Of a reference take, or of the score.
    recording : Outline

    Returns
    -------
    Measured[tuple of RunThrough] or NotMeasurable
        In order, none overlapping another; an empty tuple where the passage is not
        played. ``SILENT`` where one of them is silent, ``TOO_SHORT`` where the passage
        lasts under two seconds.
    """
    provenance = Provenance(ALGORITHM, {"step_s": STEP_S})
    if not passage.frames.shape[0] or not recording.frames.shape[0]:
        return NotMeasurable(Reason.SILENT, "Nothing sounds in one of the two.", provenance)
    if passage.duration_s < LEAST_S:
        sentence = f"The passage lasts under {LEAST_S:g} seconds, too short to be found again."
        return NotMeasurable(Reason.TOO_SHORT, sentence, provenance)
    found = _best_ends(passage.frames, recording.frames)
    return Measured(tuple(_chosen(found, passage, recording)), provenance)


@dataclass(frozen=True, slots=True)
class _Ends:
    """For each row of the recording the best run that ends there; all (m,)."""

    score: NDArray[np.float64]
    passage_first: NDArray[np.int64]
    passage_last: NDArray[np.int64]
    first: NDArray[np.int64]
    gained: NDArray[np.int64]


def _best_ends(passage: Frames, recording: Frames) -> _Ends:
    return _Ends(*_search(passage, recording))


def _chosen(found: _Ends, passage: Outline, recording: Outline) -> list[RunThrough]:
    """Take the best run, then the best that does not overlap it, and so on."""
    rows = passage.frames.shape[0]
    least = LEAST_SHARE * rows * LIKE * LEAST_LIKENESS
    taken = np.zeros(recording.frames.shape[0] + 1, dtype=np.bool_)
    runs = []
    for last in np.argsort(-found.score, kind="stable"):
        if found.score[last] < least:
            break
        first = int(found.first[last])
        if taken[first : last + 1].any():
            continue
        played = int(found.passage_last[last] - found.passage_first[last]) + 1
        lasted = int(last) - first + 1
        share = found.score[last] / (LIKE * min(played, lasted))
        short = played < LEAST_SHARE * rows or played * STEP_S < LEAST_S
        odd = max(played, lasted) > LARGEST_RATIO * min(played, lasted)
        run = RunThrough(
            start_s=recording.start_s + first * STEP_S,
            end_s=recording.start_s + (int(last) + 1) * STEP_S,
            from_share=float(found.passage_first[last]) / rows,
            to_share=float(found.passage_last[last] + 1) / rows,
            likeness=float(min(1.0, share)),
        )
        # A part is found in other music more easily than the whole.
        wanted = LEAST_LIKENESS if run.is_complete else PART_LIKENESS
        if share >= wanted and not short and not odd:
            taken[first : last + 1] = True
            runs.append(run)
    return sorted(runs, key=lambda run: run.start_s)


@compiled
def _search(
    passage: Frames, recording: Frames
) -> tuple[
    NDArray[np.float64],
    NDArray[np.int64],
    NDArray[np.int64],
    NDArray[np.int64],
    NDArray[np.int64],
]:
    """Best local path that ends at each row of the recording, in memory of one column."""
    rows, columns = passage.shape[0], recording.shape[0]
    score, place = np.zeros(columns), np.zeros(columns, dtype=np.int64)
    place_first = np.zeros(columns, dtype=np.int64)
    first, gained = np.zeros(columns, dtype=np.int64), np.zeros(columns, dtype=np.int64)
    height, height_before = np.zeros(rows), np.zeros(rows)
    from_row, from_row_before = np.arange(rows), np.arange(rows)
    from_column, from_column_before = np.zeros(rows, np.int64), np.zeros(rows, np.int64)
    gains, gains_before = np.zeros(rows, np.int64), np.zeros(rows, np.int64)
    for j in range(columns):
        for i in range(rows):
            similarity = 0.0
            for k in range(passage.shape[1]):
                similarity += passage[i, k] * recording[j, k]
            gain = LIKE - min(_WORST, (1.0 - similarity) ** 2)
            pause = min(0.0, gain) - WAIT
            best, row, column, count = max(0.0, gain), i, j, 1
            if i > 0 and height_before[i - 1] > 0 and height_before[i - 1] + gain > best:
                best = height_before[i - 1] + gain
                row, column = from_row_before[i - 1], from_column_before[i - 1]
                count = gains_before[i - 1] + 1
            if height_before[i] + pause > best:
                best = height_before[i] + pause
                row, column, count = from_row_before[i], from_column_before[i], gains_before[i]
            if i > 0 and height[i - 1] + pause > best:
                best = height[i - 1] + pause
                row, column, count = from_row[i - 1], from_column[i - 1], gains[i - 1]
            height[i], from_row[i], from_column[i], gains[i] = best, row, column, count
            if best > score[j]:
                score[j], place[j], place_first[j] = best, i, row
                first[j], gained[j] = column, count
        height, height_before = height_before, height
        from_row, from_row_before = from_row_before, from_row
        from_column, from_column_before = from_column_before, from_column
        gains, gains_before = gains_before, gains
    return score, place_first, place, first, gained
