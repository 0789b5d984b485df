"""Reading a score file in a process of its own, with an end to it.

A damaged file can keep an importer busy for ever, or fill the memory; a process can be
stopped, a thread cannot.
"""

import time
from collections.abc import Callable
from concurrent.futures.process import BrokenProcessPool
from pathlib import Path
from typing import Final

from app.journal.failures import PlainFailure
from app.journal.scores import Score
from app.services.score_files import damaged, read_bytes, shortened
from app.services.stopping import ShouldStop, Stopped, never_stop
from app.services.worker_pool import in_workers

_STARTING_S: Final = 20.0
_SHORTEST_S: Final = 8.0
_SECONDS_A_MEGABYTE: Final = 60.0


def read_apart(path: Path, should_stop: ShouldStop = never_stop) -> tuple[Score, ...]:
    """Read the parts of a score file in a worker process.

    Parameters
    ----------
    path : Path
    should_stop : callable
        Asked every fifth of a second.

    Raises
    ------
    PlainFailure
        Where the file cannot be read as a score, or takes longer than one of its size
        may.
    Stopped
        Once `should_stop` says so.
    """
    size = len(read_bytes(path))  # so that a missing file is said at once
    limit_s = _SHORTEST_S + _SECONDS_A_MEGABYTE * size / 1e6
    begun = time.monotonic()
    ready_at: list[float] = []
    timed_out = False

    def stop() -> bool:
        nonlocal timed_out
        since = ready_at[0] if ready_at else begun + _STARTING_S
        timed_out = time.monotonic() - since > limit_s
        return timed_out or should_stop()

    try:
        calls: list[tuple[Callable[..., object], tuple[object, ...]]] = [
            (_ready, ()),
            (_parts_or_failure, (str(path),)),
        ]
        with in_workers(calls, 1, stop) as answers:
            next(answers)
            ready_at.append(time.monotonic())
            found = next(answers)
    except BrokenProcessPool as problem:
        raise damaged(path.name) from problem
    except Stopped:
        if timed_out:
            raise PlainFailure(
                f"{shortened(path.name)} takes too long to read; it is probably damaged.",
                "Write it out again, or take the part alone.",
            ) from None
        raise
    if not isinstance(found, tuple):
        raise damaged(path.name)
    if found and isinstance(found[0], str):
        raise PlainFailure(str(found[0]), str(found[1]))
    return tuple(score for score in found if isinstance(score, Score))


def _ready() -> None:
    """Load what reading needs; the time to read begins after it."""
    import music21  # noqa: F401, PLC0415 - the point of it

    import app.services.score_reading  # noqa: F401, PLC0415


def _parts_or_failure(path: str) -> tuple[Score, ...] | tuple[str, str]:
    from app.services.score_reading import read_parts  # noqa: PLC0415 - in the worker alone

    try:
        return read_parts(Path(path))
    except PlainFailure as failure:  # its own way of being made does not survive the pipe
        return failure.sentence, failure.next_step
