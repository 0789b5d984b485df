"""Numbers, lengths, counts and days in the language of the window.

The same as :mod:`app.services.wording` says, in the window's language and with its decimal
sign: what the window shows is written with these.
"""

from collections.abc import Sequence
from datetime import date
from typing import TYPE_CHECKING

from app.services import wording
from app.ui.numbers import local_numbers
from app.ui.spoken import said
from app.ui.spoken import word as said_word

if TYPE_CHECKING:
    from app.services.reading_views import AnyReading


def number_text(value: float, digits: int, *, signed: bool = False) -> str:
    """Give a number with a true minus sign; see :func:`app.services.wording.number_text`."""
    return local_numbers(wording.number_text(value, digits, signed=signed))


def reading_text(reading: "AnyReading") -> str:
    """Give a reading with unit and plus-minus, or the sentence why there is none."""
    return said(wording.reading_text(reading))


def short_reading_text(reading: "AnyReading") -> str:
    """Give a reading for a narrow column: a dash where there is none."""
    return said(wording.short_reading_text(reading))


def length_text(seconds: float) -> str:
    """Give a length as minutes and seconds, or hours too."""
    return wording.length_text(seconds)


def position_text(seconds: float) -> str:
    """Give a position in a take to a tenth of a second."""
    return local_numbers(wording.position_text(seconds))


def minutes_text(minutes: float | None) -> str:
    """Give practice minutes, or say that none were entered."""
    return said(wording.minutes_text(minutes))


def size_text(size_bytes: int) -> str:
    """Give the size of a file in kB or MB."""
    return local_numbers(wording.size_text(size_bytes))


def counted(number: int, one: str, many: str = "") -> str:
    """Give a number with its noun."""
    return said(wording.counted(number, one, many))


def listed(items: Sequence[str]) -> str:
    """Join items as a sentence does."""
    if len(items) < 2:
        return "".join(items)
    return f"{', '.join(items[:-1])} {said_word('and')} {items[-1]}"


def day_text(day: date) -> str:
    """Give a day with its weekday."""
    return said(wording.day_text(day))


def short_day_text(day: date) -> str:
    """Give a day for a narrow place."""
    return said(wording.short_day_text(day))


def month_text(day: date) -> str:
    """Give the month and year of a day, for a narrow place."""
    return said(wording.short_day_text(day)).partition(" ")[2]


def day_and_month(day: date) -> str:
    """Give a day of a year that is clear, for a narrow place."""
    return said(wording.short_day_text(day)).removesuffix(f" {day.year}")
