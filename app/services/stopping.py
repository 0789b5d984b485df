"""How long work reports its progress and learns that nobody waits for it any more."""

from collections.abc import Callable

Progress = Callable[[float], None]
"""Told how far the work is, 0 to 1."""

ShouldStop = Callable[[], bool]
"""Asked now and then; true once the work is no longer wanted."""


class Stopped(Exception):  # noqa: N818 - not an error: the player asked for it
    """The work was stopped on request and left nothing half-made."""


def no_progress(_share: float) -> None:
    """Take a progress report and do nothing with it."""


def never_stop() -> bool:
    """Say that the work is still wanted."""
    return False


def stop_if(should_stop: ShouldStop) -> None:
    """Raise :class:`Stopped` where the work is no longer wanted."""
    if should_stop():
        raise Stopped


def part_of(progress: Progress, start: float, end: float) -> Progress:
    """Map the progress of one step, 0 to 1, onto its share of the whole work."""

    def report(share: float) -> None:
        progress(start + (end - start) * min(1.0, max(0.0, share)))

    return report
