"""What following a passage keeps: answers, bounds, blind trials, and work done once."""

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from sqlalchemy import delete, insert, select

from app.journal.blind_ear import BlindTrial
from app.journal.bounds import PassageBounds
from app.journal.still_there import StillThere
from app.store.following_models import (
    BLIND_TRIAL_TABLE,
    PAIR_ALIGNMENT_TABLE,
    PASSAGE_BOUNDS_TABLE,
    STILL_THERE_TABLE,
    TAKE_OUTLINE_TABLE,
)
from app.store.kept_by_id import KeptById
from app.store.work import JOURNAL_KEY, Work, values_of

_ANSWER = STILL_THERE_TABLE.c
_BOUNDS = PASSAGE_BOUNDS_TABLE.c
_TRIAL = BLIND_TRIAL_TABLE.c
_PAIR = PAIR_ALIGNMENT_TABLE.c
_OUTLINE = TAKE_OUTLINE_TABLE.c


class StillThereRepository(KeptById[StillThere]):
    """Answers by ear whether a marked problem is still there."""

    table = STILL_THERE_TABLE
    record = StillThere
    order = (_ANSWER.answered_at, _ANSWER.id)

    def put(self, answer: StillThere) -> None:
        """Keep an answer in the place of the earlier one about the same marker and take."""
        same = (_ANSWER.marker_id == answer.marker_id) & (_ANSWER.take_id == answer.take_id)
        with self._work.connection() as connection:
            connection.execute(delete(STILL_THERE_TABLE).where(same))
            self.add(answer)

    def remove(self, marker_id: str, take_id: str) -> None:
        """Take an answer back."""
        same = (_ANSWER.marker_id == marker_id) & (_ANSWER.take_id == take_id)
        with self._work.connection() as connection:
            connection.execute(delete(STILL_THERE_TABLE).where(same))
            self._work.touch(JOURNAL_KEY)

    def of_marker(self, marker_id: str) -> tuple[StillThere, ...]:
        """List the answers about one marker."""
        return self._all(_ANSWER.marker_id == marker_id)

    def of_take(self, take_id: str) -> tuple[StillThere, ...]:
        """List the answers given while hearing one take."""
        return self._all(_ANSWER.take_id == take_id)


class PassageBoundsRepository(KeptById[PassageBounds]):
    """The player's bounds, at most one record a passage."""

    table = PASSAGE_BOUNDS_TABLE
    record = PassageBounds
    order = (_BOUNDS.id,)

    def put(self, bounds: PassageBounds) -> None:
        """Keep the bounds of a passage in the place of earlier ones."""
        with self._work.connection() as connection:
            connection.execute(delete(PASSAGE_BOUNDS_TABLE).where(_BOUNDS.id == bounds.id))
            self.add(bounds)


class BlindTrialRepository(KeptById[BlindTrial]):
    """Blind trials, answered or not."""

    table = BLIND_TRIAL_TABLE
    record = BlindTrial
    order = (_TRIAL.asked_at, _TRIAL.id)

    def of_passage(self, passage_id: str) -> tuple[BlindTrial, ...]:
        """List the trials of a passage in the order in which they were asked."""
        return self._all(_TRIAL.passage_id == passage_id)


@dataclass(frozen=True, slots=True)
class KeptAlignment:
    """An alignment as kept; ``block`` is empty where the takes do not match."""

    take_a: str
    take_b: str
    made_from: str
    reason: str = ""
    sentence: str = ""
    block: bytes = b""


class PairAlignmentRepository:
    """Alignments of takes, made once."""

    def __init__(self, work: Work) -> None:
        self._work = work

    def get(self, take_a: str, take_b: str) -> KeptAlignment | None:
        """Give the alignment from one take to another."""
        wanted = select(PAIR_ALIGNMENT_TABLE).where(_PAIR.take_a == take_a, _PAIR.take_b == take_b)
        with self._work.connection() as connection:
            row = connection.execute(wanted).one_or_none()
        return None if row is None else KeptAlignment(**row._mapping)

    def counts(self, take_ids: Sequence[str]) -> Mapping[str, int]:
        """Count for each of some takes the others among them that it is kept aligned with."""
        both = _PAIR.take_a.in_(take_ids) & _PAIR.take_b.in_(take_ids) & (_PAIR.block != b"")
        with self._work.connection() as connection:
            rows = connection.execute(select(_PAIR.take_a, _PAIR.take_b).where(both)).all()
        pairs = {frozenset(row) for row in rows}
        return Counter(take_id for pair in pairs for take_id in pair)

    def put(self, kept: KeptAlignment) -> None:
        """Keep an alignment in the place of an earlier one."""
        same = (_PAIR.take_a == kept.take_a) & (_PAIR.take_b == kept.take_b)
        with self._work.connection() as connection:
            connection.execute(delete(PAIR_ALIGNMENT_TABLE).where(same))
            connection.execute(insert(PAIR_ALIGNMENT_TABLE), values_of(kept))


class TakeOutlineRepository:
    """Outlines of takes, made once."""

    def __init__(self, work: Work) -> None:
        self._work = work

    def get(self, take_id: str, made_from: str) -> bytes | None:
        """Give the outline of a take, if one was made from just this."""
        wanted = select(_OUTLINE.block).where(
            _OUTLINE.take_id == take_id, _OUTLINE.made_from == made_from
        )
        with self._work.connection() as connection:
            return connection.scalars(wanted).one_or_none()

    def put(self, take_id: str, made_from: str, block: bytes) -> None:
        """Keep the outline of a take in the place of an earlier one."""
        values = {"take_id": take_id, "made_from": made_from, "block": block}
        with self._work.connection() as connection:
            connection.execute(delete(TAKE_OUTLINE_TABLE).where(_OUTLINE.take_id == take_id))
            connection.execute(insert(TAKE_OUTLINE_TABLE), values)
