"""How far the picture on the Listen page is from the sound that is heard with it.

    QT_QPA_PLATFORM=offscreen nice -n 5 python tests/benchmarks/picture_in_step.py

Films that carry their own time, with a key picture a second as phones write them, are
opened in the window and played through a virtual sound room, whose stream's clock says
what is heard. Every 5 ms the number in the picture that is shown is read. Printed is how
far the place that is heard lies outside the time for which that picture was filmed, in
milliseconds of playing; the share of looks at which it is more than 80 ms, and the
longest time that lasts at a stretch: after a jump the picture needs a moment.
Nothing is asserted.
"""

import sys
import tempfile
import time
from pathlib import Path
from types import ModuleType

sys.path.insert(0, str(Path(__file__).parents[2]))

import numpy as np

from app.ui.application import Window, application_object
from app.wiring import open_workbench
from tests import numbered_film as film
from tests.virtual_room import VirtualRoom

FPS = 30
SECONDS = 20.0
PLAYED_S = 8.0
LIMIT_MS = 80.0
SIZES = ((1280, 720), (1920, 1080))
CASES = (
    ("as played", 1.0, None),
    ("at 50 %", 0.5, None),
    ("looped, 1.7 s", 1.0, (4.4, 6.1)),
    ("looped at 50 %", 0.5, (4.4, 6.1)),
    ("looped, 0.4 s", 1.0, (4.4, 4.8)),
)


def pixels(image: object) -> np.ndarray:
    """Give a QImage as an array (height, width, 3)."""
    from PySide6.QtGui import QImage

    plain = image.convertToFormat(QImage.Format.Format_RGB888)
    flat = np.frombuffer(plain.constBits(), np.uint8)
    rows = flat.reshape(plain.height(), plain.bytesPerLine())
    return rows[:, : 3 * plain.width()].reshape(plain.height(), plain.width(), 3)


def offsets(window: Window, playing: object, number_of: object, speed: float) -> np.ndarray:
    """Play for a while; one row a look: when, ms, and how far outside the picture's time, ms."""
    application = application_object()
    page, found = window.main.listen, []
    end = time.monotonic() + PLAYED_S
    last, number = None, 0
    while time.monotonic() < end:
        application.processEvents()
        image = page.picture_pane.image
        position_s = playing.state().position_s
        if image.isNull():
            continue
        if image.cacheKey() != last:
            last, number = image.cacheKey(), number_of(pixels(image))
        start_s = number / FPS
        outside = max(start_s - position_s, position_s - start_s - 1 / FPS, 0.0)
        found.append((time.monotonic(), outside / speed))
        time.sleep(0.005)
    return 1000 * np.array(found)


def longest_ms(found: np.ndarray) -> float:
    """Give the longest stretch of looks that were more than 80 ms outside."""
    longest, since = 0.0, None
    for at_ms, outside_ms in found:
        if outside_ms <= LIMIT_MS:
            since = None
            continue
        since = at_ms if since is None else since
        longest = max(longest, at_ms - since)
    return longest


def measure(size: tuple[int, int], film: ModuleType) -> None:
    """Measure all cases with pictures of one size."""
    with tempfile.TemporaryDirectory() as scratch:
        clip = film.write_film(Path(scratch) / "filmed.mp4", SECONDS, fps=FPS, size=size)
        with open_workbench(Path(scratch) / "journal") as bench:
            bench.importing.file(bench.importing.propose([clip]))
            window = Window(bench, preferences_file=Path(scratch) / "window.ini")
            window.main.resize(1280, 800)
            window.main.show()
            window.main.show_page(1)
            window.jobs.wait_until_idle(60)
            page = window.main.listen
            print(f"\n{size[0]} by {size[1]}, {FPS} pictures a second, key picture a second")
            for words, speed, loop in CASES:
                page.playback.select(loop)
                page.transport.toggle_loop(loop is not None)
                page.transport.change_speed(0)
                page.transport.change_speed(round((speed - 1) * 20))
                page.transport.seek(loop[0] if loop else 1.0)
                page.transport.toggle()
                found = offsets(window, bench.playing, film.number_of, speed)
                page.transport.toggle()
                outside = found[:, 1]
                print(
                    f"  {words:16} median {np.median(outside):4.1f}  p95 "
                    f"{np.percentile(outside, 95):5.1f}  p99 {np.percentile(outside, 99):6.1f} ms;"
                    f"  over {LIMIT_MS:.0f} ms: {100 * np.mean(outside > LIMIT_MS):4.1f} % of"
                    f" {len(outside)} looks, at most {longest_ms(found):3.0f} ms at a stretch"
                )
            began = time.monotonic()
            for place_s in (15.9, 2.9, 11.9, 7.9):
                page.transport.seek(place_s)
            print(f"  four seeks keep the window for {1000 * (time.monotonic() - began):.1f} ms")
            window.close()


def main() -> None:
    """Measure both sizes in one room."""
    application_object()
    with VirtualRoom():
        for size in SIZES:
            measure(size, film)


if __name__ == "__main__":
    main()
