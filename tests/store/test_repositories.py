"""Records in and out of the database.

Longer than 300 lines: cases of one subject, each of them read by itself.
"""

import threading
from collections.abc import Iterator
from contextlib import ExitStack
from dataclasses import replace
from datetime import UTC, date, datetime, timedelta, timezone
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from sqlalchemy.exc import IntegrityError

from app.journal.failures import PlainFailure
from app.journal.kinds import MarkerState
from app.journal.records import (
    JournalSettings,
    Marker,
    MeasurementHeadline,
    Passage,
    RestDay,
    Session,
    Take,
)
from app.store.columns import instant_of, instant_text
from app.store.measurements import without_lists
from app.store.store import Store
from tests.journal import strategies as some
from tests.store.making import (
    DAY,
    NOW,
    make_marker,
    make_measurement,
    make_passage,
    make_session,
    make_take,
    new_id,
    opened,
)

AGAIN = [HealthCheck.function_scoped_fixture]


@pytest.fixture(scope="module")
def shared(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Store]:
    with opened(tmp_path_factory.mktemp("shared")) as store:
        yield store


@given(some.takes, some.sessions, some.passages, st.lists(some.markers, max_size=3))
@settings(max_examples=25, deadline=None)
def test_every_record_comes_back_as_it_went(
    shared: Store, take: Take, session: Session, passage: Passage, markers: list[Marker]
) -> None:
    session, passage = replace(session, id=new_id()), replace(passage, id=new_id())
    has_passage = take.passage_id is not None
    take = replace(
        take,
        id=new_id(),
        file=f"2026/2026-03-01/{new_id()}.flac",
        session_id=session.id,
        passage_id=passage.id if has_passage else None,
    )
    markers = [replace(marker, id=new_id(), take_id=take.id) for marker in markers]
    with shared.transaction():
        shared.sessions.add(session)
        shared.passages.add(passage)
        shared.takes.add(take)
        for marker in markers:
            shared.markers.add(marker)
    kept = shared.takes.get(take.id)
    assert kept == take
    assert kept.recorded_at.utcoffset() == take.recorded_at.utcoffset()
    assert shared.sessions.get(session.id) == session
    assert shared.passages.get(passage.id) == passage
    by_id = {marker.id: marker for marker in markers}
    assert {m.id: m for m in shared.markers.for_take(take.id)} == by_id


@given(some.instants, some.instants)
def test_instants_sort_as_text_and_keep_their_offset(a: datetime, b: datetime) -> None:
    assert instant_of(instant_text(a)) == a
    assert instant_of(instant_text(a)).utcoffset() == a.utcoffset()
    earlier = instant_text(a).partition("/")[0] < instant_text(b).partition("/")[0]
    assert earlier == (a < b)


def test_an_offset_with_seconds() -> None:
    local_mean_time = timezone(timedelta(hours=-4, minutes=-56, seconds=-2))
    instant = datetime(1880, 1, 1, 12, tzinfo=local_mean_time)
    assert instant_text(instant) == "1880-01-01T16:56:02.000000Z/-04:56:02"
    assert instant_of(instant_text(instant)).utcoffset() == local_mean_time.utcoffset(None)


def add(store: Store, *takes: Take) -> None:
    for take in takes:
        store.takes.add(take)


def test_takes_are_listed_as_they_were_played(store: Store) -> None:
    later, earlier = make_session(DAY + timedelta(days=1)), make_session()
    passage = make_passage()
    store.sessions.add(later)
    store.sessions.add(earlier)
    store.passages.add(passage)
    third = make_take(later, passage)
    first, second = make_take(earlier, passage, 1), make_take(earlier, None, 2)
    gone = make_take(earlier, passage, 3, deleted_at=NOW)
    add(store, third, gone, second, first)
    assert store.takes.list() == (first, second, third)
    assert store.takes.list(include_deleted=True) == (first, second, gone, third)
    assert store.takes.list(passage_id=passage.id) == (first, third)
    assert store.takes.of_day(DAY) == (first, second)
    assert store.takes.list(first_day=DAY + timedelta(days=1)) == (third,)
    assert store.takes.list(last_day=DAY) == (first, second)
    assert store.takes.counts_by_day(DAY, DAY + timedelta(days=9)) == {
        DAY: 2,
        DAY + timedelta(days=1): 1,
    }
    assert store.takes.first_and_last_day() == (DAY, DAY + timedelta(days=1))
    assert store.takes.last_of_passages() == {passage.id: DAY + timedelta(days=1)}
    assert store.takes.day_counts_of_passages() == {passage.id: 2}
    assert store.takes.of_ids([gone.id, first.id, "nobody"]) == {gone.id: gone, first.id: first}


