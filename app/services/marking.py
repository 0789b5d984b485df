"""Critique markers, with undo."""

import uuid

from app.journal.kinds import Author, MarkerState
from app.journal.markers import changed, checked
from app.journal.practice_days import Clock
from app.journal.records import Marker
from app.services.records_there import marker_there, take_there
from app.services.rows import Rows
from app.services.undoing import Undoing
from app.services.views import MarkerRow
from app.services.wording import position_text
from app.store.store import Store


class MarkingService:
    """Places, changes and deletes markers; every step can be undone.

    The history also holds deleted takes (see
    :class:`app.services.filing.FilingService`), so that one key undoes whatever was
    done last.
    """

    def __init__(
        self, store: Store, clock: Clock, undoing: Undoing, author: Author = Author.SELF
    ) -> None:
        self.author = author
        """Who writes here, where nothing else is said."""
        self._store = store
        self._clock = clock
        self._undoing = undoing
        self._rows = Rows(store)

    def for_take(self, take_id: str) -> tuple[Marker, ...]:
        """Give the markers of a take in the order of time."""
        return self._store.markers.for_take(take_id)

    def categories_in_use(self) -> tuple[str, ...]:
        """Give the categories that markers carry, the most used first."""
        return self._store.markers.categories()

    def add(
        self,
        take_id: str,
        start_s: float,
        end_s: float | None = None,
        *,
        category: str,
        weight: int = 2,
        text: str = "",
        author: Author | None = None,
        state: MarkerState = MarkerState.TO_WORK_ON,
    ) -> Marker:
        """Place a marker.

        Parameters
        ----------
        take_id : str
        start_s, end_s : float
            Inside the take; without an end it marks a moment.
        category : str
            Any word; the journal's settings hold the usual ones.
        weight : int
            1 (slight) to 3 (first thing to fix).

        Raises
        ------
        PlainFailure
            Where the marker makes no sense or there is no such take.
        """
        now = self._clock()
        marker = Marker(
            id=uuid.uuid4().hex,
            take_id=take_id,
            start_s=float(start_s),
            end_s=None if end_s is None else float(end_s),
            category=category.strip(),
            weight=weight,
            text=text.strip(),
            author=author or self.author,
            state=state,
            created_at=now,
            changed_at=now,
        )
        kept = checked(marker, take_there(self._store, take_id).duration_s)
        self._undoing.make(f"marker at {position_text(kept.start_s)} added", None, kept)
        return kept

    def change(self, marker: Marker) -> Marker:
        """Replace a marker by its changed record."""
        before = marker_there(self._store, marker.id)
        duration_s = take_there(self._store, before.take_id).duration_s
        after = changed(before, marker, duration_s, self._clock())
        self._undoing.make(f"marker at {position_text(after.start_s)} changed", before, after)
        return after

    def delete(self, marker_id: str) -> None:
        """Delete a marker; :meth:`undo` brings it back."""
        marker = marker_there(self._store, marker_id)
        self._undoing.make(f"marker at {position_text(marker.start_s)} deleted", marker, None)

    def undo(self) -> str | None:
        """Undo the last step and say which; ``None`` where there is none."""
        return self._undoing.undo()

    def redo(self) -> str | None:
        """Do the undone step again and say which; ``None`` where there is none."""
        return self._undoing.redo()

    @property
    def can_undo(self) -> bool:
        """Whether a step can be undone (instant)."""
        return self._undoing.can_undo

    @property
    def can_redo(self) -> bool:
        """Whether a step can be done again (instant)."""
        return self._undoing.can_redo

    def open_markers(self, limit: int = 12) -> tuple[MarkerRow, ...]:
        """Give what is still to work on or has returned, weightiest and newest first."""
        return self._rows.of_markers(self._store.markers.list_open(limit))
