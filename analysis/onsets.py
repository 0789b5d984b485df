"""Where notes begin: attacks and changes of pitch, placed to a few milliseconds.

An attack's time is where the rising level passes half of the amplitude that it
reaches; a slurred change of pitch is placed where the pitch passes the middle between
the two notes.
"""

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray
from scipy.signal import find_peaks

from analysis.blocks import MonoSamples, SampleArray
from analysis.envelope import Envelope, level_envelope
from analysis.results import PitchTrack
from analysis.steps import NO_STEP, pitch_steps
from analysis.stopping import StopQuestion
from analysis.units import hz_to_midi

FloatArray = NDArray[np.float64]
IntArray = NDArray[np.int64]

ALGORITHM: Final = "onsets-1"

_SHALLOWEST_DIP_DB: Final = 5.0
_NEIGHBOUR_S: Final = 0.045
_PLATEAU_S: Final = 0.09
_STEEP_OVER_S: Final = 0.015
_HALF_DB: Final = 20.0 * np.log10(2.0)
_FULL_STRENGTH_DB: Final = 30.0
_SHORTEST_STEP_S: Final = 0.04
_QUIETEST_BELOW_LOUD_DB: Final = 45.0
_LOWEST_ATTACK_DBFS: Final = -80.0
_SLUR_STRENGTH: Final = 0.3


@dataclass(frozen=True, slots=True)
class Onsets:
    """Beginnings of notes: times in seconds and strengths 0 to 1, both (n,), in order."""

    time_s: FloatArray
    strength: FloatArray


def detect_onsets(
    samples: SampleArray | MonoSamples,
    sample_rate_hz: int,
    *,
    track: PitchTrack | None = None,
    should_stop: StopQuestion | None = None,
) -> tuple[FloatArray, FloatArray]:
    """Find where notes begin.

    Parameters
    ----------
    samples : (n,) float array or MonoSamples
        The take, full scale 1.
    sample_rate_hz : int
        Its sample rate.
    track : PitchTrack, optional
        The pitch of the take. Without it only attacks are found, no slurred changes.
    should_stop : callable, optional
        Asked now and then.

    Returns
    -------
    onset_s : (n,) array
        Times in seconds, rising.
    strength : (n,) array
        0 to 1: how far the level rises (1 at 30 dB), 0.3 for a slurred change.

    Raises
    ------
    Stopped
        If ``should_stop`` said so.
    """
    source = samples if isinstance(samples, MonoSamples) else MonoSamples(samples, sample_rate_hz)
    envelope = level_envelope(source, track, should_stop=should_stop)
    attack_s, attack_strength = attacks(envelope, track)
    if track is None:
        return attack_s, attack_strength
    change_s = pitch_changes(track)
    lonely = np.array(
        [not attack_s.size or np.min(np.abs(attack_s - t)) > _NEIGHBOUR_S for t in change_s],
        dtype=bool,
    )
    slurred = change_s[lonely] if change_s.size else change_s
    onset_s = np.concatenate((attack_s, slurred))
    strength = np.concatenate((attack_strength, np.full(len(slurred), _SLUR_STRENGTH)))
    order = np.argsort(onset_s)
    return onset_s[order], strength[order]


