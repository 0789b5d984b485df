"""Placing, changing and deleting the markers of the take that is shown."""

from PySide6.QtCore import QObject, Signal

from app.journal.records import Marker
from app.ui.desk import Desk


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

    def place(
        self,
        number: int,
        position_s: float,
        *,
        is_playing: bool,
        selection: tuple[float, float] | None,
    ) -> None:
        """Put a marker of the category with this number at the position.

        While it plays, the player's reaction time is taken off; while it stands still, a
        selection becomes the marker's span.
        """
        if not self.take_id or number > len(self.categories):
            return
        start_s, end_s = position_s, None
        if is_playing:
            start_s = max(0.0, start_s - self._desk.preferences.reaction_s)
        elif selection is not None:
            start_s, end_s = selection
        take_id, category = self.take_id, self.categories[number - 1]
        self._desk.jobs.store(
            lambda: self._marking.add(take_id, start_s, end_s, category=category), self._placed
        )

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

    def _placed(self, marker: Marker) -> None:
        self.placed.emit(marker)
        self._desk.markersChanged.emit(marker.take_id)

    def _deleted(self) -> None:
        self._desk.tell("The marker was deleted.", action_id="undo")
        self._desk.markersChanged.emit(self.take_id)
