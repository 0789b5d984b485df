"""Markers by key: spans, weight, state, filter, the list in step, the player's categories.

Longer than 300 lines: cases of one subject, each of them read by itself.
"""

import time

import fakes
import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QApplication

from app.journal.kinds import Author, MarkerState
from app.ui.models.held_key import HELD_S, SETTLE_MS
from tests.ui.key_events import dated

SHIFT = Qt.KeyboardModifier.ShiftModifier
OFFSCREEN = ("propagateSizeHints", "raise")


@pytest.fixture
def listen(window, settle):
    window.main.show_page(1)
    settle(window)
    return window.main.listen


def last_placed(bench):
    return max(bench.state.markers.values(), key=lambda marker: marker.id)


def hold(listen, qtbot, bench, key, seconds, *, from_s, to_s):
    """Hold a key while the take plays from one place to another."""
    listen.transport.seek(from_s)
    qtbot.keyPress(listen, key)
    again = QKeyEvent(
        QEvent.Type.KeyPress, ord(key), Qt.KeyboardModifier.NoModifier, key, autorep=True
    )
    QApplication.sendEvent(listen, again)
    until = time.monotonic() + seconds
    while time.monotonic() < until:
        QApplication.processEvents()
        time.sleep(0.01)
    bench.playing.seek(to_s)
    listen.transport._look()
    up = QKeyEvent(
        QEvent.Type.KeyRelease, ord(key), Qt.KeyboardModifier.NoModifier, key, autorep=True
    )
    QApplication.sendEvent(listen, up)
    qtbot.keyRelease(listen, key)


def test_a_key_that_is_held_marks_a_span(listen, qtbot, bench, settle, window):
    before = len(bench.state.markers)
    qtbot.keyClick(listen, Qt.Key.Key_Space)
    hold(listen, qtbot, bench, "3", HELD_S + 0.1, from_s=5.0, to_s=7.5)
    settle(window)
    placed = last_placed(bench)
    assert placed.category == "sound"
    reaction_s = window.desk.preferences.reaction_s
    assert (placed.start_s, placed.end_s) == pytest.approx((5.0 - reaction_s, 7.5 - reaction_s))
    assert len(bench.state.markers) == before + 1, "the repeats of the key placed nothing"
    assert bench.playing.now.playing


def test_repeats_that_qt_does_not_flag_are_told_by_their_time(listen, qtbot, bench, settle, window):
    before = len(bench.state.markers)
    qtbot.keyClick(listen, Qt.Key.Key_Space)
    listen.transport.seek(5.0)
    qtbot.keyPress(listen, "3")
    qtbot.wait(round(1000 * HELD_S) + 50)
    for at_ms in (70_000, 70_040, 70_081):  # as X11 sends them
        up = dated(QEvent.Type.KeyRelease, "3", at_ms)
        QApplication.sendEvent(listen, up)
        override = dated(QEvent.Type.ShortcutOverride, "3", at_ms)
        QApplication.sendEvent(listen, override)
        assert override.isAccepted(), "no action is triggered once more"
        QApplication.sendEvent(listen, dated(QEvent.Type.KeyPress, "3", at_ms))
        qtbot.wait(3 * SETTLE_MS)
        assert listen.marking._held.is_waiting
    bench.playing.seek(7.5)
    listen.transport._look()
    QApplication.sendEvent(listen, dated(QEvent.Type.KeyRelease, "3", 70_120))
    qtbot.waitUntil(lambda: not listen.marking._held.is_waiting)
    settle(window)
    assert len(bench.state.markers) == before + 1
    assert last_placed(bench).end_s is not None


def test_two_quick_taps_are_two_markers(listen, qtbot, bench, settle, window):
    before = len(bench.state.markers)
    qtbot.keyClick(listen, Qt.Key.Key_Space)
    listen.transport.seek(5.0)
    qtbot.keyPress(listen, "3")
    QApplication.sendEvent(listen, dated(QEvent.Type.KeyRelease, "3", 70_000))
    override = dated(QEvent.Type.ShortcutOverride, "3", 70_090)
    QApplication.sendEvent(listen, override)
    assert not override.isAccepted()
    assert not listen.marking._held.is_waiting, "the first is settled"
    qtbot.keyClick(listen, "3")
    settle(window)
    assert len(bench.state.markers) == before + 2


def test_a_short_press_marks_a_moment(listen, qtbot, bench, settle, window):
    qtbot.keyClick(listen, Qt.Key.Key_Space)
    hold(listen, qtbot, bench, "3", 0.02, from_s=5.0, to_s=5.1)
    settle(window)
    assert last_placed(bench).end_s is None
    assert last_placed(bench).start_s == pytest.approx(4.7)


def test_a_span_across_the_seam_of_a_loop_ends_with_the_loop(listen, qtbot, bench, settle, window):
    listen.lanes.selectionMade.emit(4.0, 8.0)
    qtbot.keyClick(listen, "O")
    qtbot.keyClick(listen, Qt.Key.Key_Space)
    hold(listen, qtbot, bench, "1", HELD_S + 0.1, from_s=7.0, to_s=4.5)
    settle(window)
    assert (last_placed(bench).start_s, last_placed(bench).end_s) == pytest.approx((6.7, 8.0))


