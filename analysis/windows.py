"""Analysis windows: how long for which pitch, and what they do to a pitch that moves."""

import math
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

import numpy as np
from numpy.typing import NDArray

FloatArray = NDArray[np.float64]
Float32Array = NDArray[np.float32]

_SHORTEST_WINDOW_S: Final = 0.016
_ROOM_BELOW: Final = 1.15


@dataclass(frozen=True, slots=True)
class WindowPlan:
    """Which window measures which pitch.

    One window for a whole range is either too short for its low notes or flattens the
    vibrato, and blurs the short notes, of its high ones. So there is a window for the
    lowest pitch, ``periods`` periods long, and half, a quarter ... of it for pitches an
    octave, two octaves ... higher, down to 16 ms.
    """

    floor_hz: float
    periods: float = 3.0

    @property
    def longest_s(self) -> float:
        """Length of the longest window, the one for the floor."""
        return self.periods / self.floor_hz

    @property
    def halvings(self) -> int:
        """How often the longest window may be halved."""
        return max(int(np.floor(np.log2(self.longest_s / _SHORTEST_WINDOW_S))), 0)

    def halvings_for(self, f0_hz: FloatArray) -> NDArray[np.int64]:
        """Return how often the window is halved for each pitch; NaN counts as the floor."""
        above = np.nan_to_num(np.log2(f0_hz / (_ROOM_BELOW * self.floor_hz)), nan=0.0)
        return np.asarray(np.clip(np.floor(above), 0, self.halvings), dtype=np.int64)

    def length_s(self, f0_hz: float) -> float:
        """Return the length of the window that measures a pitch, in seconds."""
        above = math.floor(math.log2(f0_hz / (_ROOM_BELOW * self.floor_hz)))
        return self.longest_s * 0.5 ** min(max(above, 0), self.halvings)


@lru_cache(maxsize=32)
def hann_window(length: int) -> Float32Array:
    """Return a Hann window of ``length`` samples whose ends lie just outside it.

    One array for all who ask for this length; it cannot be written to.
    """
    turn = 2.0 * np.pi * (np.arange(length) + 0.5) / length
    window: Float32Array = (0.5 - 0.5 * np.cos(turn)).astype(np.float32)
    window.setflags(write=False)
    return window


def window_autocorrelation(window: FloatArray, lag_count: int) -> FloatArray:
    """Return the normalised autocorrelation of a window at lags 0 to ``lag_count - 1``."""
    size = 1 << int(len(window) + lag_count).bit_length()
    spectrum = np.fft.rfft(window, size)
    correlation = np.fft.irfft(spectrum.real**2 + spectrum.imag**2, size)[:lag_count]
    return np.asarray(correlation / correlation[0], dtype=np.float64)
