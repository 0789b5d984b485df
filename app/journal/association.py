"""Whether two things go along with each other: Spearman's rank correlation.

C. Spearman, *American Journal of Psychology* 15 (1904) 72-101, cited from memory. The
p value comes from 1,999 seeded permutations, so few and tied values need no table. An
association says nothing about which of the two brings about the other.
"""

import math
import random
from collections.abc import Sequence
from dataclasses import dataclass

from app.journal.change_points import mean_ranks

FEWEST_PAIRS = 6
PERMUTATIONS = 1999
_SEED = 1904


@dataclass(frozen=True, slots=True)
class Association:
    """Spearman's coefficient, -1 to 1, and how often chance alone gives one as large."""

    coefficient: float
    p_value: float
    pairs: int


def associated(one: Sequence[float], other: Sequence[float]) -> Association | None:
    """Hold two series of pairs against each other.

    ``None`` for fewer than six pairs, or where one of the two never changes.

    Raises
    ------
    ValueError
        For series of different lengths.
    """
    if len(one) != len(other):
        msg = "an association is of pairs"
        raise ValueError(msg)
    if len(one) < FEWEST_PAIRS:
        return None
    first, second = _centred(mean_ranks(one)), _centred(mean_ranks(other))
    size = math.sqrt(_product(first, first) * _product(second, second))
    if size == 0:
        return None
    found = _product(first, second)
    chance = random.Random(_SEED)  # noqa: S311 - a reproducible permutation test
    as_large = 0
    for _ in range(PERMUTATIONS):
        chance.shuffle(second)
        as_large += abs(_product(first, second)) >= abs(found) - 1e-9
    return Association(found / size, (1 + as_large) / (1 + PERMUTATIONS), len(one))


def _centred(ranks: Sequence[float]) -> list[float]:
    middle = (len(ranks) + 1) / 2
    return [rank - middle for rank in ranks]


def _product(one: Sequence[float], other: Sequence[float]) -> float:
    return math.fsum(a * b for a, b in zip(one, other, strict=True))
