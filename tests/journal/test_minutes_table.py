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
