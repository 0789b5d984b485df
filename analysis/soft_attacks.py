"""Equal moments of two takes whose notes speak softly: where their sound begins.

A note is detected where its attack has risen half-way. Where attacks are short that is
the moment it is heard at; where an instrument speaks softly, half-way lies later by as much
as a tenth of a second, and by another time for each note and level, which at two tempos
puts the two takes apart. There, and only there, anchors move to the beginning of the sound.
"""

from typing import Final

import numpy as np

from analysis.beginnings import beginnings
from analysis.note_anchors import Anchors, NoteLine
from analysis.results import FloatArray
from analysis.short_spectra import Source
from analysis.stopping import StopQuestion

SHORT_ATTACK_S: Final = 0.026
SOFT_ATTACK_S: Final = 0.04
LEAP_S: Final = 0.045
_LOOKED_AT: Final = 24
_ROUNDS: Final = 2
_NEIGHBOURS: Final = 3
_NEAR_S: Final = 3.0
_FEWEST: Final = 3
_LEAST_STEP_S: Final = 0.1


def at_their_beginnings(
    anchors: Anchors,
    lines: tuple[NoteLine, NoteLine],
    sources: tuple[Source, Source],
    should_stop: StopQuestion | None = None,
) -> Anchors:
    """Move anchors to where their notes begin to sound, if they speak softly.

    Parameters
    ----------
    anchors : Anchors
    lines : pair of NoteLine
        All notes of both takes.
    sources : pair of Source
        The sound of both.
    should_stop : callable, optional
        Asked often.

    Returns
    -------
    Anchors
        As many; both columns increase still.
    """
    moments = (anchors.a_s, anchors.b_s)
    # A look at some of them tells whether the instrument speaks softly at all.
    few = np.unique(np.linspace(0, anchors.a_s.size - 1, _LOOKED_AT).astype(np.int64))
    some = [
        _late_s(at_s[few], line, source, should_stop)
        for at_s, line, source in zip(moments, lines, sources, strict=True)
    ]
    usual_s = float(np.median(np.concatenate(some)))
    soft = np.clip((usual_s - SHORT_ATTACK_S) / (SOFT_ATTACK_S - SHORT_ATTACK_S), 0.0, 1.0)
    if soft == 0.0:
        return anchors
    late = [
        _late_s(at_s, line, source, should_stop)
        for at_s, line, source in zip(moments, lines, sources, strict=True)
    ]
    told = tuple(at_s - soft * by_s for at_s, by_s in zip(moments, late, strict=True))
    plain = tuple(at_s - soft * usual_s for at_s in moments)
    a_s, b_s = _smoothest((told[0], plain[0]), (told[1], plain[1]))
    return Anchors(_rising(a_s), _rising(b_s), anchors.is_even)


def _smoothest(
    a: tuple[FloatArray, FloatArray], b: tuple[FloatArray, FloatArray]
) -> tuple[FloatArray, FloatArray]:
    """Choose between what was told and what is usual, where what was told leaps.

    A beginning that was mistaken moves one note of one take against its neighbours; what
    is usual is then tried in its place, in either take, and taken where the tempo then
    runs on.
    """
    now_a, now_b = a[0].copy(), b[0].copy()
    choices = [(one, other) for one in a for other in b]
    for _ in range(_ROUNDS):
        for i in range(now_a.size):
            around = _around(now_a, now_b, i)
            if around is None:
                continue
            slope, offset_s = around
            away = [abs(other[i] - offset_s - slope * one[i]) for one, other in choices]
            here = abs(now_b[i] - offset_s - slope * now_a[i])
            best = int(np.argmin(away))
            if here > LEAP_S * max(1.0, slope) and away[best] < here / 2:
                now_a[i], now_b[i] = choices[best][0][i], choices[best][1][i]
    return now_a, now_b


def _around(a_s: FloatArray, b_s: FloatArray, i: int) -> tuple[float, float] | None:
    """Slope and offset of the line through an anchor's neighbours; none where they are few."""
    near = np.array([k for k in range(i - _NEIGHBOURS, i + _NEIGHBOURS + 1) if k != i])
    near = near[(near >= 0) & (near < a_s.size)]
    near = near[np.abs(a_s[near] - a_s[i]) <= _NEAR_S] if near.size else near
    if near.size < _FEWEST or np.ptp(a_s[near]) <= 0.0:
        return None
    x, y = a_s[near], b_s[near]
    first, second = np.triu_indices(near.size, 1)
    wide = np.abs(x[second] - x[first]) > _LEAST_STEP_S
    if not wide.any():
        return None
    slope = float(np.median(((y[second] - y[first])[wide]) / (x[second] - x[first])[wide]))
    return slope, float(np.median(y - slope * x))


def _late_s(
    at_s: FloatArray, line: NoteLine, source: Source, should_stop: StopQuestion | None
) -> FloatArray:
    """How much later than their beginning some moments lie, beside all notes of the take."""
    every = np.unique(np.concatenate((line.start_s, at_s)))
    wanted = np.searchsorted(every, at_s)
    begun_s = beginnings(source, every, wanted, should_stop=should_stop)
    return np.asarray(at_s - begun_s, dtype=np.float64)


def _rising(time_s: FloatArray) -> FloatArray:
    return np.asarray(np.maximum.accumulate(time_s), dtype=np.float64)
