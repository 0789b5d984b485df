"""Stopping long work from outside."""

from collections.abc import Callable

StopQuestion = Callable[[], bool]


class Stopped(Exception):  # noqa: N818 - it is a wish fulfilled, not an error
    """Raised inside a measurement when the caller asked for it to stop."""


def stop_if_asked(should_stop: StopQuestion | None) -> None:
    """Raise :class:`Stopped` when the caller's question answers yes."""
    if should_stop is not None and should_stop():
        raise Stopped
