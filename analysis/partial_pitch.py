"""The pitch of each frame once more, from all partials at once: what a room leaves of it.

In a room every partial answers itself with its pitch of a moment ago. One period holds the
sum of it all, so the autocorrelation of a frame is drawn towards the loudest partials and
whatever the walls did to them. But the walls meet each partial differently, and the string
moves them all alike: laid beside each other in cents, the partials scatter around the
pitch of the string, and their median stays close to it.

Each partial is turned down to rest along the pitch found so far (a carrier that follows
vibrato and slides), narrowed to its own band, and read as its frequency against the carrier.
The frequency is that of the phase, as in J. L. Flanagan and R. M. Golden 1966 ('Phase
vocoder'), found with the window's derivative as in F. Auger and P. Flandrin 1995
('Improving the readability of time-frequency and time-scale representations by the
reassignment method').
"""

from dataclasses import replace
from itertools import pairwise
from typing import Final

import numpy as np
from numpy.typing import NDArray

from analysis.blocks import MonoSamples
from analysis.filters import on_parabolas
from analysis.partial_lines import (
    median_of_partials,
    turn_along,
    turn_down,
    turn_further,
    turning_of,
)
from analysis.results import PitchTrack
from analysis.stopping import Progress, StopQuestion, stop_if_asked, tell

FloatArray = NDArray[np.float64]
Float32Array = NDArray[np.float32]
IntArray = NDArray[np.int64]

ALGORITHM: Final = "partial-pitch-1"

_MOST_PARTIALS: Final = 24
_LEAST_WHOLE: Final = 0.6
_LEAST_OF_LOUDEST: Final = 1e-5
_HIGHEST_HZ: Final = 12_000.0
_HIGHEST_SHARE_OF_RATE: Final = 0.42
_PERIODS_EACH_SIDE: Final = 1.0
_SMOOTHED_S: Final = 0.04
_LEAP_CENTS: Final = 60.0
_CURVE_S: Final = 0.045
_CHUNK_FRAMES: Final = 2000
_PASSES: Final = 3


def with_all_partials(
    track: PitchTrack,
    source: MonoSamples,
    *,
    progress: Progress | None = None,
    should_stop: StopQuestion | None = None,
) -> PitchTrack:
    """Read the pitch of voiced frames again, as the median of what the partials say.

    Parameters
    ----------
    track : PitchTrack
        From :func:`analysis.pitch.track_pitch`; octave and voicing stay what it found.
    source : MonoSamples
        The take, at a rate that holds the partials.
    progress : callable, optional
        Told the share done, 0 to 1.
    should_stop : callable, optional
        Asked for every few seconds of sound.

    Returns
    -------
    PitchTrack
        The same frames. Where no partial stands out, the pitch stays as it was.

    Raises
    ------
    Stopped
        If ``should_stop`` said so.
    """
    f0_hz = track.f0_hz.copy()
    reach = max(round(0.5 * _SMOOTHED_S / track.hop_s), 1)
    stretch = _stretches(track.f0_hz)
    for first in range(0, f0_hz.size, _CHUNK_FRAMES):
        stop_if_asked(should_stop)
        last = min(first + _CHUNK_FRAMES, f0_hz.size)
        tell(progress, first / f0_hz.size)
        near = slice(max(first - reach, 0), min(last + reach, f0_hz.size))
        if np.count_nonzero(stretch[near] >= 0) < 2 * reach:
            continue
        off = _off_cents(track, source, near, stretch[near], reach)
        f0_hz[first:last] *= np.exp2(off[first - near.start :][: last - first] / 1200.0)
    return replace(track, f0_hz=_drawn_smooth(f0_hz, stretch, track.hop_s))


def _stretches(f0_hz: FloatArray) -> IntArray:
    """Give numbers to the stretches of frames without a leap; -1 where unvoiced."""
    voiced = np.isfinite(f0_hz)
    cents = 1200.0 * np.log2(np.where(voiced, f0_hz, 1.0))
    begins = voiced.copy()
    begins[1:] &= ~voiced[:-1] | (np.abs(np.diff(cents)) > _LEAP_CENTS)
    return np.where(voiced, np.cumsum(begins) - 1, -1)


def _off_cents(
    track: PitchTrack, source: MonoSamples, near: slice, stretch: IntArray, reach: int
) -> FloatArray:
    """Return how far the partials' median lies from the track, in cents; 0 where unknown."""
    rate_hz = source.sample_rate_hz
    f0_hz = track.f0_hz[near]
    voiced = stretch >= 0
    hop = track.hop_s * rate_hz
    # whole half periods: there the window passes no other partial
    periods = 0.5 * np.ceil(2.0 * np.maximum(_PERIODS_EACH_SIDE, track.hop_s * f0_hz))
    reach_samples = np.where(voiced, periods * rate_hz / f0_hz, 0.0)
    halves = np.floor(reach_samples).astype(np.int64)
    widest = int(np.max(halves))
    centres = np.rint(np.arange(near.start, near.stop) * hop).astype(np.int64)
    start = int(centres[0]) - widest
    samples = source.read(start, int(centres[-1]) + widest + 1)
    centres -= start
    cosine, sine = np.empty((2, samples.size), dtype=np.float32)
    turn_along(centres[voiced], f0_hz[voiced] / rate_hz, cosine, sine)
    top_hz = min(_HIGHEST_HZ, _HIGHEST_SHARE_OF_RATE * rate_hz)
    counts = np.minimum(np.where(voiced, top_hz / f0_hz, 0.0), _MOST_PARTIALS).astype(np.int64)
    lines = np.zeros((_MOST_PARTIALS, f0_hz.size), dtype=np.complex64)
    turn_down(
        samples,
        cosine,
        sine,
        centres,
        halves,
        reach_samples,
        counts,
        lines,
    )
    smooth = np.hanning(2 * reach + 3)[1:-1].astype(np.float32)
    slope = (np.gradient(smooth) / track.hop_s).astype(np.float32)
    turning = np.empty(lines.shape, dtype=np.float32)
    off = np.zeros(f0_hz.size)
    for number in range(_PASSES):
        more = np.zeros(f0_hz.size)
        turning_of(lines, stretch, smooth, slope, turning, _LEAST_WHOLE, _LEAST_OF_LOUDEST)
        median_of_partials(turning, counts, f0_hz, more)
        off += more
        if number + 1 < _PASSES:
            turn_further(lines, f0_hz * (np.exp2(more / 1200.0) - 1.0), voiced, track.hop_s)
    return off


def _drawn_smooth(f0_hz: FloatArray, stretch: IntArray, hop_s: float) -> FloatArray:
    """Lay a short parabola through each stretch: no string moves as the partials jitter."""
    length = max(2 * round(0.5 * _CURVE_S / hop_s) + 1, 5)
    edges = np.flatnonzero(np.diff(np.concatenate(([-2], stretch, [-2]))))
    smooth = f0_hz.copy()
    for first, last in pairwise(edges.tolist()):
        if stretch[first] >= 0 and last - first >= length:
            smooth[first:last] = np.exp2(on_parabolas(np.log2(f0_hz[first:last]), length))
    return smooth