def test_less_of_a_slowed_take_passes_while_the_player_reacts(listen, qtbot, bench, settle, window):
    bench.playing.set_speed(0.5)
    listen.transport.seek(10.0)
    qtbot.keyClick(listen, Qt.Key.Key_Space)
    qtbot.keyClick(listen, "1")
    settle(window)
    assert last_placed(bench).start_s == pytest.approx(10.0 - 0.5 * 0.3)


def test_the_span_is_drawn_while_the_key_is_down(listen, qtbot, bench, settle, window):
    qtbot.keyClick(listen, Qt.Key.Key_Space)
    listen.transport.seek(5.0)
    qtbot.keyPress(listen, "3")
    bench.playing.seek(6.0)
    listen.transport._look()
    assert listen.lanes._overlay.pending == pytest.approx((5.0, 6.0))
    qtbot.keyRelease(listen, "3")
    assert listen.lanes._overlay.pending is None
    settle(window)


def test_the_menu_places_a_moment_at_once(listen, qtbot, bench, settle, window):
    qtbot.keyClick(listen, Qt.Key.Key_Space)
    listen.transport.seek(9.0)
    window.desk.keys.action("listen.mark_4").trigger()
    settle(window)
    assert (last_placed(bench).category, last_placed(bench).end_s) == ("shift", None)


def test_text_is_typed_while_it_plays_on(listen, qtbot, bench, settle, window):
    qtbot.keyClick(listen, Qt.Key.Key_Space)
    listen.transport.seek(9.0)
    qtbot.keyClick(listen, "2")
    settle(window)
    qtbot.keyClick(listen, "E")
    for at, letter in enumerate("late 2 m"):
        bench.playing.seek(9.5 + at)
        listen.transport._look()
        qtbot.keyClicks(window.main.focusWidget(), letter)
    qtbot.keyClick(window.main.focusWidget(), Qt.Key.Key_Return)
    settle(window)
    assert last_placed(bench).text == "late 2 m"
    assert bench.playing.now.playing
    assert window.main.focusWidget() is listen


def test_weight_and_state_have_a_key(listen, qtbot, bench, settle, window):
    qtbot.keyClick(listen, "M")
    weights, states = [], []
    for _ in range(3):
        qtbot.keyClick(listen, "W")
        settle(window)
        weights.append(bench.state.markers["m1"].weight)
    for _ in range(3):
        qtbot.keyClick(listen, "T")
        settle(window)
        states.append(bench.state.markers["m1"].state)
    assert sorted(weights) == [1, 2, 3]
    assert states == [MarkerState.SETTLED, MarkerState.RETURNED, MarkerState.SETTLED]
    for _ in range(6):
        qtbot.keyClick(window.main, "Z", modifier=Qt.KeyboardModifier.ControlModifier)
        settle(window)
    assert bench.state.markers["m1"].state is MarkerState.TO_WORK_ON


def put_markers(bench, window, settle):
    add = bench.marking.add
    add("take11", 1.0, category="rhythm", text="drags into the bar", author=Author.TEACHER)
    add("take11", 2.0, category="rhythm", text="late", state=MarkerState.SETTLED)
    add("take11", 12.0, category="shift", text="slides late")
    window.desk.markersChanged.emit("take11")
    settle(window)


def test_markers_are_filtered_by_category_state_author_and_words(
    listen, qtbot, bench, settle, window
):
    put_markers(bench, window, settle)
    pane = listen.markers
    everything = len(pane.markers)
    qtbot.keyClick(listen, "F")
    filtering = pane.filter
    assert window.main.focusWidget() is filtering.words
    qtbot.keyClicks(filtering.words, "LATE")
    assert {m.text for m in pane.markers} >= {"late", "slides late"}
    assert all("late" in m.text for m in pane.markers)
    for choice, key, check in (
        (filtering.category, "rhythm", lambda m: m.category == "rhythm"),
        (filtering.state, "settled", lambda m: m.state is MarkerState.SETTLED),
    ):
        choice.setCurrentIndex(choice.keys.index(key))
        choice.activated.emit(choice.currentIndex())
        assert pane.markers
        assert all(check(marker) for marker in pane.markers)
    assert [m.text for m in pane.markers] == ["late"]
    drawn = listen.lanes._overlay.marker_flags.markers
    assert drawn == pane.markers, "the lanes draw the same ones"
    listen.setFocus()
    qtbot.keyClick(listen, "F")
    assert len(pane.markers) == everything
    filtering.author.setCurrentIndex(filtering.author.keys.index("teacher"))
    filtering.author.activated.emit(filtering.author.currentIndex())
    assert {m.author for m in pane.markers} == {Author.TEACHER}


def test_walking_goes_by_the_filter(listen, qtbot, bench, settle, window):
    put_markers(bench, window, settle)
    listen.markers.filter.words.setText("late")
    visited = []
    for _ in range(2):
        qtbot.keyClick(listen, "M")
        visited.append(bench.playing.now.position_s)
    assert visited == [2.0, 12.0]


