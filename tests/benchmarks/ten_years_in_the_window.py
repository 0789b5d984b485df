"""Ten years of a journal in the window: how long until it shows, and each change of page.

Run ``python -m tests.benchmarks.ten_years_in_the_window [FOLDER]`` with a display, or with
``QT_QPA_PLATFORM=offscreen``; FOLDER is a journal as ``ten_years_of_journal`` leaves it,
copied first, and made where it is not given. For each step two times in milliseconds, the
median of five: until the page is painted, and until everything it asked the journal for
is painted too. The aims: Practice and Calendar complete within 1000 ms after the window
shows, every page change painted within 100 ms.
"""

import contextlib
import shutil
import statistics
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

from PySide6.QtWidgets import QApplication

from app.journal.failures import PlainFailure
from app.store.store import open_store
from app.ui.application import Window, application_object
from app.ui.main_window import MainWindow
from app.wiring import open_workbench
from tests.benchmarks.ten_years_of_journal import fill
from tests.benchmarks.ten_years_of_practice import add_promises, noon

ROUNDS = 5
_LONGEST_S = 3.0


class Stopwatch:
    """Times what happens in a window until it is painted, and until it is complete."""

    def __init__(self, application: QApplication, window: Window) -> None:
        self._application = application
        self._window = window

    def once(self, step: Callable[[], object]) -> tuple[float, float]:
        """Give milliseconds until painted and until complete."""
        start = time.perf_counter()
        step()
        self._application.processEvents()
        painted = time.perf_counter()
        for _ in range(2):
            while self._waiting and time.perf_counter() - start < _LONGEST_S:
                self._application.processEvents()
            self._application.processEvents()
        if self._waiting:
            print("  still at work:", ", ".join(self._waiting))
        return 1000 * (painted - start), 1000 * (time.perf_counter() - start)

    @property
    def _waiting(self) -> list[str]:
        # Takes are measured behind the pages, which do not wait for that.
        running = self._window.jobs._running
        return [job.subject for job in running if not job.subject.startswith("measur")]

    def print(self, words: str, step: Callable[[], object], away: Callable[[], object]) -> None:
        """Take the step five times, going away in between, and print the medians."""
        found = []
        for _ in range(ROUNDS):
            self.once(away)
            found.append(self.once(step))
        painted = statistics.median(one for one, _ in found)
        complete = statistics.median(one for _, one in found)
        worst = max(one for one, _ in found)
        print(f"{words:<38}{painted:9.1f} {worst:9.1f} {complete:10.1f}")


def show(journal: Path, scratch: Path) -> None:
    """Open the window and go through its pages."""
    application = application_object()
    with open_workbench(journal, clock=noon) as bench:
        if not bench.promises.list():
            add_promises(bench)
        # The made takes have no recordings: a thousand failing to be measured at once, each
        # telling the pages, is nothing that a player's journal does.
        for take_id in bench.measuring.waiting():
            with contextlib.suppress(PlainFailure):
                bench.measuring.measure(take_id)
        window = Window(bench, preferences_file=scratch / "window.ini")
        main = window.main
        main.resize(1280, 800)
        watch = Stopwatch(application, window)
        print(f"{'milliseconds':<38}{'painted':>9} {'worst':>9} {'complete':>10}")
        for words, step in (
            ("the window shows, with Practice", main.show),
            ("first time: Calendar", lambda: main.show_page(3)),
        ):
            painted, complete = watch.once(step)
            print(f"{words:<38}{painted:9.1f} {painted:9.1f} {complete:10.1f}")
        _pages(watch, main)
        window.close()


def _pages(watch: Stopwatch, main: MainWindow) -> None:
    calendar = main.calendar
    for at, name in enumerate(("Practice", "Listen", "Compare", "Calendar", "Lesson")):
        other = 0 if at else 3
        watch.print(
            f"to {name}",
            lambda page=at: main.show_page(page),
            lambda page=other: main.show_page(page),
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
        show(made, Path(temporary))
