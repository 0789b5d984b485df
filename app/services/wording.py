"""Numbers, lengths and days in words, the same in the window and on the command line."""

from collections.abc import Sequence
from datetime import date

from app.services.reading_views import AnyReading, NoReading

NO_ITEM = "no item"
"""Stands for time that was practised without an item."""

MINUS = "\N{MINUS SIGN}"
_MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"]


def number_text(value: float, digits: int, *, signed: bool = False) -> str:
    """Give a number with a true minus sign; ``-0.0`` never appears.

    >>> number_text(-0.04, 1)
    '0.0'
    """
    size = f"{abs(value):.{digits}f}"
    is_zero = float(size) == 0.0
    if is_zero:
        return size
    if value < 0:
        return MINUS + size
    return ("+" if signed else "") + size


def reading_text(reading: AnyReading) -> str:
    """Give a reading with unit and plus-minus, or the sentence why there is none.

    >>> reading_text(Reading(7.24, "cents", 1.1, signed=True))
    '+7.2 ± 1.1 cents'
    """
    if isinstance(reading, NoReading):
        return reading.sentence
    text = number_text(reading.value, reading.digits, signed=reading.signed)
    if reading.uncertainty is not None:
        text += f" ± {_uncertainty_text(reading.uncertainty, reading.digits)}"
    if reading.interval is not None:
        low, high = (number_text(end, reading.digits, signed=True) for end in reading.interval)
        text += f" ({low} to {high})"
    return f"{text} {reading.unit}" if reading.unit else text


def _uncertainty_text(uncertainty: float, digits: int) -> str:
    """Never round an uncertainty down to nothing."""
    smallest = 10.0**-digits
    return f"{max(abs(uncertainty), smallest):.{digits}f}"


def short_reading_text(reading: AnyReading) -> str:
    """Give a reading for a narrow column: a dash where there is none."""
    return "\N{EN DASH}" if isinstance(reading, NoReading) else reading_text(reading)


def length_text(seconds: float) -> str:
    """Give a length as minutes and seconds, or hours too.

    >>> length_text(83.4)
    '1:23'
    """
    whole = max(0, int(seconds + 0.5))
    hours, rest = divmod(whole, 3600)
    minutes, secs = divmod(rest, 60)
    return f"{hours}:{minutes:02d}:{secs:02d}" if hours else f"{minutes}:{secs:02d}"


def position_text(seconds: float) -> str:
    """Give a position in a take to a tenth of a second.

    >>> position_text(83.44)
    '1:23.4'
    """
    tenths = max(0, int(seconds * 10 + 0.5))
    minutes, rest = divmod(tenths, 600)
    return f"{minutes}:{rest // 10:02d}.{rest % 10}"


def minutes_text(minutes: float | None) -> str:
    """Give practice minutes, or say that none were entered.

    >>> minutes_text(95), minutes_text(95_038)
    ('1 h 35 min', '1,583 h 58 min')
    """
    if minutes is None:
        return "no minutes entered"
    whole = int(minutes + 0.5)
    hours, rest = divmod(whole, 60)
    if hours and rest:
        return f"{hours:,} h {rest} min"
    return f"{hours:,} h" if hours else f"{rest} min"


def size_text(size_bytes: int) -> str:
    """Give the size of a file in kB or MB (powers of ten), as file managers do."""
    if size_bytes < 1_000_000:
        return f"{max(1, round(size_bytes / 1000))} kB"
    return f"{size_bytes / 1_000_000:.1f} MB"


def counted(number: int, one: str, many: str = "") -> str:
    """Give a number with its noun.

    >>> counted(1, "take"), counted(3, "take")
    ('1 take', '3 takes')
    """
    return f"{number} {one if number == 1 else many or one + 's'}"


def listed(items: "tuple[str, ...] | list[str]") -> str:
    """Join items as a sentence does.

    >>> listed(["a", "b", "c"])
    'a, b and c'
    """
    if len(items) < 2:
        return "".join(items)
    return ", ".join(items[:-1]) + " and " + items[-1]


def ended(text: str) -> str:
    """Give a player's words the end of a sentence, where they have none of their own.

    >>> ended("thin"), ended("let go?")
    ('thin.', 'let go?')
    """
    return text if text.endswith((".", "!", "?", "\N{HORIZONTAL ELLIPSIS}")) else f"{text}."


def day_text(day: date) -> str:
    """Give a day so that it reads the same in every country.

    >>> day_text(date(2026, 3, 9))
    'Mon 9 Mar 2026'
    """
    weekdays = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
    return f"{weekdays[day.weekday()]} {day.day} {_MONTHS[day.month - 1]} {day.year}"


def short_day_text(day: date) -> str:
    """Give a day for a narrow place.

    >>> short_day_text(date(2026, 3, 9))
    '9 Mar 2026'
    """
    return f"{day.day} {_MONTHS[day.month - 1]} {day.year}"


def columns_text(rows: Sequence[tuple[str, ...]], gap: str = "  ") -> str:
    """Lay rows of cells out in columns; the last column is not padded."""
    if not rows:
        return ""
    widths = [max(len(row[i]) for row in rows) for i in range(len(rows[0]) - 1)]
    lines = []
    for row in rows:
        cells = [cell.ljust(width) for cell, width in zip(row, widths, strict=False)]
        lines.append(gap.join([*cells, row[-1]]).rstrip())
    return "\n".join(lines)
