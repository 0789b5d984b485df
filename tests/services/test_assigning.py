"""Assignments: what was set, what was done on it, and the dates ahead."""

from datetime import date, timedelta

import pytest

from app.journal.assignments import OccasionKind
from app.journal.failures import PlainFailure
from app.journal.kinds import ItemKind
from app.journal.promises import PromiseRule, Stretch

TODAY = date(2026, 3, 14)
LESSON = TODAY + timedelta(days=7)


def practise(bench, clock, item_id, minutes):
    bench.clock.start(item_id)
    clock.now += timedelta(minutes=minutes)
    bench.clock.stop()


def test_minutes_on_the_passage_are_done_so_far(bench, clock):
    passage = bench.passages.add("Study", "opening")
    scale = bench.items.add(ItemKind.SCALE, "D major")
    row = bench.assignments.add(LESSON, "even shifts", minutes=60, passage_id=passage.id)
    assert row.sentence == "0 min of 1 h; due Sat 21 Mar 2026"
    practise(bench, clock, bench.items.for_passage(passage.id).id, 25)
    practise(bench, clock, scale.id, 10)
    (row,) = bench.assignments.open()
    assert row.title == "Study: opening"
    assert row.progress.minutes_done == pytest.approx(25)
    assert row.progress.minutes_left == pytest.approx(35)
    assert row.sentence == "25 min of 1 h on 1 day; due Sat 21 Mar 2026"


def test_minutes_alone_are_done_when_reached_a_goal_when_ticked(bench, clock):
    scale = bench.items.add(ItemKind.SCALE, "D major")
    bench.assignments.add(LESSON, minutes=20, item_id=scale.id)
    worded = bench.assignments.add(LESSON, "listen to three recordings")
    practise(bench, clock, scale.id, 20)
    assert [row.title for row in bench.assignments.open()] == ["listen to three recordings"]
    assert bench.assignments.tick(worded.assignment.id).progress.is_done
    assert bench.assignments.open() == ()
    assert len(bench.assignments.for_lesson(TODAY, LESSON)) == 2
    assert not bench.assignments.tick(worded.assignment.id, done=False).progress.is_done


def test_takes_of_the_passage_count_from_the_day_it_was_set(bench, add_take, tone_file):
    add_take(tone_file("a.wav"), "opening", TODAY - timedelta(days=1))
    take = add_take(tone_file("b.wav", frequency_hz=330.0), "opening", TODAY)
    row = bench.assignments.add(LESSON, "once through", passage_id=take.passage_id)
    assert (row.progress.takes, row.progress.days) == (1, 1)


def test_an_item_that_stands_for_a_passage_is_that_passage(bench):
    passage = bench.passages.add("Study", "opening")
    item = bench.items.for_passage(passage.id)
    row = bench.assignments.add(LESSON, "once through", item_id=item.id)
    assert (row.assignment.passage_id, row.title) == (passage.id, "Study: opening")


def test_it_is_carried_to_a_later_lesson_with_what_was_done(bench, clock):
    scale = bench.items.add(ItemKind.SCALE, "D major")
    made = bench.assignments.add(LESSON, minutes=60, item_id=scale.id).assignment
    practise(bench, clock, scale.id, 30)
    clock.now += timedelta(days=8)
    assert bench.assignments.open() == ()
    (past,) = bench.assignments.all()
    assert past.progress.is_past
    carried = bench.assignments.carry(made.id, LESSON + timedelta(days=7))
    assert carried.progress.minutes_done == pytest.approx(30)
    assert len(bench.assignments.open()) == 1
    bench.assignments.remove(made.id)
    assert bench.assignments.all() == ()


def test_the_week_in_words_carries_it_to_the_lesson(bench, clock):
    scale = bench.items.add(ItemKind.SCALE, "D major")
    bench.assignments.add(LESSON, "even bow", minutes=60, item_id=scale.id)
    practise(bench, clock, scale.id, 30)
    week = bench.reporting.week(LESSON)
    assert "Assigned\n  D major: even bow (open; 30 min of 1 h on 1 day; due Sat 21" in week
    assert "Assigned" not in bench.reporting.week(TODAY)
    bench.promises.make("Every day", PromiseRule(TODAY, Stretch.IN_TOTAL, 100))
    assert "Promised\n  Every day: 1 day kept, day 1" in bench.reporting.week(LESSON)


def test_what_makes_no_sense_is_refused(bench):
    with pytest.raises(PlainFailure, match="says nothing"):
        bench.assignments.add(LESSON)
    with pytest.raises(PlainFailure, match="before it was set"):
        bench.assignments.add(TODAY - timedelta(days=1), "x")
    with pytest.raises(PlainFailure, match="minute"):
        bench.assignments.add(LESSON, minutes=0)
    with pytest.raises(PlainFailure, match="passage is not there"):
        bench.assignments.add(LESSON, passage_id="f" * 32)
    with pytest.raises(PlainFailure, match="not there"):
        bench.assignments.tick("f" * 32)


def test_dates_ahead(bench, clock):
    passage = bench.passages.add("Study", "opening")
    audition = bench.assignments.add_occasion(
        TODAY + timedelta(days=30), OccasionKind.AUDITION, "open seat", [passage.id]
    )
    bench.assignments.add_occasion(LESSON)
    first, second = bench.assignments.coming()
    assert (first.title, first.days_left, first.passages) == ("lesson", 7, ())
    assert (second.title, second.days_left, second.passages) == (
        "open seat", 30, ("Study: opening",),
    )  # fmt: skip
    bench.assignments.remove_occasion(audition.id)
    clock.now += timedelta(days=8)
    assert bench.assignments.coming() == ()
