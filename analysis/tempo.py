"""Pulse of a take: mean tempo, steadiness, drift, local tempo.

A solo line rarely shows its beat by itself: general beat trackers double it,
halve it or jitter. So the pulse is anchored by a stated tempo or by known beats,
and onsets are placed on it; without an anchor only a pulse that leaves no
doubt about its level is reported.
"""

import math
from dataclasses import dataclass

import numpy as np
from scipy import stats

from analysis.pulse_tracking import PARTS, MetricPath, track_pulse
from analysis.results import (
    FloatArray,
    Measured,
    NotMeasurable,
    Provenance,
    Reason,
    Tempo,
)

ALGORITHM = "tempo-1"
FEWEST_BEATS = 4
FEWEST_ONSETS = 4
SLOWEST_BPM, FASTEST_BPM = 20.0, 400.0
ONSET_SD_S = 0.005  # what the onset detector itself scatters by
LARGEST_COST = 2.5

_UNANCHORED_BPM = np.geomspace(50, 152, 14)
_LOCAL_BEATS = 4
_DRIFT_POINTS = 400
_SAME_ONSET_S = 0.03


def measure_tempo(
    onset_s: FloatArray,
    onset_strength: FloatArray,
    duration_s: float,
    *,
    pulse_bpm: float | None = None,
    reference_beat_s: FloatArray | None = None,
) -> Measured[Tempo] | NotMeasurable:
    """Measure tempo, steadiness and drift from note onsets.

    Parameters
    ----------
    onset_s : (n,) array
        Note onsets, seconds, ascending.
    onset_strength : (n,) array
        At least 0, any scale; weak onsets may be passed over.
    duration_s : float
        Length of the take.
    pulse_bpm : float, optional
        The beat the player stated, 20 to 400 BPM; the take may be a third away from it.
    reference_beat_s : (m,) array, optional
        Beats known from a score, click or aligned reference take, on the
        time axis of this take; accurate to a fraction of a beat.

    Returns
    -------
    Measured[Tempo] or NotMeasurable
        ``TOO_FEW_ONSETS``, or ``NO_CLEAR_PULSE`` where the onsets do not
        fit the anchor, or fit several levels without one.

    Raises
    ------
    ValueError
        If the stated pulse is out of range or the arrays differ in length.
    """
    if onset_s.shape != onset_strength.shape:
        raise ValueError("every onset needs a strength")
    if pulse_bpm is not None and not SLOWEST_BPM <= pulse_bpm <= FASTEST_BPM:
        raise ValueError(f"pulse must be {SLOWEST_BPM:g} to {FASTEST_BPM:g} BPM, got {pulse_bpm}")
    provenance = Provenance(
        ALGORITHM, {"pulse_bpm": pulse_bpm, "reference_beats": reference_beat_s is not None}
    )
    onsets, weight = _cleaned(onset_s, onset_strength)
    if onsets.size < FEWEST_ONSETS:
        sentence = f"Fewer than {FEWEST_ONSETS} note onsets."
        return NotMeasurable(Reason.TOO_FEW_ONSETS, sentence, provenance)
    pulse: Pulse | None
    if reference_beat_s is not None:
        pulse = _pulse_from_reference(onsets, reference_beat_s)
    elif pulse_bpm is not None:
        pulse = _pulse_near(onsets, weight, pulse_bpm)
    else:
        pulse = _pulse_from_evidence(onsets, weight)
    if pulse is None or pulse.beat_s.size < FEWEST_BEATS:
        return NotMeasurable(
            Reason.NO_CLEAR_PULSE, _no_pulse_sentence(pulse_bpm, reference_beat_s), provenance
        )
    return Measured(_described(pulse), provenance)


@dataclass(frozen=True, slots=True)
class Pulse:
    """Beats of a take, and the onsets they were placed by.

    ``beat_s`` (b,) are consecutive beats, ``is_played`` (b,) says which carry an
    onset; ``position_beats`` and ``onset_s`` (m,) are all onsets on the pulse,
    in beats from the first beat and in seconds.
    """

    anchor: str
    beat_s: FloatArray
    is_played: np.ndarray[tuple[int], np.dtype[np.bool_]]
    position_beats: FloatArray
    onset_s: FloatArray


def _no_pulse_sentence(pulse_bpm: float | None, reference_beat_s: FloatArray | None) -> str:
    if reference_beat_s is not None:
        return "The notes do not follow the reference beats."
    if pulse_bpm is not None:
        return f"The notes do not follow a beat near {pulse_bpm:g} BPM."
    return "No single beat stands out; state the beat to measure the tempo."


