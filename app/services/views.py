"""What the services hand to the window and the command line: frozen, ready to show.

Arrays are numpy float arrays already sized for the screen; nothing here needs
further computing. A number is a :class:`Reading` with its unit, or a
:class:`NoReading` with the reason.

Longer than 300 lines because it is one vocabulary of plain values: readers of the
window look up what they are given in a single place.
"""

from dataclasses import dataclass, replace
from datetime import date, datetime
from pathlib import Path
from typing import TYPE_CHECKING, Literal

from app.journal.kinds import AimMet, Origin
from app.journal.no_retake import ChosenAs
from app.journal.records import Marker, Passage, PlayingSettings
from app.journal.scores import BarSpan
from app.services.reading_views import AnyReading, NamedReading

if TYPE_CHECKING:  # the first page shows no arrays, and numpy takes long to load
    import numpy as np
    from numpy.typing import NDArray

    FloatArray = NDArray[np.float64]
else:

    def __getattr__(name: str) -> object:
        """Make the type of arrays for who imports it: they draw with numpy anyway."""
        if name != "FloatArray":
            raise AttributeError(name)
        import numpy as np  # noqa: PLC0415 - see above
        from numpy.typing import NDArray  # noqa: PLC0415

        return NDArray[np.float64]


MeasureState = Literal["waiting", "measured", "stale", "failed"]


@dataclass(frozen=True, slots=True)
class TakeRow:
    """A take in a list.

    ``chosen_as`` tells how it came to be kept, ``None`` where nobody knows;
    ``retake_reason`` what the device did to an earlier attempt of a day without retakes;
    ``parts`` are the bars of its passage that it holds, none: the whole passage.
    """

    id: str
    passage_id: str | None
    passage_name: str
    practice_day: date
    number: int
    recorded_at: datetime
    is_late_entry: bool
    origin: Origin
    duration_s: float
    aim: str
    aim_met: AimMet | None
    state: MeasureState
    notice: str
    intonation: AnyReading
    tempo: AnyReading
    dynamics: AnyReading
    marker_count: int
    file: Path
    chosen_as: ChosenAs | None = None
    retake_reason: str = ""
    parts: tuple[BarSpan, ...] = ()


@dataclass(frozen=True, slots=True)
class MarkerRow:
    """A marker in a list, with what it stands on."""

    marker: Marker
    passage_name: str
    practice_day: date
    take_number: int
    near_note: str


@dataclass(frozen=True, slots=True)
class TodayView:
    """The Practice page in one look; ``calendar_day`` is what a calendar on the wall says."""

    practice_day: date
    calendar_day: date
    minutes: float | None
    days_practised: int
    days_since_first: int
    takes: tuple[TakeRow, ...]
    to_work_on: tuple[MarkerRow, ...]
    passages: tuple[Passage, ...]


@dataclass(frozen=True, slots=True)
class DayBar:
    """One day of the calendar.

    ``is_shared``: a clip or number of the day was given away. ``paused``: the promises
    that pause on it, by name.
    """

    practice_day: date
    minutes: float | None
    take_count: int
    rest: Literal["", "planned", "marked"]
    missed: bool
    late: bool
    is_shared: bool = False
    paused: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class NoteRow:
    """A note of the deviation lane and the notes pane.

    ``certain`` is false where the uncertainty is larger than the deviation could
    tell (drawn hollow). ``kind`` is a word of the trade (note, slide, ...). ``verdict``
    is ``"in_tune"``, ``"depends"``, ``"out"`` or empty, ``remark`` what the other
    plausible targets say, as a sentence; ``left_out`` marks tuning-up and talk;
    ``slip`` is ``"wrong"`` or ``"added"`` where a score says so.
    """

    index: int
    start_s: float
    end_s: float
    name: str
    midi: int | None
    deviation: AnyReading
    certain: bool
    kind: str
    is_open_string: bool
    vibrato: str
    verdict: str = ""
    remark: str = ""
    left_out: bool = False
    slip: str = ""


