"""Promises: made, changed, paused, and counted."""

import uuid
from collections.abc import Sequence
from dataclasses import replace
from datetime import date

from app.journal import promises as rules
from app.journal.failures import PlainFailure
from app.journal.practice_days import Clock
from app.journal.printed_numbers import printed_numbers
from app.journal.promise_standing import DaysDone, PromiseState, standing
from app.journal.promises import PlannedBreak, Promise, PromiseRule, SharedNumber
from app.services.day_now import day_now
from app.services.keeping_views import ClipNumbers, PromiseView, RuleRow
from app.services.promise_text import clip_text, headline, rule_text, sentences
from app.services.records_there import take_there
from app.services.undoing import Undoing
from app.services.wording import listed
from app.store.store import Store

_ORDER = (PromiseState.RUNNING, PromiseState.AHEAD, PromiseState.KEPT, PromiseState.ENDED)


class PromiseService:
    """Keeps any number of promises, past and running."""

    def __init__(self, store: Store, clock: Clock, undoing: Undoing) -> None:
        self._store = store
        self._clock = clock
        self._undoing = undoing

    def list(self) -> tuple[PromiseView, ...]:
        """Give all promises: the running ones first, of the others the latest first."""
        return self._list(self._today())

    def _list(self, day: date) -> tuple[PromiseView, ...]:
        promises = self._store.promises.list()
        done = self._days_done(promises, day)
        views = [self._view(promise, done, day) for promise in promises]
        return tuple(
            sorted(
                views,
                key=lambda v: (_ORDER.index(v.standing.state), -v.promise.start.toordinal()),
            )
        )

    def running(self, on: date | None = None) -> tuple[PromiseView, ...]:
        """Give the promises that run today, or that ran on a day that is over, as of then.

        What was filed late since then counts, under the days it belongs to.
        """
        today = self._today()
        day = today if on is None else min(on, today)
        return tuple(v for v in self._list(day) if v.standing.state is PromiseState.RUNNING)

    def view(self, promise_id: str) -> PromiseView:
        """Give one promise."""
        promise, today = self._promise(promise_id), self._today()
        return self._view(promise, self._days_done((promise,), today), today)

    def find(self, text: str) -> Promise:
        """Find a promise by its name, or the beginning of its id or name.

        Raises
        ------
        PlainFailure
            Where there is none or more than one; names those that there are.
        """
        promises = self._store.promises.list()
        wanted = " ".join(text.split()).casefold()
        named = [p for p in promises if p.name.casefold() == wanted]
        begun = [
            p
            for p in promises
            if wanted and (p.name.casefold().startswith(wanted) or p.id.startswith(wanted))
        ]
        for found in (named, begun):
            if len(found) == 1:
                return found[0]
            if found:
                raise PlainFailure(
                    f"'{text}' could be {listed([f'{p.name} ({p.id[:8]})' for p in found])}.",
                    "Give the beginning of its id.",
                )
        known = listed([f"'{p.name}'" for p in promises])
        raise PlainFailure(
            f"There is no promise '{text}'.", f"There are: {known}." if known else "Make one first."
        )

    def make(self, name: str, rule: PromiseRule) -> PromiseView:
        """Make a promise; its day 1 is the day its rule begins, which may be over."""
        made = rules.checked(
            Promise(uuid.uuid4().hex, name, rule.since, (rule,), created_at=self._clock())
        )
        self._undoing.make(f"promise '{made.name}' made", None, made)
        return self.view(made.id)

    def rename(self, promise_id: str, name: str) -> PromiseView:
        """Give a promise another name."""
        before = self._promise(promise_id)
        return self._keep(before, rules.checked(replace(before, name=name)), "another name")

    def change_rule(self, promise_id: str, rule: PromiseRule) -> PromiseView:
        """Change the rule from ``rule.since`` on, today at the earliest.

        Raises
        ------
        PlainFailure
            For days that are over, a rule that makes no sense, or a promise that is.
        """
        before = self._alive(promise_id)
        return self._keep(before, rules.with_rule(before, rule, self._today()), "another rule")

    def plan_break(
        self, promise_id: str, first_day: date, last_day: date, reason: str = ""
    ) -> PromiseView:
        """Pause a promise on days that are not over; both ends are included."""
        pause = PlannedBreak(first_day, last_day, " ".join(reason.split()))
        before = self._alive(promise_id)
        return self._keep(before, rules.with_break(before, pause, self._today()), "break planned")

    def go_on(self, promise_id: str) -> PromiseView:
        """End the break that runs: today counts again."""
        before = self._alive(promise_id)
        return self._keep(before, rules.with_breaks_ended(before, self._today()), "taken up again")

    def drop_break(self, promise_id: str, first_day: date) -> PromiseView:
        """Take a break away that has not begun."""
        promise = self._alive(promise_id)
        kept = tuple(
            pause
            for pause in promise.breaks
            if pause.first_day != first_day or pause.first_day <= self._today()
        )
        return self._keep(promise, replace(promise, breaks=kept), "break taken away")

    def close(self, promise_id: str) -> PromiseView:
        """End a promise today; what was kept stays."""
        promise = self._promise(promise_id)
        if promise.closed_on is not None:
            return self.view(promise_id)
        return self._keep(promise, replace(promise, closed_on=self._today()), "ended")

    def reopen(self, promise_id: str) -> PromiseView:
        """Take the end back; the days since then are counted as what they were."""
        before = self._promise(promise_id)
        return self._keep(before, replace(before, closed_on=None), "end taken back")

    def numbers_for(self, practice_day: date) -> tuple[ClipNumbers, ...]:
        """Give what a clip of a day bears, for each promise that has begun by then.

        A promise that was over before that day has nothing to say about it.
        """
        promises, today = self._store.promises.list(), self._today()
        done = self._days_done(promises, today)
        found = (self._numbers(promise, done, practice_day, today) for promise in promises)
        return tuple(numbers for numbers in found if numbers is not None)

    def share(self, promise_id: str, practice_day: date, take_id: str | None = None) -> ClipNumbers:
        """Give the numbers away with a clip: from now on this day keeps them.

        Numbers of the day that were shared before stay as they were.

        Raises
        ------
        PlainFailure
            Where the promise had not begun on that day, or the take is not there.
        """
        with self._store.transaction():
            promise, today = self._promise(promise_id), self._today()
            done = self._days_done((promise,), today)
            numbers = self._numbers(promise, done, practice_day, today)
            if take_id is not None:
                take_there(self._store, take_id)
            if numbers is None:
                raise PlainFailure(
                    f"'{promise.name}' has no number for {practice_day}.",
                    f"Its day 1 is {promise.start}.",
                )
            if not numbers.frozen:
                self._store.shared_numbers.add(
                    SharedNumber(
                        id=uuid.uuid4().hex,
                        promise_id=promise.id,
                        practice_day=practice_day,
                        day_number=numbers.day_number,
                        days_kept=numbers.days_kept,
                        shared_at=self._clock(),
                        take_id=take_id,
                    )
                )
            return replace(numbers, frozen=True)

    def shared_days(self, first_day: date, last_day: date) -> frozenset[date]:
        """Give the days of which a number was given away with a clip, both ends included."""
        shared = self._store.shared_numbers.list()
        return frozenset(
            one.practice_day for one in shared if first_day <= one.practice_day <= last_day
        )

    def _numbers(
        self, promise: Promise, done: DaysDone, day: date, today: date
    ) -> ClipNumbers | None:
        now = standing(promise, done, today)
        over = now.kept_on or now.ended_on
        if over is not None and day > over:
            return None
        shared = self._store.shared_numbers.list(promise.id)
        printed = printed_numbers(promise, now, day, shared)
        if printed is None:
            return None
        return ClipNumbers(
            promise_id=promise.id,
            promise_name=promise.name,
            practice_day=day,
            day_number=printed.day_number,
            days_kept=printed.days_kept,
            days_kept_now=printed.days_kept_now,
            frozen=printed.frozen,
            text=clip_text(printed.day_number, printed.days_kept),
        )

    def _view(self, promise: Promise, done: DaysDone, today: date) -> PromiseView:
        now = standing(promise, done, today)
        following = [rule.since for rule in promise.rules[1:]] + [None]
        rows = tuple(
            RuleRow(rule, rule.since, until, rule_text(rule), rule.since == now.rule.since)
            for rule, until in zip(promise.rules, following, strict=True)
        )
        return PromiseView(promise, now, headline(now), sentences(promise, now, today), rows)

    def _days_done(self, promises: Sequence[Promise], today: date) -> DaysDone:
        first = min((promise.start for promise in promises), default=today)
        if first > today:
            return DaysDone({}, {}, ())
        rest = self._store.rest_days.list(first_day=first, last_day=today)
        return DaysDone(
            minutes=self._store.sessions.minutes_by_day(first, today),
            takes=self._store.takes.counts_by_day(first, today),
            rest=frozenset(day.practice_day for day in rest),
        )

    def _keep(self, before: Promise, after: Promise, words: str) -> PromiseView:
        self._undoing.make(f"promise '{after.name}': {words}", before, after)
        return self.view(after.id)

    def _promise(self, promise_id: str) -> Promise:
        promise = self._store.promises.get(promise_id)
        if promise is None:
            raise PlainFailure("That promise is not there.", "Look at the list again.")
        return promise

    def _alive(self, promise_id: str) -> Promise:
        """Give a promise that can still be changed."""
        promise, today = self._promise(promise_id), self._today()
        state = standing(promise, self._days_done((promise,), today), today).state
        if state in (PromiseState.KEPT, PromiseState.ENDED):
            raise PlainFailure(
                f"'{promise.name}' is over, and its history stays as it is.", "Make a new promise."
            )
        return promise

    def _today(self) -> date:
        return day_now(self._store, self._clock)