def _cleaned(onset_s: FloatArray, strength: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Onsets in order, near-coincident ones merged, with weights 0.3 to 1."""
    if not onset_s.size:
        return np.empty(0), np.empty(0)
    order = np.argsort(onset_s, kind="stable")
    onsets = np.asarray(onset_s, dtype=np.float64)[order]
    weight = np.asarray(strength, dtype=np.float64)[order]
    keep = np.concatenate(([True], np.diff(onsets) > _SAME_ONSET_S))
    typical = float(np.median(weight)) or 1.0
    return onsets[keep], np.clip(weight[keep] / typical, 0.3, 1.0)


def _pulse_near(onsets: FloatArray, weight: FloatArray, pulse_bpm: float) -> Pulse | None:
    """Track the pulse near a stated tempo."""
    path = track_pulse(onsets, weight, 60.0 / pulse_bpm)
    if path.cost > LARGEST_COST:
        return None
    return _pulse_of_path("given", onsets, path)


def _pulse_of_path(anchor: str, onsets: FloatArray, path: MetricPath) -> Pulse | None:
    """Beats from onsets with metric positions."""
    time = onsets[path.onset_index]
    first = math.ceil(path.position[0] / PARTS)
    last = math.floor(path.position[-1] / PARTS)
    if last - first + 1 < FEWEST_BEATS:
        return None
    beat = np.arange(first, last + 1) * PARTS
    return Pulse(
        anchor=anchor,
        beat_s=np.interp(beat, path.position, time),
        is_played=np.isin(beat, path.position),
        position_beats=path.position / PARTS - first,
        onset_s=time,
    )


def _pulse_from_reference(onsets: FloatArray, reference_s: FloatArray) -> Pulse | None:
    """Known beats, moved onto the onsets that play them."""
    reference = np.unique(np.asarray(reference_s, dtype=np.float64))
    if reference.size < FEWEST_BEATS:
        return None
    reach = 0.2 * np.gradient(reference)
    nearest = np.array([np.argmin(np.abs(onsets - each)) for each in reference])
    offset = onsets[nearest] - reference
    played = np.abs(offset) <= reach
    played[1:] &= np.diff(nearest) > 0
    if np.count_nonzero(played) < FEWEST_BEATS:
        return None
    index = np.arange(reference.size)
    beat_s = reference + np.interp(index, index[played], offset[played])
    return Pulse("reference", beat_s, played, index[played].astype(np.float64), beat_s[played])


def _pulse_from_evidence(onsets: FloatArray, weight: FloatArray) -> Pulse | None:
    """Find the one pulse that the onsets leave no doubt about, if there is one."""
    return None


def _described(pulse: Pulse) -> Tempo:
    """Tempo, steadiness, drift and curve of a pulse."""
    beats = pulse.beat_s
    interval = np.diff(beats)
    mean_bpm = 60.0 * (beats.size - 1) / float(beats[-1] - beats[0])
    local_time, local_bpm = _local_curve(beats)
    mean_interval = float(interval.mean())
    return Tempo(
        anchor=pulse.anchor,
        mean_bpm=mean_bpm,
        mean_bpm_uncertainty=1.96
        * math.sqrt(2)
        * ONSET_SD_S
        / float(beats[-1] - beats[0])
        * mean_bpm,
        steadiness_cv_percent=100 * float(interval.std(ddof=1)) / mean_interval,
        steadiness_floor_percent=100 * math.sqrt(2) * ONSET_SD_S / mean_interval,
        drift_bpm_per_min=_drift(beats),
        beat_s=beats,
        local_time_s=local_time,
        local_bpm=local_bpm,
    )


def _local_curve(beats: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Tempo over a sliding window of a few beats, at the windows' middles."""
    span = min(_LOCAL_BEATS, beats.size - 1)
    start, end = beats[:-span], beats[span:]
    return (start + end) / 2, 60.0 * span / (end - start)


def _drift(beats: FloatArray) -> float:
    """Theil-Sen slope of the beat-to-beat tempo, BPM per minute."""
    middle = (beats[1:] + beats[:-1]) / 2
    bpm = 60.0 / np.diff(beats)
    step = math.ceil(bpm.size / _DRIFT_POINTS)
    slope = stats.theilslopes(bpm[::step], middle[::step])[0]
    return 60.0 * float(slope)
