"""Plain values that stand beside the main results of a take; see :mod:`analysis.results`.

They are listed apart so that one file does not hold every type; ``results`` gives all
of them under its own name.
"""

from dataclasses import dataclass
from enum import StrEnum
from typing import Literal


class TargetKind(StrEnum):
    """What a pitch is held against; stable codes.

    ``OPEN_STRING`` is a string of the same name as it is tuned in this take,
    ``OPEN_STRING_PURE`` one that was not heard alone, where pure tuning puts it.
    """

    EQUAL = "equal"
    PYTHAGOREAN = "pythagorean"
    JUST = "just"
    OPEN_STRING = "open_string"
    OPEN_STRING_PURE = "open_string_pure"


@dataclass(frozen=True, slots=True)
class TargetReading:
    """A note against one plausible target: signed cents and half of their 95 % interval.

    ``string`` names the open string (``'D4'``), empty for a temperament. A string an
    octave or more away is moved to the note's octave.
    """

    target: TargetKind
    deviation_cents: float
    uncertainty_cents: float
    string: str = ""


class Verdict(StrEnum):
    """What can be said of a note once every plausible target was looked at.

    ``IN_TUNE``: no farther from the target in use than is heard or than is known.
    ``DEPENDS``: off the target in use, but not outside all plausible ones.
    ``OUT``: outside all of them, by more than its uncertainty.
    """

    IN_TUNE = "in_tune"
    DEPENDS = "depends"
    OUT = "out"


@dataclass(frozen=True, slots=True)
class TwoStrings:
    """A double stop: the interval between the strings, and the pitch of the upper one.

    ``interval`` names it (``'major sixth'``); ``readings`` hold its size against the just,
    the Pythagorean and the equal one. The pitch of the lower string is the note's own.
    Uncertainties are half of the 95 % intervals.
    """

    interval: str
    semitones: int
    interval_cents: float
    uncertainty_cents: float
    readings: tuple[TargetReading, ...]
    verdict: Verdict
    upper_midi: int
    upper_name: str
    upper_deviation_cents: float
    upper_uncertainty_cents: float


@dataclass(frozen=True, slots=True)
class StringPitch:
    """An open string as it is tuned in a take: mean over the notes played on it alone.

    ``deviation_cents`` is against pure tuning from the A in use, ``uncertainty_cents``
    half of its 95 % interval.
    """

    midi: int
    name: str
    pitch_hz: float
    deviation_cents: float
    uncertainty_cents: float
    count: int


@dataclass(frozen=True, slots=True)
class ReferenceDrift:
    """How the pitch level moves through a take; positive: the player goes sharp."""

    cents_per_min: float
    uncertainty_cents_per_min: float


@dataclass(frozen=True, slots=True)
class AverageUncertainty:
    """Half 95 % intervals of the averages of :class:`Intonation`, in their own units.

    They cover the uncertainty of the notes' pitches and of an estimated A and, where
    not every note was measured, what the missing ones leave open if they were played
    like the others (the finite-population interval of a sample).
    """

    mean_absolute_cents: float
    precision_cents: float
    within_10_cents: float
    within_25_cents: float


class LeftOutReason(StrEnum):
    """Why a stretch of a take does not enter the measures; stable codes."""

    TUNING_UP = "tuning_up"
    TALK = "talk"


@dataclass(frozen=True, slots=True)
class LeftOut:
    """A stretch of a take that is shown but enters no measure."""

    start_s: float
    end_s: float
    reason: LeftOutReason


@dataclass(frozen=True, slots=True)
class TempoPlace:
    """A stretch of at least two beats that is faster or slower than the take's mean."""

    start_s: float
    end_s: float
    change_percent: float
    kind: Literal["rushes", "drags"]


@dataclass(frozen=True, slots=True)
class Evenness:
    """How evenly running notes follow each other.

    ``spread_ms`` and ``spread_percent`` are the standard deviation of the intervals
    inside runs, any steady change of tempo taken out; ``floor_ms`` is the part of it
    that the onset detector alone could make.
    """

    spread_ms: float
    spread_percent: float
    floor_ms: float
    run_count: int
    interval_count: int


@dataclass(frozen=True, slots=True)
class Swell:
    """A stretch in which the loudness rises or falls; ``change_db`` is signed."""

    start_s: float
    end_s: float
    change_db: float
    kind: Literal["crescendo", "diminuendo"]


class NoticeCode(StrEnum):
    """What about a recording changes how its numbers may be read; stable codes."""

    DUAL_MONO = "dual_mono"
    AUTOMATIC_GAIN = "automatic_gain"
    AUTOMATIC_GAIN_UNKNOWN = "automatic_gain_unknown"
    INPUT_MUTED = "input_muted"
    PLAYED_WITH_MUTE = "played_with_mute"


@dataclass(frozen=True, slots=True)
class Notice:
    """One such thing, with the sentence that says it."""

    code: NoticeCode
    sentence: str
