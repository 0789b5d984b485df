"""The player's own list of categories."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.journal.categories import added, moved, renamed, retired
from app.journal.failures import PlainFailure

NAMES = ("intonation", "rhythm", "sound")


def test_a_category_is_added_at_the_end():
    assert added(NAMES, "  bow   hold ") == (*NAMES, "bow hold")


@pytest.mark.parametrize("name", ["", "   ", "RHYTHM", "x" * 41])
def test_what_cannot_be_a_category_is_refused(name):
    with pytest.raises(PlainFailure):
        added(NAMES, name)


def test_a_category_is_renamed_in_its_place():
    assert renamed(NAMES, 1, "pulse") == ("intonation", "pulse", "sound")
    assert renamed(NAMES, 1, "Rhythm") == ("intonation", "Rhythm", "sound")
    with pytest.raises(PlainFailure):
        renamed(NAMES, 1, "sound")
    with pytest.raises(IndexError):
        renamed(NAMES, 3, "memory")


@given(st.integers(0, 2), st.integers(-5, 5))
def test_moving_keeps_every_name_and_the_order_of_the_others(at, by):
    after = moved(NAMES, at, by)
    assert sorted(after) == sorted(NAMES)
    assert after.index(NAMES[at]) == min(max(at + by, 0), 2)
    assert [n for n in after if n != NAMES[at]] == [n for n in NAMES if n != NAMES[at]]


def test_the_last_category_stays():
    assert retired(NAMES, 1) == ("intonation", "sound")
    with pytest.raises(PlainFailure):
        retired(("other",), 0)
