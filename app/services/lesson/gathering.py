"""Read a lesson report out of the journal."""

from collections import defaultdict
from collections.abc import Iterable, Sequence
from datetime import date, timedelta

from app.journal.counting import practised_days
from app.journal.kinds import AimMet
from app.journal.markers import STATE_WORDS
from app.journal.records import Marker, Take
from app.services.assigning import AssignmentService
from app.services.comparing import ComparingService
from app.services.items import named_items
from app.services.lesson.report import (
    DayPart,
    LessonReport,
    MarkerPart,
    PassagePart,
    TakePart,
    TaskPart,
)
from app.services.lifetime import RecordService
from app.services.minutes import MinutesService
from app.services.passages import passage_title
from app.services.promising import PromiseService
from app.services.reading_views import Reading
from app.services.reporting import FOLLOWED, measured_texts, task_text, trend_text
from app.services.rows import Rows
from app.services.time_spent import minutes_by_target
from app.services.views import MarkerRow, TakeRow, TrendView
from app.services.wording import (
    counted,
    day_text,
    length_text,
    minutes_text,
    position_text,
)
from app.store.store import Store

_BEFORE_S, _AFTER_S = 2.0, 3.0
"""What is heard around a marked moment: enough to know where in the music it is."""

_LONGEST_CLIP_S = 15.0
_MET = {AimMet.YES: "met", AimMet.PARTLY: "partly met", AimMet.NO: "not met"}
_REST = {True: "planned", False: "marked"}


class Gatherer:
    """Reads what a report says; never long, since nothing is measured for it."""

    def __init__(
        self,
        store: Store,
        *,
        comparing: ComparingService,
        assignments: AssignmentService,
        promises: PromiseService,
        minutes: MinutesService,
        record: RecordService,
    ) -> None:
        self._store = store
        self._comparing = comparing
        self._assignments = assignments
        self._promises = promises
        self._minutes = minutes
        self._record = record
        self._rows = Rows(store)

    def report(self, first_day: date, last_day: date) -> LessonReport:
        """Give the report of some days, both ends included."""
        takes = self._store.takes.list(first_day=first_day, last_day=last_day)
        days = self._days(first_day, last_day)
        return LessonReport(
            first_day=first_day,
            last_day=last_day,
            summary=_summary(days),
            days=days,
            items=tuple(
                (row.title, row.minutes) for row in self._minutes.by_item(first_day, last_day)
            ),
            promises=tuple(
                f"{view.promise.name}: {view.headline}" for view in self._promises.running(last_day)
            ),
            tasks=self._tasks(first_day, last_day),
            passages=self._passages(takes),
            markers=self._markers(takes),
            remarks=tuple(
                f"{day_text(remark.lesson_day)}: {remark.text}"
                for remark in self._store.remarks.list()
                if remark.first_day <= last_day and remark.last_day >= first_day
            ),
            caution=self._record.caution(),
        )

    def _days(self, first_day: date, last_day: date) -> tuple[DayPart, ...]:
        minutes = self._store.sessions.minutes_by_day(first_day, last_day)
        counts = self._store.takes.counts_by_day(first_day, last_day)
        rests = {
            rest.practice_day: _REST[rest.planned]
            for rest in self._store.rest_days.list(first_day=first_day, last_day=last_day)
        }
        items = self._items_by_day(first_day, last_day)
        whole = [
            first_day + timedelta(days=offset) for offset in range((last_day - first_day).days + 1)
        ]
        return tuple(
            DayPart(
                day, minutes.get(day), counts.get(day, 0), rests.get(day, ""), tuple(items[day])
            )
            for day in whole
        )

    def _items_by_day(self, first_day: date, last_day: date) -> dict[date, list[tuple[str, float]]]:
        by_target = minutes_by_target(self._store, first_day, last_day)
        found: dict[date, list[tuple[str, float]]] = defaultdict(list)
        for item_id, named in named_items(self._store).items():
            for day, minutes in by_target.get(item_id, {}).items():
                found[day].append((named.title, minutes))
        return found

    def _tasks(self, first_day: date, last_day: date) -> tuple[TaskPart, ...]:
        parts = []
        for row in self._assignments.for_lesson(first_day, last_day):
            parts.append(TaskPart(task_text(row), row.progress.is_done, row.sentence))
        return tuple(parts)

    def _passages(self, takes: Sequence[Take]) -> tuple[PassagePart, ...]:
        passages = {passage.id: passage for passage in self._store.passages.list()}
        played = dict.fromkeys(take.passage_id for take in takes if take.passage_id)
        trends, rows = self._comparing.trends_of(played), self._rows.of_takes(takes)
        parts = []
        for passage_id in played:
            parts.append(
                PassagePart(
                    passage_id,
                    passage_title(passages[passage_id]),
                    _take_parts(row for row in rows if row.passage_id == passage_id),
                    *_changes(tuple(trends[passage_id].values())),
                    trends[passage_id][FOLLOWED],
                )
            )
        loose = _take_parts(row for row in rows if row.passage_id is None)
        if loose:
            parts.append(PassagePart("", "Without a passage", loose, ()))
        return tuple(parts)

    def _markers(self, takes: Sequence[Take]) -> tuple[MarkerPart, ...]:
        by_take = self._store.markers.for_takes([take.id for take in takes])
        length = {take.id: take.duration_s for take in takes}
        markers = [marker for take in takes for marker in by_take.get(take.id, ())]
        return tuple(
            _marker_part(row, length[row.marker.take_id]) for row in self._rows.of_markers(markers)
        )


