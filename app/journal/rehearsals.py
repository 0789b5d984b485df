"""Audition rehearsals: chosen passages in a given or drawn order, one chance each.

The passages are recorded straight through; what was recorded is listened to when all
have had their chance. A chance that was begun is used up, whatever came of it, unless
the device spoilt it.
"""

import random
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime

from app.journal.failures import PlainFailure


@dataclass(frozen=True, slots=True)
class Chance:
    """One passage of a rehearsal.

    Attributes
    ----------
    begun_at : datetime or None
        When its one chance began.
    is_over : bool
        It is used up.
    take_id : str or None
        What was recorded; ``None`` also where nothing came of it.
    spoilt : str
        What the device did to an earlier attempt, in one sentence.
    """

    passage_id: str
    begun_at: datetime | None = None
    is_over: bool = False
    take_id: str | None = None
    spoilt: str = ""


@dataclass(frozen=True, slots=True)
class Rehearsal:
    """A run through passages as at an audition.

    Attributes
    ----------
    drawn : bool
        The order was drawn by lot, not given.
    ended_at : datetime or None
        Since when it may be listened to.
    """

    id: str
    practice_day: date
    started_at: datetime
    chances: tuple[Chance, ...]
    drawn: bool = False
    ended_at: datetime | None = None


def order_of(passage_ids: Sequence[str], *, draw: bool, chance: random.Random) -> tuple[str, ...]:
    """Give the order: as given, or drawn by lot.

    Raises
    ------
    PlainFailure
        Where no passage is chosen, or one twice.
    """
    ids = list(passage_ids)
    if not ids:
        raise PlainFailure("A rehearsal needs passages.", "Choose at least one.")
    if len(set(ids)) != len(ids):
        raise PlainFailure("A passage has one chance in a rehearsal.", "Choose each once.")
    if draw:
        chance.shuffle(ids)
    return tuple(ids)


def current(rehearsal: Rehearsal) -> Chance | None:
    """Give the chance that is now; ``None`` once the rehearsal has ended."""
    if rehearsal.ended_at is not None:
        return None
    return next((chance for chance in rehearsal.chances if not chance.is_over), None)


def begun(rehearsal: Rehearsal, now: datetime) -> Rehearsal:
    """Begin the chance that is now.

    Raises
    ------
    PlainFailure
        Where it was begun already, or all have had theirs.
    """
    chance = current(rehearsal)
    if chance is None:
        raise PlainFailure("Every passage has had its chance.", "Listen to the rehearsal.")
    if chance.begun_at is not None:
        raise PlainFailure("This passage has had its one chance.", "Go on to the next.")
    return _with(rehearsal, replace(chance, begun_at=now))


def recorded(
    rehearsal: Rehearsal, passage_id: str | None, take_id: str, now: datetime
) -> Rehearsal:
    """Keep what was recorded; after the last one the rehearsal ends.

    Raises
    ------
    PlainFailure
        Where another passage is due.
    """
    chance = current(rehearsal)
    if chance is None or chance.passage_id != passage_id or chance.begun_at is None:
        raise PlainFailure("This take is not of the passage that is due.", "Go on in the order.")
    return _with(rehearsal, replace(chance, take_id=take_id, is_over=True), now)


def spoilt(rehearsal: Rehearsal, sentence: str) -> Rehearsal:
    """Give the chance back that the device spoilt, with the reason on record."""
    chance = current(rehearsal)
    if chance is None or chance.begun_at is None:
        return rehearsal
    return _with(rehearsal, replace(chance, begun_at=None, spoilt=sentence))


def passed(rehearsal: Rehearsal, now: datetime) -> Rehearsal:
    """Go on without a take of the passage that is due: its chance is used up."""
    chance = current(rehearsal)
    if chance is None:
        return rehearsal
    return _with(rehearsal, replace(chance, is_over=True), now)


def ended(rehearsal: Rehearsal, now: datetime) -> Rehearsal:
    """End it early; what was recorded can be listened to."""
    return replace(rehearsal, ended_at=rehearsal.ended_at or now)


def _with(rehearsal: Rehearsal, chance: Chance, now: datetime | None = None) -> Rehearsal:
    """Put a changed chance in; after the last one the rehearsal has ended."""
    chances = tuple(
        chance if one.passage_id == chance.passage_id else one for one in rehearsal.chances
    )
    is_over = all(one.is_over for one in chances)
    return replace(rehearsal, chances=chances, ended_at=now if is_over else None)
