"""Calendar: kinds of day, what the record shows, minutes from a table, the printed year."""

import csv
from datetime import UTC, date, datetime, timedelta

import pytest
from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QImage, QPainter
from PySide6.QtPrintSupport import QPrinter

from app.journal.day_names import DayName
from app.journal.minutes_table import AmountUnit
from app.journal.promises import PromiseRule, Stretch
from app.journal.written_days import DateOrder
from app.services.views import DayBar
from app.ui.theme import DARK, LIGHT
from app.ui.widgets.year_export import print_year
from app.ui.widgets.year_marks import bar_words, draw_bar, draw_marks
from app.wiring import open_workbench

TODAY = date(2026, 3, 14)


@pytest.fixture
def calendar(open_window, real_bench, settle):
    for weeks in range(1, 9):
        real_bench.practising.set_minutes(TODAY - timedelta(days=7 * weeks), 20 + weeks)
    window = open_window(real_bench)
    window.main.show_page(3)
    settle(window)
    page = window.main.calendar
    page.settle = lambda: settle(window)
    page.messages = window.main.messages
    return page


def test_kinds_of_day_are_named_kept_and_said(calendar, real_bench, qtbot):
    qtbot.keyClick(calendar, "N")
    calendar.settle()
    form = calendar.names
    form.names[0].setText("short day")
    form.minutes[0].setValue(45)
    form.keep.click()
    calendar.settle()
    assert real_bench.practising.settings().day_names == (DayName("short day", 45.0),)
    assert calendar.chart.isVisible()
    assert "short day, up to 45 min" in calendar.legend.text
    calendar.chart.choose(TODAY)
    calendar.settle()
    assert "40 min (short day)" in calendar.day_words


def test_a_kind_without_minutes_is_refused_plainly(calendar, real_bench, qtbot):
    qtbot.keyClick(calendar, "N")
    calendar.settle()
    calendar.names.names[0].setText("short day")
    calendar.names.keep.click()
    calendar.settle()
    assert "needs minutes above 0" in calendar.messages.text
    assert real_bench.practising.settings().day_names == ()


def test_each_kind_of_day_is_another_drawing_without_colour(qapp):
    # Printed in one ink: the kinds differ in which pixels are inked, not in their colour.
    drawn = set()
    for kind in (None, 0, 1, 2, 3):
        image = QImage(12, 20, QImage.Format.Format_RGB32)
        image.fill(QColor("white"))
        painter = QPainter(image)
        draw_bar(painter, QRectF(0, 0, 12, 20), kind, LIGHT)
        painter.end()
        drawn.add(
            tuple(image.pixelColor(x, y).lightness() < 160 for x in range(12) for y in range(20))
        )
    assert len(drawn) == 5


def test_shared_clips_and_breaks_of_promises_are_marked_and_saved(calendar, real_bench, tmp_path):
    made = real_bench.promises.make("Forty days", PromiseRule(TODAY, Stretch.IN_TOTAL, 40))
    promise = made.promise.id
    real_bench.promises.share(promise, TODAY)
    away = TODAY + timedelta(days=2)
    real_bench.promises.plan_break(promise, away, away + timedelta(days=3), "travel")
    calendar.refresh()
    calendar.settle()
    assert calendar.chart.bar_of(TODAY).is_shared
    assert "a clip shared" in bar_words(calendar.chart.bar_of(TODAY))
    paused = [bar.practice_day for bar in calendar.chart.bars if bar.paused == ("Forty days",)]
    assert paused == [away + timedelta(days=n) for n in range(4)]
    calendar.save_year(tmp_path / "year.csv")
    calendar.settle()
    with (tmp_path / "year.csv").open(newline="") as stream:
        rows = {row["day"]: row for row in csv.DictReader(stream)}
    assert rows[TODAY.isoformat()]["clip_shared"] == "yes"
    assert rows[away.isoformat()]["promise_paused"] == "Forty days"


def test_the_record_is_shown_with_its_method_and_without_claims(calendar, qtbot):
    qtbot.keyClick(calendar, "W")
    calendar.settle()
    record = calendar.record
    assert record.isVisible()
    assert len(record.weekdays.bars) == 7
    saturday = record.weekdays.bars[5]
    assert saturday.words.startswith("Sat: 26 min on average")
    assert record.weeks.bars[-1].is_open, "the week of today is not over"
    assert "40 min on 1 day" in record.weeks.bars[-1].words
    assert record.associations.rows_model.rows == ()
    assert "1 passage with too few measured weeks" in record._no_associations.text()
    record.weeks.setFocus()
    qtbot.keyClick(record.weeks, Qt.Key.Key_Left)
    assert "21 min on" in record.weeks.accessibleDescription()
    qtbot.keyClick(calendar, "W")
    assert calendar.chart.isVisible()


def test_hours_from_before_are_one_entry_that_can_be_taken_away(calendar, real_bench, qtbot):
    qtbot.keyClick(calendar, "W")
    calendar.settle()
    form = calendar.record.earlier
    form.hours.setValue(1200)
    form.note.setText("an hour a day")
    form.keep.click()
    calendar.settle()
    assert real_bench.record.lifetime().earlier.hours == 1200
    assert "1,200 h before it" in form.words.text()
    form.clear.click()
    calendar.settle()
    assert real_bench.record.lifetime().earlier is None


