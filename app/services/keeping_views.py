"""What promises, assignments, plans and the record hand to the window and command line.

Frozen and ready to show, as in :mod:`app.services.views`; every number that the player
reads also stands in a sentence.
"""

from dataclasses import dataclass
from datetime import date
from typing import Literal

from app.journal.assignments import (
    Assignment,
    AssignmentProgress,
    EarlierHours,
    Occasion,
)
from app.journal.plans import PracticePlan
from app.journal.promise_standing import PromiseStanding
from app.journal.promises import Promise, PromiseRule
from app.journal.records import Passage
from app.journal.rehearsals import Rehearsal
from app.services.views import TakeRow


@dataclass(frozen=True, slots=True)
class RuleRow:
    """One rule of a promise's history: from when to when, and in words."""

    rule: PromiseRule
    since: date
    until: date | None
    text: str
    is_in_force: bool


@dataclass(frozen=True, slots=True)
class PromiseView:
    """A promise and where it stands.

    Attributes
    ----------
    promise : Promise
    standing : PromiseStanding
        The numbers, always apart: ``days_kept``, ``day``, ``days_missed``,
        ``rest_taken``, ``days_paused``, ``needed``.
    headline : str
        E.g. '27 days kept, day 45'.
    sentences : tuple of str
        What else there is to say, in the order in which to show it.
    rules : tuple of RuleRow
        The history of its rule.
    """

    promise: Promise
    standing: PromiseStanding
    headline: str
    sentences: tuple[str, ...]
    rules: tuple[RuleRow, ...]


@dataclass(frozen=True, slots=True)
class ClipNumbers:
    """What a clip of a practice day bears for one promise.

    ``text`` is for printing ('day 45 · 27 days kept'); ``frozen`` says that these
    numbers were shared before and stay; ``days_kept_now`` is today's own count.
    """

    promise_id: str
    promise_name: str
    practice_day: date
    day_number: int
    days_kept: int
    days_kept_now: int
    frozen: bool
    text: str


@dataclass(frozen=True, slots=True)
class AssignmentRow:
    """What was set, and what was done on it so far.

    ``title`` says what it is for, ``sentence`` what was done.
    """

    assignment: Assignment
    progress: AssignmentProgress
    title: str
    sentence: str


@dataclass(frozen=True, slots=True)
class OccasionRow:
    """A coming date, in how many days, with the passages that will be played."""

    occasion: Occasion
    days_left: int
    title: str
    passages: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class PlanView:
    """The plan of a practice day; a proposal, never a duty.

    ``cautions`` are sentences about breaks and pain; ``sentence`` says why there is
    nothing to propose, where that is so.
    """

    plan: PracticePlan
    minutes_done: int
    cautions: tuple[str, ...]
    sentence: str


@dataclass(frozen=True, slots=True)
class RehearsalView:
    """An audition rehearsal: what is due now, or what there is to listen to afterwards.

    ``number`` counts from 1; ``to_listen_to`` stays empty until the rehearsal has ended.
    """

    rehearsal: Rehearsal
    due: Passage | None
    number: int
    titles: tuple[str, ...]
    to_listen_to: tuple[TakeRow, ...]


@dataclass(frozen=True, slots=True)
class Span:
    """A week or a month: its first and last day, minutes and days practised."""

    first_day: date
    last_day: date
    minutes: float
    days_practised: int
    is_over: bool


@dataclass(frozen=True, slots=True)
class WeekdayRow:
    """A weekday, 0 = Monday: mean minutes on it, rest and empty days included."""

    weekday: int
    days: int
    days_practised: int
    mean_minutes: float


@dataclass(frozen=True, slots=True)
class HourRow:
    """An hour of the wall clock and the minutes practised in it, by the clock's blocks."""

    hour: int
    minutes: float


@dataclass(frozen=True, slots=True)
class PeriodRow:
    """A busier or quieter time between two changes.

    ``begins_between`` are the first days of the weeks between which it begins, with
    95 % confidence; ``None`` for the first one.
    """

    first_day: date
    last_day: date
    median_week_minutes: float
    begins_between: tuple[date, date] | None
    word: Literal["", "busier", "quieter"]


@dataclass(frozen=True, slots=True)
class AssociationRow:
    """Minutes on a passage held against its measured change: an association only.

    ``rank_correlation`` is Spearman's, with its permutation ``p_value``; both ``None``
    where there are too few pairs.
    """

    passage_id: str
    passage_name: str
    pairs: int
    rank_correlation: float | None
    p_value: float | None
    sentence: str


@dataclass(frozen=True, slots=True)
class LifetimeView:
    """All there is: minutes in the journal, and hours from before it as one entry."""

    journal_minutes: float
    earlier: EarlierHours | None
    total_hours: float
    sentence: str


@dataclass(frozen=True, slots=True)
class RecordView:
    """What the record shows.

    ``method`` names the statistic behind ``periods`` and its assumptions; where
    nothing may be claimed, ``periods`` is empty and ``periods_sentence`` says why.
    ``overuse_caution`` is empty unless minutes rose steeply.
    """

    weeks: tuple[Span, ...]
    months: tuple[Span, ...]
    weekdays: tuple[WeekdayRow, ...]
    hours: tuple[HourRow, ...]
    periods: tuple[PeriodRow, ...]
    periods_sentence: str
    method: str
    overuse_caution: str
    lifetime: LifetimeView
    sentences: tuple[str, ...]
    today: date
