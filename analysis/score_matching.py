"""Which written note each note of a take plays: order-keeping, over pitch and then time.

Two passes of a global alignment with affine gaps (O. Gotoh, J. Mol. Biol. 162 (1982)
705): the first by pitch alone, the second also by the time at which the first one's sure
pairs expect each note. A run of notes that only one side has is one gap, so that a false
start or a repeated bar stays together.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

import numpy as np
from numpy.typing import NDArray

from analysis.compiled import compiled
from analysis.results import FloatArray
from analysis.score_notes import WrittenNote, onsets_of
from analysis.score_played import SAME_PITCH_SEMITONES

# Harmonics over a stopped or open string: touching a note sounds these above it.
_HARMONIC_STEPS: Final = (12, 19, 24, 28, 31)
_OPEN, _EXTEND = 0.55, 0.4
_WRONG: Final = 1.2
_UNPITCHED: Final = 0.55
_UNPITCHED_REACH_BEATS: Final = 0.2
_OTHER_OCTAVE: Final = 1.0
_NEVER: Final = 10.0
_NEARNESS: Final = 0.05
_LATE_COST, _MOST_LATE_BEATS = 0.8, 1.5
_NEIGHBOURS: Final = 6
_FEWEST_IN_A_RUN: Final = 4
_STOPPED, _LEAPT = 2.0, 0.35  # against the usual pace
_PAIR, _SKIP_WRITTEN, _SKIP_PLAYED = 0, 1, 2

IntArray = NDArray[np.int64]
ByteArray = NDArray[np.int8]


@dataclass(frozen=True, slots=True)
class Matching:
    """Pairs of indices (written, played), both rising, and where notes are expected.

    ``same_pitch`` says of each pair whether the pitch is known to agree; ``expected_s`` and
    ``quarter_s`` (one for each written note) are the time at which it should begin and the
    length of a quarter there, NaN where nothing was matched.
    """

    written: IntArray
    played: IntArray
    same_pitch: NDArray[np.bool_]
    expected_s: FloatArray
    quarter_s: FloatArray


def match_to_score(
    written: Sequence[WrittenNote], start_s: FloatArray, pitch_midi: FloatArray
) -> Matching:
    """Pair the notes of a take with written ones.

    Parameters
    ----------
    written : sequence of WrittenNote
        Without grace notes, in playing order.
    start_s, pitch_midi : (m,) arrays
        Where the notes of the take begin, rising, and their pitch as note numbers
        against the A in use; NaN where a note has no pitch.

    Returns
    -------
    Matching
    """
    onset = onsets_of(written)
    pitch_cost = _pitch_costs(written, pitch_midi)
    first = _aligned(pitch_cost)
    sure = pitch_cost[first[:, 0], first[:, 1]] <= _NEARNESS if first.size else np.zeros(0, bool)
    expected, quarter = expected_times(onset, start_s, first[sure])
    pairs = first
    if np.isfinite(expected).any():
        late = np.abs(start_s[None, :] - expected[:, None]) / quarter[:, None]
        late = np.nan_to_num(late, nan=0.0, posinf=_MOST_LATE_BEATS)
        cost = pitch_cost + _LATE_COST * np.minimum(late, _MOST_LATE_BEATS)
        # Without a pitch only the moment tells: elsewhere it is no evidence of a note.
        cost[(pitch_cost == _UNPITCHED) & (late > _UNPITCHED_REACH_BEATS)] = _NEVER
        pairs = _aligned(cost)
        sure = pitch_cost[pairs[:, 0], pairs[:, 1]] <= _NEARNESS
        expected, quarter = expected_times(onset, start_s, pairs[sure])
    same = pitch_cost[pairs[:, 0], pairs[:, 1]] < _UNPITCHED if pairs.size else np.zeros(0, bool)
    return Matching(pairs[:, 0], pairs[:, 1], same, expected, quarter)


def expected_times(
    onset_beats: FloatArray, start_s: FloatArray, pairs: IntArray
) -> tuple[FloatArray, FloatArray]:
    """Say when each written note should begin, by the notes around it alone.

    Parameters
    ----------
    onset_beats : (n,) array
        Quarter notes.
    start_s : (m,) array
    pairs : (k, 2) array
        Indices into both.

    Returns
    -------
    expected_s, quarter_s : (n,) arrays
        From a straight line through the six nearest paired notes on each side, the note
        itself left out, of the stretch that was played without a stop or a leap; NaN
        where there are fewer than three.
    """
    expected = np.full(onset_beats.size, np.nan)
    quarter = np.full(onset_beats.size, np.nan)
    if len(pairs) < 4:
        return expected, quarter
    x, y = onset_beats[pairs[:, 0]], start_s[pairs[:, 1]]
    runs = unbroken_runs(x, y)
    # A pair or two alone are more likely strays than a place that was leapt to.
    runs = [run for run in runs if run[1] - run[0] >= _FEWEST_IN_A_RUN] or runs
    reaches = np.array([(pairs[first, 0], pairs[end - 1, 0]) for first, end in runs])
    for index, at in enumerate(onset_beats):
        away = np.maximum(reaches[:, 0] - index, index - reaches[:, 1])
        first, end = runs[int(np.argmin(np.maximum(away, 0)))]
        middle = int(np.searchsorted(pairs[:, 0], index))
        near = np.arange(max(first, middle - _NEIGHBOURS), min(end, middle + _NEIGHBOURS + 1))
        near = near[pairs[near, 0] != index]
        line = _robust_line(x[near], y[near], at)
        if line is not None:
            expected[index], quarter[index] = line
    return expected, quarter


def unbroken_runs(onset_beats: FloatArray, start_s: FloatArray) -> list[tuple[int, int]]:
    """Cut paired notes where the playing stopped or leapt.

    Parameters
    ----------
    onset_beats, start_s : (k,) arrays
        Of the pairs, rising.

    Returns
    -------
    list of (int, int)
        Half-open ranges of pairs; a step of more than twice, or less than a quarter of,
        the usual pace ends one.
    """
    count = onset_beats.size
    if count < 2:
        return [(0, count)] if count else []
    beats, seconds = np.diff(onset_beats), np.diff(start_s)
    pace = seconds / np.maximum(beats, 1e-6)
    usual = float(np.median(pace))
    breaks = (pace > _STOPPED * usual) & (seconds - beats * usual > usual)
    breaks |= pace < _LEAPT * usual
    edges = [0, *(np.flatnonzero(breaks) + 1).tolist(), count]
    return [(first, end) for first, end in pairwise(edges) if end > first]


def _robust_line(x: FloatArray, y: FloatArray, at: float) -> tuple[float, float] | None:
    """Value at a place and slope of a line that one stray pair cannot bend."""
    if x.size < 3 or np.ptp(x) <= 0.0:
        return None
    distance = np.abs(x - at)
    weight = 1.0 / (1.0 + distance)
    middle, slope = (0.0, 0.0), 0.0
    for _ in range(3):
        total = weight.sum()
        middle = float(weight @ x / total), float(weight @ y / total)
        spread = float(weight @ (x - middle[0]) ** 2)
        if spread <= 0.0:
            return None
        slope = float(weight @ ((x - middle[0]) * (y - middle[1]))) / spread
        residual = np.abs(y - middle[1] - slope * (x - middle[0]))
        limit = max(3.0 * float(np.median(residual)), 0.02)
        weight = np.minimum(1.0, limit / np.maximum(residual, 1e-9)) ** 2 / (1.0 + distance)
    if slope <= 0.0:
        return None
    return middle[1] + slope * (at - middle[0]), slope


def _pitch_costs(written: Sequence[WrittenNote], pitch_midi: FloatArray) -> FloatArray:
    """Cost of every pair by pitch, (n, m)."""
    cost = np.empty((len(written), pitch_midi.size))
    rows: dict[tuple[int, tuple[int, ...], bool], FloatArray] = {}
    for index, note in enumerate(written):
        key = (note.midi_pitch, note.chord, note.harmonic)
        if key not in rows:
            rows[key] = _pitch_row(note, pitch_midi)
        cost[index] = rows[key]
    return cost


def _pitch_row(note: WrittenNote, pitch_midi: FloatArray) -> FloatArray:
    meant = [note.midi_pitch, *note.chord]
    if note.harmonic:
        meant += [note.midi_pitch + step for step in _HARMONIC_STEPS]
    with np.errstate(invalid="ignore"):
        off = np.min(np.abs(pitch_midi[None, :] - np.array(meant)[:, None]), axis=0)
        octave = np.abs(np.abs(pitch_midi - note.midi_pitch) - 12.0) <= SAME_PITCH_SEMITONES
        row = np.where(
            off <= SAME_PITCH_SEMITONES,
            _NEARNESS * off / SAME_PITCH_SEMITONES,
            np.where(octave, _OTHER_OCTAVE, _WRONG),
        )
    unknown = 0.0 if note.chord else _UNPITCHED
    return np.where(np.isfinite(pitch_midi), row, unknown)


def _aligned(cost: FloatArray) -> IntArray:
    """Give the pairs of the cheapest alignment, (k, 2)."""
    if 0 in cost.shape:
        return np.empty((0, 2), dtype=np.int64)
    back, state = _gotoh(cost, _OPEN, _EXTEND)
    return _traced(back, state)


@compiled
def _gotoh(cost: FloatArray, opening: float, extending: float) -> tuple[ByteArray, int]:
    """Fill the three tables; returns from which state each cell came, and the last state."""
    n, m = cost.shape
    back = np.zeros((3, n + 1, m + 1), dtype=np.int8)
    above = np.full((3, m + 1), np.inf)
    above[0, 0] = 0.0
    for j in range(1, m + 1):
        above[2, j] = opening + extending * j
        back[2, 0, j] = 2 if j > 1 else 0
    for i in range(1, n + 1):
        here = np.full((3, m + 1), np.inf)
        here[1, 0] = opening + extending * i
        back[1, i, 0] = 1 if i > 1 else 0
        for j in range(1, m + 1):
            best = 0
            for s in range(1, 3):
                if above[s, j - 1] < above[best, j - 1]:
                    best = s
            here[0, j] = above[best, j - 1] + cost[i - 1, j - 1]
            back[0, i, j] = best
            least, chosen = above[1, j], 1
            for s in (0, 2):
                if above[s, j] + opening < least:
                    least, chosen = above[s, j] + opening, s
            here[1, j] = least + extending
            back[1, i, j] = chosen
            least, chosen = here[2, j - 1], 2
            for s in (0, 1):
                if here[s, j - 1] + opening < least:
                    least, chosen = here[s, j - 1] + opening, s
            here[2, j] = least + extending
            back[2, i, j] = chosen
        above = here
    last = 0
    for s in range(1, 3):
        if above[s, m] < above[last, m]:
            last = s
    return back, last


def _traced(back: ByteArray, state: int) -> IntArray:
    _, i, j = back.shape
    i, j = i - 1, j - 1
    pairs: list[tuple[int, int]] = []
    while i > 0 or j > 0:
        before = int(back[state, i, j])
        if state == _PAIR:
            i, j = i - 1, j - 1
            pairs.append((i, j))
        elif state == _SKIP_WRITTEN:
            i -= 1
        else:
            j -= 1
        state = before
    return np.array(pairs[::-1], dtype=np.int64).reshape(-1, 2)
