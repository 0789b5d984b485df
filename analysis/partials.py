"""The partials of a moment of sound, and which ladder each of them stands on."""

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray
from scipy import fft

from analysis.blocks import MonoSamples
from analysis.peaks import find_peaks
from analysis.windows import hann_window

FloatArray = NDArray[np.float64]

_HIGHEST_PEAK_HZ: Final = 7_000.0
_MOST_PEAKS: Final = 48
_WEAKEST_PEAK_DB: Final = 45.0
_PEAK_OVER_FLOOR_DB: Final = 14.0
_TOLERANCE_BINS: Final = 1.2
_TOLERANCE_SHARE: Final = 0.012


@dataclass(frozen=True, slots=True)
class Peaks:
    """Partials of a spectrum: frequencies in Hz, powers as shares of their sum, both (n,)."""

    hz: FloatArray
    power: FloatArray
    bin_hz: float


def find_partials(source: MonoSamples, middle_s: float, span_s: float, floor_hz: float) -> Peaks:
    """Find the partials of a stretch around a moment.

    Parameters
    ----------
    source : MonoSamples
        The take.
    middle_s, span_s : float
        Middle and length of the stretch.
    floor_hz : float
        Lowest pitch looked for.
    """
    rate = source.sample_rate_hz
    length = round(span_s * rate)
    first = round(middle_s * rate) - length // 2
    piece = source.read(first, first + length) * hann_window(length)
    size = fft.next_fast_len(2 * length, real=True)
    bin_hz = rate / size
    top = min(int(_HIGHEST_PEAK_HZ / bin_hz), size // 2)
    magnitude = np.abs(fft.rfft(piece, size)[:top]).astype(np.float64)
    level = 20.0 * np.log10(np.maximum(magnitude, 1e-12))
    lowest = max(int(0.8 * floor_hz / bin_hz), 1)
    noise = float(np.median(level))
    weakest = max(float(np.max(level)) - _WEAKEST_PEAK_DB, noise + _PEAK_OVER_FLOOR_DB)
    places = find_peaks(level, height=weakest, distance=3)
    places = places[places >= lowest]
    places = np.sort(places[np.argsort(level[places])[::-1][:_MOST_PEAKS]])
    before, here, after = level[places - 1], level[places], level[places + 1]
    offset = 0.5 * (before - after) / (before - 2.0 * here + after)
    power = 10.0 ** ((here - 0.25 * (before - after) * offset) / 10.0)
    # strong low partials shall not drown the rest: ladders are seen in many partials
    power = np.sqrt(power)
    return Peaks((places + offset) * bin_hz, power / max(float(power.sum()), 1e-30), rate / length)


def rungs_of(peaks: Peaks, f0_hz: float | FloatArray) -> NDArray[np.int64]:
    """Return the number of each peak on the ladder of a fundamental, 0 where it is not on it.

    Of fundamentals in a column, a row for each.
    """
    number = np.rint(peaks.hz / f0_hz).astype(np.int64)
    away = np.abs(peaks.hz - number * f0_hz)
    width = np.minimum(
        np.maximum(_TOLERANCE_BINS * 0.5 * peaks.bin_hz, _TOLERANCE_SHARE * peaks.hz), 0.2 * f0_hz
    )
    return np.where((number >= 1) & (away <= width), number, 0)


def lacks_first_rungs(rungs: NDArray[np.int64]) -> bool:
    """Whether those rungs of a ladder are missing that no multiple of small numbers reaches."""
    there = set(rungs[rungs > 0].tolist())
    top = max(there, default=0)
    if 1 in there or not there.isdisjoint({7, 11, 13}):
        return False
    low_ones_missing = there.isdisjoint({1, 2, 3}) or (top > 5 and there.isdisjoint({1, 5}))
    return low_ones_missing or (top > 7 and there.isdisjoint({1, 2}))