def _take_parts(rows: Iterable[TakeRow]) -> tuple[TakePart, ...]:
    parts = []
    for row in rows:
        title = f"{day_text(row.practice_day)}, take {row.number}"
        parts.append(
            TakePart(
                f"{title} ({length_text(row.duration_s)})",
                measured_texts(row),
                row.aim,
                _MET[row.aim_met] if row.aim and row.aim_met else "",
            )
        )
    return tuple(parts)


def _changes(trends: Sequence[TrendView]) -> tuple[tuple[str, ...], str]:
    """Give the trends that say something, or why there is none, and what to beware of."""
    said = [trend for trend in trends if isinstance(trend.slope, Reading)]
    lines = [trend_text(trend) for trend in said]
    if not lines:
        lines = [next((trend.sentence for trend in trends if trend.sentence), "")]
    notice = next((trend.notice for trend in said if trend.notice), "")
    return tuple(line[0].upper() + line[1:] for line in lines if line), notice


def _marker_part(row: MarkerRow, duration_s: float) -> MarkerPart:
    marker = row.marker
    near = f", at {row.near_note}" if row.near_note else ""
    start_s, end_s = heard_around(marker, duration_s)
    return MarkerPart(
        take_id=marker.take_id,
        where=(
            f"{day_text(row.practice_day)}, {row.passage_name}, take {row.take_number},"
            f" {position_text(marker.start_s)}{near}"
        ),
        what=(
            f"{marker.category}, weight {marker.weight}, {STATE_WORDS[marker.state]}"
            f" ({'teacher' if marker.author.value == 'teacher' else 'self'})"
        ),
        text=marker.text,
        weight=marker.weight,
        listen_from_s=start_s,
        listen_to_s=end_s,
    )


def heard_around(marker: Marker, duration_s: float) -> tuple[float, float]:
    """Choose what to hear of a take for a marker: a little before it and after, at most 15 s."""
    start_s = max(0.0, marker.start_s - _BEFORE_S)
    end_s = (marker.start_s if marker.end_s is None else marker.end_s) + _AFTER_S
    return start_s, min(duration_s, end_s, start_s + _LONGEST_CLIP_S)


def _summary(days: Sequence[DayPart]) -> str:
    practised = practised_days(
        {day.day: day.minutes for day in days}, {day.day: day.takes for day in days}
    )
    minutes = [day.minutes for day in days if day.minutes is not None]
    total = minutes_text(sum(minutes)) if minutes else "no minutes entered"
    parts = [f"{counted(len(practised), 'day')} practised of {len(days)}", total]
    takes = sum(day.takes for day in days)
    if takes:
        parts.append(counted(takes, "take"))
    rests = sum(bool(day.rest) for day in days)
    if rests:
        parts.append(counted(rests, "rest day"))
    return ", ".join(parts) + "."
