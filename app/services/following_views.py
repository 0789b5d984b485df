"""What following a passage shows: frozen values for the window and the command line."""

from dataclasses import dataclass
from datetime import date
from typing import TYPE_CHECKING, Literal

from app.journal.blind_ear import BlindTrial, EarAgainstMeasure, Question
from app.journal.bounds import PassageBounds
from app.journal.records import Marker, Passage
from app.journal.still_there import ProblemLife
from app.journal.tempo_ladder import Ladder
from app.services.reading_views import AnyReading
from app.services.views import TakeRow

if TYPE_CHECKING:
    from app.services.views import FloatArray

OnlyKind = Literal["before", "after", "repeated", "stopped", "only_here"]
StillWord = Literal["still there", "gone", "not clear", "not measurable"]


@dataclass(frozen=True, slots=True)
class OnlyPart:
    """A stretch that only one of two takes plays."""

    start_s: float
    end_s: float
    kind: OnlyKind
    sentence: str


@dataclass(frozen=True, slots=True)
class AlignedPair:
    """Equal musical moments of two takes; ``sentence`` where they do not match.

    ``a_s`` and ``b_s`` are empty then, ``reason`` is the measuring code's word for it,
    and moments are mapped onto themselves.
    """

    take_a: str
    take_b: str
    aligned: bool
    sentence: str
    a_s: "FloatArray"
    b_s: "FloatArray"
    confidence: float
    only_a: tuple[OnlyPart, ...] = ()
    only_b: tuple[OnlyPart, ...] = ()
    reason: str = ""

    def to_b(self, at_s: float) -> float:
        """Map a moment of take a into take b (instant)."""
        return _mapped(self.a_s, self.b_s, at_s)

    def to_a(self, at_s: float) -> float:
        """Map a moment of take b into take a (instant)."""
        return _mapped(self.b_s, self.a_s, at_s)

    def swapped(self) -> "AlignedPair":
        """Give the same pair the other way round."""
        return AlignedPair(
            self.take_b,
            self.take_a,
            self.aligned,
            self.sentence,
            self.b_s,
            self.a_s,
            self.confidence,
            self.only_b,
            self.only_a,
            self.reason,
        )


def _mapped(source: "FloatArray", target: "FloatArray", at_s: float) -> float:
    import numpy as np  # noqa: PLC0415 - the first page needs none

    if not source.size:
        return at_s
    outside = min(at_s - float(source[0]), 0.0) + max(at_s - float(source[-1]), 0.0)
    return float(np.interp(at_s, source, target)) + outside


@dataclass(frozen=True, slots=True)
class StillMeasured:
    """What the measurements say of a marked problem in a later take."""

    word: StillWord
    then: AnyReading
    now: AnyReading
    sentence: str


@dataclass(frozen=True, slots=True)
class CarriedMarker:
    """A marker of an earlier take at its place in a later one.

    ``answer`` is what was answered by ear for this take, ``None`` where it was not
    asked yet.
    """

    marker: Marker
    from_day: date
    start_s: float
    end_s: float | None
    confidence: float
    measured: StillMeasured
    answer: bool | None


@dataclass(frozen=True, slots=True)
class LifeRow:
    """A marked problem from first to last."""

    marker: Marker
    life: ProblemLife
    sentence: str


@dataclass(frozen=True, slots=True)
class VerdictRow:
    """One change of a passage, a bar or a note between two stretches of days."""

    scope: Literal["passage", "bar", "note"]
    place: str
    at_s: float | None
    midi: int | None
    key: str
    label: str
    period: Literal["week", "first_and_latest"]
    a_from: date
    a_to: date
    b_from: date
    b_to: date
    a: AnyReading
    b: AnyReading
    change: AnyReading
    scatter: AnyReading
    days_a: int
    days_b: int
    word: str
    is_clear: bool


@dataclass(frozen=True, slots=True)
class ChangeReport:
    """All changes of a passage, and what was left out of them and why."""

    passage: Passage
    rows: tuple[VerdictRow, ...]
    left_out: tuple[str, ...]
    notices: tuple[str, ...]
    sentence: str


@dataclass(frozen=True, slots=True)
class LadderView:
    """A passage's way up to its target tempo."""

    passage: Passage
    bounds: PassageBounds
    ladder: Ladder
    sentence: str


@dataclass(frozen=True, slots=True)
class RunRow:
    """One run through a passage in a longer recording.

    ``holds`` says whether it stayed inside the player's bounds, ``None`` where that was
    not measured.
    """

    number: int
    start_s: float
    end_s: float
    complete: bool
    bpm: AnyReading
    mean_absolute_cents: AnyReading
    steadiness: AnyReading
    holds: bool | None


@dataclass(frozen=True, slots=True)
class RepetitionsView:
    """Every run through a passage in a take.

    ``longest_in_a_row`` counts whole runs that stayed inside the bounds one after the
    other, ``in_a_row_now`` those at the end.
    """

    take: TakeRow
    passage: Passage
    runs: tuple[RunRow, ...]
    complete: int
    longest_in_a_row: int
    in_a_row_now: int
    sentence: str


@dataclass(frozen=True, slots=True)
class HairpinRow:
    """An intended swelling or fading, and what was played of it in each take, dB."""

    start_s: float
    end_s: float
    kind: Literal["crescendo", "diminuendo"]
    a: AnyReading
    b: AnyReading


@dataclass(frozen=True, slots=True)
class ShapeView:
    """Loudness of two takes on the time of the first one.

    ``b_db`` is moved by ``offset_db`` so that both have the same middle.
    """

    take_a: str
    take_b: str
    time_s: "FloatArray"
    a_db: "FloatArray"
    b_db: "FloatArray"
    offset_db: float
    likeness: AnyReading
    hairpins: tuple[HairpinRow, ...]
    notices: tuple[str, ...]
    sentence: str


@dataclass(frozen=True, slots=True)
class RankedPassage:
    """A passage with the confidence that a take is it."""

    passage: Passage
    confidence: float


@dataclass(frozen=True, slots=True)
class PassageProposal:
    """Which passage a take is; ``passage_id`` is ``None`` for none of them."""

    passage_id: str | None
    confidence: float
    sentence: str
    ranked: tuple[RankedPassage, ...] = ()


@dataclass(frozen=True, slots=True)
class BlindView:
    """A blind question; whoever shows it tells no dates and no names of the takes."""

    trial: BlindTrial
    question: str
    first_take_id: str
    second_take_id: str


@dataclass(frozen=True, slots=True)
class EarRow:
    """What the answers to one question say, in a sentence."""

    question: Question
    result: EarAgainstMeasure
    sentence: str
