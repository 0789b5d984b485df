"""One take a day: the form's field, the words on the panel, the second take, the input."""

from dataclasses import replace

import fakes
import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QCheckBox, QLabel, QPushButton

from app.journal.failures import PlainFailure
from app.ui.models.recorder import RecorderState


def labels_of(widget) -> str:
    shown = [label for label in widget.findChildren(QLabel) if label.isVisibleTo(widget)]
    return "\n".join(label.text() for label in shown)


def button(widget, text) -> QPushButton:
    return next(b for b in widget.findChildren(QPushButton) if b.text() == text)


def test_the_rule_is_a_field_of_the_passage(window, settle, qtbot, bench):
    page = window.main.practice
    qtbot.keyClick(window.main, "E")
    box = next(b for b in page.forms.passage.findChildren(QCheckBox) if b.text() == "No retake")
    box.setChecked(True)
    button(page.forms.passage, "Keep").click()
    settle(window)
    assert bench.state.passages[0].no_retake
    assert page.panel.passage.key == "p1"


@pytest.fixture
def made(open_window, bench, settle):
    """A passage without retakes whose take of today is there."""
    bench.state.passages = [replace(fakes.STUDY, no_retake=True)]
    window = open_window(bench)
    settle(window)
    return window


def test_the_panel_says_kindly_that_the_take_is_made(made, settle, qtbot, bench):
    assert "Tomorrow brings the next." in made.main.practice.panel.rule.text

    def refuse(*_arguments, **_named):
        raise PlainFailure("Today's take was made at 19:05.", "Tomorrow brings the next.")

    bench.recording.start = refuse
    qtbot.keyClick(made.main, "R")
    settle(made)
    assert made.main.messages.text == "Today's take was made at 19:05. Tomorrow brings the next."
    assert made.main.recorder.state is RecorderState.IDLE


def test_a_second_take_needs_the_reason_on_record(made, settle, qtbot, bench):
    rule = made.main.practice.panel.rule
    button(rule, "The device spoilt it").click()
    line = made.main.focusWidget()
    qtbot.keyClick(line, Qt.Key.Key_Return)
    settle(made)
    assert "needs the reason" in made.main.messages.text
    qtbot.keyClicks(line, "the microphone was muted")
    qtbot.keyClick(line, Qt.Key.Key_Return)
    settle(made)
    assert bench.no_retake.failures == {"take11": "the microphone was muted"}
    assert "One take of this passage each practice day." in rule.text
    assert not button(rule, "The device spoilt it").isVisibleTo(rule)


def test_another_input_than_last_time_is_said_before_recording(window, settle, bench):
    bench.input_memory.words = "The last take came from another input."
    window.main.practice.panel.passage_changed()
    settle(window)
    assert "another input" in labels_of(window.main.practice.panel)


def test_recording_is_held_against_practising(window):
    assert "3 recordings, 1 kept" in labels_of(window.main.practice.takes)


def test_the_rule_on_a_real_journal(real_bench, open_window, settle, qtbot):
    passage = real_bench.passages.list()[0]
    real_bench.no_retake.switch(passage.id, True)
    window = open_window(real_bench)
    settle(window)
    said = window.main.practice.panel.rule.text
    assert said, "the rule is explained, or that today's take is made"
    assert "!" not in said
