"""The steady part of a note, its centre, and how well that is known."""

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray
from scipy.ndimage import uniform_filter1d

from analysis.results import NotePitch
from analysis.units import midi_to_hz
from analysis.vibrato import pitch_wobble
from analysis.wobbles import Wobble

FloatArray = NDArray[np.float64]
BoolArray = NDArray[np.bool_]

_WIDEST_CENTS: Final = 75.0
_SHORTEST_FOR_WOBBLE_S: Final = 0.2
_SHORTEST_FOR_SLOPE_S: Final = 0.15
_LEAST_EXPLAINED: Final = 0.4
_SMALLEST_EXTENT_CENTS: Final = 3.0
_LONGEST_GAP_S: Final = 0.05
_STRAY: Final = 4.0
_STRAY_FLOOR_CENTS: Final = 2.0
_MOST_TRIMMED: Final = 0.4
_TRUST_IN_FIT: Final = 8


@dataclass(frozen=True, slots=True)
class Reading:
    """The steady frames of a note and the curve that describes them.

    ``cents`` are against ``middle_midi``; ``wobble`` is ``None`` where a straight line
    or a constant describes the pitch; ``residual`` is what the description leaves.
    """

    time_s: FloatArray
    cents: FloatArray
    confidence: FloatArray
    middle_midi: float
    centre_cents: float
    slope_per_s: float
    residual: FloatArray
    fitted: int
    wobble: Wobble | None


def read_steady(
    time_s: FloatArray, midi: FloatArray, confidence: FloatArray, usable: BoolArray
) -> Reading | None:
    """Find the steady part among the usable frames of a note and describe its pitch.

    The longest run of frames near the median is described by a constant, a line, or a
    line with vibrato; frames at its ends that stray from the description belong to the
    attack, a slide or the release, and are left out.

    Parameters
    ----------
    time_s, midi, confidence : (n,) arrays
        The frames of the note; ``midi`` is NaN where unvoiced.
    usable : (n,) bool array
        Frames that may be steady.

    Returns
    -------
    Reading or None
        ``None`` with fewer than three steady frames.
    """
    usable = usable & np.isfinite(midi)
    if np.count_nonzero(usable) < 3:
        return None
    middle = float(np.median(midi[usable]))
    steady = usable & (np.abs(midi - middle) * 100.0 < _WIDEST_CENTS)
    kept = np.flatnonzero(longest_run(_bridged(steady, time_s)) & steady)
    time_s, midi, confidence = time_s[kept], midi[kept], confidence[kept]
    first, last = 0, len(kept)
    most = int(_MOST_TRIMMED * (last - first))
    for _ in range(3):
        if last - first < 3:
            return None
        reading = _described(time_s, midi, confidence, middle, (first, last))
        stray = _stray(reading.residual)
        early, late = _leading(stray), _leading(stray[::-1])
        if early + late == 0 or early + late > most:
            return reading
        first, last, most = first + early, last - late, most - early - late
    return _described(time_s, midi, confidence, middle, (first, last))


def longest_run(mask: BoolArray) -> BoolArray:
    """Keep only the longest run of true values."""
    edges = np.flatnonzero(np.diff(np.concatenate(([False], mask, [False])).astype(np.int8)))
    out = np.zeros_like(mask)
    if edges.size:
        starts, ends = edges[::2], edges[1::2]
        longest = int(np.argmax(ends - starts))
        out[starts[longest] : ends[longest]] = True
    return out


def _bridged(mask: BoolArray, time_s: FloatArray) -> BoolArray:
    """Fill the short gaps of a mask, as the soft moments of a swelling vibrato leave them."""
    where = np.flatnonzero(mask)
    short = np.diff(time_s[where]) <= _LONGEST_GAP_S
    edges = np.zeros(len(mask) + 1, dtype=np.int64)
    np.add.at(edges, where[:-1][short], 1)
    np.add.at(edges, where[1:][short], -1)
    return np.asarray(mask | (np.cumsum(edges[:-1]) > 0))


def _stray(residual: FloatArray) -> BoolArray:
    spread = 1.4826 * float(np.median(np.abs(residual)))
    return np.abs(residual) > _STRAY * spread + _STRAY_FLOOR_CENTS


def _leading(mask: BoolArray) -> int:
    return int(np.argmin(mask)) if not mask.all() else len(mask)


def _described(
    time_s: FloatArray,
    midi: FloatArray,
    confidence: FloatArray,
    middle: float,
    ends: tuple[int, int],
) -> Reading:
    first, last = ends
    t, trust = time_s[first:last], confidence[first:last]
    cents = 100.0 * (midi[first:last] - middle)
    span_s = float(t[-1] - t[0])
    wobble = pitch_wobble(t, cents) if span_s >= _SHORTEST_FOR_WOBBLE_S else None
    if (
        wobble is not None
        and wobble.cycles >= 1.0
        and wobble.explained >= _LEAST_EXPLAINED
        and wobble.extent >= _SMALLEST_EXTENT_CENTS
    ):
        centre = _centre_of_turns(t, cents, wobble)
        return Reading(
            t, cents, trust, middle, centre, wobble.slope_per_s, wobble.residual, 5, wobble
        )
    centre, slope, fitted = float(np.mean(cents)), 0.0, 1
    residual = cents - centre
    if span_s >= _SHORTEST_FOR_SLOPE_S:
        from_middle = t - float(np.mean(t))
        slope = float(from_middle @ cents / (from_middle @ from_middle))
        residual, fitted = residual - slope * from_middle, 2
    return Reading(t, cents, trust, middle, centre, slope, residual, fitted, None)


