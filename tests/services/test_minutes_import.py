"""Minutes from a CSV file: proposed, asked about, filed once."""

from datetime import date

import pytest

from app.journal.failures import PlainFailure
from app.journal.kinds import MinutesSource
from app.journal.minutes_table import AmountUnit, Mapped
from app.journal.written_days import DateOrder
from app.services.minutes_import import mapping_of

TODAY = date(2026, 3, 14)
YMD = DateOrder.YEAR_MONTH_DAY


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


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "cp1252", "utf-16"])
def test_every_usual_encoding(bench, csv_file, encoding):
    path = csv_file("Datum;Übezeit (Minuten)\n9. März 2026;30\n", encoding=encoding)
    proposal = bench.minutes_import.propose(path)
    assert proposal.table.header == ("Datum", "Übezeit (Minuten)")
    assert proposal.new == {date(2026, 3, 9): 30}


@pytest.mark.parametrize(
    ("content", "sentence"),
    [
        (b"", "minutes.csv is empty."),
        # How a spreadsheet (a ZIP archive, APPNOTE 4.3.7) and a picture (PNG) begin.
        (b"PK\x03\x04\x14\x00\x06\x00" + bytes(99), "minutes.csv is not a text file."),
        (b"\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR", "minutes.csv is not a text file."),
        (b"\xff\xfe\x00", "minutes.csv is not a text file."),  # half a sign of UTF-16
        (b"\x81\x8d\x8f,\x90\n", "minutes.csv is not a text file."),  # no signs in cp1252
        (b"  \n\t\n", "The file is no table with a column of days and one of minutes."),
    ],
)
def test_what_is_no_text_or_no_table_is_said_in_one_sentence(bench, tmp_path, content, sentence):
    path = tmp_path / "minutes.csv"
    path.write_bytes(content)
    with pytest.raises(PlainFailure) as failure:
        bench.minutes_import.propose(path)
    assert failure.value.sentence == sentence
    assert failure.value.next_step


def test_a_file_too_large_to_be_minutes(bench, tmp_path):
    path = tmp_path / "minutes.csv"
    with path.open("wb") as file:
        file.truncate(20_000_001)
    with pytest.raises(PlainFailure, match="larger than 20 MB"):
        bench.minutes_import.propose(path)


def test_today_is_filed_and_tomorrow_is_left_out(bench, csv_file):
    path = csv_file("Date,Minutes\n1899-12-31,9\n2019-03-13,20\n2026-03-14,30\n2026-03-15,40\n")
    proposal = bench.minutes_import.propose(path, Mapped(0, 1, AmountUnit.MINUTES, YMD))
    assert proposal.new == {date(2019, 3, 13): 20, TODAY: 30}
    assert proposal.ahead == (date(2026, 3, 15),)
    assert proposal.unread == ((1, "'1899-12-31' is no day"),)


def test_the_same_row_again_is_told(bench, csv_file):
    path = csv_file("Date,Minutes\n2026-03-09,30\n2026-03-09,30\n")
    proposal = bench.minutes_import.propose(path)
    assert proposal.new == {date(2026, 3, 9): 60}
    assert proposal.sentence == (
        "1 day new (1 h) and 1 row the same as an earlier one, counted as another sitting."
    )


def test_days_whose_hours_were_typed_in_as_one_entry_are_told(bench, csv_file):
    bench.record.set_earlier_hours(1200, until=date(2026, 3, 9))
    path = csv_file("Date,Minutes\n2026-03-08,30\n2026-03-09,30\n2026-03-10,30\n")
    proposal = bench.minutes_import.propose(path)
    assert proposal.before == (date(2026, 3, 8), date(2026, 3, 9))
    assert "2 days until Mon 9 Mar 2026 may be in the hours from before this journal already" in (
        proposal.sentence
    )


def test_files_that_are_none(bench, csv_file, tmp_path):
    for path in (csv_file(""), csv_file("only one column\n"), tmp_path / "not there.csv"):
        with pytest.raises(PlainFailure):
            bench.minutes_import.propose(path)
    with pytest.raises(PlainFailure, match="not clear which column"):
        mapping_of(
            bench.minutes_import.propose(csv_file("a,b\nx,y\n")).table, None, None, None, None
        )
