"""A few values that are likely to be asked for again."""

import threading
from collections import OrderedDict
from collections.abc import Hashable
from typing import Generic, TypeVar

K = TypeVar("K", bound=Hashable)
V = TypeVar("V")


class Latest(Generic[K, V]):
    """Keeps the values that were put or asked for last; safe on several threads.

    Parameters
    ----------
    most : int
        How many are kept.
    """

    def __init__(self, most: int) -> None:
        self._most = most
        self._kept: OrderedDict[K, V] = OrderedDict()
        self._lock = threading.Lock()

    def get(self, key: K) -> V | None:
        """Give what is kept for a key; none where there is nothing, or nothing any more."""
        with self._lock:
            if key in self._kept:
                self._kept.move_to_end(key)
            return self._kept.get(key)

    def clear(self) -> None:
        """Let go of everything."""
        with self._lock:
            self._kept.clear()

    def forget(self, key: K) -> None:
        """Let go of what is kept for a key, if anything is."""
        with self._lock:
            self._kept.pop(key, None)

    def put(self, key: K, value: V) -> None:
        """Keep a value, and let go of the one that nobody asked for longest."""
        with self._lock:
            self._kept[key] = value
            self._kept.move_to_end(key)
            while len(self._kept) > self._most:
                self._kept.popitem(last=False)