def test_minutes_of_a_table_are_mapped_asked_about_and_never_counted_twice(
    calendar, real_bench, qtbot, tmp_path
):
    table = tmp_path / "kept elsewhere.csv"
    table.write_text(
        "date,what,minutes\n02/03/2026,scales,30\n03/03/2026,study,25\n14/03/2026,piece,99\n"
    )
    qtbot.keyClick(calendar, "I")
    form = calendar.importing
    form.read(table)
    calendar.settle()
    assert form.preview.item(0, 1).text() == "scales"
    assert form.file.isEnabled()
    assert form.order.key is DateOrder.DAY_MONTH_YEAR, "14 is no month"
    assert form.unit.key is AmountUnit.MINUTES
    assert "2 days new (55 min)" in form.words.text()
    said = {line[0]: line[2] for line in form.lines.rows_model.rows}
    assert said["2026-03-02"] == "will be added"
    assert said["2026-03-14"] == "stays at 40 min, as in the journal"
    form.file.click()
    calendar.settle()
    assert "Minutes of 2 days were added." in calendar.messages.text
    assert not form.file.isEnabled(), "nothing is left to add"
    year = {bar.practice_day: bar.minutes for bar in real_bench.practising.year(2026)}
    assert (year[date(2026, 3, 2)], year[TODAY]) == (30, 40)


def test_the_way_days_are_written_is_asked_where_it_is_open(calendar, qtbot, tmp_path):
    table = tmp_path / "open.csv"
    table.write_text("date,minutes\n02/03/2026,30\n04/03/2026,25\n")
    qtbot.keyClick(calendar, "I")
    form = calendar.importing
    form.read(table)
    calendar.settle()
    assert not form.file.isEnabled()
    assert "Say how the days are written" in form.words.text()
    form.order.choose(DateOrder.MONTH_DAY_YEAR)
    form.order.picked.emit(DateOrder.MONTH_DAY_YEAR)
    calendar.settle()
    assert [line[0] for line in form.lines.rows_model.rows] == ["2026-02-03", "2026-04-03"]


def test_the_year_is_printed_on_a_landscape_page(calendar, tmp_path):
    printer = QPrinter(QPrinter.PrinterMode.HighResolution)
    printer.setOutputFileName(str(tmp_path / "printed.pdf"))
    print_year(calendar.desk, calendar.chart, calendar.year, printer)
    assert (tmp_path / "printed.pdf").read_bytes().startswith(b"%PDF-")
    assert printer.width() > printer.height()
    assert "sent to the printer" in calendar.messages.text


def test_in_the_night_of_new_year_the_calendar_shows_the_year_of_the_practice_day(
    tmp_path, open_window, settle
):
    night = datetime(2027, 1, 1, 1, 30, tzinfo=UTC)  # the day turns at four
    with open_workbench(tmp_path / "journal", clock=lambda: night) as bench:
        window = open_window(bench)
        window.main.show_page(3)
        settle(window)
        calendar = window.main.calendar
        assert calendar.year == 2026
        assert calendar.chart.chosen == date(2026, 12, 31)
        calendar.show_year(2024)
        settle(window)
        window.desk.daysChanged.emit()
        settle(window)
        assert calendar.year == 2024


@pytest.mark.parametrize("rest", ["planned", "marked"])
@pytest.mark.parametrize("height_px", [0, 4, 7, 10, 14, 30])
def test_rest_is_seen_on_a_day_that_was_practised_all_the_same(qapp, rest, height_px):
    """A mark stands out from what it lies on by 3 to 1 at least (WCAG 2.1, 1.4.11)."""
    for colours in (LIGHT, DARK):
        cell = QRectF(4, 4, 20, 40)
        body = QRectF(8, cell.bottom() - height_px, 14, height_px)
        plain, marked = (_drawn(cell, body, colours, rest=of) for of in ("", rest))
        changed = [
            (marked.pixelColor(x, y), plain.pixelColor(x, y))
            for x in range(plain.width())
            for y in range(plain.height())
            if marked.pixel(x, y) != plain.pixel(x, y)
        ]
        clear = [pair for pair in changed if _contrast(*pair) >= 3.0]
        assert len(clear) >= 12, f"{len(clear)} of {len(changed)} points are seen"


def test_a_day_filed_late_shows_it_with_a_take_and_no_minutes(qapp):
    cell = QRectF(4.0, 4.0, 20.0, 44.0)
    colours = LIGHT

    def drawn(*, late: bool) -> QImage:
        image = QImage(32, 60, QImage.Format.Format_RGB32)
        image.fill(QColor(colours.card))
        painter = QPainter(image)
        day = DayBar(TODAY, None, 1, "", missed=False, late=late)
        draw_marks(painter, day, cell, cell.bottom(), colours)
        painter.end()
        return image

    assert drawn(late=True) != drawn(late=False)


def _drawn(cell: QRectF, body: QRectF, colours, *, rest: str) -> QImage:
    image = QImage(32, 60, QImage.Format.Format_RGB32)
    image.fill(QColor(colours.card))
    painter = QPainter(image)
    minutes = body.height() or None
    if minutes:
        draw_bar(painter, body, None, colours)
    day = DayBar(TODAY, minutes, 0, rest, missed=False, late=False)
    draw_marks(painter, day, cell, body.top(), colours)
    painter.end()
    return image


def _contrast(one: QColor, other: QColor) -> float:
    """Contrast of two colours as WCAG 2.1 defines it."""

    def light(colour: QColor) -> float:
        parts = [
            c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4
            for c in (colour.redF(), colour.greenF(), colour.blueF())
        ]
        return 0.2126 * parts[0] + 0.7152 * parts[1] + 0.0722 * parts[2]

    bright, dark = sorted((light(one), light(other)), reverse=True)
    return (bright + 0.05) / (dark + 0.05)