def test_an_empty_journal(store: Store) -> None:
    assert store.takes.list() == ()
    assert store.takes.first_and_last_day() is None
    assert store.sessions.first_and_last_day() is None
    assert store.takes.get("nobody") is None
    assert store.markers.get("nobody") is None
    assert store.markers.remove("nobody") is None
    assert store.passages.get("nobody") is None
    assert store.sessions.get("nobody") is None
    assert store.measurements.get("nobody") is None
    assert store.measurements.headline("nobody") is None
    assert store.takes.of_ids([]) == {}
    assert store.settings.get() == JournalSettings()


def test_numbers_of_takes(store: Store) -> None:
    session, passage = make_session(), make_passage()
    store.sessions.add(session)
    store.passages.add(passage)
    assert store.takes.next_number(DAY, passage.id) == 1
    add(store, make_take(session, passage, 1), make_take(session, passage, 2, deleted_at=NOW))
    add(store, make_take(session, None, 7))
    assert store.takes.next_number(DAY, passage.id) == 3
    assert store.takes.next_number(DAY, None) == 8
    assert store.takes.next_number(DAY + timedelta(days=1), passage.id) == 1


def test_finding_takes(store: Store) -> None:
    session = make_session()
    store.sessions.add(session)
    one = make_take(session, id="ab" + "0" * 30, file="2026/2026-03-01/a.flac", sha256="1" * 64)
    two = make_take(session, id="ac" + "f" * 30, sha256="1" * 64, deleted_at=NOW)
    add(store, one, two)
    assert store.takes.starting_with("AB") == (one,)
    assert set(store.takes.starting_with("a")) == {one, two}
    assert store.takes.starting_with("acf") == (two,)
    assert store.takes.starting_with(two.id) == (two,)
    for nothing in ("", "%", "_", "a%", "zz"):
        assert store.takes.starting_with(nothing) == ()
    assert store.takes.by_file("2026/2026-03-01/a.flac") == one
    assert store.takes.by_file("2026/2026-03-01/b.flac") is None
    assert set(store.takes.by_sha256("1" * 64)) == {one, two}


def test_two_takes_never_share_a_recording(store: Store) -> None:
    session = make_session()
    store.sessions.add(session)
    take = make_take(session)
    store.takes.add(take)
    with pytest.raises(IntegrityError):
        store.takes.add(replace(make_take(session), file=take.file))


def test_foreign_keys_hold(store: Store) -> None:
    session = make_session()
    with pytest.raises(IntegrityError):
        store.takes.add(make_take(session))
    store.sessions.add(session)
    with pytest.raises(IntegrityError):
        store.markers.add(make_marker(make_take(session)))


def test_replacing_what_is_not_there(store: Store) -> None:
    session, passage = make_session(), make_passage()
    take = make_take(session)
    with pytest.raises(KeyError):
        store.takes.replace(take)
    with pytest.raises(KeyError):
        store.markers.replace(make_marker(take))
    with pytest.raises(KeyError):
        store.passages.replace(passage)
    with pytest.raises(KeyError):
        store.sessions.replace(session)


def test_replacing(store: Store) -> None:
    session, passage = make_session(), make_passage()
    store.sessions.add(session)
    store.passages.add(passage)
    take = make_take(session, passage)
    store.takes.add(take)
    marker = make_marker(take)
    store.markers.add(marker)
    changed_take = replace(take, aim="softer", practice_day=DAY + timedelta(days=1))
    store.takes.replace(changed_take)
    store.markers.replace(replace(marker, text="better"))
    store.passages.replace(replace(passage, bars="9-16"))
    store.sessions.replace(replace(session, minutes=31.5))
    assert store.takes.get(take.id) == changed_take
    assert store.markers.get(marker.id) == replace(marker, text="better")
    assert store.passages.list() == (replace(passage, bars="9-16"),)
    assert store.sessions.get(session.id) == replace(session, minutes=31.5)


def test_passages_come_by_piece_and_name_with_numbers_by_size(store: Store) -> None:
    plain = make_passage()
    names = [
        ("Suite 2", "b"),
        ("suite 10", "a"),
        ("Suite 2", "A 10"),
        ("Suite 2", "a 9"),
        ("É", "x"),
    ]
    for at, (piece, name) in enumerate(names):
        store.passages.add(replace(plain, id=f"p{at}", piece=piece, name=name))
    listed = [(passage.piece, passage.name) for passage in store.passages.list()]
    assert listed == [
        ("É", "x"),
        ("Suite 2", "a 9"),
        ("Suite 2", "A 10"),
        ("Suite 2", "b"),
        ("suite 10", "a"),
    ]


