"""One table: every action is answered, has its key, and is in help sheet and menu."""

from collections import Counter

import pytest
from PySide6.QtCore import QEvent
from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QApplication

from app.journal.kinds import DEFAULT_CATEGORIES
from app.ui.keys import ACTIONS, MARKER_KEY_COUNT, Where, keys_text
from app.ui.widgets.help_sheet import help_html
from tests.ui.key_events import dated


def test_ids_are_unique_and_every_action_has_a_key():
    assert len({spec.id for spec in ACTIONS}) == len(ACTIONS)
    assert all(spec.keys for spec in ACTIONS)


@pytest.mark.parametrize("where", [where for where in Where if where is not Where.EVERYWHERE])
def test_no_key_means_two_things_on_a_page(where):
    keys = Counter(
        QKeySequence(key).toString()
        for spec in ACTIONS
        if spec.where in (where, Where.EVERYWHERE)
        for key in spec.keys
    )
    assert [key for key, count in keys.items() if count > 1] == []
    assert "" not in keys, "a key that Qt cannot read"


def test_every_action_is_answered(window):
    # A page binds its keys when it is first opened.
    for index in range(5):
        window.main.show_page(index)
    assert window.main.desk.keys.bound_ids == {spec.id for spec in ACTIONS}


OFFSCREEN = ("propagateSizeHints", "raise")


@pytest.mark.qt_log_ignore(*OFFSCREEN)
def test_every_action_is_in_the_help_sheet_with_its_keys(window, qtbot):
    window.main.desk.keys.action("help").trigger()
    text = window.main.sheets.help_text()
    for spec in ACTIONS:
        assert spec.text in text
        assert keys_text(spec.id) in text
    assert help_html(window.main.desk.keys)


def test_every_action_is_in_the_menu(window):
    menu = window.main.rail.menu.menu()
    menu.aboutToShow.emit()
    found = [action.text() for part in menu.actions() for action in part.menu().actions()]
    assert found == [f"{spec.text}\t{keys_text(spec.id)}" for spec in ACTIONS]


def test_menu_offers_what_works_here(window):
    menu = window.main.rail.menu.menu()
    window.main.show_page(3)
    menu.aboutToShow.emit()
    usable = {part.text() for part in menu.actions() if part.isEnabled()}
    assert usable == {"Everywhere", "Calendar"}


def test_every_usual_category_has_a_key():
    assert len(DEFAULT_CATEGORIES) <= MARKER_KEY_COUNT


def test_hidden_pages_do_not_answer(window, qtbot):
    window.main.show_page(1)
    qtbot.keyClick(window.main, "R")
    assert not window.main.recorder.is_recording


def press(target, key, at_ms):
    """What a display's press comes to; True where no action may answer it."""
    override = dated(QEvent.Type.ShortcutOverride, key, at_ms)
    QApplication.sendEvent(target, override)
    return override.isAccepted()


@pytest.mark.parametrize(("action_id", "again"), [("practice.level", False), ("listen.back", True)])
def test_a_held_key_repeats_only_what_goes_on_step_by_step(window, action_id, again):
    key = "L"
    assert not press(window.main, key, 5_000)
    window.main.pages.page(1)  # it binds its keys when it is first wanted
    window.desk.keys.action(action_id).trigger()
    for at_ms in (5_660, 5_700):  # X11 dates release and repeat alike
        QApplication.sendEvent(window.main, dated(QEvent.Type.KeyRelease, key, at_ms))
        assert press(window.main, key, at_ms) is not again
        if not again:  # else the action takes the press
            handle = window.main.windowHandle()
            QApplication.sendEvent(handle, dated(QEvent.Type.KeyPress, key, at_ms))
    QApplication.sendEvent(window.main, dated(QEvent.Type.KeyRelease, key, 5_740))
    assert not press(window.main, key, 5_830), "pressed again"


def test_a_repeat_is_not_swallowed_where_the_first_press_was_typed(window):
    assert not press(window.main, "L", 5_000)
    QApplication.sendEvent(window.main, dated(QEvent.Type.KeyRelease, "L", 5_660))
    assert not press(window.main, "L", 5_660)
