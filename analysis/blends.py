"""Two strings at the unison or the octave: told by partials that come in pairs.

Two strings whose partials fall together look like one. But nobody tunes two strings to
the same hertz: a difference of 0.5 Hz between the fundamentals is one of 5 Hz between
their tenth partials. So the partials of the two lie in pairs that open in proportion to
their number, which nothing else does: a wobble of level or pitch puts its side lines at
the same distance from every partial, and a pitch that was corrected within the note is
not there in both its halves.
"""

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray
from scipy import fft

from analysis.blocks import MonoSamples
from analysis.compiled import compiled
from analysis.peaks import find_peaks
from analysis.windows import hann_window

FloatArray = NDArray[np.float64]
IntArray = NDArray[np.int64]

SHORTEST_BLEND_S: Final = 0.5
_LONGEST_S: Final = 2.0
_PART: Final = 0.65
_HIGHEST_HZ: Final = 8_000.0
_MOST_PARTIALS: Final = 24
_REACH_CENTS: Final = 45.0
_SOFTER_BY: Final = 0.22
_HEARD_DB: Final = 45.0
_OVER_FLOOR: Final = 5.0
_RESOLVED_BINS: Final = 2.2
_FEWEST_PAIRS: Final = 4
_LEAST_SHARE: Final = 0.7
_WIDEST_PAIR: Final = 0.15
_SAME_WIDTH: Final = 0.25
_PADDED: Final = 4
_LEAST_ENERGY: Final = 0.85
_LEAST_ODD: Final = 0.25
_LEAST_OPENING: Final = 1.8


@dataclass(frozen=True, slots=True)
class _Pairs:
    """Ladder of pairs: the two fundamentals the pairs' lower and upper members rest on."""

    low_hz: float
    high_hz: float


@dataclass(frozen=True, slots=True)
class _Spectrum:
    """Magnitudes with their padding, the width of a true bin, and what is heard at least."""

    magnitude: FloatArray
    bin_hz: float
    true_bin_hz: float
    heard: float
    noise: float


def find_blend(
    source: MonoSamples, start_s: float, end_s: float, f0_hz: float
) -> tuple[float, float] | None:
    """Look for two strings a unison or an octave apart in a steady stretch.

    Parameters
    ----------
    source : MonoSamples
        The take.
    start_s, end_s : float
        The stretch, at least half a second.
    f0_hz : float
        The one pitch it seems to have: that of the lower string, or half of it.

    Returns
    -------
    tuple of (lower_hz, upper_hz), or None
        ``None`` too where the two are so well in tune that they cannot be told apart.
    """
    length_s = min(end_s - start_s, _LONGEST_S)
    if length_s < SHORTEST_BLEND_S:
        return None
    first = _spectrum(source, start_s, _PART * length_s)
    last: _Spectrum | None = None
    for ratio in (1, 2):
        pairs = _pairs(first, ratio * f0_hz)
        if pairs is None:
            continue
        last = last or _spectrum(source, start_s + (1.0 - _PART) * length_s, _PART * length_s)
        found = _agreeing(pairs, _pairs(last, ratio * f0_hz))
        if found is None:
            continue
        if ratio == 1:
            return found.low_hz, found.high_hz
        lower = _lower_of_octave(first, f0_hz)
        if lower is None:
            continue
        # the lower string's even partials are one of each pair; the other is the upper's
        pair = (found.low_hz, found.high_hz)
        upper = max(pair, key=lambda hz: abs(hz - 2.0 * lower))
        return lower, upper
    return None


def _spectrum(source: MonoSamples, start_s: float, span_s: float) -> _Spectrum:
    rate = source.sample_rate_hz
    length = round(span_s * rate)
    first = round(start_s * rate)
    piece = source.read(first, first + length) * hann_window(length)
    size = _one_of_few_sizes(_PADDED * length)
    top = int(min(_HIGHEST_HZ, 0.45 * rate) * size / rate)
    magnitude = np.abs(fft.rfft(piece, size)[:top]).astype(np.float64)
    loudest = float(np.max(magnitude, initial=0.0))
    noise = float(np.median(magnitude[::_PADDED])) if magnitude.size else 0.0
    heard = loudest * 10.0 ** (-_HEARD_DB / 20.0)
    return _Spectrum(magnitude, rate / size, rate / length, heard, _OVER_FLOOR * noise)


def _one_of_few_sizes(least: int) -> int:
    """Return a power of two or three quarters of one: a transform is made ready for each size."""
    power = 1 << (least - 1).bit_length()
    return 3 * power // 4 if 3 * power // 4 >= least else power