@dataclass(frozen=True, slots=True)
class Curve:
    """A line against time; gaps are breaks between ``segments`` of (x_s, y) arrays."""

    segments: "tuple[tuple[FloatArray, FloatArray], ...]"
    unit: str
    gap_sentence: str = ""


@dataclass(frozen=True, slots=True)
class PlaceRow:
    """A stretch of a take that has a name: what was left out, a crescendo, rushing.

    ``kind`` is a stable code: ``tuning_up``, ``talk``, ``rushes``, ``drags``,
    ``crescendo`` or ``diminuendo``.
    """

    start_s: float
    end_s: float
    kind: str
    reading: AnyReading


@dataclass(frozen=True, slots=True)
class TakeView:
    """Everything the Listen page draws of one take.

    ``places`` are the stretches that have a name, ``notices`` the sentences about what
    changes how the numbers may be read.
    """

    row: TakeRow
    passage: Passage | None
    settings: PlayingSettings
    duration_s: float
    summary: tuple[NamedReading, ...]
    notes: tuple[NoteRow, ...]
    notes_sentence: str
    pitch_cents: Curve
    tempo_bpm: Curve
    beat_s: "FloatArray"
    loudness_lufs: Curve
    markers: tuple[Marker, ...]
    categories: tuple[str, ...]
    places: tuple[PlaceRow, ...] = ()
    notices: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Waveform:
    """Lowest and highest sample per screen column, -1 to 1; all (columns,)."""

    time_s: "FloatArray"
    low: "FloatArray"
    high: "FloatArray"


@dataclass(frozen=True, slots=True)
class NotePairRow:
    """The same note in two takes.

    ``a_verdict`` and ``b_verdict`` are what the plausible targets say of each
    (``in_tune``, ``depends``, ``out``; empty where not judged), ``a_remark`` and
    ``b_remark`` the readings against them in words.
    """

    name: str
    midi: int
    a_start_s: float
    b_start_s: float
    a_deviation: AnyReading
    b_deviation: AnyReading
    change: AnyReading
    a_verdict: str = ""
    b_verdict: str = ""
    a_remark: str = ""
    b_remark: str = ""


@dataclass(frozen=True, slots=True)
class ChangeRow:
    """One measure of two takes beside each other, with one plain word.

    ``no_interval`` says why a change has no plus-minus; empty where it has one.
    """

    key: str
    label: str
    a: AnyReading
    b: AnyReading
    change: AnyReading
    word: str
    no_interval: str = ""


@dataclass(frozen=True, slots=True)
class LevelMatch:
    """How both takes of a comparison are played at one loudness.

    Gains are at most 0 dB; ``sentence`` states the loudness of both and what is taken
    away.
    """

    a_gain_db: float = 0.0
    b_gain_db: float = 0.0
    sentence: str = ""


@dataclass(frozen=True, slots=True)
class CompareView:
    """Two takes of a passage beside each other; ``sentence`` where they do not match.

    ``how_judged`` says what the words go by, where an interval alone would say otherwise.
    """

    a: TakeView
    b: TakeView
    aligned: bool
    sentence: str
    alignment_a_s: "FloatArray"
    alignment_b_s: "FloatArray"
    notes: tuple[NotePairRow, ...]
    changes: tuple[ChangeRow, ...]
    confounders: tuple[str, ...]
    levels: LevelMatch = LevelMatch()
    how_judged: str = ""


@dataclass(frozen=True, slots=True)
class TrendPoint:
    """One take in the trend of a passage."""

    take_id: str
    practice_day: date
    value: float
    uncertainty: float | None


@dataclass(frozen=True, slots=True)
class WeekPoint:
    """The median of a week's days; ``half_width`` is half of its 95 % interval."""

    monday: date
    median: float
    half_width: float | None
    day_count: int


