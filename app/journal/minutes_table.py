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

_HOURS_A_DAY = 24
MINUTES_A_DAY = _HOURS_A_DAY * 60
_CLOCK = re.compile(r"(\d{1,3}):([0-5]\d)(?::([0-5]\d))?")
_DELIMITERS = ",;\t|"

_DATE_WORDS = ("date", "day", "datum", "tag", "fecha", "data", "jour")
_AMOUNT_WORDS = ("minute", "min", "duration", "time", "hour", "dauer", "zeit", "stunde", "length")
_HOUR_WORDS = ("hour", "hrs", "stunde")


class AmountUnit(StrEnum):
    """What the numbers of a column are."""

    MINUTES = "minutes"
    HOURS = "hours"
    HOURS_AND_MINUTES = "hours:minutes"
    MINUTES_AND_SECONDS = "minutes:seconds"


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
    """The minutes of each day, and what is to be told about single rows (number, why).

    ``unread`` could not be read; ``repeated`` are the same, cell for cell, as an earlier
    row, and are counted all the same: two sittings of a day may well look alike.
    """

    minutes: Mapping[date, float]
    unread: tuple[tuple[int, str], ...]
    repeated: tuple[tuple[int, str], ...] = ()


def read_table(text: str) -> Table:
    """Read comma, semicolon, tab or bar separated text.

    Of several marks that could separate the columns, the one counts with which a column
    of days and one of amounts are found.

    Raises
    ------
    PlainFailure
        Where it has no rows of at least two columns, or a quotation mark stays open.
    """
    text = text.lstrip("\ufeff")
    named = re.match(r"sep=([,;\t|])\r?\n", text)  # as spreadsheets write for each other
    if named is not None:
        return _table(_rows(text[named.end() :], named[1]))
    tables = []
    for delimiter in sorted(_DELIMITERS, key=text.count, reverse=True):
        rows = _rows(text, delimiter)
        if max((len(row) for row in rows), default=0) >= 2:
            tables.append(_table(rows))
    if not tables:
        return _table(_rows(text, _DELIMITERS[0]))
    return next((table for table in tables if guessed(table) is not None), tables[0])


def _rows(text: str, delimiter: str) -> list[tuple[str, ...]]:
    """Split text into rows of cells; lines inside quotation marks belong to their cell."""
    for is_strict in (True, False):
        reader = csv.reader(io.StringIO(text, newline=None), delimiter=delimiter, strict=is_strict)
        try:
            cells = [tuple(cell.strip() for cell in row) for row in reader]
        except csv.Error as problem:
            if "unexpected end" in str(problem):
                raise PlainFailure(
                    "A quotation mark in the file is opened and never closed.",
                    "Close it, or export the file anew.",
                ) from problem
            if not is_strict:
                raise PlainFailure(
                    f"The file is no table that can be read ({problem}).", "Export it as CSV anew."
                ) from problem
        else:
            return [row for row in cells if any(row)]
    return []


def _table(rows: list[tuple[str, ...]]) -> Table:
    width = max((len(row) for row in rows), default=0)
    if width < 2:
        raise PlainFailure(
            "The file is no table with a column of days and one of minutes.",
            "Export it as CSV, one row a day or a session, with commas, semicolons, tabs or"
            " bars between the columns.",
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
    clocks = [_CLOCK.fullmatch(text.strip()) for text in filled]
    if all(clocks):
        # No day holds that many hours: then it is minutes and seconds.
        most = max(int(clock[1]) for clock in clocks if clock is not None)
        is_short = most >= _HOURS_A_DAY and not any(clock[3] for clock in clocks if clock)
        return AmountUnit.MINUTES_AND_SECONDS if is_short else AmountUnit.HOURS_AND_MINUTES
    if any(amount_of(text, AmountUnit.MINUTES) is None for text in filled):
        return None
    in_hours = _mentions(header, _HOUR_WORDS) or re.search(r"\bh\b", header.casefold())
    return AmountUnit.HOURS if in_hours else AmountUnit.MINUTES


def amount_of(text: str, unit: AmountUnit) -> float | None:
    """Read an amount of practice in minutes: '45', '1,5', '1:30', '1 h 30 min', '45 min'."""
    text = text.strip().casefold()
    clock = _CLOCK.fullmatch(text)
    if clock is not None and unit is AmountUnit.MINUTES_AND_SECONDS and clock[3] is None:
        return int(clock[1]) + int(clock[2]) / 60
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
    repeated: list[tuple[int, str]] = []
    seen: dict[tuple[str, ...], int] = {}
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
            earlier = seen.setdefault(row, number)
            if earlier != number:
                repeated.append((number, f"the same as row {earlier}, counted as another sitting"))
    for day in [day for day, amount in sums.items() if amount > MINUTES_A_DAY]:
        unread.append((rows_of[day][0], f"more than 24 hours on {day}"))
        del sums[day]
    return DayMinutes(dict(sorted(sums.items())), tuple(sorted(unread)), tuple(repeated))


def _column(table: Table, number: int) -> list[str]:
    return [row[number] for row in table.rows]


def _mentions(header: str, words: Sequence[str]) -> bool:
    return any(word in header.casefold() for word in words)
