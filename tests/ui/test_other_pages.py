"""Compare, Calendar, Lesson: what the keys do and what is said."""

from datetime import date

import fakes
import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QGuiApplication

from app.ui.models.time_map import TimeMap
from app.ui.widgets.year_chart import bar_words


@pytest.fixture
def compare(window, settle):
    window.main.show_page(2)
    settle(window)
    return window.main.compare


@pytest.fixture
def calendar(window, settle):
    window.main.show_page(3)
    settle(window)
    return window.main.calendar


@pytest.fixture
def lesson(window, settle):
    window.main.show_page(4)
    settle(window)
    return window.main.lesson


def test_first_and_latest_take_are_compared(compare):
    assert compare.view.a.row.id == "take0"
    assert compare.view.b.row.id == "take11"
    assert compare.trend.verdict.startswith("Better")
    assert "B was played faster by 9 %." in compare.words


def test_each_measure_has_one_plain_word(compare):
    model = compare.changes.rows_model
    shown = {model.index(at, 0).data(): model.index(at, 3).data() for at in range(2)}
    assert shown["Mean deviation\ncents"].splitlines()[0] == "better"
    assert shown["Tempo\nBPM"].splitlines()[0] == "faster"
    from PySide6.QtCore import Qt as Core

    more = model.index(0, 1).data(Core.ItemDataRole.ToolTipRole)
    assert "change \N{MINUS SIGN}3.6 ± 1.4 cents" in more


def test_switch_goes_to_the_same_place_in_the_other_take(compare, qtbot, settle, window, bench):
    compare.transport.seek(10.0)
    qtbot.keyClick(compare, "X")
    settle(window)
    assert bench.playing.loaded == "take11"
    assert bench.playing.now.position_s == pytest.approx(9.0)
    qtbot.keyClick(compare, "X")
    settle(window)
    assert bench.playing.loaded == "take0"
    assert bench.playing.now.position_s == pytest.approx(10.0)


def test_swap_and_layout(compare, qtbot, settle, window):
    qtbot.keyClick(compare, "S")
    settle(window)
    assert compare.view.a.row.id == "take11"
    assert compare.lanes.is_overlaid
    qtbot.keyClick(compare, "V")
    assert not compare.lanes.is_overlaid


def test_takes_that_do_not_match_are_not_overlaid(open_window, bench, settle):
    from dataclasses import replace

    whole = bench.comparing.compare

    def unlike(*arguments):
        return replace(whole(*arguments), aligned=False, sentence="These do not match.", notes=())

    bench.comparing.compare = unlike
    window = open_window(bench)
    window.main.show_page(2)
    settle(window)
    assert "These do not match." in window.main.compare.words
    window.main.compare.switch()
    assert bench.playing.loaded == "take0"


def test_listen_page_hands_over_to_compare(window, settle, qtbot):
    window.main.show_page(1)
    settle(window)
    qtbot.keyClick(window.main, Qt.Key.Key_Left, modifier=Qt.KeyboardModifier.ControlModifier)
    settle(window)
    qtbot.keyClick(window.main, "C")
    settle(window)
    view = window.main.compare.view
    assert (view.a.row.id, view.b.row.id) == ("take0", "take10")


def test_the_other_page_does_not_take_the_sound_away(window, settle, bench, qtbot):
    """Listen and Compare share one player: the page in view has its take loaded."""
    window.main.show_page(1)
    settle(window)
    window.main.show_page(2)
    settle(window)
    assert bench.playing.loaded == "take0"
    window.main.show_page(1)
    settle(window)
    assert bench.playing.loaded == "take11"
    qtbot.keyClick(window.main, Qt.Key.Key_Space)
    assert bench.playing.now.playing


def test_time_map():
    follow = TimeMap([0.0, 2.0, 2.0, 4.0], [0.0, 1.0, 1.5, 5.5])
    assert [follow(x) for x in (0.0, 1.0, 3.0, 4.0)] == [0.0, 0.5, 3.5, 5.5]
    assert follow(-1.0) == -1.0
    assert follow(5.0) == 6.5
    assert TimeMap([], [])(3.0) == 3.0


