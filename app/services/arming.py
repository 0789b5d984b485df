"""A recording that begins by itself with the first note and ends after silence.

Talk before the playing begins nothing: a note rests on its pitch and a voice hardly
does, so most of what was loud lately has to have been held. That takes about a second
to tell; the recorder remembers longer than that, and the take begins a second before
the first note all the same. Of ten seconds of a synthetic voice about one in twenty
still passes for playing, the more easily the more it sings.
"""

from collections import deque
from collections.abc import Callable
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    from analysis.sounding import Listening

PRE_ROLL_S = 1.0
"""How much of what was heard before the first note is kept."""

DEFAULT_SILENCE_S = 5.0
SHORTEST_SILENCE_S, LONGEST_SILENCE_S = 1.0, 120.0

LONGEST_DOUBT_S = 2.5
"""As late as that may playing be told from talk; the recorder remembers that much longer."""

_HELD_S, _HELD_SHARE = 0.5, 0.45
_LOOK_BACK_S = 2.0
_NOTE_HELD_S, _NOTE_WITHIN_S = 0.1, 0.5
_PAUSE_S = 0.6  # between two strokes; after a longer one something new begins
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
        Called once, in the recorder's thread, when the first note is known for one, with
        how many seconds ago it began.
    deaf_s : float
        For so long nothing is a first note: a click or a drone that the input hears
        becomes part of the room's noise.

    Attributes
    ----------
    has_begun, is_over : bool
        Whether the first note came, and whether the silence after the last one did.
    """

    def __init__(
        self,
        sample_rate_hz: int,
        silence_s: float,
        begin: Callable[[float], None],
        deaf_s: float = 0.0,
    ) -> None:
        from analysis.sounding import begin as begin_to_listen  # noqa: PLC0415 - scipy

        self._rate_hz = sample_rate_hz
        self._silence_s = silence_s
        self._begin = begin
        self._listening: Listening = begin_to_listen(sample_rate_hz)
        self._deaf_s = deaf_s
        self._noise_dbfs: deque[tuple[float, float]] = deque()
        self._lately: deque[tuple[float, bool]] = deque()
        self._quiet_s = 0.0
        self._is_off = False
        self.has_begun = False
        self.is_over = False

    def call_off(self) -> None:
        """Do not begin any more."""
        self._is_off = True

    def hear(self, block: "NDArray[np.float32]") -> None:
        """Take in a block, shape (n, channels); quick."""
        import numpy as np  # noqa: PLC0415 - loaded already

        from analysis.sounding import listen  # noqa: PLC0415

        if self._is_off or self.is_over or not len(block):
            return
        self._listening, _ = listen(self._listening, block)
        seconds = len(block) / self._rate_hz
        level_dbfs = 10.0 * float(np.log10(np.mean(np.square(block, dtype=np.float64)) + 1e-14))
        is_loud = level_dbfs > self._threshold_dbfs()
        if self.has_begun:
            self._quiet_s = 0.0 if is_loud or self._is_note() else self._quiet_s + seconds
            self.is_over = self._quiet_s >= self._silence_s
            return
        self._deaf_s -= seconds
        self._look_back(seconds, is_loud=is_loud and self._deaf_s <= 0)
        if is_loud and self._deaf_s <= 0 and self._is_playing():
            self.has_begun = True
            self._begin(self._since_s())
        else:
            self._remember(level_dbfs, seconds)

    def _is_note(self) -> bool:
        from analysis.sounding import held_s  # noqa: PLC0415 - loaded already

        return held_s(self._listening, _NOTE_WITHIN_S) >= _NOTE_HELD_S

    def _is_playing(self) -> bool:
        """Tell whether what is loud is mostly held, as notes are and talk is not."""
        from analysis.sounding import held_s  # noqa: PLC0415 - loaded already

        loud_s = sum(seconds for seconds, is_loud in self._lately if is_loud)
        held = held_s(self._listening, min(_LOOK_BACK_S, loud_s + _PAUSE_S))
        return held >= max(_HELD_S, _HELD_SHARE * min(loud_s, _LOOK_BACK_S))

    def _since_s(self) -> float:
        """Give how long ago the first of the notes began that are heard now."""
        since_s = begun_s = quiet_s = 0.0
        for seconds, is_loud in reversed(self._lately):
            since_s += seconds
            quiet_s = 0.0 if is_loud else quiet_s + seconds
            if quiet_s > _PAUSE_S:
                break
            if is_loud:
                begun_s = since_s
        return min(begun_s, LONGEST_DOUBT_S)

    def _look_back(self, seconds: float, *, is_loud: bool) -> None:
        self._lately.append((seconds, is_loud))
        while sum(length for length, _ in self._lately) > _LOOK_BACK_S + _PAUSE_S:
            self._lately.popleft()

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
