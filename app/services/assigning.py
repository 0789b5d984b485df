"""Assignments with what was done on them, and the dates that practice leads to."""

import uuid
from collections.abc import Sequence
from dataclasses import replace
from datetime import date

from app.journal.assignments import (
    Assignment,
    AssignmentProgress,
    Occasion,
    OccasionKind,
    checked_assignment,
    progress,
)
from app.journal.failures import PlainFailure
from app.journal.kinds import Author
from app.journal.practice_days import Clock
from app.services.day_now import day_now
from app.services.items import NOTHING_NAMED, named_items
from app.services.keeping_views import AssignmentRow, OccasionRow
from app.services.passages import passage_title
from app.services.records_there import passage_there
from app.services.time_spent import minutes_by_target, takes_by_passage
from app.services.undoing import Undoing
from app.services.wording import counted, day_text, minutes_text
from app.store.store import Store


class AssignmentService:
    """Keeps what was set for the week, and lessons, auditions and concerts."""

    def __init__(self, store: Store, clock: Clock, undoing: Undoing) -> None:
        self._store = store
        self._clock = clock
        self._undoing = undoing

    def open(self) -> tuple[AssignmentRow, ...]:
        """Give what is set, not done, and not past its day; the most urgent first."""
        today = self._today()
        rows = self._rows(self._store.assignments.list(first_due=today), today)
        return tuple(row for row in rows if not row.progress.is_done)

    def for_lesson(self, first_day: date, last_day: date) -> tuple[AssignmentRow, ...]:
        """Give everything due on these days, done or not, both ends included."""
        return self._rows(
            self._store.assignments.list(first_due=first_day, last_due=last_day), self._today()
        )

    def all(self) -> tuple[AssignmentRow, ...]:
        """Give every assignment there ever was, by the day it was due."""
        return self._rows(self._store.assignments.list(), self._today())

    def add(
        self,
        due_on: date,
        goal: str = "",
        *,
        minutes: int | None = None,
        passage_id: str | None = None,
        item_id: str | None = None,
        author: Author = Author.TEACHER,
        set_on: date | None = None,
    ) -> AssignmentRow:
        """Note what was set.

        Parameters
        ----------
        due_on : date
            The day it is for, usually the next lesson.
        goal : str
            In words; may be empty where there are minutes, a passage or an item.
        minutes : int, optional
            How much, over all days together.
        passage_id, item_id : str, optional
            What it is for.
        author : Author
            Who set it.
        set_on : date, optional
            From when on it counts; today where left out.

        Raises
        ------
        PlainFailure
            Where it says nothing, makes no sense, or names what is not there.
        """
        made = checked_assignment(
            Assignment(
                id=uuid.uuid4().hex,
                set_on=set_on or self._today(),
                due_on=due_on,
                goal=goal,
                created_at=self._clock(),
                author=author,
                minutes=minutes,
                item_id=item_id,
                passage_id=passage_id,
            )
        )
        self._check_targets(made)
        made = self._for_passage(made)
        self._undoing.make("set work added", None, made)
        return self._row(made)

    def change(self, assignment: Assignment) -> AssignmentRow:
        """Replace an assignment by its changed record."""
        before = self._assignment(assignment.id)
        kept = checked_assignment(assignment)
        self._check_targets(kept)
        self._undoing.make("set work changed", before, kept)
        return self._row(kept)

    def tick(self, assignment_id: str, done: bool = True) -> AssignmentRow:
        """Tick it off, or take the tick away."""
        made = self._assignment(assignment_id)
        kept = replace(made, done_on=self._today() if done else None)
        words = "set work ticked off" if done else "tick of set work taken away"
        self._undoing.make(words, made, kept)
        return self._row(kept)

    def carry(self, assignment_id: str, due_on: date) -> AssignmentRow:
        """Carry it on to a later day, with all that was done so far."""
        return self.change(replace(self._assignment(assignment_id), due_on=due_on))

    def remove(self, assignment_id: str) -> None:
        """Take it away."""
        made = self._assignment(assignment_id)
        self._undoing.make("set work taken away", made, None)

    def coming(self) -> tuple[OccasionRow, ...]:
        """Give the dates ahead, today included, the next one first."""
        today = self._today()
        titles = {p.id: passage_title(p) for p in self._store.passages.list()}
        return tuple(
            OccasionRow(
                occasion=found,
                days_left=(found.day - today).days,
                title=found.name or found.kind.value,
                passages=tuple(titles[one] for one in found.passage_ids if one in titles),
            )
            for found in self._store.occasions.list(first_day=today)
        )

    def add_occasion(
        self,
        day: date,
        kind: OccasionKind = OccasionKind.LESSON,
        name: str = "",
        passage_ids: Sequence[str] = (),
    ) -> Occasion:
        """Note a date, with the passages that will be played (none: not said)."""
        made = Occasion(
            uuid.uuid4().hex,
            day,
            kind,
            self._clock(),
            " ".join(name.split()),
            tuple(dict.fromkeys(passage_ids)),
        )
        self._undoing.make("date noted", None, made)
        return made

    def change_occasion(self, occasion: Occasion) -> None:
        """Replace a date by its changed record."""
        self._undoing.make("date changed", self._occasion(occasion.id), occasion)

    def remove_occasion(self, occasion_id: str) -> None:
        """Take a date away."""
        there = self._occasion(occasion_id)
        if there is not None:
            self._undoing.make("date taken away", there, None)

    def _occasion(self, occasion_id: str) -> Occasion | None:
        known = self._store.occasions.list()
        return next((one for one in known if one.id == occasion_id), None)

    def _row(self, assignment: Assignment) -> AssignmentRow:
        return self._rows((assignment,), self._today())[0]

    def _rows(self, assignments: Sequence[Assignment], today: date) -> tuple[AssignmentRow, ...]:
        if not assignments:
            return ()
        span = (min(made.set_on for made in assignments), today)
        minutes = minutes_by_target(self._store, *span)
        takes = takes_by_passage(self._store, *span)
        items = named_items(self._store)
        passages = {p.id: passage_title(p) for p in self._store.passages.list()}
        rows = []
        for made in assignments:
            target = made.passage_id or made.item_id or ""
            found = progress(made, minutes.get(target, {}), takes.get(target, {}), today)
            title = passages.get(made.passage_id or "")
            if title is None:
                item = items.get(made.item_id, NOTHING_NAMED) if made.item_id else None
                title = item.title if item else made.goal
            rows.append(AssignmentRow(made, found, title, _sentence(made, found)))
        return tuple(rows)

    def _for_passage(self, made: Assignment) -> Assignment:
        """Let an item that stands for a passage be that passage: its takes count too."""
        item = self._store.items.get(made.item_id) if made.item_id else None
        if item is None or item.passage_id is None or made.passage_id is not None:
            return made
        return replace(made, passage_id=item.passage_id, item_id=None)

    def _check_targets(self, made: Assignment) -> None:
        if made.passage_id is not None:
            passage_there(self._store, made.passage_id)
        if made.item_id is not None and self._store.items.get(made.item_id) is None:
            raise PlainFailure("That item is not there.", "Choose another one.")

    def _assignment(self, assignment_id: str) -> Assignment:
        found = self._store.assignments.get(assignment_id)
        if found is None:
            raise PlainFailure("That assignment is not there.", "Look at the list again.")
        return found

    def _today(self) -> date:
        return day_now(self._store, self._clock)


def _sentence(made: Assignment, found: AssignmentProgress) -> str:
    """Say what was done so far; what was not is left to the reader."""
    parts = []
    if made.minutes is not None:
        parts.append(f"{minutes_text(found.minutes_done)} of {minutes_text(made.minutes)}")
    elif found.minutes_done:
        parts.append(minutes_text(found.minutes_done))
    if found.takes:
        parts.append(counted(found.takes, "take"))
    if found.days:
        parts.append(f"on {counted(found.days, 'day')}")
    done = f"ticked off on {day_text(made.done_on)}" if made.done_on else ""
    if not parts:
        return f"{done or 'not begun'}; due {day_text(made.due_on)}"
    return "; ".join(
        one
        for one in (
            " ".join(parts) if len(parts) < 3 else ", ".join(parts),
            done,
            f"due {day_text(made.due_on)}",
        )
        if one
    )
