"""How long work reports its progress and is asked to stop."""

from collections.abc import Callable

Progress = Callable[[float], None]
"""Told the share that is done, 0 to 1."""

ShouldStop = Callable[[], bool]
"""Asked now and then; true once the player no longer wants the result."""


class Stopped(Exception):  # noqa: N818 - a wish that was fulfilled, not an error
    """Long work was stopped on request and left nothing half-made."""


def no_progress(_share: float) -> None:
    """Report to nobody."""


def never_stop() -> bool:
    """Work until the end."""
    return False
