"""A form over the page of today: Esc puts it away, and keys do not act behind it."""

import pytest
from PySide6.QtCore import Qt

from app.ui.models.recorder import RecorderState


@pytest.fixture
def form(window, settle, qtbot):
    """Return the form for a new passage, opened, with no field written in."""
    qtbot.keyClick(window.main, "N")
    settle(window)
    assert window.main.practice.forms.passage.isVisible()
    window.main.practice.setFocus()
    return window.main.practice.forms.passage


def test_escape_leaves_the_field_and_then_the_form(window, form, settle, qtbot):
    page = window.main.practice
    page.new_passage()
    settle(window)
    assert window.main.focusWidget() is not page, "the cursor is in the first field"
    qtbot.keyClick(window.main.focusWidget(), Qt.Key.Key_Escape)
    assert form.isVisible()
    qtbot.keyClick(window.main, Qt.Key.Key_Escape)
    assert not form.isVisible()
    assert not page.is_covered


@pytest.mark.parametrize("key", ["R", "W", "L", "1", "P", "S", "I", "H", "K"])
@pytest.mark.usefixtures("form")
def test_letters_typed_past_a_field_neither_record_nor_count(window, settle, qtbot, bench, key):
    form = window.main.practice.forms.passage
    minutes, running = dict(bench.state.minutes), window.main.practice.clock.view
    qtbot.keyClick(window.main, key)
    settle(window)
    assert "Esc puts it away" in window.main.messages.text
    assert window.main.recorder.state is RecorderState.IDLE
    assert window.main.practice.clock.view == running
    assert bench.state.minutes == minutes
    assert form.isVisible()
    window.main.messages.put_away()
    qtbot.keyClick(window.main, Qt.Key.Key_Escape)
    qtbot.keyClick(window.main, key)
    settle(window)
    assert "Esc puts it away" not in window.main.messages.text, "today is seen again"


def test_a_take_that_runs_is_stopped_from_behind_a_form(window, settle, qtbot):
    qtbot.keyClick(window.main, "R")
    settle(window)
    assert window.main.recorder.is_recording
    window.main.practice.change_items()
    settle(window)
    window.main.practice.setFocus()
    qtbot.keyClick(window.main, "R")
    settle(window)
    assert not window.main.recorder.is_recording


def test_what_was_wrong_is_not_said_any_more_once_a_passage_is_made(window, form, settle, qtbot):
    page = window.main.practice
    page.new_passage()
    qtbot.keyClick(window.main.focusWidget(), Qt.Key.Key_Return)
    settle(window)
    assert "needs a piece and a name" in window.main.messages.text
    for words in ("Study in D", "Coda"):
        qtbot.keyClicks(window.main.focusWidget(), words)
        qtbot.keyClick(window.main.focusWidget(), Qt.Key.Key_Return)
        settle(window)
    assert window.main.messages.text == "Coda (Study in D) is in the journal."
