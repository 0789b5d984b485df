"""Two halves of a long work at the same time, each on a core of its own."""

from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor, wait
from threading import Event
from typing import Final, TypeVar

from analysis.stopping import StopQuestion, stop_if_asked

A = TypeVar("A")
B = TypeVar("B")

_ASKED_EVERY_S: Final = 0.05


def side_by_side(
    first: Callable[[StopQuestion | None], A],
    second: Callable[[StopQuestion | None], B],
    should_stop: StopQuestion | None,
) -> tuple[A, B]:
    """Do two things at once; worth it where both spend their time outside the interpreter.

    Parameters
    ----------
    first, second : callable
        Each is given a question to ask often. Only ``first`` runs in the caller's thread.
    should_stop : callable, optional
        Asked from the caller's thread alone; true raises :class:`analysis.stopping.Stopped`
        once both have stopped.

    Returns
    -------
    tuple
        What both returned. What either of them raises is raised here.
    """
    given_up = Event()
    with ThreadPoolExecutor(1, thread_name_prefix="side-by-side") as pool:
        other = pool.submit(second, given_up.is_set)
        try:
            own = first(should_stop)
            while wait((other,), _ASKED_EVERY_S).not_done:
                stop_if_asked(should_stop)
        except BaseException:
            given_up.set()
            raise
        return own, other.result()
