"""Critique markers, with undo."""

from app.journal.records import Author, Marker, MarkerState
from app.services.views import MarkerRow


class MarkingService:
    """Places, changes and deletes markers; every step can be undone."""

    def for_take(self, take_id: str) -> tuple[Marker, ...]:
        """Give the markers of a take in the order of time."""
        raise NotImplementedError

    def add(
        self,
        take_id: str,
        start_s: float,
        end_s: float | None = None,
        *,
        category: str,
        weight: int = 2,
        text: str = "",
        author: Author = Author.SELF,
        state: MarkerState = MarkerState.TO_WORK_ON,
    ) -> Marker:
        """Place a marker."""
        raise NotImplementedError

    def change(self, marker: Marker) -> Marker:
        """Replace a marker by its changed record."""
        raise NotImplementedError

    def delete(self, marker_id: str) -> None:
        """Delete a marker."""
        raise NotImplementedError

    def undo(self) -> str | None:
        """Undo the last step and say which; None where there is none."""
        raise NotImplementedError

    def redo(self) -> str | None:
        """Do the undone step again and say which; None where there is none."""
        raise NotImplementedError

    @property
    def can_undo(self) -> bool:
        """Whether a step can be undone (instant)."""
        raise NotImplementedError

    @property
    def can_redo(self) -> bool:
        """Whether a step can be done again (instant)."""
        raise NotImplementedError

    def open_markers(self, limit: int = 12) -> tuple[MarkerRow, ...]:
        """Give what is still to work on, heaviest and newest first."""
        raise NotImplementedError
