"""Tempo of a take: mean, steadiness, drift, local curve.

A solo line rarely shows its beat by itself: general beat trackers double it,
halve it or jitter. So the pulse is anchored by a stated tempo or by known beats,
and onsets are placed on it; without an anchor only a pulse that leaves no
doubt about its level is reported.
"""

import math
from dataclasses import replace
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from analysis.pulse import (
    FEWEST_BEATS,
    Pulse,
    pulse_from_evidence,
    pulse_from_reference,
    pulse_near,
)
from analysis.results import (
    FloatArray,
    Measured,
    NotMeasurable,
    Provenance,
    Reason,
    Tempo,
)
from analysis.robust_line import robust_slope
from analysis.stopping import StopQuestion

ALGORITHM = "tempo-5"
FEWEST_ONSETS = 4
SLOWEST_BPM, FASTEST_BPM = 15.0, 400.0
ONSET_SD_S = 0.005  # what onsets scatter by where nothing is known of their attacks

_LOCAL_BEATS = 4
_DRIFT_POINTS = 400
_FEWEST_FOR_DRIFT_INTERVAL = 6
_WANDERING = 1.3
_SAME_ONSET_S = 0.03
_LARGEST_DEGREE = 3
_CURVE_RESIDUAL_S = 0.012
_CLOCK_SD_S = 1e-4  # no interval is narrower than a hop of the detector allows
_HALF_95 = 1.96

ReferenceKind = Literal["reference", "score", "click"]


