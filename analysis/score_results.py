"""What a take says of its score: who played which written note, and what slipped.

Listed apart so that one file does not hold every type; :mod:`analysis.results` gives all
of them under its own name.
"""

from dataclasses import dataclass
from enum import StrEnum


class SlipKind(StrEnum):
    """What differs from the score; stable codes."""

    WRONG = "wrong"
    MISSING = "missing"
    ADDED = "added"


class StretchKind(StrEnum):
    """A run of notes that score and take do not share; stable codes.

    ``NOT_PLAYED``: written before the take begins, after it ends, or passed over.
    ``NOT_WRITTEN``: played where nothing is written: a false start, a repeated bar,
    something else.
    """

    NOT_PLAYED = "not_played"
    NOT_WRITTEN = "not_written"


@dataclass(frozen=True, slots=True)
class WrittenPlace:
    """A written note, by its number in the score: name as spelled, bar and beat.

    ``onset_beats`` in quarter notes from the beginning of the score.
    """

    index: int
    name: str
    midi: int
    bar: int
    beat: float
    onset_beats: float


@dataclass(frozen=True, slots=True)
class ScorePair:
    """A note of the take that plays a written note.

    ``offset_ms`` is how late (positive) it comes against its neighbours' tempo,
    ``offset_percent`` the same in per cent of a beat; ``None`` where too few notes around
    it tell.
    """

    note_index: int
    written: WrittenPlace
    offset_ms: float | None = None
    offset_percent: float | None = None


@dataclass(frozen=True, slots=True)
class Slip:
    """A wrong, missing or added note.

    ``start_s`` is where it is in the take; for a missing note where it would have been.
    ``written`` is ``None`` for an added note, ``note_index`` for a missing one;
    ``played`` names what sounded instead, empty for a missing note.
    """

    kind: SlipKind
    start_s: float
    end_s: float
    note_index: int | None
    written: WrittenPlace | None
    played: str = ""


@dataclass(frozen=True, slots=True)
class ScoreStretch:
    """A longer stretch that score and take do not share, left out of the slips."""

    kind: StretchKind
    start_s: float
    end_s: float
    count: int
    first: WrittenPlace | None = None
    last: WrittenPlace | None = None


@dataclass(frozen=True, slots=True)
class ScoreRhythm:
    """How the notes lie against the written rhythm at the tempo around them.

    Root mean square of the offsets in ms and in per cent of a beat, their mean (positive
    is late), and what placing the notes' beginnings alone makes (``floor_ms``).
    """

    spread_ms: float
    spread_percent: float
    floor_ms: float
    note_count: int


@dataclass(frozen=True, slots=True)
class PlaceHabit:
    """How the notes of one printed string or finger came out: signed cents.

    ``uncertainty_cents`` is half of the 95 % interval of the mean.
    """

    number: int
    count: int
    mean_cents: float
    spread_cents: float
    uncertainty_cents: float


@dataclass(frozen=True, slots=True)
class ScoreReading:
    """A take held against its score.

    ``written_count`` are the notes of the score (grace notes are kept out),
    ``matched_count`` those that were played at their pitch, ``unclear_count`` written or
    played notes that could be a slip or a limit of the measuring (a repeated note that
    did not stand apart). Habits are by what the score prints; string 1 is the highest.
    """

    written_count: int
    matched_count: int
    unclear_count: int
    pairs: tuple[ScorePair, ...]
    slips: tuple[Slip, ...]
    stretches: tuple[ScoreStretch, ...]
    rhythm: ScoreRhythm | None
    string_habits: tuple[PlaceHabit, ...] = ()
    finger_habits: tuple[PlaceHabit, ...] = ()
    score_name: str = ""
