"""Minutes kept elsewhere: which column, which day, how much."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.journal.failures import PlainFailure
from app.journal.minutes_table import (
    AmountUnit,
    Mapped,
    amount_of,
    guessed,
    minutes_by_day,
    read_table,
)
from app.journal.written_days import DateOrder, date_orders, day_of, only_order, what_each_means

DMY, MDY, YMD = DateOrder.DAY_MONTH_YEAR, DateOrder.MONTH_DAY_YEAR, DateOrder.YEAR_MONTH_DAY


@pytest.mark.parametrize(
    ("text", "order", "day"),
    [
        ("2026-03-14", YMD, date(2026, 3, 14)),
        ("2026/3/4 18:30", YMD, date(2026, 3, 4)),
        ("2026-03-14T18:30:00Z", YMD, date(2026, 3, 14)),
        ("20260314", YMD, date(2026, 3, 14)),
        ("14.03.2026", DMY, date(2026, 3, 14)),
        ("14. 3. 2026", DMY, date(2026, 3, 14)),
        ("3/14/26", MDY, date(2026, 3, 14)),
        ("14-3-2026", DMY, date(2026, 3, 14)),
        ("14 Mar 2026", MDY, date(2026, 3, 14)),
        ("Sat, 14 March 2026", DMY, date(2026, 3, 14)),
        ("March 14, 2026", DMY, date(2026, 3, 14)),
        ("14. März 2026", DMY, date(2026, 3, 14)),
        ("31.02.2026", DMY, None),
        ("14/03/2026", MDY, None),
        ("26-03-14", YMD, date(2026, 3, 14)),
        ("26/03/14", YMD, None),
        ("0226-03-14", YMD, None),
        ("14.03.2026", YMD, None),
        ("yesterday", DMY, None),
        ("12345", DMY, None),
    ],
)
def test_a_day_is_read_in_one_way(text: str, order: DateOrder, day: date | None) -> None:
    assert day_of(text, order) == day


def test_the_column_tells_the_orders_apart_or_the_player_is_asked() -> None:
    assert only_order(["03/04/2026", "13/04/2026"]) is DMY
    assert only_order(["03/04/2026", "04/13/2026"]) is MDY
    unclear = ["03/04/2026", "05/06/2026", "07/07/2026"]
    assert only_order(unclear) is None
    assert date_orders(unclear) == (DMY, MDY)
    assert what_each_means(unclear) == {
        DMY: (("03/04/2026", date(2026, 4, 3)), ("05/06/2026", date(2026, 6, 5))),
        MDY: (("03/04/2026", date(2026, 3, 4)), ("05/06/2026", date(2026, 5, 6))),
    }
    assert only_order(["07/07/2026", "08/08/2026"]) is not None  # both ways mean the same
    assert only_order(["nothing", "03/04/2026"]) is None


@given(st.lists(st.dates(date(2000, 1, 1), date(2099, 12, 31)), min_size=1, max_size=9))
def test_the_true_order_always_fits_and_gives_the_true_days(days: list[date]) -> None:
    writers = {
        YMD: lambda d: d.isoformat(),
        DMY: lambda d: f"{d.day}.{d.month}.{d.year}",
        MDY: lambda d: f"{d.month:02d}/{d.day:02d}/{d.year}",
    }
    for order, write in writers.items():
        texts = [write(day) for day in days]
        assert order in date_orders(texts)
        assert [day_of(text, order) for text in texts] == days
        found = only_order(texts)
        assert found is None or [day_of(text, found) for text in texts] == days


@pytest.mark.parametrize(
    ("text", "unit", "minutes"),
    [
        ("45", AmountUnit.MINUTES, 45),
        ("45 min", AmountUnit.HOURS, 45),
        ("1,5", AmountUnit.HOURS, 90),
        ("1.5 h", AmountUnit.MINUTES, 90),
        ("1 h 30 min", AmountUnit.MINUTES, 90),
        ("2h", AmountUnit.MINUTES, 120),
        ("1:30", AmountUnit.HOURS_AND_MINUTES, 90),
        ("0:45:30", AmountUnit.HOURS_AND_MINUTES, 45.5),
        ("45:30", AmountUnit.MINUTES_AND_SECONDS, 45.5),
        ("1:45:30", AmountUnit.MINUTES_AND_SECONDS, 105.5),
        ("a while", AmountUnit.MINUTES, None),
        ("-5", AmountUnit.MINUTES, None),
        ("", AmountUnit.MINUTES, None),
    ],
)
def test_an_amount(text: str, unit: AmountUnit, minutes: float | None) -> None:
    assert amount_of(text, unit) == minutes


def test_columns_are_guessed_whatever_stands_between() -> None:
    table = read_table("\ufeffNote;Datum;Minuten\nscales;13.04.2026;45\n;14.04.2026;30\n")
    assert guessed(table) == Mapped(1, 2, AmountUnit.MINUTES, DMY)
    hours = read_table("Date,Rating,Hours\n2026-04-13,3,1.5\n2026-04-14,4,0.5\n")
    assert guessed(hours) == Mapped(0, 2, AmountUnit.HOURS, YMD)
    clocked = read_table("2026-04-13\t1:30\n2026-04-14\t0:45\n")
    assert clocked.header == ("column 1", "column 2")
    assert guessed(clocked) == Mapped(0, 1, AmountUnit.HOURS_AND_MINUTES, YMD)
    assert guessed(read_table("a,b\nx,y\n")) is None


@pytest.mark.parametrize("mark", [",", ";", "\t", "|"])
def test_each_mark_between_columns_and_a_decimal_comma(mark: str) -> None:
    # RFC 4180, 2.6: a cell that holds the mark itself stands in quotation marks.
    amount = '"1,5"' if mark == "," else "1,5"
    with_header = f"Datum{mark}Stunden\n13.04.2026{mark}{amount}\n14.04.2026{mark}2\n"
    without = with_header.split("\n", 1)[1]
    for text in (with_header, without, f"sep={mark}\n{with_header}", f"\ufeff{with_header}"):
        table = read_table(text)
        mapped = guessed(table)
        assert mapped is not None
        assert (mapped.date_column, mapped.amount_column, mapped.date_order) == (0, 1, DMY)
        assert [row[1] for row in table.rows] == ["1,5", "2"], text
    mapped = guessed(read_table(with_header))
    assert mapped is not None
    assert mapped.unit is AmountUnit.HOURS
    assert minutes_by_day(read_table(with_header), mapped).minutes == {
        date(2026, 4, 13): 90.0,
        date(2026, 4, 14): 120.0,
    }


def test_a_mark_that_nobody_uses_is_said_in_plain_words() -> None:
    with pytest.raises(PlainFailure, match="no table") as failure:
        read_table("date^minutes\n2026-04-13^30\n")
    assert "commas, semicolons, tabs or bars" in failure.value.next_step


def test_lines_inside_quotation_marks_belong_to_their_cell() -> None:
    # RFC 4180, 2.6 and 2.7: line breaks and doubled quotation marks inside a cell.
    text = 'note,date,minutes\r\n"slow,\r\nthen ""fast""",2026-04-13,30\r\n"",2026-04-14,20\r\n'
    table = read_table(text)
    assert table.rows[0] == ('slow,\nthen "fast"', "2026-04-13", "30")
    found = minutes_by_day(table, Mapped(1, 2, AmountUnit.MINUTES, YMD))
    assert found.minutes == {date(2026, 4, 13): 30.0, date(2026, 4, 14): 20.0}


