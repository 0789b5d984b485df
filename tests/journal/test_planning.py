"""The next practice, on seven written histories: the order, the reasons, the time."""

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.journal.assignments import Assignment, Occasion, OccasionKind, progress
from app.journal.failures import PlainFailure
from app.journal.kinds import Author, MarkerState
from app.journal.planning import OpenAssignment, PassageFacts, Worsening, gap_days, proposed
from app.journal.plans import (
    PlanLine,
    PracticePlan,
    ReasonKind,
    breaks_for,
    breaks_within,
    in_order,
    ticked,
    with_line,
    without_line,
)
from app.journal.records import Marker

NOW = datetime(2026, 3, 14, 9, tzinfo=UTC)
TODAY = NOW.date()


def ago(*days: int) -> tuple[date, ...]:
    return tuple(TODAY - timedelta(days=n) for n in sorted(days, reverse=True))


def marker(name: str, weight: int = 2, author: Author = Author.SELF, text: str = "") -> Marker:
    return Marker(
        name, "take", 1.0, None, "shift", weight, text, author, MarkerState.TO_WORK_ON, NOW, NOW
    )


def passage(name: str, *days: int, **more: object) -> PassageFacts:
    facts = PassageFacts(name, name.title(), ago(*days), f"take of {name}")
    return replace(facts, **more)  # type: ignore[arg-type]


def assigned(
    name: str, due_in: int, *, goal: str = "", minutes: int | None = None, done: float = 0.0,
    passage_id: str | None = None, item_id: str | None = None,
) -> OpenAssignment:  # fmt: skip
    made = Assignment(
        name, TODAY - timedelta(days=3), TODAY + timedelta(days=due_in), goal, NOW,
        minutes=minutes, passage_id=passage_id, item_id=item_id,
    )  # fmt: skip
    found = progress(made, {TODAY - timedelta(days=1): done}, {}, TODAY)
    return OpenAssignment(made, found, passage_id or item_id or goal)


def occasion(in_days: int, *passage_ids: str, name: str = "") -> Occasion:
    day = TODAY + timedelta(days=in_days)
    return Occasion(f"in {in_days}", day, OccasionKind.AUDITION, NOW, name, passage_ids)


def plan(minutes: int, passages: list[PassageFacts], **more: object) -> PracticePlan:
    made = proposed(minutes, TODAY, passages=passages, made_at=NOW, **more)  # type: ignore[arg-type]
    assert made.minutes_planned <= minutes
    assert all(line.minutes >= 1 for line in made.lines)
    return made


def told(made: PracticePlan) -> list[tuple[str, int, ReasonKind, str]]:
    return [
        (line.id, line.minutes, line.reasons[0].kind, line.reasons[0].record_id)
        for line in made.lines
    ]


def test_history_1_a_few_weeks_of_one_study_with_open_markers() -> None:
    """Three passages: a weighty teacher's marker, two light own ones, nothing open."""
    made = plan(
        45,
        [
            passage("coda", 1, 2, open_markers=(marker("m1", 1), marker("m2", 1))),
            passage("opening", 1, 2, open_markers=(marker("m3", 3, Author.TEACHER, "lands low"),)),
            passage("middle", 1, 2),
        ],
    )
    assert told(made) == [
        ("opening", 10, ReasonKind.MARKER, "m3"),
        ("coda", 15, ReasonKind.MARKER, "m2"),
    ]
    assert made.lines[0].reasons[0].sentence == "To work on: shift 'lands low', weight 3."


def test_history_2_back_after_three_weeks_away() -> None:
    """Nothing open: what was left longest against its own gap comes first; short visits."""
    made = plan(
        60,
        [
            passage("a", 21, 22),  # gap of 2 days
            passage("b", 22, 30),  # gap of 16 days
            passage("c", 21, 41),  # gap of 30 days: not due yet
        ],
    )
    assert told(made) == [
        ("a", 5, ReasonKind.REVISIT, "take of a"),
        ("b", 5, ReasonKind.REVISIT, "take of b"),
    ]
    assert made.lines[0].reasons[0].sentence == "Worth a visit: last practised 21 days ago."


