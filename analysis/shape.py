"""The shape of two takes: how loud they are at equal musical moments.

Loudness is compared by its shape alone: one take is moved so that both have the same
middle, because a microphone is not calibrated.
"""

from dataclasses import dataclass

import numpy as np

from analysis.results import (
    Alignment,
    Dynamics,
    FloatArray,
    Measured,
    NotMeasurable,
    Provenance,
    Reason,
)
from analysis.time_map import map_time

ALGORITHM = "shape-1"
STEP_S = 0.1
FEWEST_POINTS = 20
QUIET_BELOW_DB = 30.0
END_SHARE = 0.25


@dataclass(frozen=True, slots=True)
class Shapes:
    """Loudness of two takes on the time of the first; all (n,), NaN where nothing sounds.

    ``offset_db`` was added to ``b_db``; ``likeness`` is the correlation of the two, -1 to
    1, and ``difference_db`` the ordinary (root mean square) distance left.
    """

    time_s: FloatArray
    a_db: FloatArray
    b_db: FloatArray
    offset_db: float
    likeness: float
    difference_db: float


@dataclass(frozen=True, slots=True)
class Hairpin:
    """An intended crescendo or diminuendo, in the time of a take."""

    start_s: float
    end_s: float
    grows: bool


def shapes_of(a: Dynamics, b: Dynamics, alignment: Alignment) -> Measured[Shapes] | NotMeasurable:
    """Lay the loudness of two takes over each other.

    Parameters
    ----------
    a, b : Dynamics
    alignment : Alignment
        From take a to take b.

    Returns
    -------
    Measured[Shapes] or NotMeasurable
        ``TOO_SHORT`` where both sound together for less than two seconds.
    """
    provenance = Provenance(ALGORITHM, {"step_s": STEP_S})
    time = np.arange(alignment.a_s[0], alignment.a_s[-1], STEP_S)
    loud_a = loudness_at(a, time)
    loud_b = loudness_at(b, map_time(alignment, time))
    both = np.isfinite(loud_a) & np.isfinite(loud_b)
    if np.count_nonzero(both) < FEWEST_POINTS:
        sentence = "The two takes sound together for too short a time to have a shape."
        return NotMeasurable(Reason.TOO_SHORT, sentence, provenance)
    offset = float(np.median(loud_a[both] - loud_b[both]))
    loud_b = loud_b + offset
    one, other = loud_a[both], loud_b[both]
    spread = float(one.std() * other.std())
    covariance = float(np.mean((one - one.mean()) * (other - other.mean())))
    result = Shapes(
        time_s=time,
        a_db=loud_a,
        b_db=loud_b,
        offset_db=offset,
        likeness=covariance / spread if spread > 0 else 0.0,
        difference_db=float(np.sqrt(np.mean((one - other) ** 2))),
    )
    return Measured(result, provenance)


def loudness_at(dynamics: Dynamics, at_s: FloatArray) -> FloatArray:
    """Momentary loudness at given times, LUFS, NaN 30 dB under the loudest and outside."""
    time, loud = dynamics.momentary_time_s, dynamics.momentary_lufs
    known = np.isfinite(loud)
    if not known.any():
        return np.full(at_s.shape, np.nan)
    values = np.interp(at_s, time[known], loud[known], left=np.nan, right=np.nan)
    return np.where(values >= np.max(loud[known]) - QUIET_BELOW_DB, values, np.nan)


def hairpin_change_db(dynamics: Dynamics, hairpin: Hairpin) -> float | None:
    """Change of loudness from the beginning of a hairpin to its end, dB.

    The medians of its first and its last quarter; ``None`` where nothing sounds in one.
    """
    length = hairpin.end_s - hairpin.start_s
    first = np.arange(hairpin.start_s, hairpin.start_s + END_SHARE * length + 1e-9, STEP_S / 2)
    last = np.arange(hairpin.end_s - END_SHARE * length, hairpin.end_s + 1e-9, STEP_S / 2)
    begin, end = (loudness_at(dynamics, at) for at in (first, last))
    if not np.isfinite(begin).any() or not np.isfinite(end).any():
        return None
    return float(np.nanmedian(end) - np.nanmedian(begin))
