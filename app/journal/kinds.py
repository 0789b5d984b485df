"""The words that records are made of: who, how, what sort.

Apart from the records, which the window's first look does not need.
"""

from enum import StrEnum


class Author(StrEnum):
    """Who placed a marker."""

    SELF = "self"
    TEACHER = "teacher"


class MarkerState(StrEnum):
    """Where a marked problem stands."""

    TO_WORK_ON = "to_work_on"
    SETTLED = "settled"
    RETURNED = "returned"


class Origin(StrEnum):
    """How a take came into the journal."""

    RECORDED = "recorded"
    IMPORTED = "imported"
    RECOVERED = "recovered"


class AimMet(StrEnum):
    """The player's own answer to the aim of a take."""

    YES = "yes"
    PARTLY = "partly"
    NO = "no"


class MinutesSource(StrEnum):
    """Where a session's minutes come from."""

    CLOCK = "clock"
    TYPED = "typed"
    SOUNDING = "sounding"


class ItemKind(StrEnum):
    """What sort of thing is practised."""

    SCALE = "scale"
    STUDY = "study"
    PIECE = "piece"
    PASSAGE = "passage"
    SIGHT_READING = "sight_reading"
    ENSEMBLE = "ensemble"
    OTHER = "other"


class Ending(StrEnum):
    """When the playing on a forgotten clock ended, as the player says."""

    AT_LAST_TOUCH = "at_last_touch"
    WHEN_LAST_SEEN = "when_last_seen"
    NOW = "now"
    MINUTES = "minutes"


DEFAULT_CATEGORIES: tuple[str, ...] = (
    "intonation",
    "rhythm",
    "sound",
    "shift",
    "string crossing",
    "memory",
    "expression",
    "other",
)
