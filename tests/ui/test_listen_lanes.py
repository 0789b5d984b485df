"""The lanes of the Listen page: moved by wheel, fingers and keys, hidden, resized, read."""

import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import (
    QAccessible,
    QContextMenuEvent,
    QMouseEvent,
    QNativeGestureEvent,
    QPointingDevice,
    QWheelEvent,
)
from PySide6.QtWidgets import QApplication, QMenu

from app.journal.failures import PlainFailure
from app.services.stopping import stop_if
from app.services.views import Curve
from app.ui.theme import DARK, LIGHT
from app.ui.widgets.progress_bar import ThinProgressBar
from app.ui.widgets.sound_strip import SoundStrip
from app.ui.widgets.take_lanes import DEVIATION, LOUDNESS, SOUND, TEMPO

SHIFT, ALT = Qt.KeyboardModifier.ShiftModifier, Qt.KeyboardModifier.AltModifier


@pytest.fixture
def listen(window, settle):
    window.main.show_page(1)
    settle(window)
    return window.main.listen


def row_of(listen, lane) -> float:
    return listen.lanes._overlay.frames[lane].rect.center().y()


def heights(listen) -> list[float]:
    listen.grab()
    return [
        frame.rect.height() if frame.is_shown else 0.0 for frame in listen.lanes._overlay.frames
    ]


def point(listen, time_s, lane=DEVIATION) -> QPointF:
    return QPointF(listen.lanes.x_of(time_s), row_of(listen, lane))


def move(listen, place: QPointF, buttons=Qt.MouseButton.NoButton) -> None:
    event = QMouseEvent(
        QEvent.Type.MouseMove, place, place, Qt.MouseButton.NoButton, buttons,
        Qt.KeyboardModifier.NoModifier,
    )  # fmt: skip
    QApplication.sendEvent(listen.lanes.viewport, event)


def test_two_fingers_zoom_around_their_place(listen):
    place = point(listen, 6.0)
    pinch = QNativeGestureEvent(
        Qt.NativeGestureType.ZoomNativeGesture, QPointingDevice.primaryPointingDevice(), 2,
        place, place, place, 0.5, QPointF(),
    )  # fmt: skip
    before = listen.lanes.view_range
    QApplication.sendEvent(listen.lanes.viewport, pinch)
    left, right = listen.lanes.view_range
    assert right - left == pytest.approx((before[1] - before[0]) / 1.5)
    assert listen.lanes.x_of(6.0) == pytest.approx(place.x(), abs=2)


def test_wheel_with_shift_and_keys_pan(listen, qtbot):
    listen.lanes.show_range(8.0, 12.0)
    place = point(listen, 10.0)
    turn = QWheelEvent(
        place, place, QPoint(), QPoint(0, -120), Qt.MouseButton.NoButton, SHIFT,
        Qt.ScrollPhase.NoScrollPhase, False,
    )  # fmt: skip
    QApplication.sendEvent(listen.lanes.viewport, turn)
    assert listen.lanes.view_range == pytest.approx((8.4, 12.4))
    qtbot.keyClick(listen, Qt.Key.Key_Right, modifier=ALT)
    assert listen.lanes.view_range == pytest.approx((10.4, 14.4))
    qtbot.keyClick(listen, Qt.Key.Key_Left, modifier=ALT)
    assert listen.lanes.view_range == pytest.approx((8.4, 12.4))


def test_key_zooms_to_the_selection(listen, qtbot):
    listen.lanes.selectionMade.emit(4.0, 6.0)
    qtbot.keyClick(listen, "Z")
    assert listen.lanes.view_range == pytest.approx((3.9, 6.1))


def test_lanes_are_resized_by_keys_and_remembered(listen, qtbot, window, bench, open_window):
    before = heights(listen)
    qtbot.keyClick(listen, "L")
    qtbot.keyClick(listen, Qt.Key.Key_Up, modifier=SHIFT)
    chosen = listen.lanes.layout_of_lanes.chosen
    after = heights(listen)
    assert after[chosen] > before[chosen] + 5
    assert sum(after) == pytest.approx(sum(before), abs=4)
    qtbot.keyClick(listen, Qt.Key.Key_Down, modifier=SHIFT)
    assert heights(listen) == pytest.approx(before, abs=2)
    qtbot.keyClick(listen, Qt.Key.Key_Down, modifier=SHIFT)
    kept = listen.lanes.layout_of_lanes.text
    window.close()
    again = open_window(bench)
    assert again.main.listen.lanes.layout_of_lanes.text == kept


