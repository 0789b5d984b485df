"""Long work in worker processes: results in order, and an end at once when it is stopped."""

import multiprocessing
import signal
from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import FIRST_COMPLETED, Future, ProcessPoolExecutor, wait
from contextlib import contextmanager
from typing import Final, TypeVar

from app.services.stopping import ShouldStop, Stopped

T = TypeVar("T")

_POLL_S: Final = 0.2


@contextmanager
def in_workers(
    calls: Iterable[tuple[Callable[..., T], tuple[object, ...]]],
    workers: int,
    should_stop: ShouldStop,
) -> Iterator[Iterator[T]]:
    """Run calls in worker processes; give their results in order.

    Parameters
    ----------
    calls : iterable of (function, arguments)
        Both must be picklable.
    workers : int
        Processes, at least 1; none is left when the block ends, however it ends.
    should_stop : callable
        Asked while waiting; the results raise ``Stopped`` once it says so.
    """
    others = set(multiprocessing.active_children())
    pool = ProcessPoolExecutor(
        workers,
        # A forked copy of a process with threads (Qt, PortAudio) may lock up.
        mp_context=multiprocessing.get_context("spawn"),
        initializer=_leave_interrupts_to_the_parent,
    )
    try:
        futures = [pool.submit(function, *arguments) for function, arguments in calls]
        yield (_awaited(future, should_stop) for future in futures)
    except BaseException:
        # What the workers still do is no longer wanted.
        for worker in set(multiprocessing.active_children()) - others:
            worker.terminate()
        raise
    finally:
        pool.shutdown(wait=True, cancel_futures=True)


def _awaited(future: "Future[T]", should_stop: ShouldStop) -> T:
    while True:
        if should_stop():
            raise Stopped
        done, _ = wait([future], timeout=_POLL_S, return_when=FIRST_COMPLETED)
        if done:
            return future.result()


def _leave_interrupts_to_the_parent() -> None:
    signal.signal(signal.SIGINT, signal.SIG_IGN)
