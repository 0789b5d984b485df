"""Minutes from a CSV file: proposed, asked about, filed once."""

from datetime import date

import pytest

from app.journal.failures import PlainFailure
from app.journal.minutes_table import AmountUnit
from app.journal.records import MinutesSource
from app.journal.written_days import DateOrder
from app.services.minutes_import import mapping_of

TODAY = date(2026, 3, 14)


@pytest.fixture
def csv_file(tmp_path):
    def write(text, name="kept elsewhere.csv", encoding="utf-8"):
        path = tmp_path / name
        path.write_bytes(text.encode(encoding))
        return path

    return write


def minutes(bench):
    return {bar.practice_day: bar.minutes for bar in bench.practising.year(2026) if bar.minutes}


def test_minutes_come_in_once(bench, csv_file):
    bench.practising.set_minutes(date(2026, 3, 10), 50)
    path = csv_file("Date,Minutes\n2026-03-09,30\n2026-03-10,40\n2026-03-11,20\n2026-04-01,9\n")
    proposal = bench.minutes_import.propose(path)
    assert proposal.new == {date(2026, 3, 9): 30, date(2026, 3, 11): 20}
    assert proposal.already == {date(2026, 3, 10): (50, 40)}
    assert proposal.ahead == (date(2026, 4, 1),)
    assert proposal.sentence == (
        "2 days new (50 min), 1 day with minutes in the journal already, left as they are and"
        " 1 day ahead left out."
    )
    assert minutes(bench) == {date(2026, 3, 10): 50}  # nothing is filed before it is wanted
    assert bench.minutes_import.file(proposal) == 2
    filed = {date(2026, 3, 9): 30, date(2026, 3, 10): 50, date(2026, 3, 11): 20}
    assert minutes(bench) == filed
    assert bench.minutes_import.file(proposal) == 0
    assert bench.minutes_import.propose(path).new == {}
    assert minutes(bench) == filed
    (session,) = bench.minutes_import._store.sessions.of_day(date(2026, 3, 9))
    assert session.minutes_source is MinutesSource.TYPED


def test_a_day_with_a_take_and_no_minutes_gets_them(bench, add_take, tone_file, csv_file):
    add_take(tone_file(), day=date(2026, 3, 9))
    bench.minutes_import.file(bench.minutes_import.propose(csv_file("a,b\n2026-03-09,30\n")))
    assert minutes(bench) == {date(2026, 3, 9): 30}
    assert len(bench.minutes_import._store.sessions.of_day(date(2026, 3, 9))) == 1


def test_days_that_can_be_read_in_two_ways_are_asked_about(bench, csv_file):
    path = csv_file("day;min\n03/02/2026;30\n04/02/2026;20\n")
    proposal = bench.minutes_import.propose(path)
    assert proposal.new == {}
    assert set(proposal.question) == {DateOrder.DAY_MONTH_YEAR, DateOrder.MONTH_DAY_YEAR}
    assert bench.minutes_import.file(proposal) == 0
    settled = mapping_of(proposal.table, None, None, None, DateOrder.DAY_MONTH_YEAR)
    answered = bench.minutes_import.propose(path, settled)
    assert list(answered.new) == [date(2026, 2, 3), date(2026, 2, 4)]


def test_columns_named_by_the_player(bench, csv_file):
    path = csv_file("when,warm-up,all\n2026-03-09,10,1.5\n", encoding="cp1252")
    table = bench.minutes_import.propose(path).table
    mapped = mapping_of(table, "When", "ALL", AmountUnit.HOURS, None)
    assert bench.minutes_import.propose(path, mapped).new == {date(2026, 3, 9): 90}
    with pytest.raises(PlainFailure, match="no column 'some'"):
        mapping_of(table, "some", None, None, None)
    same = mapping_of(table, "when", "when", None, None)
    with pytest.raises(PlainFailure, match="One column"):
        bench.minutes_import.propose(path, same)


def test_files_that_are_none(bench, csv_file, tmp_path):
    for path in (csv_file(""), csv_file("only one column\n"), tmp_path / "not there.csv"):
        with pytest.raises(PlainFailure):
            bench.minutes_import.propose(path)
    with pytest.raises(PlainFailure, match="not clear which column"):
        mapping_of(
            bench.minutes_import.propose(csv_file("a,b\nx,y\n")).table, None, None, None, None
        )
