"""Which passage an unfiled take is, with the confidence in that, or none of them."""

from pathlib import Path
from typing import TYPE_CHECKING

from app.journal.failures import PlainFailure
from app.journal.records import Passage
from app.services.following_views import PassageProposal, RankedPassage
from app.services.outlines import Outlines, outline_of_file, outline_of_score
from app.services.passages import passage_title
from app.services.records_there import take_there
from app.services.score_keeping import ScoreShelf
from app.services.stopping import (
    Progress,
    ShouldStop,
    never_stop,
    no_progress,
    part_of,
    stop_if,
    stopped_by,
)
from app.store.store import Store

if TYPE_CHECKING:
    from analysis.outline import Outline

REFERENCES = 3
MOST_RANKED = 5
_TOLD_FROM = 0.05


class ProposingService:
    """Holds a recording against every passage of the journal."""

    def __init__(self, store: Store, shelf: ScoreShelf) -> None:
        self._store = store
        self._shelf = shelf
        self._outlines = Outlines(store)

    def of_take(
        self,
        take_id: str,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> PassageProposal:
        """Say which passage a take is; the take itself is no witness.

        Raises
        ------
        PlainFailure
            Where the take is not there or cannot be read.
        """
        take = take_there(self._store, take_id)
        heard = self._outlines.of_take(take, should_stop)
        progress(0.2)
        return self._of(heard, take_id, part_of(progress, 0.2, 1.0), should_stop)

    def of_file(
        self,
        path: Path,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> PassageProposal:
        """Say which passage a recording is that need not be in the journal.

        Raises
        ------
        PlainFailure
            Where it cannot be read.
        """
        heard = outline_of_file(path, part_of(progress, 0.0, 0.3), should_stop)
        return self._of(heard, "", part_of(progress, 0.3, 1.0), should_stop)

    def _of(
        self, heard: "Outline", take_id: str, progress: Progress, should_stop: ShouldStop
    ) -> PassageProposal:
        from analysis.likeness import propose  # noqa: PLC0415 - numba, only when needed
        from analysis.stopping import Stopped as AnalysisStopped  # noqa: PLC0415

        passages = {passage.id: passage for passage in self._store.passages.list()}
        references = {}
        for number, passage in enumerate(passages.values()):
            stop_if(should_stop)
            references[passage.id] = self._references(passage, take_id, should_stop)
            progress(0.8 * (number + 1) / len(passages))
        with stopped_by(AnalysisStopped):
            found = propose(heard, references, should_stop=should_stop)
        progress(1.0)
        ranked = tuple(
            RankedPassage(passages[key], confidence)
            for key, confidence, _ in found.ranked[:MOST_RANKED]
            if confidence >= _TOLD_FROM
        )
        chosen = passages[found.key] if found.key is not None else None
        known = any(references.values())
        return PassageProposal(
            passage_id=found.key,
            confidence=found.confidence,
            sentence=_sentence(chosen, found.confidence, ranked, known=known),
            ranked=ranked,
        )

    def _references(
        self, passage: Passage, take_id: str, should_stop: ShouldStop
    ) -> "list[Outline]":
        """Give the latest takes of a passage and its score, as far as they can be read."""
        takes = [t for t in self._store.takes.list(passage_id=passage.id) if t.id != take_id]
        found = []
        for take in takes[-REFERENCES:]:
            try:
                found.append(self._outlines.of_take(take, should_stop))
            except PlainFailure:  # a recording that is gone is no witness
                continue
        try:
            score = self._shelf.of_passage(passage, should_stop)
        except PlainFailure:  # nor is a score that is gone
            score = None
        written = outline_of_score(score) if score is not None else None
        return found if written is None else [*found, written]


def _sentence(
    chosen: Passage | None,
    confidence: float,
    ranked: tuple[RankedPassage, ...],
    *,
    known: bool,
) -> str:
    share = f"{100 * confidence:.0f} %"
    if not known:
        return "No passage has a take or a score yet to tell this one by."
    if chosen is not None:
        return f"This sounds like '{passage_title(chosen)}' (confidence {share})."
    if ranked and ranked[0].confidence >= 1 / 3:
        nearest = passage_title(ranked[0].passage)
        return f"This may be '{nearest}', but not surely enough to say so."
    return f"This sounds like none of the passages (confidence {share})."
