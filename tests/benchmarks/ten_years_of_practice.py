"""Ten years of a journal: how long what the Practice and Calendar pages ask takes.

Run ``python -m tests.benchmarks.ten_years_of_practice [FOLDER]``; FOLDER is a journal as
``ten_years_of_journal`` leaves it, made first where it is not given. Adds promises of
every kind, assignments and dates, and prints processor seconds, and for each question
its ratio to reading all minutes by day in the same run.
"""

import sys
import tempfile
import time
from collections.abc import Callable
from datetime import date, datetime, timedelta
from pathlib import Path

from app.journal.assignments import OccasionKind
from app.journal.promises import PromiseRule, Stretch
from app.services.workbench import Workbench
from app.store.store import open_store
from app.wiring import open_workbench
from tests.benchmarks.ten_years_of_journal import DAYS, FIRST_DAY, fill

TODAY = FIRST_DAY + timedelta(days=DAYS)


def noon() -> datetime:
    """Give noon of the last day."""
    return datetime(TODAY.year, TODAY.month, TODAY.day, 12).astimezone()


def timed(words: str, ask: Callable[[], object], reference_s: float | None = None) -> float:
    """Ask three times and print the fastest answer's time."""
    times = []
    for _ in range(3):
        start = time.process_time()
        ask()
        times.append(time.process_time() - start)
    ratio = f"{min(times) / reference_s:7.1f} x" if reference_s else ""
    print(f"{words:<44}{min(times) * 1000:9.1f} ms {ratio}")
    return min(times)


def add_promises(bench: Workbench) -> None:
    """Make five promises over all ten years, assignments and an audition."""
    rules = (
        PromiseRule(FIRST_DAY, Stretch.IN_TOTAL, 10_000),
        PromiseRule(FIRST_DAY, Stretch.IN_A_ROW, 5_000, rest_days=50, rest_weekdays=(6,)),
        PromiseRule(FIRST_DAY, Stretch.IN_TOTAL, 10_000, minimum_minutes=45, minimum_takes=1),
        PromiseRule(TODAY - timedelta(days=365), Stretch.IN_TOTAL, 300, rest_days=20),
        PromiseRule(TODAY - timedelta(days=30), Stretch.IN_A_ROW, 100, minimum_takes=1),
    )
    for number, rule in enumerate(rules):
        bench.promises.make(f"promise {number}", rule)
    passages = bench.passages.list()
    bench.assignments.add(TODAY + timedelta(days=7), "even bow", passage_id=passages[0].id)
    bench.assignments.add_occasion(
        TODAY + timedelta(days=21), OccasionKind.AUDITION, "", [p.id for p in passages[:3]]
    )


def main(folder: Path) -> None:
    """Ask what the pages ask, and print."""
    with open_workbench(folder, clock=noon) as bench:
        if not bench.promises.list():
            add_promises(bench)
        store = bench.promises._store
        by_day = timed("reference: minutes of ten years by day",
                       lambda: store.sessions.minutes_by_day(FIRST_DAY, TODAY))  # fmt: skip
        timed("five promises, three of ten years", bench.promises.list, by_day)
        timed("numbers of a clip", lambda: bench.promises.numbers_for(TODAY), by_day)
        timed("open assignments and dates", bench.assignments.open, by_day)
        timed("a plan for 60 minutes", lambda: bench.planning.propose(60), by_day)
        timed("today's kept plan", bench.planning.today, by_day)
        timed("what the record shows", bench.record.view, by_day)
        timed("minutes against change", bench.record.associations, by_day)
        timed("today, one look", bench.practising.today, by_day)
        timed(
            "a year of the calendar", lambda: bench.practising.year(date(2024, 1, 1).year), by_day
        )


if __name__ == "__main__":
    if len(sys.argv) > 1:
        main(Path(sys.argv[1]))
    else:
        with tempfile.TemporaryDirectory() as temporary:
            journal = Path(temporary) / "journal"
            with open_store(journal) as filled:
                fill(filled)
            main(journal)
