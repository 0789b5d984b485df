"""The practice clock in the window: keys, items, break, the forgotten question."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import fakes
import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QPushButton, QSpinBox

from app.journal.forgotten_clock import Forgotten
from app.journal.kinds import Ending, ItemKind
from app.services.clock_views import ForgottenChoice, ForgottenView
from app.wiring import open_workbench

EVENING = datetime(2026, 3, 14, 19, 30, tzinfo=UTC)


def labels_of(widget) -> str:
    shown = [label for label in widget.findChildren(QLabel) if label.isVisibleTo(widget)]
    return "\n".join(label.text() for label in shown)


def button(widget, text) -> QPushButton:
    return next(b for b in widget.findChildren(QPushButton) if b.text().startswith(text))


def table_of(window) -> list[list[str]]:
    model = window.main.practice.clock_card.table.rows_model
    return [[column.text(row) for column in model.columns] for row in model.rows]


def test_one_key_starts_pauses_and_goes_on(window, settle, qtbot, bench):
    card = window.main.practice.clock_card
    for wanted, label in (("running", "Pause"), ("paused", "Go on"), ("running", "Pause")):
        qtbot.keyClick(window.main, "P")
        settle(window)
        assert bench.clock.phase == wanted
        assert button(card, label).isVisible()
    qtbot.keyClick(window.main, "S")
    settle(window)
    assert bench.clock.phase == "stopped"
    assert "Not running" in labels_of(card)


def test_one_key_chooses_the_item_while_the_clock_runs(window, settle, qtbot, bench):
    qtbot.keyClick(window.main, "1")
    settle(window)
    assert (bench.clock.phase, bench.clock.item_id) == ("running", "i1")
    assert "G major in three octaves" in labels_of(window.main.practice.clock_card)
    qtbot.keyClick(window.main, "3")
    settle(window)
    assert bench.clock.item_id == "i3"
    qtbot.keyClick(window.main, "I")
    settle(window)
    assert bench.clock.item_id == "i1", "after the last comes the first"


def test_a_passage_becomes_an_item_and_is_offered_for_recording(window, settle, qtbot, bench):
    panel = window.main.practice.panel
    panel.passage.choose("")
    qtbot.keyClick(window.main, "2")
    settle(window)
    assert bench.clock.item_id == "item-p1"
    assert panel.passage.key == "p1"


def test_a_key_without_an_item_says_what_to_do(window, settle, qtbot, bench):
    qtbot.keyClick(window.main, "8")
    settle(window)
    assert bench.clock.phase == "stopped"
    assert window.main.messages.text == "There is no item 8 yet. Add it to the list of items."


def test_minutes_of_every_item_today(window, settle, bench):
    bench.clock.start("i1")
    bench.clock.minutes = {"i1": 12.3, None: 0.4}
    window.main.practice.clock.read()
    settle(window)
    rows = table_of(window)
    assert rows[0] == [
        "1",
        "\N{BLACK RIGHT-POINTING SMALL TRIANGLE} G major in three octaves",
        "12 min",
    ]
    assert rows[1][2] == ""
    assert rows[-1] == ["", "No item", "under 1 min"]
    words = window.main.practice.clock_card.table.rows_model.rows[0].words
    assert words == "G major in three octaves, being practised, 12 min today, key 1"


def test_keys_keep_their_items_whatever_was_practised_last(window, settle, bench):
    before = [row[1] for row in table_of(window)]
    bench.state.items.reverse()
    bench.state.items.insert(0, fakes.ItemRow("i9", "Sight-reading", ItemKind.OTHER, None, None))
    window.main.practice.clock.read()
    settle(window)
    assert [row[1] for row in table_of(window)] == [*before, "Sight-reading"]


def test_break_is_suggested_once_and_can_wait(window, settle, bench):
    bench.clock.start("i1")
    bench.clock.break_sentence = "31 min without a break. If anything hurts, stop for today."
    window.main.practice.clock.read()
    settle(window)
    card = window.main.practice.clock_card
    assert "stop for today" in labels_of(card)
    button(card, "Later").click()
    settle(window)
    assert "stop for today" not in labels_of(card)


@pytest.fixture
def question() -> ForgottenView:
    return ForgottenView(
        Forgotten.UNTOUCHED,
        "The clock has been running since 19:00: how long did you play?",
        "Quartet",
        fakes.NOW,
        (ForgottenChoice(Ending.AT_LAST_TOUCH, "Until 19:40, when it was last used", 40.0),),
        180.0,
    )


def test_a_forgotten_clock_asks_and_counts_nothing(window, settle, bench, question):
    bench.clock.question = question
    window.main.practice.clock.read()
    settle(window)
    card = window.main.practice.clock_card
    assert "how long did you play?" in labels_of(card.forgotten)
    assert not button(card, "Stop").isEnabled()
    assert window.main.isEnabled(), "nothing is modal"
    button(card.forgotten, "Until 19:40").click()
    settle(window)
    assert bench.clock.answers == [(Ending.AT_LAST_TOUCH, None)]
    assert not card.forgotten.isVisible()


def test_forgotten_minutes_can_be_typed_and_are_not_overwritten(
    window, settle, qtbot, bench, question
):
    bench.clock.question = question
    window.main.practice.clock.read()
    settle(window)
    field = window.main.practice.clock_card.forgotten.findChild(QSpinBox)
    field.setValue(25)
    window.main.practice.clock.read()
    settle(window)
    assert field.value() == 25
    button(window.main.practice.clock_card.forgotten, "Keep these minutes").click()
    settle(window)
    assert bench.clock.answers == [(Ending.MINUTES, 25.0)]


def test_only_one_thing_asks_at_a_time(open_window, bench, settle, question):
    bench.recording.left = (replace(bench.recording.pending(), duration_s=60.0),)
    bench.clock.question = question
    bench.clock.break_sentence = "31 min without a break."
    window = open_window(bench)
    settle(window)
    page = window.main.practice
    shown = labels_of(page)
    assert "how long did you play?" in shown
    assert "never filed" not in shown
    assert "without a break" not in shown
    bench.clock.question = None
    page.clock.read()
    settle(window)
    assert "never filed" in labels_of(page)
    assert "without a break" not in labels_of(page)


def test_items_are_added_ordered_renamed_and_put_away(window, settle, qtbot, bench):
    page = window.main.practice
    qtbot.keyClick(window.main, "I", Qt.KeyboardModifier.ShiftModifier)
    settle(window)
    qtbot.keyClicks(page.forms.items.name, "Shifts on one string")
    qtbot.keyClick(page.forms.items.name, Qt.Key.Key_Return)
    settle(window)
    assert [row.title for row in page.clock.items][-1] == "Shifts on one string"
    page.forms.items.table.choose(3)
    button(page.forms.items, "Up").click()
    settle(window)
    assert [row.title for row in page.clock.items][2] == "Shifts on one string"
    assert page.forms.items.table.chosen.title == "Shifts on one string"
    model = page.forms.items.table.rows_model
    assert model.setData(model.index(2, 1), "Shifts, slowly")
    settle(window)
    assert page.clock.items[2].title == "Shifts, slowly"
    button(page.forms.items, "Put away").click()
    settle(window)
    assert [item.name for item in bench.state.retired] == ["Shifts, slowly"]
    button(page.forms.items, "Bring back").click()
    settle(window)
    assert "Shifts, slowly" in [row.title for row in page.clock.items]
    button(page.forms.items, "Done").click()
    assert page.head.isVisible()


def test_the_clock_survives_a_restart(real_journal, open_window, settle, qtbot):
    now = [EVENING]
    with open_workbench(real_journal, clock=lambda: now[0]) as bench:
        window = open_window(bench)
        qtbot.keyClick(window.main, "1")
        settle(window)
        assert window.main.practice.clock.view.item_title == "Study: Opening"
        window.close()
    now[0] += timedelta(minutes=5)
    with open_workbench(real_journal, clock=lambda: now[0]) as bench:
        window = open_window(bench)
        settle(window)
        view = window.main.practice.clock.view
        assert view.phase == "running"
        assert view.block_s == pytest.approx(300)
        qtbot.keyClick(window.main, "S")
        settle(window)
        assert window.main.practice.clock.view.phase == "stopped"
        # 40 minutes were typed for this day before.
        assert bench.practising.today().minutes == pytest.approx(45)
        window.close()


def test_sounding_minutes_are_counted_and_offered(window, settle, qtbot, bench):
    card = window.main.practice.clock_card
    qtbot.keyClick(window.main, "H")
    settle(window)
    assert bench.sounding.listens
    assert "It sounds now; 12 min sounded" in labels_of(card)
    qtbot.keyClick(window.main, "H")
    settle(window)
    assert not bench.sounding.listens
    said = labels_of(card)
    assert "The instrument sounded for 12 min." in said
    assert "8 min would be added to the day." in said
    button(card, "Keep them").click()
    settle(window)
    assert [offer.minutes for offer in bench.sounding.kept] == [8.0]
    assert "would be added" not in labels_of(card)


def test_an_input_that_goes_while_listening_loses_no_minutes(window, settle, qtbot, bench):
    qtbot.keyClick(window.main, "H")
    settle(window)
    bench.sounding.ended = "The sound input went away; the minutes are kept in mind."
    qtbot.waitUntil(lambda: "went away" in window.main.messages.text, timeout=5000)
    settle(window)
    assert "would be added" in labels_of(window.main.practice.clock_card)
