"""Does the window grow? Memory over 2,000 page changes and 200 takes recorded in it.

    python -m tests.benchmarks.memory_in_the_window [--pages 2000] [--takes 200]

The real window, offscreen or on a display, on a small real journal; takes are recorded
through the virtual room, filed, measured and opened on the Listen page. Printed at
intervals: resident memory (``/proc/self/statm``, after the allocator was asked to give back
what is free), Python objects, Qt objects below the window, top-level widgets, threads and
open files. The slope is Theil and Sen's line through everything after the first quarter,
when all that is loaded once has been loaded; its interval of 95 % and a bound are printed
beside it. With ``--trace`` the
lines of code whose memory grew most are named (slower by far).
"""

import argparse
import ctypes
import gc
import os
import sys
import tempfile
import threading
import time
import tracemalloc
from collections.abc import Callable
from contextlib import suppress
from datetime import date, timedelta
from pathlib import Path

import numpy as np
from scipy.stats import theilslopes

from app.services.workbench import Workbench
from app.ui.application import Window, application_object
from app.ui.models.recorder import RecorderState
from app.ui.widgets.rail import PAGES
from app.wiring import open_workbench
from tests.benchmarks.soak_house import somebody_plays
from tests.virtual_room import VirtualRoom

ROOT = Path(__file__).resolve().parents[2]
STOCK = ROOT / "sample_audio" / "takes"
FIRST_TAKES = 6
TAKE_S = 1.2
# kB for each page change and each take. A page keeps nothing of the one before; a take
# stays in lists, choosers and pictures: about a thousand small objects.
MOST_KB_A_PAGE = 2.0
MOST_KB_A_TAKE = 100.0
_PAGE_BYTES = os.sysconf("SC_PAGE_SIZE") if hasattr(os, "sysconf") else 4096


class _Heap(ctypes.Structure):
    """What glibc's ``mallinfo2`` tells."""

    _fields_ = tuple(
        (name, ctypes.c_size_t)
        for name in (
            *("arena", "ordblks", "smblks", "hblks", "hblkhd"),
            *("usmblks", "fsmblks", "uordblks", "fordblks", "keepcost"),
        )
    )


def _heap_bytes() -> int:
    """Give what the allocator has given out, NumPy's arrays included; 0 where it cannot say."""
    with suppress(OSError, AttributeError):
        ask = ctypes.CDLL("libc.so.6").mallinfo2
        ask.restype = _Heap
        told = ask()
        return int(told.uordblks + told.hblkhd)
    return 0


