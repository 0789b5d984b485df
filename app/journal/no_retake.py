"""No-retake: one take of a passage each practice day, kept whatever it is.

A take that may be thrown away is chosen, and a choice of the best of five says little
about an ordinary day. Under this rule the first recording of a practice day is the
take; a second is possible only after the device spoilt the first, with the reason on
record. Without it, how many attempts a kept take was chosen from is on record too.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from enum import StrEnum

from app.journal.blocks import Attempt
from app.journal.records import Passage, Take


class ChosenAs(StrEnum):
    """How a take came to be the one that is kept."""

    NO_RETAKE = "no_retake"
    ONLY_TAKE = "only_take"
    ALL_KEPT = "all_kept"
    BEST_OF_SEVERAL = "best_of_several"


@dataclass(frozen=True, slots=True)
class MayRecord:
    """A recording may begin.

    Attributes
    ----------
    under_rule : bool
        It is the day's take under no-retake.
    after_failure : str
        What spoilt the attempts before it; empty for a first one.
    """

    under_rule: bool
    after_failure: str = ""


@dataclass(frozen=True, slots=True)
class MayNotRecord:
    """The take of the day is made; it may be deleted neither."""

    first: Attempt


def holds(passage: Passage, practice_day: date) -> bool:
    """Tell whether a passage is recorded without retakes on a practice day."""
    if not passage.no_retake:
        return False
    return passage.no_retake_since is None or passage.no_retake_since <= practice_day


def may_record(
    passage: Passage, practice_day: date, attempts: Sequence[Attempt]
) -> MayRecord | MayNotRecord:
    """Decide whether a passage may be recorded on a practice day.

    Parameters
    ----------
    passage : Passage
    practice_day : date
    attempts : sequence of Attempt
        Those of this passage on this day, in order; a take that came from elsewhere
        counts as one (see :func:`attempt_of`).
    """
    if not holds(passage, practice_day):
        return MayRecord(under_rule=False)
    sound = [attempt for attempt in attempts if not attempt.failure]
    if sound:
        return MayNotRecord(sound[0])
    reasons = dict.fromkeys(attempt.failure for attempt in attempts)
    return MayRecord(under_rule=True, after_failure=" ".join(reasons))


def attempt_of(take: Take) -> Attempt:
    """Give the attempt that a take stands for whose recording the program did not see."""
    return Attempt(
        take.id, take.passage_id, take.practice_day, take.recorded_at, take.duration_s, ""
    )


def may_delete(passage: Passage | None, take: Take) -> bool:
    """Tell whether a take may be deleted: not while it is held by its passage's rule."""
    return not (take.no_retake and passage is not None and passage.no_retake)


def switched(passage: Passage, on: bool, today: date, attempts_today: int) -> Passage:
    """Give a passage with the rule switched on or off.

    Switched on after an attempt of today it holds from tomorrow: today's take can no
    longer be the only one.
    """
    if not on:
        return replace(passage, no_retake=False, no_retake_since=None)
    if passage.no_retake:
        return passage
    since = today + timedelta(days=1) if attempts_today else today
    return replace(passage, no_retake=True, no_retake_since=since)


def chosen_as(take: Take, attempts: Sequence[Attempt], kept_ids: frozenset[str]) -> ChosenAs | None:
    """Tell how a take came to be the one that is kept; ``None`` where nobody knows.

    Parameters
    ----------
    take : Take
    attempts : sequence of Attempt
        Those of its passage on its practice day, spoilt ones too.
    kept_ids : frozenset of str
        Ids of the takes that are kept of them.

    Notes
    -----
    A take from elsewhere may be the best of many: nothing is said about it unless the
    rule held. An attempt that the device spoilt was no choice and does not count.
    """
    if take.no_retake:
        return ChosenAs.NO_RETAKE
    if take.id not in {attempt.id for attempt in attempts}:
        return None
    counting = [a for a in attempts if not a.failure or a.id == take.id]
    if len(counting) == 1:
        return ChosenAs.ONLY_TAKE
    if all(attempt.id in kept_ids for attempt in counting):
        return ChosenAs.ALL_KEPT
    return ChosenAs.BEST_OF_SEVERAL
