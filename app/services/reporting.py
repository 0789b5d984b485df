"""The week in words."""

from datetime import date


class ReportingService:
    """Writes the days, takes, markers and changes of a span of days as text."""

    def week(self, end: date) -> str:
        """Give the seven days that end with ``end``."""
        raise NotImplementedError

    def text(self, start: date, end: date) -> str:
        """Give the days from ``start`` to ``end``, both included."""
        raise NotImplementedError
