"""Where ear and measurement agree."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from app.journal.first_listen import agreement, can_mean, measured_places, placed_by_ear
from app.journal.kinds import Author, MarkerState
from app.journal.records import Marker
from app.journal.suggestions import (
    COVERS_WITHIN_S,
    MeasuredNote,
    SuggestionKind,
    TempoStretch,
    findings_of,
)

NOW = datetime(2026, 3, 14, 19, 30, tzinfo=UTC)
FINDINGS = findings_of(
    [
        MeasuredNote(3.0, 3.5, "F#5", -18.0, 4.0, is_out=True),
        MeasuredNote(9.0, 9.5, "F#5", -20.0, 4.0, is_out=True),
    ],
    [TempoStretch(12.3, 14.1, -6.0, 1.0)],
)
PLACES = measured_places(FINDINGS)


def marker(number: int, start_s: float, category="intonation", **changes) -> Marker:
    made = Marker(
        f"m{number}", "t1", start_s, None, category, 2, "", Author.SELF, MarkerState.TO_WORK_ON,
        NOW, NOW,
    )  # fmt: skip
    return replace(made, **changes)


def test_hits_missed_and_heard_only_are_told_apart() -> None:
    heard = marker(1, 3.2), marker(2, 13.0, "rhythm"), marker(3, 6.0)
    found = agreement(PLACES, heard)
    assert [hit.place.start_s for hit in found.hits] == [3.0, 12.3]
    assert [hit.markers for hit in found.hits] == [(heard[0],), (heard[1],)]
    assert [place.start_s for place in found.missed] == [9.0]
    assert found.heard_only == (heard[2],)


@pytest.mark.parametrize(("offset_s", "hits"), [(-0.01, 1), (0.01, 0)])
def test_a_marker_agrees_within_three_quarters_of_a_second(offset_s: float, hits: int) -> None:
    found = agreement(PLACES[:1], [marker(1, 3.5 + COVERS_WITHIN_S + offset_s)])
    assert len(found.hits) == hits


def test_a_span_may_speak_of_several_notes() -> None:
    found = agreement(PLACES, [marker(1, 2.0, end_s=10.0)])
    assert len(found.hits) == 2
    assert found.heard_only == ()


def test_the_right_place_in_another_sense_is_no_hit() -> None:
    found = agreement(PLACES, [marker(1, 3.2, "sound"), marker(2, 9.2, "rhythm")])
    assert found.hits == ()
    assert len(found.missed) == 3
    assert len(found.heard_only) == 2


@pytest.mark.parametrize(
    ("category", "pitch", "tempo"),
    [
        ("intonation", True, False), ("shift", True, False), ("rhythm", False, True),
        ("sound", False, False), ("memory", False, False), ("other", True, True),
        ("left hand", True, True), ("Intonation ", True, False),
    ],
)  # fmt: skip
def test_what_a_category_can_mean(category: str, pitch: bool, tempo: bool) -> None:
    assert can_mean(category, SuggestionKind.FLAT) is pitch
    assert can_mean(category, SuggestionKind.DRAGS) is tempo


def test_only_own_markers_from_before_the_look_count() -> None:
    minute = timedelta(minutes=1)
    early = marker(1, 1.0, created_at=NOW - minute)
    good = marker(2, 1.0, created_at=NOW + minute)
    late = marker(3, 1.0, created_at=NOW + 3 * minute)
    of_teacher = marker(4, 1.0, created_at=NOW + minute, author=Author.TEACHER)
    every = (early, good, late, of_teacher)
    assert placed_by_ear(every, NOW, NOW + 2 * minute) == (good,)
    assert placed_by_ear(every, NOW) == (good, late)


def test_without_anything_measured_every_marker_was_heard_only() -> None:
    found = agreement((), [marker(2, 5.0), marker(1, 3.0)])
    assert (found.hits, found.missed) == ((), ())
    assert [one.start_s for one in found.heard_only] == [3.0, 5.0]
