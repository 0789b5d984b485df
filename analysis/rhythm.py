"""Where a take rushes or drags, and how even its running notes are."""

from typing import Literal

import numpy as np
from numpy.typing import NDArray

from analysis.results import (
    Evenness,
    FloatArray,
    Measured,
    NotMeasurable,
    Provenance,
    Reason,
    Tempo,
    TempoPlace,
)
from analysis.tempo import ONSET_SD_S

__all__ = ["ALGORITHM", "Evenness", "TempoPlace", "find_tempo_places", "measure_evenness"]

ALGORITHM = "rhythm-2"
# Over four intervals a change of 3.2 % of tempo is just noticed (C. Drake and M.-C. Botte,
# Percept. Psychophys. 54 (1993) 277; abstract only), so that less is not worth naming.
LEAST_CHANGE_PERCENT = 4.0
SHORTEST_PLACE_BEATS = 2.0
FEWEST_IN_A_RUN = 6
LONGEST_RUNNING_S = 0.45

_SAME_LENGTH = 0.25

Kind = Literal["rushes", "drags"]
_KINDS: tuple[tuple[float, Kind], ...] = ((1.0, "rushes"), (-1.0, "drags"))


def find_tempo_places(
    tempo: Tempo, *, least_change_percent: float = LEAST_CHANGE_PERCENT
) -> tuple[TempoPlace, ...]:
    """Name the stretches where a take rushes or drags against its mean tempo.

    Parameters
    ----------
    tempo : Tempo
    least_change_percent : float
        Smaller changes are not named.

    Returns
    -------
    tuple of TempoPlace
        In order of time.
    """
    if tempo.local_bpm.size == 0:
        return ()
    change = 100 * (tempo.local_bpm / tempo.mean_bpm - 1)
    places = []
    for sign, kind in _KINDS:
        for first, last in _runs(sign * change >= least_change_percent):
            # Half a step each side belongs to the window that was over the limit.
            period_s = 60.0 / tempo.mean_bpm
            start = float(tempo.local_time_s[first]) - period_s / 2
            end = float(tempo.local_time_s[last]) + period_s / 2
            if end - start >= SHORTEST_PLACE_BEATS * period_s:
                size = float(np.mean(change[first : last + 1]))
                places.append(TempoPlace(start, end, size, kind))
    return tuple(sorted(places, key=lambda place: place.start_s))


def measure_evenness(
    onset_s: FloatArray, *, onset_sd_s: float = ONSET_SD_S
) -> Measured[Evenness] | NotMeasurable:
    """Measure the evenness of running notes.

    A run is at least seven notes that follow each other at nearly equal, short
    intervals, whatever their written value.

    Parameters
    ----------
    onset_s : (n,) array
        Note onsets, seconds, ascending.
    onset_sd_s : float
        What they scatter by, seconds.

    Returns
    -------
    Measured[Evenness] or NotMeasurable
        ``TOO_FEW_ONSETS`` where the take has no such run.

    References
    ----------
    F. T. van Vugt, H.-C. Jabusch and E. Altenmüller, Front. Psychol. 3 (2012) 495:
    unevenness of scales as the spread of their intervals (abstract only).
    """
    provenance = Provenance(ALGORITHM, {"fewest_in_a_run": FEWEST_IN_A_RUN})
    interval = np.diff(np.asarray(onset_s, dtype=np.float64))
    runs = _running_stretches(interval)
    if not runs:
        sentence = "There is no run of equally long, short notes."
        return NotMeasurable(Reason.TOO_FEW_ONSETS, sentence, provenance)
    squares, relative, freedom = 0.0, 0.0, 0
    for first, last in runs:
        run = interval[first : last + 1]
        index = np.arange(run.size)
        residual = run - np.polyval(np.polyfit(index, run, 1), index)
        squares += float(residual @ residual)
        relative += float(residual @ residual) / float(run.mean()) ** 2
        freedom += run.size - 2
    result = Evenness(
        spread_ms=1e3 * (squares / freedom) ** 0.5,
        spread_percent=100 * (relative / freedom) ** 0.5,
        floor_ms=1e3 * 2**0.5 * onset_sd_s,
        run_count=len(runs),
        interval_count=sum(last - first + 1 for first, last in runs),
    )
    return Measured(result, provenance)


def _running_stretches(interval: FloatArray) -> list[tuple[int, int]]:
    """First and last index of the stretches of nearly equal, short intervals."""
    runs: list[tuple[int, int]] = []
    first = 0
    for index in range(1, interval.size + 1):
        if index < interval.size:
            typical = float(np.median(interval[first:index]))
            if abs(interval[index] / typical - 1) <= _SAME_LENGTH:
                continue
        typical = float(np.median(interval[first:index]))
        if index - first >= FEWEST_IN_A_RUN and typical <= LONGEST_RUNNING_S:
            runs.append((first, index - 1))
        first = index
    return runs


def _runs(flag: NDArray[np.bool_]) -> list[tuple[int, int]]:
    """First and last index of each run of true."""
    edges = np.flatnonzero(np.diff(np.concatenate(([False], flag, [False])).astype(np.int8)))
    return [(int(start), int(end) - 1) for start, end in zip(edges[::2], edges[1::2], strict=True)]
