"""Print what the change report of a passage costs: first, again, and after one take more.

    python tests/benchmarks/change_report.py [TAKES]

Takes of one passage, 32 if nothing is said, on every other day; the journal is closed and
opened before each report, so that only what is kept on disk counts. Processor seconds, how
often progress was told, and how long a wish to stop waits for its answer.
"""

import sys
import tempfile
import time
from collections.abc import Callable
from contextlib import closing
from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))
sys.path.insert(0, str(Path(__file__).parent))

import soundfile
from accuracy_alignment import notes_of, play

from app.services.stopping import Stopped
from app.store.store import open_store
from app.wiring import open_workbench

FIRST_DAY = date(2026, 3, 2)
NAME = "Study: opening"
STOP_AFTER = 0.2


def make_journal(journal: Path) -> None:
    """Make a journal with one measured take of the passage."""
    phrase = play(notes_of(31, "violin", repeated=False), 31, 1.0, 0.05, instrument="violin")
    sound = journal.parent / "take.wav"
    soundfile.write(sound, phrase.samples, phrase.sample_rate_hz, subtype="PCM_16")
    with open_workbench(journal) as bench:
        passage = bench.passages.find_or_add(NAME)[0]
        taken = bench.importing.propose([sound], passage.id, FIRST_DAY)
        bench.measuring.measure(bench.importing.file(taken)[0].id)


def add_takes(journal: Path, first: int, count: int) -> None:
    """File copies of the first take, each under a day of its own."""
    with closing(open_store(journal)) as store:
        origin = store.takes.list()[0]
        measured = store.measurements.get(origin.id)
        for number in range(first, first + count):
            file = origin.file.replace("take-1", f"take-{number + 1}")
            path = store.folders.absolute(file)
            path.write_bytes(store.folders.absolute(origin.file).read_bytes())
            later = timedelta(days=2 * number)
            take = replace(
                origin,
                id=f"{number:032x}",
                file=file,
                practice_day=FIRST_DAY + later,
                recorded_at=origin.recorded_at + later,
                number=number + 1,
            )
            store.takes.add(take)
            store.measurements.put(replace(measured, take_id=take.id))


def report(journal: Path, label: str) -> None:
    """Print what one report costs in a journal that was just opened."""
    told: list[float] = []
    with open_workbench(journal) as bench:
        passage = bench.passages.find(NAME)
        begun_s, processor_s = time.perf_counter(), time.process_time()
        found = bench.changes.report(passage.id, told.append)
        print(
            f"{label:<28}{time.process_time() - processor_s:8.2f} s of processor,"
            f"{time.perf_counter() - begun_s:8.2f} s by the wall, {len(found.rows):4d} rows,"
            f" progress told {len(told)} times"
        )


def stopped(journal: Path) -> None:
    """Print how long a wish to stop waits while takes are aligned."""
    asked: list[float] = []
    done: list[float] = [0.0]

    def should_stop() -> bool:
        if done[0] < STOP_AFTER:
            return False
        asked.append(time.perf_counter())
        return True

    with open_workbench(journal) as bench:
        passage = bench.passages.find(NAME)
        tell: Callable[[float], None] = lambda share: done.__setitem__(0, share)  # noqa: E731
        begun_s = time.perf_counter()
        try:
            bench.changes.report(passage.id, tell, should_stop)
        except Stopped:
            waited_ms = 1000.0 * (time.perf_counter() - asked[0])
            print(
                f"stopped after {time.perf_counter() - begun_s:.2f} s, {100 * done[0]:.0f} % done,"
                f" {waited_ms:.1f} ms after it was asked"
            )
        else:
            print("was not stopped")


def main() -> None:
    """Print a row a report."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 32
    with tempfile.TemporaryDirectory() as folder:
        journal = Path(folder) / "journal"
        make_journal(journal)
        add_takes(journal, 1, count - 1)
        stopped(journal)
        report(journal, f"{count} takes, the first time")
        report(journal, "again")
        add_takes(journal, count, 1)
        report(journal, "one take more")


if __name__ == "__main__":
    main()
