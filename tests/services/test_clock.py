"""The practice clock on a journal: kept at once, asked about when forgotten."""

from datetime import datetime, timedelta, timezone

import pytest

from app.journal.failures import PlainFailure
from app.journal.kinds import Ending, ItemKind, MinutesSource
from app.services.repairing import repair
from app.wiring import open_workbench


def later(clock, minutes):
    clock.now += timedelta(minutes=minutes)


@pytest.fixture(autouse=True)
def _zone(monkeypatch):
    monkeypatch.setattr("app.wiring.local_zone", lambda: timezone(timedelta(hours=1)))


@pytest.fixture
def items(bench):
    scale = bench.items.add(ItemKind.SCALE, "G major")
    study = bench.items.add(ItemKind.STUDY, "Study in D")
    return scale, study


def minutes_of(bench, clock):
    day = clock.now.date()
    return {row.title: round(row.minutes, 6) for row in bench.minutes.by_item(day, day)}


def test_minutes_per_item_come_for_free(bench, clock, items):
    scale, study = items
    assert bench.clock.state().phase == "stopped"
    bench.clock.start(scale.id)
    later(clock, 10)
    assert bench.clock.state().item_title == "G major"
    bench.clock.switch(study.id)
    later(clock, 15)
    bench.clock.pause()
    later(clock, 5)
    view = bench.clock.state()
    assert (view.phase, view.session_min, view.today_min) == ("paused", 25.0, 25.0)
    bench.clock.resume()
    later(clock, 5)
    view = bench.clock.state()
    assert (view.phase, view.block_s, view.today_min) == ("running", 300.0, 30.0)
    assert {row.title: row.minutes for row in view.items} == {"G major": 10.0, "Study in D": 20.0}
    view = bench.clock.stop()
    assert (view.phase, view.today_min) == ("stopped", 30.0)
    assert bench.practising.today().minutes == pytest.approx(30.0)
    assert minutes_of(bench, clock) == {"Study in D": 20.0, "G major": 10.0}
    (session,) = bench.clock._store.sessions.list()
    assert session.minutes_source is MinutesSource.CLOCK


def test_one_key_starts_pauses_and_goes_on(bench, clock):
    phases = []
    for _ in range(3):
        phases.append(bench.clock.toggle().phase)
        later(clock, 1)
    assert phases == ["running", "paused", "running"]
    assert bench.clock.state().item_title == "no item"


def test_a_crash_loses_nothing(journal_dir, clock):
    bench = open_workbench(journal_dir, clock=clock)
    scale = bench.items.add(ItemKind.SCALE, "G major")
    bench.clock.start(scale.id)
    later(clock, 10)
    bench.clock.beat()
    bench._store.close()  # the program is gone without a word; only the lock is freed
    later(clock, 7)
    with open_workbench(journal_dir, clock=clock) as again:
        view = again.clock.state()
        assert (view.phase, view.item_title, view.today_min) == ("running", "G major", 17.0)
        assert again.clock.forgotten() is None
        assert again.clock.stop().today_min == 17.0


def test_after_a_long_absence_it_asks_and_the_beat_does_not_answer(journal_dir, clock):
    bench = open_workbench(journal_dir, clock=clock)
    bench.clock.start()
    later(clock, 10)
    bench.clock.beat()
    bench._store.close()
    later(clock, 45)
    with open_workbench(journal_dir, clock=clock) as again:
        for _ in range(3):
            again.clock.beat()
            again.clock.touch()
            assert again.clock.state().phase == "forgotten"
        assert again.clock.state().today_min == 0.0
        question = again.clock.forgotten()
        assert "off or asleep" in question.sentence
        assert [c.minutes for c in question.choices] == [0.0, 10.0, 55.0]
        for act in (again.clock.stop, again.clock.pause, again.clock.start, again.clock.resume):
            with pytest.raises(PlainFailure, match="how long did you play"):
                act()
        view = again.clock.answer_forgotten(Ending.NOW)
        assert (view.phase, view.today_min) == ("running", 55.0)
        with pytest.raises(PlainFailure, match="not forgotten"):
            again.clock.answer_forgotten(Ending.NOW)


def test_closing_the_program_is_no_absence(journal_dir, clock):
    with open_workbench(journal_dir, clock=clock) as bench:
        bench.clock.start()
        bench.clock.beat()
        later(clock, 5)
    later(clock, 50)
    with open_workbench(journal_dir, clock=clock) as again:
        assert again.clock.state().today_min == 55.0


@pytest.mark.parametrize(
    ("ending", "minutes", "expected"),
    [
        (Ending.AT_LAST_TOUCH, None, None),
        (Ending.WHEN_LAST_SEEN, None, 30.0),
        (Ending.MINUTES, 12.0, 12.0),
        (Ending.NOW, None, 780.0),
    ],
)
def test_forgotten_overnight(bench, clock, ending, minutes, expected):
    day = clock.now.date()
    bench.clock.start()
    later(clock, 30)
    bench.clock.beat()
    later(clock, 750)
    assert bench.clock.state().phase == "forgotten"
    with pytest.raises(PlainFailure, match="does not fit"):
        bench.clock.answer_forgotten(Ending.MINUTES, 781.0)
    view = bench.clock.answer_forgotten(ending, minutes)
    assert (view.phase, view.today_min) == ("stopped", 0.0)  # it is another day now
    assert bench.clock._store.sessions.minutes_by_day(day, day).get(day) == expected