def test_an_open_quotation_mark_swallows_no_rows() -> None:
    with pytest.raises(PlainFailure, match="never closed"):
        read_table('date,minutes,note\n2026-04-13,30,"nice\n2026-04-14,20,\n')


def test_a_quotation_mark_inside_a_word_is_a_sign_like_another() -> None:
    table = read_table('date,minutes,note\n2026-04-13,30,a 12" ruler\n2026-04-14,20,"a" b\n')
    assert [row[:2] for row in table.rows] == [("2026-04-13", "30"), ("2026-04-14", "20")]


def test_what_a_colon_stands_between() -> None:
    def unit(*cells: str) -> AmountUnit | None:
        rows = "".join(f"2026-04-{13 + n},{cell}\n" for n, cell in enumerate(cells))
        mapped = guessed(read_table("date,time\n" + rows))
        return mapped.unit if mapped else None

    assert unit("0:45", "1:30") is AmountUnit.HOURS_AND_MINUTES
    assert unit("0:45", "25:30") is AmountUnit.MINUTES_AND_SECONDS  # no day has 25 hours
    assert unit("0:45:10", "1:30:00") is AmountUnit.HOURS_AND_MINUTES
    hours = guessed(read_table("Tag;Dauer (h)\n13.04.2026;1,5\n"))
    assert hours is not None
    assert hours.unit is AmountUnit.HOURS


def test_a_two_digit_year_may_stand_at_either_end() -> None:
    assert only_order(["26-03-14", "26-03-15"]) is None  # or 14 and 15 March 2026
    assert only_order(["14.03.26", "15.03.26"]) is DMY


def test_the_same_row_again_is_counted_and_told() -> None:
    table = read_table("date,minutes\n2026-04-13,30\n2026-04-13,30\n2026-04-13,20\n")
    found = minutes_by_day(table, Mapped(0, 1, AmountUnit.MINUTES, YMD))
    assert found.minutes == {date(2026, 4, 13): 80.0}
    assert found.repeated == ((2, "the same as row 1, counted as another sitting"),)


def test_several_rows_of_a_day_are_added_and_odd_ones_told() -> None:
    table = read_table(
        "date,minutes\n2026-04-13,30\n2026-04-13,15\n2026-04-14,\n2026-04-15,0\n"
        "soon,20\n2026-04-16,a while\n2026-04-17,1000\n2026-04-17,1000\n"
    )
    found = minutes_by_day(table, Mapped(0, 1, AmountUnit.MINUTES, YMD))
    assert found.minutes == {date(2026, 4, 13): 45.0}
    assert found.unread == (
        (5, "'soon' is no day"),
        (6, "'a while' is no amount of practice"),
        (7, "more than 24 hours on 2026-04-17"),
    )


@pytest.mark.parametrize("text", ["", "\n\n", "one\ntwo\n", "date,minutes\n"])
def test_no_table(text: str) -> None:
    with pytest.raises(PlainFailure):
        read_table(text)


@given(st.text(max_size=200))
def test_any_text_is_a_table_or_one_plain_sentence(text: str) -> None:
    try:
        table = read_table(text)
    except PlainFailure:
        return
    mapped = guessed(table)
    if mapped is not None and mapped.date_order is not None:
        minutes_by_day(table, mapped)
