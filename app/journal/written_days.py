"""Which day a text means.

``03/04/2026`` is the third of April to some and the fourth of March to others. All
days of a column are read in every way that people write them; ways that do not fit
all of them drop out. Where more than one is left and they disagree, the player is
asked, never guessed for.
"""

import re
from collections.abc import Sequence
from datetime import date
from enum import StrEnum

_MOST_SHOWN = 3
_FIRST_YEAR = 1900
"""An earlier year is a slip of the pen: nobody who uses this played then."""


class DateOrder(StrEnum):
    """A way of writing a day; the order of year, month and day, whatever stands between."""

    YEAR_MONTH_DAY = "year-month-day"
    DAY_MONTH_YEAR = "day-month-year"
    MONTH_DAY_YEAR = "month-day-year"


_MONTHS = {
    name: number
    for number, names in enumerate(
        (
            ("jan",), ("feb",), ("mar", "mär", "mrz"), ("apr",), ("may", "mai"), ("jun",),
            ("jul",), ("aug",), ("sep",), ("oct", "okt"), ("nov",), ("dec", "dez"),
        ),
        start=1,
    )
    for name in names
}  # fmt: skip


def date_orders(texts: Sequence[str]) -> tuple[DateOrder, ...]:
    """Give the ways in which every day of a column can be read; empty cells are passed over."""
    filled = [text for text in texts if text.strip()]
    if not filled:
        return ()
    return tuple(order for order in DateOrder if all(day_of(text, order) for text in filled))


def only_order(texts: Sequence[str]) -> DateOrder | None:
    """Give the one way to read a column of days; ``None`` where several disagree."""
    orders = date_orders(texts)
    meanings = {tuple(day_of(text, order) for text in texts) for order in orders}
    return orders[0] if len(meanings) == 1 else None


def what_each_means(texts: Sequence[str]) -> dict[DateOrder, tuple[tuple[str, date], ...]]:
    """Show, for asking, what the cells on which the ways disagree would mean in each."""
    orders = date_orders(texts)
    telling = [
        text for text in dict.fromkeys(texts) if len({day_of(text, order) for order in orders}) > 1
    ][:_MOST_SHOWN]
    return {
        order: tuple((text, day) for text in telling if (day := day_of(text, order)))
        for order in orders
    }


def day_of(text: str, order: DateOrder) -> date | None:
    """Read a day in one way; a time of day behind it is passed over."""
    text = text.strip()
    named = _named_month(text)
    if named is not None:
        return named
    joined = re.match(r"(\d{4})(\d{2})(\d{2})(?!\d)", text)
    if joined is not None:
        return _date(*joined.groups()) if order is DateOrder.YEAR_MONTH_DAY else None
    found = re.match(r"(\d{1,4})([-./ ])\s?(\d{1,2})\2\s?(\d{1,4})(?!\d)", text)
    if found is None:
        return None
    if order is DateOrder.YEAR_MONTH_DAY and found[2] == "-" and len(found[1]) == 2:
        # 26-03-14: written so, the year may come first.
        return _in_order(f"20{found[1]}", found[3], found[4], order)
    return _in_order(found[1], found[3], found[4], order)


def any_day(text: str) -> bool:
    """Tell whether a text is a day in any way."""
    return any(day_of(text, order) for order in DateOrder)


def _in_order(first: str, middle: str, last: str, order: DateOrder) -> date | None:
    if order is DateOrder.YEAR_MONTH_DAY:
        is_so = len(first) == 4 and len(last) <= 2
        return _date(first, middle, last) if is_so else None
    if len(first) > 2 or len(last) not in (2, 4):
        return None
    year = f"20{last}" if len(last) == 2 else last
    if order is DateOrder.DAY_MONTH_YEAR:
        return _date(year, middle, first)
    return _date(year, first, middle)


def _named_month(text: str) -> date | None:
    """Read a day whose month is a word: it can mean one thing only."""
    day_first = re.match(r"(?:\w+,?\s+)?(\d{1,2})\.?[\s-]([^\W\d]{3,})\.?,?[\s-](\d{4})", text)
    month_first = re.match(r"([^\W\d]{3,})\.?\s(\d{1,2}),?\s(\d{4})", text)
    if day_first is not None:
        month = _MONTHS.get(day_first[2][:3].casefold())
        return _date(day_first[3], month, day_first[1]) if month else None
    if month_first is not None:
        month = _MONTHS.get(month_first[1][:3].casefold())
        return _date(month_first[3], month, month_first[2]) if month else None
    return None


def _date(year: str, month: str | int, day: str) -> date | None:
    try:
        found = date(int(year), int(month), int(day))
    except ValueError:
        return None
    return found if found.year >= _FIRST_YEAR else None
