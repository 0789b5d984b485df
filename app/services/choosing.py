"""How takes came to be kept, and what they were recorded with: said beside comparisons."""

from collections.abc import Iterable, Mapping

from app.journal.input_levels import differences, trace_of
from app.journal.no_retake import ChosenAs, chosen_as
from app.journal.records import Take
from app.services.wording import counted
from app.store.store import Store

_DYNAMICS = "Dynamics are then not comparable."


class Choosing:
    """Tells takes made without retakes from takes chosen out of several."""

    def __init__(self, store: Store) -> None:
        self._store = store

    def of_takes(self, takes: Iterable[Take]) -> Mapping[str, ChosenAs | None]:
        """Tell how each take came to be kept; ``None`` where nobody knows."""
        takes = tuple(takes)
        attempts = self._store.attempts.by_passage_and_day({take.practice_day for take in takes})
        everybody = self._store.takes.of_ids(a.id for some in attempts.values() for a in some)
        kept = frozenset(t.id for t in everybody.values() if t.deleted_at is None)
        return {
            take.id: chosen_as(take, attempts.get((take.passage_id, take.practice_day), ()), kept)
            for take in takes
        }

    def between(self, a: Take, b: Take) -> tuple[str, ...]:
        """Say what choosing and recording may have done to a comparison of two takes."""
        words = self.of_takes((a, b))
        found = [
            sentence
            for take, name in ((a, "a"), (b, "b"))
            if (sentence := self._sentence(take, name, words[take.id]))
        ]
        kinds = {words[a.id], words[b.id]}
        if ChosenAs.NO_RETAKE in kinds and ChosenAs.BEST_OF_SEVERAL in kinds:
            found.append("Choosing alone can make such a take better than a day's only one.")
        inputs = differences(trace_of(a), trace_of(b))
        return (*found, *inputs, _DYNAMICS) if inputs else tuple(found)

    def in_trend(self, takes: Iterable[Take]) -> str:
        """Say how the takes of a trend were chosen; empty where there is nothing to say."""
        return words_in_trend(self.of_takes(takes).values())

    def _sentence(self, take: Take, side: str, word: ChosenAs | None) -> str:
        name = side.upper()
        if word is ChosenAs.BEST_OF_SEVERAL:
            attempts = self._store.attempts.list(
                passage_id=take.passage_id, first_day=take.practice_day, last_day=take.practice_day
            )
            return f"Take {name} was chosen as the best of several ({len(attempts)} attempts)."
        if word is ChosenAs.NO_RETAKE:
            line = f"Take {name} was made without retakes"
            if take.retake_reason:
                line += f", once more after the device had failed ({take.retake_reason})"
            return f"{line}."
        return ""


def words_in_trend(chosen: Iterable[ChosenAs | None]) -> str:
    """Say how takes of which this is known were chosen; empty where nothing is to be said."""
    words = list(chosen)
    best = words.count(ChosenAs.BEST_OF_SEVERAL)
    if not best:
        return ""
    line = f"{counted(best, 'take')} of {len(words)} chosen as the best of several"
    without = words.count(ChosenAs.NO_RETAKE)
    if without:
        line += f", {without} made without retakes"
    return f"{line}: choosing can look like getting better."
