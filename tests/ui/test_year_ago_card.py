"""The Practice page offers what this week was like a year ago."""

from app.services.looking_back import YearAgoView

LINE = "A year ago this week: Study in G minor: Opening, Mon 17 Mar 2025."


def test_one_key_hears_then_and_now(open_window, bench, settle, qtbot):
    bench.looking_back.found = YearAgoView("take2", "take9", 1, LINE)
    window = open_window(bench)
    card = window.main.practice.year_ago
    assert card.isVisible()
    assert card.words == LINE
    qtbot.keyClick(window.main.practice, "Y")
    settle(window)
    compare = window.main.compare
    assert compare.isVisible()
    assert (compare.view.a.row.id, compare.view.b.row.id) == ("take2", "take9")
    assert bench.playing.loaded == "take2"
    assert bench.playing.now.playing


def test_without_a_take_of_a_year_ago_nothing_is_said(window, settle, qtbot):
    card = window.main.practice.year_ago
    assert not card.isVisible()
    qtbot.keyClick(window.main.practice, "Y")
    settle(window)
    assert window.main.practice.isVisible()


def test_it_waits_while_something_else_asks_for_attention(open_window, bench, settle):
    from pathlib import Path

    bench.looking_back.found = YearAgoView("take2", "take9", 1, LINE)
    bench.watching.clips = list(bench.importing.propose([Path("/phone/clip.m4a")]))
    window = open_window(bench)
    window.main.practice.clips.look()
    settle(window)
    practice = window.main.practice
    assert practice.offers.isVisible()
    assert not practice.year_ago.isVisible()