def measure_tempo(
    onset_s: FloatArray,
    onset_strength: FloatArray,
    duration_s: float,
    *,
    pulse_bpm: float | None = None,
    reference_beat_s: FloatArray | None = None,
    reference_kind: ReferenceKind = "reference",
    onset_sd_s: float = ONSET_SD_S,
    should_stop: StopQuestion | None = None,
) -> Measured[Tempo] | NotMeasurable:
    """Measure tempo, steadiness and drift from note onsets.

    Parameters
    ----------
    onset_s : (n,) array
        Note onsets, seconds.
    onset_strength : (n,) array
        At least 0, any scale; weak onsets may be passed over.
    duration_s : float
        Length of the take; onsets and reference beats beyond it are left out.
    pulse_bpm : float, optional
        The beat the player stated, 15 to 400 BPM; the take may be a third away from it.
    reference_beat_s : (m,) array, optional
        Beats known from a score, click or aligned reference take, on the
        time axis of this take; accurate to a fraction of a beat. They go before a
        stated beat.
    reference_kind : str
        What the known beats are, for :attr:`Tempo.anchor`.
    onset_sd_s : float
        What the onsets scatter by, seconds (see :mod:`analysis.onset_sharpness`).
    should_stop : callable, optional
        Asked for every few hundred onsets and every tempo that is tried.

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
        ALGORITHM,
        {
            "pulse_bpm": pulse_bpm,
            "reference_beats": None if reference_beat_s is None else reference_kind,
            "onset_sd_ms": round(1e3 * onset_sd_s, 3),
        },
    )
    onsets, weight = _cleaned(onset_s, onset_strength, duration_s)
    if onsets.size < FEWEST_ONSETS:
        sentence = f"Fewer than {FEWEST_ONSETS} note onsets."
        return NotMeasurable(Reason.TOO_FEW_ONSETS, sentence, provenance)
    pulse = _found_pulse(onsets, weight, pulse_bpm, reference_beat_s, should_stop)
    if pulse is not None and reference_beat_s is not None:
        pulse = replace(pulse, anchor=reference_kind)
    if pulse is None or pulse.beat_s.size < FEWEST_BEATS:
        sentence = _no_pulse_sentence(pulse_bpm, reference_beat_s)
        return NotMeasurable(Reason.NO_CLEAR_PULSE, sentence, provenance)
    return Measured(describe_pulse(pulse, onset_sd_s), provenance)


def describe_pulse(pulse: Pulse, onset_sd_s: float = ONSET_SD_S) -> Tempo:
    """Describe beats by their tempo, steadiness, drift and local curve.

    Parameters
    ----------
    pulse : Pulse
        At least two beats.
    onset_sd_s : float
        What the onsets scatter by, seconds.

    Returns
    -------
    Tempo
        Steadiness is taken over neighbouring beats that were both played, where
        there are at least three such intervals.
    """
    beats = pulse.beat_s
    mean_bpm, uncertainty = _mean_tempo(pulse, onset_sd_s)
    interval = _played_intervals(pulse)
    local_time, local_bpm = _local_curve(beats, min(_LOCAL_BEATS, beats.size - 1))
    mean_interval = float(interval.mean())
    steadiness = 100 * float(interval.std(ddof=1)) / mean_interval
    floor = 100 * math.sqrt(2) * onset_sd_s / mean_interval
    drift, drift_uncertainty = _drift(beats)
    return Tempo(
        anchor=pulse.anchor,
        mean_bpm=mean_bpm,
        mean_bpm_uncertainty=uncertainty,
        steadiness_cv_percent=steadiness,
        steadiness_floor_percent=floor,
        drift_bpm_per_min=drift,
        beat_s=beats,
        local_time_s=local_time,
        local_bpm=local_bpm,
        steadiness_uncertainty_percent=_steadiness_uncertainty(steadiness, floor, interval.size),
        drift_uncertainty_bpm_per_min=drift_uncertainty,
    )


def _steadiness_uncertainty(steadiness: float, floor: float, count: int) -> float:
    """Half of the 95 % interval of the steadiness, from the scatter of the onsets alone.

    The onsets' scatter also makes the steadiness itself larger, in quadrature by the
    floor, of which a take has a little more or less by chance; that is part of the
    interval.
    """
    chance = _HALF_95 * floor / math.sqrt(max(1, count - 1))
    added = steadiness - math.sqrt(max(0.0, steadiness**2 - (floor + chance) ** 2))
    return min(added + chance, max(steadiness, chance))


def _found_pulse(
    onsets: FloatArray,
    weight: FloatArray,
    pulse_bpm: float | None,
    reference_beat_s: FloatArray | None,
    should_stop: StopQuestion | None,
) -> Pulse | None:
    """Pulse by the best anchor there is."""
    if reference_beat_s is not None:
        return pulse_from_reference(onsets, reference_beat_s)
    if pulse_bpm is not None:
        return pulse_near(onsets, weight, pulse_bpm, should_stop=should_stop)
    return pulse_from_evidence(onsets, weight, should_stop=should_stop)


def _no_pulse_sentence(pulse_bpm: float | None, reference_beat_s: FloatArray | None) -> str:
    if reference_beat_s is not None:
        return "The notes do not follow the reference beats."
    if pulse_bpm is not None:
        return f"The notes do not follow a beat near {pulse_bpm:g} BPM."
    return "No single beat stands out; state the beat to measure the tempo."


def _cleaned(
    onset_s: FloatArray, strength: FloatArray, duration_s: float
) -> tuple[FloatArray, FloatArray]:
    """Onsets in order, near-coincident ones merged, with weights 0.3 to 1."""
    inside = np.isfinite(onset_s) & (onset_s >= 0) & (onset_s <= duration_s)
    order = np.argsort(onset_s[inside], kind="stable")
    onsets = np.asarray(onset_s[inside], dtype=np.float64)[order]
    weight = np.asarray(strength[inside], dtype=np.float64)[order]
    if not onsets.size:
        return onsets, weight
    keep = np.concatenate(([True], np.diff(onsets) > _SAME_ONSET_S))
    typical = float(np.median(weight)) or 1.0
    return onsets[keep], np.clip(weight[keep] / typical, 0.3, 1.0)


def _mean_tempo(pulse: Pulse, onset_sd_s: float) -> tuple[float, float]:
    """Beats over time from the first beat to the last, BPM, and half its 95 % interval.

    Two onsets would decide it alone; where a smooth curve goes through all onsets
    to within what the detector scatters, the curve's ends are taken instead.
    """
    beats = pulse.beat_s.size - 1
    elapsed = float(pulse.beat_s[-1] - pulse.beat_s[0])
    sd = math.sqrt(2) * onset_sd_s
    smooth = _smooth_elapsed(pulse)
    if smooth is not None:
        elapsed, sd = smooth
    bpm = 60.0 * beats / elapsed
    return bpm, _HALF_95 * bpm * sd / elapsed


def _smooth_elapsed(pulse: Pulse) -> tuple[float, float] | None:
    """Time from first to last beat on a polynomial through the onsets, and its SD.

    None where no polynomial of low degree follows the onsets closely.
    """
    ends = np.array([0.0, pulse.beat_s.size - 1.0])
    scale = max(float(np.ptp(ends)) / 2, 1.0)
    position = (pulse.position_beats - ends.mean()) / scale
    time = pulse.onset_s
    best: tuple[float, float, float] | None = None
    for degree in range(1, _LARGEST_DEGREE + 1):
        if position.size < 2 * degree + 4:
            break
        span = np.diff(np.vander((ends - ends.mean()) / scale, degree + 1), axis=0)[0]
        basis = np.vander(position, degree + 1)
        kept = _without_outliers(basis, time)
        coefficient, *_ = np.linalg.lstsq(basis[kept], time[kept], rcond=None)
        residual = (time - basis @ coefficient)[kept]
        variance = float(residual @ residual) / (residual.size - degree - 1)
        spread = float(span @ np.linalg.pinv(basis[kept].T @ basis[kept]) @ span)
        # Akaike's criterion: another degree must pay for itself.
        criterion = residual.size * math.log(max(variance, 1e-12))
        criterion += 2 * degree
        if variance <= _CURVE_RESIDUAL_S**2 and (best is None or criterion < best[0]):
            best = criterion, float(span @ coefficient), math.sqrt(variance * spread)
    return None if best is None else (best[1], max(best[2], _CLOCK_SD_S))


def _without_outliers(basis: FloatArray, time: FloatArray) -> NDArray[np.bool_]:
    """Which onsets a least-squares curve can trust; at most a tenth are dropped."""
    kept = np.ones(time.size, dtype=np.bool_)
    for _ in range(2):
        coefficient, *_ = np.linalg.lstsq(basis[kept], time[kept], rcond=None)
        size = np.abs(time - basis @ coefficient)
        limit = max(4 * 1.4826 * float(np.median(size)), float(np.quantile(size, 0.9)))
        kept = size <= limit
    return kept


def _played_intervals(pulse: Pulse) -> FloatArray:
    """Inter-beat intervals between played neighbours, or all if there are too few."""
    interval = np.diff(pulse.beat_s)
    both = pulse.is_played[1:] & pulse.is_played[:-1]
    return interval[both] if np.count_nonzero(both) >= 3 else interval


def _local_curve(beats: FloatArray, span: int) -> tuple[FloatArray, FloatArray]:
    """Tempo over a sliding window of ``span`` beats, at the windows' middles."""
    start, end = beats[:-span], beats[span:]
    return (start + end) / 2, 60.0 * span / (end - start)


def _drift(beats: FloatArray) -> tuple[float, float | None]:
    """Theil-Sen slope of the tempo over a quarter of the take, and half its 95 % interval.

    BPM per minute. Beat-to-beat tempo carries each onset's error twice, with opposite
    sign; over more beats the error shrinks while the slope stays. The windows overlap,
    and the beats of a player wander: the interval is widened so that it holds the trend
    behind intervals that scatter independently (found by simulation).
    """
    span = max(1, (beats.size - 1) // 4)
    time, bpm = _local_curve(beats, span)
    if time.size < 2:
        return 0.0, None
    step = math.ceil(time.size / _DRIFT_POINTS)
    line = robust_slope(time[::step], bpm[::step])
    if time.size < _FEWEST_FOR_DRIFT_INTERVAL:
        return 60.0 * line.slope, None
    widening = _WANDERING * math.sqrt(max(1.0, span / step))
    return 60.0 * line.slope, 60.0 * widening * (line.high - line.low) / 2