def test_a_hidden_lane_leaves_its_height_to_the_others(listen, qtbot):
    before = heights(listen)
    listen.lanes.choose_lane(SOUND)
    qtbot.keyClick(listen, "H")
    after = heights(listen)
    assert after[SOUND] == 0.0
    assert all(high > low for high, low in zip(after[1:], before[1:], strict=True))
    assert sum(after) == pytest.approx(sum(before), abs=12)
    # What is read from the columns goes on without the sound lane.
    assert listen.lanes.time_of(listen.lanes.x_of(7.0)) == pytest.approx(7.0, abs=0.05)
    qtbot.keyClick(listen, "H", modifier=SHIFT)
    assert heights(listen) == pytest.approx(before, abs=2)


def test_the_last_lane_cannot_be_hidden(listen, qtbot):
    for _ in range(6):
        qtbot.keyClick(listen, "H")
    assert len(listen.lanes.layout_of_lanes.shown) == 1


def test_the_edge_between_two_lanes_is_dragged(listen, qtbot):
    before = heights(listen)
    edge_y = listen.lanes._overlay.frames[TEMPO].rect.bottom() + 3
    place = QPoint(300, round(edge_y))
    port = listen.lanes.viewport
    qtbot.mousePress(port, Qt.MouseButton.LeftButton, pos=place)
    move(listen, QPointF(300, edge_y - 30), Qt.MouseButton.LeftButton)
    qtbot.mouseRelease(port, Qt.MouseButton.LeftButton, pos=place - QPoint(0, 30))
    after = heights(listen)
    assert after[TEMPO] == pytest.approx(before[TEMPO] - 30, abs=5)
    assert after[LOUDNESS] == pytest.approx(before[LOUDNESS] + 30, abs=5)
    assert after[:TEMPO] == pytest.approx(before[:TEMPO], abs=2)
    assert listen.transport.selection is None, "the drag selected nothing"


@pytest.mark.qt_log_ignore("propagateSizeHints", "raise", "grabbing")
def test_the_menu_hides_lanes_and_names_the_keys(listen):
    place = point(listen, 5.0, TEMPO).toPoint()
    event = QContextMenuEvent(
        QContextMenuEvent.Reason.Mouse, place, listen.lanes.viewport.mapToGlobal(place)
    )
    QApplication.sendEvent(listen.lanes.viewport, event)
    menu = listen.lanes.findChild(QMenu)
    texts = [action.text() for action in menu.actions() if not action.isSeparator()]
    assert texts[:4] == ["Sound", "Deviation", "Tempo", "Loudness"]
    assert texts[4].startswith("Tempo taller\tShift+Up")
    menu.actions()[LOUDNESS].trigger()
    assert LOUDNESS in listen.lanes.layout_of_lanes.hidden
    menu.close()


@pytest.mark.parametrize("text", ["", "x", "1 2 / 9", "3 5 3 3 / 0 1 2 3", "nan 5 3 3 /"])
def test_what_cannot_be_heights_is_not_taken_over(listen, text):
    before = listen.lanes.layout_of_lanes.text
    assert not listen.lanes.layout_of_lanes.restore(text)
    assert listen.lanes.layout_of_lanes.text == before


def test_a_gap_in_a_curve_is_hatched_and_says_why(listen):
    view = listen.view
    (first, _), (second, _) = view.tempo_bpm.segments
    inside = (float(first[-1]) + float(second[0])) / 2
    told = Curve(view.tempo_bpm.segments, "BPM", "No beat was found here.")
    listen.lanes.show_measured(_with(view, told))
    move(listen, point(listen, inside, TEMPO))
    assert "No beat was found here." in listen.hover_text
    move(listen, point(listen, float(first[5]), TEMPO))
    assert "No beat" not in listen.hover_text
    assert len(colours_at(listen, inside)) > 1, "hatched"
    assert len(colours_at(listen, float(first[20]) + 0.1)) == 1


def colours_at(listen, time_s) -> set[int]:
    """Colours in a patch near the tempo lane's foot, below the curve and above the beats."""
    picture = listen.lanes.grab().toImage()
    left = round(listen.lanes.x_of(time_s))
    foot = round(listen.lanes._overlay.frames[TEMPO].rect.bottom())
    return {picture.pixel(left + dx, y) for dx in range(-4, 5) for y in range(foot - 16, foot - 8)}