def test_history_3_an_audition_in_ten_days() -> None:
    """The passages of the audition come round every 1 or 2 days, the others give way."""
    made = plan(
        30,
        [
            passage("excerpt one", 2, 3),
            passage("excerpt two", 1, 2),
            passage("study", 4, 5),
        ],
        occasions=[occasion(10, "excerpt one", "excerpt two", name="open seat")],
    )
    assert told(made) == [
        ("excerpt one", 10, ReasonKind.OCCASION, "in 10"),
        ("study", 5, ReasonKind.REVISIT, "take of study"),
    ]
    assert made.lines[0].reasons[0].sentence == "open seat in 10 days; last practised 2 days ago."
    soon = plan(
        30,
        [passage("excerpt one", 1, 2), passage("excerpt two", 1, 2)],
        occasions=[occasion(2, "excerpt one", "excerpt two")],
    )
    assert [line.id for line in soon.lines] == ["excerpt one", "excerpt two"]


def test_history_4_the_week_before_a_lesson() -> None:
    """Two assignments on passages, one on scales; the one due tomorrow comes first."""
    made = plan(
        60,
        [passage("opening", 1, 2), passage("coda", 1, 2, open_markers=(marker("m", 2),))],
        assignments=[
            assigned("week", 6, minutes=60, done=20.0, passage_id="opening"),
            assigned("scales", 6, minutes=90, item_id="d major"),
            assigned("tomorrow", 1, goal="coda from memory", passage_id="coda"),
        ],
    )
    assert told(made) == [
        ("coda", 15, ReasonKind.ASSIGNMENT, "tomorrow"),
        ("opening", 7, ReasonKind.ASSIGNMENT, "week"),
        ("d major", 15, ReasonKind.ASSIGNMENT, "scales"),
    ]
    assert [reason.kind for reason in made.lines[0].reasons] == [
        ReasonKind.ASSIGNMENT, ReasonKind.MARKER,
    ]  # fmt: skip
    assert made.lines[1].reasons[0].sentence == "Assigned: 20 of 60 min done, due in 6 days."
    assert made.lines[0].reasons[0].sentence == "Coda from memory, due tomorrow."


def test_history_5_a_passage_that_gets_worse() -> None:
    """A measured worsening outweighs a light marker and yields to a heavy one."""
    worse = Worsening("take 9", "Mean deviation +0.8 cents a week over 12 takes.")
    made = plan(
        60,
        [
            passage("light", 1, 2, open_markers=(marker("m1", 1),)),
            passage("slipping", 1, 2, worse=worse),
            passage("heavy", 1, 2, open_markers=(marker("m2", 3), marker("m3", 2), marker("m4"))),
        ],
    )
    assert told(made) == [
        ("heavy", 20, ReasonKind.MARKER, "m2"),
        ("slipping", 15, ReasonKind.WORSE, "take 9"),
        ("light", 10, ReasonKind.MARKER, "m1"),
    ]


def test_history_6_a_no_retake_day() -> None:
    """Today's one take is prepared first; once it is recorded the passage steps back."""
    facts = [
        passage("daily", 1, 2, no_retake=True),
        passage("opening", 1, 2, open_markers=(marker("m", 3, Author.TEACHER),)),
    ]
    assert told(plan(20, facts)) == [
        ("daily", 10, ReasonKind.NO_RETAKE, "daily"),
        ("opening", 10, ReasonKind.MARKER, "m"),
    ]
    facts[0] = replace(facts[0], recorded_today=True, practised_on=ago(1, 0))
    assert told(plan(20, facts)) == [("opening", 10, ReasonKind.MARKER, "m")]


def test_history_7_ten_minutes_before_work() -> None:
    """Much to do and little time: the weightiest line only, cut to what there is."""
    facts = [passage(str(n), 1, 2, open_markers=(marker(f"m{n}", 2),) * n) for n in (1, 2, 3)]
    assert told(plan(10, facts)) == [("3", 10, ReasonKind.MARKER, "m3")]
    assert told(plan(3, facts)) == [("3", 3, ReasonKind.MARKER, "m3")]
    ninety = plan(90, facts)
    assert (ninety.break_minutes, ninety.minutes_planned) == (5, 50)


