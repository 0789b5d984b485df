"""Rules for markers."""

import math
from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.journal.failures import PlainFailure
from app.journal.kinds import Author, MarkerState
from app.journal.markers import SLACK_S, changed, checked, next_states
from app.journal.records import Marker

NOW = datetime(2026, 3, 1, 19, 5, tzinfo=UTC)
MARKER = Marker(
    id="0" * 32,
    take_id="1" * 32,
    start_s=1.0,
    end_s=None,
    category="intonation",
    weight=2,
    text="third finger low",
    author=Author.SELF,
    state=MarkerState.TO_WORK_ON,
    created_at=NOW,
    changed_at=NOW,
)


def test_a_good_marker_stays_as_it_is() -> None:
    assert checked(MARKER, 10.0) == MARKER


@pytest.mark.parametrize("weight", [0, 4, -1, 100])
def test_weight_is_one_to_three(weight: int) -> None:
    with pytest.raises(PlainFailure, match="weighs 1"):
        checked(replace(MARKER, weight=weight), 10.0)


@pytest.mark.parametrize("category", ["", "  ", "\t\n"])
def test_category_is_not_empty(category: str) -> None:
    with pytest.raises(PlainFailure, match="category"):
        checked(replace(MARKER, category=category), 10.0)


def test_spaces_around_a_category_go() -> None:
    assert checked(replace(MARKER, category="  string   crossing "), 10.0).category == (
        "string crossing"
    )


@pytest.mark.parametrize("start_s", [-0.1, 10.1, math.nan, math.inf, -math.inf])
def test_position_lies_inside_the_take(start_s: float) -> None:
    with pytest.raises(PlainFailure, match="outside the take"):
        checked(replace(MARKER, start_s=start_s), 10.0)


@pytest.mark.parametrize("end_s", [1.0, 0.5])
def test_a_span_ends_after_its_start(end_s: float) -> None:
    with pytest.raises(PlainFailure, match="end"):
        checked(replace(MARKER, end_s=end_s), 10.0)


def test_a_rounded_position_is_drawn_to_the_edge() -> None:
    kept = checked(replace(MARKER, start_s=-0.01, end_s=10.04), 10.0)
    assert (kept.start_s, kept.end_s) == (0.0, 10.0)


@given(
    st.floats(allow_nan=True, allow_infinity=True),
    st.none() | st.floats(allow_nan=True, allow_infinity=True),
    st.integers(-5, 8),
    st.text(max_size=8),
    st.floats(0, 1000),
)
def test_what_is_kept_obeys_the_rules(
    start_s: float, end_s: float | None, weight: int, category: str, duration_s: float
) -> None:
    marker = replace(MARKER, start_s=start_s, end_s=end_s, weight=weight, category=category)
    try:
        kept = checked(marker, duration_s)
    except PlainFailure:
        return
    assert kept.weight in (1, 2, 3)
    assert kept.category.strip()
    assert 0 <= kept.start_s <= duration_s
    assert abs(kept.start_s - start_s) <= SLACK_S + 1e-9
    assert kept.end_s is None or kept.start_s < kept.end_s <= duration_s
    assert checked(kept, duration_s) == kept


@given(st.sampled_from(MarkerState), st.sampled_from(MarkerState))
def test_every_change_of_state_can_be_taken_back(before: MarkerState, after: MarkerState) -> None:
    assert (after in next_states(before)) == (before in next_states(after))
    assert before not in next_states(before)


def test_only_what_was_settled_can_return() -> None:
    with pytest.raises(PlainFailure, match="cannot become returned") as told:
        changed(MARKER, replace(MARKER, state=MarkerState.RETURNED), 10.0, NOW)
    assert told.value.next_step == "It can become settled."


def test_a_problem_goes_its_way() -> None:
    marker = MARKER
    way = (MarkerState.SETTLED, MarkerState.RETURNED, MarkerState.SETTLED, MarkerState.TO_WORK_ON)
    for minutes, state in enumerate(way, start=1):
        now = NOW + timedelta(minutes=minutes)
        marker = changed(marker, replace(marker, state=state), 10.0, now)
        assert (marker.state, marker.changed_at, marker.created_at) == (state, now, NOW)


def test_a_change_is_never_older_than_its_marker() -> None:
    earlier = NOW - timedelta(days=1)  # the clock of the machine was set back
    assert changed(MARKER, replace(MARKER, text="flat"), 10.0, earlier).changed_at == NOW


@pytest.mark.parametrize("field", ["id", "take_id"])
def test_a_marker_keeps_its_id_and_its_take(field: str) -> None:
    with pytest.raises(ValueError, match="keeps its id"):
        changed(MARKER, replace(MARKER, **{field: "2" * 32}), 10.0, NOW)
