"""What can be undone: one history for markers and deleted takes."""

import threading
from collections.abc import Callable
from dataclasses import dataclass

_MOST_STEPS = 200


@dataclass(frozen=True, slots=True)
class Step:
    """Something that was done, in words, with its undoing and its doing again."""

    words: str
    undo: Callable[[], None]
    redo: Callable[[], None]


class History:
    """The steps of this run of the program; safe to ask from any thread."""

    def __init__(self) -> None:
        self._lock = threading.RLock()
        self._done: list[Step] = []
        self._undone: list[Step] = []

    @property
    def can_undo(self) -> bool:
        """Whether there is a step to undo (instant)."""
        return bool(self._done)

    @property
    def can_redo(self) -> bool:
        """Whether there is a step to do again (instant)."""
        return bool(self._undone)

    def add(self, step: Step) -> None:
        """Note a step that was just done; what was undone before can no longer be redone."""
        with self._lock:
            self._done.append(step)
            del self._done[:-_MOST_STEPS]
            self._undone.clear()

    def undo(self) -> str | None:
        """Undo the last step and give its words; a step that fails stays where it is."""
        return self._move(self._done, self._undone, lambda step: step.undo())

    def redo(self) -> str | None:
        """Do the last undone step again and give its words."""
        return self._move(self._undone, self._done, lambda step: step.redo())

    def _move(
        self, source: list[Step], target: list[Step], act: Callable[[Step], None]
    ) -> str | None:
        with self._lock:
            if not source:
                return None
            act(source[-1])
            step = source.pop()
            target.append(step)
            return step.words