def test_a_new_marker_is_seen_whatever_the_filter_lets_through(
    listen, qtbot, bench, settle, window
):
    listen.markers.filter.words.setText("nothing has these words")
    assert listen.markers.markers == ()
    listen.transport.seek(8.0)
    qtbot.keyClick(listen, "1")
    settle(window)
    assert listen.markers.shown.id == last_placed(bench).id


def test_the_list_is_in_step_and_the_chosen_marker_stays_chosen(listen, qtbot):
    qtbot.keyClick(listen, "M")
    chosen = listen.markers.shown.id
    for marker in listen.markers.markers:
        listen.transport.seek(marker.start_s + 0.1)
        assert listen.markers.passed == marker
        cells = [listen.markers._place(other) for other in listen.markers.markers]
        assert [at for at, cell in enumerate(cells) if "▸" in cell] == [
            listen.markers.markers.index(marker)
        ]
    assert listen.markers.shown.id == chosen


@pytest.mark.qt_log_ignore(*OFFSCREEN)
def test_categories_are_the_players_own(listen, qtbot, bench, settle, window):
    window.desk.keys.action("categories").trigger()
    settle(window)
    sheet = window.main.sheets.categories
    assert not sheet.isModal()
    sheet.name.setText("bow hold")
    qtbot.keyClick(sheet.name, Qt.Key.Key_Return)
    settle(window)
    assert listen.view.categories[-1] == "bow hold"
    at = listen.view.categories.index("rhythm")
    model = sheet.table.rows_model
    assert model.setData(model.index(at, 1), "pulse")
    settle(window)
    assert listen.view.categories[at] == "pulse"
    sheet.table.choose(at)
    sheet.up.click()
    settle(window)
    assert listen.view.categories[at - 1] == "pulse"
    window.main.activateWindow()
    qtbot.waitUntil(window.main.isActiveWindow)
    listen.setFocus()
    qtbot.keyClick(listen, str(at))
    settle(window)
    assert last_placed(bench).category == "pulse", "the keys follow the order"
    sheet.table.choose(at - 1)
    sheet.retire.click()
    settle(window)
    assert "pulse" not in listen.view.categories
    assert last_placed(bench).category == "pulse", "a marker keeps its word"
    assert "pulse" in listen.markers.editor.category.keys
    sheet.former.choose("pulse")
    sheet.back.click()
    settle(window)
    assert listen.view.categories[-1] == "pulse"


@pytest.mark.qt_log_ignore(*OFFSCREEN)
def test_a_category_is_not_added_twice(listen, qtbot, bench, settle, window):
    window.desk.keys.action("categories").trigger()
    settle(window)
    before = bench.state.settings.categories
    window.main.sheets.categories.name.setText(" Rhythm ")
    window.main.sheets.categories.add()
    settle(window)
    assert bench.state.settings.categories == before
    assert "already" in window.main.messages.text


def test_tab_walks_from_the_lanes_to_the_transport_to_the_list(listen, qtbot, window):
    """The order of the eye: which take, the lanes, what plays them, then the pane beside."""
    listen.side.show_pane(1)
    window.main.activateWindow()
    listen.setFocus()
    order = []
    for _ in range(60):
        qtbot.keyClick(window.main.focusWidget() or listen, Qt.Key.Key_Tab)
        order.append(window.main.focusWidget())
    names = [widget.accessibleName() for widget in order if listen.isAncestorOf(widget)]
    wanted = [
        listen.lanes.accessibleName(),
        "Play",
        "Speed in percent",
        "Volume in percent",
        "Markers of the take",
    ]
    places = [next(at for at, name in enumerate(names) if name.startswith(w)) for w in wanted]
    assert places == sorted(places)


def test_click_and_drone_follow_the_take(listen, qtbot, bench, settle, window):
    qtbot.keyClick(listen, "K")
    settle(window)
    guides, beat_s, _ = bench.playing.along
    assert guides.click_bpm is not None
    assert beat_s == pytest.approx(listen.view.beat_s), "on the beats that were measured"
    qtbot.keyClick(listen, "D")
    settle(window)
    guides, _, _ = bench.playing.along
    assert guides.drone == "A3"
    assert guides.temperament == fakes.STUDY.settings.temperament
    qtbot.keyClick(listen, "K")
    qtbot.keyClick(listen, "D")
    settle(window)
    assert bench.playing.along[0].is_silent


def test_output_is_chosen_beside_the_take_and_it_goes_on(listen, qtbot, bench, settle, window):
    listen.transport.seek(6.0)
    qtbot.keyClick(listen, Qt.Key.Key_Space)
    qtbot.keyClick(listen, "P")
    settle(window)
    output = listen.along_strip.output
    assert window.main.focusWidget() is output
    output.setCurrentIndex(output.keys.index("box"))
    output.activated.emit(output.currentIndex())
    settle(window)
    assert bench.playing.output == "box"
    assert bench.state.settings.output_device == "box"
    assert bench.playing.now.playing
    assert bench.playing.now.position_s == pytest.approx(6.0)
