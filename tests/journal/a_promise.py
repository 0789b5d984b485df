"""A promise of a hundred days, and its days by their number."""

from datetime import UTC, date, datetime, timedelta

from app.journal.promises import Promise, PromiseRule, Stretch, checked

START = date(2026, 1, 1)  # a Thursday
NOW = datetime(2026, 1, 1, 18, tzinfo=UTC)


def day(number: int) -> date:
    return START + timedelta(days=number - 1)


def promise(days: int = 100, stretch: Stretch = Stretch.IN_TOTAL, **rule: object) -> Promise:
    first = PromiseRule(START, stretch, days, **rule)  # type: ignore[arg-type]
    return checked(Promise("p", "Every day", START, (first,), NOW))
