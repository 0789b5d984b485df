"""Attacks: where the bow changes or a note begins after a rest, and struck notes."""

from typing import Final

import numpy as np
from numpy.typing import NDArray
from scipy.ndimage import maximum_filter1d

from analysis.envelope import Envelope
from analysis.peaks import find_peaks
from analysis.results import PitchTrack
from analysis.stopping import StopQuestion, stop_if_asked

FloatArray = NDArray[np.float64]
IntArray = NDArray[np.int64]

LEAST_ATTACK_STRENGTH: Final = 0.3
_LEAST_RISE_FROM_REST_DB: Final = 10.0
_LEAST_BOW_CHANGE_DB: Final = 4.5
_LEAST_LEVEL_DIP_DB: Final = 2.5
_BOW_CHANGE_REACH_S: Final = 0.04
_PERIODIC: Final = 0.22
_FADING_S: Final = 0.03
_MASKED_DB: Final = 3.0
_ONE_ATTACK_S: Final = 0.05
_PLATEAU_S: Final = 0.09
_STEEP_OVER_S: Final = 0.015
_HALF_DB: Final = 20.0 * np.log10(2.0)
_FULL_STRENGTH_DB: Final = 30.0
_QUIETEST_BELOW_LOUD_DB: Final = 45.0
_LOWEST_ATTACK_DBFS: Final = -80.0
_STRUCK_OVER_S: Final = 0.01
_LEAST_STRUCK_DB: Final = 3.0
_CLEARLY_STRUCK_DB: Final = 7.0


def bow_changes(
    envelope: Envelope, band_level: FloatArray, band_hop_s: float
) -> list[tuple[int, float]]:
    """Find short, sharp dips of the level that all bands share.

    Parameters
    ----------
    envelope : Envelope
        Level of the take: it has to dip as well, for the bands' mean also dips where a
        slide carries the harmonics from band to band.
    band_level : (n,) array
        Mean level of the bands in dB, ``band_hop_s`` apart.
    band_hop_s : float
        Distance of two values.

    Returns
    -------
    list of (index, depth_db)
        Where the envelope is lowest, and how far the bands' level comes from, and goes
        back to, within 40 ms; the lesser of the two.
    """
    depth = _dip_depth(band_level, band_hop_s)
    level_depth = _dip_depth(envelope.level_dbfs, envelope.hop_s)
    places = find_peaks(
        depth, height=_LEAST_BOW_CHANGE_DB, distance=max(round(_ONE_ATTACK_S / band_hop_s), 1)
    )
    changes = []
    for place, depth_db in zip(places, depth[places], strict=True):
        dip = _lowest_near(envelope, round(place * band_hop_s / envelope.hop_s))
        if level_depth[dip] >= _LEAST_LEVEL_DIP_DB:
            changes.append((dip, float(depth_db)))
    return changes


def pitched_frames(track: PitchTrack) -> NDArray[np.bool_]:
    """Whether each frame has a pitch, or is at least as periodic as two strings are."""
    return np.isfinite(track.f0_hz) | (track.confidence > _PERIODIC)


