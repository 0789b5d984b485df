"""When a clip was played: what it says itself, where it leaves the day open, and whom to ask."""

from datetime import date, datetime, time, timedelta, tzinfo
from typing import TYPE_CHECKING

from app.journal.practice_days import practice_day
from app.services.wording import day_text

if TYPE_CHECKING:
    from audio.importing import ClipInfo

_SOURCES = {
    "container": "the date inside the clip",
    "tag": "the date in the file's tags",
    "file_name": "the date in the file's name",
    "file_time": "the time the file was last changed",
    None: "the present moment, since the file has no date",
}
ENTERED = "the day you gave"
_NEAR_TURN = timedelta(hours=3)


def recorded_at_and_source(info: "ClipInfo", zone: tzinfo, now: datetime) -> tuple[datetime, str]:
    """Give when a clip was made, in local time as far as it says, and where that stands.

    Parameters
    ----------
    info : ClipInfo
    zone : tzinfo
        Where it was played, for a clip that does not say so itself.
    now : datetime
        For one that says nothing at all.
    """
    source = _SOURCES[info.recorded_at_source]
    when = info.recorded_at
    if when is None:
        return now, source
    if when.utcoffset() is None:
        return when.replace(tzinfo=zone), source
    if not info.utc_offset_known:
        return when.astimezone(zone), f"{source}, in this computer's time zone"
    return when, source


def is_guessed(source: str) -> bool:
    """Whether a day's source is only what a copied file may have lost: its time, or now."""
    return source in (_SOURCES["file_time"], _SOURCES[None])


def days_in_doubt(info: "ClipInfo", recorded_at: datetime, turn_hour: int) -> tuple[date, ...]:
    """Give the two days a clip may belong to: its zone is not known and the turn is near."""
    if info.utc_offset_known or info.recorded_at is None or info.recorded_at.utcoffset() is None:
        return ()
    days = {
        practice_day(recorded_at + shift, turn_hour=turn_hour)
        for shift in (-_NEAR_TURN, _NEAR_TURN)
    }
    return tuple(sorted(days)) if len(days) > 1 else ()


def day_question(recorded_at: datetime, days: tuple[date, ...]) -> str:
    """Ask on which of two days a clip was played."""
    return (
        f"The clip says when but not in which time zone: here it was {recorded_at:%H:%M}, near "
        f"the turn of the day. Was it {day_text(days[0])} or {day_text(days[1])}?"
    )


def same_time_on(day: date, recorded_at: datetime, turn_hour: int) -> datetime:
    """Move an instant to another practice day, keeping its time of day."""
    at: time = recorded_at.timetz()
    calendar_day = day + timedelta(days=1) if at.hour < turn_hour else day
    return datetime.combine(calendar_day, at)
