"""One history for markers and deleted takes: applied to the store, safe from any thread."""

import threading

from app.journal.failures import PlainFailure
from app.journal.history import Change, History, Record, Step
from app.journal.records import Marker, Take
from app.journal.suggestions import Dismissal
from app.store.store import Store


class Undoing:
    """Makes changes, remembers them for this run of the program, and takes them back."""

    def __init__(self, store: Store) -> None:
        self._store = store
        self._history = History()
        self._lock = threading.RLock()

    @property
    def can_undo(self) -> bool:
        """Whether there is something to undo (instant)."""
        return self._history.can_undo

    @property
    def can_redo(self) -> bool:
        """Whether there is something to redo (instant)."""
        return self._history.can_redo

    def make(self, words: str, before: Record | None, after: Record | None) -> None:
        """Change one record in the store and remember it."""
        change = Change(words, (Step(before, after),))
        with self._lock:
            self._apply(change)
            self._history.record(change)

    def undo(self) -> str | None:
        """Take the latest change back and give its words; ``None`` where there is none."""
        with self._lock:
            return self._history.undo(self._apply)

    def redo(self) -> str | None:
        """Make the latest undone change again and give its words."""
        with self._lock:
            return self._history.redo(self._apply)

    def _apply(self, change: Change) -> None:
        with self._store.transaction():
            for step in change.steps:
                try:
                    self._apply_step(step)
                except LookupError as problem:
                    raise PlainFailure(
                        "That has changed meanwhile.", "Look at the list again."
                    ) from problem

    def _apply_step(self, step: Step) -> None:
        if step.kind is Take:
            take = step.onto(self._store.takes.get(step.record_id))
            if not isinstance(take, Take):
                raise LookupError(step.record_id)  # a take is never removed from the database
            self._store.takes.replace(take)
            return
        if step.kind is Dismissal:
            self._apply_dismissal(step)
            return
        current = self._store.markers.get(step.record_id)
        wanted = step.onto(current)
        if wanted is None:
            self._store.markers.remove(step.record_id)
        elif isinstance(wanted, Marker):
            keep = self._store.markers.add if current is None else self._store.markers.replace
            keep(wanted)

    def _apply_dismissal(self, step: Step) -> None:
        wanted = step.onto(self._store.dismissals.get(step.record_id))
        if wanted is None:
            self._store.dismissals.remove(step.record_id)
        elif isinstance(wanted, Dismissal):
            self._store.dismissals.add(wanted)
