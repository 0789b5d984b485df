"""Which places the measurements propose as markers."""

from dataclasses import replace
from datetime import UTC, datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.journal.kinds import Author, MarkerState
from app.journal.records import Marker
from app.journal.suggestions import (
    COVERS_WITHIN_S,
    LONGEST_PLACE_S,
    Dismissal,
    MeasuredNote,
    SuggestionKind,
    TempoStretch,
    findings_of,
    is_covered,
    is_dismissed,
    mean_with_uncertainty,
    parts_of,
    touches,
)

NOW = datetime(2026, 3, 14, 19, 30, tzinfo=UTC)
PLAYED = (0.0, 100.0)


def note(start_s, name="F#5", cents=-18.0, uncertainty=4.0, *, is_out=True) -> MeasuredNote:
    return MeasuredNote(start_s, start_s + 0.5, name, cents, uncertainty, is_out)


def marker(start_s, end_s=None, **changes) -> Marker:
    made = Marker(
        "m1", "t1", start_s, end_s, "sound", 2, "", Author.SELF, MarkerState.TO_WORK_ON, NOW, NOW
    )
    return replace(made, **changes)


def dismissal(**changes) -> Dismissal:
    made = Dismissal("d1", "p1", "t1", SuggestionKind.DRAGS, "", 0.2, 0.3, NOW)
    return replace(made, **changes)


def test_notes_of_one_pitch_out_in_one_direction_make_one_suggestion() -> None:
    notes = [note(3.0), note(7.0, cents=-22.0), note(9.0, cents=-14.0), note(5.0, cents=20.0)]
    found = findings_of([*notes, note(12.0, cents=-1.0, is_out=False)], ())
    flat = next(one for one in found if one.kind is SuggestionKind.FLAT)
    assert flat.subject == "F#5"
    assert [start for start, _ in flat.places] == [3.0, 7.0, 9.0]
    assert flat.value == pytest.approx(-18.0)
    assert flat.of_count == 5
    assert flat.worst == (7.0, 7.5)
    assert {one.kind for one in found} == {SuggestionKind.FLAT, SuggestionKind.SHARP}
    assert len({one.key for one in found}) == len(found)


@given(
    st.lists(
        st.builds(
            note,
            st.floats(0, 60),
            st.sampled_from(["A4", "B4", "C5"]),
            st.floats(-60, 60),
            st.floats(0.1, 60),
            is_out=st.booleans(),
        )
    ),
    st.lists(
        st.builds(
            TempoStretch,
            st.floats(0, 30),
            st.floats(31, 60),
            st.floats(-20, 20),
            st.one_of(st.none(), st.floats(0, 20)),
        )
    ),
)
def test_nothing_is_suggested_inside_its_uncertainty(notes, stretches) -> None:
    for finding in findings_of(notes, stretches):
        for size, uncertainty in zip(finding.sizes, finding.uncertainties, strict=True):
            assert abs(size) > (uncertainty or 0.0)
        assert abs(finding.value) > (finding.uncertainty or 0.0)
    clearness = [one.clearness for one in findings_of(notes, stretches)]
    assert clearness == sorted(clearness, reverse=True)


def test_a_note_that_a_plausible_target_explains_is_not_suggested() -> None:
    assert findings_of([note(1.0, is_out=False)], ()) == ()


def test_the_same_error_three_times_comes_before_once() -> None:
    once = note(1.0, "G4", cents=-18.0)
    found = findings_of([once, *(note(at, "A4", cents=-18.0) for at in (2.0, 3.0, 4.0))], ())
    assert [one.subject for one in found] == ["A4", "G4"]


def test_uncertainty_of_a_mean_against_a_worked_example() -> None:
    # JCGM 100:2008, 5.2.2, example: ten resistors of 1000 ohm, each uncertain by 100 milliohm
    # from one common standard, in series: 10 kilohm uncertain by 1 ohm, the linear sum (from
    # memory). Their mean is a tenth of it.
    mean, width = mean_with_uncertainty([1000.0] * 10, [0.1] * 10)
    assert (mean, width) == (pytest.approx(1000.0), pytest.approx(0.1))
    mean, width = mean_with_uncertainty([-22.0, -18.0, -14.0], [3.0, 4.0, 5.0])
    assert (mean, width) == (pytest.approx(-18.0), pytest.approx(4.0))
    assert mean_with_uncertainty([-18.0], [4.0]) == (-18.0, 4.0)
    with pytest.raises(ValueError, match="needs a value"):
        mean_with_uncertainty([], [])


def test_a_marker_at_any_place_of_a_finding_covers_it() -> None:
    finding = findings_of([note(3.0), note(7.0)], ())[0]
    assert is_covered(finding, [marker(7.2)])
    assert is_covered(finding, [marker(3.0 - COVERS_WITHIN_S + 0.01)])
    assert not is_covered(finding, [marker(3.0 - COVERS_WITHIN_S - 0.01)])
    assert is_covered(finding, [marker(5.0, 6.9)])
    assert not is_covered(finding, [marker(5.0)])
    assert not is_covered(finding, [])


def test_a_remark_about_the_whole_take_covers_no_place_in_it() -> None:
    assert touches(marker(0.0, LONGEST_PLACE_S), (3.0, 3.5))
    assert not touches(marker(0.0, LONGEST_PLACE_S + 0.1), (3.0, 3.5))


def test_a_dismissed_pitch_stays_dismissed_all_over_its_passage() -> None:
    finding = findings_of([note(80.0)], ())[0]
    flat = dismissal(kind=SuggestionKind.FLAT, subject="F#5")
    here = {"take_id": "t2", "passage_id": "p1", "played": PLAYED}
    assert is_dismissed(finding, [flat], **here)
    assert not is_dismissed(finding, [replace(flat, kind=SuggestionKind.SHARP)], **here)
    assert not is_dismissed(finding, [replace(flat, subject="F#4")], **here)
    assert not is_dismissed(finding, [flat], take_id="t2", passage_id="p2", played=PLAYED)


def test_a_dismissed_stretch_is_known_again_at_another_tempo() -> None:
    slow = findings_of([], [TempoStretch(20.0, 30.0, -8.0, 1.0)])[0]
    fast = findings_of([], [TempoStretch(10.2, 15.1, -8.0, 1.0)])[0]
    elsewhere = findings_of([], [TempoStretch(60.0, 70.0, -8.0, 1.0)])[0]
    first, last = parts_of(slow.worst, PLAYED)
    put_aside = [dismissal(start_part=first, end_part=last)]
    assert is_dismissed(fast, put_aside, take_id="t2", passage_id="p1", played=(0.0, 50.0))
    assert not is_dismissed(elsewhere, put_aside, take_id="t2", passage_id="p1", played=PLAYED)


def test_without_a_passage_a_dismissal_holds_for_its_take_alone() -> None:
    drags = findings_of([], [TempoStretch(20.0, 30.0, -8.0, 1.0)])[0]
    put_aside = [dismissal(passage_id=None)]
    assert is_dismissed(drags, put_aside, take_id="t1", passage_id=None, played=PLAYED)
    assert not is_dismissed(drags, put_aside, take_id="t2", passage_id=None, played=PLAYED)
