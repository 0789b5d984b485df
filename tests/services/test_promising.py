"""Promises on a journal: counted from its days, paused, changed, shared."""

from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta

import pytest

from app.journal.failures import PlainFailure
from app.journal.promise_standing import PromiseState
from app.journal.promises import PromiseRule, Stretch
from app.wiring import open_workbench

TODAY = date(2026, 3, 14)


def ago(days: int) -> date:
    return TODAY - timedelta(days=days)


def in_total(days: int = 100, since: date = TODAY, **more) -> PromiseRule:
    return PromiseRule(since, Stretch.IN_TOTAL, days, **more)


def test_the_two_numbers_come_from_the_journal(bench):
    for n in (44, 43, 42, 10, 3, 0):
        bench.practising.set_minutes(ago(n), 20)
    bench.practising.mark_rest(ago(5), planned=False)
    view = bench.promises.make("Every day", in_total(since=ago(44), rest_days=1))
    assert view.headline == "6 days kept, day 45"
    assert (view.standing.days_missed, view.standing.rest_taken) == (38, 1)
    assert "94 days still to keep." in view.sentences
    assert view.rules[0].text == "100 days in total, anything counts, 1 rest day allowed"


def test_a_take_counts_and_a_deleted_one_does_not(bench, add_take, tone_file):
    row = add_take(tone_file(), day=TODAY)
    view = bench.promises.make("A take a day", in_total(minimum_minutes=45, minimum_takes=1))
    assert view.standing.days_kept == 1
    bench.filing.delete(row.id)
    assert bench.promises.view(view.promise.id).standing.days_kept == 0


def test_a_shared_number_stays_when_more_is_filed(bench, add_take, tone_file):
    for n in (4, 3, 0):
        bench.practising.set_minutes(ago(n), 20)
    made = bench.promises.make("Every day", in_total(since=ago(4))).promise
    take = add_take(tone_file(), day=TODAY)
    (before,) = bench.promises.numbers_for(TODAY)
    assert (before.text, before.frozen) == ("day 5 \N{MIDDLE DOT} 3 days kept", False)
    shared = bench.promises.share(made.id, TODAY, take.id)
    assert (shared.day_number, shared.days_kept, shared.frozen) == (5, 3, True)
    assert bench.promises.shared_days(ago(9), TODAY) == {TODAY}
    assert bench.promises.shared_days(ago(9), ago(1)) == frozenset()
    bench.practising.set_minutes(ago(2), 10)
    (after,) = bench.promises.numbers_for(TODAY)
    assert (after.days_kept, after.days_kept_now, after.frozen) == (3, 4, True)
    assert bench.promises.share(made.id, TODAY).days_kept == 3
    (late,) = bench.promises.numbers_for(ago(2))
    assert (late.day_number, late.days_kept) == (3, 3)
    assert bench.promises.view(made.id).standing.days_kept == 4


def test_no_number_before_the_start(bench):
    made = bench.promises.make("Every day", in_total()).promise
    assert bench.promises.numbers_for(ago(1)) == ()
    with pytest.raises(PlainFailure, match="no number"):
        bench.promises.share(made.id, ago(1))
    with pytest.raises(PlainFailure, match="take is not there"):
        bench.promises.share(made.id, TODAY, "f" * 32)


def test_a_break_pauses_and_says_so_and_can_be_ended(bench, clock):
    made = bench.promises.make("A month", PromiseRule(TODAY, Stretch.IN_A_ROW, 30)).promise
    view = bench.promises.plan_break(made.id, TODAY, TODAY + timedelta(days=6), "a journey")
    assert "Paused until Fri 20 Mar 2026 (a journey); nothing is asked of these days." in (
        view.sentences
    )
    clock.now += timedelta(days=3)
    assert bench.promises.view(made.id).standing.days_paused == 4
    assert bench.promises.go_on(made.id).standing.days_paused == 3
    ahead = bench.promises.plan_break(made.id, date(2026, 4, 1), date(2026, 4, 3))
    assert "A break is planned from Wed 1 Apr 2026 to Fri 3 Apr 2026." in ahead.sentences
    assert len(bench.promises.drop_break(made.id, date(2026, 4, 1)).promise.breaks) == 1


