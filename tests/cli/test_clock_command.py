"""The practice clock from a terminal: it runs on between two commands."""

from datetime import datetime, timedelta, timezone
from functools import partial

import pytest

from app import wiring

ZONE = timezone(timedelta(hours=1))


class Clock:
    now = datetime(2026, 3, 14, 19, 30, tzinfo=ZONE)

    def __call__(self):
        return self.now


@pytest.fixture
def clock(monkeypatch):
    clock = Clock()
    monkeypatch.setattr(wiring, "open_workbench", partial(wiring.open_workbench, clock=clock))
    monkeypatch.setattr(wiring, "local_zone", lambda: ZONE)
    return clock


def later(clock, minutes):
    clock.now += timedelta(minutes=minutes)


def test_a_sitting(run, clock):
    ran = run("clock", "start", "G major", "--new", "scale")
    assert (ran.code, ran.out) == (0, "The clock is running on G major; 0 min today.\n")
    assert "on your list of items now" in ran.err
    later(clock, 12)
    assert run("clock", "switch", "Study", "--new", "study").code == 0
    later(clock, 20)
    found = run("clock", "status", "--json").json
    assert found == {
        "phase": "running",
        "item": "Study",
        "block_s": 1200.0,
        "session_min": 32.0,
        "today_min": 32.0,
        "unbroken_min": 32.0,
        "break_suggested": True,
        "items": [
            {"item": "G major", "kind": "scale", "minutes": 12.0},
            {"item": "Study", "kind": "study", "minutes": 20.0},
        ],
        "question": None,
    }
    ran = run("clock", "status")
    assert ran.out.splitlines() == [
        "The clock is running on Study; 32 min today.",
        "  Study    20 min",
        "  G major  12 min",
    ]
    assert "stop for today" in ran.err
    assert "paused" in run("clock", "pause").out
    later(clock, 6)
    assert "running on Study" in run("clock", "start").out
    later(clock, 8)
    assert run("clock", "stop").out.startswith("The clock is stopped; 40 min today.")
    ran = run("count")
    assert ran.out.splitlines()[:3] == [
        "Sat 14 Mar 2026: 40 min, 0 takes today.",
        "  Study    28 min",
        "  G major  12 min",
    ]
    counted = run("count", "--json").json
    assert counted["minutes"] == 40.0
    assert [row["minutes"] for row in counted["items"]] == [12.0, 28.0]
    assert (counted["recordings"], counted["recording_min"]) == (0, 0.0)


def test_a_passage_is_an_item(run, clock, tone_file):
    assert run("import", tone_file(), "--passage", "Study: Opening").code == 0
    assert run("clock", "start", "opening").code == 0
    later(clock, 3)
    found = run("clock", "status", "--json").json
    assert (found["item"], found["items"][0]["kind"]) == ("Study: Opening", "passage")


def test_an_unknown_item_is_no_item(run, clock):
    ran = run("clock", "start", "G major")
    assert ran.code == 2
    assert "nothing called 'G major'" in ran.err
    assert run("clock", "status", "--json").json["phase"] == "stopped"
    assert run("clock", "start", "G major", "--new", "tuba").code == 2


@pytest.mark.parametrize("command", ["pause", "stop"])
def test_without_a_running_clock(run, clock, command):
    run("clock", "start")
    run("clock", "stop")
    ran = run("clock", command)
    assert (ran.code, ran.err) == (2, "The clock is not running. Start it first.\n")


@pytest.mark.parametrize(
    ("answer", "minutes"),
    [(("--until", "touched"), 0), (("--until", "now"), 725), (("--minutes", "25"), 25)],
)
def test_forgotten_overnight(run, clock, answer, minutes):
    run("clock", "start")
    later(clock, 725)
    ran = run("clock", "stop")
    assert ran.code == 2
    assert "a new day has begun since" in ran.err
    assert "--until touched (0 min), --until now (725 min) or --minutes N" in ran.err
    found = run("clock", "status", "--json").json
    assert (found["phase"], found["today_min"]) == ("forgotten", 0.0)
    assert found["question"]["choices"][1] == {"until": "now", "minutes": 725.0}
    assert "how long did you play" in run("clock", "status").out
    ran = run("clock", "stop", "--until", "seen")
    assert ran.code == 2  # nobody was watching
    assert run("clock", "stop", *answer).code == 0
    clock.now -= timedelta(hours=12)
    assert (run("count", "--json").json["minutes"] or 0) == minutes
    assert run("clock", "stop", "--until", "now").code == 2


def test_untouched_for_hours_on_the_same_day(run, clock):
    clock.now = datetime(2026, 3, 14, 9, 0, tzinfo=ZONE)
    run("clock", "start")
    later(clock, 200)
    assert run("clock", "stop").code == 2
    ran = run("clock", "stop", "--until", "now", "--json")
    assert (ran.code, ran.json["phase"], ran.json["today_min"]) == (0, "stopped", 200.0)


def test_no_journal_no_clock(run, clock):
    ran = run("clock", "status")
    assert ran.code == 2
    assert ran.out == ""
