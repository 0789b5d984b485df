"""Which beat does each onset belong to? A path search over metric positions.

Every onset gets a position inside its beat (in twelfths: halves, quarters, thirds)
and a local beat period, or is passed over as not belonging to the pulse. Timing
errors, simple positions, small tempo changes and nearness to the expected tempo
are weighed against each other, as negative log probabilities; the cheapest path
over all onsets wins.

References
----------
The state space follows the idea of A. T. Cemgil and B. Kappen, 'Monte Carlo methods
for tempo tracking and rhythm quantization', J. Artif. Intell. Res. 18 (2003); the
search here is exact on a grid of periods.
"""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from analysis.compiled import compiled
from analysis.results import FloatArray
from analysis.stopping import StopQuestion, stop_if_asked

Indices = NDArray[np.int64]

PARTS = 12
# Twelfths of a beat: the beat itself, its half, quarters, thirds, sixths, the rest.
POSITION_COST: FloatArray = np.array(
    [0.0, 6.0, 3.8, 1.8, 2.4, 6.0, 0.9, 6.0, 2.4, 1.8, 3.8, 6.0], dtype=np.float64
)
PERIOD_STEP = 0.015
TIMING_SD_S = 0.012
TIMING_SD_SHARE = 0.01
TEMPO_CHANGE_SD = 0.065
ANCHOR_SD = 0.12
ANCHOR_WEIGHT = 0.07
SKIP_COST = 4.0
START_WEIGHT = 1.0  # an even row of notes more often begins on the beat than off it
MOST_SKIPPED = 3
_ONSETS_AT_ONCE = 256


@dataclass(frozen=True, slots=True)
class MetricPath:
    """Onsets on the pulse.

    Attributes
    ----------
    onset_index : (m,) array
        The onsets that belong to the pulse.
    position : (m,) array
        Their metric position in twelfths of a beat, strictly increasing; multiples
        of 12 are beats.
    cost : float
        Cost of the path for each onset that was offered.
    """

    onset_index: Indices
    position: Indices
    cost: float


def track_pulse(
    onset_s: FloatArray,
    weight: FloatArray,
    period_s: float,
    *,
    period_range: float = 0.35,
    should_stop: StopQuestion | None = None,
) -> MetricPath:
    """Place onsets on a pulse of about the given period.

    Parameters
    ----------
    onset_s : (n,) array
        At least two, strictly increasing.
    weight : (n,) array
        0 to 1: how much an onset must be accounted for.
    period_s : float
        Expected beat period.
    period_range : float
        Largest natural-log deviation of the local period from it.
    should_stop : callable, optional
        Asked for every few hundred onsets.

    Returns
    -------
    MetricPath
    """
    bins = round(period_range / PERIOD_STEP)
    log_ratio = np.arange(-bins, bins + 1, dtype=np.float64) * PERIOD_STEP
    anchor_cost: FloatArray = 0.5 * np.square(log_ratio / ANCHOR_SD)
    prices = (anchor_cost, POSITION_COST)
    periods = period_s * np.exp(log_ratio)
    cost = np.empty((onset_s.size, log_ratio.size, PARTS))
    for first in range(0, onset_s.size, _ONSETS_AT_ONCE):
        stop_if_asked(should_stop)
        last = min(first + _ONSETS_AT_ONCE, onset_s.size)
        _search((first, last), onset_s, weight, periods, prices, cost)
    onset, state, whole = _cheapest_end(cost, weight)
    onsets, steps = [onset], []
    while True:
        back, state, step = _way_into(onset, state, onset_s, weight, periods, prices, cost)
        if back == 0:
            break
        onset -= back
        onsets.append(onset)
        steps.append(step)
    steps.append(state % PARTS)
    position = np.cumsum(np.array(steps[::-1], dtype=np.int64))
    return MetricPath(np.array(onsets[::-1], dtype=np.int64), position, whole / onset_s.size)


def _cheapest_end(cost: FloatArray, weight: FloatArray) -> tuple[int, int, float]:
    """Return the onset and state the cheapest path ends in, and its cost."""
    best, end, end_state = np.inf, 0, 0
    skipped = 0.0
    for i in range(len(weight) - 1, max(-1, len(weight) - 2 - MOST_SKIPPED), -1):
        state = int(np.argmin(cost[i]))
        if cost[i].flat[state] + skipped < best:
            best, end, end_state = float(cost[i].flat[state]) + skipped, i, state
        skipped += SKIP_COST * float(weight[i])
    return end, end_state, best


