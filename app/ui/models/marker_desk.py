"""Placing, changing and deleting the markers of the take that is shown."""

from dataclasses import dataclass
from typing import Protocol

from PySide6.QtCore import QObject, Signal

from app.journal.records import Marker
from app.ui.desk import Desk
from app.ui.language import tr


class Sounding(Protocol):
    """What plays, as far as markers go."""

    position_s: float
    is_playing: bool

    @property
    def selection(self) -> tuple[float, float] | None:
        """The selected span, seconds."""

    @property
    def is_looping(self) -> bool:
        """True while the selection repeats."""


@dataclass(frozen=True, slots=True)
class Heard:
    """What a key has marked: in which take, as what, where."""

    take_id: str
    category: str
    start_s: float
    end_s: float | None = None


class MarkerDesk(QObject):
    """Knows which take is shown and keeps its markers in the journal.

    Signals
    -------
    read(tuple of Marker)
        The take's markers, in the order of time.
    placed(Marker)
        A marker was put where the player pressed the key.
    """

    read = Signal(object)
    placed = Signal(object)

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self._desk = desk
        self._marking = desk.workbench.marking
        self.take_id = ""
        self.categories: tuple[str, ...] = ()

    def heard(self, number: int, sounding: Sounding) -> Heard | None:
        """Say what the key of a category marks at this moment; None without such a category.

        While it plays, the player's reaction time is taken off; while it stands still, a
        selection becomes the marker's span.
        """
        if not self.take_id or not 1 <= number <= len(self.categories):
            return None
        start_s, end_s = sounding.position_s, None
        if sounding.is_playing:
            start_s = self._without_reaction(start_s)
        elif sounding.selection is not None:
            start_s, end_s = sounding.selection
        return Heard(self.take_id, self.categories[number - 1], start_s, end_s)

    def place(self, heard: Heard) -> None:
        """Keep a marker."""
        self._desk.jobs.store(
            lambda: self._marking.add(
                heard.take_id, heard.start_s, heard.end_s, category=heard.category
            ),
            self._placed,
        )

    def place_until(self, heard: Heard, position_s: float, sounding: Sounding) -> None:
        """Keep a marker with a span, from where its key was pressed to where it was released.

        In a loop that began anew meanwhile, the span ends with the loop.
        """
        end_s = self._without_reaction(position_s)
        if end_s <= heard.start_s and sounding.is_looping and sounding.selection is not None:
            end_s = sounding.selection[1]
        span_end_s = end_s if end_s > heard.start_s else None
        self.place(Heard(heard.take_id, heard.category, heard.start_s, span_end_s))

    def change(self, marker: Marker) -> None:
        """Keep a changed marker."""
        self._desk.jobs.store(
            lambda: self._marking.change(marker),
            lambda kept: self._desk.markersChanged.emit(kept.take_id),
        )

    def delete(self, marker_id: str) -> None:
        """Delete a marker; undo brings it back."""
        self._desk.jobs.store(lambda: self._marking.delete(marker_id), lambda _: self._deleted())

    def reread(self) -> None:
        """Read the markers again."""
        take_id = self.take_id
        if take_id:
            self._desk.jobs.store(
                lambda: self._marking.for_take(take_id), self.read.emit, subject="listen.markers"
            )

    def _without_reaction(self, position_s: float) -> float:
        """Take off what passes between hearing and pressing, in time of the take.

        Reacting takes as long as ever when the take is slowed, and less of the take has
        gone by in that time.
        """
        speed = self._desk.workbench.playing.state().speed
        return max(0.0, position_s - speed * self._desk.preferences.reaction_s)

    def _placed(self, marker: Marker) -> None:
        self.placed.emit(marker)
        self._desk.markersChanged.emit(marker.take_id)

    def _deleted(self) -> None:
        self._desk.tell(tr("The marker was deleted."), action_id="undo")
        self._desk.markersChanged.emit(self.take_id)
