"""Pages that are made while nobody waits: in small parts, and never twice."""

import gc
import sys

import pytest
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QWidget

from app.ui.models import making_ahead
from app.ui.models.recorder import RecorderState
from app.ui.pages.window_pages import CALENDAR, COMPARE, LATER_MODULES, LESSON, LISTEN

LATER = (LISTEN, COMPARE, CALENDAR, LESSON)


def widgets_of(root) -> int:
    return len(root.findChildren(QWidget))


def test_no_part_is_a_whole_page(window, qapp):
    """Each page comes in several parts, none of which makes most of its widgets."""
    pages, ahead = window.main.pages, window.main.ahead
    grown: dict[int, list[int]] = {index: [] for index in LATER}
    before = widgets_of(pages)
    while ahead.make_next():
        at = next((i for i in LATER if i in pages._begun and not pages.is_made(i)), None)
        after = len(QWidget.findChildren(pages, QWidget)) if at is None else _all_widgets(qapp)
        if at is not None:
            grown[at].append(after - before)
        before = _all_widgets(qapp)
    assert all(pages.is_made(index) for index in LATER)
    for index in LATER:
        made = widgets_of(pages.page(index))
        assert len(grown[index]) >= 6, f"page {index} comes in {len(grown[index])} parts"
        assert max(grown[index]) < made / 2, f"a part of page {index} is most of it"
    assert window.main.practice.forms.has_made("rehearsal")


def _all_widgets(qapp) -> int:
    return len(qapp.allWidgets())


def test_a_page_that_is_wanted_meanwhile_is_finished_and_made_once(window, settle):
    pages, ahead = window.main.pages, window.main.ahead
    for _ in range(4):
        assert ahead.make_next()
    begun = pages._begun[LISTEN]
    assert not pages.is_made(LISTEN)
    window.main.show_page(LISTEN)
    settle(window)
    assert pages.listen is begun
    assert pages.listen.view is not None, "the page was shown before it was whole"
    while ahead.make_next():
        pass
    assert pages.listen is begun
    for index in LATER:
        window.main.show_page(index)
        settle(window)
        assert pages.shown.isVisible()


@pytest.mark.parametrize("parts", [0, 1, 3, 9, 20])
def test_a_window_closed_between_two_parts_ends_cleanly(open_window, bench, qapp, parts):
    """Stray signals, timers and Qt's own warnings fail any test here."""
    window = open_window(bench)
    window.main.ahead.begin()
    for _ in range(parts):
        window.main.ahead.make_next()
    window.close()
    assert window.main.ahead.is_over
    assert not any(timer.isActive() for timer in window.main.ahead.findChildren(QTimer))
    qapp.processEvents()
    gc.collect()


def test_a_window_left_alone_makes_its_pages(window, qtbot):
    window.main.ahead.begin()
    qtbot.waitUntil(lambda: all(map(window.main.pages.is_made, LATER)), timeout=60_000)
    qtbot.waitUntil(lambda: window.main.ahead.is_over, timeout=60_000)
    assert set(LATER_MODULES) <= set(sys.modules)
    # Whoever looks for garbage while the window works leaves out all that stays.
    assert gc.get_freeze_count() > 100_000
    window.close()
    assert gc.get_freeze_count() == 0, "a closed window could never be let go"


def test_nothing_is_made_unasked(window, qtbot, settle):
    settle(window)
    qtbot.wait(2 * making_ahead._FIRST_MS)
    assert window.main.ahead.done_count == 0


def test_it_waits_for_an_open_input_for_sound_and_for_typing(window, bench, qtbot):
    main, ahead = window.main, window.main.ahead
    assert not ahead._is_disturbing
    main.recorder.state = RecorderState.LISTENING
    assert ahead._is_disturbing
    main.recorder.state = RecorderState.IDLE
    bench.playing.play()
    assert ahead._is_disturbing
    bench.playing.pause()
    main.practice.panel.aim.setFocus()
    for letter in "slow":
        qtbot.keyClicks(main.practice.panel.aim, letter)
        assert ahead._is_disturbing
    assert not ahead._is_disturbing, "a cursor that rests in a field disturbs nobody"