@compiled
def _search(  # noqa: PLR0917 - compiled code knows no keywords
    block: tuple[int, int],
    onset_s: FloatArray,
    weight: FloatArray,
    periods: FloatArray,
    prices: tuple[FloatArray, FloatArray],
    cost: FloatArray,
) -> None:
    """Fill ``cost[i, period, position]`` for the onsets of a block: the cheapest way there.

    The innermost loops run over the positions, several at a time; which way was the
    cheapest is only asked again of the states that the path goes through.
    """
    anchor_cost, position_cost = prices
    bins = periods.size
    # twice around, so that any twelve positions that follow each other lie in one piece
    moved = np.empty((bins, 2 * PARTS))
    for i in range(block[0], block[1]):
        for period in range(bins):
            for position in range(PARTS):
                cost[i, period, position] = _begins_at(i, period, position, weight, prices)
        skipped = 0.0
        for j in range(i - 1, max(-1, i - 2 - MOST_SKIPPED), -1):
            interval = onset_s[i] - onset_s[j]
            _change_tempo(cost[j], _tempo_sd(interval, periods), moved)
            for period in range(bins):
                extra = skipped + ANCHOR_WEIGHT * anchor_cost[period]
                here, there = cost[i, period], moved[period]
                ideal = interval * PARTS / periods[period]
                nearest = round(ideal)
                for steps in range(max(1, nearest - 2), nearest + 3):
                    price = _timing_price(steps - ideal, interval, periods[period]) + extra
                    first = (PARTS - steps) % PARTS
                    for arrival in range(PARTS):
                        total = there[first + arrival] + (price + position_cost[arrival])
                        here[arrival] = total if total < here[arrival] else here[arrival]
            skipped += SKIP_COST * weight[j]


@compiled
def _begins_at(
    i: int,
    period: int,
    position: int,
    weight: FloatArray,
    prices: tuple[FloatArray, FloatArray],
) -> float:
    """Cost of passing over all onsets before one and beginning with it."""
    if i > MOST_SKIPPED:
        return math.inf
    before_first = 0.0
    for k in range(i):
        before_first += SKIP_COST * weight[k]
    anchor_cost, position_cost = prices
    begin = (1.0 + START_WEIGHT) * position_cost[position]
    return float(before_first + begin + anchor_cost[period])


@compiled
def _tempo_sd(interval: float, periods: FloatArray) -> float:
    """Return the standard deviation, in bins, of the change of period over an interval."""
    beats = interval / periods[periods.size // 2]
    return TEMPO_CHANGE_SD * math.sqrt(max(beats, 0.25)) / PERIOD_STEP


@compiled
def _farthest_bin(tempo_sd: float) -> int:
    """How many bins the period may move at once."""
    return max(2, int(2.5 * tempo_sd))


@compiled
def _timing_price(late: float, interval: float, period_s: float) -> float:
    """Cost of an onset that lies ``late`` twelfths of a beat off its position."""
    error = late * period_s / PARTS / (TIMING_SD_S + TIMING_SD_SHARE * interval)
    return 0.5 * error * error


@compiled
def _change_tempo(cost: FloatArray, sd: float, moved: FloatArray) -> None:
    """Cheapest cost after the period has moved to each bin, for every position, twice around."""
    bins = len(cost)
    reach = _farthest_bin(sd)
    for period in range(bins):
        best = moved[period]
        best[:] = np.inf
        for before in range(max(0, period - reach), min(bins, period + reach + 1)):
            move = (period - before) / sd
            price = 0.5 * move * move
            ways = cost[before]
            for position in range(PARTS):
                total = ways[position] + price
                best[position] = total if total < best[position] else best[position]
        best[PARTS:] = best[:PARTS]


@compiled
def _way_into(  # noqa: PLR0917 - compiled code knows no keywords
    i: int,
    state: int,
    onset_s: FloatArray,
    weight: FloatArray,
    periods: FloatArray,
    prices: tuple[FloatArray, FloatArray],
    cost: FloatArray,
) -> tuple[int, int, int]:
    """Return how many onsets back the cheapest way into a state begins, where, and its steps.

    Nothing back, and the state itself, where the path begins here.
    """
    period, arrival = state // PARTS, state % PARTS
    bins = periods.size
    best, found = _begins_at(i, period, arrival, weight, prices), (0, state, 0)
    skipped = 0.0
    for j in range(i - 1, max(-1, i - 2 - MOST_SKIPPED), -1):
        interval = onset_s[i] - onset_s[j]
        tempo_sd = _tempo_sd(interval, periods)
        reach = _farthest_bin(tempo_sd)
        extra = skipped + ANCHOR_WEIGHT * prices[0][period]
        ideal = interval * PARTS / periods[period]
        nearest = round(ideal)
        for steps in range(max(1, nearest - 2), nearest + 3):
            price = _timing_price(steps - ideal, interval, periods[period]) + extra
            position = (arrival - steps) % PARTS
            for before in range(max(0, period - reach), min(bins, period + reach + 1)):
                move = (period - before) / tempo_sd
                total = cost[j, before, position] + 0.5 * move * move
                total += price + prices[1][arrival]
                if total < best:
                    best, found = total, (i - j, before * PARTS + position, steps)
        skipped += SKIP_COST * weight[j]
    return found
