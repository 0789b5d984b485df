"""Hands full: the large view, marks while playing, keys that a pedal types."""

import math

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QFont, QFontMetricsF
from PySide6.QtWidgets import QLabel

from app.journal.clicks import ClickBeats
from app.journal.records import PlayingSettings
from app.ui.keys import PEDAL_IDS, keys_text, refusal
from app.ui.models.recorder import RecorderState
from app.ui.widgets.large_view import CLOCK, ELAPSED, WORDS

OFFSCREEN = ("propagateSizeHints", "raise")


def test_one_key_after_the_launch_records(open_window, bench, settle, qtbot):
    # At most two keys were asked for.
    window = open_window(bench)
    qtbot.keyClick(window.main, "R")
    settle(window)
    assert window.main.recorder.state is RecorderState.RECORDING


def test_large_view_opens_shows_and_closes_with_one_key(window, settle, qtbot, bench):
    page = window.main.practice
    qtbot.keyClick(window.main, "F")
    assert page.large.isVisible()
    assert not page.head.isVisible()
    qtbot.keyClick(window.main, "1")
    qtbot.keyClick(window.main, "R")
    settle(window)
    qtbot.waitUntil(lambda: page.large.board.lines[4] == "Good")
    title, sitting, state, elapsed, _level = page.large.board.lines
    assert (title, sitting, state, elapsed) == (
        "G major in three octaves", "0:00", "Recording", "0:03",
    )  # fmt: skip
    assert "Recording" in page.large.board.accessibleDescription()
    assert page.large.record.text() == "Stop"
    page.large.record.click()
    settle(window)
    assert window.main.recorder.state is RecorderState.IDLE
    qtbot.keyClick(window.main, Qt.Key.Key_Escape)
    assert page.head.isVisible()


@pytest.mark.parametrize("share", [WORDS, CLOCK, ELAPSED])
def test_large_view_can_be_read_from_two_metres(window, qtbot, share):
    # ISO 9241-303 (from memory): characters of 16 minutes of arc at least. At 96 dpi.
    window.main.practice.show_large(large=True)
    face = QFont(window.main.font())
    face.setPixelSize(round(share * window.main.practice.large.board.height()))
    height_mm = QFontMetricsF(face).capHeight() / 96 * 25.4
    assert math.degrees(height_mm / 2000) * 60 >= 16


def test_marks_while_playing_become_markers(window, settle, qtbot, bench):
    window.main.desk.preferences.reaction_s = 0.3
    qtbot.keyClick(window.main, "M")
    assert window.main.messages.text == "Nothing is being recorded. Record first, then mark."
    qtbot.keyClick(window.main, "R")
    settle(window)
    qtbot.keyClick(window.main, "M")
    settle(window)
    assert window.main.recorder.mark_count == 1
    qtbot.keyClick(window.main, "R")
    settle(window)
    made = [m for m in bench.state.markers.values() if m.text == "marked while playing"]
    assert [(m.start_s, m.category) for m in made] == [(pytest.approx(2.9), "other")]
    assert window.main.recorder.mark_count == 0


def test_stop_has_a_key_of_its_own(window, settle, qtbot):
    shift = Qt.KeyboardModifier.ShiftModifier
    qtbot.keyClick(window.main, "R", shift)
    settle(window)
    assert window.main.recorder.state is RecorderState.IDLE
    qtbot.keyClick(window.main, "R")
    settle(window)
    qtbot.keyClick(window.main, "R", shift)
    settle(window)
    assert window.main.recorder.state is RecorderState.IDLE


@pytest.mark.qt_log_ignore(*OFFSCREEN)
def test_a_pedal_is_bound_used_shown_and_remembered(open_window, bench, settle, qtbot):
    window = open_window(bench)
    window.main.sheets.show_keys()
    sheet = window.main.sheets.own_keys
    assert not sheet.isModal()
    qtbot.keyClick(sheet.fields["practice.record"], Qt.Key.Key_PageDown)
    qtbot.keyClick(sheet.fields["clock.next_item"], "B")
    sheet.keep()
    settle(window)
    window.main.activateWindow()
    qtbot.waitUntil(window.main.isActiveWindow)
    qtbot.keyClick(window.main, Qt.Key.Key_PageDown)
    settle(window)
    assert window.main.recorder.state is RecorderState.RECORDING
    qtbot.keyClick(window.main, "R")
    settle(window)
    assert window.main.recorder.state is RecorderState.IDLE, "the usual key goes on working"
    qtbot.keyClick(window.main, "B")
    settle(window)
    assert bench.clock.item_id == "i1"
    window.main.sheets.show_help()
    assert "R or PgDown" in window.main.sheets.help_text()
    menu = window.main.rail.menu.menu()
    menu.aboutToShow.emit()
    entries = [entry.text() for part in menu.actions() for entry in part.menu().actions()]
    assert "Record, or stop recording\tR or PgDown" in entries
    assert "R or PgDown" in window.main.practice.large.record.toolTip()
    again = open_window(bench)
    assert again.main.desk.keys.own_key("practice.record") == "PgDown"


