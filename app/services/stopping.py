"""How long work reports its progress and learns that nobody waits for it any more."""

from app.journal.stopping import Progress, ShouldStop, Stopped, never_stop, no_progress

__all__ = [
    "Progress",
    "ShouldStop",
    "Stopped",
    "never_stop",
    "no_progress",
    "part_of",
    "stop_if",
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
