"""A recording that begins by itself with the first note and ends after silence."""

from collections import deque
from collections.abc import Callable
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

if TYPE_CHECKING:
    from analysis.sounding import Listening

PRE_ROLL_S = 1.0
"""How much of what was heard before the first note is kept."""

DEFAULT_SILENCE_S = 5.0
SHORTEST_SILENCE_S, LONGEST_SILENCE_S = 1.0, 120.0

RECOGNISED_AFTER_S = 0.25
"""About as late is a note known for one; the recorder remembers that much longer."""

_HELD_S = 0.1
_WITHIN_S = 0.5
_OVER_NOISE_DB = 10.0
_QUIETEST_DBFS = -60.0
_NOISE_OVER_S = 3.0


class FirstNote:
    """Hears blocks of sound: first for a note, then for the silence after the playing.

    The recorder's thread calls :meth:`hear`; everything else is read from other threads.

    Parameters
    ----------
    sample_rate_hz : int
    silence_s : float
        How long it has to be silent for the end.
    begin : callable
        Called once, in the recorder's thread, when the first note is there.

    Attributes
    ----------
    has_begun, is_over : bool
        Whether the first note came, and whether the silence after the last one did.
    """

    def __init__(self, sample_rate_hz: int, silence_s: float, begin: Callable[[], None]) -> None:
        from analysis.sounding import begin as begin_to_listen  # noqa: PLC0415 - scipy

        self._rate_hz = sample_rate_hz
        self._silence_s = silence_s
        self._begin = begin
        self._listening: Listening = begin_to_listen(sample_rate_hz)
        self._noise_dbfs: deque[tuple[float, float]] = deque()
        self._quiet_s = 0.0
        self._is_off = False
        self.has_begun = False
        self.is_over = False

    def call_off(self) -> None:
        """Do not begin any more."""
        self._is_off = True

    def hear(self, block: NDArray[np.float32]) -> None:
        """Take in a block, shape (n, channels); quick."""
        from analysis.sounding import held_s, listen  # noqa: PLC0415 - loaded already

        if self._is_off or self.is_over or not len(block):
            return
        self._listening, _ = listen(self._listening, block)
        seconds = len(block) / self._rate_hz
        level_dbfs = 10.0 * float(np.log10(np.mean(np.square(block, dtype=np.float64)) + 1e-14))
        is_loud = level_dbfs > self._threshold_dbfs()
        is_note = held_s(self._listening, _WITHIN_S) >= _HELD_S
        if self.has_begun:
            self._quiet_s = 0.0 if is_loud or is_note else self._quiet_s + seconds
            self.is_over = self._quiet_s >= self._silence_s
        elif is_note and is_loud:
            self.has_begun = True
            self._begin()
        else:
            self._remember(level_dbfs, seconds)

    def _threshold_dbfs(self) -> float:
        """Give the level that stands out of the room as it was before the first note."""
        levels = sorted(level for level, _ in self._noise_dbfs)
        if not levels:
            return _QUIETEST_DBFS
        # The lower part: the note itself may lie among the latest of them.
        return max(levels[len(levels) // 4] + _OVER_NOISE_DB, _QUIETEST_DBFS)

    def _remember(self, level_dbfs: float, seconds: float) -> None:
        self._noise_dbfs.append((level_dbfs, seconds))
        while sum(length for _, length in self._noise_dbfs) > _NOISE_OVER_S:
            self._noise_dbfs.popleft()
