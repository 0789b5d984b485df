"""Runs the sections' pieces in worker processes and puts the table together."""

import os
import time
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Final

from app.services.accuracy import (
    alignment,
    change,
    double_stops,
    intonation,
    loudness,
    notes,
    tempo,
    vibrato,
)
from app.services.accuracy.table import CheckReport, Piece, Section, Tally, add_up
from app.services.stopping import (
    Progress,
    ShouldStop,
    never_stop,
    no_progress,
    stop_if,
)
from app.services.worker_pool import in_workers

_MOST_WORKERS: Final = 4


def sections() -> tuple[Section, ...]:
    """Give the sections of the table in their order."""
    return (
        notes.section(),
        vibrato.section(),
        double_stops.section(),
        intonation.section(),
        tempo.section(),
        loudness.section(),
        alignment.section(),
        change.section(),
    )


def run_check(
    progress: Progress = no_progress,
    should_stop: ShouldStop = never_stop,
    *,
    chosen: tuple[Section, ...] | None = None,
    workers: int | None = None,
) -> CheckReport:
    """Measure everything whose truth is known, and give the table.

    Parameters
    ----------
    chosen : tuple of Section, optional
        All of them by default.
    workers : int, optional
        Processes that measure; as many as there are processors (at most four) by
        default, 0: in this process. The numbers do not depend on it.

    Raises
    ------
    Stopped
        Once `should_stop` says so.
    """
    from analysis.take import ALGORITHM  # noqa: PLC0415 - numba, only when the check runs

    begun = time.monotonic()
    table = sections() if chosen is None else chosen
    tasks = [(section, piece) for section in table for piece in section.pieces]
    tallies: dict[str, list[Tally]] = {section.name: [] for section in table}
    count = min(os.cpu_count() or 1, _MOST_WORKERS) if workers is None else workers
    with _measured(tasks, count, should_stop) as results:
        for done, ((section, _piece), tally) in enumerate(zip(tasks, results, strict=True), 1):
            tallies[section.name].append(tally)
            progress(done / len(tasks))
    return CheckReport(
        algorithm=ALGORITHM,
        sections=tuple(
            (section.name, section.rows(add_up(tallies[section.name]))) for section in table
        ),
        elapsed_s=time.monotonic() - begun,
    )


@contextmanager
def _measured(
    tasks: list[tuple[Section, Piece]], workers: int, should_stop: ShouldStop
) -> Iterator[Iterator[Tally]]:
    """Give the tallies in the order of the tasks."""
    if workers == 0:
        yield _one_by_one(tasks, should_stop)
        return
    calls = [(section.measure, (piece,)) for section, piece in tasks]
    with in_workers(calls, workers, should_stop) as tallies:
        yield tallies


def _one_by_one(tasks: list[tuple[Section, Piece]], should_stop: ShouldStop) -> Iterator[Tally]:
    for section, piece in tasks:
        stop_if(should_stop)
        yield section.measure(piece)
