"""How long the window takes to be usable, and what is loaded by then.

    QT_QPA_PLATFORM=offscreen python tests/benchmarks/start_up.py [JOURNAL] [--times 5]

Each start is a process of its own, the command ``passagework open``: from its beginning
until the window is shown, the jobs it began have ended and their results are drawn
('window'), and on the way there until it is painted and has answered a key ('a key') and
until it shows today as the journal has it ('today'). Byte
code is kept, as it is where the program is installed. Beside it, in the same run, a process
that only imports ``PySide6.QtWidgets``; the ratio of the two says more about the program
than seconds on one machine do. Processor time counts the process alone. 'Cold' asks the
system to forget the files of the environment and of the program first (it keeps those that
another process has open). Nothing is asserted.

Wanted on a machine with nothing else to do: 1 s warm, 2 s cold.
"""

import argparse
import os
import statistics
import subprocess
import sys
import sysconfig
import tempfile
import time
from pathlib import Path

ROOT = Path(__file__).parents[2]
HEAVY = (
    *(
        "librosa",
        "numba",
        "scipy",
        "matplotlib",
        "music21",
        "av",
        "reportlab",
        "jinja2",
        "icalendar",
    ),
    *("soundfile", "sounddevice", "mutagen", "mido", "alembic", "pyqtgraph"),
)
NO_BYTE_CODE = "PYTHONDONTWRITEBYTECODE"
EVENTS = {"key": "a key", "today": "today"}
REFERENCE = "import PySide6.QtWidgets"
WINDOW = f"""
import sys
import app.__main__ as program
from app.services.loading import uncollected
from app.services.window_end import WindowEnd

def until_usable(bench, **_):
    with uncollected():
        from PySide6.QtCore import QEvent, Qt
        from PySide6.QtGui import QKeyEvent
        from app.ui.application import Window, application_object
        application = application_object()
        window = Window(bench, preferences_file=bench.journal_dir.parent / "window.ini")
    window.main.show()
    focus = application.focusWidget()
    while not window.main.isActiveWindow() or application.focusWidget() is focus:
        application.processEvents()
        if not window.main.isActiveWindow():  # a display without a window manager gives it to none
            window.main.activateWindow()
        for kind in (QEvent.Type.KeyPress, QEvent.Type.KeyRelease):
            key = QKeyEvent(kind, Qt.Key.Key_Tab, Qt.KeyboardModifier.NoModifier)
            application.sendEvent(window.main, key)
    print("key", flush=True)
    while window.main.practice._view is None:
        application.processEvents()
    print("today", flush=True)
    for _ in range(3):
        window.jobs.wait_until_idle(60)
        application.processEvents()
    print("loaded", *[name for name in {HEAVY!r} if name in sys.modules], flush=True)
    window.close()
    return WindowEnd(0)

program._run_window = until_usable
sys.exit(program.main(["open", "--journal", sys.argv[1]]))
"""


def forget_files(byte_code: Path) -> None:
    """Ask the system to drop what it keeps of the environment and of the program."""
    if not hasattr(os, "posix_fadvise"):
        return
    for folder in (Path(sysconfig.get_path("platlib")), ROOT / "app", byte_code):
        for path in folder.rglob("*"):
            if path.is_file() and not path.is_symlink():
                file = os.open(path, os.O_RDONLY)
                os.posix_fadvise(file, 0, 0, os.POSIX_FADV_DONTNEED)
                os.close(file)


def one_start(
    script: str, journal: Path, byte_code: Path
) -> tuple[dict[str, float], float, float, str]:
    """Return the wall's seconds until each event and the end, the processor's, what it said."""
    begun = time.perf_counter()
    process = subprocess.Popen(
        [sys.executable, "-c", script, str(journal)],
        cwd=ROOT,
        env={
            **{key: value for key, value in os.environ.items() if key != NO_BYTE_CODE},
            "PYTHONPATH": str(ROOT),
            "PYTHONPYCACHEPREFIX": str(byte_code),
        },
        stdout=subprocess.PIPE,
        text=True,
    )
    said, moments_s = process.stdout.readline(), {}
    while said.strip() in EVENTS:
        moments_s[said.strip()] = time.perf_counter() - begun
        said = process.stdout.readline()
    wall_s = time.perf_counter() - begun
    process.stdout.close()
    _, status, usage = os.wait4(process.pid, 0)
    process.returncode = os.waitstatus_to_exitcode(status)
    if process.returncode:
        sys.exit(f"it ended with {process.returncode}")
    return moments_s, wall_s, usage.ru_utime + usage.ru_stime, said.removeprefix("loaded").strip()


def main() -> None:
    """Print cold and warm starts beside the reference."""
    asked = argparse.ArgumentParser(description=__doc__.split("\n", 1)[0])
    asked.add_argument("journal", nargs="?", type=Path, help="else an empty one is made")
    asked.add_argument("--times", type=int, default=5)
    chosen = asked.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        journal = chosen.journal or Path(folder) / "journal"
        byte_code = Path(folder) / "byte-code"
        one_start(WINDOW, journal, byte_code)  # makes the journal, and the byte code
        print(f"load of the machine {os.getloadavg()[0]:.1f}; medians of {chosen.times}")
        for name, is_cold in (("cold", True), ("warm", False)):
            rows = {"Qt alone": [], "window": []}
            for _ in range(chosen.times):
                for label, script in (("Qt alone", REFERENCE), ("window", WINDOW)):
                    if is_cold:
                        forget_files(byte_code)
                    rows[label].append(one_start(script, journal, byte_code))
            wall = {label: statistics.median(row[1] for row in rows[label]) for label in rows}
            cpu = {label: statistics.median(row[2] for row in rows[label]) for label in rows}
            for event, label in EVENTS.items():
                moment_s = statistics.median(row[0][event] for row in rows["window"])
                print(f"{name}  {label:9} wall {moment_s:.2f} s")
            for label in rows:
                print(f"{name}  {label:9} wall {wall[label]:.2f} s, processor {cpu[label]:.2f} s")
            print(
                f"{name}  ratio     wall {wall['window'] / wall['Qt alone']:.1f}, "
                f"processor {cpu['window'] / cpu['Qt alone']:.1f}; "
                f"heavy packages loaded: {rows['window'][-1][3] or 'none'}"
            )


if __name__ == "__main__":
    main()
