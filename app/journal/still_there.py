"""Is a marked problem still there? Answers by ear, and the life a problem has by them.

A marker is placed once, on one take. In every later take of the passage the same place
is asked about; the marker's own state moves only by hand (see
:mod:`app.journal.markers`), the life is read from the answers.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, datetime
from enum import StrEnum

from app.journal.kinds import MarkerState
from app.journal.records import Marker

NOT_HEARD_ON_DAYS = 2
"""On how many practice days in a row a problem must not be heard to count as settled."""


@dataclass(frozen=True, slots=True)
class StillThere:
    """One answer by ear: whether the problem of a marker is heard in a later take."""

    id: str
    marker_id: str
    take_id: str
    is_there: bool
    answered_at: datetime


@dataclass(frozen=True, slots=True)
class Heard:
    """What was heard at a problem's place on one practice day.

    Takes of one day count once: it is there if it was there in any of them.
    """

    practice_day: date
    is_there: bool


class Stage(StrEnum):
    """Where a problem stands in its life."""

    TO_WORK_ON = "to_work_on"
    SETTLED = "settled"
    RETURNED = "returned"


@dataclass(frozen=True, slots=True)
class ProblemLife:
    """A problem from first to last.

    Attributes
    ----------
    first_heard, last_heard : date
        Practice days.
    days_worked_on : int
        Practice days with the passage from the first day on, until it was settled
        (each time, where it came back).
    settled_on, returned_on : date or None
        The latest such day.
    times_returned : int
    stage : Stage
    """

    marker_id: str
    first_heard: date
    last_heard: date
    days_worked_on: int
    settled_on: date | None
    returned_on: date | None
    times_returned: int
    stage: Stage


def heard_by_day(answers: Iterable[tuple[date, bool]]) -> tuple[Heard, ...]:
    """Put answers into one a practice day, in order."""
    days: dict[date, bool] = {}
    for day, is_there in answers:
        days[day] = days.get(day, False) or is_there
    return tuple(Heard(day, days[day]) for day in sorted(days))


def life_of(
    marker: Marker,
    first_day: date,
    heard: Sequence[Heard],
    practised: Iterable[date],
    settled_by_hand: date | None = None,
) -> ProblemLife:
    """Tell the life of a problem.

    Parameters
    ----------
    marker : Marker
    first_day : date
        Practice day of the take it was placed on.
    heard : sequence of Heard
        Answers on later practice days, in order.
    practised : iterable of date
        Practice days with the passage.
    settled_by_hand : date or None
        The day on which the player called the marker settled or returned, where so.

    Returns
    -------
    ProblemLife
        Settled once it was not heard on two practice days in a row, on the second of
        them, or by hand; returned once it is heard after that. The player's own word
        on the marker has the last say about the stage.
    """
    stage, silent = Stage.TO_WORK_ON, 0
    settled_on, returned_on, last_heard = None, None, first_day
    returns = 0
    open_spans: list[list[date | None]] = [[first_day, None]]
    for day in heard:
        if day.practice_day <= first_day:
            continue
        if day.is_there:
            last_heard, silent = day.practice_day, 0
            if stage is Stage.SETTLED:
                stage, returned_on, returns = Stage.RETURNED, day.practice_day, returns + 1
                open_spans.append([day.practice_day, None])
            continue
        silent += 1
        if silent >= NOT_HEARD_ON_DAYS and stage is not Stage.SETTLED:
            stage, settled_on = Stage.SETTLED, day.practice_day
            open_spans[-1][1] = day.practice_day
    if settled_by_hand is not None and marker.state is MarkerState.SETTLED:
        stage = Stage.SETTLED
        settled_on = settled_on or settled_by_hand
        if open_spans[-1][1] is None:
            open_spans[-1][1] = settled_by_hand
            settled_on = settled_by_hand
    elif marker.state is MarkerState.RETURNED and stage is not Stage.RETURNED:
        stage, returned_on, returns = Stage.RETURNED, settled_by_hand, returns + 1
        if settled_by_hand is not None:
            last_heard = max(last_heard, settled_by_hand)
    worked = {
        day
        for day in practised
        for start, end in open_spans
        if start is not None and start <= day and (end is None or day <= end)
    }
    return ProblemLife(
        marker_id=marker.id,
        first_heard=first_day,
        last_heard=last_heard,
        days_worked_on=len(worked | {first_day}),
        settled_on=settled_on,
        returned_on=returned_on,
        times_returned=returns,
        stage=stage,
    )
