"""The practice day of an instant."""

from datetime import UTC, date, datetime, timedelta, timezone
from zoneinfo import ZoneInfo

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from app.journal.practice_days import day_span, local_time, next_turn, practice_day

BERLIN = ZoneInfo("Europe/Berlin")
NEW_YORK = ZoneInfo("America/New_York")
APIA = ZoneInfo("Pacific/Apia")

# Ordinary ones, a half-hour change, a 45-minute offset, changes at midnight, a date
# that was skipped, and none at all.
ZONES = [
    ZoneInfo(name)
    for name in (
        "Europe/Berlin",
        "America/New_York",
        "America/Sao_Paulo",
        "America/Havana",
        "Asia/Beirut",
        "Asia/Kathmandu",
        "Australia/Lord_Howe",
        "Pacific/Apia",
        "Pacific/Kiritimati",
        "Africa/Casablanca",
        "UTC",
    )
]

zones = st.sampled_from(ZONES)
turns = st.integers(0, 11)
instants = st.datetimes(
    min_value=datetime(1975, 1, 1), max_value=datetime(2037, 12, 31), timezones=st.just(UTC)
)


@pytest.mark.parametrize(
    ("local", "expected"),
    [
        ("2026-03-02 03:59:59", date(2026, 3, 1)),
        ("2026-03-02 04:00:00", date(2026, 3, 2)),
        ("2026-03-02 00:00:00", date(2026, 3, 1)),
        ("2026-03-02 23:59:59", date(2026, 3, 2)),
        ("2026-01-01 01:00:00", date(2025, 12, 31)),
        ("2024-03-01 02:00:00", date(2024, 2, 29)),
    ],
)
def test_day_turns_at_four(local: str, expected: date) -> None:
    instant = datetime.fromisoformat(local).replace(tzinfo=BERLIN)
    assert practice_day(instant, zone=BERLIN) == expected


# The changes of the clocks are those of the IANA time zone database: in 2026 Central
# Europe goes to summer time on 29 March, 01:00 UTC, and back on 25 October, 01:00 UTC.
def test_wall_clock_decides_when_the_clocks_change() -> None:
    spring = datetime(2026, 3, 29, 1, 59, tzinfo=UTC)  # 03:59 in summer time
    assert practice_day(spring, zone=BERLIN) == date(2026, 3, 28)
    assert practice_day(spring + timedelta(minutes=1), zone=BERLIN) == date(2026, 3, 29)
    autumn = datetime(2026, 10, 25, 2, 59, tzinfo=UTC)  # 03:59 in winter time
    assert practice_day(autumn, zone=BERLIN) == date(2026, 10, 24)
    assert practice_day(autumn + timedelta(minutes=1), zone=BERLIN) == date(2026, 10, 25)


@pytest.mark.parametrize(
    ("day", "hours"),
    [
        (date(2026, 3, 27), 24),
        (date(2026, 3, 28), 23),  # its night has the change
        (date(2026, 10, 24), 25),
        (date(2026, 10, 25), 24),
    ],
)
def test_length_of_a_practice_day(day: date, hours: int) -> None:
    start, end = day_span(day, BERLIN)
    assert end - start == timedelta(hours=hours)


def test_turn_in_the_hour_that_is_skipped() -> None:
    start, _ = day_span(date(2026, 3, 29), BERLIN, turn_hour=2)
    assert start == datetime(2026, 3, 29, 1, 0, tzinfo=UTC)


def test_turn_in_the_hour_that_comes_twice() -> None:
    start, _ = day_span(date(2026, 10, 25), BERLIN, turn_hour=2)
    assert start == datetime(2026, 10, 25, 0, 0, tzinfo=UTC)  # its first time


