"""What the record shows: weeks and months, habits, busier times, and the hours of a life."""

from collections.abc import Mapping, Sequence
from datetime import date, timedelta
from typing import Literal

from app.journal import record_of_practice as record
from app.journal.assignments import EarlierHours, checked_earlier
from app.journal.counting import practised_days
from app.journal.practice_days import Clock
from app.journal.record_of_practice import Period, SpanMinutes
from app.services.associating import associations
from app.services.day_now import day_now
from app.services.keeping_views import (
    AssociationRow,
    HourRow,
    LifetimeView,
    PeriodRow,
    RecordView,
    Span,
    WeekdayRow,
)
from app.services.wording import counted, day_text, minutes_text
from app.store.store import Store

METHOD = (
    "Pettitt's rank test for a change of level (1979) on the minutes of whole weeks, with"
    " 999 permutations at 5 %; the place of a change is given with 95 % confidence. It"
    " takes the weeks as independent of one another, which practice weeks are not quite."
)
_WEEKDAYS = ("Mondays", "Tuesdays", "Wednesdays", "Thursdays", "Fridays", "Saturdays", "Sundays")
_LONG_PAUSE = timedelta(days=7)
_LOOK_BACK = timedelta(days=90)
_FOUR_WEEKS = timedelta(days=27)


class RecordService:
    """Says what the record of practice shows, kindly and no more than it can bear."""

    def __init__(self, store: Store, clock: Clock) -> None:
        self._store = store
        self._clock = clock

    def view(self) -> RecordView:
        """Give everything but the associations; a search for changes takes 0.1 s at most."""
        today = self._today()
        first = self._first_day(today)
        minutes = self._store.sessions.minutes_by_day(first, today)
        practised = practised_days(minutes, self._store.takes.counts_by_day(first, today))
        weeks = record.weeks(minutes, practised, first, today)
        whole = record.whole(weeks, first)
        periods = record.periods(whole)
        weekdays = tuple(
            WeekdayRow(row.weekday, row.days, row.days_practised, row.minutes / max(1, row.days))
            for row in record.weekdays(minutes, practised, first, today)
        )
        return RecordView(
            weeks=tuple(map(_span, weeks)),
            months=tuple(map(_span, record.months(minutes, practised, first, today))),
            weekdays=weekdays,
            hours=self._hours(first, today),
            periods=_period_rows(periods, whole),
            periods_sentence=_periods_sentence(len(whole), len(periods)),
            method=METHOD,
            overuse_caution=_caution(minutes, first, today),
            lifetime=self._lifetime(sum(minutes.values())),
            sentences=_sentences(minutes, practised, weekdays, len(whole), today),
            today=today,
        )

    def caution(self) -> str:
        """Caution against a steep rise of the minutes; empty where there is none."""
        today = self._today()
        since = today - timedelta(weeks=record.WEEKS_BEFORE + 1)
        minutes = self._store.sessions.minutes_by_day(since, today)
        return _caution(minutes, self._first_day(today), today)

    def associations(self) -> tuple[AssociationRow, ...]:
        """Hold minutes on each passage against its measured change, as association only."""
        return associations(self._store, self._today())

    def lifetime(self) -> LifetimeView:
        """Give all minutes there are, with the hours from before as one entry."""
        today = self._today()
        return self._lifetime(
            sum(self._store.sessions.minutes_by_day(self._first_day(today), today).values())
        )

    def _lifetime(self, minutes: float) -> LifetimeView:
        earlier = self._store.earlier_hours.get()
        total = minutes / 60 + (earlier.hours if earlier else 0.0)
        sentence = f"{minutes_text(minutes)} in this journal"
        if earlier is not None:
            until = f" until {day_text(earlier.until)}" if earlier.until else ""
            sentence += f", and {earlier.hours:,.0f} h before it{until}, as you reckon them"
            sentence += f": {total:,.0f} h in all"
        return LifetimeView(minutes, earlier, total, sentence + ".")

    def set_earlier_hours(
        self, hours: float, until: date | None = None, note: str = ""
    ) -> LifetimeView:
        """Type in the hours from before the journal, as one entry that stays apart."""
        self._store.earlier_hours.put(checked_earlier(EarlierHours(hours, until, note)))
        return self.lifetime()

    def clear_earlier_hours(self) -> LifetimeView:
        """Take the entry away."""
        self._store.earlier_hours.put(None)
        return self.lifetime()

    def _hours(self, first: date, today: date) -> tuple[HourRow, ...]:
        by_hour = record.minutes_by_hour(self._store.blocks.of_days(first, today))
        return tuple(HourRow(hour, minutes) for hour, minutes in enumerate(by_hour) if minutes)

    def _first_day(self, today: date) -> date:
        spans = (
            self._store.takes.first_and_last_day(),
            self._store.sessions.first_and_last_day(),
        )
        return min([span[0] for span in spans if span] + [today])

    def _today(self) -> date:
        return day_now(self._store, self._clock)