def _centre_of_turns(time_s: FloatArray, cents: FloatArray, wobble: Wobble) -> float:
    """Return the centre of a vibrato: that of the fit, or the mean over whole turns.

    The fit knows best where the vibrato is regular. A player's often is not, and a sinusoid
    that misses half a turn drags its line along; the mean over whole turns, those from the
    beginning and those up to the end, does not ask for a shape. How much the sinusoid
    explains decides between the two.
    """
    turns_s = np.floor(wobble.rate_hz * (time_s[-1] - time_s[0])) / wobble.rate_hz
    if turns_s <= 0.0:
        return wobble.centre
    early, late = time_s <= time_s[0] + turns_s, time_s >= time_s[-1] - turns_s
    mean = 0.5 * float(np.mean(cents[early]) + np.mean(cents[late]))
    trust = float(np.clip(wobble.explained, 0.0, 1.0)) ** _TRUST_IN_FIT
    return trust * wobble.centre + (1.0 - trust) * mean


@dataclass(frozen=True, slots=True)
class Widths:
    """What the half width of a centre's 95 % interval is made of; see :func:`pitch_of`."""

    noise: float = 1.5
    unseen_wander: float = 2.0
    unseen_halves: float = 2.95
    unseen_cents_s: float = 0.033
    few_turns: float = 0.18
    mixed: float = 2.7
    noise_in_mixed: float = 0.15
    floor_cents: float = 0.02


WIDTHS: Final = Widths()
_LEAST_UNSEEN: Final = 0.02
_SMOOTHED_FRAMES: Final = 5


def pitch_of(reading: Reading, duration_s: float, hop_s: float) -> NotePitch:
    """Return the centre of a note with half of its 95 % interval.

    The interval is the root of the sum of squares of what can be wrong, each times a
    weight: noise from frame to frame, averaged over the frames; what the pitch did in the
    part of the note that is not steady, judged by how it moves in the steady part; a
    vibrato of few turns; another sound mixed in (the room's answer to the note before),
    which shows as a spread together with frames less periodic than the note's best. Noise
    makes all frames less periodic, each a little differently: that much is taken off first.

    The weights were set on generated phrases of two kinds (``app/services/accuracy/phrases.py``,
    seeds 100 000 to 100 039, and ``tests/benchmarks/phrases.py``, seeds 5000 to 5089; clean,
    at 30 and 20 dB, dry and in rooms), so that about 19 of 20 intervals hold the truth in
    each, for short notes as for long ones, and no wider than that.

    Parameters
    ----------
    reading : Reading
        The steady part.
    duration_s : float
        Length of the whole note.
    hop_s : float
        Distance of two frames.
    """
    count, residual, cents = len(reading.cents), reading.residual, reading.cents
    span_s = count * hop_s
    spread = float(np.sqrt(np.sum(residual**2) / max(count - reading.fitted, 1)))
    bends = np.diff(cents, 2)
    noise = float(np.sqrt(np.mean(bends**2) / 6.0)) if count > 3 else spread
    wander = spread
    if count > _SMOOTHED_FRAMES + 2:
        wander = float(np.sqrt(np.mean(uniform_filter1d(residual, _SMOOTHED_FRAMES) ** 2)))
    unseen = float(np.clip(1.0 - span_s / max(duration_s, span_s), _LEAST_UNSEEN, 1.0))
    trust = uniform_filter1d(reading.confidence, _SMOOTHED_FRAMES, mode="nearest")
    best = float(np.max(trust))
    mixed = max(best - float(np.mean(trust)) - WIDTHS.noise_in_mixed * (1.0 - best), 0.0)
    half, turns = count // 2, 0.0
    halves = abs(float(np.mean(cents[:half]) - np.mean(cents[half:])))
    if reading.wobble is not None:
        halves, turns = 0.0, reading.wobble.extent / reading.wobble.cycles**2
    parts = (
        WIDTHS.noise * noise / np.sqrt(count),
        WIDTHS.unseen_wander * wander * unseen,
        WIDTHS.unseen_halves * halves * unseen,
        WIDTHS.unseen_cents_s * unseen / span_s,
        WIDTHS.few_turns * turns,
        WIDTHS.mixed * spread * np.sqrt(mixed / span_s),
        WIDTHS.floor_cents,
    )
    return NotePitch(
        midi_to_hz(reading.middle_midi + reading.centre_cents / 100.0),
        float(np.sqrt(np.sum(np.square(parts)))),
        reading.slope_per_s,
    )
