"""Ten years of a journal in the window: how long until it shows, and each change of page.

Run ``python -m tests.benchmarks.ten_years_in_the_window [FOLDER]`` with a display, or with
``QT_QPA_PLATFORM=offscreen``; FOLDER is a journal as ``ten_years_of_journal`` leaves it,
copied first, and made where it is not given. For each step, in milliseconds, the median
of five: until the page is painted, until everything it asked the journal for is painted
too, the processor time of all threads until then, and that of the longest stretch in
which the window's own thread answers nobody (several events may lie in one); after a
stroke the ratio to the same step in an empty journal, in the same run. The aims: Practice
and Calendar complete within 1000 ms after the window shows, every page change painted
within 100 ms, no stretch longer than 50 ms. Between the first step and the others the
pages are made ahead, as the window does by itself once it is shown; the longest part of
that is printed too.
"""

import contextlib
import shutil
import statistics
import sys
import tempfile
import threading
import time
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path

from PySide6.QtWidgets import QApplication

from app.journal.failures import PlainFailure
from app.services.stopping import never_stop, no_progress
from app.store.store import open_store
from app.ui.application import Window, application_object
from app.ui.main_window import MainWindow
from app.ui.models.making_ahead import load_modules
from app.wiring import open_workbench
from tests.benchmarks.ten_years_of_journal import fill
from tests.benchmarks.ten_years_of_practice import add_promises, noon

ROUNDS = 5
_LONGEST_S = 30.0


@dataclass(frozen=True, slots=True)
class Times:
    """Milliseconds until painted, complete, of the processor, and of the longest stretch."""

    painted: float
    complete: float
    processor: float
    longest: float


class Stopwatch:
    """Times what happens in a window until it is painted, and until it is complete.

    Parameters
    ----------
    application : QApplication
    window : Window
    reference : mapping, optional
        What the same steps took elsewhere; printed as ratios.
    """

    def __init__(
        self, application: QApplication, window: Window, reference: Mapping[str, Times]
    ) -> None:
        self._application = application
        self._window = window
        self._reference = reference
        self.found: dict[str, Times] = {}
        self._longest_s = 0.0

    def once(self, step: Callable[[], object]) -> Times:
        """Take the step once."""
        start, processor = time.perf_counter(), time.process_time()
        self._longest_s = 0.0
        self._unbroken(step)
        self._unbroken(self._application.processEvents)
        painted = time.perf_counter()
        for _ in range(2):
            while self._waiting and time.perf_counter() - start < _LONGEST_S:
                self._unbroken(self._application.processEvents)
                time.sleep(0.0005)  # watching takes no processor time from what is watched
            self._unbroken(self._application.processEvents)
        if self._waiting:
            print("  still at work:", ", ".join(self._waiting))
        return Times(
            1000 * (painted - start),
            1000 * (time.perf_counter() - start),
            1000 * (time.process_time() - processor),
            1000 * self._longest_s,
        )

    def _unbroken(self, stretch: Callable[[], object]) -> None:
        before = time.thread_time()
        stretch()
        self._longest_s = max(self._longest_s, time.thread_time() - before)

    def make_ahead(self) -> None:
        """Make the pages as the window does while nobody waits; print the longest parts."""
        main, took = self._window.main, []
        thread = threading.Thread(target=load_modules, args=(no_progress, never_stop))
        thread.start()
        thread.join()
        while True:
            before = time.thread_time()
            more = main.ahead.make_next()
            made_s = time.thread_time() - before
            self._application.processEvents()
            took.append((1000 * made_s, 1000 * (time.thread_time() - before - made_s)))
            if not more:
                break
        longest = ", ".join(f"{ms:.0f}" for ms in sorted((a for a, _ in took), reverse=True)[:5])
        after = max(events for _, events in took)
        print(
            f"pages made ahead in {len(took)} parts; the longest took {longest} ms, "
            f"what follows one at most {after:.0f} ms of the window's thread"
        )

    @property
    def _waiting(self) -> list[str]:
        # Takes are measured behind the pages, which do not wait for that.
        running = self._window.jobs._running
        return [job.subject for job in running if not job.subject.startswith("measur")]

    def print(
        self, words: str, step: Callable[[], object], away: Callable[[], object] | None = None
    ) -> None:
        """Take the step five times, going away in between, or once; print the medians."""
        found = []
        for _ in range(ROUNDS if away else 1):
            if away:
                self.once(away)
            found.append(self.once(step))
        middle = Times(
            *(statistics.median(getattr(one, part) for one in found) for part in Times.__slots__)
        )
        worst = max(one.painted for one in found)
        self.found[words] = middle
        line = f"{words:<32}{worst:8.1f}"
        for part in Times.__slots__:
            took = getattr(middle, part)
            line += f"{took:9.1f}"
            if words in self._reference:
                line += f" /{took / getattr(self._reference[words], part):5.1f}"
        print(line)


