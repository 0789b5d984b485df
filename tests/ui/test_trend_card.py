"""The trend of a passage says how its takes were chosen, where that matters."""

from dataclasses import replace

NOTICE = "3 takes of 12 chosen as the best of several: choosing can look like getting better."


def test_nothing_is_said_where_nothing_was_chosen(window, settle):
    window.main.show_page(2)
    settle(window)
    assert window.main.compare.trend.notice == ""


def test_choosing_is_said_below_the_trend(window, settle, bench, monkeypatch):
    trend = bench.comparing.trend

    def chosen(passage_id, key="mean_absolute_cents"):
        return replace(trend(passage_id, key), notice=NOTICE)

    monkeypatch.setattr(bench.comparing, "trend", chosen)
    window.main.show_page(2)
    settle(window)
    card = window.main.compare.trend
    assert card.notice == NOTICE
    assert card._notice.isVisible()
    monkeypatch.undo()
    card.next_measure()
    settle(window)
    assert card.notice == ""
    assert not card._notice.isVisible()
