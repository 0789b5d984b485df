"""The lists that choosers want, and when they are read again."""

from datetime import date

import pytest

from app.services import rows
from app.services.take_lists import lists_of
from app.store.work import Work
from app.wiring import open_workbench
from tests.store.making import make_marker, make_passage, make_session, make_take

DAY = date(2026, 3, 14)


@pytest.fixture
def bench(tmp_path):
    with open_workbench(tmp_path / "journal") as opened:
        store, passage, session = opened._store, make_passage("Opening"), make_session(DAY)
        with store.transaction():
            store.passages.add(passage)
            store.sessions.add(session)
            for number in (1, 2):
                store.takes.add(make_take(session, passage, number))
            store.takes.add(make_take(session, None, 3))
        yield opened


@pytest.fixture
def asked(monkeypatch):
    """How many rows were put together, call by call."""
    counts, real = [], rows.Rows.of_takes

    def of_takes(self, takes):
        found = real(self, takes)
        counts.append(len(found))
        return found

    monkeypatch.setattr(rows.Rows, "of_takes", of_takes)
    return counts


def test_lists_agree_with_all_takes(bench):
    lists = bench.filing.lists()
    takes = bench.filing.takes()
    assert set(lists.by_id.values()) == set(takes)
    (passage,) = lists.passages
    assert [take.number for take in lists.of_passage(passage.id)] == [1, 2]
    assert [take.number for take in lists.of_passage(None)] == [3]
    assert lists.of_passage("unknown") == ()
    assert lists.latest_id == max(takes, key=lambda take: take.recorded_at).id


def test_an_empty_journal_has_no_latest(tmp_path):
    with open_workbench(tmp_path / "journal") as empty:
        lists = empty.filing.lists()
    assert not lists
    assert lists.latest_id == ""
    assert lists == lists_of((), ())


def test_lists_are_read_once_until_takes_change(bench, asked):
    first = bench.filing.lists()
    assert asked == [3]
    bench.practising.set_minutes(DAY, 20.0)  # no row shows the minutes of a day
    assert bench.filing.lists() is first
    assert asked == [3]
    bench.filing.set_aim(first.latest_id, "slowly")
    changed = bench.filing.lists()
    assert changed.by_id[first.latest_id].aim == "slowly"
    bench.passages.add("Study", "Ending", "", bench.practising.settings().default_settings)
    assert len(bench.filing.lists().passages) == 2


def test_a_marker_changes_its_own_row_only(bench, asked):
    first = bench.filing.lists()
    take = bench._store.takes.get(first.latest_id)
    bench._store.markers.add(make_marker(take, 1.0))
    second = bench.filing.lists()
    assert asked == [3], "all rows were read for one marker"
    assert second.by_id[take.id].marker_count == first.by_id[take.id].marker_count + 1
    others = [take_id for take_id in first.by_id if take_id != take.id]
    assert all(second.by_id[one] is first.by_id[one] for one in others)
    assert set(second.by_id.values()) == set(bench.filing.takes())


def test_what_may_change_elsewhere_is_always_read(bench, tmp_path, asked):
    bench.close()
    with open_workbench(tmp_path / "journal", read_only=True) as looking:
        looking.filing.lists()
        looking.filing.lists()
    assert asked == [3, 3]


def test_every_table_of_a_row_is_watched(bench, monkeypatch):
    """Whatever statement a row is made from reads a table that is watched."""
    from sqlalchemy import event

    from app.services.filing import _SHOWN_IN_ROWS

    read = set()

    def note(_connection, statement, *_how):
        read.update(str(table) for table in getattr(statement, "get_final_froms", tuple)())

    assert isinstance(bench._store._work, Work)
    event.listen(bench._store._work._engine, "after_execute", note)
    bench.filing.takes()
    assert read - {"marker"} <= set(_SHOWN_IN_ROWS), "a change there would not be seen"
    assert {"take", "marker", "measurement"} <= read
