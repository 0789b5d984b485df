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


def telling(
    should_stop: StopQuestion | None, progress: Progress | None, usual_questions: int
) -> StopQuestion | None:
    """Return the question so that each time it is asked the share done moves on.

    For work whose length is not known beforehand: half of the way is told after the usual
    number of questions, and the end is never reached.
    """
    if progress is None:
        return should_stop
    whole, asked = progress, 0

    def question() -> bool:
        nonlocal asked
        asked += 1
        whole(asked / (asked + usual_questions))
        return should_stop is not None and should_stop()

    return question


def tell(progress: Progress | None, share: float) -> None:
    """Tell the share done, 0 to 1, if somebody listens."""
    if progress is not None:
        progress(share)
