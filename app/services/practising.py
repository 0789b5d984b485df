"""Days, minutes and rest."""

from datetime import date

from app.journal.records import JournalSettings
from app.services.views import DayBar, TakeRow, TodayView


class PractisingService:
    """Counts what was practised and keeps the journal's own settings."""

    def today(self) -> TodayView:
        """Give the Practice page in one look."""
        raise NotImplementedError

    def day(self, practice_day: date) -> tuple[TakeRow, ...]:
        """Give the takes of a practice day in the order they were played."""
        raise NotImplementedError

    def set_minutes(self, practice_day: date, minutes: float) -> None:
        """Set the typed minutes of a practice day, 0 to 1440."""
        raise NotImplementedError

    def mark_rest(self, practice_day: date, planned: bool) -> None:
        """Mark a day as rest: planned ahead, or marked afterwards."""
        raise NotImplementedError

    def clear_rest(self, practice_day: date) -> None:
        """Take the rest mark away."""
        raise NotImplementedError

    def year(self, year: int) -> tuple[DayBar, ...]:
        """Give one bar for every day of a year."""
        raise NotImplementedError

    def first_and_last_day(self) -> tuple[date, date] | None:
        """Give the first and last day with anything in it."""
        raise NotImplementedError

    def settings(self) -> JournalSettings:
        """Give what the player chose for this journal."""
        raise NotImplementedError

    def change_settings(self, settings: JournalSettings) -> JournalSettings:
        """Keep changed settings."""
        raise NotImplementedError
