"""What suggestions and the first listen look like to the window and the command line."""

from dataclasses import dataclass
from datetime import datetime

from app.journal.records import Marker
from app.services.reading_views import Reading


@dataclass(frozen=True, slots=True)
class SuggestionRow:
    """A marker that a measurement proposes.

    Attributes
    ----------
    key : str
        Tells it from the others of its take.
    kind : str
        ``"flat"``, ``"sharp"``, ``"rushes"`` or ``"drags"``.
    category : str
        One of the journal's categories.
    start_s, end_s : float
        Where its marker would stand.
    text : str
        What was measured, as the marker would say it.
    reading : Reading
        The number behind it.
    evidence : tuple of str
        A sentence for every place and what the number rests on.
    places : tuple of (start_s, end_s)
    """

    key: str
    kind: str
    category: str
    start_s: float
    end_s: float
    text: str
    reading: Reading
    evidence: tuple[str, ...]
    places: tuple[tuple[float, float], ...]


@dataclass(frozen=True, slots=True)
class SuggestionsView:
    """The suggestions of a take, the clearest first.

    ``more_count``: how many are there beyond those offered. ``dismissed_count``: how many
    were put aside for the passage. ``sentence`` says why there are none.
    """

    take_id: str
    rows: tuple[SuggestionRow, ...]
    more_count: int = 0
    dismissed_count: int = 0
    sentence: str = ""


@dataclass(frozen=True, slots=True)
class AgreementRow:
    """One line of the comparison of ear and measurement.

    ``kind`` is ``"hit"``, ``"missed"`` or ``"heard_only"``.
    """

    kind: str
    start_s: float
    end_s: float
    measured: str
    heard: str


@dataclass(frozen=True, slots=True)
class AgreementView:
    """Where ear and measurement agree on a take; ``sentence`` sums it up."""

    rows: tuple[AgreementRow, ...]
    hits: int
    missed: int
    heard_only: int
    sentence: str


@dataclass(frozen=True, slots=True)
class FirstListenView:
    """Whether the measurements of a take may be seen.

    ``is_on``: the journal asks for the ear first. ``is_hidden``: this take's measurements
    wait for it. ``own_markers``: how many the player has placed. ``shown_at``: when they
    were shown, ``None`` where this take was never heard without them.
    """

    is_on: bool
    is_hidden: bool
    own_markers: tuple[Marker, ...]
    shown_at: datetime | None
    agreement: AgreementView | None = None
