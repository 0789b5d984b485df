"""Reminders: one a day at most, off unless wished, none after the day is done.

The window shows what :meth:`ReminderService.due` gives through the desktop's own
notification.
"""

from dataclasses import replace
from datetime import date

from app.journal.counting import practised_days
from app.journal.practice_days import Clock, practice_day
from app.journal.reminding import day_is_done, is_due
from app.services.promising import PromiseService
from app.store.store import Store


class ReminderService:
    """Says when to remind, and with which words."""

    def __init__(self, store: Store, clock: Clock, promises: PromiseService) -> None:
        self._store = store
        self._clock = clock
        self._promises = promises

    def due(self) -> str:
        """Give the sentence to remind with now, once a practice day; else nothing.

        A few milliseconds; ask once a minute, from the storage thread.
        """
        settings = self._store.settings.get()
        if settings.reminder_minute is None:
            return ""
        now = self._clock()
        today = practice_day(now, turn_hour=settings.day_turn_hour)
        is_now = is_due(
            settings.reminder_minute,
            now,
            today,
            turn_hour=settings.day_turn_hour,
            done=self._is_done(today),
            reminded_on=settings.reminded_on,
        )
        if not is_now:
            return ""
        # Kept in the journal: a window opened again the same day does not remind twice.
        self._store.settings.replace(replace(settings, reminded_on=today))
        return "There is still time to play today, if you like; a few minutes count too."

    def _is_done(self, today: date) -> bool:
        practised = practised_days(
            self._store.sessions.minutes_by_day(today, today),
            self._store.takes.counts_by_day(today, today),
        )
        return day_is_done(
            today in practised,
            self._store.rest_days.get(today) is not None,
            [view.standing for view in self._promises.running()],
        )
