"""A slow and obvious way to say where a promise stands.

Nothing is carried from day to day: every question about a day is answered by looking at
all the days again. Written from the rules in DEVELOPERS.md ('How days are counted'),
without looking at the code it checks.
"""

from dataclasses import dataclass
from datetime import date, timedelta
from functools import cache

from app.journal.promise_standing import DaysDone
from app.journal.promises import Promise, PromiseRule, Stretch


@dataclass
class Numbers:
    state: str
    day: int
    days_kept: int
    days_missed: int
    rest_taken: int
    days_paused: int
    today_open: bool
    needed: int
    kinds: list[str]
    kept_on: date | None
    rest_left: int
    run: int
    longest_run: int


def every_day(first: date, last: date) -> list[date]:
    return [first + timedelta(days=n) for n in range((last - first).days + 1)]


def in_force(promise: Promise, day: date) -> PromiseRule:
    begun = [rule for rule in promise.rules if rule.since <= day]
    return begun[-1] if begun else promise.rules[0]


def enough(rule: PromiseRule, minutes: float, takes: int) -> bool:
    shown = int(f"{minutes + 1e-9:.0f}") if minutes % 1 != 0.5 else int(minutes) + 1
    if rule.minimum_minutes is None and rule.minimum_takes is None:
        return minutes > 0 or takes > 0
    if rule.minimum_minutes is None:
        return takes >= rule.minimum_takes
    if rule.minimum_takes is None:
        return shown >= rule.minimum_minutes
    if rule.needs_both:
        return shown >= rule.minimum_minutes and takes >= rule.minimum_takes
    return shown >= rule.minimum_minutes or takes >= rule.minimum_takes


def numbers(promise: Promise, done: DaysDone, today: date) -> Numbers:
    start = promise.start

    @cache
    def kind(day: date) -> str:
        rule = in_force(promise, day)
        if enough(rule, done.minutes.get(day, 0), done.takes.get(day, 0)):
            return "kept"
        if any(pause.first_day <= day <= pause.last_day for pause in promise.breaks):
            return "paused"
        if day.weekday() in rule.rest_weekdays:
            return "rest"
        if day in done.rest and rests_before(day) < rule.rest_days:
            return "rest"
        if day in (today, promise.closed_on):
            return "open"
        return "missed"

    @cache
    def rests_before(day: date) -> int:
        """Marked rest days already used up: since the last miss under an in-a-row rule."""
        before = every_day(start, day - timedelta(days=1))
        resets = [
            d
            for d in before
            if kind(d) == "missed" and in_force(promise, d).stretch is Stretch.IN_A_ROW
        ]
        since = resets[-1] if resets else start
        return sum(
            kind(d) == "rest" and d.weekday() not in in_force(promise, d).rest_weekdays
            for d in before
            if d >= since
        )

    def kept_until(day: date) -> int:
        return sum(kind(d) == "kept" for d in every_day(start, day))

    def run_at(day: date) -> int:
        days = every_day(start, day)
        missed = [d for d in days if kind(d) == "missed"]
        return sum(kind(d) == "kept" for d in days if not missed or d > missed[-1])

    until = min(today, promise.closed_on or today)
    rule = in_force(promise, until)
    last = min(until, rule.end or until)
    days = every_day(start, last)
    counter = run_at if rule.stretch is Stretch.IN_A_ROW else kept_until
    reached = [d for d in days if d >= rule.since and counter(d) >= rule.days]
    kept_on = reached[0] if reached else None
    if kept_on:
        days = every_day(start, kept_on)
    kinds = [kind(d) for d in days]
    if kept_on:
        state = "kept"
    elif (promise.closed_on and promise.closed_on <= today) or (rule.end and rule.end < today):
        state = "ended"
    elif today < start:
        state = "ahead"
    else:
        state = "running"
    used = 0
    if days:
        end = days[-1]
        used = rests_before(end + timedelta(days=1))
    return Numbers(
        state=state,
        day=len(days),
        days_kept=kinds.count("kept"),
        days_missed=kinds.count("missed"),
        rest_taken=kinds.count("rest"),
        days_paused=kinds.count("paused"),
        today_open="open" in kinds,
        needed=max(0, rule.days - (counter(days[-1]) if days else 0)),
        kinds=kinds,
        kept_on=kept_on,
        rest_left=max(0, rule.rest_days - used),
        run=run_at(days[-1]) if days else 0,
        longest_run=max((run_at(d) for d in days), default=0),
    )
