"""Every page opens, with and without something in it, and nothing warns."""

import gc

import pytest
from PySide6.QtCore import QCoreApplication, QEvent
from PySide6.QtWidgets import QWidget

from app.ui.theme import Scheme

PAGES = range(5)


@pytest.mark.parametrize("page", PAGES)
def test_page_opens_on_a_full_journal(window, settle, page):
    window.main.show_page(page)
    settle(window)
    assert window.main.pages.page(page).isVisible()
    assert window.main.messages.text == ""


@pytest.mark.parametrize("page", PAGES)
def test_page_opens_on_an_empty_journal(open_window, settle, page):
    import fakes

    state = fakes.FakeState(passages=[])
    window = open_window(fakes.FakeWorkbench(state))
    window.main.show_page(page)
    settle(window)
    assert window.main.pages.page(page).isVisible()
    assert window.main.messages.text == ""


def test_keys_go_from_page_to_page(window, qtbot):
    for page in (4, 3, 2, 1, 0):
        qtbot.keyClick(window.main, str(page + 1), modifier=_ctrl())
        assert window.main.page_index == page


@pytest.mark.parametrize("scheme", [Scheme.LIGHT, Scheme.DARK])
def test_theme_reaches_every_page(window, settle, scheme):
    window.theme.choose(scheme)
    for page in PAGES:
        window.main.show_page(page)
        settle(window)
        picture = window.main.grab().toImage()
        corner = picture.pixelColor(picture.width() - 4, picture.height() - 4)
        assert (corner.lightness() < 128) == (scheme is Scheme.DARK)


def test_theme_is_remembered(window, open_window, bench):
    window.theme.choose(Scheme.DARK)
    window.main.desk.keys.action("theme").trigger()
    assert window.theme.scheme is Scheme.LIGHT
    assert open_window(bench).theme.scheme is Scheme.LIGHT


def test_closing_leaves_no_page_behind(qapp, bench, tmp_path):
    from app.ui.application import Window

    before = sum(isinstance(thing, QWidget) for thing in gc.get_objects())
    for _ in range(2):
        window = Window(bench, preferences_file=tmp_path / "window.ini")
        window.main.show()
        window.jobs.wait_until_idle()
        window.close()
        window.main.deleteLater()
        window.deleteLater()
        QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete.value)
        del window
        gc.collect()
    left = sum(isinstance(thing, QWidget) for thing in gc.get_objects()) - before
    assert left < 60, "two windows hold hundreds of widgets; none of them should stay"


def _ctrl():
    from PySide6.QtCore import Qt

    return Qt.KeyboardModifier.ControlModifier
