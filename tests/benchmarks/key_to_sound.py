"""How long after the play key the first buffer of sound is made, through a virtual room.

    QT_QPA_PLATFORM=offscreen nice -n 5 python tests/benchmarks/key_to_sound.py

A take is opened on the Listen page; real key presses start and stop it 50 times. Printed
are median, 95th percentile and largest, beside what the same machine needs between a key
and the end of its handling, which is this window's own part. Then the page is opened
anew in a fresh process's manner, ten times, and the key comes as soon as it works: what
is printed there holds the output's own start too, before which nothing can sound.
Nothing is asserted.
"""

import sys
import tempfile
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))

import numpy as np
import soundfile
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from app.services.workbench import Workbench
from app.ui.application import Window, application_object
from app.wiring import open_workbench
from tests.virtual_room import VirtualRoom

PRESSES = 50
FRESH = 10
RATE_HZ = 48_000
LONGEST_WAIT_S = 10.0


def pump(seconds: float) -> None:
    """Let the window work."""
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        application_object().processEvents()
        time.sleep(0.001)


class Ear:
    """Notes when the first buffer that is not silent was made."""

    def __init__(self, player: object) -> None:
        self.first_s: float | None = None
        render = player._playback.render

        def noted(out: np.ndarray, heard_at_s: float) -> None:
            render(out, heard_at_s)
            if self.first_s is None and np.any(out):
                self.first_s = time.perf_counter()

        player._playback.render = noted

    def press(self, window: Window) -> tuple[float, float]:
        """Press the key; give the time to the first buffer and of handling the key, ms."""
        self.first_s = None
        pressed_s = time.perf_counter()
        QTest.keyClick(window.main.listen, Qt.Key.Key_Space)
        handled_s = time.perf_counter()
        end = time.monotonic() + LONGEST_WAIT_S
        while self.first_s is None and time.monotonic() < end:
            application_object().processEvents()
            time.sleep(0.0005)
        found_s = self.first_s if self.first_s is not None else float("inf")
        return 1000 * (found_s - pressed_s), 1000 * (handled_s - pressed_s)


def opened(bench: Workbench, folder: Path) -> Window:
    """Open the window at the Listen page, its take loaded."""
    window = Window(bench, preferences_file=folder / "window.ini")
    window.main.resize(1280, 800)
    window.main.show()
    window.main.show_page(1)
    window.jobs.wait_until_idle(60)
    application_object().processEvents()
    return window


def line(words: str, found: list[float]) -> str:
    """Give median, 95th percentile and largest."""
    return (
        f"{words:34} median {np.median(found):7.1f}  p95 {np.percentile(found, 95):7.1f}"
        f"  largest {max(found):7.1f} ms  (n = {len(found)})"
    )


def measure(folder: Path) -> None:
    """Measure in one room."""
    tone = 0.1 * np.sin(2 * np.pi * 440 * np.arange(20 * RATE_HZ) / RATE_HZ)
    soundfile.write(folder / "tone.wav", tone, RATE_HZ, subtype="PCM_24")
    with open_workbench(folder / "journal") as bench:
        bench.importing.file(bench.importing.propose([folder / "tone.wav"]))
        window = opened(bench, folder)
        player = bench.playing._player
        player.wait_until_running()
        ear, delays_ms, own_ms = Ear(player), [], []
        for at in range(PRESSES):
            window.main.listen.transport.seek(0.2 * (at % 20))
            pump(0.15)
            delay_ms, handled_ms = ear.press(window)
            delays_ms.append(delay_ms)
            own_ms.append(handled_ms)
            QTest.keyClick(window.main.listen, Qt.Key.Key_Space)
            pump(0.1)
        print(line("key to first buffer", delays_ms))
        print(line("  of that, handling the key", own_ms))
        print(
            f"  over 50 ms: {sum(ms > 50 for ms in delays_ms)} of {PRESSES}; "
            f"underruns {player.underruns}"
        )
        window.close()
    fresh_ms = []
    for _ in range(FRESH):
        with open_workbench(folder / "journal") as bench:
            window = opened(bench, folder)
            fresh_ms.append(Ear(bench.playing._player).press(window)[0])
            window.close()
            bench.playing.unload()
    print(line("key at once after opening the page", fresh_ms))


def main() -> None:
    """Measure in a folder of its own."""
    application_object()
    with VirtualRoom(), tempfile.TemporaryDirectory() as scratch:
        measure(Path(scratch))


if __name__ == "__main__":
    main()