def _with(view, tempo):
    import fakes

    return fakes.replace(view, tempo_bpm=tempo)


def test_a_note_without_a_number_says_why(listen):
    note = listen.view.notes[7]
    assert "Two notes sound together." in listen.lanes.words_at(note.start_s + 0.1)


def test_the_line_says_the_note_under_the_playing_position_without_a_pointer(listen, qtbot):
    note = listen.view.notes[4]
    listen.transport.seek(note.start_s + 0.1)
    assert note.name in listen.hover_text
    assert "cents" in listen.hover_text
    assert listen.lanes.accessibleDescription() == listen.hover_text
    interface = QAccessible.queryAccessibleInterface(listen.lanes)
    assert note.name in interface.text(QAccessible.Text.Description)
    other = listen.view.notes[20]
    move(listen, point(listen, other.start_s + 0.1))
    assert other.name in listen.hover_text
    QApplication.sendEvent(listen.lanes.viewport, QEvent(QEvent.Type.Leave))
    assert note.name in listen.hover_text


@pytest.mark.parametrize("colours", [LIGHT, DARK], ids=["light", "dark"])
def test_sharp_and_flat_differ_without_colour(listen, colours):
    """Sharp lies above the zero line and flat below, each with a hatch of its own."""
    listen.lanes.recolour(colours)
    listen.lanes.show_range(0.0, 6.0)
    picture = (
        listen.lanes.grab()
        .toImage()
        .convertToFormat(listen.lanes.grab().toImage().Format.Format_Grayscale8)
    )
    rect = listen.lanes._overlay.frames[DEVIATION].rect
    sure = [
        note
        for note in listen.view.notes
        if note.certain and note.end_s < 6.0 and hasattr(note.deviation, "value")
        and abs(note.deviation.value) > 8
    ]  # fmt: skip
    for note in sure:
        x = round(listen.lanes.x_of((note.start_s + note.end_s) / 2)) + 6
        sharp = note.deviation.value > 0
        offset = (
            rect.height() * abs(note.deviation.value) / 2 / (2 * listen.lanes._notes.range_cents)
        )
        inside = round(rect.center().y() + (-offset if sharp else offset))
        outside = round(rect.center().y() + (offset if sharp else -offset))
        pixels = [
            picture.pixelColor(x + dx, inside + dy).value() for dx in range(6) for dy in range(6)
        ]
        empty = [
            picture.pixelColor(x + dx, outside + dy).value() for dx in range(2) for dy in range(2)
        ]
        assert len(set(pixels)) > 1, "hatched"
        assert set(pixels) != set(empty)


def test_a_recording_that_is_missing_is_said_in_its_lane(window, settle, bench):
    def refuse(_take_id, _progress, _should_stop):
        raise PlainFailure("The recording is missing.", "Copy it back.")

    bench.listening.prepare = refuse
    window.main.show_page(1)
    settle(window)
    assert window.main.listen.lanes.gap_sentences[0] == "The recording is missing."
    assert window.main.messages.text == "The recording is missing. Copy it back."


def test_a_long_take_says_how_far_its_sound_is_read_and_shows_no_other_sound(
    window, settle, bench, qtbot
):
    window.main.show_page(1)
    settle(window)
    listen = window.main.listen
    strip, wave = listen.findChild(SoundStrip), listen.lanes._wave
    assert wave._bars
    assert not strip.isVisible()
    prepare = bench.listening.prepare

    def slowly(_take_id, progress, should_stop):
        while True:
            progress(0.4)
            stop_if(should_stop)

    bench.listening.prepare = slowly
    listen.show_take("take10")
    qtbot.waitUntil(strip.isVisible)
    assert not wave._bars, "the sound of the take before stands beside these measures"
    assert listen.lanes.gap_sentences[SOUND].startswith("Reading the sound")
    qtbot.waitUntil(lambda: listen.transport.is_ready)
    bar = strip.findChild(ThinProgressBar)
    assert bar.value() / bar.maximum() == pytest.approx(0.4, abs=0.01)
    window.main.desk.keys.action("work.cancel").trigger()
    settle(window)
    assert not strip.isVisible()
    assert "not read to its end" in listen.lanes.gap_sentences[SOUND]
    bench.listening.prepare = prepare
    listen.show_take("take11")
    settle(window)
    assert wave._bars
    assert listen.lanes.gap_sentences[SOUND] == ""
