"""Clips of the watched folder; the armed recording; days and numbers in the import table."""

from datetime import UTC, datetime, timedelta
from pathlib import Path

import fakes
import pytest
from PySide6.QtCore import QDate, Qt
from PySide6.QtWidgets import QLabel, QPushButton

from app.journal.failures import PlainFailure
from app.services.views import ImportProposal
from app.ui.models.recorder import RecorderState


def labels_of(widget) -> str:
    shown = [label for label in widget.findChildren(QLabel) if label.isVisibleTo(widget)]
    return "\n".join(label.text() for label in shown)


def button(widget, text) -> QPushButton:
    return next(b for b in widget.findChildren(QPushButton) if b.text() == text)


def clip(name: str, back: int = 1, failure: str = "") -> ImportProposal:
    day = fakes.TODAY - timedelta(days=back)
    at = datetime(day.year, day.month, day.day, 18, 2, tzinfo=UTC)
    return ImportProposal(
        Path(f"/phone/{name}"), day, at, "date inside the file", 31.0, "p1", True, "", failure
    )


@pytest.fixture
def offered(window, settle, bench):
    bench.watching.clips = [clip("a.mp4"), clip("b.mp4", back=0)]
    window.main.practice.clips.look()
    settle(window)
    return window


def test_new_clips_are_offered_with_day_and_passage(offered):
    said = labels_of(offered.main.practice.offers)
    assert "2 new clips in the watched folder" in said
    assert "a.mp4, 0:31: Tue 17 Mar 2026 (date inside the file), Opening" in said


def test_one_key_files_the_next_clip(offered, settle, qtbot, bench):
    before = len(bench.state.rows)
    qtbot.keyClick(offered.main, "K")
    settle(offered)
    assert len(bench.state.rows) == before + 1
    assert "1 new clip in the watched folder" in labels_of(offered.main.practice.offers)
    qtbot.keyClick(offered.main, "K")
    settle(offered)
    assert bench.watching.clips == []
    assert not offered.main.practice.offers.isVisible()
    qtbot.keyClick(offered.main, "K")
    assert offered.main.messages.text == "No new clip is offered."


def test_a_clip_is_put_aside(offered, settle, bench):
    button(offered.main.practice.offers, "Not this one").click()
    settle(offered)
    assert [c.path.name for c in bench.watching.aside] == ["a.mp4"]
    assert "the file stays where it is" in offered.main.messages.text


def test_an_unreadable_clip_is_named_and_passed_over(window, settle, qtbot, bench):
    bench.watching.clips = [clip("torn.mp4", failure="It holds no sound."), clip("b.mp4")]
    window.main.practice.clips.look()
    settle(window)
    assert "torn.mp4: It holds no sound." in labels_of(window.main.practice.offers)
    qtbot.keyClick(window.main, "K")
    settle(window)
    assert [c.path.name for c in bench.watching.clips] == ["torn.mp4"]


def test_all_of_them_can_be_corrected_first(offered, settle, qtbot, bench):
    qtbot.keyClick(offered.main, "K", Qt.KeyboardModifier.ShiftModifier)
    settle(offered)
    panel = offered.main.practice.forms.imports
    shown = labels_of(panel)
    assert "day 56 since the first entry; entered late, filed under its own day" in shown
    assert "day 57 since the first entry" in shown
    panel.rows[1].day.setDate(QDate(2026, 3, 10))
    settle(offered)
    assert panel.rows[1].number.text().startswith("day 49 since the first entry; entered late")


def test_a_folder_that_is_away_is_told_once(window, settle, bench):
    bench.watching.refusal = PlainFailure("The watched folder is not there.", "Plug in its drive.")
    window.main.practice.clips.look()
    settle(window)
    assert "Plug in its drive." in window.main.messages.text
    window.main.messages.put_away()
    window.main.practice.clips.look()
    settle(window)
    assert window.main.messages.text == ""


@pytest.mark.qt_log_ignore("propagateSizeHints", "raise")
def test_the_folder_and_the_break_are_settings(window, settle, bench):
    window.main.sheets.show_settings()
    settle(window)
    sheet = window.main.sheets.settings
    assert sheet.pause.value() == 30
    sheet.pause.setValue(45)
    sheet.watched.setText("/phone")
    sheet.keep.click()
    settle(window)
    assert bench.watching.watched == Path("/phone")
    assert bench.state.settings.break_after_min == 45


def test_recording_begins_with_the_first_note(window, settle, qtbot, bench):
    panel = window.main.practice.panel
    qtbot.keyClick(window.main, "W")
    settle(window)
    assert bench.recording.is_armed
    assert window.main.recorder.state is RecorderState.ARMED
    assert window.main.rail.marked_words(0) == "Recording begins with the first note"
    assert "waiting" in labels_of(panel)
    bench.recording.is_recording = True
    qtbot.waitUntil(lambda: window.main.recorder.state is RecorderState.RECORDING)
    bench.recording.ended = bench.recording.pending()
    qtbot.waitUntil(lambda: window.main.recorder.state is RecorderState.IDLE)
    settle(window)
    assert any(row.id.startswith("take102") for row in bench.state.rows.values())


def test_waiting_for_the_first_note_is_called_off(window, settle, qtbot, bench):
    for armed in (True, False):
        qtbot.keyClick(window.main, "W")
        settle(window)
        assert bench.recording.is_armed is armed
    assert window.main.recorder.state is RecorderState.IDLE
    assert button(window.main.practice.panel, "On first note").isEnabled()


def test_an_input_that_goes_away_while_waiting_is_told(window, settle, qtbot, bench):
    qtbot.keyClick(window.main, "W")
    settle(window)

    def gone():
        raise PlainFailure("The microphone went away.", "Plug it in again.")

    bench.recording.poll = gone
    qtbot.waitUntil(lambda: window.main.recorder.state is RecorderState.IDLE)
    assert window.main.messages.text == "The microphone went away. Plug it in again."