def _span(found: SpanMinutes) -> Span:
    return Span(found.first_day, found.last_day, found.minutes, found.days_practised, found.is_over)


def _period_rows(periods: Sequence[Period], whole: Sequence[SpanMinutes]) -> tuple[PeriodRow, ...]:
    if len(periods) < 2:
        return ()
    weeks = whole[-record.MOST_WEEKS :]
    rows = []
    for number, period in enumerate(periods):
        change = period.change
        between = None
        word: Literal["", "busier", "quieter"] = ""
        if change is not None:
            between = (weeks[change.low].first_day, weeks[change.high].first_day)
            before = periods[number - 1].median_minutes
            word = "busier" if period.median_minutes > before else "quieter"
        rows.append(
            PeriodRow(
                period.first_day,
                period.last_day,
                period.median_minutes,
                between,
                word,
            )
        )
    return tuple(rows)


def _periods_sentence(whole_weeks: int, periods: int) -> str:
    if whole_weeks < record.FEWEST_WEEKS:
        return (
            f"Busier and quieter times are told apart from {record.FEWEST_WEEKS} whole weeks on;"
            f" so far there are {whole_weeks}."
        )
    if periods < 2:
        looked_at = min(whole_weeks, record.MOST_WEEKS)
        return (
            f"No clear change of the weekly minutes in {looked_at} weeks; one of the latest weeks"
            " shows only once it has lasted."
        )
    return ""


def _caution(minutes: Mapping[date, float], first: date, today: date) -> str:
    """Caution against a steep rise.

    NASM-PAMA: avoid sudden increases in practice time (read); orchestral players name
    suddenly raised playing load (Front. Psychol. 2014, 5:706, abstract only).
    """
    rise = record.steep_rise(minutes, first, today)
    if rise is None:
        return ""
    return (
        f"The last 7 days hold {minutes_text(rise.minutes)}, against"
        f" {minutes_text(rise.mean_before)} a week in the four weeks before. A sudden rise"
        " strains the body: take breaks, go up slowly, and stop where it hurts. If it goes on"
        " hurting, see a doctor or therapist who knows musicians."
    )


def _sentences(
    minutes: Mapping[date, float],
    practised: frozenset[date],
    weekdays: Sequence[WeekdayRow],
    whole_weeks: int,
    today: date,
) -> tuple[str, ...]:
    worked_days = {day for day in practised if day >= today - _FOUR_WEEKS}
    spent = sum(amount for day, amount in minutes.items() if day >= today - _FOUR_WEEKS)
    said = []
    if worked_days:
        said.append(
            f"In the last four weeks: {minutes_text(spent)} on {counted(len(worked_days), 'day')}."
        )
    most = max(weekdays, key=lambda row: row.mean_minutes)
    if whole_weeks >= record.FEWEST_WEEKS and most.mean_minutes > 0:
        said.append(
            f"Most minutes fall on {_WEEKDAYS[most.weekday]}:"
            f" {minutes_text(most.mean_minutes)} on average."
        )
    pause = record.longest_pause(practised, today - _LOOK_BACK, today)
    if pause is not None and pause[1] - pause[0] + timedelta(days=1) >= _LONG_PAUSE:
        said.append(
            f"{day_text(pause[0])} to {day_text(pause[1])} was a pause. Pauses are normal;"
            " short sessions are a good way back."
        )
    return tuple(said)
