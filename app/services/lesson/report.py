"""What a lesson report says, as plain values in the order in which it is said."""

from dataclasses import dataclass
from datetime import date
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from app.services.views import TrendView


@dataclass(frozen=True, slots=True)
class DayPart:
    """One day: its minutes (``None``: not known), takes, rest, and what it went to.

    ``rest`` is ``"planned"``, ``"marked"`` or empty.
    """

    day: date
    minutes: float | None
    takes: int
    rest: str
    items: tuple[tuple[str, float], ...] = ()


@dataclass(frozen=True, slots=True)
class TaskPart:
    """Something that was set, and what was done on it."""

    text: str
    is_done: bool
    sentence: str


@dataclass(frozen=True, slots=True)
class TakePart:
    """One take in a line: its aim and what was measured, already in words with units.

    ``aim`` is the player's own; ``met`` says whether it was reached, where that was answered.
    """

    title: str
    measured: tuple[str, ...]
    aim: str = ""
    met: str = ""

    @property
    def aim_text(self) -> str:
        """The aim, and whether it was met."""
        return f"{self.aim} ({self.met})" if self.met else self.aim


@dataclass(frozen=True, slots=True)
class PassagePart:
    """A passage that was worked on: takes, and what changed over all its takes.

    ``notice`` says how the takes were chosen, where that could look like a change;
    ``followed`` is the mean deviation over the weeks, to be drawn.
    """

    passage_id: str
    title: str
    takes: tuple[TakePart, ...]
    changes: tuple[str, ...]
    notice: str = ""
    followed: "TrendView | None" = None


@dataclass(frozen=True, slots=True)
class MarkerPart:
    """A marker, and the stretch of the recording to hear."""

    take_id: str
    where: str
    what: str
    text: str
    weight: int
    listen_from_s: float
    listen_to_s: float


@dataclass(frozen=True, slots=True)
class LessonReport:
    """What was done from one day to another, both included."""

    first_day: date
    last_day: date
    summary: str
    days: tuple[DayPart, ...]
    items: tuple[tuple[str, float], ...]
    promises: tuple[str, ...]
    tasks: tuple[TaskPart, ...]
    passages: tuple[PassagePart, ...]
    markers: tuple[MarkerPart, ...]
    remarks: tuple[str, ...]
    caution: str = ""
