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
_RING = MOST_SKIPPED + 2
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
    states = PARTS * log_ratio.size
    # Only the last few onsets can be come from: their costs go round in a ring.
    ring = np.full((_RING, states), np.inf)
    origin = np.full((onset_s.size, states), -1, dtype=np.int32)
    advance = np.zeros((onset_s.size, states), dtype=np.int32)
    periods = period_s * np.exp(log_ratio)
    for first in range(0, onset_s.size, _ONSETS_AT_ONCE):
        stop_if_asked(should_stop)
        last = min(first + _ONSETS_AT_ONCE, onset_s.size)
        prices = (anchor_cost, POSITION_COST)
        _search((first, last), onset_s, weight, periods, prices, (ring, origin, advance))
    end, state, cost = _cheapest_end(ring, weight)
    return _read_path(origin, advance, (end, state), cost / onset_s.size)


SmallIndices = NDArray[np.int32]


def _read_path(
    origin: SmallIndices, advance: SmallIndices, end: tuple[int, int], cost: float
) -> MetricPath:
    """Follow the best choices back from the cheapest end."""
    onset, state = end
    states = origin.shape[1]
    onsets, steps = [onset], []
    while origin[onset, state] >= 0:
        steps.append(int(advance[onset, state]))
        back, before = divmod(int(origin[onset, state]), states)
        onset, state = onset - back, before
        onsets.append(onset)
    steps.append(state // (states // PARTS))
    position = np.cumsum(np.array(steps[::-1], dtype=np.int64))
    return MetricPath(np.array(onsets[::-1], dtype=np.int64), position, cost)


def _cheapest_end(ring: FloatArray, weight: FloatArray) -> tuple[int, int, float]:
    """Return the onset and state the cheapest path ends in, and its cost."""
    best, end, end_state = np.inf, 0, 0
    skipped = 0.0
    for i in range(len(weight) - 1, max(-1, len(weight) - 2 - MOST_SKIPPED), -1):
        state = int(np.argmin(ring[i % _RING]))
        if ring[i % _RING, state] + skipped < best:
            best, end, end_state = float(ring[i % _RING, state]) + skipped, i, state
        skipped += SKIP_COST * float(weight[i])
    return end, end_state, best


@compiled
def _search(  # noqa: PLR0917 - compiled code knows no keywords
    block: tuple[int, int],
    onset_s: FloatArray,
    weight: FloatArray,
    periods: FloatArray,
    prices: tuple[FloatArray, FloatArray],
    table: tuple[FloatArray, SmallIndices, SmallIndices],
) -> None:
    """Cheapest way into every state (position, period) at every onset of a block.

    The state number is ``position * len(periods) + period``; ``origin`` holds how many
    onsets back the way comes from, times the number of states, plus the state there.
    """
    anchor_cost, position_cost = prices
    cost, origin, advance = table
    bins = periods.size
    states = PARTS * bins
    moved = np.empty((PARTS, bins))
    moved_from = np.empty((PARTS, bins), dtype=np.int64)
    before_first = 0.0
    for i in range(block[0], block[1]):
        here = cost[i % _RING]
        here[:] = np.inf
        if i <= MOST_SKIPPED:
            for state in range(states):
                begin = (1.0 + START_WEIGHT) * position_cost[state // bins]
                here[state] = before_first + begin + anchor_cost[state % bins]
            before_first += SKIP_COST * weight[i]
        skipped = 0.0
        for j in range(i - 1, max(-1, i - 2 - MOST_SKIPPED), -1):
            interval = onset_s[i] - onset_s[j]
            beats = interval / periods[bins // 2]
            _change_tempo(cost[j % _RING], beats, bins, moved, moved_from)
            moved_from += (i - j) * states
            extra = skipped + ANCHOR_WEIGHT * anchor_cost
            arrivals = (here, origin[i], advance[i])
            _arrive(interval, periods, (moved, moved_from), (extra, position_cost), arrivals)
            skipped += SKIP_COST * weight[j]


@compiled
def _arrive(
    interval: float,
    periods: FloatArray,
    departures: tuple[FloatArray, Indices],
    prices: tuple[FloatArray, FloatArray],
    arrivals: tuple[FloatArray, SmallIndices, SmallIndices],
) -> None:
    """Offer one onset every way from an earlier one, keeping the cheapest into each state."""
    moved, moved_from = departures
    extra, position_cost = prices
    cost, origin, advance = arrivals
    sd = TIMING_SD_S + TIMING_SD_SHARE * interval
    for period in range(periods.size):
        ideal = interval * PARTS / periods[period]
        nearest = round(ideal)
        for steps in range(max(1, nearest - 2), nearest + 3):
            error = (steps - ideal) * periods[period] / PARTS / sd
            price = 0.5 * error * error + extra[period]
            for position in range(PARTS):
                arrival = (position + steps) % PARTS
                total = moved[position, period] + price + position_cost[arrival]
                state = arrival * periods.size + period
                if total < cost[state]:
                    cost[state] = total
                    origin[state] = moved_from[position, period]
                    advance[state] = steps


@compiled
def _change_tempo(
    cost: FloatArray, beats: float, bins: int, moved: FloatArray, moved_from: Indices
) -> None:
    """Cheapest cost after the period has moved to each bin, for every position."""
    sd = TEMPO_CHANGE_SD * math.sqrt(max(beats, 0.25)) / PERIOD_STEP
    reach = max(2, int(2.5 * sd))
    for position in range(PARTS):
        for period in range(bins):
            best, best_from = np.inf, -1
            for before in range(max(0, period - reach), min(bins, period + reach + 1)):
                move = (period - before) / sd
                total = cost[position * bins + before] + 0.5 * move * move
                if total < best:
                    best, best_from = total, position * bins + before
            moved[position, period] = best
            moved_from[position, period] = best_from
