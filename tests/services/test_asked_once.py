"""One action asks the database for one thing once, and for curves only where they are drawn."""

from collections import Counter
from contextlib import contextmanager
from dataclasses import replace
from datetime import date, timedelta

import pytest
from sqlalchemy import Engine, event

from app.journal.failures import PlainFailure
from app.journal.promises import PromiseRule, Stretch
from app.journal.records import PlayingSettings
from app.services.exporting.service import TakeFormat
from app.services.rows import near_note

DAY = date(2026, 3, 10)


@pytest.fixture
def asked():
    """Count the reading statements of a block, by what they say and about what."""

    @contextmanager
    def watch():
        found: Counter[tuple[str, str]] = Counter()

        def note(_connection, _cursor, statement, values, _context, _many):
            if statement.startswith("SELECT"):
                found[" ".join(statement.split()), repr(values)] += 1

        event.listen(Engine, "before_cursor_execute", note)
        try:
            yield found
        finally:
            event.remove(Engine, "before_cursor_execute", note)

    return watch


def of_table(found, name):
    return {key: times for key, times in found.items() if f" {name}" in key[0].partition("FROM")[2]}


@pytest.fixture
def row(bench, add_take, wav_a):
    return bench.measuring.measure(add_take(wav_a, "Study: scale", DAY).id)


def test_markers_of_one_take_read_its_measurement_once(bench, row, asked):
    for at_s in (0.5, 1.0, 2.0):
        bench.marking.add(row.id, at_s, category="sound")
    with asked() as found:
        rows = bench.marking.open_markers()
    notes = bench.measuring.report(row.id).as_json()["notes"]
    assert [row.near_note for row in rows] == [near_note(notes, row.marker.start_s) for row in rows]
    assert len({row.near_note for row in rows}) > 1
    assert max(found.values()) == 1
    assert of_table(found, "measurement")
    assert not of_table(found, "measurement_curves")


def test_a_take_is_opened_with_one_look_at_its_curves_and_none_the_next_time(bench, row, asked):
    with asked() as first:
        bench.listening.open_take(row.id)
    assert list(of_table(first, "measurement_curves").values()) == [1]
    with asked() as again:
        view = bench.listening.open_take(row.id)
    assert view.notes
    assert not of_table(again, "measurement_curves")


def test_a_take_measured_again_at_the_same_instant_is_read_again(bench, row):
    before = bench.measuring.analysis(row.id)
    settings = bench.filing.take(row.id).settings
    bench.filing.change_settings(row.id, replace(settings, reference_a_hz=415.0))
    bench.measuring.measure(row.id)
    after = bench.measuring.analysis(row.id)
    assert after is not before
    assert after.intonation != before.intonation


def test_takes_beside_each_other_read_no_curves_twice(bench, row, add_take, wav_b, asked):
    other = bench.measuring.measure(add_take(wav_b, "Study: scale", DAY + timedelta(days=1)).id)
    with asked() as found:
        bench.comparing.compare(row.id, other.id)
    assert set(of_table(found, "measurement_curves").values()) == {1}
    bench.filing.set_aim(other.id, "even bow")  # what was kept of the trends holds no longer
    with asked() as found:
        assert len(bench.comparing.trends(row.passage_id)) > 3
    assert sum(of_table(found, "attempt").values()) == 1


def test_problems_judged_by_ear_read_no_measurement(bench, row, add_take, wav_b, asked):
    later = add_take(wav_b, "Study: scale", DAY + timedelta(days=1))
    bench.marking.add(row.id, 1.0, category="sound")
    bench.marking.add(row.id, 2.0, category="memory")
    assert len(bench.carrying.carried_into(later.id)) == 2
    with asked() as found:
        carried = bench.carrying.carried_into(later.id)
    assert [one.measured.sentence for one in carried] == 2 * ["This is judged by ear."]
    assert not of_table(found, "measurement_curves")


def test_the_record_adds_the_minutes_up_once(bench, asked):
    bench.practising.set_minutes(bench.practising.practice_day_now(), 30.0)
    with asked() as found:
        view = bench.record.view()
    assert view.lifetime.journal_minutes == 30.0
    assert max(found.values()) == 1


def test_a_lesson_report_draws_the_trend_that_it_tells(bench, row, asked, tmp_path):
    for at_s in (0.5, 1.0, 1.5):
        bench.marking.add(row.id, at_s, category="sound")
    with asked() as found:
        page = bench.lessons.write_page(DAY, DAY, tmp_path / "lesson.html")
    assert page.read_text(encoding="utf-8").count("<audio") == 3
    assert sum(of_table(found, "passage_bounds").values()) == 1  # asked once for each trend
    by_id = [times for key, times in of_table(found, "take").items() if row.id in key[1]]
    assert sum(by_id) == 2  # for the words of all markers, and for all clips


@pytest.mark.parametrize("what", ["list", "numbers"])
def test_promises_ask_once_what_day_it_is(bench, asked, what):
    with asked() as found:
        if what == "list":
            bench.promises.list()
        else:
            bench.promises.numbers_for(DAY)
    assert set(of_table(found, "setting").values()) == {1}


def test_a_deleted_take_is_not_there_for_anybody(bench, row):
    promise = bench.promises.make("Every day", PromiseRule(DAY, Stretch.IN_TOTAL, 30))
    bench.rehearsals.start([row.passage_id])
    bench.filing.delete(row.id)
    for ask in (
        bench.measuring.report,
        bench.listening.open_take,
        bench.playing.load,
        bench.suggesting.for_take,
        bench.carrying.carried_into,
        bench.scores.of_take,
        bench.proposing.of_take,
        bench.rehearsals.recorded,
        lambda take_id: bench.exports.file_name(take_id, TakeFormat.NOTES_CSV),
        lambda take_id: bench.marking.add(take_id, 0.5, category="sound"),
        lambda take_id: bench.filing.change_settings(take_id, PlayingSettings()),
        lambda take_id: bench.promises.share(promise.promise.id, DAY, take_id),
    ):
        with pytest.raises(PlainFailure, match="That take is not there"):
            ask(row.id)
