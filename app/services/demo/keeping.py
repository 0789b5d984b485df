"""What the demo's violist chose, promised and was set, and what it all leads to."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date, datetime, timedelta
from typing import Protocol

from app.journal.assignments import OccasionKind
from app.journal.promises import PromiseRule, Stretch
from app.journal.records import Passage
from app.services.assigning import AssignmentService
from app.services.lifetime import RecordService
from app.services.promising import PromiseService
from app.services.undoing import Undoing
from app.store.store import Store

_HALF_WAY = timedelta(days=28)
_TO_THE_AUDITION = timedelta(days=12)
_TO_THE_LESSON = timedelta(days=3)


class SettableClock(Protocol):
    """Gives the instant that the story is at, and can be set to another."""

    now: datetime

    def __call__(self) -> datetime:
        """Give the instant."""


def choose_settings(store: Store) -> None:
    """Choose the viola."""
    settings = store.settings.get()
    viola = replace(settings.default_settings, instrument="viola")
    store.settings.replace(replace(settings, default_settings=viola))


def keep_promises(
    store: Store, clock: SettableClock, first: date, end: date, passages: Sequence[Passage]
) -> None:
    """Make the promise of sixty days, asked a little more half way, and set the week's work."""
    present = clock.now
    undoing = Undoing(store)
    promises = PromiseService(store, clock, undoing)
    assignments = AssignmentService(store, clock, undoing)
    audition = end + _TO_THE_AUDITION
    rule = PromiseRule(first, Stretch.IN_TOTAL, 55, rest_days=10, end=audition)
    clock.now = present - (end - first)
    made = promises.make("Every day to the audition", rule).promise
    stricter = replace(rule, since=first + _HALF_WAY, minimum_minutes=15, minimum_takes=1)
    if stricter.since <= end:
        clock.now = present - (end - stricter.since)
        promises.change_rule(made.id, stricter)
    clock.now = present
    promises.share(made.id, max(first, end - timedelta(days=1)))
    assignments.add_occasion(
        audition, OccasionKind.AUDITION, "open seat", [passage.id for passage in passages]
    )
    lesson = end + _TO_THE_LESSON
    assignments.add_occasion(lesson)
    assignments.add(lesson, "from memory, at the slower tempo first", passage_id=passages[0].id)
    if len(passages) > 1:
        assignments.add(lesson, minutes=60, passage_id=passages[1].id)
    RecordService(store, clock).set_earlier_hours(
        1900, first - timedelta(days=1), "twelve years, an estimate"
    )
