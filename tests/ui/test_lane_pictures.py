"""What the lanes draw: the same whether the view moved there or was opened there."""

from datetime import UTC, date, datetime
from itertools import pairwise
from pathlib import Path

import numpy as np
import pytest
from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QImage, QPainter, QTransform

from app.journal.kinds import Author, MarkerState, Origin
from app.journal.records import Marker, PlayingSettings
from app.services.reading_views import NoReading, Reading
from app.services.views import Curve, NoteRow, TakeRow, TakeView, Waveform
from app.ui.theme import LIGHT
from app.ui.widgets.curve_item import CurveItem
from app.ui.widgets.marker_flags import MarkerFlags
from app.ui.widgets.take_lanes import TakeLanes
from app.ui.widgets.time_axis import steps_for, ticks_in

NOW = datetime(2026, 3, 14, 19, 30, tzinfo=UTC)
LENGTH_S = 600.0


def marker(at: int, start_s: float, end_s: float | None = None, **more) -> Marker:
    values = {"weight": 1 + at % 3, "state": MarkerState.TO_WORK_ON, **more}
    return Marker(
        str(at), "take", start_s, end_s, "rhythm", values["weight"], "", Author.SELF,
        values["state"], NOW, NOW,
    )  # fmt: skip


def busy_take() -> TakeView:
    """Ten minutes with everything that can be drawn, gaps, hatches and flags included."""
    rng = np.random.default_rng(5)
    notes = tuple(
        NoteRow(
            at,
            at * 1.5,
            at * 1.5 + 1.4,
            "A4",
            69,
            Reading(float(cents), "cents", 4.0, 1, signed=True)
            if at % 9
            else NoReading("Too short."),
            at % 7 != 0,
            "note",
            at % 12 == 0,
            "",
        )
        for at, cents in enumerate(rng.normal(0.0, 25.0, 400))
    )
    states = (MarkerState.TO_WORK_ON, MarkerState.SETTLED)
    markers = tuple(
        marker(at, at * 6.0, at * 6.0 + 2.0 if at % 5 == 0 else None, state=states[at % 2])
        for at in range(100)
    )
    reading = Reading(9.0, "cents", 1.0)
    row = TakeRow(
        "take", None, "Study", date(2026, 3, 14), 1, NOW, False, Origin.RECORDED, LENGTH_S, "",
        None, "measured", "", reading, reading, reading, 100, Path("take.flac"),
    )  # fmt: skip
    time_s = np.linspace(0.0, LENGTH_S, 4000)
    parts = tuple(
        (time_s[at : at + 900], 72 + 9 * np.sin(time_s[at : at + 900])) for at in (0, 1000, 2000)
    )
    return TakeView(
        row=row,
        passage=None,
        settings=PlayingSettings(),
        duration_s=LENGTH_S,
        summary=(),
        notes=notes,
        notes_sentence="",
        pitch_cents=Curve(((time_s, rng.normal(0.0, 8.0, 4000)),), "cents"),
        tempo_bpm=Curve(parts, "BPM", "No beat found here."),
        beat_s=np.arange(0.0, LENGTH_S, 0.8),
        loudness_lufs=Curve(((time_s, -22 + 6 * np.sin(time_s / 3)),), "LUFS"),
        markers=markers,
        categories=("intonation", "rhythm"),
    )


@pytest.fixture
def lanes(qtbot):
    made = TakeLanes(LIGHT)
    qtbot.addWidget(made)
    made.resize(820, 620)
    made.show_take(busy_take())
    columns = np.linspace(0.0, LENGTH_S, 1600)
    made.show_waveform(Waveform(columns, -np.abs(np.sin(columns)), np.abs(np.cos(columns))))
    made.set_playhead(None)
    return made


def differing_px(one: QImage, other: QImage) -> int:
    pixels = [
        np.frombuffer(image.convertToFormat(QImage.Format.Format_RGB32).constBits(), np.uint32)
        for image in (one, other)
    ]
    return int(np.count_nonzero(pixels[0] != pixels[1]))


@pytest.mark.parametrize("length_s", [6.0, 40.0, 200.0])
def test_a_view_that_moved_shows_what_a_new_one_shows(lanes, length_s):
    lanes.show_range(100.0, 100.0 + length_s)
    lanes.grab()
    per_px = 1.0 / lanes._wave._drawn_for[4]
    start_s = 100.0
    # Along, back, by one pixel, and farther than the lane is wide.
    for moved_px in (40, 3, -25, 1, 160, -900, 500):
        start_s += moved_px * per_px
        lanes.show_range(start_s, start_s + length_s)
        moved = lanes.grab().toImage()
        for item in lanes._items:
            item.redraw()
        new = lanes.grab().toImage()
        # A coordinate that differs in its twelfth digit can fall to the other side of a pixel.
        assert differing_px(moved, new) <= 150, f"after {moved_px} pixels"
        lanes.show_range(start_s + length_s, start_s + 2 * length_s)
        assert differing_px(new, lanes.grab().toImage()) > 5000
        lanes.show_range(start_s, start_s + length_s)
        lanes.grab()