def test_a_changed_rule_says_from_when(bench, clock):
    bench.practising.set_minutes(ago(1), 20)
    made = bench.promises.make("Every day", in_total(since=ago(1))).promise
    view = bench.promises.change_rule(made.id, in_total(50, TODAY, minimum_minutes=45))
    assert [(row.since, row.until, row.is_in_force) for row in view.rules] == [
        (ago(1), TODAY, False),
        (TODAY, None, True),
    ]
    assert view.rules[1].text == "50 days in total, at least 45 min a day"
    assert view.standing.days_kept == 1
    with pytest.raises(PlainFailure, match="over"):
        bench.promises.change_rule(made.id, in_total(50, ago(1)))


def test_words_about_a_run_that_ended_are_facts(bench):
    for n in (9, 8, 7, 5, 4):
        bench.practising.set_minutes(ago(n), 20)
    rule = PromiseRule(ago(9), Stretch.IN_A_ROW, 30)
    view = bench.promises.make("A month", rule)
    assert "The next day kept begins a new run; the longest so far has 3 days." in view.sentences
    bench.practising.set_minutes(TODAY, 5)
    view = bench.promises.view(view.promise.id)
    assert "A new run began on Sat 14 Mar 2026; the longest so far has 3 days." in view.sentences
    words = " ".join(view.sentences).lower()
    assert not any(bad in words for bad in ("fail", "broke", "lost", "streak", "only", "shame"))


def test_an_end_that_is_too_near_is_said_kindly(bench):
    view = bench.promises.make("Ten", in_total(10, end=TODAY + timedelta(days=4)))
    assert view.sentences[-1].startswith("5 days left until Wed 18 Mar 2026, fewer than are still")
    assert "every day kept stays kept" in view.sentences[-1]


def test_past_and_running_promises_are_listed(bench):
    bench.practising.set_minutes(ago(20), 20)
    bench.promises.make("Kept", in_total(1, ago(20)))
    bench.promises.make("Ended", in_total(9, ago(20), end=ago(10)))
    bench.promises.make("Ahead", in_total(9, TODAY + timedelta(days=2)))
    running = bench.promises.make("Running", in_total(9, ago(2))).promise
    closed = bench.promises.make("Closed", in_total(9, ago(3))).promise
    bench.promises.close(closed.id)
    assert [view.promise.name for view in bench.promises.list()] == [
        "Running", "Ahead", "Kept", "Closed", "Ended",
    ]  # fmt: skip
    with pytest.raises(PlainFailure, match="over"):
        bench.promises.change_rule(closed.id, in_total(9))
    assert bench.promises.reopen(closed.id).standing.state is PromiseState.RUNNING
    assert bench.promises.find("runn") == running
    assert bench.promises.find(running.id[:6]) == running
    with pytest.raises(PlainFailure, match="no promise"):
        bench.promises.find("else")
    renamed = bench.promises.rename(running.id, "  Going   on ")
    assert renamed.promise == replace(running, name="Going on")


def test_promises_survive_closing(bench, journal_dir, clock):
    bench.promises.make("Every day", in_total())
    bench.close()
    with open_workbench(journal_dir, clock=clock) as again:
        (view,) = again.promises.list()
    assert view.promise.name == "Every day"


def test_a_day_that_is_over_shows_promises_as_they_stood_then(bench):
    """Against the same journal opened on that day; the numbers: common practice, no source."""
    for n in (44, 43, 42, 10, 3, 0):
        bench.practising.set_minutes(ago(n), 20)
    bench.promises.make("Every day", in_total(since=ago(44), rest_days=1))
    bench.promises.make("A week", in_total(7, since=ago(12), end=ago(6)))
    assert [view.headline for view in bench.promises.running()] == ["6 days kept, day 45"]
    span = (ago(16), ago(10))
    then = [f"{view.promise.name}: {view.headline}" for view in bench.promises.running(span[1])]
    assert then == ["A week: 1 day kept, day 3", "Every day: 4 days kept, day 35"]
    assert list(bench.lessons.report(*span).promises) == then
    told = bench.reporting.text(*span)
    assert "Every day: 4 days kept, day 35" in told
    assert "day 45" not in told
    evening = datetime.combine(span[1], time(19, 30), tzinfo=UTC)
    folder = bench.journal_dir
    bench.close()
    with open_workbench(folder, clock=lambda: evening) as that_day:
        on_it = that_day.promises.running()
        assert [f"{view.promise.name}: {view.headline}" for view in on_it] == then
        assert that_day.promises.running(TODAY) == on_it, "a day to come is not known yet"
