"""Ten years of a journal: how long the store's questions take.

Run ``python -m tests.benchmarks.ten_years_of_journal [FOLDER]``. Makes 3,650 days,
11,000 takes, 60,000 markers and 11,000 measurements (without recordings), and prints
seconds, and for each question its ratio to reading the same rows with the bare driver
in the same run. With FOLDER the journal is kept there, for looking at it in the window.
"""

import random
import sqlite3
import sys
import tempfile
import time
from collections.abc import Callable
from contextlib import closing
from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path

from app.journal.kinds import MarkerState, MinutesSource
from app.journal.records import RestDay
from app.services.measuring import current_algorithm
from app.store.repair import repair
from app.store.store import Store, open_store
from tests.store.making import (
    make_marker,
    make_measurement,
    make_passage,
    make_session,
    make_take,
)

DAYS, TAKES, MARKERS = 3650, 11_000, 60_000
FIRST_DAY = date(2016, 1, 1)


def fill(store: Store) -> None:
    """Fill a journal with ten years: busier and quieter times, rests, gaps."""
    choose = random.Random(7)
    passages = [make_passage(f"passage {n}") for n in range(40)]
    with store.transaction():
        for passage in passages:
            store.passages.add(passage)
    takes_left, markers_left = TAKES, MARKERS
    for start in range(0, DAYS, 50):
        with store.transaction():
            for n in range(start, start + 50):
                day = FIRST_DAY + timedelta(days=n)
                if choose.random() < 0.1:
                    store.rest_days.put(RestDay(day, planned=choose.random() < 0.5))
                session = make_session(day, minutes=choose.uniform(5, 120))
                store.sessions.add(replace(session, minutes_source=MinutesSource.CLOCK))
                days_left = DAYS - n
                takes_today = min(takes_left, round(choose.uniform(0, 2) * takes_left / days_left))
                takes_today = takes_left if days_left == 1 else takes_today
                for number in range(1, takes_today + 1):
                    take = make_take(session, choose.choice(passages), number)
                    store.takes.add(take)
                    many = min(
                        markers_left, round(choose.uniform(0, 2) * markers_left / takes_left)
                    )
                    takes_left -= 1
                    markers_left -= many
                    for _ in range(many):
                        state = choose.choice(list(MarkerState))
                        at = choose.uniform(0, take.duration_s)
                        weight = choose.randint(1, 3)
                        store.markers.add(make_marker(take, at, state=state, weight=weight))
                    if takes_left >= TAKES // 11:
                        curves = choose.randbytes(30_000)
                        made = make_measurement(take, current_algorithm(), curves=curves)
                    else:  # the last ones, as where a recording was lost
                        made = make_measurement(take, current_algorithm(), summary={}, curves=b"")
                        made = replace(made, failure="The recording is not there.")
                    store.measurements.put(made)


def timed(words: str, ask: Callable[[], object], bare_s: float | None = None) -> None:
    """Ask twice and print the faster answer's time."""
    times = []
    for _ in range(2):
        start = time.perf_counter()
        answer = ask()
        times.append(time.perf_counter() - start)
    size = f"{len(answer):>7}" if hasattr(answer, "__len__") else " " * 7
    ratio = f"{min(times) / bare_s:6.1f} x bare driver" if bare_s else ""
    print(f"{words:<44}{size}{min(times) * 1000:9.1f} ms {ratio}")


def bare(database: Path, table: str) -> float:
    """Read all rows of a table with the bare driver; returns seconds."""
    with closing(sqlite3.connect(database)) as connection:
        start = time.perf_counter()
        connection.execute(f"SELECT * FROM {table}").fetchall()  # noqa: S608
        return time.perf_counter() - start


def main(folder: Path) -> None:
    """Make the journal, ask, rebuild, and print."""
    start = time.perf_counter()
    with open_store(folder) as store:
        fill(store)
        print(f"filled with sidecars in {time.perf_counter() - start:.1f} s")
    start = time.perf_counter()
    with open_store(folder) as store:
        print(f"opened in {time.perf_counter() - start:.3f} s")
        ask(store)
    (folder / "journal.db").rename(folder / "kept.db")
    start = time.perf_counter()
    report = repair(folder, compare_bytes=False)
    print(f"rebuilt {report.takes} takes in {time.perf_counter() - start:.1f} s")
    for path in folder.glob("journal.db*"):
        path.unlink()
    (folder / "kept.db").rename(folder / "journal.db")


def ask(store: Store) -> None:
    """Ask what the pages of the window ask."""
    last = FIRST_DAY + timedelta(days=DAYS)
    take = store.takes.list()[-1]
    year = (date(last.year, 1, 1), last)
    every = (FIRST_DAY, last)
    database = store.folders.database
    timed("all takes", store.takes.list, bare(database, "take"))
    timed("all marker counts", store.markers.counts, bare(database, "marker"))
    timed("all headlines", store.measurements.headlines, bare(database, "measurement"))
    timed("takes of a passage", lambda: store.takes.list(passage_id=take.passage_id))
    timed("takes of a day", lambda: store.takes.of_day(take.practice_day))
    timed("markers of a take", lambda: store.markers.for_take(take.id))
    timed("50 open markers", lambda: store.markers.list_open(50))
    timed(
        "open markers of a passage", lambda: store.markers.list_open(50, passage_id=take.passage_id)
    )
    timed("categories in use", store.markers.categories)
    timed("takes a day, one year", lambda: store.takes.counts_by_day(*year))
    timed("takes a day, ten years", lambda: store.takes.counts_by_day(*every))
    timed("minutes a day, ten years", lambda: store.sessions.minutes_by_day(*every))
    timed("rest days", store.rest_days.list)
    timed("last day of each passage", store.takes.last_of_passages)
    timed("takes waiting to be measured", lambda: store.measurements.waiting(current_algorithm()))
    timed("takes waiting, all of them", lambda: store.measurements.waiting("take-0"))
    timed(
        "one whole measurement",
        lambda: store.measurements.get(
            store.takes.list(last_day=FIRST_DAY + timedelta(days=9))[0].id
        ),
    )
    timed("next number", lambda: store.takes.next_number(take.practice_day, take.passage_id))
    timed("id prefix", lambda: store.takes.starting_with(take.id[:6]))
    timed("a marker added, sidecar too", lambda: store.markers.add(make_marker(take)))
    timed("a backup", store.back_up)


if __name__ == "__main__":
    if len(sys.argv) > 1:
        main(Path(sys.argv[1]))
    else:
        with tempfile.TemporaryDirectory() as temporary:
            main(Path(temporary) / "journal")
