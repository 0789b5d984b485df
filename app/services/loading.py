"""Loading many modules: without looking for garbage in between, and a part at a time."""

import gc
from collections.abc import Iterator
from contextlib import contextmanager
from importlib import import_module
from typing import Final

from app.services.stopping import ShouldStop, never_stop, stop_if

# What the measuring code takes along, in parts of a fraction of a second each.
_BEFORE_MEASURING: Final = (
    "numpy", "scipy.special", "numba", "scipy.ndimage", "analysis.notes", "analysis.take",
)  # fmt: skip


def load_measuring(should_stop: ShouldStop = never_stop) -> None:
    """Load the measuring code, asking in between whether anybody still waits for it.

    Raises
    ------
    Stopped
        Once `should_stop` says so.
    """
    for name in _BEFORE_MEASURING:
        stop_if(should_stop)
        import_module(name)


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