def _dip_depth(level: FloatArray, hop_s: float) -> FloatArray:
    reach = round(_BOW_CHANGE_REACH_S / hop_s)
    before = maximum_filter1d(level, reach + 1, origin=reach // 2)
    after = maximum_filter1d(level, reach + 1, origin=-(reach // 2))
    return np.asarray(np.minimum(before, after) - level)


def rises_from_rest(envelope: Envelope, track: PitchTrack | None) -> list[tuple[int, int, float]]:
    """Find where the level rises out of a rest: (lowest index, peak index, rise in dB).

    Where a track is given, what has no pitch counts as silence: the noise a take begins
    with is not an attack.
    """
    loud = float(np.percentile(envelope.level_dbfs, 95.0))
    quietest = max(loud - _QUIETEST_BELOW_LOUD_DB, _LOWEST_ATTACK_DBFS)
    heard = np.concatenate(([quietest], np.maximum(envelope.level_dbfs, quietest), [quietest]))
    if track is not None:
        frame = np.rint(envelope.time_s / track.hop_s).astype(np.int64)
        pitched = pitched_frames(track)[np.clip(frame, 0, len(track.f0_hz) - 1)]
        heard[1:-1][~pitched] = quietest
    fading = round(_FADING_S / envelope.hop_s)
    peaks = find_peaks(heard, prominence=_LEAST_RISE_FROM_REST_DB)
    rises = []
    for before, peak in zip(np.concatenate(([0], peaks[:-1])), peaks, strict=True):
        dip = int(peak - np.argmin(heard[before : peak + 1][::-1]))
        rise_db = float(heard[peak] - heard[dip])
        # A dying note whose pitch comes and goes falls all the while.
        true_rise_db = float(
            np.max(envelope.level_dbfs[max(dip - 1, 0) : peak])
            - np.min(envelope.level_dbfs[max(dip - 1 - fading, 0) : peak])
        )
        if dip == 0:
            # It sounds when the take begins: nothing was heard of the attack itself.
            true_rise_db = rise_db
        if min(rise_db, true_rise_db + _MASKED_DB) >= _LEAST_RISE_FROM_REST_DB:
            rises.append((max(dip - 1, 0), int(peak) - 1, rise_db))
    return rises


def struck(
    band_level: FloatArray, hop_s: float, least_db: float = _LEAST_STRUCK_DB
) -> tuple[IntArray, FloatArray]:
    """Find sudden rises of the bands' mean level: struck and plucked notes."""
    reach = max(round(_STRUCK_OVER_S / hop_s), 1)
    rise = np.zeros_like(band_level)
    rise[reach:-reach] = band_level[2 * reach :] - band_level[: -2 * reach]
    places = find_peaks(rise, height=least_db, distance=max(round(_ONE_ATTACK_S / hop_s), 1))
    return places, rise[places]


def attack_time(envelope: Envelope, dip: int, last: int) -> float:
    """Return when the amplitude passes half of what the attack reaches soon after.

    Parameters
    ----------
    envelope : Envelope
        Level of the take.
    dip, last : int
        The rise lies between these indices of the envelope.
    """
    level, hop_s = envelope.level_dbfs, envelope.hop_s
    stride = max(round(_STEEP_OVER_S / hop_s), 1)
    last = min(max(last, dip + stride), len(level) - 1)
    rise = level[dip + stride : last + 1]
    rise = rise - level[dip : dip + len(rise)]
    steepest = dip + int(np.argmax(rise)) if len(rise) else dip
    reach = min(len(level), steepest + 1 + round(_PLATEAU_S / hop_s), last + stride)
    top = steepest + int(np.argmax(level[steepest:reach]))
    # Where reflected sound fills the dip, half of the amplitude may lie under its bottom.
    bottom = float(np.min(level[dip : top + 1]))
    goal = max(float(level[top]) - _HALF_DB, 0.5 * (float(level[top]) + bottom))
    below = np.flatnonzero(level[dip : top + 1] < goal)
    if not below.size:
        return float(envelope.time_s[dip])
    index = dip + int(below[-1])
    share = (goal - level[index]) / (level[index + 1] - level[index])
    return float((index + share) * hop_s)


def attacks(
    envelope: Envelope,
    band_level: FloatArray,
    band_hop_s: float,
    track: PitchTrack | None,
    should_stop: StopQuestion | None = None,
) -> tuple[FloatArray, FloatArray]:
    """Find all attacks of a take.

    Parameters
    ----------
    envelope : Envelope
        Its level.
    band_level : (n,) array
        Mean level of its bands, ``band_hop_s`` apart.
    band_hop_s : float
        Distance of two of them.
    track : PitchTrack or None
        With a pitch, bow changes and rises from rests are attacks; without, struck notes.
    should_stop : callable, optional
        Asked between the three.

    Returns
    -------
    time_s, strength : (n,) arrays
        In order; strength runs from 0.3 to 1, which is a rise by 30 dB and more.
    """
    found: list[tuple[float, float]] = []
    if track is None:
        places, rises = struck(band_level, band_hop_s)
        found += [(float(p) * band_hop_s, float(r)) for p, r in zip(places, rises, strict=True)]
    else:
        reach = round(_PLATEAU_S / envelope.hop_s)
        for dip, last, rise_db in rises_from_rest(envelope, track):
            found.append((attack_time(envelope, dip, last), rise_db))
        stop_if_asked(should_stop)
        for dip, depth_db in bow_changes(envelope, band_level, band_hop_s):
            found.append((attack_time(envelope, dip, dip + reach), depth_db))
        stop_if_asked(should_stop)
        found += _struck_elsewhere(envelope, band_level, band_hop_s, [t for t, _ in found])
    return _one_each(found)


def _struck_elsewhere(
    envelope: Envelope, band_level: FloatArray, band_hop_s: float, known_s: list[float]
) -> list[tuple[float, float]]:
    """Find clearly struck notes over what still rings, away from the attacks known so far."""
    others = np.array(known_s)
    found = []
    for place, rise_db in zip(*struck(band_level, band_hop_s, _CLEARLY_STRUCK_DB), strict=True):
        time_s = float(place) * band_hop_s
        before, after = _index(envelope, time_s - 0.01), _index(envelope, time_s + 0.01)
        rise = envelope.level_dbfs[after] - envelope.level_dbfs[before]
        alone = not others.size or np.min(np.abs(others - time_s)) > _ONE_ATTACK_S
        if alone and rise >= _CLEARLY_STRUCK_DB:
            found.append((time_s, float(rise_db)))
    return found


def _index(envelope: Envelope, time_s: float) -> int:
    return int(np.clip(round(time_s / envelope.hop_s), 0, len(envelope.time_s) - 1))


def _lowest_near(envelope: Envelope, index: int) -> int:
    near = round(0.015 / envelope.hop_s)
    first = max(index - near, 0)
    piece = envelope.level_dbfs[first : index + near + 1]
    return first + int(np.argmin(piece)) if len(piece) else min(index, len(envelope.time_s) - 1)


def _one_each(found: list[tuple[float, float]]) -> tuple[FloatArray, FloatArray]:
    """Keep the strongest of attacks that are too close to be two."""
    kept: list[tuple[float, float]] = []
    for time_s, rise_db in sorted(found):
        if kept and time_s - kept[-1][0] < _ONE_ATTACK_S:
            if rise_db > kept[-1][1]:
                kept[-1] = (time_s, rise_db)
            continue
        kept.append((time_s, rise_db))
    times = np.array([t for t, _ in kept])
    share = np.array([min(r / _FULL_STRENGTH_DB, 1.0) for _, r in kept])
    strengths = LEAST_ATTACK_STRENGTH + (1.0 - LEAST_ATTACK_STRENGTH) * share
    return times, strengths
