"""One history for what the player changes: applied to the store, safe from any thread.

What can be changed is loaded with the first change: a window that opens needs none of it.
"""

import threading
from collections.abc import Callable
from datetime import date
from functools import cached_property
from typing import TYPE_CHECKING, Any

from app.journal.failures import PlainFailure
from app.store.store import Store

if TYPE_CHECKING:
    from app.journal.assignments import Assignment, Occasion
    from app.journal.history import Change, History, Record, Step
    from app.journal.plans import PracticePlan
    from app.journal.promises import Promise
    from app.journal.records import Marker, Take
    from app.journal.suggestions import Dismissal

Keep = Callable[[Any, Any], None]
"""Takes a record as it is and as it is to be, ``None`` for one that is not there."""


class Undoing:
    """Makes changes, remembers them for this run of the program, and takes them back."""

    def __init__(self, store: Store) -> None:
        self._store = store
        self._history: History | None = None
        self._lock = threading.RLock()

    @cached_property
    def _kinds(self) -> dict[type, tuple[Callable[[str], Any], Keep]]:
        from app.journal.assignments import Assignment, Occasion  # noqa: PLC0415
        from app.journal.plans import PracticePlan  # noqa: PLC0415
        from app.journal.promises import Promise  # noqa: PLC0415
        from app.journal.records import Marker, Take  # noqa: PLC0415
        from app.journal.suggestions import Dismissal  # noqa: PLC0415

        store = self._store
        return {
            Take: (store.takes.get, self._keep_take),
            Marker: (store.markers.get, self._keep_marker),
            Dismissal: (store.dismissals.get, self._keep_dismissal),
            Promise: (store.promises.get, self._keep_promise),
            Assignment: (store.assignments.get, self._keep_assignment),
            Occasion: (self._occasion, self._keep_occasion),
            PracticePlan: (self._plan, self._keep_plan),
        }

    @property
    def can_undo(self) -> bool:
        """Whether there is something to undo (instant)."""
        return self._history is not None and self._history.can_undo

    @property
    def can_redo(self) -> bool:
        """Whether there is something to redo (instant)."""
        return self._history is not None and self._history.can_redo

    def make(self, words: str, before: "Record | None", after: "Record | None") -> None:
        """Change one record in the store and remember it."""
        from app.journal.history import Change, History, Step  # noqa: PLC0415

        change = Change(words, (Step(before, after),))
        with self._lock:
            self._apply(change)
            if self._history is None:
                self._history = History()
            self._history.record(change)

    def undo(self) -> str | None:
        """Take the latest change back and give its words; ``None`` where there is none."""
        with self._lock:
            return self._history.undo(self._apply) if self._history else None

    def redo(self) -> str | None:
        """Make the latest undone change again and give its words."""
        with self._lock:
            return self._history.redo(self._apply) if self._history else None

    def _apply(self, change: "Change") -> None:
        with self._store.transaction():
            for step in change.steps:
                try:
                    self._apply_step(step)
                except LookupError as problem:
                    raise PlainFailure(
                        "That has changed meanwhile.", "Look at the list again."
                    ) from problem

    def _apply_step(self, step: "Step") -> None:
        get, keep = self._kinds[step.kind]
        current = get(step.record_id)
        keep(current, step.onto(current))

    def _keep_take(self, _current: "Take | None", wanted: "Take | None") -> None:
        if wanted is None:
            msg = "a take is never removed from the database"
            raise LookupError(msg)
        self._store.takes.replace(wanted)

    def _keep_marker(self, current: "Marker | None", wanted: "Marker | None") -> None:
        if wanted is None:
            if current is not None:
                self._store.markers.remove(current.id)
            return
        keep = self._store.markers.add if current is None else self._store.markers.replace
        keep(wanted)

    def _keep_dismissal(self, current: "Dismissal | None", wanted: "Dismissal | None") -> None:
        if wanted is not None:
            self._store.dismissals.add(wanted)
        elif current is not None:
            self._store.dismissals.remove(current.id)

    def _keep_promise(self, current: "Promise | None", wanted: "Promise | None") -> None:
        if wanted is not None:
            keep = self._store.promises.add if current is None else self._store.promises.replace
            keep(wanted)
        elif current is not None:
            if self._store.shared_numbers.list(current.id):
                raise PlainFailure(
                    f"A number of '{current.name}' was shared, so the promise stays.",
                    "It can be ended instead.",
                )
            self._store.promises.remove(current.id)

    def _keep_assignment(self, current: "Assignment | None", wanted: "Assignment | None") -> None:
        if wanted is not None:
            work = self._store.assignments
            (work.add if current is None else work.replace)(wanted)
        elif current is not None:
            self._store.assignments.remove(current.id)

    def _keep_occasion(self, current: "Occasion | None", wanted: "Occasion | None") -> None:
        if wanted is not None:
            self._store.occasions.put(wanted)
        elif current is not None:
            self._store.occasions.remove(current.id)

    def _keep_plan(self, current: "PracticePlan | None", wanted: "PracticePlan | None") -> None:
        if wanted is not None:
            self._store.plans.put(wanted)
        elif current is not None:
            self._store.plans.remove(current.practice_day)

    def _occasion(self, occasion_id: str) -> "Occasion | None":
        known = self._store.occasions.list()
        return next((one for one in known if one.id == occasion_id), None)

    def _plan(self, plan_id: str) -> "PracticePlan | None":
        return self._store.plans.get(date.fromisoformat(plan_id))
