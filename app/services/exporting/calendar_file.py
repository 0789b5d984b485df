"""Practice and rest days as iCalendar (RFC 5545): one event a day, the whole day."""

from collections.abc import Iterable
from datetime import UTC, datetime, timedelta

from app.services.views import DayBar
from app.services.wording import counted, minutes_text

_PRODUCT = "-//Passagework//Practice days//EN"


def calendar_bytes(days: Iterable[DayBar], stamp: datetime) -> bytes:
    """Write the days on which something was practised, or that were meant as rest.

    Missed days are no events. The identifiers stay the same from one export to the
    next, so that another calendar replaces what it has instead of doubling it.

    Parameters
    ----------
    days : iterable of DayBar
    stamp : datetime
        When the file is made, timezone-aware.

    Returns
    -------
    bytes
        A file in UTF-8 with the line ends of the standard.
    """
    import icalendar  # noqa: PLC0415 - only when exported

    calendar = icalendar.Calendar()
    calendar.add("prodid", _PRODUCT)
    calendar.add("version", "2.0")
    calendar.add("calscale", "GREGORIAN")
    for day in days:
        words = _words(day)
        if not words:
            continue
        event = icalendar.Event()
        event.add("uid", f"{day.practice_day.isoformat()}@passagework.invalid")
        event.add("dtstamp", stamp.astimezone(UTC))
        event.add("dtstart", day.practice_day)
        event.add("dtend", day.practice_day + timedelta(days=1))
        event.add("summary", words)
        event.add("transp", "TRANSPARENT")
        event.add("class", "PRIVATE")
        calendar.add_component(event)
    return bytes(calendar.to_ical())


def _words(day: DayBar) -> str:
    parts = []
    if day.minutes:
        parts.append(minutes_text(day.minutes))
    if day.take_count:
        parts.append(counted(day.take_count, "take"))
    if parts:
        return f"Practised: {', '.join(parts)}"
    if day.rest == "planned":
        return "Rest day, planned"
    return "Rest day" if day.rest else ""
