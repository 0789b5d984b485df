"""Blind listening: two takes in a drawn order, dates hidden, one question.

After enough answers an exact binomial test says whether the ear and the measurements
agree; before that nothing is said at all.

References
----------
C. J. Clopper and E. S. Pearson, Biometrika 26 (1934) 404 (exact limits of a binomial).
"""

import math
import random
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

FEWEST_ANSWERS = 12
"""Fewer comparable answers say nothing: even 9 of 11 alike happen by chance alone."""

ERROR_RATE = 0.05


class Question(StrEnum):
    """What is asked about two takes."""

    IN_TUNE = "in_tune"
    STEADIER = "steadier"
    MUSICAL = "musical"


class Choice(StrEnum):
    """The answer, by the order in which the takes were heard."""

    FIRST = "first"
    SECOND = "second"
    NO_DIFFERENCE = "no_difference"


@dataclass(frozen=True, slots=True)
class BlindTrial:
    """One question about two takes in the order in which they are heard.

    ``seed`` drew the order; ``choice`` is ``None`` until it is answered.
    """

    id: str
    passage_id: str
    question: Question
    first_take_id: str
    second_take_id: str
    seed: int
    asked_at: datetime
    choice: Choice | None = None
    answered_at: datetime | None = None

    @property
    def chosen_take_id(self) -> str | None:
        """The take that was heard as the better one, if any."""
        if self.choice is Choice.FIRST:
            return self.first_take_id
        return self.second_take_id if self.choice is Choice.SECOND else None


class Agreement(StrEnum):
    """Whether the ear and the measurements agree."""

    TOO_FEW_ANSWERS = "too few answers"
    AGREE = "they agree"
    DISAGREE = "they disagree"
    NOT_CLEAR = "not clear"


@dataclass(frozen=True, slots=True)
class EarAgainstMeasure:
    """What the answers to one question say.

    ``alike`` of ``comparable`` answers chose the take that measured better; ``chance``
    is the two-sided probability of at least so lopsided a result by guessing. Both
    bounds are the exact 95 % interval of the share that agrees.
    """

    question: Question
    answered: int
    comparable: int
    alike: int
    chance: float | None
    share_low: float | None
    share_high: float | None
    word: Agreement


def drawn_pair(
    take_ids: Sequence[str], heard: Iterable[BlindTrial], seed: int
) -> tuple[str, str] | None:
    """Draw two takes and their order; pairs asked about before come last.

    The same seed on the same takes and trials draws the same pair. ``None`` with fewer
    than two takes.
    """
    chance = random.Random(seed)  # noqa: S311 - nothing secret hangs on it
    asked: dict[frozenset[str], int] = {}
    for trial in heard:
        pair = frozenset((trial.first_take_id, trial.second_take_id))
        asked[pair] = asked.get(pair, 0) + 1
    pairs = [(one, other) for place, one in enumerate(take_ids) for other in take_ids[place + 1 :]]
    if not pairs:
        return None
    fewest = min(asked.get(frozenset(pair), 0) for pair in pairs)
    one, other = chance.choice([p for p in pairs if asked.get(frozenset(p), 0) == fewest])
    return (one, other) if chance.random() < 1 / 2 else (other, one)


def agreement(question: Question, answered: int, agreements: Sequence[bool]) -> EarAgainstMeasure:
    """Judge whether answers and measurements agree more often than guessing would.

    Parameters
    ----------
    question : Question
    answered : int
        All answers to it, also those that cannot be compared.
    agreements : sequence of bool
        One for each answer that chose a take where the measurements told the two takes
        apart: whether it was the one that measured better.
    """
    count, alike = len(agreements), sum(agreements)
    if count < FEWEST_ANSWERS:
        few = Agreement.TOO_FEW_ANSWERS
        return EarAgainstMeasure(question, answered, count, alike, None, None, None, few)
    chance = two_sided_chance(alike, count)
    word = Agreement.NOT_CLEAR
    if chance <= ERROR_RATE:
        word = Agreement.AGREE if 2 * alike > count else Agreement.DISAGREE
    low, high = exact_interval(alike, count)
    return EarAgainstMeasure(question, answered, count, alike, chance, low, high, word)


def two_sided_chance(successes: int, count: int) -> float:
    """Probability under fair guessing of a count at least so far from the half."""
    fewer = min(successes, count - successes)
    tail = sum(math.comb(count, k) for k in range(fewer + 1))
    return float(min(1.0, 2 * tail / 2**count))


def exact_interval(successes: int, count: int) -> tuple[float, float]:
    """Clopper and Pearson's 95 % interval of a share."""
    tail = ERROR_RATE / 2
    low = _share_at(lambda p: _at_least(successes, count, p) < tail) if successes else 0.0
    high = (
        _share_at(lambda p: _at_least(successes + 1, count, p) < 1 - tail)
        if successes < count
        else 1.0
    )
    return low, high


def _at_least(successes: int, count: int, share: float) -> float:
    return sum(
        math.comb(count, k) * share**k * (1 - share) ** (count - k)
        for k in range(successes, count + 1)
    )


def _share_at(is_below: Callable[[float], bool]) -> float:
    """Bisect for the share up to which a condition holds."""
    low, high = 0.0, 1.0
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if is_below(middle) else (low, middle)
    return (low + high) / 2
