"""When a file from elsewhere was made, as far as it says so itself."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import Literal

import mutagen

RecordedAtSource = Literal["container", "tag", "file_name", "file_time"]

_EARLIEST_YEAR = 1990
"""Clocks that were never set say 1904, 1970 or 1980."""

_NAME = re.compile(
    r"(?<!\d)(?P<year>(?:19|20)\d\d)(?P<s1>[-._ ]?)(?P<month>\d\d)(?P=s1)(?P<day>\d\d)"
    r"(?:(?:[-_ T.]|\sat\s|\sum\s|,\s)+(?P<hour>\d\d)(?P<s2>[-._:h]?)(?P<minute>\d\d)"
    r"(?:(?P=s2)(?P<second>\d\d)(?:\d{3})?)?)?(?!\d)",
    re.IGNORECASE,
)
_ISO = re.compile(
    r"(?P<year>\d{4})-(?P<month>\d\d)(?:-(?P<day>\d\d))"
    r"(?:[T ](?P<hour>\d\d):?(?P<minute>\d\d)(?::?(?P<second>\d\d)(?:\.\d+)?)?"
    r"\s*(?P<offset>Z|[+-]\d\d:?\d\d)?)?"
)


@dataclass(frozen=True, slots=True)
class RecordedAt:
    """A moment, where it was found, and what is known about its place.

    Attributes
    ----------
    when : datetime
        Aware when the relation to UTC is known.
    source : {'container', 'tag', 'file_name', 'file_time'}
        Where it was found.
    utc_offset_known : bool
        Whether the local time at the place follows from it.
    has_time : bool
        False when only the day was given; the time of `when` is then noon.
    """

    when: datetime
    source: RecordedAtSource
    utc_offset_known: bool
    has_time: bool = True


def find_recorded_at(path: Path, metadata: Mapping[str, str]) -> RecordedAt | None:
    """Find out when a file was made, trying the most trustworthy place first.

    Parameters
    ----------
    path : Path
        The file.
    metadata : mapping of str to str
        Container and stream tags, names in lower case.

    Returns
    -------
    RecordedAt or None
        None when not even the file's time can be read.
    """
    return (
        _from_apple_key(metadata)
        or _from_creation_time(metadata)
        or _from_tags(path, metadata)
        or date_in_name(path.name)
        or _from_file_time(path)
    )


def date_in_name(name: str) -> RecordedAt | None:
    """Read a date, and a time if there is one, out of a file name.

    Parameters
    ----------
    name : str
        Such as ``20260314_181502.m4a`` or ``2026-03-14 18.15.02.wav``.

    Returns
    -------
    RecordedAt or None
        A naive local time, noon when the name gives the day only; None when
        there is no valid date in the name.
    """
    for match in _NAME.finditer(name):
        found = _from_match(match, "file_name")
        if found is not None:
            return found
    return None


def parse_timestamp(text: str, source: RecordedAtSource) -> RecordedAt | None:
    """Read an ISO 8601 date or time, such as tags hold.

    Parameters
    ----------
    text : str
        Such as ``2026-03-14T18:15:02+0100`` or ``2026-03-14``.
    source : {'container', 'tag', 'file_name', 'file_time'}
        Where it was found.

    Returns
    -------
    RecordedAt or None
        None when the text is no full date.
    """
    match = _ISO.fullmatch(text.strip())
    return None if match is None else _from_match(match, source)


def _from_match(match: re.Match[str], source: RecordedAtSource) -> RecordedAt | None:
    parts = match.groupdict()
    has_time = parts["hour"] is not None
    iso = f"{parts['year']}-{parts['month']}-{parts['day']}T"
    iso += f"{parts['hour']}:{parts['minute']}:{parts['second'] or '00'}" if has_time else "12:00"
    offset = parts.get("offset")
    try:
        when = datetime.fromisoformat(iso + (offset or ""))
    except ValueError:
        return None
    if when.year < _EARLIEST_YEAR:
        return None
    return RecordedAt(when, source, utc_offset_known=bool(offset), has_time=has_time)


def _from_apple_key(metadata: Mapping[str, str]) -> RecordedAt | None:
    text = metadata.get("com.apple.quicktime.creationdate")
    return parse_timestamp(text, "container") if text else None


def _from_creation_time(metadata: Mapping[str, str]) -> RecordedAt | None:
    text = metadata.get("creation_time")
    found = parse_timestamp(text, "container") if text else None
    if found is None:
        return None
    # ISO 14496-12: UTC. Where the clip was made is not said.
    when = found.when if found.when.tzinfo else found.when.replace(tzinfo=UTC)
    return RecordedAt(when, "container", utc_offset_known=False)


def _from_tags(path: Path, metadata: Mapping[str, str]) -> RecordedAt | None:
    bext_date = metadata.get("date")
    bext_time = metadata.get("creation_time") or metadata.get("origination_time")
    if bext_date and bext_time:
        # BWF (EBU Tech 3285): local date and time in two fields.
        found = parse_timestamp(f"{bext_date}T{bext_time}", "tag")
        if found is not None:
            return found
    for text in (*_tag_texts(path), bext_date or ""):
        found = parse_timestamp(text, "tag")
        if found is not None:
            return found
    return None


def _tag_texts(path: Path) -> list[str]:
    try:
        file = mutagen.File(path)
    except (mutagen.MutagenError, OSError, ValueError):
        return []
    if file is None or file.tags is None:
        return []
    texts: list[str] = []
    for name in ("TDRC", "DATE", "date", "\xa9day"):
        try:
            value = file.tags[name]
        except (KeyError, ValueError):
            continue
        texts += [str(item) for item in getattr(value, "text", value)]
    return texts


def _from_file_time(path: Path) -> RecordedAt | None:
    try:
        stamp = path.stat().st_mtime
    except OSError:
        return None
    when = datetime.fromtimestamp(stamp, tz=UTC).astimezone()
    return RecordedAt(when, "file_time", utc_offset_known=True)
