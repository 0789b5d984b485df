"""The week in words."""

from datetime import date, timedelta

from app.journal.counting import practised_days
from app.journal.markers import STATE_WORDS
from app.journal.records import Take
from app.services.assigning import AssignmentService
from app.services.comparing import ComparingService
from app.services.keeping_views import AssignmentRow
from app.services.minutes import MinutesService
from app.services.passages import passage_title
from app.services.promising import PromiseService
from app.services.reading_views import Reading
from app.services.rows import Rows
from app.services.views import TakeRow, TrendView
from app.services.wording import (
    columns_text,
    counted,
    day_text,
    length_text,
    listed,
    minutes_text,
    position_text,
    reading_text,
)
from app.store.store import Store

_DAYS_A_WEEK = 7
FOLLOWED = "mean_absolute_cents"
"""The measure that a report follows over the weeks."""


class ReportingService:
    """Writes the days, takes, markers and changes of a span of days as plain text."""

    def __init__(
        self,
        store: Store,
        comparing: ComparingService,
        assignments: AssignmentService,
        promises: PromiseService,
    ) -> None:
        self._store = store
        self._comparing = comparing
        self._assignments = assignments
        self._promises = promises
        self._rows = Rows(store)
        self._minutes = MinutesService(store)

    def week(self, end: date) -> str:
        """Give the seven days that end with ``end``."""
        return self.text(end - timedelta(days=_DAYS_A_WEEK - 1), end)

    def text(self, start: date, end: date) -> str:
        """Give the days from ``start`` to ``end``, both included."""
        takes = self._store.takes.list(first_day=start, last_day=end)
        parts = [
            f"{day_text(start)} to {day_text(end)}",
            self._days(start, end),
            self._items(start, end),
            self._promised(end),
            self._assigned(start, end),
            self._takes(takes),
            self._markers(takes),
            self._changes(takes),
        ]
        return "\n\n".join(part for part in parts if part)

    def _days(self, start: date, end: date) -> str:
        minutes = self._store.sessions.minutes_by_day(start, end)
        counts = self._store.takes.counts_by_day(start, end)
        rests = self._store.rest_days.list(first_day=start, last_day=end)
        practised = practised_days(minutes, counts)
        total = minutes_text(sum(minutes.values())) if minutes else "no minutes entered"
        line = f"{counted(len(practised), 'day')} practised, {total}"
        if rests:
            line += f", {counted(len(rests), 'rest day')}"
        notes = [
            f"  {day_text(session.practice_day)}: {session.note}"
            for session in self._store.sessions.list(first_day=start, last_day=end)
            if session.note
        ]
        return "\n".join([line + ".", *notes])

    def _items(self, start: date, end: date) -> str:
        """Give where the minutes went, and what recording took of them."""
        items = self._minutes.by_item(start, end)
        lines = columns_text([(f"  {row.title}", minutes_text(row.minutes)) for row in items])
        effort = self._minutes.recording(start, end)
        parts = ["Minutes by item", lines] if items else []
        return "\n".join([*parts, effort.sentence] if effort.attempts else parts)

    def _promised(self, end: date) -> str:
        """Give the promises that ran on the last day, as they stood then."""
        running = self._promises.running(end)
        lines = [f"  {view.promise.name}: {view.headline}" for view in running]
        return "\n".join(["Promised", *lines]) if lines else ""

    def _assigned(self, start: date, end: date) -> str:
        """Give what was set for these days, with what was done on it."""
        lines = []
        for row in self._assignments.for_lesson(start, end):
            done = "done" if row.progress.is_done else "open"
            lines.append(f"  {task_text(row)} ({done}; {row.sentence})")
        return "\n".join(["Assigned", *lines]) if lines else ""

    def _takes(self, takes: tuple[Take, ...]) -> str:
        if not takes:
            return "No takes."
        lines = ["Takes"]
        for row in self._rows.of_takes(takes):
            line = (
                f"  {day_text(row.practice_day)}  {row.passage_name}, take {row.number}"
                f" ({length_text(row.duration_s)})"
            )
            found = measured_texts(row)
            lines.append(line + (": " + ", ".join(found) if found else ""))
            if row.aim:
                met = f" ({row.aim_met.value})" if row.aim_met else ""
                lines.append(f"    aim: {row.aim}{met}")
        return "\n".join(lines)

    def _markers(self, takes: tuple[Take, ...]) -> str:
        by_take = self._store.markers.for_takes([take.id for take in takes])
        markers = [marker for take in takes for marker in by_take.get(take.id, ())]
        if not markers:
            return ""
        lines = ["Marked"]
        for row in self._rows.of_markers(markers):
            marker = row.marker
            near = f" at {row.near_note}" if row.near_note else ""
            text = f": {marker.text}" if marker.text else ""
            lines.append(
                f"  {day_text(row.practice_day)}  {row.passage_name}, take {row.take_number},"
                f" {position_text(marker.start_s)}{near}  {marker.category}"
                f" ({STATE_WORDS[marker.state]}, {marker.author.value}){text}"
            )
        return "\n".join(lines)

    def _changes(self, takes: tuple[Take, ...]) -> str:
        lines = []
        played = dict.fromkeys(take.passage_id for take in takes if take.passage_id)
        for by_key in self._comparing.trends_of(played, (FOLLOWED,)).values():
            trend = by_key[FOLLOWED]
            lines.append(f"  {passage_title(trend.passage)}: {trend_text(trend)}")
            if trend.notice:
                lines.append(f"    {trend.notice}")
        return "\n".join(["Over all takes", *lines]) if lines else ""


def measured_texts(row: TakeRow) -> tuple[str, ...]:
    """Give what was measured on a take, each measure in a few words."""
    measured = (
        ("mean deviation", row.intonation),
        ("tempo", row.tempo),
        ("dynamic span", row.dynamics),
    )
    return tuple(
        f"{label} {reading_text(reading)}"
        for label, reading in measured
        if isinstance(reading, Reading)
    )


def task_text(row: AssignmentRow) -> str:
    """Give what was set in a few words: for what, and with which goal."""
    goal = row.assignment.goal
    return f"{row.title}: {goal}" if goal and goal != row.title else row.title


def trend_text(trend: TrendView) -> str:
    """Give a trend in one line."""
    if not isinstance(trend.slope, Reading):
        return trend.sentence
    days = len({point.practice_day for point in trend.points})
    return (
        f"{trend.label.lower()} {reading_text(trend.slope)}"
        f" over {listed([counted(len(trend.points), 'take'), counted(days, 'day')])}:"
        f" {trend.verdict}"
    )
