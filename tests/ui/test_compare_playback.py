"""Hearing one passage on two days: the same moment, one loudness, takes in date order."""

from dataclasses import replace

import pytest
from PySide6.QtCore import Qt

from app.services.views import LevelMatch

CTRL = Qt.KeyboardModifier.ControlModifier
LEVELS = LevelMatch(-3.0, 0.0, "Heard at one loudness.")


@pytest.fixture
def compare(window, settle, bench, monkeypatch):
    whole = bench.comparing.compare

    def matched(*arguments):
        return replace(whole(*arguments), levels=LEVELS)

    monkeypatch.setattr(bench.comparing, "compare", matched)
    window.main.show_page(2)
    settle(window)
    return window.main.compare


def test_both_takes_are_read_at_one_loudness_and_it_is_said(compare, bench):
    assert bench.playing.loaded == "take0"
    assert bench.playing.ready == "take11"
    assert (bench.playing.gains["take0"], bench.playing.gains["take11"]) == (-3.0, 0.0)
    assert "Heard at one loudness." in compare.words


def test_the_switch_goes_on_playing(compare, qtbot, bench):
    qtbot.keyClick(compare, Qt.Key.Key_Space)
    compare.transport.seek(10.0)
    qtbot.keyClick(compare, "X")
    assert bench.playing.now.playing
    assert bench.playing.now.position_s == pytest.approx(9.0)
    assert compare.playback.place_s == pytest.approx(10.0), "the same moment on A's axis"


def test_stepping_hears_the_next_take_at_the_same_place(compare, qtbot, settle, window, bench):
    compare.transport.seek(10.0)
    qtbot.keyClick(compare, Qt.Key.Key_Left, modifier=CTRL)
    settle(window)
    assert (compare.view.a.row.id, compare.view.b.row.id) == ("take0", "take10")
    assert bench.playing.loaded == "take10"
    assert bench.playing.now.position_s == pytest.approx(9.0)
    qtbot.keyClick(compare, Qt.Key.Key_Left, modifier=CTRL)
    settle(window)
    assert bench.playing.loaded == "take9"
    assert compare.playback.place_s == pytest.approx(10.0)
    qtbot.keyClick(compare, "X")
    assert bench.playing.loaded == "take0", "A is ready again after each step"


def test_a_looped_bar_stays_the_bar_when_stepping(compare, qtbot, settle, window, bench):
    compare.playback.loop_between((10.0, 12.0))
    qtbot.keyClick(compare, Qt.Key.Key_Left, modifier=CTRL)
    settle(window)
    assert compare.transport.selection == pytest.approx((9.0, 10.8))
    assert compare.transport.is_looping
    qtbot.keyClick(compare, "X")
    assert compare.transport.selection == pytest.approx((10.0, 12.0))


def test_there_is_nothing_after_the_latest_take(compare, qtbot, settle, window):
    qtbot.keyClick(compare, Qt.Key.Key_Right, modifier=CTRL)
    settle(window)
    assert compare.view.b.row.id == "take11"
    assert "latest" in window.main.messages.text


def test_what_comes_next_in_date_order_is_compared_before_it_is_wanted(
    compare, qtbot, settle, window, bench
):
    """So that a step is heard at once; the whole journal is not compared for it."""
    compare.show_pair("take0", "take5")
    settle(window)
    asked = []
    whole = bench.comparing.compare
    bench.comparing.compare = lambda *pair: asked.append(pair[:2]) or whole(*pair)
    qtbot.keyClick(compare, Qt.Key.Key_Right, modifier=CTRL)
    assert compare.view.b.row.id == "take6", "shown without any waiting"
    settle(window)
    assert asked == [("take0", "take7")]


def test_one_key_plays_the_earliest_and_then_the_latest_take(compare, qtbot, settle, window, bench):
    compare.show_pair("take3", "take5")
    settle(window)
    qtbot.keyClick(compare, "H")
    settle(window)
    assert (compare.view.a.row.id, compare.view.b.row.id) == ("take0", "take11")
    assert bench.playing.loaded == "take0"
    assert bench.playing.now.playing
    # The take comes to its end by itself.
    bench.playing.now = replace(bench.playing.now, position_s=24.0, playing=False)
    qtbot.waitUntil(lambda: bench.playing.loaded == "take11", timeout=2000)
    assert bench.playing.now.playing
    assert bench.playing.now.position_s == 0.0


def test_a_pause_is_not_taken_for_the_end(compare, qtbot, settle, window, bench):
    qtbot.keyClick(compare, "H")
    settle(window)
    bench.playing.seek(11.0)
    qtbot.keyClick(compare, Qt.Key.Key_Space)
    settle(window)
    assert bench.playing.loaded == "take0"
    assert not bench.playing.now.playing
