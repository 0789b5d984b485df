"""Every combination of rules against a slow and obvious count.

400 histories in an ordinary run; ``HYPOTHESIS_PROFILE=long`` looks at 10,000.
"""

import itertools
import os
from collections import Counter
from datetime import UTC, date, datetime, timedelta

from hypothesis import given, settings
from hypothesis import strategies as st

from app.journal.printed_numbers import printed_numbers
from app.journal.promise_standing import DayKind, DaysDone, standing
from app.journal.promises import (
    PlannedBreak,
    Promise,
    PromiseRule,
    SharedNumber,
    Stretch,
    checked,
    day_number,
)
from tests.journal.promise_oracle import numbers

HISTORIES = 10_000 if os.environ.get("HYPOTHESIS_PROFILE") == "long" else 400
START = date(2026, 2, 20)
SPAN = 45
NOW = datetime(2026, 2, 20, 18, tzinfo=UTC)

days = st.integers(0, SPAN).map(lambda n: START + timedelta(days=n))


@st.composite
def rules(draw, since: date) -> PromiseRule:
    return PromiseRule(
        since=since,
        stretch=draw(st.sampled_from(Stretch)),
        days=draw(st.integers(1, 12) | st.integers(12, 60)),
        minimum_minutes=draw(st.none() | st.sampled_from([1, 20, 45])),
        minimum_takes=draw(st.none() | st.sampled_from([1, 2])),
        needs_both=draw(st.booleans()),
        rest_days=draw(st.sampled_from([0, 0, 1, 2, 5])),
        rest_weekdays=tuple(sorted(draw(st.sets(st.integers(0, 6), max_size=3)))),
        end=draw(st.none() | st.integers(0, SPAN).map(lambda n: since + timedelta(days=n))),
    )


@st.composite
def promises(draw) -> Promise:
    since = sorted({START, *draw(st.lists(days, max_size=2))})
    edges = sorted(draw(st.sets(days, max_size=4)))
    breaks = [PlannedBreak(a, b) for a, b in zip(edges[::2], edges[1::2], strict=False)]
    return checked(
        Promise(
            id="p",
            name="Every day",
            start=START,
            rules=tuple(draw(rules(day)) for day in since),
            created_at=NOW,
            breaks=tuple(breaks),
            closed_on=draw(st.none() | st.none() | days),
        )
    )


# Minutes, takes and a mark of rest; mostly practised, as people do who made a promise.
day_done = st.tuples(
    st.sampled_from([0.0, 0.0, 0.4, 19.5, 20, 30.0, 44.4, 44.5, 45, 90]),
    st.sampled_from([0, 0, 1, 1, 2, 3]),
    st.sampled_from([False, False, False, True]),
)


@st.composite
def histories(draw) -> DaysDone:
    fewest = draw(st.sampled_from([0, 20]))  # short lists come by themselves, and keep no promise
    drawn = draw(st.lists(day_done | st.just((0.0, 0, False)), min_size=fewest, max_size=SPAN + 6))
    by_day = {START + timedelta(days=n - 3): what for n, what in enumerate(drawn)}
    return DaysDone(
        {day: minutes for day, (minutes, _, _) in by_day.items() if minutes},
        {day: takes for day, (_, takes, _) in by_day.items() if takes},
        {day for day, (_, _, rest) in by_day.items() if rest},
    )


@settings(max_examples=HISTORIES)
@given(promises(), histories(), st.integers(-3, SPAN).map(lambda n: START + timedelta(days=n)))
def test_against_the_slow_count(promise: Promise, done: DaysDone, today: date) -> None:
    fast, slow = standing(promise, done, today), numbers(promise, done, today)
    assert [judged.kind.value for judged in fast.days] == slow.kinds
    for name in (
        "day", "days_kept", "days_missed", "rest_taken", "days_paused", "today_open", "needed",
        "kept_on", "rest_left", "run", "longest_run",
    ):  # fmt: skip
        assert getattr(fast, name) == getattr(slow, name), name
    assert fast.state.value == slow.state


@settings(max_examples=HISTORIES)
@given(promises(), histories(), st.integers(0, SPAN).map(lambda n: START + timedelta(days=n)))
def test_the_numbers_add_up(promise: Promise, done: DaysDone, today: date) -> None:
    found = standing(promise, done, today)
    parts = found.days_kept + found.days_missed + found.rest_taken + found.days_paused
    assert parts + found.today_open == found.day == len(found.days)
    assert [judged.number for judged in found.days] == list(range(1, found.day + 1))
    assert found.over_rest <= found.days_missed
    assert found.run <= found.longest_run <= found.days_kept


@settings(max_examples=HISTORIES)
@given(promises(), histories(), days, days, st.sampled_from(["minutes", "take", "nothing"]))
def test_late_filing_moves_no_number(
    promise: Promise, done: DaysDone, today: date, late: date, what: str
) -> None:
    before = standing(promise, done, today)
    later_minutes = done.minutes | ({late: 90.0} if what == "minutes" else {})
    later_takes = done.takes | ({late: 3} if what == "take" else {})
    after = standing(promise, DaysDone(later_minutes, later_takes, done.rest), today)
    shared = [
        SharedNumber(str(j.number), "p", j.day, j.number, j.days_kept, NOW) for j in before.days
    ]
    for judged in before.days:
        printed = printed_numbers(promise, after, judged.day, shared)
        assert printed is not None
        assert printed.frozen
        assert (printed.day_number, printed.days_kept) == (judged.number, judged.days_kept)
        assert day_number(promise, judged.day) == judged.number
    both = zip(before.days, after.days, strict=False)
    changed = [one.day for one, other in both if one.kind is not other.kind]
    assert not changed or min(changed) >= late  # never a day before the one filed late


@settings(max_examples=HISTORIES)
@given(promises(), histories(), days)
def test_a_new_rule_leaves_the_days_before_alone(
    promise: Promise, done: DaysDone, changed_on: date
) -> None:
    kinds = {j.day: j.kind for j in standing(promise, done, START + timedelta(days=SPAN)).days}
    stricter = PromiseRule(changed_on, Stretch.IN_TOTAL, 10_000, minimum_minutes=1440)
    earlier = tuple(rule for rule in promise.rules if rule.since < changed_on)
    if not earlier:
        return
    after = Promise("p", "x", START, (*earlier, stricter), NOW, promise.breaks, promise.closed_on)
    found = standing(after, done, START + timedelta(days=SPAN))
    for judged in found.days:
        if judged.day < changed_on and judged.day in kinds:
            assert judged.kind is kinds[judged.day]


def test_the_histories_hold_every_kind_of_day() -> None:
    seen: Counter[DayKind] = Counter()
    states: Counter[tuple[str, Stretch]] = Counter()

    @settings(max_examples=600, database=None, derandomize=True)
    @given(promises(), histories(), days)
    def look(promise: Promise, done: DaysDone, today: date) -> None:
        found = standing(promise, done, today)
        seen.update(judged.kind for judged in found.days)
        states[found.state.value, found.rule.stretch] += 1

    look()
    assert set(seen) == set(DayKind)
    assert set(itertools.product(("running", "kept", "ended"), Stretch)) <= set(states)
    assert min(states["kept", stretch] for stretch in Stretch) >= 10
