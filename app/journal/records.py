"""The records of a journal: what is kept, in the words of the trade.

Plain frozen values without behaviour. Ids are random UUIDs as 32 hex digits,
made by whoever creates the record. Instants are timezone-aware; a practice day
is a plain date (see :mod:`app.journal.practice_days`). Positions in a take are
seconds from its first sample.
"""

from dataclasses import dataclass, field
from datetime import date, datetime

from app.journal.clicks import ClickBeats, RoundTripRecord
from app.journal.day_names import DayName
from app.journal.input_channels import InputChannel
from app.journal.kinds import DEFAULT_CATEGORIES, AimMet, Author, MarkerState, MinutesSource, Origin
from app.journal.scores import BarSpan, PassageScore


@dataclass(frozen=True, slots=True)
class PlayingSettings:
    """What the measures need to know about the playing.

    Attributes
    ----------
    instrument : str
        A name the measures know, e.g. ``"viola"``.
    reference_a_hz : float or None
        The A that was tuned to, 380 to 480 Hz; ``None``: estimate it from the take.
    temperament : str
        ``"equal"``, ``"pythagorean"`` or ``"just"``; the last two want a tonic.
    tonic : str or None
        Note name without octave, e.g. ``"Eb"``.
    pulse_bpm : float or None
        The stated beat that anchors the tempo; ``None``: only if the pulse is clear.
    open_strings : tuple of str or None
        Sounding open strings, low to high, where they are not the usual ones
        (scordatura); ``None``: the instrument's usual ones.
    accompanied : bool
        A backing sound or a piano plays too.
    automatic_gain : str
        Whether the input set its level by itself: ``"off"``, ``"on"`` or ``"unknown"``,
        as with a clip of a phone.
    with_mute : bool
        Played with a mute.
    click : ClickBeats or None
        The click that was heard with this take; ``None`` for passages and for takes
        without one.
    harmonics : tuple of str
        Sounding names of the notes that are played as harmonics (``"A5"``), or ``"all"``.
    """

    instrument: str = "violin"
    reference_a_hz: float | None = 440.0
    temperament: str = "equal"
    tonic: str | None = None
    pulse_bpm: float | None = None
    open_strings: tuple[str, ...] | None = None
    accompanied: bool = False
    automatic_gain: str = "off"
    with_mute: bool = False
    click: ClickBeats | None = None
    harmonics: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Passage:
    """A named stretch of a piece that is practised and compared.

    ``no_retake``: one take each practice day, kept whatever it is, from the practice
    day ``no_retake_since`` on (see :mod:`app.journal.no_retake`). ``score``: what its notes
    are read from, where there is one.
    """

    id: str
    piece: str
    name: str
    bars: str
    settings: PlayingSettings
    created_at: datetime
    no_retake: bool = False
    no_retake_since: date | None = None
    score: PassageScore | None = None


@dataclass(frozen=True, slots=True)
class Session:
    """One sitting on one practice day; ``minutes`` is ``None`` until known."""

    id: str
    practice_day: date
    started_at: datetime
    minutes: float | None = None
    minutes_source: MinutesSource | None = None
    note: str = ""


@dataclass(frozen=True, slots=True)
class RestDay:
    """A day without practice that was meant: planned ahead, or marked afterwards."""

    practice_day: date
    planned: bool


