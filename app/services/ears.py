"""When an instrument sounded, heard block by block; and time that others cover already."""

import threading
from collections.abc import Sequence
from datetime import UTC, datetime, timedelta
from typing import TYPE_CHECKING

from app.journal.practice_clock import seconds_between

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    from analysis.sounding import Listening, SoundingTime

Span = tuple[datetime, datetime]


class Ears:
    """Hears blocks and keeps when the instrument sounded; the sound itself is gone at once.

    The recorder's thread calls :meth:`hear`; everything else may be asked from others.
    """

    def __init__(self) -> None:
        self._lock = threading.Lock()
        self._listening: Listening | None = None
        self._time: SoundingTime | None = None
        self._finished: list[tuple[float, float]] = []
        self.sounds_now = False

    @property
    def seconds(self) -> float:
        """The time the instrument sounded."""
        time = self._time
        return 0.0 if time is None else time.seconds

    @property
    def heard_s(self) -> float:
        """How long was listened."""
        time = self._time
        return 0.0 if time is None else time.heard_s

    def hear(self, block: "NDArray[np.float32]", sample_rate_hz: int) -> None:
        """Take in a block, shape (n, channels); quick."""
        from analysis import sounding  # noqa: PLC0415 - scipy, only when somebody listens

        state = self._listening
        if state is None or state.sample_rate_hz != sample_rate_hz:
            state = sounding.begin(sample_rate_hz)
        before = self._time or sounding.SoundingTime()
        self._listening, sounds = sounding.listen(state, block)
        after = sounding.count(before, sounds, state.frame_s)
        with self._lock:
            if before.begins_s is not None and after.begins_s != before.begins_s:
                self._finished.append((before.begins_s, before.ends_s or before.begins_s))
            self._time = after
            if len(sounds):
                self.sounds_now = bool(sounds[-1])

    def spans(self, started_at: datetime) -> list[Span]:
        """Give the stretches in which the instrument sounded.

        Parameters
        ----------
        started_at : datetime
            When listening began.
        """
        with self._lock:
            stretches, time = list(self._finished), self._time
        if time is not None and time.begins_s is not None and time.ends_s is not None:
            stretches.append((time.begins_s, time.ends_s))
        start = started_at.astimezone(UTC)
        return [
            (start + timedelta(seconds=begin), start + timedelta(seconds=end))
            for begin, end in stretches
        ]


def uncovered_s(spans: Sequence[Span], covers: Sequence[Span]) -> float:
    """Give the seconds of some stretches that none of others covers.

    Parameters
    ----------
    spans : sequence of (datetime, datetime)
        Stretches that do not overlap.
    covers : sequence of (datetime, datetime)
        May overlap.
    """
    in_order = sorted((start.astimezone(UTC), end.astimezone(UTC)) for start, end in covers)
    total_s = 0.0
    for start, end in spans:
        at, last = start.astimezone(UTC), end.astimezone(UTC)
        for cover_start, cover_end in in_order:
            if cover_end <= at or cover_start >= last:
                continue
            total_s += max(0.0, seconds_between(at, cover_start))
            at = max(at, cover_end)
        total_s += max(0.0, seconds_between(at, last))
    return total_s
