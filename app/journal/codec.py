"""Records as JSON-compatible values and back.

One rule for all records: a field is written under its own name; instants and dates
in ISO 8601, enumerations as their word, tuples as lists. Writing is strict: what is
not what the record promises is a ``ValueError``. Reading is tolerant: unknown keys
are passed over (a newer version wrote them), and a missing or odd value takes the
field's default where it has one.
"""

import dataclasses
import math
import types
import typing
from collections.abc import Iterator, Mapping
from datetime import date, datetime
from enum import StrEnum
from functools import cache
from typing import Any, TypeVar

R = TypeVar("R")

JsonDict = dict[str, Any]


class Unreadable(ValueError):  # noqa: N818 - a state of a file, told on
    """A value that had to be there is missing or is something else."""


def encoded(record: object) -> JsonDict:
    """Write a record as a JSON-compatible dictionary.

    Raises
    ------
    ValueError
        Where a value is not of the field's type, is not finite, or is an instant
        without an offset.
    """
    kind: Any = type(record)
    result: JsonDict = {}
    for name, hint in _hints(kind).items():
        value = getattr(record, name)
        try:
            result[name] = _written(value, hint)
        except ValueError as error:
            msg = f"{kind.__name__}.{name}: {error}"
            raise ValueError(msg) from error
    return result


def decoded(kind: type[R], data: object) -> R:
    """Read a record from what :func:`encoded` wrote, now or in another version.

    Raises
    ------
    Unreadable
        Where a field without a default is missing or cannot be read.
    """
    if not isinstance(data, Mapping):
        msg = f"{kind.__name__}: expected an object"
        raise Unreadable(msg)
    values: JsonDict = {}
    hashable: Any = kind
    optional = _fields_with_default(hashable)
    for name, hint in _hints(hashable).items():
        if name not in data and name in optional:
            continue
        try:
            values[name] = _read(data[name], hint)
        except (KeyError, ValueError) as error:
            if name in optional:
                continue
            msg = f"{kind.__name__}.{name}: {error!r}"
            raise Unreadable(msg) from error
    return kind(**values)


def readable(kind: type[R], items: object) -> Iterator[R]:
    """Read the records of a list; one that cannot be read is left out."""
    for item in items if isinstance(items, list) else ():
        try:
            yield decoded(kind, item)
        except Unreadable:
            continue


@cache
def _hints(kind: Any) -> dict[str, Any]:
    if not dataclasses.is_dataclass(kind):
        msg = f"{kind.__name__} is not a record"
        raise TypeError(msg)
    return typing.get_type_hints(kind)


@cache
def _fields_with_default(kind: Any) -> frozenset[str]:
    missing = dataclasses.MISSING
    return frozenset(
        field.name
        for field in dataclasses.fields(kind)
        if field.default is not missing or field.default_factory is not missing
    )


def _alternatives(hint: Any) -> tuple[Any, ...]:
    if isinstance(hint, types.UnionType) or typing.get_origin(hint) is typing.Union:
        return typing.get_args(hint)
    return (hint,)


def _refuse(value: object, hint: Any) -> ValueError:
    return ValueError(f"{value!r} is not {getattr(hint, '__name__', hint)}")


def _written(value: Any, hint: Any) -> Any:
    kinds = _alternatives(hint)
    if value is None and type(None) in kinds:
        return None
    kind = kinds[0]
    if typing.get_origin(kind) is tuple:
        if not isinstance(value, tuple):
            raise _refuse(value, kind)
        return [_written(item, typing.get_args(kind)[0]) for item in value]
    if kind is float and isinstance(value, int) and not isinstance(value, bool):
        return value
    if type(value) is not kind and not (kind is datetime and isinstance(value, datetime)):
        raise _refuse(value, kind)
    if dataclasses.is_dataclass(kind):
        return encoded(value)
    return _written_scalar(value)


def _written_scalar(value: Any) -> Any:
    if isinstance(value, float) and not math.isfinite(value):
        msg = f"{value!r} is not a finite number"
        raise ValueError(msg)
    if isinstance(value, datetime) and value.utcoffset() is None:
        msg = f"{value!r} has no time zone"
        raise ValueError(msg)
    if isinstance(value, StrEnum):
        return value.value
    if isinstance(value, date):
        return value.isoformat()
    return value


def _read(value: Any, hint: Any) -> Any:
    kinds = _alternatives(hint)
    if value is None:
        if type(None) in kinds:
            return None
        raise _refuse(value, hint)
    kind = kinds[0]
    if typing.get_origin(kind) is tuple:
        if not isinstance(value, list):
            raise _refuse(value, kind)
        return tuple(_read(item, typing.get_args(kind)[0]) for item in value)
    if dataclasses.is_dataclass(kind):
        return decoded(typing.cast(type[Any], kind), value)
    return _read_scalar(value, kind)


def _read_scalar(value: Any, kind: Any) -> Any:
    if kind in (date, datetime) or issubclass(kind, StrEnum):
        if not isinstance(value, str):
            raise _refuse(value, kind)
        return _read_text(value, kind)
    if kind is float:
        if isinstance(value, bool) or not isinstance(value, int | float):
            raise _refuse(value, kind)
        number = float(value)
        if not math.isfinite(number):
            raise _refuse(value, kind)
        return number
    if type(value) is not kind:
        raise _refuse(value, kind)
    return value


def _read_text(text: str, kind: Any) -> Any:
    if kind is datetime:
        instant = datetime.fromisoformat(text)
        if instant.utcoffset() is None:
            raise _refuse(text, kind)
        return instant
    if kind is date:
        return date.fromisoformat(text)
    return kind(text)
