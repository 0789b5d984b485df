"""Promises, plans and set work are taken back with the same key as markers, and plans last."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from app.journal.assignments import OccasionKind
from app.journal.failures import PlainFailure
from app.journal.promises import PromiseRule, Stretch
from app.services.repairing import repair
from app.wiring import open_workbench

TODAY = date(2026, 3, 14)
RULE = PromiseRule(TODAY, Stretch.IN_TOTAL, 40)


def undo_all(bench) -> list[str]:
    words = []
    while (said := bench.marking.undo()) is not None:
        words.append(said)
    return words


def test_every_step_of_a_promise_is_taken_back_and_made_again(bench):
    promises = bench.promises
    made = promises.make("Forty days", RULE).promise
    seen = [made]
    seen.append(promises.rename(made.id, "Scales").promise)
    seen.append(promises.change_rule(made.id, replace(RULE, minimum_minutes=10)).promise)
    seen.append(promises.plan_break(made.id, TODAY, TODAY + timedelta(days=2)).promise)
    seen.append(promises.go_on(made.id).promise)
    seen.append(promises.close(made.id).promise)
    seen.append(promises.reopen(made.id).promise)
    for before in reversed(seen[:-1]):
        bench.marking.undo()
        assert promises.view(made.id).promise == before
    assert bench.marking.undo() == "promise 'Forty days' made"
    assert promises.list() == ()
    for after in seen:
        bench.marking.redo()
        assert promises.view(made.id).promise == after


def test_a_promise_of_which_a_number_was_shared_stays(bench):
    made = bench.promises.make("Forty days", RULE).promise
    bench.promises.share(made.id, TODAY)
    with pytest.raises(PlainFailure, match="was shared, so the promise stays"):
        bench.marking.undo()
    assert [view.promise.id for view in bench.promises.list()] == [made.id]


def test_a_plan_and_each_change_of_it_are_taken_back(bench):
    bench.assignments.add(TODAY, "At 72", minutes=20)
    bench.assignments.add(TODAY, "Sight-reading", minutes=20)
    plan = bench.planning.make(45).plan
    ids = [line.id for line in plan.lines]
    assert len(ids) == 2
    steps = [
        lambda: bench.planning.reorder(ids[::-1]),
        lambda: bench.planning.tick(ids[0]),
        lambda: bench.planning.change_line(ids[0], minutes=5),
        lambda: bench.planning.add_line("Rest for the hand", 5),
        lambda: bench.planning.remove_line(ids[1]),
    ]
    seen = [plan, *(step().plan for step in steps)]
    for before in reversed(seen[:-1]):
        bench.marking.undo()
        assert bench.planning.today().plan == before
    assert bench.marking.undo() == "plan made"
    assert bench.planning.today() is None


def test_set_work_and_dates_are_taken_back(bench):
    work = bench.assignments
    made = work.add(TODAY, "At 72").assignment
    work.tick(made.id)
    work.carry(made.id, TODAY + timedelta(days=7))
    work.remove(made.id)
    audition = work.add_occasion(TODAY + timedelta(days=3), OccasionKind.AUDITION)
    work.remove_occasion(audition.id)
    assert work.coming() == ()
    bench.marking.undo()
    assert [row.occasion for row in work.coming()] == [audition]
    bench.marking.undo()
    bench.marking.undo()
    (row,) = work.all()
    assert (row.assignment.due_on, row.assignment.done_on) == (TODAY + timedelta(days=7), TODAY)
    assert undo_all(bench) == ["set work changed", "set work ticked off", "set work added"]
    assert work.all() == ()


def test_a_database_made_again_has_the_plan(bench, journal_dir, clock):
    bench.assignments.add(TODAY, "At 72", minutes=20)
    plan = bench.planning.make(45).plan
    ticked = bench.planning.tick(plan.lines[0].id)
    bench.close()
    for file in (*journal_dir.glob("journal.db*"), *(journal_dir / "backups").glob("*")):
        file.unlink()
    assert repair(journal_dir).rebuilt
    with open_workbench(journal_dir, clock=clock) as again:
        assert again.planning.today() == ticked


def test_a_plan_that_was_put_away_does_not_come_back(bench, journal_dir, clock):
    bench.assignments.add(TODAY, "At 72", minutes=20)
    bench.planning.make(45)
    bench.planning.drop()
    bench.close()
    for file in (*journal_dir.glob("journal.db*"), *(journal_dir / "backups").glob("*")):
        file.unlink()
    repair(journal_dir)
    with open_workbench(journal_dir, clock=clock) as again:
        assert again.planning.today() is None
