"""Loading many modules without looking for garbage in between."""

import gc
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def uncollected() -> Iterator[None]:
    """Rest the garbage collector, for the start of the program.

    What is loaded stays until the end, and the collector would walk through it dozens of
    times. Afterwards it leaves these objects out.
    """
    was_enabled = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        gc.freeze()
        if was_enabled:
            gc.enable()