def test_arrows_walk_through_days(calendar, qtbot):
    chart = calendar.chart
    assert chart.chosen == fakes.TODAY
    qtbot.keyClick(chart, Qt.Key.Key_Left)
    assert chart.chosen == date(2026, 3, 17)
    qtbot.keyClick(chart, Qt.Key.Key_Up)
    assert chart.chosen == date(2026, 2, 17)
    chart.choose(date(2026, 3, 31))
    qtbot.keyClick(chart, Qt.Key.Key_Up)
    assert chart.chosen == date(2026, 2, 28), "a shorter month ends earlier"


def test_walking_out_of_the_year_shows_the_next(calendar, qtbot, settle, window):
    calendar.chart.choose(date(2026, 1, 1))
    qtbot.keyClick(calendar.chart, Qt.Key.Key_Left)
    settle(window)
    assert calendar.year == 2025
    assert calendar.chart.chosen == date(2025, 12, 31)
    qtbot.keyClick(calendar, Qt.Key.Key_PageDown)
    settle(window)
    assert calendar.year == 2026


def test_minutes_of_a_day_are_typed(calendar, qtbot, settle, window, bench):
    calendar.chart.choose(date(2026, 3, 10))
    settle(window)
    qtbot.keyClick(calendar, "T")
    field = window.main.focusWidget()
    qtbot.keyClicks(field, "25")
    qtbot.keyClick(field, Qt.Key.Key_Return)
    settle(window)
    assert bench.state.minutes[date(2026, 3, 10)] == 25


def test_rest_is_marked_planned_or_afterwards_and_taken_away(
    calendar, qtbot, settle, window, bench
):
    for day, planned in ((date(2026, 3, 20), True), (date(2026, 2, 2), False)):
        calendar.chart.choose(day)
        settle(window)
        qtbot.keyClick(calendar.chart, "R")
        settle(window)
        assert bench.state.rest[day].planned is planned
        qtbot.keyClick(calendar.chart, "R")
        settle(window)
        assert day not in bench.state.rest


def test_click_shows_the_day_and_its_takes(calendar, qtbot, settle, window):
    cell = calendar.chart.cell_of(date(2026, 3, 14))
    qtbot.mouseClick(calendar.chart, Qt.MouseButton.LeftButton, pos=QPoint(cell.center().toPoint()))
    settle(window)
    assert calendar.chart.chosen == date(2026, 3, 14)
    assert len(calendar.takes.rows_model.rows) == 1


def test_days_are_told_in_kind_words(calendar):
    words = {bar_words(bar) for bar in fakes.full_workbench().practising.year(2026)}
    assert any("no practice noted" in said for said in words)
    assert any("rest, planned" in said for said in words)
    assert any("entered later" in said for said in words)
    for said in words:
        assert not {"missed", "failed", "broken", "lost"} & set(said.replace(",", "").split())


@pytest.fixture
def copied(lesson, settle, window):
    """The text of the lesson page, as its key copies it."""

    def copy() -> str:
        lesson.copy()
        settle(window)
        assert "copied" in window.main.messages.text
        return QGuiApplication.clipboard().text()

    return copy


def test_lesson_tells_the_last_seven_days(lesson, copied, settle, window, qtbot):
    assert copied().startswith("From 2026-03-12 to 2026-03-18")
    qtbot.keyClick(lesson, Qt.Key.Key_PageUp)
    settle(window)
    assert copied().startswith("From 2026-03-05 to 2026-03-11")
    qtbot.keyClick(lesson, "W")
    settle(window)
    assert copied().startswith("From 2026-03-12")


def test_lesson_is_saved(lesson, copied, settle, window, tmp_path):
    target = tmp_path / "Unterricht März.txt"
    lesson.save(target)
    settle(window)
    assert target.read_text(encoding="utf-8").strip() == copied().strip()
    lesson.save(tmp_path / "nowhere" / "lesson.txt")
    settle(window)
    assert "could not be written" in window.main.messages.text
