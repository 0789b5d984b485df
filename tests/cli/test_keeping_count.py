"""Promises, plans, assignments, dates, history and minutes from elsewhere, from a terminal."""

from datetime import datetime, timedelta

import pytest

from app.journal.practice_days import practice_day


def today():
    """Give the practice day of now: a run may go on past the hour at which it turns."""
    return practice_day(datetime.now().astimezone())


def ago(days):
    return (today() - timedelta(days=days)).isoformat()


@pytest.fixture
def practised(run, journal_dir):
    for days in (5, 4, 3, 1):
        assert run("count", "--minutes", "30", "--date", ago(days)).code == 0
    return journal_dir


def test_a_promise_is_made_and_counted(run, practised):
    made = run("promise", "make", "Every day", "--days", "100", "--from", ago(5))
    assert made.code == 0
    assert "Every day: 4 days kept, day 6" in made.out
    assert "100 days in total, anything counts" in made.out
    counted = run("count", "--json").json
    (promise,) = counted["promises"]
    assert (promise["days_kept"], promise["day"], promise["days_missed"]) == (4, 6, 1)
    assert "Every day: 4 days kept, day 6" in run("count").out
    assert run("promise", "list", "--json").json["promises"][0]["needed"] == 96
    assert run("promise").out == run("promise", "list").out


def test_a_promise_is_changed_paused_shared_and_ended(run, practised):
    run("promise", "make", "Every day", "--days", "100", "--from", ago(5))
    changed = run(
        "promise", "change", "every", "--days", "30", "--in-a-row", "--minutes", "45",
        "--takes", "1", "--both", "--rest-days", "2", "--rest-on", "Sun", "--rest-on", "wed",
        "--json",
    )  # fmt: skip
    assert changed.json["rules"][1]["text"] == (
        "30 days in a row, at least 45 min and 1 take a day, rest on Wed and Sun,"
        " 2 rest days allowed in each run"
    )
    assert changed.json["rules"][0]["until"] == today().isoformat()
    paused = run("promise", "pause", "every", "--to", ago(-3), "--reason", "a journey")
    assert "(a journey); nothing is asked of these days." in paused.out
    assert run("promise", "go-on", "every", "--json").json["paused_until"] is None
    shared = run("promise", "share", "every", "--date", ago(3), "--json").json
    assert (shared["day_number"], shared["days_kept"], shared["frozen"]) == (3, 3, True)
    assert run("promise", "end", "every", "--json").json["state"] == "ended"


def test_what_cannot_be_promised_is_one_sentence(run, practised):
    for arguments in (
        ("make", "x", "--days", "0"),
        ("make", "x", "--days", "5", "--rest-on", "someday"),
        ("end", "nobody made this"),
        ("change", "nobody made this", "--days", "3"),
    ):
        ran = run("promise", *arguments)
        assert ran.code == 2
        assert ran.err.count("\n") == 1


def test_a_plan_is_proposed_kept_and_ticked(run, practised, tone_file):
    run("import", tone_file(), "--passage", "Opening", "--date", ago(4))
    nothing = run("plan", "--minutes", "45", "--json")
    assert nothing.json["lines"][0]["reasons"][0]["kind"] == "revisit"
    assert run("plan").code == 2  # a proposal is not kept by itself
    assert run("occasion", ago(-9), "--kind", "audition", "--passage", "Opening").code == 0
    assert run("occasion", "--json").json["occasions"][0]["days_left"] == 9
    run("assign", "even shifts", "--due", ago(-7), "--passage", "Opening", "--minutes", "60")
    kept = run("plan", "--minutes", "45", "--keep", "--json").json
    (line,) = kept["lines"]
    assert [reason["kind"] for reason in line["reasons"]] == ["assignment", "occasion"]
    assert kept["minutes_planned"] <= 45
    assert "1. Opening" in run("plan").out
    assert "(done)" in run("plan", "--done", "1").out
    assert run("plan", "--done", "7").code == 2
    assert run("plan", "--keep").code == 2
    assert run("occasion", ago(-9), "--remove").out.strip() == "No date ahead."


