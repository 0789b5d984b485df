"""Listen: seek, select, loop, one-key markers, editing, undo.

Longer than 300 lines: cases of one subject, each of them read by itself.
"""

import fakes
import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QApplication, QLineEdit

from app.journal.failures import PlainFailure
from app.journal.kinds import Author, MarkerState


@pytest.fixture
def listen(window, settle):
    window.main.show_page(1)
    settle(window)
    return window.main.listen


def viewport(listen):
    return listen.lanes.viewport


def at(listen, time_s, y=260) -> QPoint:
    return QPoint(round(listen.lanes.x_of(time_s)), y)


def test_opens_the_latest_take(listen):
    assert listen.view.row.id == "take11"
    assert listen.transport.is_ready


def test_click_seeks(listen, qtbot, bench):
    qtbot.mouseClick(viewport(listen), Qt.MouseButton.LeftButton, pos=at(listen, 7.0))
    assert bench.playing.now.position_s == pytest.approx(7.0, abs=0.05)


def test_drag_selects_and_loop_repeats_it(listen, qtbot, bench):
    port = viewport(listen)
    qtbot.mousePress(port, Qt.MouseButton.LeftButton, pos=at(listen, 12.0))
    qtbot.mouseMove(port, pos=at(listen, 9.0))
    qtbot.mouseRelease(port, Qt.MouseButton.LeftButton, pos=at(listen, 8.0))
    assert listen.transport.selection == pytest.approx((8.0, 12.0), abs=0.05)
    qtbot.keyClick(listen, "O")
    assert bench.playing.now.loop == pytest.approx((8.0, 12.0), abs=0.05)
    qtbot.keyClick(listen, Qt.Key.Key_Escape)
    assert bench.playing.now.loop is None
    assert listen.transport.selection is None


def test_wheel_zooms_around_the_pointer(listen):
    before = listen.lanes.view_range
    place = QPointF(at(listen, 6.0))
    turn = QWheelEvent(
        place, place, QPoint(), QPoint(0, 240), Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier, Qt.ScrollPhase.NoScrollPhase, False,
    )  # fmt: skip
    QApplication.sendEvent(viewport(listen), turn)
    left, right = listen.lanes.view_range
    assert right - left < before[1] - before[0]
    assert left < 6.0 < right
    assert listen.lanes.x_of(6.0) == pytest.approx(place.x(), abs=2)


def test_zoom_by_keys_stays_inside_the_take(listen, qtbot):
    ctrl = Qt.KeyboardModifier.ControlModifier
    for _ in range(30):
        qtbot.keyClick(listen, Qt.Key.Key_Equal, modifier=ctrl)
    left, right = listen.lanes.view_range
    assert 0.0 <= left < right <= fakes.LENGTH_S
    qtbot.keyClick(listen, Qt.Key.Key_0, modifier=ctrl)
    assert listen.lanes.view_range == pytest.approx((0.0, fakes.LENGTH_S))


def test_play_pause_and_speed_by_keys(listen, qtbot, bench):
    qtbot.keyClick(listen, Qt.Key.Key_Space)
    assert bench.playing.now.playing
    qtbot.keyClick(listen, "-")
    qtbot.keyClick(listen, "-")
    assert bench.playing.now.speed == pytest.approx(0.9)
    for _ in range(40):
        qtbot.keyClick(listen, "-")
    assert bench.playing.now.speed == pytest.approx(0.25)
    qtbot.keyClick(listen, "0")
    assert bench.playing.now.speed == pytest.approx(1.0)
    qtbot.keyClick(listen, Qt.Key.Key_Space)
    assert not bench.playing.now.playing


def test_button_in_focus_keeps_its_own_space(listen, qtbot, bench):
    tab = next(b for b in listen.side.findChildren(type(listen.transport._play)) if b.isChecked())
    tab.setFocus()
    qtbot.keyClick(tab, Qt.Key.Key_Space)
    assert not bench.playing.now.playing


def test_leaving_the_page_stops_the_sound(listen, window, qtbot, bench):
    qtbot.keyClick(listen, Qt.Key.Key_Space)
    window.main.show_page(0)
    assert not bench.playing.now.playing


def test_no_output_is_told_and_everything_else_works(listen, qtbot, bench, window):
    bench.playing.refusal = PlainFailure("There is no sound output.", "Plug in headphones.")
    qtbot.keyClick(listen, Qt.Key.Key_Space)
    assert window.main.messages.text == "There is no sound output. Plug in headphones."
    qtbot.keyClick(listen, Qt.Key.Key_Escape)
    assert window.main.messages.text == ""


