"""Stopping long work from outside, and telling how far it is."""

from collections.abc import Callable

StopQuestion = Callable[[], bool]
Progress = Callable[[float], None]


class Stopped(Exception):  # noqa: N818 - it is a wish fulfilled, not an error
    """Raised inside a measurement when the caller asked for it to stop."""


def stop_if_asked(should_stop: StopQuestion | None) -> None:
    """Raise :class:`Stopped` when the caller's question answers yes."""
    if should_stop is not None and should_stop():
        raise Stopped


def part_of(progress: Progress | None, first: float, last: float) -> Progress | None:
    """Return a progress whose 0 to 1 is only the part ``first`` to ``last`` of another's."""
    if progress is None:
        return None
    whole = progress

    def told(share: float) -> None:
        whole(first + (last - first) * share)

    return told


def tell(progress: Progress | None, share: float) -> None:
    """Tell the share done, 0 to 1, if somebody listens."""
    if progress is not None:
        progress(share)
