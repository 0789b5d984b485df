"""Promises, the plan, set work and the saved year, on real services."""

import csv
from datetime import date, timedelta

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QImage
from PySide6.QtSvg import QSvgRenderer
from PySide6.QtWidgets import QLabel, QPushButton

from app.journal.promises import PromiseRule, Stretch
from app.ui.widgets.promise_strip import promise_figures

TODAY = date(2026, 3, 14)


def labels_of(widget) -> str:
    shown = [label for label in widget.findChildren(QLabel) if label.isVisibleTo(widget)]
    return "\n".join(label.text() for label in shown)


def button(widget, text) -> QPushButton:
    return next(b for b in widget.findChildren(QPushButton) if b.text() == text)


@pytest.fixture
def kept(real_bench):
    """A promise of 60 days, 27 of 45 kept: common practice, no source."""
    first = TODAY - timedelta(days=44)
    for back in range(1, 27):
        real_bench.practising.set_minutes(TODAY - timedelta(days=back), 20)
    for back in (30, 31):
        real_bench.practising.mark_rest(TODAY - timedelta(days=back), True)
    rule = PromiseRule(first, Stretch.IN_TOTAL, 60, rest_days=4)
    real_bench.promises.make("Sixty days", rule)
    return real_bench


def test_numbers_of_a_promise_stand_apart(kept, open_window, settle):
    window = open_window(kept)
    settle(window)
    strip = window.main.practice.promise
    said = labels_of(strip)
    for number, words in (
        ("27", "days kept"), ("45", "day since the start"), ("16", "missed"),
        ("2", "rest taken"), ("33", "still to keep"),
    ):  # fmt: skip
        assert f"{number}\n{words}" in said
    assert "27 days kept, day 45." in strip.accessibleDescription()
    figures = {words: int(n) for n, words in promise_figures(kept.promises.list()[0])}
    # Every day is one thing only.
    assert figures["days kept"] + figures["missed"] + figures["rest taken"] == 45


def test_without_a_promise_nothing_is_shown(window):
    assert not window.main.practice.promise.isVisible()


def test_a_promise_is_made_paused_and_ended(real_bench, open_window, settle, qtbot):
    window = open_window(real_bench)
    window.main.show_page(3)
    settle(window)
    qtbot.keyClick(window.main, "P")
    settle(window)
    panel = window.main.calendar.promises
    assert "No promise yet." in panel.words
    qtbot.keyClicks(panel.form.name, "Twenty days")
    panel.form.days.setValue(20)
    panel.form.minutes.setValue(15)
    panel.form.stretch.choose(Stretch.IN_A_ROW)
    panel.form.weekdays[6].setChecked(True)
    qtbot.keyClick(panel.form.name, Qt.Key.Key_Return)
    settle(window)
    (view,) = real_bench.promises.list()
    assert (view.promise.start, view.standing.rule.days) == (TODAY, 20)
    assert view.standing.rule.rest_weekdays == (6,)
    assert "at least 15 min a day" in panel.words
    button(panel, "Pause").click()
    settle(window)
    assert real_bench.promises.list()[0].standing.pause is not None
    assert "nothing is asked of these days" in panel.words
    button(panel, "Take up again").click()
    settle(window)
    assert real_bench.promises.list()[0].standing.pause is None
    button(panel, "End today").click()
    settle(window)
    assert "every day kept stays kept" in panel.words
    qtbot.keyClick(window.main, "P")
    assert window.main.calendar.chart.isVisible()


def test_a_plan_is_proposed_with_reasons_and_is_the_players(real_bench, open_window, settle, qtbot):
    passage = real_bench.passages.list()[0]
    work = real_bench.assignments
    work.add(TODAY + timedelta(days=3), "At 72", minutes=40, passage_id=passage.id)
    work.add(TODAY + timedelta(days=5), "Sight-reading, one page", minutes=30)
    window = open_window(real_bench)
    card = window.main.practice.plan
    card.minutes.setValue(30)
    qtbot.keyClick(window.main, "O")
    settle(window)
    lines = card.table.rows_model.rows
    assert len(lines) == 2
    assert all(line.reasons for line in lines)
    assert real_bench.planning.today().plan.minutes_planned <= 30
    first = lines[0]
    card.table.choose(0)
    button(card, "Down").click()
    settle(window)
    assert card.table.rows_model.rows[1].id == first.id
    qtbot.keyClick(card.table, Qt.Key.Key_Return)
    settle(window)
    assert real_bench.planning.today().plan.lines[1].done_at is not None
    model = card.table.rows_model
    model.setData(model.index(0, 2), "5")
    settle(window)
    assert real_bench.planning.today().plan.lines[0].minutes == 5
    card.table.choose(0)
    button(card, "Leave out").click()
    settle(window)
    assert len(real_bench.planning.today().plan.lines) == 1


