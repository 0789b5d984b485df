"""Undo and redo of what the player did to the records of a journal.

Values only: a change holds records as they were and as they became, and whoever
keeps the records applies it. Undoing touches just the fields the change had altered,
so that something noted on the same take meanwhile (an aim that was met, a later
remark) is not lost with it.
"""

from collections.abc import Callable
from dataclasses import dataclass, fields, replace

from app.journal.assignments import Assignment, Occasion
from app.journal.plans import PracticePlan
from app.journal.promises import Promise
from app.journal.records import Marker, Take
from app.journal.suggestions import Dismissal

Record = Marker | Take | Dismissal | Promise | Assignment | Occasion | PracticePlan

DEPTH = 200
"""How many changes can be undone; the oldest are forgotten first."""


@dataclass(frozen=True, slots=True)
class Step:
    """One record before and after; ``None`` where it did not or does not exist.

    Raises
    ------
    ValueError
        Where both are ``None`` or they are two different records.
    """

    before: Record | None
    after: Record | None

    def __post_init__(self) -> None:
        if self.before is None and self.after is None:
            msg = "a step changes something"
            raise ValueError(msg)
        if self.before is not None and self.after is not None:
            same_kind = type(self.before) is type(self.after)
            if not same_kind or self.before.id != self.after.id:
                msg = "a step is about one record"
                raise ValueError(msg)

    @property
    def kind(self) -> type[Record]:
        """What kind of record it is about."""
        return type(self._some)

    @property
    def record_id(self) -> str:
        """The id of the record it is about."""
        return self._some.id

    @property
    def inverse(self) -> "Step":
        """The step back."""
        return Step(self.after, self.before)

    def onto(self, current: Record | None) -> Record | None:
        """Give what the record becomes when this step is made on its present state.

        Raises
        ------
        LookupError
            Where the record is gone that should change, or is there that should come.
        """
        if (current is None) != (self.before is None):
            msg = f"record {self.record_id} is not as this step expects it"
            raise LookupError(msg)
        if self.before is None or self.after is None or current is None:
            return self.after
        altered = {
            field.name: getattr(self.after, field.name)
            for field in fields(self.after)
            if getattr(self.before, field.name) != getattr(self.after, field.name)
        }
        return replace(current, **altered)

    @property
    def _some(self) -> Record:
        record = self.after if self.before is None else self.before
        assert record is not None  # noqa: S101 - one of the two is there
        return record


@dataclass(frozen=True, slots=True)
class Change:
    """What the player did, in words, and the steps it took, in order."""

    words: str
    steps: tuple[Step, ...]

    @property
    def inverse(self) -> "Change":
        """The way back, last step first."""
        return Change(self.words, tuple(step.inverse for step in reversed(self.steps)))


Apply = Callable[[Change], None]
"""Makes a change to the records, as one piece; raises if it cannot."""


class History:
    """The changes that can be undone and redone, the latest first.

    Parameters
    ----------
    depth : int
        How many changes can be undone.
    """

    def __init__(self, depth: int = DEPTH) -> None:
        if depth < 1:
            msg = "a history holds at least one change"
            raise ValueError(msg)
        self._depth = depth
        self._done: list[Change] = []
        self._undone: list[Change] = []

    @property
    def can_undo(self) -> bool:
        """Whether there is something to undo."""
        return bool(self._done)

    @property
    def can_redo(self) -> bool:
        """Whether there is something to redo."""
        return bool(self._undone)

    @property
    def undo_words(self) -> str | None:
        """What would be undone."""
        return self._done[-1].words if self._done else None

    @property
    def redo_words(self) -> str | None:
        """What would be redone."""
        return self._undone[-1].words if self._undone else None

    def record(self, change: Change) -> None:
        """Note a change that was made; what had been undone cannot be redone any more."""
        self._done.append(change)
        del self._done[: -self._depth]
        self._undone.clear()

    def undo(self, apply: Apply) -> str | None:
        """Take back the latest change and give its words; ``None`` if there is none.

        If ``apply`` raises, the history stays as it was.
        """
        if not self._done:
            return None
        change = self._done[-1]
        apply(change.inverse)
        self._undone.append(self._done.pop())
        return change.words

    def redo(self, apply: Apply) -> str | None:
        """Make the latest undone change again and give its words; ``None`` if none.

        If ``apply`` raises, the history stays as it was.
        """
        if not self._undone:
            return None
        change = self._undone[-1]
        apply(change)
        self._done.append(self._undone.pop())
        return change.words

    def clear(self) -> None:
        """Forget everything, for instance when the journal is closed."""
        self._done.clear()
        self._undone.clear()
