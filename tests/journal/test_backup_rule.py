"""Which backups stay: an old one is still there when it is needed."""

from datetime import datetime, timedelta

from hypothesis import given
from hypothesis import strategies as st

from app.journal.backup_rule import DAILY, WEEKLY, kept

INSTANTS = st.datetimes(min_value=datetime(2015, 1, 1), max_value=datetime(2030, 12, 31))


def oracle(made: set[datetime]) -> set[datetime]:
    """Walk through every day, week and year from the newest backwards; slow and obvious."""
    stay, days, weeks, years = set(), [], [], []
    for at in sorted(made, reverse=True):
        day, week, year = at.date(), tuple(at.isocalendar())[:2], at.year
        if day not in days and len(days) < 7:
            stay.add(at)
        days.append(day)
        if week not in weeks and len(set(weeks)) < 8:
            stay.add(at)
        weeks.append(week)
        if year not in years:
            stay.add(at)
        years.append(year)
        days = list(dict.fromkeys(days))
        weeks = list(dict.fromkeys(weeks))
    return stay


@given(st.sets(INSTANTS, max_size=60))
def test_the_rule_is_seven_days_eight_weeks_and_every_year(made):
    assert kept(made) == oracle(made)


def test_three_years_of_daily_backups_leave_a_week_two_months_and_the_years():
    start = datetime(2023, 1, 1, 22)
    made = [start + timedelta(days=n) for n in range(3 * 365)]
    stay = sorted(kept(made), reverse=True)
    assert stay[:DAILY] == sorted(made, reverse=True)[:DAILY]
    assert {at.year for at in stay} == {2023, 2024, 2025}
    assert len(stay) <= DAILY + WEEKLY + 3


def test_a_pause_of_half_a_year_takes_no_backup_away():
    before = [datetime(2025, 3, day, 21) for day in range(1, 8)]
    assert kept([*before, datetime(2025, 10, 1, 21)]) >= frozenset(before[1:])


def test_without_backups_nothing_stays():
    assert kept([]) == frozenset()