def test_a_pause_overnight_is_the_end(bench, clock, journal_dir):
    bench.clock.start()
    later(clock, 20)
    bench.clock.pause()
    first_day = clock.now.date()
    later(clock, 12 * 60)
    assert bench.clock.state().phase == "stopped"
    assert bench.clock.toggle().phase == "running"
    later(clock, 4)
    bench.clock.stop()
    minutes = bench.clock._store.sessions.minutes_by_day(first_day, clock.now.date())
    assert minutes == {first_day: 20.0, clock.now.date(): 4.0}


def test_typed_minutes_stand_for_the_day_and_the_clock_adds_to_them(bench, clock):
    day = clock.now.date()
    bench.clock.start()
    later(clock, 20)
    bench.practising.set_minutes(day, 45)
    assert bench.clock.state().today_min == 45.0
    later(clock, 10)
    assert bench.clock.state().today_min == 55.0
    bench.clock.stop()
    assert bench.practising.today().minutes == 55.0
    bench.clock.start()  # within the hour: the same sitting
    later(clock, 5)
    bench.clock.stop()
    assert bench.practising.today().minutes == 60.0
    assert minutes_of(bench, clock) == {"no item": 35.0}  # what the clock saw, each minute once
    bench.practising.set_minutes(day, 90)
    assert bench.practising.today().minutes == 90.0
    bench.clock.start()
    later(clock, 2)
    bench.clock.stop()
    assert bench.practising.today().minutes == 92.0


def test_minutes_typed_for_a_forgotten_day_are_not_counted_again(bench, clock):
    day = clock.now.date()
    bench.clock.start()
    later(clock, 30)
    bench.clock.beat()
    later(clock, 750)
    bench.practising.set_minutes(day, 40)
    assert bench.clock.state().phase == "forgotten"
    bench.clock.answer_forgotten(Ending.WHEN_LAST_SEEN)
    assert bench.clock._store.sessions.minutes_by_day(day, day) == {day: 40.0}


def test_a_take_and_the_clock_share_a_session(bench, clock, add_take, tone_file):
    row = add_take(tone_file(), day=clock.now.date())
    take = bench.filing.take(row.id)
    clock.now = take.recorded_at.astimezone(clock.now.tzinfo) + timedelta(minutes=1)
    bench.clock.start()
    later(clock, 6)
    bench.clock.stop()
    (session,) = bench.clock._store.sessions.list()
    assert (session.id, session.minutes) == (take.session_id, 6.0)


def test_a_break_is_suggested_and_can_be_put_off(bench, clock):
    from dataclasses import replace

    bench.practising.change_settings(replace(bench.practising.settings(), break_after_min=20))
    bench.clock.start()
    later(clock, 19)
    assert bench.clock.break_due() == ""
    later(clock, 1)
    assert bench.clock.break_due().startswith("20 min without a break.")
    assert "stop for today" in bench.clock.break_due()
    bench.clock.put_off_break()
    assert bench.clock.break_due() == ""
    later(clock, 10)
    assert bench.clock.break_due()
    bench.practising.change_settings(replace(bench.practising.settings(), break_after_min=0))
    assert bench.clock.break_due() == ""
    with pytest.raises(PlainFailure):
        bench.practising.change_settings(replace(bench.practising.settings(), break_after_min=-1))


def test_without_a_clock_it_says_so(bench):
    for act in (bench.clock.pause, bench.clock.resume, bench.clock.stop):
        with pytest.raises(PlainFailure, match="not running"):
            act()
    bench.clock.beat()
    bench.clock.touch()
    assert bench.clock.forgotten() is None


def test_looking_changes_nothing(journal_dir, clock):
    with open_workbench(journal_dir, clock=clock) as bench:
        bench.clock.start()
    later(clock, 5)
    with open_workbench(journal_dir, create=False, read_only=True, clock=clock) as looking:
        assert looking.clock.state().today_min == 5.0
        looking.clock.beat()
        with pytest.raises(PlainFailure, match="looking only"):
            looking.clock.stop()


def test_a_rebuilt_journal_has_the_same_minutes(journal_dir, clock):
    with open_workbench(journal_dir, clock=clock) as bench:
        passage = bench.passages.add("Study", "Opening")
        bench.clock.start(bench.items.for_passage(passage.id).id)
        later(clock, 8)
        bench.clock.switch(bench.items.add(ItemKind.ENSEMBLE, "Trio").id)
        later(clock, 9)
        bench.clock.stop()
        before = minutes_of(bench, clock)
    assert before == {"Trio": 9.0, "Study: Opening": 8.0}
    (journal_dir / "journal.db").unlink()
    assert repair(journal_dir).rebuilt
    with open_workbench(journal_dir, clock=clock) as again:
        assert minutes_of(again, clock) == before
        assert again.practising.today().minutes == 17.0


def test_the_turn_of_the_day_is_the_players_place(journal_dir, clock):
    # 03:30 where the player is still belongs to the evening before.
    clock.now = datetime(2026, 3, 15, 2, 45, tzinfo=timezone(timedelta(hours=1)))
    with open_workbench(journal_dir, clock=clock) as bench:
        bench.clock.start()
        later(clock, 45)
        assert bench.clock.stop().today_min == 45.0
        assert bench.practising.practice_day_now().isoformat() == "2026-03-14"


def test_after_minutes_typed_over_an_absence_the_clock_counts_on(journal_dir, clock):
    bench = open_workbench(journal_dir, clock=clock)
    bench.clock.start()
    later(clock, 10)
    bench.clock.beat()
    bench._store.close()
    later(clock, 45)
    with open_workbench(journal_dir, clock=clock) as again:
        again.practising.set_minutes(clock.now.date(), 30)
        again.clock.answer_forgotten(Ending.NOW)
        later(clock, 5)
        assert again.clock.state().today_min == 35.0
        assert again.clock.stop().today_min == 35.0
        assert minutes_of(again, clock) == {"no item": 60.0}
