"""How long the lanes of a long take need to be painted.

    QT_QPA_PLATFORM=offscreen python tests/benchmarks/lane_painting.py

An hour with 2,000 notes and 500 markers. Printed are milliseconds a frame and, as the
measure that can be compared between machines, the ratio to drawing a thousand plain
lines. Nothing is asserted.
"""

import sys
import time
from collections.abc import Callable
from datetime import UTC, date, datetime
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))

import numpy as np
from PySide6.QtCore import QLineF
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from app.journal.kinds import Author, MarkerState, Origin
from app.journal.records import Marker, PlayingSettings
from app.services.reading_views import Reading
from app.services.views import Curve, NoteRow, TakeRow, TakeView, Waveform
from app.ui.application import application_object
from app.ui.theme import LIGHT, Theme
from app.ui.widgets.take_lanes import TakeLanes

LENGTH_S = 3600.0
NOTES, MARKERS, POINTS = 2000, 500, 4000
SIZE_PX = (820, 620)
FRAMES = 60
NOW = datetime(2026, 3, 14, 19, 30, tzinfo=UTC)


def long_take() -> TakeView:
    """Make an hour of notes, curves and markers."""
    rng = np.random.default_rng(1)
    step_s = LENGTH_S / NOTES
    notes = tuple(
        NoteRow(
            at,
            at * step_s,
            (at + 0.9) * step_s,
            "A4",
            69,
            Reading(float(cents), "cents", 2.0, 1, signed=True),
            at % 7 != 0,
            "note",
            at % 12 == 0,
            "",
        )
        for at, cents in enumerate(rng.normal(0.0, 12.0, NOTES))
    )
    markers = tuple(
        Marker(
            str(at), "take", at * LENGTH_S / MARKERS, None, "rhythm", 1 + at % 3, "", Author.SELF,
            MarkerState.TO_WORK_ON, NOW, NOW,
        )
        for at in range(MARKERS)
    )  # fmt: skip
    reading = Reading(9.0, "cents", 1.0)
    row = TakeRow(
        "take", None, "Study", date(2026, 3, 14), 1, NOW, False, Origin.RECORDED, LENGTH_S, "",
        None, "measured", "", reading, reading, reading, MARKERS, Path("take.flac"),
    )  # fmt: skip
    time_s = np.linspace(0.0, LENGTH_S, POINTS)
    return TakeView(
        row=row,
        passage=None,
        settings=PlayingSettings(),
        duration_s=LENGTH_S,
        summary=(),
        notes=notes,
        notes_sentence="",
        pitch_cents=Curve(((time_s, rng.normal(0.0, 8.0, POINTS)),), "cents"),
        tempo_bpm=Curve(((time_s, 72 + 4 * np.sin(time_s / 40)),), "BPM"),
        beat_s=np.arange(0.0, LENGTH_S, 0.8),
        loudness_lufs=Curve(((time_s, -22 + 6 * np.sin(time_s / 15)),), "LUFS"),
        markers=markers,
        categories=("intonation", "rhythm"),
    )


class Lines(QWidget):
    """The reference: a thousand plain lines."""

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        """Draw them in one call."""
        painter = QPainter(self)
        painter.drawLines(
            [QLineF(x % 800, x % 13, (7 * x) % 800, 600 - x % 17) for x in range(1000)]
        )


def frame_times_ms(prepare: Callable[[int], None]) -> tuple[float, float, float]:
    """Return median and 95th percentile of a frame, and the latter of its processor time."""
    application = application_object()
    times, busy = [], []
    for frame in range(FRAMES):
        start, start_busy = time.perf_counter(), time.thread_time()
        prepare(frame)
        application.processEvents()
        times.append(1000 * (time.perf_counter() - start))
        busy.append(1000 * (time.thread_time() - start_busy))
    return (
        float(np.median(times)),
        float(np.percentile(times, 95)),
        float(np.percentile(busy, 95)),
    )


def main() -> None:
    """Print the table."""
    application = application_object()
    Theme(application).dress()
    plain = Lines()
    lanes = TakeLanes(LIGHT)
    for widget in (plain, lanes):
        widget.resize(*SIZE_PX)
        widget.show()
    application.processEvents()
    reference, _, _ = frame_times_ms(lambda frame: plain.update())
    take = long_take()
    start = time.perf_counter()
    lanes.show_take(take)
    columns = np.linspace(0.0, LENGTH_S, lanes.columns)
    height = np.abs(np.sin(columns))
    lanes.show_waveform(Waveform(columns, -height, height))
    print(f"take handed over: {1000 * (time.perf_counter() - start):.1f} ms")
    print("The last column but one is processor time: other programs do not count in it.")
    print(f"{'frame':28} median ms   p95 ms   p95 busy   median / reference")
    for words, prepare in (
        ("playhead, whole hour", lambda frame: lanes.set_playhead(60.0 * frame)),
        ("pan, 20 s in view", lambda frame: lanes.show_range(20.0 * frame, 20.0 * frame + 20)),
        ("pan, 5 min in view", lambda frame: lanes.show_range(20.0 * frame, 20.0 * frame + 300)),
        ("pan, 10 min in view", lambda frame: lanes.show_range(20.0 * frame, 20.0 * frame + 600)),
        ("pan, 58 min in view", lambda frame: lanes.show_range(2.0 * frame, 2.0 * frame + 3480)),
        ("zoom, nearly the whole hour", lambda frame: lanes.show_range(0.0, 3599.0 - frame)),
    ):
        lanes.show_all()
        application.processEvents()
        median, p95, busy = frame_times_ms(prepare)
        print(f"{words:28} {median:9.1f} {p95:8.1f} {busy:10.1f} {median / reference:12.1f}")
    lanes.close()
    plain.close()


if __name__ == "__main__":
    main()