class Scales:
    """Weighs the process now and then."""

    def __init__(self, window: Window) -> None:
        self._window = window
        self.weighed: list[tuple[int, float]] = []

    def weigh(self, at: int, *, is_told: bool) -> None:
        """Weigh, and print a line."""
        from PySide6.QtCore import QObject
        from PySide6.QtWidgets import QApplication

        gc.collect()
        with suppress(OSError, AttributeError):
            ctypes.CDLL("libc.so.6").malloc_trim(0)
        resident = int(Path("/proc/self/statm").read_text(encoding="ascii").split()[1])
        resident_kb = resident * _PAGE_BYTES / 1024
        self.weighed.append((at, resident_kb))
        if not is_told:
            return
        heap_mb = _heap_bytes() / 2**20
        qt_objects = len(self._window.main.findChildren(QObject))
        print(
            f"{at:6d} {resident_kb / 1024:9.1f} {heap_mb:9.1f} {len(gc.get_objects()):9d}"
            f" {qt_objects:8d} {len(QApplication.topLevelWidgets()):6d}"
            f" {threading.active_count():7d}"
            f" {len(list(Path('/proc/self/fd').iterdir())):6d}",
            flush=True,
        )

    def verdict(self, each: str, bound_kb: float) -> bool:
        """Print the slope after the first quarter; True where it is surely within the bound."""
        at, resident_kb = np.array(self.weighed[len(self.weighed) // 4 :]).T
        slope_kb, _, low_kb, high_kb = theilslopes(resident_kb, at, 0.95)
        words = "does not grow" if high_kb <= bound_kb else "may grow: take more"
        print(
            f"slope {slope_kb:+.2f} kB a {each}, between {low_kb:+.2f} and {high_kb:+.2f}"
            f" (bound {bound_kb:g}): {'GROWS' if low_kb > bound_kb else words}\n",
            flush=True,
        )
        return bool(high_kb <= bound_kb)


class Walker:
    """Goes through the window as fast as it lets one."""

    def __init__(self, bench: Workbench, scratch: Path) -> None:
        self._application = application_object()
        self.window = Window(bench, preferences_file=scratch / "window.ini")
        self.main = self.window.main
        self.main.resize(1280, 800)
        self.main.show()
        self.settle()

    def settle(self) -> None:
        """Let everything arrive and be painted."""
        for _ in range(2):
            self.window.jobs.wait_until_idle(120)
            self._application.processEvents()

    def wait(self, met: Callable[[], bool], patience_s: float = 60.0) -> None:
        """Let the window run until something is so."""
        end = time.monotonic() + patience_s
        while not met():
            if time.monotonic() > end:
                raise SystemExit("the window did not get there")
            self._application.processEvents()
            time.sleep(0.002)

    def change_page(self, at: int) -> None:
        """Go to the next page."""
        self.main.show_page(at % len(PAGES))
        self.settle()

    def record(self) -> None:
        """Record a take, let it be measured, and open it."""
        recorder = self.main.recorder
        self.main.show_page(0)
        recorder.toggle_recording(self.main.practice.panel.passage.key or None, "")
        self.wait(lambda: recorder.state in (RecorderState.RECORDING, RecorderState.IDLE))
        end = time.monotonic() + TAKE_S
        self.wait(lambda: time.monotonic() > end)
        recorder.toggle_recording(None, "")
        self.wait(lambda: recorder.state is RecorderState.IDLE)
        self.settle()
        self.main.show_page(1)
        self.settle()


def heading(each: str) -> None:
    """Print the columns."""
    print(
        f"{each:>6} {'RSS MB':>9} {'heap MB':>9} {'objects':>9} {'Qt':>8} {'top':>6} {'threads':>7}"
        f" {'files':>6}"
    )


def fill(bench: Workbench) -> None:
    """Put a passage with a few measured takes into a journal."""
    usual = bench.practising.settings().default_settings
    passage = bench.passages.add("Study", "Opening", "1-8", usual)
    today = date.today()
    for at, file in enumerate(sorted(STOCK.glob("viola-*.flac"))[:FIRST_TAKES]):
        day = today - timedelta(days=7 * at)
        (take,) = bench.importing.file(bench.importing.propose([file], passage.id, day))
        bench.marking.add(take.id, 1.0, category="rhythm", text="late")
        bench.practising.set_minutes(day, 30 + at)
    for take_id in bench.measuring.waiting():
        bench.measuring.measure(take_id)


def walk(pages: int, takes: int, *, trace: bool) -> bool:
    """Change pages, record takes, and print what that cost."""
    is_held = True
    with (
        tempfile.TemporaryDirectory() as folder,
        VirtualRoom() as room,
        open_workbench(Path(folder) / "journal") as bench,
    ):
        fill(bench)
        walker = Walker(bench, Path(folder))
        heading("pages")
        scales, every, told = Scales(walker.window), max(1, pages // 200), max(1, pages // 20)
        for at in range(pages + 1):
            if at % every == 0:
                scales.weigh(at, is_told=at % told == 0)
            if trace and at == pages // 2:
                tracemalloc.start(8)
                before = tracemalloc.take_snapshot()
            walker.change_page(at)
        if trace:
            gc.collect()
            for line in tracemalloc.take_snapshot().compare_to(before, "lineno")[:15]:
                print("   ", line)
            tracemalloc.stop()
        is_held &= scales.verdict("page change", MOST_KB_A_PAGE)
        heading("takes")
        scales, every, told = Scales(walker.window), max(1, takes // 200), max(1, takes // 20)
        with somebody_plays(room):
            for at in range(takes + 1):
                if at % every == 0:
                    scales.weigh(at, is_told=at % told == 0)
                walker.record()
        filed = len(bench.filing.takes())
        is_held &= scales.verdict("take", MOST_KB_A_TAKE)
        print(f"{filed} takes are in the journal")
        walker.window.close()
    return is_held


if __name__ == "__main__":
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--pages", type=int, default=2000)
    parser.add_argument("--takes", type=int, default=200)
    parser.add_argument("--trace", action="store_true")
    chosen = parser.parse_args()
    sys.exit(not walk(chosen.pages, chosen.takes, trace=chosen.trace))