@pytest.mark.qt_log_ignore(*OFFSCREEN)
def test_a_key_that_is_taken_is_refused_kindly(window, qtbot):
    window.main.sheets.show_keys()
    sheet = window.main.sheets.own_keys
    qtbot.keyClick(sheet.fields["practice.record"], "P")
    assert sheet.words == (
        "P already means: start the practice clock, pause it, or go on. Choose another key."
    )
    assert sheet.fields["practice.record"].text() == ""
    qtbot.keyClick(sheet.fields["practice.record"], "B")
    assert sheet.words == ""
    qtbot.keyClick(sheet.fields["practice.mark"], "B")
    assert sheet.words.startswith("B already means: record, or stop recording.")
    qtbot.keyClick(sheet.fields["practice.record"], Qt.Key.Key_Backspace)
    qtbot.keyClick(sheet.fields["practice.mark"], "B")
    assert sheet.fields["practice.mark"].text() == "B"


def test_keys_that_walk_are_kept_free():
    for key in ("Tab", "Esc", "Shift+Tab"):
        assert "needed to get about" in refusal("practice.record", key, {})
    for action_id in PEDAL_IDS:
        assert refusal(action_id, "F8", {}) == ""
        assert keys_text(action_id)


@pytest.mark.qt_log_ignore(*OFFSCREEN)
def test_tab_walks_through_the_fields_of_the_keys(window, qtbot):
    window.main.sheets.show_keys()
    sheet = window.main.sheets.own_keys
    first, second = (sheet.fields[which] for which in PEDAL_IDS[:2])
    first.setFocus()
    qtbot.keyClick(first, Qt.Key.Key_Tab)
    assert sheet.focusWidget() is second
    assert first.text() == ""


def test_click_and_drone_sound_with_the_next_takes(window, settle, qtbot, bench):
    page = window.main.practice
    qtbot.keyClick(window.main, "C")
    form = page.forms.guides
    assert form.isVisible()
    assert "start low" in "\n".join(label.text() for label in form.findChildren(QLabel))
    form.click.setChecked(True)
    form.bpm.setValue(80)
    form.count_in.setValue(1)
    form.drone.setText("D3 A3")
    form.use()
    assert page.head.isVisible()
    said = "\n".join(label.text() for label in page.panel.findChildren(QLabel))
    assert "Will sound: click at 80.0 BPM, 1 bar counted in, drone D3 A3" in said
    qtbot.keyClick(window.main, "R")
    settle(window)
    guides = bench.recording.guides
    assert (guides.click_bpm, guides.count_in_bars, guides.drone) == (80.0, 1, "D3 A3")
    qtbot.keyClick(window.main, "R")
    settle(window)
    form.turn_off()
    qtbot.keyClick(window.main, "R")
    settle(window)
    assert bench.recording.guides is None


def test_the_delay_is_measured_after_a_caution(window, settle, qtbot, bench):
    qtbot.keyClick(window.main, "C")
    settle(window)
    delay = window.main.practice.forms.guides.delay
    assert "is not measured" in delay.words.text()
    delay.measure.click()
    assert bench.latency.found is None, "nothing sounds before the caution was read"
    assert "headphones off your ears" in delay.caution.text()
    assert delay.caution.isVisible()
    delay.play.click()
    settle(window)
    assert "12.3 ms" in delay.words.text()
    assert "0.4 ms" in delay.words.text()
    assert not delay.caution.isVisible()


def test_the_delay_is_not_measured_while_a_take_is_recorded(window, settle, qtbot, bench):
    qtbot.keyClick(window.main, "R")
    settle(window)
    window.main.practice.forms.guides.delay.measure.click()
    assert "A recording runs" in window.main.messages.text
    assert bench.latency.found is None


def test_an_armed_take_is_played_along_with_too(window, settle, qtbot, bench):
    form = window.main.practice.forms.guides
    form.drone.setText("A3")
    form.use()
    window.main.practice.panel.arm()
    settle(window)
    assert bench.recording.is_armed
    assert bench.recording.guides.drone == "A3"


def test_accents_that_are_no_numbers_are_refused_kindly(window):
    form = window.main.practice.forms.guides
    form.click.setChecked(True)
    form.accents.setText("strong weak")
    form.use()
    assert "are no strengths of beats" in window.main.messages.text
    assert window.main.recorder.guides is None


def test_settings_without_a_field_stay_as_they_are(window):
    click = ClickBeats(3.3, 60 / 72, 4)
    shown = PlayingSettings("viola", automatic_gain="unknown", with_mute=True, click=click)
    form = window.main.listen.take_pane.form
    form.show_settings(shown)
    assert form.settings == shown
