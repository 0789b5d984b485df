"""The tempo ladder: how far up a passage is, step by step from slow to its target.

A tempo is held when accuracy and steadiness stayed inside the player's own bounds at
it, or faster, on two practice days. Rungs lie a fixed step apart below the target.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date

from app.journal.bounds import PassageBounds

DAYS_TO_HOLD = 2
MOST_RUNGS = 60
_WITHIN = 0.02


@dataclass(frozen=True, slots=True)
class LadderTake:
    """A take as the ladder sees it; ``None`` for what was not measured."""

    take_id: str
    practice_day: date
    bpm: float
    mean_absolute_cents: float | None
    steadiness_cv_percent: float | None


@dataclass(frozen=True, slots=True)
class Rung:
    """One tempo; it is held once ``days`` are two, on ``held_on`` for the first time."""

    bpm: float
    days: tuple[date, ...]
    held_on: date | None

    @property
    def is_held(self) -> bool:
        """Whether it was held on enough days."""
        return self.held_on is not None


@dataclass(frozen=True, slots=True)
class Ladder:
    """A passage's way up.

    Attributes
    ----------
    rungs : tuple of Rung
        From slow to fast; the last is the target where there is one.
    held_bpm : float or None
        The highest tempo that was held on two days, as played.
    next_bpm : float or None
        The lowest rung that is not held; ``None`` when all are.
    judged, outside, not_judged : int
        Takes inside or outside of the bounds; takes that could not be judged.
    """

    rungs: tuple[Rung, ...]
    held_bpm: float | None
    next_bpm: float | None
    target_bpm: float | None
    judged: int
    outside: int
    not_judged: int


def ladder(takes: Iterable[LadderTake], bounds: PassageBounds) -> Ladder:
    """Climb the ladder with what was played so far.

    Parameters
    ----------
    takes : iterable of LadderTake
        Of one passage, in any order.
    bounds : PassageBounds
        Without a target the ladder ends one step above the fastest take.
    """
    every = tuple(takes)
    held, outside, unknown = [], 0, 0
    for take in every:
        verdict = bounds.hold(take.mean_absolute_cents, take.steadiness_cv_percent)
        if verdict is None:
            unknown += 1
        elif verdict:
            held.append(take)
        else:
            outside += 1
    best: dict[date, float] = {}
    for take in held:
        best[take.practice_day] = max(best.get(take.practice_day, 0.0), take.bpm)
    fastest = sorted(best.values(), reverse=True)
    held_bpm = fastest[DAYS_TO_HOLD - 1] if len(fastest) >= DAYS_TO_HOLD else None
    rungs = tuple(_rung(bpm, best) for bpm in _tempos(every, bounds))
    open_rungs = [rung.bpm for rung in rungs if not rung.is_held]
    return Ladder(
        rungs=rungs,
        held_bpm=held_bpm,
        next_bpm=open_rungs[0] if open_rungs else None,
        target_bpm=bounds.target_bpm,
        judged=len(held) + outside,
        outside=outside,
        not_judged=unknown,
    )


def _rung(bpm: float, best: dict[date, float]) -> Rung:
    # A tempo that is set on a metronome is played a little off it.
    days = sorted(day for day, fastest in best.items() if fastest >= bpm * (1 - _WITHIN))
    held_on = days[DAYS_TO_HOLD - 1] if len(days) >= DAYS_TO_HOLD else None
    return Rung(bpm, tuple(days), held_on)


def _tempos(takes: Sequence[LadderTake], bounds: PassageBounds) -> list[float]:
    """Tempos of the rungs: whole steps down from the target to the slowest take."""
    played = [take.bpm for take in takes]
    if not played and bounds.target_bpm is None:
        return []
    step = bounds.step_bpm
    if bounds.target_bpm is None:
        top = step * (math.floor(max(played) / step) + 1)
    else:
        top = bounds.target_bpm
    lowest = min([*played, top])
    count = min(MOST_RUNGS - 1, math.ceil(max(0.0, top - lowest) / step - 1e-9))
    return [top - step * down for down in range(count, -1, -1)]
