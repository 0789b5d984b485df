"""Minutes kept elsewhere, as a table of text: which column is what, and how much a cell says.

How days are written is for :mod:`app.journal.written_days` to tell.
"""

import csv
import io
import re
from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from app.journal.failures import PlainFailure
from app.journal.written_days import DateOrder, any_day, date_orders, day_of, only_order

MINUTES_A_DAY = 24 * 60
_DELIMITERS = ",;\t|"

_DATE_WORDS = ("date", "day", "datum", "tag", "fecha", "data", "jour")
_AMOUNT_WORDS = ("minute", "min", "duration", "time", "hour", "dauer", "zeit", "stunde", "length")
_HOUR_WORDS = ("hour", "hrs", "stunde")


class AmountUnit(StrEnum):
    """What the numbers of a column are."""

    MINUTES = "minutes"
    HOURS = "hours"
    HOURS_AND_MINUTES = "hours:minutes"


@dataclass(frozen=True, slots=True)
class Table:
    """A table as read: its header (made up where it has none) and its rows of text."""

    header: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True)
class Mapped:
    """Which column holds the day and which the amount, and how to read them.

    ``date_order`` is ``None`` where the dates fit several ways: ask the player.
    """

    date_column: int
    amount_column: int
    unit: AmountUnit
    date_order: DateOrder | None


@dataclass(frozen=True, slots=True)
class DayMinutes:
    """The minutes of each day, and the rows that could not be read (number, why)."""

    minutes: Mapping[date, float]
    unread: tuple[tuple[int, str], ...]


def read_table(text: str) -> Table:
    """Read comma, semicolon, tab or bar separated text.

    Raises
    ------
    PlainFailure
        Where it has no rows of at least two columns.
    """
    delimiter = _delimiter(text)
    lines = io.StringIO(text.lstrip("\ufeff"), newline=None)
    try:
        cells = [
            tuple(cell.strip() for cell in row) for row in csv.reader(lines, delimiter=delimiter)
        ]
    except csv.Error as problem:
        raise PlainFailure(
            f"The file is no table that can be read ({problem}).", "Export it as CSV anew."
        ) from problem
    rows = [row for row in cells if any(row)]
    width = max((len(row) for row in rows), default=0)
    if width < 2:
        raise PlainFailure(
            "The file is no table with a column of days and one of minutes.",
            "Export it as CSV, with one row a day or a session.",
        )
    rows = [row + ("",) * (width - len(row)) for row in rows]
    if any(any_day(cell) for cell in rows[0]):
        header = tuple(f"column {number}" for number in range(1, width + 1))
    else:
        header, rows = rows[0], rows[1:]
    if not rows:
        raise PlainFailure("The file has a header and no rows.", "Choose a file with minutes.")
    return Table(header, tuple(rows))


def guessed(table: Table) -> Mapped | None:
    """Propose which column is what; ``None`` where no column holds days and no one amounts."""
    dated = [n for n in range(len(table.header)) if date_orders(_column(table, n))]
    dated.sort(key=lambda n: not _mentions(table.header[n], _DATE_WORDS))
    if not dated:
        return None
    amounts = [
        n
        for n in range(len(table.header))
        if n != dated[0] and unit_of(table.header[n], _column(table, n)) is not None
    ]
    amounts.sort(key=lambda n: not _mentions(table.header[n], _AMOUNT_WORDS))
    if not amounts:
        return None
    column = _column(table, amounts[0])
    unit = unit_of(table.header[amounts[0]], column) or AmountUnit.MINUTES
    return Mapped(dated[0], amounts[0], unit, only_order(_column(table, dated[0])))


def unit_of(header: str, texts: Sequence[str]) -> AmountUnit | None:
    """Tell what the numbers of a column are; ``None`` where they are no amounts."""
    filled = [text for text in texts if text.strip()]
    if not filled:
        return None
    if all(re.fullmatch(r"\d{1,3}:[0-5]\d(:[0-5]\d)?", text.strip()) for text in filled):
        return AmountUnit.HOURS_AND_MINUTES
    if any(amount_of(text, AmountUnit.MINUTES) is None for text in filled):
        return None
    return AmountUnit.HOURS if _mentions(header, _HOUR_WORDS) else AmountUnit.MINUTES


def amount_of(text: str, unit: AmountUnit) -> float | None:
    """Read an amount of practice in minutes: '45', '1,5', '1:30', '1 h 30 min', '45 min'."""
    text = text.strip().casefold()
    clock = re.fullmatch(r"(\d{1,3}):([0-5]\d)(?::([0-5]\d))?", text)
    if clock is not None:
        return int(clock[1]) * 60 + int(clock[2]) + int(clock[3] or 0) / 60
    worded = re.fullmatch(
        r"(?:(\d+(?:[.,]\d+)?)\s*(?:h|hr|hrs|hours?|std\.?))?\s*(?:(\d+)\s*(?:m|min|mins|minutes?)?)?",
        text,
    )
    if worded is not None and worded[1] is not None:
        return float(worded[1].replace(",", ".")) * 60 + float(worded[2] or 0)
    plain = re.fullmatch(r"(\d+(?:[.,]\d+)?)\s*(m|min|mins|minutes?)?", text)
    if plain is None:
        return None
    amount = float(plain[1].replace(",", "."))
    return amount * 60 if unit is AmountUnit.HOURS and plain[2] is None else amount


def minutes_by_day(table: Table, mapped: Mapped) -> DayMinutes:
    """Add up the minutes of each day.

    Rows without an amount, or with 0, say nothing. A row that cannot be read is told by
    its number in the file's own count of rows, from 1 without the header; a day with
    more than 24 hours is left out whole.

    Raises
    ------
    ValueError
        Where the way of writing days is not settled.
    """
    if mapped.date_order is None:
        msg = "ask which way the days are written"
        raise ValueError(msg)
    sums: dict[date, float] = defaultdict(float)
    rows_of: dict[date, list[int]] = defaultdict(list)
    unread: list[tuple[int, str]] = []
    for number, row in enumerate(table.rows, start=1):
        amount_text = row[mapped.amount_column]
        if not amount_text:
            continue
        day = day_of(row[mapped.date_column], mapped.date_order)
        amount = amount_of(amount_text, mapped.unit)
        if day is None:
            unread.append((number, f"'{row[mapped.date_column]}' is no day"))
        elif amount is None:
            unread.append((number, f"'{amount_text}' is no amount of practice"))
        elif amount > 0:
            sums[day] += amount
            rows_of[day].append(number)
    for day in [day for day, amount in sums.items() if amount > MINUTES_A_DAY]:
        unread.append((rows_of[day][0], f"more than 24 hours on {day}"))
        del sums[day]
    return DayMinutes(dict(sorted(sums.items())), tuple(sorted(unread)))


def _column(table: Table, number: int) -> list[str]:
    return [row[number] for row in table.rows]


def _mentions(header: str, words: Sequence[str]) -> bool:
    return any(word in header.casefold() for word in words)


def _delimiter(text: str) -> str:
    lines = [line for line in text.splitlines() if line.strip()][:20]
    counts = {mark: min((line.count(mark) for line in lines), default=0) for mark in _DELIMITERS}
    best = max(counts, key=lambda mark: counts[mark])
    if counts[best]:
        return best
    return max(_DELIMITERS, key=text.count)