def test_markers_of_many_takes_in_one_go(store: Store) -> None:
    session = make_session()
    store.sessions.add(session)
    takes = [make_take(session, None, n) for n in range(1, 4)]
    add(store, *takes)
    markers = [make_marker(takes[0], 2.0), make_marker(takes[0], 1.0), make_marker(takes[2], 5.0)]
    for marker in markers:
        store.markers.add(marker)
    assert store.markers.for_take(takes[0].id) == (markers[1], markers[0])
    assert store.markers.for_takes(take.id for take in takes) == {
        takes[0].id: (markers[1], markers[0]),
        takes[2].id: (markers[2],),
    }
    assert store.markers.counts() == {takes[0].id: 2, takes[2].id: 1}
    assert store.markers.counts([takes[2].id, takes[1].id]) == {takes[2].id: 1}
    assert store.markers.remove(markers[2].id) == markers[2]
    assert store.markers.counts() == {takes[0].id: 2}


def test_more_ids_than_a_statement_can_carry(store: Store, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("app.store.work.MAX_VARIABLES", 50)
    session = make_session()
    store.sessions.add(session)
    takes = [make_take(session, None, n) for n in range(1, 123)]
    with store.transaction():
        for take in takes:
            store.takes.add(take)
            store.markers.add(make_marker(take))
    ids = [take.id for take in takes]
    assert store.takes.of_ids(ids) == {take.id: take for take in takes}
    assert len(store.markers.for_takes(ids)) == len(store.markers.counts(ids)) == 122


def test_what_is_open(store: Store) -> None:
    session, passage = make_session(), make_passage()
    store.sessions.add(session)
    store.passages.add(passage)
    take, gone = make_take(session, passage), make_take(session, None, deleted_at=NOW)
    add(store, take, gone)
    later = NOW + timedelta(hours=1)
    settled = make_marker(take, state=MarkerState.SETTLED, weight=3)
    light = make_marker(take, weight=1, changed_at=later)
    heavy = make_marker(take, weight=3, state=MarkerState.RETURNED)
    heavy_later = make_marker(take, weight=3, changed_at=later)
    for marker in (settled, light, heavy, heavy_later, make_marker(gone, weight=3)):
        store.markers.add(marker)
    assert store.markers.list_open(10) == (heavy_later, heavy, light)
    assert store.markers.list_open(1) == (heavy_later,)
    assert store.markers.list_open(10, passage_id=passage.id) == (heavy_later, heavy, light)
    assert store.markers.list_open(10, passage_id="other") == ()
    assert store.markers.categories() == ("intonation",)


def test_minutes_of_days(store: Store) -> None:
    for minutes in (20.0, 15.5, None):
        store.sessions.add(make_session(minutes=minutes))
    store.sessions.add(make_session(DAY + timedelta(days=1)))
    store.sessions.add(make_session(DAY + timedelta(days=2), minutes=0.0))
    assert store.sessions.minutes_by_day(DAY, DAY + timedelta(days=9)) == {
        DAY: 35.5,
        DAY + timedelta(days=2): 0.0,
    }
    assert store.sessions.first_and_last_day() == (DAY, DAY + timedelta(days=2))
    assert len(store.sessions.of_day(DAY)) == 3


def test_rest_days(store: Store) -> None:
    store.rest_days.put(RestDay(DAY, planned=True))
    store.rest_days.put(RestDay(DAY, planned=False))
    store.rest_days.put(RestDay(DAY + timedelta(days=5), planned=True))
    assert store.rest_days.get(DAY) == RestDay(DAY, planned=False)
    assert store.rest_days.list(first_day=DAY + timedelta(days=1)) == (
        RestDay(DAY + timedelta(days=5), planned=True),
    )
    store.rest_days.remove(DAY)
    store.rest_days.remove(date(2000, 1, 1))
    assert store.rest_days.get(DAY) is None


@given(some.journal_settings)
@settings(max_examples=20, deadline=None, suppress_health_check=AGAIN)
def test_settings_are_kept(shared: Store, chosen: JournalSettings) -> None:
    shared.settings.replace(chosen)
    assert shared.settings.get() == chosen


def test_measurements(store: Store) -> None:
    session = make_session()
    store.sessions.add(session)
    old, new = make_take(session, None, 1), make_take(session, None, 2)
    gone = make_take(session, None, 3, deleted_at=NOW)
    add(store, old, new, gone)
    assert store.measurements.waiting("take-1") == (new.id, old.id)
    measurement = make_measurement(old)
    store.measurements.put(measurement)
    store.measurements.put(measurement)
    assert store.measurements.get(old.id) == measurement
    assert store.measurements.headline(old.id) == MeasurementHeadline(
        take_id=old.id,
        algorithm="take-1",
        measured_at=NOW,
        summary={
            "schema": 1,
            "intonation": {"status": "measured", "mean_absolute_cents": 8.25},
            "tempo": {"mean_bpm": 72.0},
        },
    )
    assert store.measurements.waiting("take-1") == (new.id,)
    assert store.measurements.waiting("take-2") == (new.id, old.id)
    failed = make_measurement(new, failure="The file cannot be read.", summary={}, curves=b"")
    store.measurements.put(failed)
    assert store.measurements.get(new.id) == failed
    assert store.measurements.waiting("take-1") == ()
    assert set(store.measurements.headlines()) == {old.id, new.id}
    assert set(store.measurements.headlines([new.id])) == {new.id}
    store.measurements.mark_stale(old.id)
    assert store.measurements.waiting("take-1") == (old.id,)
    assert store.measurements.get(old.id) == replace(measurement, stale=True)
    store.measurements.remove(old.id)
    assert store.measurements.get(old.id) is None


def test_a_measurement_is_stored_small(store: Store, journal: Path) -> None:
    session = make_session()
    store.sessions.add(session)
    take = make_take(session)
    store.takes.add(take)
    notes = [{"name": "D4", "deviation_cents": -4.5, "start_s": 0.5 * n} for n in range(4000)]
    measurement = make_measurement(take, summary={"notes": notes}, curves=b"")
    before = journal.joinpath("journal.db-wal").stat().st_size
    store.measurements.put(measurement)
    assert journal.joinpath("journal.db-wal").stat().st_size - before < 60_000
    assert store.measurements.get(take.id) == measurement


def test_numbers_json_does_not_have_are_refused(store: Store) -> None:
    session = make_session()
    store.sessions.add(session)
    take = make_take(session)
    store.takes.add(take)
    with pytest.raises(ValueError, match="JSON"):
        store.measurements.put(make_measurement(take, summary={"mean_bpm": float("nan")}))
    assert store.measurements.get(take.id) is None


def test_lists_are_left_out_at_any_depth() -> None:
    full = {"a": [1], "b": {"c": [2], "d": {"e": (), "f": None}}, "g": "h"}
    assert without_lists(full) == {"b": {"d": {"f": None}}, "g": "h"}


def _add_and_fail(store: Store, take: Take) -> None:
    with store.transaction():
        store.takes.add(take)
        store.takes.replace(replace(take, id="nobody"))


def test_a_transaction_is_all_or_nothing(store: Store) -> None:
    session = make_session()
    store.sessions.add(session)
    with pytest.raises(KeyError):
        _add_and_fail(store, make_take(session))
    assert store.takes.list() == ()
    assert store.sidecars.due() == frozenset()


def test_a_failure_inside_undoes_the_inner_part_only(store: Store) -> None:
    session = make_session()
    with store.transaction():
        store.sessions.add(session)
        with pytest.raises(KeyError):
            _add_and_fail(store, make_take(session))
        kept = make_take(session)
        store.takes.add(kept)
    assert store.takes.list() == (kept,)


def test_several_threads_take_turns(store: Store) -> None:
    session = make_session()
    store.sessions.add(session)
    failures: list[BaseException] = []

    def work() -> None:
        try:
            for number in range(1, 11):
                with store.transaction():
                    take = make_take(session, None, number)
                    store.takes.add(take)
                    store.markers.add(make_marker(take))
        except BaseException as failure:
            failures.append(failure)

    threads = [threading.Thread(target=work) for _ in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert not failures
    assert len(store.takes.list()) == len(store.markers.counts()) == 40


def test_a_closed_journal_can_be_closed_again(tmp_path: Path) -> None:
    store = opened(tmp_path)
    store.close()
    store.close()
    with ExitStack() as held:
        held.enter_context(opened(tmp_path)).settings.get()


def test_utc_and_local_are_one_instant(store: Store) -> None:
    session = make_session(started_at=NOW.astimezone(UTC))
    store.sessions.add(session)
    assert store.sessions.get(session.id) == replace(session, started_at=NOW)


def test_a_closed_journal_refuses(tmp_path: Path) -> None:
    store = opened(tmp_path)
    store.close()
    with pytest.raises(RuntimeError, match="closed"):
        store.takes.list()


def test_what_no_sidecar_can_hold_is_refused(store: Store) -> None:
    session = make_session()
    store.sessions.add(session)
    for odd in ({"duration_s": float("inf")}, {"recorded_at": datetime(2026, 3, 1)}, {"aim": 3}):
        with pytest.raises(ValueError, match="Take"):
            store.takes.add(make_take(session, **odd))
    assert store.takes.list() == ()


@pytest.mark.parametrize("hour", [-1, 12, 24])
def test_the_day_turns_at_a_sensible_hour(store: Store, hour: int) -> None:
    with pytest.raises(PlainFailure, match="cannot turn"):
        store.settings.replace(JournalSettings(day_turn_hour=hour))
    with store.transaction() as connection:
        connection.exec_driver_sql("INSERT INTO setting VALUES ('day_turn_hour', ?)", (str(hour),))
    assert store.settings.get() == JournalSettings()
