"""How long work reports its progress and learns that nobody waits for it any more."""

from collections.abc import Iterator
from contextlib import contextmanager

from app.journal.stopping import Progress, ShouldStop, Stopped, never_stop, no_progress

__all__ = [
    "Progress",
    "ShouldStop",
    "Stopped",
    "never_stop",
    "no_progress",
    "part_of",
    "stop_if",
    "stopped_by",
]


def stop_if(should_stop: ShouldStop) -> None:
    """Raise :class:`Stopped` where the work is no longer wanted."""
    if should_stop():
        raise Stopped


def part_of(progress: Progress, start: float, end: float) -> Progress:
    """Map the progress of one step, 0 to 1, onto its share of the whole work."""

    def report(share: float) -> None:
        progress(start + (end - start) * min(1.0, max(0.0, share)))

    return report


@contextmanager
def stopped_by(*kinds: type[Exception]) -> Iterator[None]:
    """Turn another room's way of saying that it was stopped into :class:`Stopped`."""
    try:
        yield
    except kinds as wish:
        raise Stopped from wish
