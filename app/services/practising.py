"""Days, minutes and rest."""

import math
import uuid
from dataclasses import replace
from datetime import date, datetime, time, timedelta
from typing import Literal

from app.journal.counting import count, missed_days, practised_days
from app.journal.day_names import checked_names
from app.journal.failures import PlainFailure
from app.journal.kinds import MinutesSource
from app.journal.practice_days import Clock, is_turn_hour
from app.journal.records import JournalSettings, RestDay, Session, Take
from app.journal.reminding import is_minute_of_day
from app.services.clock import ClockService
from app.services.day_now import check_has_come, day_now, day_of, is_late
from app.services.rows import Rows
from app.services.views import DayBar, TakeRow, TodayView
from app.store.store import Store

_MINUTES_A_DAY = 24 * 60
_MOST_TO_WORK_ON = 12


class PractisingService:
    """Counts what was practised and keeps the journal's own settings."""

    def __init__(
        self,
        store: Store,
        clock: Clock,
        practice_clock: ClockService,
        refusal: PlainFailure | None = None,
    ) -> None:
        self._refusal = refusal
        self._store = store
        self._clock = clock
        self._practice_clock = practice_clock
        self._rows = Rows(store)

    def practice_day_now(self) -> date:
        """Give the practice day it is now."""
        return day_now(self._store, self._clock)

    def today(self) -> TodayView:
        """Give the Practice page in one look."""
        today = self.practice_day_now()
        counted = count(self._days_practised(today), self._rest_days(), today)
        open_markers = self._store.markers.list_open(_MOST_TO_WORK_ON)
        return TodayView(
            practice_day=today,
            calendar_day=self._clock().date(),
            minutes=self._store.sessions.minutes_by_day(today, today).get(today),
            days_practised=counted.days_practised,
            days_since_first=counted.days_since_first,
            takes=self.day(today),
            to_work_on=self._rows.of_markers(open_markers),
            passages=self._store.passages.list(),
        )

    def day(self, practice_day: date) -> tuple[TakeRow, ...]:
        """Give the takes of a practice day in the order they were played."""
        return self._rows.of_takes(self._store.takes.of_day(practice_day))

    def set_minutes(self, practice_day: date, minutes: float) -> None:
        """Set the typed minutes of a practice day, 0 to 1440.

        They stand for the whole day so far: minutes counted before are replaced, and a
        running clock adds to them from now on.

        Raises
        ------
        PlainFailure
            For other numbers, for a day to come, and in somebody else's bundle.
        """
        self._refuse()
        check_has_come(self._store, self._clock, practice_day)
        if not (math.isfinite(minutes) and 0 <= minutes <= _MINUTES_A_DAY):
            raise PlainFailure(
                "A day has at most 1440 minutes.", "Type a number between 0 and 1440."
            )
        with self._store.transaction():
            sessions = self._store.sessions.of_day(practice_day)
            if not sessions:
                sessions = (self._new_session(practice_day),)
                self._store.sessions.add(sessions[0])
            typed = replace(sessions[0], minutes=float(minutes), minutes_source=MinutesSource.TYPED)
            self._store.sessions.replace(typed)
            for other in sessions[1:]:
                self._store.sessions.replace(replace(other, minutes=None, minutes_source=None))
            self._practice_clock.cut(practice_day)
        self._practice_clock.refresh()

    def mark_rest(self, practice_day: date, planned: bool) -> None:
        """Mark a day as rest: planned ahead, or marked afterwards; not in a bundle."""
        self._refuse()
        self._store.rest_days.put(RestDay(practice_day, planned))

    def clear_rest(self, practice_day: date) -> None:
        """Take the rest mark away; not in a bundle."""
        self._refuse()
        self._store.rest_days.remove(practice_day)

    def _refuse(self) -> None:
        if self._refusal is not None:
            raise self._refusal

    def year(self, year: int) -> tuple[DayBar, ...]:
        """Give one bar for every day of a year.

        A day is missed where it lies between the first practised day and today
        (today itself is not over yet) with nothing practised and no rest.
        """
        first_day, last_day = date(year, 1, 1), date(year, 12, 31)
        today = self.practice_day_now()
        missed = set(missed_days(self._days_practised(today), self._rest_days(), today))
        takes = self._store.takes.list(first_day=first_day, last_day=last_day)
        minutes = self._store.sessions.minutes_by_day(first_day, last_day)
        counts = self._store.takes.counts_by_day(first_day, last_day)
        rests = {
            rest.practice_day: rest
            for rest in self._store.rest_days.list(first_day=first_day, last_day=last_day)
        }
        late = self._late_days(takes)
        shared = self._shared_days()
        paused = self._paused_days(first_day, last_day)
        bars = []
        for offset in range((last_day - first_day).days + 1):
            day = first_day + timedelta(days=offset)
            rest = rests.get(day)
            bars.append(
                DayBar(
                    practice_day=day,
                    minutes=minutes.get(day),
                    take_count=counts.get(day, 0),
                    rest=_rest_word(rest),
                    missed=day in missed,
                    late=day in late,
                    is_shared=day in shared,
                    paused=paused.get(day, ()),
                )
            )
        return tuple(bars)

    def first_and_last_day(self) -> tuple[date, date] | None:
        """Give the first and last day with a take or a session."""
        spans = (self._store.takes.first_and_last_day(), self._store.sessions.first_and_last_day())
        days = [day for span in spans if span for day in span]
        return (min(days), max(days)) if days else None

    def settings(self) -> JournalSettings:
        """Give what the player chose for this journal."""
        return self._store.settings.get()

    def change_settings(self, settings: JournalSettings) -> JournalSettings:
        """Keep changed settings."""
        if not is_turn_hour(settings.day_turn_hour):
            raise PlainFailure(
                "The day turns at a full hour from 0 to 11.", "Choose one of these hours."
            )
        if not settings.categories:
            raise PlainFailure("Markers need at least one category.", "Keep or add one.")
        if settings.break_after_min < 0:
            raise PlainFailure(
                "A break cannot be due before anything was played.", "Give minutes, or 0 for never."
            )
        if settings.reminder_minute is not None and not is_minute_of_day(settings.reminder_minute):
            raise PlainFailure(
                "A reminder needs a time of day.", "Choose one from 00:00 to 23:59, or none."
            )
        settings = replace(settings, day_names=checked_names(settings.day_names))
        self._store.settings.replace(settings)
        self._practice_clock.refresh()
        return settings

    def _days_practised(self, until: date) -> frozenset[date]:
        span = self.first_and_last_day()
        if span is None:
            return frozenset()
        return practised_days(
            self._store.sessions.minutes_by_day(span[0], until),
            self._store.takes.counts_by_day(span[0], until),
        )

    def _rest_days(self) -> frozenset[date]:
        return frozenset(rest.practice_day for rest in self._store.rest_days.list())

    def _late_days(self, takes: tuple[Take, ...]) -> set[date]:
        turn = self.settings().day_turn_hour
        return {take.practice_day for take in takes if is_late(take, turn)}

    def _shared_days(self) -> set[date]:
        days = {clip.practice_day for clip in self._store.shared_clips.list()}
        return days | {one.practice_day for one in self._store.shared_numbers.list()}

    def _paused_days(self, first_day: date, last_day: date) -> dict[date, tuple[str, ...]]:
        found: dict[date, tuple[str, ...]] = {}
        for promise in self._store.promises.list():
            for pause in promise.breaks:
                day = max(pause.first_day, first_day)
                while day <= min(pause.last_day, last_day):
                    found[day] = (*found.get(day, ()), promise.name)
                    day += timedelta(days=1)
        return found

    def _new_session(self, day: date) -> Session:
        now = self._clock()
        if day != day_of(self._store, now):
            # Nobody knows the hour of a day typed in later; noon lies in every practice day.
            now = datetime.combine(day, time(12), tzinfo=now.tzinfo)
        return Session(uuid.uuid4().hex, day, now)


def _rest_word(rest: RestDay | None) -> Literal["", "planned", "marked"]:
    if rest is None:
        return ""
    return "planned" if rest.planned else "marked"