def test_an_empty_journal_has_an_empty_plan() -> None:
    assert plan(30, []).lines == ()
    assert plan(30, [passage("new")]).lines == ()  # nothing says that it is wanted
    with pytest.raises(PlainFailure):
        plan(0, [])


def test_gaps_grow_and_shrink() -> None:
    assert gap_days(passage("p", 5), TODAY) == 2
    assert gap_days(passage("p", 9, 5), TODAY) == 8
    assert gap_days(passage("p", 60, 5), TODAY) == 30
    assert gap_days(passage("p", 60, 5, open_markers=(marker("m"),)), TODAY) == 7
    assert gap_days(passage("p", 60, 5), TODAY, occasion(20, "p")) == 3
    assert gap_days(passage("p", 60, 5), TODAY, occasion(2, "p")) == 1


def test_breaks_after_every_twenty_five_minutes() -> None:
    # '5 after 25': a handbook's advice on breaks (The Musician's Way, author's page).
    assert [breaks_within(n) for n in (1, 30, 31, 60, 61, 90)] == [0, 0, 5, 5, 10, 10]
    assert [breaks_for(n) for n in (0, 25, 26, 50, 51)] == [0, 0, 5, 5, 10]


histories = st.lists(
    st.builds(
        PassageFacts,
        passage_id=st.uuids().map(lambda u: u.hex),
        title=st.text(max_size=5),
        practised_on=st.lists(st.integers(0, 400).map(lambda n: ago(n)[0]), max_size=5).map(tuple),
        last_take_id=st.none() | st.just("t" * 32),
        open_markers=st.lists(
            st.builds(marker, st.uuids().map(str), st.integers(1, 3), st.sampled_from(Author)),
            max_size=3,
        ).map(tuple),
        worse=st.none() | st.just(Worsening("w" * 32, "worse")),
        no_retake=st.booleans(),
        recorded_today=st.booleans(),
    ),
    max_size=8,
    unique_by=lambda facts: facts.passage_id,
)


@given(histories, st.integers(1, 300), st.data())
def test_every_plan_fits_and_cites_records_that_exist(
    passages: list[PassageFacts], minutes: int, data: st.DataObject
) -> None:
    ids = [facts.passage_id for facts in passages] or ["nothing"]
    chosen = st.sampled_from(ids)
    assignments = [
        assigned(f"a{n}", n, minutes=data.draw(st.none() | st.integers(1, 300)), passage_id=one)
        for n, one in enumerate(data.draw(st.lists(chosen, max_size=3)))
    ]
    occasions = [occasion(n, *data.draw(st.sets(chosen, max_size=3))) for n in (-1, 0, 5, 40)]
    made = plan(minutes, passages, assignments=assignments, occasions=occasions)
    records = {
        *ids,
        *(f.last_take_id for f in passages),
        *(f.worse.take_id for f in passages if f.worse),
        *(m.id for f in passages for m in f.open_markers),
        *(a.assignment.id for a in assignments),
        *(o.id for o in occasions if o.day >= TODAY),
    }
    for line in made.lines:
        assert line.reasons
        assert {reason.record_id for reason in line.reasons} <= records
        assert all(reason.sentence for reason in line.reasons)
    assert len({line.id for line in made.lines}) == len(made.lines)


def test_editing_a_plan() -> None:
    lines = tuple(PlanLine(name, name, 10) for name in "abc")
    made = PracticePlan(TODAY, 40, NOW, lines, 5)
    assert [line.id for line in in_order(made, ["c", "a"]).lines] == ["c", "a", "b"]
    assert ticked(made, "b", NOW).lines[1].done_at == NOW
    assert ticked(ticked(made, "b", NOW), "b", None) == made
    assert without_line(made, "b").minutes_planned == 25
    longer = with_line(made, replace(lines[0], minutes=15))
    assert longer.minutes_planned == 40
    with pytest.raises(PlainFailure, match="41 minutes"):
        with_line(longer, replace(lines[1], minutes=11))
    assert with_line(made, PlanLine("d", "Sight-reading", 5)).lines[-1].id == "d"
    with pytest.raises(PlainFailure):
        with_line(made, PlanLine("d", " ", 5))