def test_a_curve_draws_no_more_points_than_the_screen_has_columns(qapp):
    del qapp
    item = CurveItem(LIGHT)
    time_s = np.arange(100_000) / 100.0
    values = np.random.default_rng(1).normal(0.0, 1.0, time_s.size)
    item.show_curve(Curve(((time_s, values),), "BPM"))
    drawn = []

    class Counting(QPainter):
        def drawPolyline(self, points) -> None:  # noqa: N802 - Qt's name
            drawn.extend(points)

    picture = QImage(800, 100, QImage.Format.Format_ARGB32)
    painter = Counting(picture)
    lane = QRectF(0.0, 0.0, 800.0, 100.0)
    item.draw(painter, QTransform(0.8, 0.0, 0.0, -10.0, 0.0, 50.0), lane, lane)
    painter.end()
    assert 800 <= len(drawn) <= 2 * 800 + 4
    heights = [50.0 - 10.0 * values.max(), 50.0 - 10.0 * values.min()]
    assert [min(p.y() for p in drawn), max(p.y() for p in drawn)] == pytest.approx(heights)


def test_lines_in_one_pixel_column_are_drawn_once_as_heavy_as_the_heaviest(qapp):
    del qapp
    flags = MarkerFlags(LIGHT, lambda time_s: 10.0 * time_s)
    close = [marker(at, 2.0 + at * 1e-3, weight=1 + at % 3) for at in range(30)]
    flags.show((*close, marker(99, 40.0, weight=2)), ("rhythm",))
    picture = QImage(600, 100, QImage.Format.Format_ARGB32)
    picture.fill(Qt.GlobalColor.white)
    painter = QPainter(picture)
    flags.draw(painter, QRectF(0.0, 24.0, 600.0, 70.0), QRectF(0.0, 0.0, 600.0, 100.0))
    painter.end()
    assert [flag.marker.id for flag in flags.flags] == ["0", "99"]
    inked = [x for x in range(600) if picture.pixelColor(x, 60) != Qt.GlobalColor.white]
    assert inked == [20, 21, 22, 400, 401]


def test_a_marker_that_began_long_before_the_view_still_spans_it(qapp):
    del qapp
    flags = MarkerFlags(LIGHT, lambda time_s: 10.0 * (time_s - 100.0))
    flags.show((marker(0, 1.0, 150.0), marker(1, 2.0), marker(2, 110.0)), ("rhythm",))
    picture = QImage(600, 100, QImage.Format.Format_ARGB32)
    picture.fill(Qt.GlobalColor.white)
    painter = QPainter(picture)
    flags.draw(painter, QRectF(0.0, 24.0, 600.0, 70.0), QRectF(0.0, 0.0, 600.0, 100.0))
    painter.end()
    assert picture.pixelColor(300, 20) != Qt.GlobalColor.white


@pytest.mark.parametrize("ratio", [1, 2])
def test_the_line_of_a_settled_marker_is_broken_at_every_scale(qapp, ratio):
    del qapp
    flags = MarkerFlags(LIGHT, lambda time_s: 10.0 * time_s)
    flags.show((marker(0, 10.0, weight=2), marker(1, 40.0, state=MarkerState.SETTLED)), ())
    picture = QImage(600 * ratio, 100 * ratio, QImage.Format.Format_ARGB32)
    picture.setDevicePixelRatio(ratio)
    picture.fill(Qt.GlobalColor.white)
    painter = QPainter(picture)
    flags.draw(painter, QRectF(0.0, 24.0, 600.0, 70.0), QRectF(0.0, 0.0, 600.0, 100.0))
    painter.end()

    def inked(x: int) -> list[bool]:
        rows = range(26 * ratio, 92 * ratio)
        return [picture.pixelColor(x * ratio, y) != Qt.GlobalColor.white for y in rows]

    assert all(inked(100))
    assert not any(inked(300))
    settled = inked(400)
    assert sum(settled) == len(settled) / 2
    changes = sum(one != other for one, other in pairwise(settled))
    assert changes == 66 / 3 - 1  # three pixels of the window inked, three not


@pytest.mark.parametrize("length_s", [0.25, 1.0, 7.0, 30.0, 100.0, 600.0, 3600.0, 20_000.0])
def test_labels_of_the_time_axis_keep_apart_and_are_there(length_s):
    width_px = 760.0
    label_s, stroke_s = steps_for(length_s / width_px)
    labels = ticks_in(12.3, 12.3 + length_s, label_s)
    assert len(labels) >= 2
    if length_s <= 3600.0:
        assert label_s / length_s * width_px >= 72.0
    assert label_s / stroke_s == pytest.approx(round(label_s / stroke_s))
    assert all(12.3 <= at <= 12.3 + length_s for at in labels)
