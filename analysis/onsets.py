"""Where notes begin: attacks and changes of pitch, placed to a few milliseconds.

An attack's time is where the rising level passes half of the amplitude that it
reaches; a slurred change of pitch is placed where the pitch passes the middle between
the two notes.
"""

from itertools import pairwise
from typing import Final

import numpy as np
from numpy.typing import NDArray

from analysis.attacks import LEAST_ATTACK_STRENGTH, attacks
from analysis.bands import band_mean_level
from analysis.blocks import MonoSamples, SampleArray
from analysis.envelope import level_envelope
from analysis.reattacks import without_swells
from analysis.results import PitchTrack
from analysis.steps import NO_STEP, pitch_steps
from analysis.stopping import Progress, StopQuestion, part_of, stop_if_asked, tell, telling
from analysis.units import hz_to_midi

FloatArray = NDArray[np.float64]
IntArray = NDArray[np.int64]

ALGORITHM: Final = "onsets-2"

__all__ = ["ALGORITHM", "LEAST_ATTACK_STRENGTH", "SLUR_STRENGTH", "detect_onsets"]

_BAND_HOP_S: Final = 0.002
_NEIGHBOUR_S: Final = 0.045
_SHORTEST_STEP_S: Final = 0.04
SLUR_STRENGTH: Final = 0.25
_UNPITCHED_PERIOD_S: Final = 0.01
_AFTER_ENVELOPE: Final = 0.25
_AFTER_BANDS: Final = 0.8
_AFTER_ATTACKS: Final = 0.9
_AFTER_SWELLS: Final = 0.98


def detect_onsets(
    samples: SampleArray | MonoSamples,
    sample_rate_hz: int,
    *,
    track: PitchTrack | None = None,
    progress: Progress | None = None,
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
    progress, should_stop : callable, optional
        Told the share done, 0 to 1; asked now and then whether to stop.

    Returns
    -------
    onset_s : (n,) array
        Times in seconds, rising.
    strength : (n,) array
        0.25 for a slurred change of pitch; attacks from 0.3 up to 1, which is a rise by
        30 dB and more.

    Raises
    ------
    Stopped
        If ``should_stop`` said so.
    """
    source = samples if isinstance(samples, MonoSamples) else MonoSamples(samples, sample_rate_hz)
    minutes = int(source.duration_s / 60.0) + 1
    to_envelope = telling(should_stop, part_of(progress, 0.0, _AFTER_ENVELOPE), 4 * minutes)
    envelope = level_envelope(source, track, should_stop=to_envelope)
    tell(progress, _AFTER_ENVELOPE)
    band_level = band_mean_level(
        source,
        _periods(source, track),
        _BAND_HOP_S,
        progress=part_of(progress, _AFTER_ENVELOPE, _AFTER_BANDS),
        should_stop=should_stop,
    )
    stop_if_asked(should_stop)
    to_attacks = telling(should_stop, part_of(progress, _AFTER_BANDS, _AFTER_ATTACKS), 2)
    attack_s, attack_strength = attacks(envelope, band_level, _BAND_HOP_S, track, to_attacks)
    tell(progress, _AFTER_ATTACKS)
    if track is None:
        return attack_s, attack_strength
    to_end = telling(should_stop, part_of(progress, _AFTER_ATTACKS, _AFTER_SWELLS), 2 * minutes)
    change_s = pitch_changes(track, to_end)
    levels = (envelope, band_level, _BAND_HOP_S)
    attack_s, attack_strength = without_swells(attack_s, attack_strength, change_s, levels, track)
    tell(progress, _AFTER_SWELLS)
    lonely = np.array(
        [not attack_s.size or np.min(np.abs(attack_s - t)) > _NEIGHBOUR_S for t in change_s],
        dtype=bool,
    )
    slurred = change_s[lonely] if change_s.size else change_s
    onset_s = np.concatenate((attack_s, slurred))
    strength = np.concatenate((attack_strength, np.full(len(slurred), SLUR_STRENGTH)))
    order = np.argsort(onset_s)
    tell(progress, 1.0)
    return onset_s[order], strength[order]


def _periods(source: MonoSamples, track: PitchTrack | None) -> FloatArray:
    """Return the period at every band level; between pitches it runs straight across."""
    time_s = np.arange(int(source.duration_s / _BAND_HOP_S) + 1) * _BAND_HOP_S
    if track is None or not np.isfinite(track.f0_hz).any():
        return np.full(len(time_s), _UNPITCHED_PERIOD_S)
    voiced = np.isfinite(track.f0_hz)
    return np.asarray(np.interp(time_s, track.time_s[voiced], 1.0 / track.f0_hz[voiced]))


def pitch_changes(track: PitchTrack, should_stop: StopQuestion | None = None) -> FloatArray:
    """Return the times where the pitch steps from one note to the next, (n,) seconds."""
    steps = pitch_steps(track, should_stop)
    midi = hz_to_midi(track.f0_hz)
    edges = np.flatnonzero(np.diff(steps)) + 1
    bounds = np.concatenate(([0], edges, [len(steps)]))
    fewest = max(round(_SHORTEST_STEP_S / track.hop_s), 2)
    runs = [(a, b) for a, b in pairwise(bounds) if steps[a] != NO_STEP and b - a >= fewest]
    times = []
    for (a, b), (c, d) in pairwise(runs):
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