def attacks(envelope: Envelope, track: PitchTrack | None = None) -> tuple[FloatArray, FloatArray]:
    """Find the rises of level after a dip or a rest; times (n,) and strengths (n,).

    Where a track is given, what has no pitch counts as silence: the noise a take begins
    with is not an attack.
    """
    level = np.concatenate((envelope.level_dbfs[:1], envelope.level_dbfs, [_LOWEST_ATTACK_DBFS]))
    loud = float(np.percentile(envelope.level_dbfs, 95.0))
    quietest = max(loud - _QUIETEST_BELOW_LOUD_DB, _LOWEST_ATTACK_DBFS)
    heard = np.maximum(level, quietest)
    if track is not None:
        heard[:-1][~_pitched(level.size - 1, envelope.hop_s, track)] = quietest
    heard[0] = quietest
    peaks, _ = find_peaks(heard, prominence=_SHALLOWEST_DIP_DB)
    times, strengths = [], []
    for before, peak in zip(np.concatenate(([0], peaks[:-1])), peaks, strict=True):
        dip = int(peak - np.argmin(heard[before : peak + 1][::-1]))
        rise_db = float(heard[peak] - heard[dip])
        if rise_db < _SHALLOWEST_DIP_DB:
            continue
        times.append(_half_amplitude_time(envelope, level, dip, int(peak)))
        strengths.append(min(rise_db / _FULL_STRENGTH_DB, 1.0))
    return np.array(times), np.array(strengths)


def _pitched(count: int, hop_s: float, track: PitchTrack) -> NDArray[np.bool_]:
    """Whether a pitch sounds, for ``count`` values ``hop_s`` apart, one before time 0."""
    frame = np.rint((np.arange(count) - 1) * hop_s / track.hop_s).astype(np.int64)
    return np.isfinite(track.f0_hz)[np.clip(frame, 0, len(track.f0_hz) - 1)]


def _half_amplitude_time(envelope: Envelope, level: FloatArray, dip: int, peak: int) -> float:
    """Where the amplitude passes half of what the attack reaches soon after.

    ``level`` holds one value more at its start than the envelope.
    """
    stride = max(round(_STEEP_OVER_S / envelope.hop_s), 1)
    rise = level[dip + stride : peak + stride + 1]
    rise = rise - level[dip : dip + len(rise)]
    steepest = dip + int(np.argmax(rise)) if len(rise) else dip
    reach = min(len(level), steepest + 1 + round(_PLATEAU_S / envelope.hop_s), peak + stride)
    top = steepest + int(np.argmax(level[steepest:reach]))
    goal = float(level[top]) - _HALF_DB
    below = np.flatnonzero(level[dip : top + 1] < goal)
    if not below.size:
        return float(max(dip - 1, 0) * envelope.hop_s)
    index = dip + int(below[-1])
    share = (goal - level[index]) / (level[index + 1] - level[index])
    return float(max(index - 1 + share, 0.0) * envelope.hop_s)


def pitch_changes(track: PitchTrack) -> FloatArray:
    """Return the times where the pitch steps from one note to the next, (n,) seconds."""
    steps = pitch_steps(track)
    midi = hz_to_midi(track.f0_hz)
    edges = np.flatnonzero(np.diff(steps)) + 1
    bounds = np.concatenate(([0], edges, [len(steps)]))
    fewest = max(round(_SHORTEST_STEP_S / track.hop_s), 2)
    runs = [
        (a, b)
        for a, b in zip(bounds[:-1], bounds[1:], strict=True)
        if steps[a] != NO_STEP and b - a >= fewest
    ]
    times = []
    for (a, b), (c, d) in zip(runs[:-1], runs[1:], strict=True):
        if steps[a] == steps[c] or (c - b) * track.hop_s > 0.1:
            continue
        old, new = float(np.median(midi[a:b])), float(np.median(midi[c:d]))
        times.append(_middle_crossing(track, midi, (a, d), c, 0.5 * (old + new)))
    return np.array(times)


def _middle_crossing(
    track: PitchTrack, midi: FloatArray, span: tuple[int, int], edge: int, middle: float
) -> float:
    """Time nearest the step where the track passes the middle between two pitches."""
    first, last = span
    above = midi[first:last] > middle
    known = np.isfinite(midi[first:last])
    crossings = np.flatnonzero((above[1:] != above[:-1]) & known[1:] & known[:-1]) + first
    if not crossings.size:
        return float(edge * track.hop_s)
    k = int(crossings[np.argmin(np.abs(crossings - edge))])
    share = (middle - midi[k]) / (midi[k + 1] - midi[k])
    return float((k + share) * track.hop_s)
