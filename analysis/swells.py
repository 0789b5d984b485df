"""The shape of a take's loudness: crescendos, diminuendos, and intended hairpins.

Loudness changes of less than about 1 dB are not told apart by ear (0.7 to 1.2 dB on
piano tones, Slade et al., Psychology of Music 2022; abstract only), and single notes
swell by a few dB of themselves, so that only larger and longer changes are named.
"""

import itertools
from dataclasses import dataclass
from typing import Literal

from scipy import ndimage

from analysis.loudness import HOP_S
from analysis.playing import Spans, playing_windows
from analysis.results import (
    Dynamics,
    FloatArray,
    Measured,
    NotMeasurable,
    Provenance,
    Reason,
    Swell,
)
from analysis.robust_line import robust_slope

__all__ = ["ALGORITHM", "HairpinExtent", "Swell", "find_swells", "measure_hairpin"]

ALGORITHM = "swells-1"
LEAST_CHANGE_DB = 4.0
SHORTEST_S = 1.5

_SMOOTHING_S = 1.0
_FIT_STEP_S = 0.1
_INDEPENDENT_S = 0.4  # momentary windows closer than their length share their sound
_FEWEST_POINTS = 8

Kind = Literal["crescendo", "diminuendo"]


@dataclass(frozen=True, slots=True)
class HairpinExtent:
    """How far the loudness rose (positive) or fell, and half of its 95 % interval."""

    change_db: float
    uncertainty_db: float


def find_swells(
    dynamics: Dynamics, *, playing: Spans | None = None, least_change_db: float = LEAST_CHANGE_DB
) -> tuple[Swell, ...]:
    """Find the crescendos and diminuendos of a take.

    The loudness, smoothed over a second, is cut at its turning points; a turn counts
    once the loudness has moved back by ``least_change_db``.

    Parameters
    ----------
    dynamics : Dynamics
    playing : sequence of (start_s, end_s), optional
        Where the instrument sounds; pauses are bridged.
    least_change_db : float
        Smaller changes are not named.

    Returns
    -------
    tuple of Swell
        In order of time, each at least 1.5 s long.
    """
    time_s, loudness = _played_curve(dynamics, playing)
    if time_s.size < 2:
        return ()
    smooth = ndimage.uniform_filter1d(loudness, max(1, round(_SMOOTHING_S / HOP_S)), mode="nearest")
    turns = _turning_points(smooth, least_change_db)
    swells = []
    for first, last in itertools.pairwise(turns):
        change = float(smooth[last] - smooth[first])
        start, end = float(time_s[first]), float(time_s[last])
        if abs(change) >= least_change_db and end - start >= SHORTEST_S:
            kind: Kind = "crescendo" if change > 0 else "diminuendo"
            swells.append(Swell(start, end, change, kind))
    return tuple(swells)


def measure_hairpin(
    dynamics: Dynamics, start_s: float, end_s: float, *, playing: Spans | None = None
) -> Measured[HairpinExtent] | NotMeasurable:
    """Measure how far the loudness moved over a stretch, for instance an intended hairpin.

    Parameters
    ----------
    dynamics : Dynamics
    start_s, end_s : float
        The stretch, seconds.
    playing : sequence of (start_s, end_s), optional
        Where the instrument sounds; pauses are left out.

    Returns
    -------
    Measured[HairpinExtent] or NotMeasurable
        From a robust straight line (Theil-Sen) through the momentary loudness;
        ``TOO_SHORT`` with less than 0.8 s of playing in it.
    """
    provenance = Provenance(ALGORITHM, {"start_s": start_s, "end_s": end_s})
    time_s, loudness = _played_curve(dynamics, playing)
    inside = (time_s >= start_s) & (time_s <= end_s)
    step = round(_FIT_STEP_S / HOP_S)
    at, level = time_s[inside][::step], loudness[inside][::step]
    if at.size < _FEWEST_POINTS:
        return NotMeasurable(Reason.TOO_SHORT, "Too little is played in this stretch.", provenance)
    line = robust_slope(at, level)
    # The points overlap: so many fewer are independent, and so much wider is the interval.
    widening = (_INDEPENDENT_S / _FIT_STEP_S) ** 0.5
    length = end_s - start_s
    extent = HairpinExtent(
        change_db=line.slope * length,
        uncertainty_db=widening * (line.high - line.low) / 2 * length,
    )
    return Measured(extent, provenance)


def _played_curve(dynamics: Dynamics, playing: Spans | None) -> tuple[FloatArray, FloatArray]:
    """Time and momentary loudness where the instrument sounds."""
    inside = playing_windows(dynamics.momentary_time_s, dynamics.momentary_lufs, playing)
    return dynamics.momentary_time_s[inside], dynamics.momentary_lufs[inside]


def _turning_points(curve: FloatArray, least_change: float) -> list[int]:
    """List the ends and the extremes after which the curve really turned."""
    turns = [0]
    highest = lowest = 0
    rising = 0  # -1, 0 (not known yet), 1
    for index in range(1, curve.size):
        if curve[index] > curve[highest]:
            highest = index
        if curve[index] < curve[lowest]:
            lowest = index
        if rising >= 0 and curve[highest] - curve[index] >= least_change:
            if rising > 0 or highest > 0:
                turns.append(highest)
            rising, lowest = -1, index
            highest = index
        elif rising <= 0 and curve[index] - curve[lowest] >= least_change:
            if rising < 0 or lowest > 0:
                turns.append(lowest)
            rising, highest = 1, index
            lowest = index
    last = highest if rising > 0 else lowest if rising < 0 else curve.size - 1
    if last > turns[-1]:
        turns.append(last)
    return turns
