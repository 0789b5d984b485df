"""The takes of a journal in the orders that choosers want, put together off the GUI thread."""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from app.journal.records import Passage
from app.services.views import TakeRow


@dataclass(frozen=True, slots=True)
class TakeLists:
    """All takes, and the passages; made by :func:`lists_of`.

    Attributes
    ----------
    by_id : mapping of str to TakeRow
    by_passage : mapping of (str or None) to tuple of TakeRow
        In the order they were played; ``None``: those without a passage.
    passages : tuple of Passage
    latest_id : str
        The take that was played last; empty where there is none.
    """

    by_id: Mapping[str, TakeRow]
    by_passage: Mapping[str | None, tuple[TakeRow, ...]]
    passages: tuple[Passage, ...]
    latest_id: str

    def of_passage(self, passage_id: str | None) -> tuple[TakeRow, ...]:
        """Give the takes of a passage in the order they were played."""
        return self.by_passage.get(passage_id, ())

    def __bool__(self) -> bool:
        """Say whether there is a take."""
        return bool(self.by_id)


def lists_of(takes: Iterable[TakeRow], passages: Iterable[Passage]) -> TakeLists:
    """Put takes, given in any order, into lists."""
    played = sorted(takes, key=lambda take: take.recorded_at)
    by_passage: defaultdict[str | None, list[TakeRow]] = defaultdict(list)
    for take in played:
        by_passage[take.passage_id].append(take)
    return TakeLists(
        by_id={take.id: take for take in played},
        by_passage={key: tuple(rows) for key, rows in by_passage.items()},
        passages=tuple(passages),
        latest_id=played[-1].id if played else "",
    )