@dataclass(frozen=True, slots=True)
class Take:
    """One recording of a session.

    Attributes
    ----------
    number : int
        1, 2, ... within its passage and practice day.
    recorded_at, entered_at : datetime
        When it was played, and when the journal learned of it (later for a late
        entry).
    file : str
        Path of the finished recording relative to the journal, ``/`` separated.
    sha256 : str
        Of that file's bytes.
    dropped_frames, clipped_samples : int
        Counted while recording; ``ended`` says in one sentence what cut a
        recording short, empty where the player stopped it.
    no_retake : bool
        Made under no-retake; ``retake_reason`` says what spoilt an earlier attempt
        of the day, empty for a first one.
    input_device, input_channel : str, int or None
        What it was recorded through, empty where nobody knows; which of its channels,
        counted from 1, ``None``: as the system gave it.
    peak_dbfs, quiet_dbfs : float or None
        Highest sample, and the level of the quietest moment: what the room and the
        input's own noise leave, which moves with the input's setting. ``None`` where
        it was never quiet.
    parts : tuple of BarSpan
        The bars of the passage's score that it holds; empty: the whole passage.
    """

    id: str
    session_id: str
    passage_id: str | None
    practice_day: date
    number: int
    recorded_at: datetime
    entered_at: datetime
    origin: Origin
    file: str
    sha256: str
    duration_s: float
    sample_rate_hz: int
    channels: int
    settings: PlayingSettings
    original_name: str = ""
    recorded_at_source: str = ""
    aim: str = ""
    aim_met: AimMet | None = None
    dropped_frames: int = 0
    clipped_samples: int = 0
    ended: str = ""
    deleted_at: datetime | None = None
    no_retake: bool = False
    retake_reason: str = ""
    input_device: str = ""
    peak_dbfs: float | None = None
    quiet_dbfs: float | None = None
    parts: tuple[BarSpan, ...] = ()
    input_channel: int | None = None


@dataclass(frozen=True, slots=True)
class Marker:
    """A time-stamped critique note on a take.

    ``end_s`` is ``None`` for a moment; ``weight`` is 1 (slight) to 3 (first thing to fix).
    """

    id: str
    take_id: str
    start_s: float
    end_s: float | None
    category: str
    weight: int
    text: str
    author: Author
    state: MarkerState
    created_at: datetime
    changed_at: datetime


@dataclass(frozen=True, slots=True)
class StoredMeasurement:
    """What was measured on a take, as kept.

    ``summary`` is JSON-compatible (the machine-readable object without curves),
    ``curves`` an opaque compressed block of arrays; ``algorithm`` tells a stale one,
    and so does ``stale`` where the take's settings changed since.
    ``failure`` holds the sentence where measuring itself failed.
    """

    take_id: str
    algorithm: str
    measured_at: datetime
    summary: dict[str, object] = field(default_factory=dict)
    curves: bytes = b""
    failure: str = ""
    stale: bool = False


@dataclass(frozen=True, slots=True)
class MeasurementHeadline:
    """A stored measurement in short: ``summary`` without its lists of notes and beats.

    Small enough to be read for every take of a journal at once.
    """

    take_id: str
    algorithm: str
    measured_at: datetime
    summary: dict[str, object] = field(default_factory=dict)
    failure: str = ""
    stale: bool = False


@dataclass(frozen=True, slots=True)
class JournalSettings:
    """What the player chose for this journal.

    ``break_after_min``: minutes of playing after which a break is suggested, 0 for
    never. ``watched_folder``: where a phone's clips arrive, ``watched_since`` that instant.
    ``reminder_minute``: the minute of the day to remind from, ``reminded_on`` the last day
    reminded of. ``round_trips``: delays measured, one for each pair of output and input.
    ``ear_first_since``: since when measurements wait for the player's own markers.
    ``buffer_ms``: how much sound is held ready. ``day_names``: what days of a few minutes
    are called. ``input_channels``: the channels chosen. ``None``: never, or no longer.
    """

    day_turn_hour: int = 4
    categories: tuple[str, ...] = DEFAULT_CATEGORIES
    input_device: str | None = None
    output_device: str | None = None
    default_settings: PlayingSettings = field(default_factory=PlayingSettings)
    break_after_min: int = 30
    watched_folder: str | None = None
    watched_since: datetime | None = None
    reminder_minute: int | None = None
    reminded_on: date | None = None
    round_trips: tuple[RoundTripRecord, ...] = ()
    ear_first_since: datetime | None = None
    buffer_ms: int = 40
    day_names: tuple[DayName, ...] = ()
    input_channels: tuple[InputChannel, ...] = ()
