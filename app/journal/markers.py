"""Rules for markers: what may be written, and how a marked problem may go on."""

import math
from dataclasses import replace
from datetime import datetime

from app.journal.failures import PlainFailure
from app.journal.kinds import MarkerState
from app.journal.records import Marker

LIGHTEST, HEAVIEST = 1, 3

SLACK_S = 0.05
"""How far a position may lie outside the take and still be drawn back to its edge.

A position comes from a playback clock or a click on a picture, and both round.
"""

_GOES_ON: dict[MarkerState, frozenset[MarkerState]] = {
    # Only what was settled once can return; what returned was settled once, so it
    # cannot become a first-time problem again. A slip of the hand can be taken back.
    MarkerState.TO_WORK_ON: frozenset({MarkerState.SETTLED}),
    MarkerState.SETTLED: frozenset({MarkerState.RETURNED, MarkerState.TO_WORK_ON}),
    MarkerState.RETURNED: frozenset({MarkerState.SETTLED}),
}

STATE_WORDS = {
    MarkerState.TO_WORK_ON: "to work on",
    MarkerState.SETTLED: "settled",
    MarkerState.RETURNED: "returned",
}


def next_states(state: MarkerState) -> frozenset[MarkerState]:
    """Give the states a marker may take on from this one, itself not among them."""
    return _GOES_ON[state]


def checked(marker: Marker, duration_s: float) -> Marker:
    """Give a marker as it may be kept on a take of this length.

    A position up to 0.05 s outside the take is drawn back to its edge, and spaces
    around the category go.

    Raises
    ------
    PlainFailure
        Where the weight is not 1, 2 or 3, the position lies outside the take, a span
        does not end after its start, or the category is empty.
    """
    category = " ".join(marker.category.split())
    if not category:
        raise PlainFailure(
            "A marker needs a category.", "Choose one, for instance intonation or rhythm."
        )
    if isinstance(marker.weight, bool) or marker.weight not in range(LIGHTEST, HEAVIEST + 1):
        raise PlainFailure(
            f"A marker weighs 1 (slight), 2 or 3 (first thing to fix), not {marker.weight}.",
            "Choose 1, 2 or 3.",
        )
    start_s = _inside(marker.start_s, duration_s)
    end_s = None if marker.end_s is None else _inside(marker.end_s, duration_s)
    if end_s is not None and end_s <= start_s:
        raise PlainFailure(
            f"The marker would end at {end_s:.2f} s, before it begins at {start_s:.2f} s.",
            "Choose an end after the start, or none for a moment.",
        )
    return replace(marker, category=category, start_s=start_s, end_s=end_s)


def changed(before: Marker, after: Marker, duration_s: float, now: datetime) -> Marker:
    """Give a changed marker as it may be kept, stamped with the time of the change.

    Raises
    ------
    PlainFailure
        As :func:`checked`; also for a change of state that makes no sense.
    ValueError
        Where ``after`` is another marker, or on another take.
    """
    if (before.id, before.take_id) != (after.id, after.take_id):
        msg = "a marker keeps its id and its take"
        raise ValueError(msg)
    if after.state != before.state and after.state not in _GOES_ON[before.state]:
        allowed = " or ".join(sorted(STATE_WORDS[state] for state in _GOES_ON[before.state]))
        was, wanted = STATE_WORDS[before.state], STATE_WORDS[after.state]
        raise PlainFailure(
            f"A marker that is {was} cannot become {wanted}.",
            f"It can become {allowed}.",
        )
    kept = checked(after, duration_s)
    return replace(kept, created_at=before.created_at, changed_at=max(now, before.created_at))


def _inside(position_s: float, duration_s: float) -> float:
    if not math.isfinite(position_s) or not -SLACK_S <= position_s <= duration_s + SLACK_S:
        raise PlainFailure(
            f"{position_s:.2f} s lies outside the take, which lasts {duration_s:.2f} s.",
            f"Choose a position from 0 to {duration_s:.2f} s.",
        )
    return min(max(position_s, 0.0), duration_s)
