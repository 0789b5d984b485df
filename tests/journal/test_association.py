"""Rank correlation against a reference library, and what is not said."""

import random

import pytest
from scipy import stats

from app.journal.association import associated


def test_against_a_reference_library() -> None:
    chance = random.Random(4)
    for _ in range(20):
        count = chance.randint(6, 30)
        one = [float(chance.randint(0, 9)) for _ in range(count)]
        other = [a + chance.gauss(0, 4) for a in one]
        found = associated(one, other)
        expected = stats.spearmanr(one, other)  # scipy
        assert found is not None
        assert found.coefficient == pytest.approx(expected.statistic)
        if count >= 12:  # scipy's p is a large-sample one
            assert found.p_value == pytest.approx(expected.pvalue, abs=0.04)


def test_chance_alone_shows_one_in_twenty() -> None:
    chance = random.Random(6)
    shown = 0
    for _ in range(200):
        one, other = ([chance.random() for _ in range(8)] for _ in range(2))
        found = associated(one, other)
        assert found is not None
        shown += found.p_value <= 0.05
    assert shown <= 18  # 5 % of 200 and two and a half standard deviations


def test_nothing_is_said_of_too_few_or_of_what_never_changes() -> None:
    assert associated([1, 2, 3, 4, 5], [1, 2, 3, 4, 5]) is None
    assert associated([1.0] * 8, [float(n) for n in range(8)]) is None
    with pytest.raises(ValueError, match="pairs"):
        associated([1], [1, 2])