@dataclass(frozen=True, slots=True)
class TrendView:
    """A passage over the weeks, one measure.

    ``line`` and ``band`` are (day, value) and (day, low, high); empty with a
    ``sentence`` where there are too few takes. ``ordinary_difference`` is how far two
    days differ at most in 95 of 100 cases without any change, ``None`` where unknown.
    ``notice`` says how the takes were chosen, where that could look like a change.
    """

    passage: Passage
    key: str
    label: str
    unit: str
    points: tuple[TrendPoint, ...]
    line: tuple[tuple[date, float], ...]
    band: tuple[tuple[date, float, float], ...]
    verdict: str
    slope: AnyReading
    scatter: AnyReading
    sentence: str
    ordinary_difference: float | None = None
    notice: str = ""
    weeks: tuple[WeekPoint, ...] = ()


@dataclass(frozen=True, slots=True)
class InputRow:
    """A recording input to choose from.

    ``channel`` is the one chosen for it, counted from 1, which may be more than it has
    now; ``None``: as the system gives it.
    """

    key: str
    name: str
    channels: int
    is_default: bool
    channel: int | None = None


@dataclass(frozen=True, slots=True)
class LevelReading:
    """The input level now, dB relative to full scale, and a word for it.

    ``word`` is ``"too quiet"``, ``"good"`` or ``"too loud"``; ``clipped`` once any
    sample since the start reached full scale; ``quiet_dbfs`` is the quietest moment of
    the last minute.
    """

    peak_dbfs: float | None
    hold_dbfs: float | None
    word: str
    clipped: bool
    elapsed_s: float
    dropped_frames: int
    quiet_dbfs: float | None = None


@dataclass(frozen=True, slots=True)
class ImportProposal:
    """A file that could be filed: what is known, what is proposed, what is wrong.

    ``failure`` is one plain sentence where it cannot be imported; ``duplicate_of``
    names the take that already holds the same bytes; ``notice`` is a sentence about a
    file that can be imported all the same. Where the day is in doubt, ``question`` asks
    and ``days`` are the answers; it is filed once :meth:`on_day` has answered.
    ``from_s`` and ``to_s`` are the part that is kept; without ``to_s`` all of it.
    """

    path: Path
    practice_day: date
    recorded_at: datetime
    recorded_at_source: str
    duration_s: float
    passage_id: str | None
    has_video: bool
    duplicate_of: str
    failure: str
    notice: str = ""
    question: str = ""
    days: tuple[date, ...] = ()
    from_s: float = 0.0
    to_s: float | None = None

    @property
    def is_trimmed(self) -> bool:
        """Whether only a part of the file is kept."""
        return self.from_s > 0 or self.to_s is not None

    def on_day(self, practice_day: date) -> "ImportProposal":
        """Give the proposal with its day as the player says."""
        return replace(self, practice_day=practice_day, question="", days=())


@dataclass(frozen=True, slots=True)
class PlaybackState:
    """Where playback stands, from the stream's own clock."""

    position_s: float
    playing: bool
    loop: tuple[float, float] | None
    speed: float
    volume: float


@dataclass(frozen=True, slots=True)
class PendingTake:
    """A recording that stopped and is not filed yet; its sound is safe at ``pcm``.

    ``ended`` says in one sentence what cut it short, empty where the player
    stopped it; ``recovered`` marks one that a crash left behind. ``no_retake``,
    ``retake_reason``, ``input_device`` and ``input_channel`` become those of the take;
    ``input_note`` says on it what is odd about the input; at each of the seconds in
    ``marks_s`` it gets a marker.
    """

    id: str
    pcm: Path
    started_at: datetime
    duration_s: float
    passage_id: str | None
    aim: str
    settings: PlayingSettings
    dropped_frames: int = 0
    clipped_samples: int = 0
    ended: str = ""
    recovered: bool = False
    no_retake: bool = False
    retake_reason: str = ""
    input_device: str = ""
    input_channel: int | None = None
    input_note: str = ""
    marks_s: tuple[float, ...] = ()
