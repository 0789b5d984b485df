"""Merging journals: nothing doubled, nothing lost, whatever the order and however often."""

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta

from hypothesis import given, settings
from hypothesis import strategies as st

from app.journal.assignments import Assignment, EarlierHours
from app.journal.blocks import Block, Item
from app.journal.contents import Contents
from app.journal.kinds import AimMet, Author, ItemKind, MarkerState, MinutesSource, Origin
from app.journal.merging import merged, union
from app.journal.promises import Promise, PromiseRule, Stretch
from app.journal.records import Marker, Passage, PlayingSettings, RestDay, Session, Take
from app.journal.sidecar import DayCard, JournalCard

NOW = datetime(2026, 3, 1, 19, 0, tzinfo=UTC)
DAY = NOW.date()


def passage(number: int) -> Passage:
    return Passage(f"p{number}", "Study", f"part {number}", "1-8", PlayingSettings(), NOW)


def take(number: int, **changes: object) -> Take:
    day = DAY + timedelta(days=number // 3)
    made = Take(
        id=f"t{number}",
        session_id=f"s{number // 3}",
        passage_id=f"p{number % 2}",
        practice_day=day,
        number=1 + number % 3,
        recorded_at=NOW,
        entered_at=NOW,
        origin=Origin.RECORDED,
        file=f"2026/{day}/{number}.flac",
        sha256=f"{number:064x}",
        duration_s=10.0,
        sample_rate_hz=48_000,
        channels=1,
        settings=PlayingSettings(),
    )
    return replace(made, **changes)  # type: ignore[arg-type]


def marker(number: int, take_id: str, minute: int = 0, text: str = "") -> Marker:
    return Marker(
        id=f"m{number}",
        take_id=take_id,
        start_s=1.0,
        end_s=None,
        category="rhythm",
        weight=2,
        text=text,
        author=Author.SELF,
        state=MarkerState.TO_WORK_ON,
        created_at=NOW,
        changed_at=NOW + timedelta(minutes=minute),
    )


def session(number: int, minutes: float | None, source: MinutesSource | None) -> Session:
    return Session(f"s{number}", DAY + timedelta(days=number), NOW, minutes, source)


minute_values = st.sampled_from(
    [
        (None, None),
        (20.0, MinutesSource.TYPED),
        (35.0, MinutesSource.CLOCK),
        (50.0, MinutesSource.CLOCK),
        (90.0, MinutesSource.SOUNDING),
    ]
)


@st.composite
def journals(draw: st.DrawFn) -> Contents:
    """Give a part of one journal as one of its copies may have it."""
    numbers = draw(st.sets(st.integers(0, 7)))
    takes = {f"t{n}": take(n) for n in numbers}
    markers = {
        key: tuple(
            marker(n, key, draw(st.integers(0, 3)), draw(st.sampled_from(["", "low", "late"])))
            for n in draw(st.sets(st.integers(0, 3)))
            for n in (10 * int(key[1:]) + n,)
        )
        for key in takes
    }
    sessions = {f"s{n}": session(n, *draw(minute_values)) for n in {n // 3 for n in numbers}}
    days = {
        s.practice_day: DayCard(
            NOW,
            s.practice_day,
            (s,),
            draw(st.sampled_from([None, RestDay(s.practice_day, True)])),
            tuple(
                Block(f"b{s.id}{n}", s.id, "i0", NOW, NOW + timedelta(minutes=n))
                for n in draw(st.sets(st.integers(1, 3)))
            ),
        )
        for s in sessions.values()
    }
    set_for_the_week = tuple(
        Assignment(f"a{n}", DAY, DAY, "bow", NOW, done_on=draw(st.sampled_from([None, DAY])))
        for n in draw(st.sets(st.integers(0, 2)))
    )
    hours = draw(st.sampled_from([None, EarlierHours(10.0), EarlierHours(12.5, DAY)]))
    passages = {f"p{n}": passage(n) for n in {n % 2 for n in numbers}}
    card = JournalCard(
        NOW, tuple(passages.values()), assignments=set_for_the_week, earlier_hours=hours
    )
    items = {"i0": Item("i0", ItemKind.SCALE, "G major", NOW)}
    return Contents(takes, markers, passages, sessions, days, items, card)


def said(contents: Contents) -> dict[str, object]:
    """Give what is said, without the order in which it was met."""
    card = contents.journal
    return {
        "takes": contents.takes,
        "markers": {k: sorted(v, key=lambda m: m.id) for k, v in contents.markers.items() if v},
        "passages": contents.passages,
        "sessions": contents.sessions,
        "days": {
            day: (c.sessions, c.rest, sorted(c.blocks, key=lambda b: b.id))
            for day, c in contents.days.items()
        },
        "items": contents.items,
        "assignments": sorted(card.assignments, key=lambda a: a.id) if card else [],
        "hours": card.earlier_hours if card else None,
    }


@settings(deadline=None)
@given(journals(), journals())
def test_either_order_ends_in_the_same_place(a: Contents, b: Contents) -> None:
    assert said(union(a, b)) == said(union(b, a))


@settings(deadline=None)
@given(journals(), journals(), journals())
def test_three_copies_may_be_merged_in_any_grouping(a: Contents, b: Contents, c: Contents) -> None:
    assert said(union(union(a, b), c)) == said(union(a, union(b, c)))


@settings(deadline=None)
@given(journals(), journals())
def test_merging_again_changes_nothing(a: Contents, b: Contents) -> None:
    once = union(a, b)
    assert said(union(once, b)) == said(once)
    assert said(union(a, a)) == said(a)


@settings(deadline=None)
@given(journals(), journals())
def test_nothing_is_lost_and_nothing_is_there_twice(a: Contents, b: Contents) -> None:
    both = union(a, b)
    assert set(both.takes) == set(a.takes) | set(b.takes)
    for part in (a, b):
        for take_id, markers in part.markers.items():
            there = {m.id: m for m in both.markers[take_id]}
            assert len(there) == len(both.markers[take_id])
            assert all(there[m.id].changed_at >= m.changed_at for m in markers)
        for key, had in part.sessions.items():
            assert both.sessions[key].minutes is not None or had.minutes is None
        for day, card in part.days.items():
            blocks = {block.id for block in both.days[day].blocks}
            assert {block.id for block in card.blocks} <= blocks


def test_what_both_name_for_themselves_is_one_thing_and_keeps_our_id() -> None:
    ours = Contents({"t1": take(1)}, {"t1": ()}, {"p1": passage(1)}, journal=JournalCard(NOW))
    theirs = Contents(
        {"x1": replace(take(1), id="x1", passage_id="y1"), "x2": take(5, id="x2", passage_id="y1")},
        {"x1": (marker(3, "x1", text="late"),), "x2": ()},
        {"y1": replace(passage(1), id="y1", name="PART 1")},
        items={"z": Item("z", ItemKind.PASSAGE, "", NOW, passage_id="y1")},
        journal=JournalCard(NOW, promises=(promise("q"),)),
    )
    both = union(ours, theirs)
    assert set(both.passages) == {"p1"}
    assert set(both.takes) == {"t1", "x2"}
    assert both.takes["x2"].passage_id == "p1"
    assert [m.take_id for m in both.markers["t1"]] == ["t1"]
    assert both.items["z"].passage_id == "p1"
    assert both.journal is not None
    assert [p.id for p in both.journal.promises] == ["q"]


def promise(key: str) -> Promise:
    return Promise(key, "Forty days", DAY, (PromiseRule(DAY, Stretch.IN_TOTAL, 40),), NOW)


def test_the_surer_source_of_minutes_counts_and_minutes_never_add_up() -> None:
    typed, clock = session(0, 20.0, MinutesSource.TYPED), session(0, 50.0, MinutesSource.CLOCK)
    both = union(Contents(sessions={"s0": clock}), Contents(sessions={"s0": typed}))
    assert both.sessions == {"s0": typed}


def test_two_takes_of_one_number_are_both_kept_and_numbered_apart() -> None:
    a, b = take(0), take(0, id="other", sha256="f" * 64, file="elsewhere.flac")
    both = union(Contents({a.id: a}), Contents({b.id: b}))
    assert sorted(t.number for t in both.takes.values()) == [1, 2]
    assert both.takes[a.id] == a


def test_a_take_that_was_deleted_here_stays_deleted() -> None:
    gone = take(1, deleted_at=NOW)
    both = union(Contents({"t1": gone}), Contents({"t1": take(1, aim="even", aim_met=AimMet.YES)}))
    assert both.takes["t1"].deleted_at == NOW
    assert both.takes["t1"].aim == "even"


def test_the_newer_form_of_a_record_stays() -> None:
    old, new = marker(1, "t1", 0, "a long remark indeed"), marker(1, "t1", 5, "")
    assert merged([old], [new]) == merged([new], [old]) == (new,)
    assert date(2026, 3, 1) == DAY
