"""What the commands print, and how long work is watched and stopped."""

import json
import signal
import sys
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from types import FrameType
from typing import TypeVar

from app.services.stopping import Progress, ShouldStop, Stopped

T = TypeVar("T")

EXPECTED_FAILURE = 2
"""Exit code after what was to be expected and the player can mend."""
INTERRUPTED = 130
"""Exit code after Ctrl-C, as shells expect it (128 + SIGINT)."""


def say(text: str) -> None:
    """Print a line of the result at once: a window may stay open for hours after it."""
    sys.stdout.write(text + "\n")
    sys.stdout.flush()


def remark(text: str) -> None:
    """Print a line beside the result, so that a program reading it is not disturbed."""
    sys.stderr.write(text + "\n")


def on_terminal() -> bool:
    """Say whether somebody reads what :func:`remark` prints."""
    return sys.stderr is not None and sys.stderr.isatty()


def say_json(found: object) -> None:
    """Print one JSON object; a NaN in it is a bug and raises."""
    say(json.dumps(found, ensure_ascii=False, allow_nan=False, indent=2))


@contextmanager
def stopping_on_interrupt() -> Iterator[ShouldStop]:
    """Turn the first Ctrl-C into a wish to stop; a second one interrupts at once."""
    wish = threading.Event()

    def asked(_signal: int, _frame: FrameType | None) -> None:
        if wish.is_set():
            raise KeyboardInterrupt
        wish.set()

    if threading.current_thread() is not threading.main_thread():
        yield wish.is_set
        return
    before = signal.signal(signal.SIGINT, asked)
    try:
        yield wish.is_set
    finally:
        signal.signal(signal.SIGINT, before)


def watched(label: str, work: Callable[[Progress, ShouldStop], T]) -> T:
    """Run long work with a progress bar on stderr; Ctrl-C stops it cleanly.

    The bar shows only on a terminal; elsewhere the work is silent.

    Raises
    ------
    Stopped
        After Ctrl-C.
    """
    with stopping_on_interrupt() as should_stop:
        if not sys.stderr.isatty():
            return work(lambda _share: None, should_stop)
        return _with_bar(label, work, should_stop)


def _with_bar(label: str, work: Callable[[Progress, ShouldStop], T], should_stop: ShouldStop) -> T:
    # Imported only where a bar is shown.
    from rich import progress as bars  # noqa: PLC0415
    from rich.console import Console  # noqa: PLC0415

    columns = (
        bars.TextColumn("{task.description}"),
        bars.BarColumn(),
        bars.TaskProgressColumn(),
        bars.TimeRemainingColumn(),
    )
    with bars.Progress(*columns, console=Console(stderr=True), transient=True) as bar:
        task = bar.add_task(label, total=1.0)
        return work(lambda share: bar.update(task, completed=share), should_stop)


__all__ = [
    "INTERRUPTED",
    "Stopped",
    "remark",
    "say",
    "say_json",
    "stopping_on_interrupt",
    "watched",
]