def _agreeing(one: _Pairs, other: _Pairs | None) -> _Pairs | None:
    """Return the pairs that both parts of a note show alike."""
    if other is None:
        return None
    widths = one.high_hz - one.low_hz, other.high_hz - other.low_hz
    if abs(widths[0] - widths[1]) > _SAME_WIDTH * max(widths):
        return None
    if abs(one.low_hz - other.low_hz) > _SAME_WIDTH * max(widths):
        return None
    return _Pairs(0.5 * (one.low_hz + other.low_hz), 0.5 * (one.high_hz + other.high_hz))


def _pairs(spectrum: _Spectrum, base_hz: float) -> _Pairs | None:
    """Find partials in pairs that open in proportion to their number."""
    numbers, lows, highs, single = [], [], [], []
    for k in range(1, _MOST_PARTIALS + 1):
        peaks = _peaks_near(spectrum, k * base_hz, 0.4 * base_hz)
        if peaks is None:
            break
        if len(peaks) > 1:
            numbers.append(k)
            lows.append(peaks[0] / k)
            highs.append(peaks[1] / k)
        elif len(peaks):
            single.append(k)
    if len(numbers) < _FEWEST_PAIRS:
        return None
    number, low, high = np.array(numbers), np.array(lows), np.array(highs)
    width = float(np.median(high - low))
    blur = 0.5 * spectrum.true_bin_hz / number
    near = np.maximum(_WIDEST_PAIR * width, blur)
    fits = (np.abs(high - low - width) <= near) & (np.abs(low - np.median(low)) <= near)
    resolved = _RESOLVED_BINS * spectrum.true_bin_hz / width
    missing = sum(n > 1.3 * resolved for n in single) + int(np.count_nonzero(~fits))
    count = int(np.count_nonzero(fits))
    if count < _FEWEST_PAIRS or count < _LEAST_SHARE * (count + missing):
        return None
    number = number[fits]
    if number[-1] < _LEAST_OPENING * number[0] or np.count_nonzero(number % 2) < _LEAST_ODD * count:
        return None  # only the even partials in pairs: an octave, not a unison
    weight = number**2 / np.sum(number**2)
    return _Pairs(float(np.sum(weight * low[fits])), float(np.sum(weight * high[fits])))


def _peaks_near(spectrum: _Spectrum, hertz: float, most_hz: float) -> FloatArray | None:
    """Return the one or two strongest peaks about a partial, in order; None beyond the top."""
    reach_hz = min(hertz * (2.0 ** (_REACH_CENTS / 1200.0) - 1.0), most_hz)
    reach_hz = max(reach_hz, 2.0 * spectrum.true_bin_hz)
    first, last = (round(edge / spectrum.bin_hz) for edge in (hertz - reach_hz, hertz + reach_hz))
    if last + 2 >= len(spectrum.magnitude) or first < 2:
        return None if first >= 2 else np.zeros(0)
    piece = spectrum.magnitude[first - 1 : last + 2]
    top = float(np.max(piece))
    least = max(_SOFTER_BY * top, spectrum.noise)
    if top < max(spectrum.heard, spectrum.noise):
        return np.zeros(0)
    places = find_peaks(piece, height=least, prominence=0.3 * least)
    strongest = places[np.argsort(piece[places])[::-1][:2]]
    if not _hold_the_energy(piece, strongest, 1.5 * spectrum.true_bin_hz / spectrum.bin_hz):
        return np.zeros(0)
    before, here, after = (np.log(piece[strongest + step] + 1e-30) for step in (-1, 0, 1))
    offset = 0.5 * (before - after) / np.minimum(before - 2.0 * here + after, -1e-12)
    return np.sort((first - 1 + strongest + offset) * spectrum.bin_hz)


@compiled
def _hold_the_energy(piece: FloatArray, places: IntArray, near: float) -> bool:
    """Whether a partial is these lines and little else; a vibrato spreads it over many."""
    held = whole = 0.0
    for i in range(len(piece)):
        power = piece[i] * piece[i]
        whole += power
        for place in places:
            if abs(i - place) <= near:
                held += power
                break
    return held >= _LEAST_ENERGY * whole


def _lower_of_octave(spectrum: _Spectrum, f0_hz: float) -> float | None:
    """Return the fundamental the odd partials rest on, each of them a single line."""
    numbers, hertz = [], []
    for k in range(1, 12, 2):
        peaks = _peaks_near(spectrum, k * f0_hz, 0.4 * f0_hz)
        if peaks is None:
            break
        if len(peaks) == 1:
            numbers.append(k)
            hertz.append(float(peaks[0]))
    if len(numbers) < 2:
        return None
    number = np.array(numbers, dtype=np.float64)
    return float(np.sum(number * np.array(hertz)) / np.sum(number**2))