def test_the_clock_goes_over_to_a_line(real_bench, open_window, settle, qtbot):
    passage = real_bench.passages.list()[0]
    real_bench.assignments.add(TODAY, "At 72", minutes=40, passage_id=passage.id)
    window = open_window(real_bench)
    qtbot.keyClick(window.main, "O")
    settle(window)
    window.main.practice.plan.table.choose(0)
    button(window.main.practice.plan, "Practise it").click()
    settle(window)
    assert real_bench.clock.state().item_title == "Study: Opening"


def test_set_work_is_added_ticked_carried_and_dates_are_noted(
    real_bench, open_window, settle, qtbot
):
    window = open_window(real_bench)
    qtbot.keyClick(window.main, "L", Qt.KeyboardModifier.ShiftModifier)
    settle(window)
    form = window.main.practice.forms.assignments
    form.minutes.setValue(60)
    qtbot.keyClicks(form.goal, "From memory")
    qtbot.keyClick(form.goal, Qt.Key.Key_Return)
    settle(window)
    (entry,) = form.table.rows_model.rows
    assert entry.assignment.due_on == TODAY + timedelta(days=7)
    form.table.choose(0)
    button(form, "Done").click()
    settle(window)
    assert form.table.rows_model.rows[0].assignment.done_on == TODAY
    form.table.choose(0)
    button(form, "A week later").click()
    settle(window)
    assert form.table.rows_model.rows[0].assignment.due_on == TODAY + timedelta(days=14)
    qtbot.keyClicks(form.name, "With the quartet")
    button(form, "Note the date").click()
    settle(window)
    assert [one.title for one in real_bench.assignments.coming()] == ["With the quartet"]
    button(form, "Back to today").click()
    assert window.main.practice.head.isVisible()


def test_the_year_is_saved_as_table_picture_drawing_and_document(
    kept, open_window, settle, tmp_path
):
    window = open_window(kept)
    window.main.show_page(3)
    settle(window)
    for ending in ("csv", "png", "svg", "pdf"):
        window.main.calendar.save_year(tmp_path / f"year.{ending}")
        settle(window)
        assert "The year was saved" in window.main.messages.text
    with (tmp_path / "year.csv").open(newline="") as stream:
        rows = {row["day"]: row for row in csv.DictReader(stream)}
    assert len(rows) == 365
    assert rows["2026-03-13"]["minutes"] == "20"
    assert rows["2026-02-12"]["rest"] == "planned"
    assert rows["2026-02-10"]["minutes"] == ""
    image = QImage(str(tmp_path / "year.png"))
    assert (image.width(), image.height()) == (2240, 1600)
    colours = {image.pixelColor(x, 396).name() for x in range(0, 2240, 2)}
    assert len(colours) > 2, "bars are drawn"
    assert QSvgRenderer(str(tmp_path / "year.svg")).isValid()
    assert (tmp_path / "year.pdf").read_bytes().startswith(b"%PDF-")


def test_a_year_that_cannot_be_saved_is_said_plainly(kept, open_window, settle, tmp_path):
    window = open_window(kept)
    window.main.show_page(3)
    settle(window)
    window.main.calendar.save_year(tmp_path / "year.doc")
    assert "End it in png, svg, pdf or csv." in window.main.messages.text
    for ending in ("csv", "png", "svg", "pdf"):
        window.main.messages.put_away()
        window.main.calendar.save_year(tmp_path / "not there" / f"year.{ending}")
        settle(window)
        assert f"year.{ending} could not be written." in window.main.messages.text


def test_a_plan_is_there_at_the_first_look_and_kept_once_touched(
    real_bench, open_window, settle, qtbot
):
    passage = real_bench.passages.list()[0]
    real_bench.assignments.add(TODAY, "At 72", minutes=20, passage_id=passage.id)
    real_bench.assignments.add(TODAY, "Sight-reading", minutes=20)
    window = open_window(real_bench)
    settle(window)
    card = window.main.practice.plan
    lines = card.table.rows_model.rows
    assert len(lines) == 2
    assert all(line.reasons for line in lines)
    assert "Plan, proposed" in labels_of(card)
    assert real_bench.planning.today() is None, "a proposal is no record"
    window.main.practice.refresh()
    settle(window)
    assert card.table.rows_model.rows == lines, "it stays in sight"
    card.table.choose(1)
    button(card, "Up").click()
    settle(window)
    kept = real_bench.planning.today().plan
    assert [line.id for line in kept.lines] == [lines[1].id, lines[0].id]
    assert "proposed" not in labels_of(card)
