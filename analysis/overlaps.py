"""A short note that begins while the one before still sounds: one period for two pitches.

Two tones together repeat after a common period, which is lower than both; where a note
is over before the one before has died away, that period can be all the tracker finds.
It is told from a note of that pitch by its harmonics: only multiples of the two tones
are there.
"""

from itertools import pairwise
from typing import Final

import numpy as np
from numpy.typing import NDArray

from analysis.blocks import MonoSamples
from analysis.windows import hann_window

FloatArray = NDArray[np.float64]

_NEAR_CENTS: Final = 45.0
_STILL_CENTS: Final = 60.0
_HIGHEST_MULTIPLE: Final = 12
_HARMONICS: Final = 24
_HIGHEST_HZ: Final = 8_000.0
_WINDOW_PERIODS: Final = 5.0
_LEAST_OF_ITS_OWN: Final = 0.03
_PADDED: Final = 4
_FEWEST_PERIODS: Final = 8.0
_LADDER_HARMONICS: Final = 12
_NEAR_SHARE: Final = 0.03
_LEAST_ODD: Final = 0.02


def is_common_period(
    source: MonoSamples, middle_s: float, f0_hz: float, neighbour_hz: float
) -> bool:
    """Whether a pitch is only the common period of a neighbouring note and another one.

    Parameters
    ----------
    source : MonoSamples
        The take.
    middle_s : float
        Middle of the note.
    f0_hz : float
        The pitch found for it; NaN for none.
    neighbour_hz : float
        Pitch of the note before or after, in whose sound it may lie; NaN for none.
    """
    if not np.isfinite(neighbour_hz / f0_hz):
        return False
    multiple = round(neighbour_hz / f0_hz)
    if not 2 <= multiple <= _HIGHEST_MULTIPLE:
        return False
    if abs(1200.0 * np.log2(neighbour_hz / (multiple * f0_hz))) > _NEAR_CENTS:
        return False
    power = _harmonic_powers(source, middle_s, f0_hz)
    if not power.size or not power.any():
        return False
    number = np.arange(1, len(power) + 1)
    of_neighbour = number % multiple == 0
    left = [
        float(np.sum(power[~(of_neighbour | (number % other == 0))]))
        for other in range(2, min(_HIGHEST_MULTIPLE, len(power)) + 1)
    ]
    return min(left, default=np.inf) < _LEAST_OF_ITS_OWN * float(np.sum(power))


def begins_in_lower_octave(f0_hz: float, before_hz: float, following_hz: float) -> bool:
    """Whether a pitch is that of the note before, sounding on under one an octave higher.

    Where a note begins an octave over one that still rings, all its periods are also
    half periods of the old one; only when that has died away the higher octave shows.

    Parameters
    ----------
    f0_hz, before_hz, following_hz : float
        Pitch of a short stretch, of the note before it, and of what it goes over into
        without a new attack; NaN for none.
    """
    as_before = abs(1200.0 * np.log2(f0_hz / before_hz)) <= _STILL_CENTS
    return bool(as_before and abs(1200.0 * np.log2(following_hz / f0_hz / 2.0)) <= _NEAR_CENTS)


def is_octave_below(source: MonoSamples, start_s: float, end_s: float, f0_hz: float) -> bool:
    """Whether a pitch is that of the octave under a soft note, with another note around it.

    In the sound that is left of a louder note a soft one repeats only over two of its
    periods. Then the odd harmonics of the pitch are missing: what lies between the even
    ones belongs to the other note and not to this ladder.

    Parameters
    ----------
    source : MonoSamples
        The take.
    start_s, end_s : float
        The note.
    f0_hz : float
        The pitch found for it; NaN for none.
    """
    rate = source.sample_rate_hz
    periods = (end_s - start_s) * f0_hz
    if not periods >= _FEWEST_PERIODS:
        return False
    length = round((end_s - start_s) * rate)
    power = _powers(source, round(start_s * rate), length)
    count = min(_LADDER_HARMONICS, int(min(_HIGHEST_HZ, 0.45 * rate) / f0_hz))
    step, reach = f0_hz * _PADDED * length / rate, max(_NEAR_SHARE, 1.0 / periods)
    near = [
        float(np.sum(power[round((k - reach) * step) : round((k + reach) * step) + 1]))
        for k in range(1, count + 1)
    ]
    return sum(near[::2]) < _LEAST_ODD * sum(near)


def _harmonic_powers(source: MonoSamples, middle_s: float, f0_hz: float) -> FloatArray:
    """Return the power near each harmonic, (n,)."""
    rate = source.sample_rate_hz
    length = round(_WINDOW_PERIODS * rate / f0_hz)
    power = _powers(source, round(middle_s * rate - 0.5 * length), length)
    count = min(_HARMONICS, int(min(_HIGHEST_HZ, 0.45 * rate) / f0_hz))
    step = f0_hz * _PADDED * length / rate
    edges = np.rint(step * (np.arange(1, count + 2) - 0.5)).astype(np.int64)
    if count < 1:
        return np.zeros(0)
    return np.asarray([power[a:b].max() for a, b in pairwise(edges)])


def _powers(source: MonoSamples, first: int, length: int) -> FloatArray:
    """Return the power spectrum of a stretch in a Hann window, padded to finer bins."""
    piece = source.read(first, first + length) * hann_window(length)
    return np.asarray(np.abs(np.fft.rfft(piece, _PADDED * length)) ** 2)
