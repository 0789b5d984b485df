"""Column types: how the values of the records lie in SQLite."""

import json
from collections.abc import Callable
from datetime import UTC, date, datetime, timedelta, timezone
from enum import StrEnum
from functools import lru_cache, partial
from typing import Any, TypeVar

from sqlalchemy import Date, Float, String, Text
from sqlalchemy.engine import Dialect
from sqlalchemy.types import TypeDecorator

from app.journal.codec import decoded, encoded, readable
from app.journal.records import PlayingSettings
from app.store.troubles import UnreadableValue

E = TypeVar("E", bound=StrEnum)
R = TypeVar("R")

_SECONDS_A_MINUTE = 60


class Checked(TypeDecorator[R]):
    """A column whose values say plainly when they cannot be read."""

    __abstract__ = True

    def result_processor(
        self, dialect: Dialect, coltype: object
    ) -> Callable[[Any | None], Any] | None:
        """Read what SQLite gives; see :class:`UnreadableValue`."""
        read = super().result_processor(dialect, coltype)
        return None if read is None else partial(_read_or_tell, read)


def _read_or_tell(read: Callable[[Any | None], Any], value: object) -> object:
    try:
        return read(value)
    except (ValueError, TypeError, LookupError, AttributeError, OverflowError) as problem:
        raise UnreadableValue(str(problem)) from problem


class Day(Checked[date]):
    """A practice day, or another date."""

    impl = Date
    cache_ok = True


class Number(Checked[float]):
    """A number; SQLite itself would give whatever lies there."""

    impl = Float
    cache_ok = True

    def process_result_value(self, value: object, dialect: Dialect) -> float | None:
        """Read a number."""
        if value is not None and not isinstance(value, (int, float)):
            raise UnreadableValue(f"no number: {value!r:.40}")
        return value


class Instant(Checked[datetime]):
    """An aware datetime as text that sorts by instant and keeps its offset.

    ``2026-03-01T18:05:09.000000Z/+01:00`` is 19:05:09 on a wall clock one hour ahead
    of UTC: the time before the ``Z`` is UTC, the offset after the stroke is the
    place's own.
    """

    impl = String(40)
    cache_ok = True

    def process_bind_param(self, value: datetime | None, dialect: Dialect) -> str | None:
        """Write an instant."""
        return None if value is None else instant_text(value)

    def process_result_value(self, value: str | None, dialect: Dialect) -> datetime | None:
        """Read an instant."""
        return None if value is None else instant_of(value)


def instant_text(value: datetime) -> str:
    """Write an instant in the sortable form of :class:`Instant`."""
    offset = value.utcoffset()
    if offset is None:
        msg = "an instant needs a time zone"
        raise ValueError(msg)
    utc = value.astimezone(UTC).replace(tzinfo=None).isoformat(timespec="microseconds")
    return f"{utc}Z/{_offset_text(offset)}"


def instant_of(text: str) -> datetime:
    """Read an instant from the sortable form of :class:`Instant`."""
    utc, _, offset = text.partition("Z/")
    return datetime.fromisoformat(utc).replace(tzinfo=UTC).astimezone(_zone_of(offset))


def _offset_text(offset: timedelta) -> str:
    seconds = round(offset.total_seconds())
    sign, seconds = ("-", -seconds) if seconds < 0 else ("+", seconds)
    minutes, rest = divmod(seconds, _SECONDS_A_MINUTE)
    text = f"{sign}{minutes // 60:02d}:{minutes % 60:02d}"
    return f"{text}:{rest:02d}" if rest else text


@lru_cache(maxsize=256)
def _zone_of(text: str) -> timezone:
    sign = -1 if text.startswith("-") else 1
    hours, minutes, *seconds = (int(part) for part in text[1:].split(":"))
    offset = timedelta(hours=hours, minutes=minutes, seconds=seconds[0] if seconds else 0)
    return timezone(sign * offset)


class EnumText(Checked[E]):
    """A word of one of the records' enumerations."""

    impl = String(16)
    cache_ok = True

    def __init__(self, kind: type[E]) -> None:
        super().__init__()
        self.kind = kind

    def process_bind_param(self, value: E | None, dialect: Dialect) -> str | None:
        """Write the word."""
        return None if value is None else self.kind(value).value

    def process_result_value(self, value: str | None, dialect: Dialect) -> E | None:
        """Read the word."""
        return None if value is None else self.kind(value)


class SettingsText(Checked[PlayingSettings]):
    """Playing settings as JSON text."""

    impl = Text
    cache_ok = True

    def process_bind_param(self, value: PlayingSettings | None, dialect: Dialect) -> str | None:
        """Write the settings."""
        return None if value is None else json_text(encoded(value))

    def process_result_value(self, value: str | None, dialect: Dialect) -> PlayingSettings | None:
        """Read the settings."""
        return None if value is None else _settings_of(value)


class RecordList(Checked[tuple[R, ...]]):
    """Records of one kind as a JSON list; what cannot be read is left out."""

    impl = Text
    cache_ok = True

    def __init__(self, kind: type[R]) -> None:
        super().__init__()
        self.kind = kind

    def process_bind_param(self, value: tuple[R, ...] | None, dialect: Dialect) -> str | None:
        """Write the records."""
        return None if value is None else json_text([encoded(record) for record in value])

    def process_result_value(self, value: str | None, dialect: Dialect) -> tuple[R, ...] | None:
        """Read the records."""
        return None if value is None else tuple(readable(self.kind, json.loads(value)))


class OneRecord(Checked[R]):
    """A record as a JSON object, or nothing; one that cannot be read counts as nothing."""

    impl = Text
    cache_ok = True

    def __init__(self, kind: type[R]) -> None:
        super().__init__()
        self.kind = kind

    def process_bind_param(self, value: R | None, dialect: Dialect) -> str | None:
        """Write the record."""
        return None if value is None else json_text(encoded(value))

    def process_result_value(self, value: str | None, dialect: Dialect) -> R | None:
        """Read the record."""
        if value is None:
            return None
        return next(readable(self.kind, [json.loads(value)]), None)


class IdList(TypeDecorator[tuple[str, ...]]):
    """Ids as text, a space between them."""

    impl = Text
    cache_ok = True

    def process_bind_param(self, value: tuple[str, ...] | None, dialect: Dialect) -> str | None:
        """Write the ids."""
        return None if value is None else " ".join(value)

    def process_result_value(self, value: str | None, dialect: Dialect) -> tuple[str, ...] | None:
        """Read the ids."""
        return None if value is None else tuple(value.split())


@lru_cache(maxsize=1024)
def _settings_of(text: str) -> PlayingSettings:
    # Thousands of takes share a handful of settings, and the value is frozen.
    return decoded(PlayingSettings, json.loads(text))


def json_text(value: object) -> str:
    """Write JSON, short, without the numbers JSON does not have."""
    return json.dumps(value, ensure_ascii=False, allow_nan=False, separators=(",", ":"))
