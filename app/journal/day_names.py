"""Names for the size of a day: 'short day' up to 20 minutes, as the player calls it."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from app.journal.failures import PlainFailure

MOST_NAMES = 4
"""More could not be told apart as hatches of bars a few pixels wide."""
_MOST_MINUTES = 24 * 60
_LONGEST_NAME = 24


@dataclass(frozen=True, slots=True)
class DayName:
    """A day with some practice, up to ``up_to_min`` minutes, is called ``name``."""

    name: str
    up_to_min: float


def checked_names(names: Sequence[DayName]) -> tuple[DayName, ...]:
    """Give the names as they may be kept: the shortest day first.

    Raises
    ------
    PlainFailure
        For more than four, one without a name, a threshold outside (0, 1440] minutes,
        or two of the same minutes or name.
    """
    tidy = tuple(
        sorted(
            (DayName(" ".join(one.name.split()), float(one.up_to_min)) for one in names),
            key=lambda one: one.up_to_min,
        )
    )
    if len(tidy) > MOST_NAMES:
        raise PlainFailure(
            f"There is room for {MOST_NAMES} names of days.", "Take one away before adding one."
        )
    for one in tidy:
        if not one.name:
            raise PlainFailure("A kind of day needs a name.", "Call it 'short day', for instance.")
        if len(one.name) > _LONGEST_NAME:
            raise PlainFailure(
                f"'{one.name}' is too long a name.", f"Use at most {_LONGEST_NAME} letters."
            )
        if not (math.isfinite(one.up_to_min) and 0 < one.up_to_min <= _MOST_MINUTES):
            raise PlainFailure(
                f"'{one.name}' needs minutes above 0.", f"Type 1 to {_MOST_MINUTES} minutes."
            )
    if len({one.up_to_min for one in tidy}) < len(tidy):
        raise PlainFailure(
            "Two kinds of day end at the same minutes.", "Give each its own number of minutes."
        )
    if len({one.name.casefold() for one in tidy}) < len(tidy):
        raise PlainFailure("Two kinds of day have the same name.", "Give each its own name.")
    return tidy


def kind_of(minutes: float | None, names: Sequence[DayName]) -> int | None:
    """Give the index of the name a day's minutes fall under.

    The threshold itself belongs to its name: 20 minutes are a 'short day up to 20 min'.
    ``None`` for a day without minutes and for one above every threshold. ``names`` are
    as :func:`checked_names` gives them.
    """
    if not minutes or minutes <= 0:
        return None
    return next((at for at, one in enumerate(names) if minutes <= one.up_to_min), None)