def test_notes_pane_is_in_step(listen, qtbot):
    note = listen.view.notes[20]
    listen.transport.seek(note.start_s + 0.1)
    assert listen.notes.current_index == 20
    qtbot.keyClick(listen, Qt.Key.Key_Right, modifier=Qt.KeyboardModifier.ShiftModifier)
    assert listen.notes.current_index == 21


def test_one_key_marks_the_moment_heard(listen, qtbot, bench, settle, window):
    listen.transport.seek(10.0)
    qtbot.keyClick(listen, Qt.Key.Key_Space)
    qtbot.keyClick(listen, "2")
    settle(window)
    placed = max(bench.state.markers.values(), key=lambda marker: marker.id)
    assert placed.category == "rhythm"
    assert placed.start_s == pytest.approx(9.7), "the reaction time is taken off while it plays"
    assert listen.markers.shown.id == placed.id
    assert bench.playing.now.playing, "it plays on"


def test_standing_still_a_selection_becomes_a_span(listen, qtbot, bench, settle, window):
    listen.lanes.selectionMade.emit(4.0, 6.5)
    qtbot.keyClick(listen, "1")
    settle(window)
    placed = max(bench.state.markers.values(), key=lambda marker: marker.id)
    assert (placed.start_s, placed.end_s) == (4.0, 6.5)


def test_a_digit_without_a_category_does_nothing(listen, qtbot, bench, settle, window):
    before = dict(bench.state.markers)
    qtbot.keyClick(listen, "9")
    settle(window)
    assert bench.state.markers == before


def test_marker_is_edited(listen, qtbot, bench, settle, window):
    qtbot.keyClick(listen, "M")
    assert listen.markers.shown.id == "m1"
    qtbot.keyClick(listen, "E")
    field = window.main.focusWidget()
    assert isinstance(field, QLineEdit)
    qtbot.keyClicks(field, "1 first finger")
    qtbot.keyClick(field, Qt.Key.Key_Return)
    settle(window)
    assert bench.state.markers["m1"].text == "1 first finger", "digits went into the text"
    qtbot.keyClick(window.main.focusWidget(), Qt.Key.Key_Space)
    assert bench.playing.now.playing, "after Enter the page has its keys again"
    qtbot.keyClick(window.main.focusWidget(), Qt.Key.Key_Space)
    for choice, key in (
        (listen.markers.author, Author.TEACHER),
        (listen.markers.state, MarkerState.RETURNED),
        (listen.markers.weight, 1),
    ):
        choice.setCurrentIndex(choice.keys.index(key))
        choice.activated.emit(choice.currentIndex())
    settle(window)
    changed = bench.state.markers["m1"]
    assert (changed.author, changed.state, changed.weight) == (
        Author.TEACHER, MarkerState.RETURNED, 1
    )  # fmt: skip


def test_marker_is_deleted_and_comes_back(listen, qtbot, bench, settle, window):
    qtbot.keyClick(listen, "M")
    qtbot.keyClick(listen, Qt.Key.Key_Delete)
    settle(window)
    assert "m1" not in bench.state.markers
    ctrl = Qt.KeyboardModifier.ControlModifier
    qtbot.keyClick(window.main, "Z", modifier=ctrl)
    settle(window)
    assert "m1" in bench.state.markers
    assert "m1" in {marker.id for marker in listen.markers.markers}
    qtbot.keyClick(window.main, "Y", modifier=ctrl)
    settle(window)
    assert "m1" not in bench.state.markers


def test_markers_are_walked_through(listen, qtbot, bench):
    visited = []
    for _ in range(3):
        qtbot.keyClick(listen, "M")
        visited.append(bench.playing.now.position_s)
    qtbot.keyClick(listen, "M", modifier=Qt.KeyboardModifier.ShiftModifier)
    assert visited == [3.3, 9.2, 16.0]
    assert bench.playing.now.position_s == 9.2


def test_typing_goes_on_when_something_is_measured_meanwhile(listen, qtbot, settle, window):
    qtbot.keyClick(listen, "M")
    qtbot.keyClick(listen, "E")
    qtbot.keyClicks(window.main.focusWidget(), "half a sen")
    window.desk.takesChanged.emit()
    settle(window)
    qtbot.keyClicks(window.main.focusWidget(), "tence")
    assert listen.markers.text.text() == "half a sentence"
    listen.take_pane.form.show_settings(fakes.PlayingSettings("cello"))
    window.desk.takesChanged.emit()
    settle(window)
    assert listen.take_pane.form.settings.instrument == "cello"


