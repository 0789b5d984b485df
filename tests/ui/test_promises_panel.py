"""Promises in the window: another rule midway, breaks, shared numbers, undo; numbers apart."""

from datetime import date, timedelta

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QPushButton

from app.journal.promises import PromiseRule, Stretch

TODAY = date(2026, 3, 14)
FIRST = TODAY - timedelta(days=9)


def button(widget, text) -> QPushButton:
    return next(b for b in widget.findChildren(QPushButton) if b.text() == text)


@pytest.fixture
def panel(real_bench, open_window, settle, qtbot):
    for back in range(9):
        real_bench.practising.set_minutes(TODAY - timedelta(days=back), 20)
    real_bench.promises.make("Scales", PromiseRule(FIRST, Stretch.IN_TOTAL, 40))
    window = open_window(real_bench)
    window.main.show_page(3)
    settle(window)
    qtbot.keyClick(window.main, "P")
    settle(window)
    panel = window.main.calendar.promises
    assert panel.isVisible()
    panel.settle = lambda: settle(window)
    panel.main = window.main
    panel.wait = qtbot
    return panel


def cells(panel, at: int = 0) -> dict[str, str]:
    model = panel.table.rows_model
    return {
        column.heading: model.data(model.index(at, n), Qt.ItemDataRole.DisplayRole)
        for n, column in enumerate(model.columns)
    }


def test_a_rule_changed_midway_keeps_the_history_and_says_from_when(panel, real_bench):
    before = cells(panel)
    button(panel, "Change the rule").click()
    assert panel.form.first.day == TODAY, "days that are over keep their rule"
    assert panel.form.name.text() == "Scales"
    assert panel.form.days.value() == 40
    panel.form.first.show_day(TODAY + timedelta(days=1))
    panel.form.minutes.setValue(45)
    panel.form.takes.setValue(1)
    panel.form.both.setChecked(True)
    button(panel, "Change from that day on").click()
    panel.settle()
    assert "holds from Sun 15 Mar 2026; the days before keep theirs" in panel.main.messages.text
    assert "Thu 5 Mar 2026 to Sat 14 Mar 2026: 40 days" in panel.words
    assert "40 days in total, anything counts" in panel.words
    assert "at least 45 min and 1 take a day" in panel.words
    assert "Since Sun 15 Mar 2026" in panel.words
    assert cells(panel) == before
    (view,) = real_bench.promises.list()
    assert [rule.since for rule in view.promise.rules] == [FIRST, TODAY + timedelta(days=1)]
    assert panel.form.make.isVisible(), "the form is for a new promise again"


def test_a_rule_for_days_that_are_over_is_refused_in_words(panel, real_bench):
    button(panel, "Change the rule").click()
    panel.form.first.show_day(FIRST)
    button(panel, "Change from that day on").click()
    panel.settle()
    assert "cannot be changed for days that are over" in panel.main.messages.text
    assert len(real_bench.promises.list()[0].promise.rules) == 1


def test_a_break_is_planned_with_its_reason_and_dropped(panel, real_bench):
    panel.pause_from.show_day(TODAY + timedelta(days=2))
    panel.pause_to.show_day(TODAY + timedelta(days=4))
    panel.wait.keyClicks(panel.why, "a journey")
    button(panel, "Pause").click()
    panel.settle()
    assert "A break is planned from Mon 16 Mar 2026 to Wed 18 Mar 2026." in panel.words
    assert real_bench.promises.list()[0].promise.breaks[0].reason == "a journey"
    button(panel, "Drop the break").click()
    panel.settle()
    assert "A break is planned" not in panel.words
    assert not button(panel, "Drop the break").isEnabled()


def test_a_shared_number_is_frozen_and_late_days_change_the_totals_only(panel, real_bench):
    button(panel, "Share today's number").click()
    panel.settle()
    assert QGuiApplication.clipboard().text() == "day 10 \N{MIDDLE DOT} 9 days kept"
    real_bench.practising.set_minutes(FIRST, 20)
    panel.start(TODAY)
    panel.settle()
    assert cells(panel)["Days kept"] == "10"
    (numbers,) = real_bench.promises.numbers_for(TODAY)
    assert (numbers.days_kept, numbers.days_kept_now, numbers.day_number) == (9, 10, 10)
    button(panel, "Share today's number").click()
    panel.settle()
    assert "9 days kept" in QGuiApplication.clipboard().text()


def test_the_numbers_stand_apart_for_past_and_running_promises(panel, real_bench):
    old = PromiseRule(TODAY - timedelta(days=40), Stretch.IN_TOTAL, 2)
    real_bench.promises.make("Two days", old)
    panel.start(TODAY)
    panel.settle()
    running, past = cells(panel, 0), cells(panel, 1)
    assert running == {
        "Promise": "Scales", "": "running", "Days kept": "9", "Day since start": "10",
        "Missed": "1", "Rest taken": "0", "Paused": "0", "Still to keep": "31",
    }  # fmt: skip
    assert (past["Promise"], past[""]) == ("Two days", "kept")
    panel.table.choose(1)
    panel._show_chosen(panel.table.chosen)
    assert not button(panel, "Change the rule").isEnabled(), "a kept promise stands still"


def test_undo_takes_the_end_of_a_promise_back(panel, real_bench):
    button(panel, "End today").click()
    panel.settle()
    assert cells(panel)[""] == "ended"
    panel.main.desk.undo()
    panel.settle()
    assert "Undone: promise 'Scales': ended." in panel.main.messages.text
    assert cells(panel)[""] == "running"
    assert real_bench.promises.list()[0].promise.closed_on is None
