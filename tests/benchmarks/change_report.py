"""Print what the change report of a passage costs: first, again, and after one take more.

    python tests/benchmarks/change_report.py [TAKES]

Takes of one passage, 32 if nothing is said, on every other day; the journal is closed and
opened before each report, so that only what is kept on disk counts. Processor seconds, how
often progress was told, the longest time in which nobody asked whether to stop, and how long
wishes to stop had to wait: made at drawn moments by another thread, on copies of the journal
in which nothing is aligned yet.
"""

import random
import shutil
import sys
import tempfile
import threading
import time
from contextlib import closing
from dataclasses import replace
from datetime import date, timedelta
from itertools import pairwise
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))
sys.path.insert(0, str(Path(__file__).parent))

import soundfile
from accuracy_alignment import notes_of, play

from app.services.stopping import Stopped
from app.store.store import open_store
from app.wiring import open_workbench

FIRST_DAY = date(2024, 3, 4)
NAME = "Study: opening"
WISHES = 4
LATEST_WISH_SHARE = 0.5


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


def report(journal: Path, label: str) -> float:
    """Print what one report costs in a journal that was just opened; return its seconds."""
    told: list[float] = []
    asked: list[float] = []

    def should_stop() -> bool:
        asked.append(time.perf_counter())
        return False

    with open_workbench(journal) as bench:
        passage = bench.passages.find(NAME)
        begun_s, processor_s = time.perf_counter(), time.process_time()
        found = bench.changes.report(passage.id, told.append, should_stop)
        ended_s = time.perf_counter()
        moments = [begun_s, *asked, ended_s]
        unasked_s = max(after - before for before, after in pairwise(moments))
        print(
            f"{label:<28}{time.process_time() - processor_s:8.2f} s of processor,"
            f"{ended_s - begun_s:8.2f} s by the wall, {len(found.rows):4d} rows,"
            f" progress told {len(told)} times, asked {len(asked)} times,"
            f" longest without {1000.0 * unasked_s:.0f} ms"
        )
    return ended_s - begun_s


def waited_s(journal: Path, wish_after_s: float) -> float | None:
    """Give how long a wish to stop waits; ``None`` where the report was ready before."""
    wished: list[float] = []

    def wish() -> None:
        wished.append(time.perf_counter())

    with open_workbench(journal) as bench:
        passage = bench.passages.find(NAME)
        timer = threading.Timer(wish_after_s, wish)
        timer.start()
        try:
            bench.changes.report(passage.id, lambda _: None, lambda: bool(wished))
        except Stopped:
            return time.perf_counter() - wished[0]
        finally:
            timer.cancel()
            timer.join()
    return None


def main() -> None:
    """Print a row a report."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 32
    draw = random.Random(count)
    with tempfile.TemporaryDirectory() as folder:
        journal = Path(folder) / "journal"
        make_journal(journal)
        add_takes(journal, 1, count - 1)
        untouched = Path(folder) / "untouched"
        shutil.copytree(journal, untouched)
        took_s = report(journal, f"{count} takes, the first time")
        report(journal, "again")
        add_takes(journal, count, 1)
        report(journal, "one take more")
        for number in range(WISHES):
            copy = Path(folder) / f"copy {number}"
            shutil.copytree(untouched, copy)
            after_s = draw.uniform(0.0, LATEST_WISH_SHARE * took_s)
            waited = waited_s(copy, after_s)
            answer = "ready before" if waited is None else f"waited {1000.0 * waited:.0f} ms"
            print(f"wish to stop after {after_s:.2f} s: {answer}")


if __name__ == "__main__":
    main()