def test_turn_jumped_over_in_the_middle_of_a_gap() -> None:
    # Toronto 1919: 23:30 on 30 March became 00:30 on the 31st (IANA database).
    toronto = ZoneInfo("America/Toronto")
    start, _ = day_span(date(1919, 3, 31), toronto, turn_hour=0)
    assert start == datetime(1919, 3, 31, 4, 30, tzinfo=UTC)  # to the second
    assert start.astimezone(toronto).replace(tzinfo=None) == datetime(1919, 3, 31, 0, 30)
    assert practice_day(start, turn_hour=0, zone=toronto) == date(1919, 3, 31)
    before = start - timedelta(seconds=1)
    assert practice_day(before, turn_hour=0, zone=toronto) == date(1919, 3, 30)


def test_date_that_a_place_skipped() -> None:
    # Samoa had no 30 December 2011 (IANA database).
    start, end = day_span(date(2011, 12, 30), APIA, turn_hour=0)
    assert start == end


def test_travelling_west_plays_twice_on_one_day() -> None:
    morning_in_berlin = datetime(2026, 5, 1, 8, 0, tzinfo=BERLIN)
    evening_in_new_york = datetime(2026, 5, 1, 22, 0, tzinfo=NEW_YORK)
    assert evening_in_new_york.astimezone(BERLIN).date() == date(2026, 5, 2)
    assert practice_day(morning_in_berlin, zone=BERLIN) == date(2026, 5, 1)
    assert practice_day(evening_in_new_york, zone=NEW_YORK) == date(2026, 5, 1)


def test_own_offset_counts_without_a_zone() -> None:
    phone = datetime(2026, 5, 2, 3, 30, tzinfo=timezone(timedelta(hours=9)))
    assert practice_day(phone) == date(2026, 5, 1)
    assert practice_day(phone, zone=UTC) == date(2026, 5, 1)
    assert practice_day(phone, turn_hour=0) == date(2026, 5, 2)


@given(instants, zones, turns)
@example(datetime(2026, 3, 29, 1, 0, tzinfo=UTC), BERLIN, 2)
@example(datetime(2011, 12, 30, 9, 59, tzinfo=UTC), APIA, 0)
def test_every_instant_lies_in_the_span_of_its_day(
    instant: datetime, zone: ZoneInfo, turn_hour: int
) -> None:
    day = practice_day(instant, turn_hour=turn_hour, zone=zone)
    start, end = day_span(day, zone, turn_hour=turn_hour)
    assert start <= instant < end
    assert next_turn(instant, zone, turn_hour=turn_hour) == end


@given(st.dates(date(1975, 1, 2), date(2037, 12, 30)), zones, turns)
def test_days_follow_each_other_without_gap(day: date, zone: ZoneInfo, turn_hour: int) -> None:
    _, end = day_span(day, zone, turn_hour=turn_hour)
    start, _ = day_span(day + timedelta(days=1), zone, turn_hour=turn_hour)
    assert end == start


@given(instants, st.integers(0, 48 * 60), zones, turns)
def test_time_never_goes_back_a_day(
    instant: datetime, minutes: int, zone: ZoneInfo, turn_hour: int
) -> None:
    later = instant + timedelta(minutes=minutes)
    first = practice_day(instant, turn_hour=turn_hour, zone=zone)
    assert practice_day(later, turn_hour=turn_hour, zone=zone) >= first


@given(instants, zones, turns)
def test_wall_clock_rule_spelled_out(instant: datetime, zone: ZoneInfo, turn_hour: int) -> None:
    wall = local_time(instant, zone)
    day = practice_day(instant, turn_hour=turn_hour, zone=zone)
    expected = wall.date() if wall.hour >= turn_hour else wall.date() - timedelta(days=1)
    assert day == expected


def test_refuses_an_instant_without_a_zone() -> None:
    with pytest.raises(ValueError, match="time zone"):
        practice_day(datetime(2026, 1, 1))


@pytest.mark.parametrize("turn_hour", [-1, 12, 24])
def test_refuses_a_turn_that_is_none(turn_hour: int) -> None:
    with pytest.raises(ValueError, match="turns"):
        practice_day(datetime(2026, 1, 1, tzinfo=UTC), turn_hour=turn_hour)