def show(
    journal: Path, scratch: Path, reference: Mapping[str, Times] | None = None
) -> Mapping[str, Times]:
    """Open the window and go through its pages."""
    application = application_object()
    with open_workbench(journal, clock=noon) as bench:
        if not bench.promises.list() and bench.passages.list():
            add_promises(bench)
        # The made takes have no recordings. In a journal that was made for an older measuring
        # thousands would fail at once, each telling the pages: no player's journal does that.
        for take_id in bench.measuring.waiting():
            with contextlib.suppress(PlainFailure):
                bench.measuring.measure(take_id)
        window = Window(bench, preferences_file=scratch / "window.ini")
        main = window.main
        main.resize(1280, 800)
        watch = Stopwatch(application, window, reference or {})
        print(
            f"{'milliseconds':<32}{'worst':>8}{'painted':>9}{'complete':>9}"
            f"{'processor':>10}{'longest':>9}"
        )
        watch.print("the window shows, with Practice", main.show)
        watch.make_ahead()
        watch.print("first time: Calendar", lambda: main.show_page(3))
        _pages(watch, main)
        window.close()
        return watch.found


def _pages(watch: Stopwatch, main: MainWindow) -> None:
    calendar, desk = main.calendar, main.desk
    takes = desk.workbench.filing.takes()
    for at, name in enumerate(("Practice", "Listen", "Compare", "Calendar", "Lesson")):
        other = 0 if at else 3
        watch.print(
            f"to {name}",
            lambda page=at: main.show_page(page),
            lambda page=other: main.show_page(page),
        )
    main.show_page(4)
    watch.print(
        "Lesson: the week before",
        lambda: desk.keys.action("lesson.previous").trigger(),
        lambda: desk.keys.action("lesson.this_week").trigger(),
    )
    if takes:
        watch.print(
            "to a take on Listen",
            lambda: main.listen_to(takes[0].id),
            lambda: main.show_page(0),
        )
    main.show_page(3)
    this_year = noon().year
    for words, year in (("the year before", this_year - 1), ("five years back", this_year - 5)):
        watch.print(
            words,
            lambda wanted=year: calendar.show_year(wanted),
            lambda: calendar.show_year(this_year),
        )
    watch.print("what the record shows", calendar.show_record, calendar.show_record)
    watch.print("all promises", calendar.toggle_promises, calendar.toggle_promises)
    watch.print("kinds of day", calendar.show_names, calendar.show_names)


if __name__ == "__main__":
    with tempfile.TemporaryDirectory() as temporary:
        made = Path(temporary) / "journal"
        if len(sys.argv) > 1:
            shutil.copytree(sys.argv[1], made)
        else:
            with open_store(made) as filled:
                fill(filled)
        print("An empty journal, for reference")
        empty = show(Path(temporary) / "empty", Path(temporary))
        print("Ten years; after the stroke: times as long as in the empty journal")
        show(made, Path(temporary), empty)
