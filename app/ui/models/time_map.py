"""Places a moment of one take on the time axis of another."""

from bisect import bisect_right
from collections.abc import Sequence


class TimeMap:
    """A monotone map made of straight pieces.

    Parameters
    ----------
    from_s, to_s : sequences of float
        Equal musical moments, seconds, not decreasing, same length.
    """

    def __init__(self, from_s: Sequence[float], to_s: Sequence[float]) -> None:
        self._from = list(from_s)
        self._to = list(to_s)

    def __call__(self, moment_s: float) -> float:
        """Return the moment's place; outside the map it moves along with the edge."""
        if not self._from:
            return moment_s
        at = bisect_right(self._from, moment_s)
        if at == 0:
            return self._to[0] + (moment_s - self._from[0])
        if at == len(self._from):
            return self._to[-1] + (moment_s - self._from[-1])
        left, right = self._from[at - 1], self._from[at]
        share = (moment_s - left) / (right - left) if right > left else 0.0
        return self._to[at - 1] + share * (self._to[at] - self._to[at - 1])
