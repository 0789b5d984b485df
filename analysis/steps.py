"""The pitch track read as a staircase: which frames belong to one note's pitch."""

from typing import Final

import numpy as np
from numpy.typing import NDArray

from analysis.compiled import compiled
from analysis.results import PitchTrack
from analysis.stopping import StopQuestion, stop_if_asked
from analysis.units import hz_to_midi

FloatArray = NDArray[np.float64]
IntArray = NDArray[np.int64]

STEP_CENTS: Final = 20.0
_SPREAD_CENTS: Final = 42.0
_DEAREST_FRAME: Final = 9.0
_CHANGE_COST: Final = 12.0
_COSTS_MADE_FOR_HOP_S: Final = 0.005
NO_STEP: Final = -1
_BLOCK_FRAMES: Final = 12_000


@compiled
def _climb(
    position: FloatArray,
    cost: FloatArray,
    prices: tuple[float, float, float],
    changed: NDArray[np.bool_],
    came_from: NDArray[np.int16],
) -> None:
    """Carry the costs of all states through a block of frames, and note every choice."""
    spread, dearest, change_cost = prices
    states = len(cost)
    for frame in range(len(position)):
        cheapest = 0
        for state in range(1, states):
            if cost[state] < cost[cheapest]:
                cheapest = state
        came_from[frame] = cheapest
        change = cost[cheapest] + change_cost
        lowest = cost[cheapest]
        for state in range(states):
            changed[frame, state] = change < cost[state]
            if changed[frame, state]:
                cost[state] = change
            if not np.isnan(position[frame]):
                away = (position[frame] - state) / spread
                cost[state] += min(0.5 * away * away, dearest)
            cost[state] -= lowest


@compiled
def _go_back(
    changed: NDArray[np.bool_], came_from: NDArray[np.int16], state: int, path: IntArray
) -> int:
    """Fill in the path through a block that ends in a state; return where it came from."""
    for frame in range(len(path) - 1, -1, -1):
        path[frame] = state
        if changed[frame, state]:
            state = came_from[frame]
    return state


def _staircase(
    position: FloatArray,
    states: int,
    prices: tuple[float, float, float],
    should_stop: StopQuestion | None,
) -> IntArray:
    """Return the cheapest piecewise constant reading of ``position``, NaN being free.

    The choices of an hour would fill 150 MB. So only the costs at the blocks' beginnings
    are kept, and each block is gone through once more on the way back.
    """
    changed = np.empty((_BLOCK_FRAMES, states), dtype=np.bool_)
    came_from = np.empty(_BLOCK_FRAMES, dtype=np.int16)
    firsts = range(0, len(position), _BLOCK_FRAMES)
    cost = np.zeros(states)
    at_first = np.empty((len(firsts), states))
    for block, first in enumerate(firsts):
        stop_if_asked(should_stop)
        at_first[block] = cost
        _climb(position[first : first + _BLOCK_FRAMES], cost, prices, changed, came_from)
    path = np.empty(len(position), dtype=np.int64)
    state = int(np.argmin(cost))
    for block, first in reversed(list(enumerate(firsts))):
        stop_if_asked(should_stop)
        part = slice(first, first + _BLOCK_FRAMES)
        _climb(position[part], at_first[block], prices, changed, came_from)
        state = _go_back(changed, came_from, state, path[part])
    return path


def pitch_steps(track: PitchTrack, should_stop: StopQuestion | None = None) -> IntArray:
    """Read the track as notes of constant pitch.

    A dynamic programme over pitches 20 cents apart: staying on a pitch costs by the
    square of the distance (bounded, so that a stray frame cannot force a step), changing
    it costs a fixed price. Vibrato and intonation inside a note are cheaper than two
    changes; a semitone that lasts 60 ms is not.

    Parameters
    ----------
    track : PitchTrack
        Any hop.
    should_stop : callable, optional
        Asked for every minute of the track.

    Returns
    -------
    (n,) int array
        A number for each frame, equal while the pitch stays; ``NO_STEP`` where unvoiced.
    """
    midi = hz_to_midi(track.f0_hz)
    voiced = np.isfinite(midi)
    if not voiced.any():
        return np.full(len(midi), NO_STEP, dtype=np.int64)
    lowest = float(np.min(midi[voiced])) - 0.5
    position = (midi - lowest) * 100.0 / STEP_CENTS
    states = int(np.max(position[voiced])) + 4
    per_frame = track.hop_s / _COSTS_MADE_FOR_HOP_S
    prices = (_SPREAD_CENTS / STEP_CENTS, _DEAREST_FRAME, _CHANGE_COST / per_frame)
    path = _staircase(position, states, prices, should_stop)
    return np.where(voiced, path, NO_STEP)
