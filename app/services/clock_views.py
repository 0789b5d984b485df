"""What the clock, the items and the minutes hand to the window and the command line."""

from dataclasses import dataclass
from datetime import datetime
from typing import Literal

from app.journal.forgotten_clock import Forgotten
from app.journal.kinds import Ending, ItemKind

ClockPhase = Literal["stopped", "running", "paused", "forgotten"]

KIND_WORDS = {
    ItemKind.SCALE: "scale",
    ItemKind.STUDY: "study",
    ItemKind.PIECE: "piece",
    ItemKind.PASSAGE: "passage",
    ItemKind.SIGHT_READING: "sight-reading",
    ItemKind.ENSEMBLE: "ensemble",
    ItemKind.OTHER: "other",
}
"""The kinds of items as the player reads them."""


@dataclass(frozen=True, slots=True)
class ItemRow:
    """Something to practise, to choose from.

    ``id`` is empty for a passage that has not been an item yet; choosing it goes
    through :meth:`app.services.items.ItemService.for_passage`.
    """

    id: str
    title: str
    kind: ItemKind
    passage_id: str | None
    last_used_at: datetime | None


@dataclass(frozen=True, slots=True)
class ItemMinutes:
    """The minutes of one item; ``item_id`` is ``None`` for time without an item."""

    item_id: str | None
    title: str
    kind: ItemKind | None
    minutes: float


@dataclass(frozen=True, slots=True)
class ClockView:
    """The practice clock in one look.

    Attributes
    ----------
    phase : str
        ``"forgotten"`` while a question waits for its answer: nothing is counted then.
    item_id, item_title
        What is being practised.
    block_s : float
        Seconds since this item began, 0 unless the clock runs.
    session_min, today_min : float
        Minutes of this sitting and of the practice day, the open block included.
    items : tuple of ItemMinutes
        Of the practice day, the open block included.
    unbroken_min : float
        Minutes played without a break of three minutes.
    break_sentence : str
        The suggestion of a break with its caution; empty while none is due.
    """

    phase: ClockPhase
    item_id: str | None
    item_title: str
    block_s: float
    session_min: float
    today_min: float
    items: tuple[ItemMinutes, ...]
    unbroken_min: float
    break_sentence: str


@dataclass(frozen=True, slots=True)
class ForgottenChoice:
    """One answer to a forgotten clock, in words, and the minutes the block gets by it."""

    ending: Ending
    words: str
    minutes: float


@dataclass(frozen=True, slots=True)
class ForgottenView:
    """The question a forgotten clock raises.

    ``most_minutes`` bounds what the player may type instead of a choice.
    """

    reason: Forgotten
    sentence: str
    item_title: str
    started_at: datetime
    choices: tuple[ForgottenChoice, ...]
    most_minutes: float


@dataclass(frozen=True, slots=True)
class EffortView:
    """Recording held against practising, over some days.

    Attributes
    ----------
    attempts, kept : int
        Recordings that were begun, and those of them that are kept.
    recording_min, practised_min : float
        Minutes that were recorded, kept or not, and all minutes of these days;
        ``practised_min`` is ``None`` where nobody knows them.
    sentence : str
        The same in words.
    """

    attempts: int
    kept: int
    recording_min: float
    practised_min: float | None
    sentence: str
