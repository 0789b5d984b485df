"""A click on beats that were found in a take, wherever they are."""

from bisect import bisect_left, bisect_right
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from audio.guides import CLICK_HZ, ENDLESS_FRAMES, QUIET_LEVEL_DBFS, click_wave

FloatArray = NDArray[np.float32]


class BeatClick:
    """A click on each of these moments: it follows the playing instead of leading it.

    Parameters
    ----------
    beats_s : sequence of float
        Moments in ascending order, seconds.
    sample_rate_hz : int
        Rate of the sound.
    level_dbfs : float
        Peak of each click.
    """

    channels = 1
    frames = ENDLESS_FRAMES

    def __init__(
        self,
        beats_s: Sequence[float],
        sample_rate_hz: int,
        *,
        level_dbfs: float = QUIET_LEVEL_DBFS,
    ) -> None:
        self.sample_rate_hz = sample_rate_hz
        self._beats = sorted(round(beat * sample_rate_hz) for beat in beats_s)
        self._wave = click_wave(10 ** (level_dbfs / 20), CLICK_HZ, sample_rate_hz)

    def read(self, start: int, end: int) -> FloatArray:
        """Return frames `start` to `end`, shape (n, 1)."""
        start = max(start, 0)
        block = np.zeros(max(end - start, 0), np.float32)
        length = len(self._wave)
        first = bisect_right(self._beats, start - length)
        for at in self._beats[first : bisect_left(self._beats, end)]:
            begin, stop = max(at, start), min(at + length, end)
            block[begin - start : stop - start] += self._wave[begin - at : stop - at]
        return block[:, np.newaxis]
