"""What was set for the week, the dates it is for, and hours from before the journal.

Plain frozen values as in :mod:`app.journal.records`, with what they come to.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date, datetime
from enum import StrEnum

from app.journal.failures import PlainFailure
from app.journal.kinds import Author

MOST_HOURS = 100_000


class OccasionKind(StrEnum):
    """A date that practice leads to."""

    LESSON = "lesson"
    AUDITION = "audition"
    CONCERT = "concert"


@dataclass(frozen=True, slots=True)
class Occasion:
    """A coming date, and the passages that will be played there (none: not said)."""

    id: str
    day: date
    kind: OccasionKind
    created_at: datetime
    name: str = ""
    passage_ids: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Assignment:
    """What was set, until when, and whether it is done.

    Attributes
    ----------
    set_on, due_on : date
        From which practice day on it counts, and for which day (of the lesson).
    goal : str
        In words; may be empty where minutes are asked for.
    minutes : int or None
        How much, over all days together.
    item_id, passage_id : str or None
        What it is for; neither for something in words only.
    done_on : date or None
        When the player ticked it off.
    """

    id: str
    set_on: date
    due_on: date
    goal: str
    created_at: datetime
    author: Author = Author.TEACHER
    minutes: int | None = None
    item_id: str | None = None
    passage_id: str | None = None
    done_on: date | None = None


@dataclass(frozen=True, slots=True)
class EarlierHours:
    """Hours practised before the journal began, as the player reckons them: one entry."""

    hours: float
    until: date | None = None
    note: str = ""


@dataclass(frozen=True, slots=True)
class AssignmentProgress:
    """What was done on an assignment so far.

    Attributes
    ----------
    minutes_done : float
        On its item or passage, from ``set_on`` to ``due_on`` or today.
    days, takes : int
        Days with minutes or takes, and takes of its passage, in that time.
    minutes_left : float or None
        ``None`` where no minutes were asked for.
    is_done : bool
        Ticked off; or its minutes are reached and nothing else was asked for.
    is_past : bool
        Its day is over.
    """

    minutes_done: float
    days: int
    takes: int
    minutes_left: float | None
    is_done: bool
    is_past: bool


def progress(
    assignment: Assignment,
    minutes: Mapping[date, float],
    takes: Mapping[date, int],
    today: date,
) -> AssignmentProgress:
    """Work out what was done on an assignment.

    Parameters
    ----------
    assignment : Assignment
    minutes, takes : mapping
        On its item or passage, by practice day; other days than its own are not
        looked at.
    today : date
    """
    last = min(assignment.due_on, today)
    first = assignment.set_on
    done = {day: amount for day, amount in minutes.items() if first <= day <= last and amount > 0}
    made = {day: number for day, number in takes.items() if first <= day <= last and number > 0}
    minutes_done = math.fsum(done.values())
    asked = assignment.minutes
    left = None if asked is None else max(0.0, asked - minutes_done)
    reached = asked is not None and int(minutes_done + 0.5) >= asked and not assignment.goal
    return AssignmentProgress(
        minutes_done=minutes_done,
        days=len(done.keys() | made.keys()),
        takes=sum(made.values()),
        minutes_left=left,
        is_done=assignment.done_on is not None or reached,
        is_past=assignment.due_on < today,
    )


def checked_assignment(assignment: Assignment) -> Assignment:
    """Give an assignment as it may be kept.

    Raises
    ------
    PlainFailure
        Where it asks for nothing, or is due before it was set.
    """
    goal = " ".join(assignment.goal.split())
    if assignment.minutes is not None and not 1 <= assignment.minutes <= 60 * MOST_HOURS:
        raise PlainFailure("An assignment asks for at least one minute.", "Give minutes, or none.")
    is_empty = not goal and assignment.minutes is None
    if is_empty and assignment.item_id is None and assignment.passage_id is None:
        raise PlainFailure("The assignment says nothing.", "Give a goal, minutes or a passage.")
    if assignment.due_on < assignment.set_on:
        raise PlainFailure(
            f"The assignment would be due on {assignment.due_on}, before it was set.",
            "Choose a later day.",
        )
    return replace(assignment, goal=goal)


def checked_earlier(earlier: EarlierHours) -> EarlierHours:
    """Give hours from before the journal as they may be kept.

    Raises
    ------
    PlainFailure
        For a number of hours nobody can have practised.
    """
    if not (math.isfinite(earlier.hours) and 0 < earlier.hours <= MOST_HOURS):
        raise PlainFailure(
            "Hours from before the journal are a number above 0.",
            f"Type at most {MOST_HOURS:,} hours; an estimate is enough.",
        )
    return replace(earlier, hours=float(earlier.hours), note=" ".join(earlier.note.split()))
