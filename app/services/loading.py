"""Loading many modules without looking for garbage in between."""

import gc
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def uncollected() -> Iterator[None]:
    """Rest the garbage collector, for the start of the program.

    What is loaded stays until the end, and the collector would walk through it dozens of
    times. Afterwards it leaves these objects out (:func:`leave_out`).
    """
    was_enabled = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        leave_out()
        if was_enabled:
            gc.enable()


def leave_out() -> None:
    """Let the garbage collector leave out all that there is now.

    Every thread waits while it looks through everything; with all libraries loaded that
    takes some 200 ms.
    """
    gc.freeze()


def take_in_again() -> None:
    """Let the collector look through everything again, when a window has closed."""
    gc.unfreeze()
