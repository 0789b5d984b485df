"""Critique markers, with undo."""

import math
import uuid
from dataclasses import replace

from app.journal.failures import PlainFailure
from app.journal.practice_days import Clock
from app.journal.records import Author, Marker, MarkerState, Take
from app.services.history import History, Step
from app.services.rows import Rows
from app.services.views import MarkerRow
from app.services.wording import position_text
from app.store.store import Store


class MarkingService:
    """Places, changes and deletes markers; every step can be undone.

    The history also holds deleted takes (see
    :class:`app.services.filing.FilingService`), so that one key undoes whatever was
    done last.
    """

    def __init__(self, store: Store, clock: Clock, history: History) -> None:
        self._store = store
        self._clock = clock
        self._history = history
        self._rows = Rows(store)

    def for_take(self, take_id: str) -> tuple[Marker, ...]:
        """Give the markers of a take in the order of time."""
        return self._store.markers.for_take(take_id)

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
            author=author,
            state=state,
            created_at=now,
            changed_at=now,
        )
        self._check(marker)
        self._store.markers.add(marker)
        self._history.add(
            Step(
                f"marker at {position_text(marker.start_s)} added",
                undo=lambda: _ignore(self._remove(marker.id)),
                redo=lambda: self._store.markers.add(marker),
            )
        )
        return marker

    def change(self, marker: Marker) -> Marker:
        """Replace a marker by its changed record."""
        self._check(marker)
        with self._store.transaction():
            before = self._get(marker.id)
            after = replace(marker, changed_at=self._clock())
            self._store.markers.replace(after)
        self._history.add(
            Step(
                f"marker at {position_text(after.start_s)} changed",
                undo=lambda: self._store.markers.replace(before),
                redo=lambda: self._store.markers.replace(after),
            )
        )
        return after

    def delete(self, marker_id: str) -> None:
        """Delete a marker; :meth:`undo` brings it back."""
        marker = self._remove(marker_id)
        self._history.add(
            Step(
                f"marker at {position_text(marker.start_s)} deleted",
                undo=lambda: self._store.markers.add(marker),
                redo=lambda: _ignore(self._remove(marker_id)),
            )
        )

    def undo(self) -> str | None:
        """Undo the last step and say which; ``None`` where there is none."""
        return self._history.undo()

    def redo(self) -> str | None:
        """Do the undone step again and say which; ``None`` where there is none."""
        return self._history.redo()

    @property
    def can_undo(self) -> bool:
        """Whether a step can be undone (instant)."""
        return self._history.can_undo

    @property
    def can_redo(self) -> bool:
        """Whether a step can be done again (instant)."""
        return self._history.can_redo

    def open_markers(self, limit: int = 12) -> tuple[MarkerRow, ...]:
        """Give what is still to work on or has returned, weightiest and newest first."""
        return self._rows.of_markers(self._store.markers.list_open(limit))

    def _get(self, marker_id: str) -> Marker:
        marker = self._store.markers.get(marker_id)
        if marker is None:
            raise PlainFailure("That marker is not there any more.", "Look at the list again.")
        return marker

    def _remove(self, marker_id: str) -> Marker:
        marker = self._store.markers.remove(marker_id)
        if marker is None:
            raise PlainFailure("That marker is not there any more.", "Look at the list again.")
        return marker

    def _check(self, marker: Marker) -> None:
        take = self._store.takes.get(marker.take_id)
        if take is None or take.deleted_at is not None:
            raise PlainFailure("That take is not there.", "Choose a take of the journal.")
        problem = _problem(marker, take)
        if problem:
            raise PlainFailure(problem, "Change it and try again.")


def _problem(marker: Marker, take: Take) -> str:
    if not marker.category:
        return "A marker needs a category."
    if marker.weight not in (1, 2, 3):
        return f"The weight of a marker is 1, 2 or 3, not {marker.weight}."
    if not math.isfinite(marker.start_s) or not 0 <= marker.start_s <= take.duration_s:
        length = position_text(take.duration_s)
        return f"The take lasts {length}; the marker does not lie in it."
    if marker.end_s is not None and not marker.start_s <= marker.end_s <= take.duration_s:
        return "The end of a marked span lies after its start and inside the take."
    return ""


def _ignore(_marker: Marker) -> None:
    """Drop what a step returns."""
