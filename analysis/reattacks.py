"""Whether a note of one pitch is begun again, or only swells.

Bowing a note again takes the level down and up within some hundredths of a second, and
takes every harmonic with it. A tremulant wind instrument, a string sample with a wide
vibrato, or a note that grows out of the end of the one before swells as far, but more
slowly, and harmonic by harmonic.

The weights were set by a logistic regression on generated phrases with repeated notes
(dry, in rooms, at 20 dB) and on lines of sampled instruments with and without repeats.
"""

import math
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from analysis.envelope import Envelope
from analysis.results import PitchTrack
from analysis.units import hz_to_midi

FloatArray = NDArray[np.float64]

_ONE_PITCH_CENTS: Final = 60.0
_PITCH_FROM_S: Final = 0.01
_PITCH_UNTIL_S: Final = 0.08
_FEWEST_VOICED: Final = 3
_DIP_BEFORE_S: Final = 0.06
_DIP_AFTER_S: Final = 0.03
_REACH_S: Final = 0.12
_BAND_REACH_S: Final = 0.08
_STEEP_OVER_S: Final = 0.02
_BAND_STEEP_OVER_S: Final = 0.01
_SHALLOWEST_DB: Final = 0.5
_NARROWEST_S: Final = 0.004
_LEAST_SCORE: Final = 13.5
_DEEP_DB: Final = 15.0
_OUT_OF_REST_DB: Final = 18.0
_NEAR_CHANGE_S: Final = 0.06


@dataclass(frozen=True, slots=True)
class Dip:
    """The dip of the level before an attack.

    Attributes
    ----------
    depth_db : float
        How far the level falls, or rises again, whichever is less.
    fall_db, rise_db : float
        Steepest fall and rise within 20 ms.
    width_s : float
        How long it stays in the deeper half.
    climb_db : float
        How far the level rises altogether within 120 ms.
    bands_depth_db, bands_rise_db : float
        Depth, and steepest rise within 10 ms, of the mean level of the bands in decibels.
    """

    depth_db: float
    fall_db: float
    rise_db: float
    width_s: float
    climb_db: float
    bands_depth_db: float
    bands_rise_db: float

    @property
    def is_of_new_note(self) -> bool:
        """Whether the dip is so deep, or so sharp in all bands, that a note began anew."""
        if self.depth_db >= _DEEP_DB or self.climb_db >= _OUT_OF_REST_DB:
            return True
        decibels = (
            self.bands_depth_db,
            self.bands_rise_db,
            self.fall_db,
            self.rise_db,
            self.depth_db,
        )
        weighed = zip((4.5, 0.7, 2.35, 2.35, -2.75), decibels, strict=True)
        score = sum(weight * math.log(max(db, _SHALLOWEST_DB)) for weight, db in weighed)
        return score - 0.55 * math.log(max(self.width_s, _NARROWEST_S)) > _LEAST_SCORE


def without_swells(
    attack_s: FloatArray,
    strength: FloatArray,
    change_s: FloatArray,
    levels: tuple[Envelope, FloatArray, float],
    track: PitchTrack,
) -> tuple[FloatArray, FloatArray]:
    """Leave out the attacks inside one pitch that are swells of a note that goes on.

    Parameters
    ----------
    attack_s, strength : (n,) arrays
        From :func:`analysis.attacks.attacks`.
    change_s : (m,) array
        Where the pitch steps; an attack near one begins another note.
    levels : tuple
        The envelope, the mean level of the bands, and the hop of the latter.
    track : PitchTrack
        The pitch of the take.
    """
    kept = [
        bool(change_s.size and np.min(np.abs(change_s - time_s)) <= _NEAR_CHANGE_S)
        or not keeps_pitch(track, time_s)
        or dip_before(*levels, time_s).is_of_new_note
        for time_s in attack_s.tolist()
    ]
    chosen = np.array(kept, dtype=bool)
    return attack_s[chosen], strength[chosen]


def dip_before(
    envelope: Envelope, band_level: FloatArray, band_hop_s: float, attack_s: float
) -> Dip:
    """Measure the dip before an attack; levels as in :func:`analysis.attacks.attacks`."""
    level, hop_s = envelope.level_dbfs, envelope.hop_s
    attack = min(round(attack_s / hop_s), len(level) - 1)
    first = max(attack - round(_DIP_BEFORE_S / hop_s), 0)
    dip = first + int(np.argmin(level[first : attack + round(_DIP_AFTER_S / hop_s) + 1]))
    reach = round(_REACH_S / hop_s)
    before, after = level[max(dip - reach, 0) : dip + 1], level[dip : dip + reach + 1]
    depth = float(min(before.max(), after.max()) - level[dip])
    half = level[dip] + 0.5 * max(depth, _SHALLOWEST_DB)
    left, right = np.flatnonzero(before > half), np.flatnonzero(after > half)
    width = (right[0] if right.size else len(after)) + (
        len(before) - 1 - left[-1] if left.size else len(before)
    )
    middle = min(round(dip * hop_s / band_hop_s), len(band_level) - 1)
    reach, near = round(_BAND_REACH_S / band_hop_s), round(_BAND_STEEP_OVER_S / band_hop_s)
    bands = band_level[max(middle - reach, 0) : middle + reach + 1]
    split = min(middle, reach)
    bottom = float(bands[max(split - near, 0) : split + near + 1].min())
    return Dip(
        depth_db=depth,
        fall_db=_steepest(before[::-1], round(_STEEP_OVER_S / hop_s)),
        rise_db=_steepest(after, round(_STEEP_OVER_S / hop_s)),
        width_s=float(width * hop_s),
        climb_db=float(after.max() - level[dip]),
        bands_depth_db=float(min(bands[: split + 1].max(), bands[split:].max())) - bottom,
        bands_rise_db=_steepest(bands[max(split - 3 * near, 0) :], near),
    )


def _steepest(level: FloatArray, stride: int) -> float:
    return float(np.max(level[stride:] - level[:-stride])) if len(level) > stride else 0.0


def keeps_pitch(track: PitchTrack, time_s: float) -> bool:
    """Whether the pitch before and after a time is one."""
    middles = []
    for begin, end in ((-_PITCH_UNTIL_S, -_PITCH_FROM_S), (_PITCH_FROM_S, _PITCH_UNTIL_S)):
        first = max(round((time_s + begin) / track.hop_s), 0)
        f0_hz = track.f0_hz[first : max(round((time_s + end) / track.hop_s) + 1, 0)]
        f0_hz = f0_hz[np.isfinite(f0_hz)]
        if f0_hz.size < _FEWEST_VOICED:
            return False
        middles.append(hz_to_midi(float(np.median(f0_hz))))
    return abs(middles[0] - middles[1]) * 100.0 <= _ONE_PITCH_CENTS
