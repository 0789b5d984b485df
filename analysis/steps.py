"""The pitch track read as a staircase: which frames belong to one note's pitch."""

from typing import Final

import numpy as np
from numpy.typing import NDArray

from analysis.compiled import compiled
from analysis.results import PitchTrack
from analysis.units import hz_to_midi

FloatArray = NDArray[np.float64]
IntArray = NDArray[np.int64]

STEP_CENTS: Final = 20.0
_SPREAD_CENTS: Final = 42.0
_DEAREST_FRAME: Final = 9.0
_CHANGE_COST: Final = 15.0
_COSTS_MADE_FOR_HOP_S: Final = 0.005
NO_STEP: Final = -1


@compiled
def _staircase(
    position: FloatArray, states: int, spread: float, dearest: float, change_cost: float
) -> IntArray:
    """Return the cheapest piecewise constant reading of ``position``, NaN being free."""
    frames = len(position)
    cost = np.zeros(states)
    # one byte a state and frame: an hour has a hundred million of them
    changed = np.empty((frames, states), dtype=np.bool_)
    came_from = np.empty(frames, dtype=np.int16)
    for frame in range(frames):
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
    path = np.empty(frames, dtype=np.int64)
    state = int(np.argmin(cost))
    for frame in range(frames - 1, -1, -1):
        path[frame] = state
        if changed[frame, state]:
            state = came_from[frame]
    return path


def pitch_steps(track: PitchTrack) -> IntArray:
    """Read the track as notes of constant pitch.

    A dynamic programme over pitches 20 cents apart: staying on a pitch costs by the
    square of the distance (bounded, so that a stray frame cannot force a step), changing
    it costs a fixed price. Vibrato and intonation inside a note are cheaper than two
    changes; a semitone that lasts 60 ms is not.

    Parameters
    ----------
    track : PitchTrack
        Any hop.

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
    path = _staircase(
        position, states, _SPREAD_CENTS / STEP_CENTS, _DEAREST_FRAME, _CHANGE_COST / per_frame
    )
    return np.where(voiced, path, NO_STEP)
