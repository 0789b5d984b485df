"""Which take of this week a year ago is worth hearing against now."""

from dataclasses import replace
from datetime import UTC, date, datetime

import pytest

from app.journal.kinds import Origin
from app.journal.records import PlayingSettings, Take
from app.journal.year_ago import same_day, year_ago

TODAY = date(2026, 11, 25)


def take(day: str, passage: str | None = "p1", hour: int = 19) -> Take:
    on = date.fromisoformat(day)
    at = datetime(on.year, on.month, on.day, hour, tzinfo=UTC)
    return Take(
        f"{passage}-{day}-{hour}", "s", passage, on, 1, at, at, Origin.RECORDED, "f", "0" * 64,
        20.0, 48000, 1, PlayingSettings(),
    )  # fmt: skip


def chosen(*takes: Take, today: date = TODAY) -> tuple[int, str, str] | None:
    found = year_ago(takes, today)
    return None if found is None else (found.years, found.then.id[3:13], found.now.id[3:13])


@pytest.mark.parametrize(
    ("day", "is_this_week"),
    [
        ("2025-11-21", False),
        ("2025-11-22", True),
        ("2025-11-25", True),
        ("2025-11-28", True),
        ("2025-11-29", False),
    ],
)
def test_three_days_before_and_after_the_date_are_this_week(day, is_this_week):
    assert (chosen(take(day), take("2026-11-24")) is not None) is is_this_week


def test_the_latest_take_of_the_same_passage_is_the_one_of_now():
    found = chosen(
        take("2025-11-24"), take("2026-11-01"), take("2026-11-20"), take("2026-11-25", "p2")
    )
    assert found == (1, "2025-11-24", "2026-11-20")


def test_nothing_was_played_since_so_there_is_nothing_to_hear_it_against():
    assert chosen(take("2025-11-24")) is None
    assert chosen(take("2025-11-24"), take("2025-12-01")) is None


def test_without_a_take_of_last_year_an_older_one_counts():
    assert chosen(take("2023-11-26"), take("2026-11-01")) == (3, "2023-11-26", "2026-11-01")
    found = chosen(take("2023-11-26"), take("2025-11-28"), take("2026-11-01"))
    assert found == (1, "2025-11-28", "2026-11-01")


def test_of_several_passages_the_one_played_last_is_offered():
    found = year_ago(
        [
            take("2025-11-25", "p1"), take("2026-09-01", "p1"),
            take("2025-11-22", "p2"), take("2026-11-24", "p2"),
        ],
        TODAY,
    )  # fmt: skip
    assert found is not None
    assert found.then.passage_id == "p2"


def test_of_several_takes_the_one_nearest_to_the_date_is_offered():
    assert chosen(take("2025-11-22"), take("2025-11-26"), take("2026-11-01"))[1] == "2025-11-26"


def test_deleted_and_unfiled_takes_and_takes_ahead_of_today_are_passed_over():
    gone = replace(take("2025-11-25"), deleted_at=datetime(2026, 1, 1, tzinfo=UTC))
    assert chosen(gone, take("2026-11-01")) is None
    assert chosen(take("2025-11-25", None), take("2026-11-01", None)) is None
    assert chosen(take("2025-11-25"), take("2026-12-24")) is None


def test_the_leap_day_looks_back_to_the_28th():
    assert same_day(date(2028, 2, 29), 1) == date(2027, 2, 28)
    assert same_day(date(2028, 2, 29), 4) == date(2024, 2, 29)


def test_the_week_reaches_over_new_year():
    found = chosen(take("2024-12-30"), take("2025-12-20"), today=date(2026, 1, 2))
    assert found == (1, "2024-12-30", "2025-12-20")