def test_marker_is_moved_with_its_span(listen, qtbot, bench, settle, window):
    listen.transport.seek(5.0)
    qtbot.keyClick(listen, "M")
    assert listen.markers.shown.id == "m2"
    listen.transport.seek(12.0)
    qtbot.keyClick(listen, "E", modifier=Qt.KeyboardModifier.ShiftModifier)
    settle(window)
    moved = bench.state.markers["m2"]
    assert (moved.start_s, moved.end_s) == pytest.approx((12.0, 14.2))


def test_unmeasured_take_says_so_in_its_lanes(open_window, bench, settle):
    view = bench.listening.open_take("take11")
    empty = fakes.Curve((), "x", "Not measured yet.")
    bench.listening.open_take = lambda _id: fakes.replace(
        view, row=fakes.replace(view.row, state="waiting"), notes=(), tempo_bpm=empty,
        notes_sentence="Not measured yet.", loudness_lufs=empty,
    )  # fmt: skip
    window = open_window(bench)
    window.main.show_page(1)
    settle(window)
    assert window.main.listen.lanes.gap_sentences[1:] == ["Not measured yet."] * 3


def test_click_on_a_flag_chooses_its_marker(listen, qtbot):
    listen.grab()
    qtbot.mouseClick(
        viewport(listen), Qt.MouseButton.LeftButton, pos=at(listen, 9.2, 12) + QPoint(4, 0)
    )
    assert listen.markers.shown.id == "m2"


def test_take_is_refiled_without_touching_its_file(listen, settle, window, bench):
    before = bench.state.rows["take11"].file
    listen.take_pane.day.show_day(fakes.TODAY.replace(day=3))
    listen.take_pane.file_it.click()
    settle(window)
    assert bench.state.rows["take11"].practice_day == fakes.TODAY.replace(day=3)
    assert bench.state.rows["take11"].file == before


def test_settings_are_changed_and_the_take_measured_again(listen, settle, window, bench):
    changed = []
    bench.filing.change_settings = lambda take_id, settings: changed.append((take_id, settings))
    listen.take_pane.form.show_settings(fakes.PlayingSettings("cello", None, "just", "Eb", 66.0))
    listen.take_pane.apply.click()
    settle(window)
    take_id, settings = changed[0]
    assert take_id == "take11"
    assert settings == fakes.PlayingSettings("cello", None, "just", "Eb", 66.0)
    assert bench.state.measured == ["take11"]


def test_bad_open_strings_get_one_sentence(listen, window):
    listen.take_pane.form.show_settings(
        fakes.PlayingSettings("cello", open_strings=("C2", "Q9", "D3", "A3"))
    )
    listen.take_pane.apply.click()
    assert "'Q9' is not a note name." in window.main.messages.text


def test_earlier_and_later_take(listen, qtbot, settle, window):
    ctrl = Qt.KeyboardModifier.ControlModifier
    qtbot.keyClick(listen, Qt.Key.Key_Left, modifier=ctrl)
    settle(window)
    assert listen.view.row.id == "take10"
    qtbot.keyClick(listen, Qt.Key.Key_Right, modifier=ctrl)
    settle(window)
    assert listen.view.row.id == "take11"


def test_take_is_deleted(listen, qtbot, settle, window, bench):
    qtbot.keyClick(listen, Qt.Key.Key_Delete, modifier=Qt.KeyboardModifier.ControlModifier)
    settle(window)
    assert "take11" in bench.state.deleted
    assert listen.view.row.id == "take10"
    assert "still there" in window.main.messages.text


def test_pointer_says_note_cents_and_time(listen, qtbot):
    note = listen.view.notes[3]
    middle = (note.start_s + note.end_s) / 2
    words = listen.lanes.words_at(middle)
    assert note.name in words
    assert "± 5.0 cents" in words
    port = viewport(listen)
    QApplication.sendEvent(port, _move(QPointF(at(listen, middle))))
    assert words.split("   ")[1] in listen.hover_text


def _move(place):
    from PySide6.QtGui import QMouseEvent

    return QMouseEvent(
        QEvent.Type.MouseMove, place, place, Qt.MouseButton.NoButton, Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier,
    )  # fmt: skip
