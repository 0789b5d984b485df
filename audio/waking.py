"""Notice that the computer slept, or that the program was stopped for a while."""

import sys
import threading
import time
from typing import Final

_LONGEST_NAP_S = 10.0
"""Other work of the program may hold a thread up for seconds, but not for this long."""


def sleepless_s() -> float:
    """Read a clock that goes on while the computer sleeps.

    Returns
    -------
    float
        Seconds from any fixed moment.
    """
    # The plain monotonic clock stands still during sleep on Linux and macOS.
    return time.monotonic() if _CLOCK is None else time.clock_gettime(_CLOCK)


def wait_awake(event: threading.Event, timeout_s: float) -> bool:
    """Wait, and tell whether the time really was spent waiting.

    Parameters
    ----------
    event : threading.Event
        Ends the waiting early.
    timeout_s : float
        Wait no longer than this.

    Returns
    -------
    bool
        False when the computer slept or the program was stopped meanwhile.
    """
    begun_s = sleepless_s()
    event.wait(timeout_s)
    return sleepless_s() - begun_s < timeout_s + _LONGEST_NAP_S


def _clock_of_this_system() -> int | None:
    name = {"linux": "CLOCK_BOOTTIME", "darwin": "CLOCK_MONOTONIC_RAW"}.get(sys.platform)
    return None if name is None else getattr(time, name, None)


_CLOCK: Final = _clock_of_this_system()