def test_assignments_are_listed_and_ticked_off(run, practised):
    assert run("assign").out.strip() == "Nothing is open."
    run("assign", "listen to three recordings", "--due", ago(-7))
    (row,) = run("assign", "--json").json["assignments"]
    assert (row["goal"], row["author"], row["done"]) == (
        "listen to three recordings", "teacher", False,
    )  # fmt: skip
    assert "listen to three recordings (not begun; due" in run("assign").out
    assert run("assign", "--done", row["id"][:8]).out.strip() == "Nothing is open."
    assert run("assign", "--done", "zzz").code == 2
    run("clock", "start", "D major", "--new", "scale")
    run("clock", "stop")
    assigned = run("assign", "--item", "d major", "--minutes", "30", "--due", ago(-7), "--json")
    assert assigned.json["assignments"][0]["title"] == "D major"
    assert run("assign", "no day").code == 2


def test_history_with_hours_from_before(run, practised):
    ran = run("history", "--earlier-hours", "1200", "--until", ago(30))
    assert ran.code == 0
    assert "1,200 h before it" in ran.out
    assert "Busier and quieter times are told apart from 6 whole weeks on" in ran.out
    found = run("history", "--json").json
    assert found["earlier_hours"] == 1200
    assert found["journal_minutes"] == 120
    assert "Pettitt" in found["method"]
    assert run("history", "--earlier-hours", "0", "--json").json["earlier_hours"] is None


def test_minutes_from_elsewhere(run, practised, tmp_path):
    file = tmp_path / "kept.csv"
    file.write_text(f"date,minutes\n{ago(5)},99\n{ago(9)},20\nsoon,5\n", encoding="utf-8")
    asked = run("import-minutes", file)
    assert asked.code == 2  # 'soon' keeps the column from being one of days
    file.write_text(f"date,minutes\n{ago(5)},99\n{ago(9)},20\n", encoding="utf-8")
    looked = run("import-minutes", file, "--look", "--json").json
    assert (looked["filed_days"], looked["new"]) == (0, {ago(9): 20})
    assert run("import-minutes", file, "--json").json["filed_days"] == 1
    assert run("import-minutes", file, "--json").json["filed_days"] == 0
    assert run("history", "--json").json["journal_minutes"] == 140


def test_a_look_at_minutes_needs_no_journal_and_begins_none(run, journal_dir, tmp_path):
    file = tmp_path / "kept.csv"
    file.write_text(f"date,minutes\n{ago(9)},20\n", encoding="utf-8")
    looked = run("import-minutes", file, "--look")
    assert (looked.code, journal_dir.exists()) == (0, False)
    assert "Nothing is filed yet: 1 day new" in looked.out
    assert "There is no journal in" in looked.err
    assert "There is no journal in" not in run("import-minutes", file, "--look", "--json").out


def test_minutes_of_another_day_are_said_back(run, practised):
    kept = run("count", "--minutes", "40", "--date", ago(2))
    assert kept.code == 0
    day = today() - timedelta(days=2)
    first, second = kept.out.splitlines()[:2]
    assert str(day.day) in first
    assert first.endswith("40 min.")
    assert second.endswith("0 takes today.")
    assert "a rest day" in run("count", "--rest", "--date", ago(6)).out


def test_days_that_can_be_read_two_ways_are_asked_about(run, practised, tmp_path):
    file = tmp_path / "kept.csv"
    file.write_text("when;all\n03/04/2021;1.5\n", encoding="utf-8")
    asked = run("import-minutes", file)
    assert asked.code == 2
    assert "--order day-month-year ('03/04/2021' is 2021-04-03)" in asked.err
    filed = run(
        "import-minutes", file, "--order", "month-day-year", "--unit", "hours",
        "--day-column", "when", "--minutes-column", "all", "--json",
    )  # fmt: skip
    assert filed.json["new"] == {"2021-03-04": 90.0}
