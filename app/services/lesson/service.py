"""The lesson report: written as a page or on paper, and what the teacher answered."""

import uuid
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from app.journal.assignments import Assignment
from app.journal.failures import PlainFailure
from app.journal.kinds import Author
from app.journal.practice_days import Clock
from app.journal.records import Take
from app.journal.remarks import LessonRemark, checked_remark, tasks_of
from app.services.assigning import AssignmentService
from app.services.day_now import day_now
from app.services.lesson.gathering import Gatherer
from app.services.lesson.report import LessonReport, MarkerPart
from app.services.new_files import write_new
from app.services.reading_views import Reading
from app.services.stopping import (
    Progress,
    ShouldStop,
    never_stop,
    no_progress,
    part_of,
    stop_if,
)
from app.store.store import Store

if TYPE_CHECKING:
    from app.services.lesson.figures import PictureFormat

_NOT_WRITTEN = "the report was not written"
MOST_CLIPS = 60
"""More would make a page that a phone cannot open (about 0.1 MB a clip)."""


class LessonService:
    """Writes lesson reports, keeps remarks, and makes tasks of them."""

    def __init__(
        self,
        store: Store,
        clock: Clock,
        gatherer: Gatherer,
        *,
        assignments: AssignmentService,
        author: Author = Author.TEACHER,
    ) -> None:
        self._store = store
        self._clock = clock
        self._gatherer = gatherer
        self._assignments = assignments
        self._author = author

    def report(self, first_day: date, last_day: date) -> LessonReport:
        """Give what a report of these days says."""
        if last_day < first_day:
            raise PlainFailure("The first day lies after the last.", "Swap the two days.")
        return self._gatherer.report(first_day, last_day)

    def write_page(
        self,
        first_day: date,
        last_day: date,
        target: Path,
        *,
        with_clips: bool = True,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> Path:
        """Write the report as one HTML file, with the marked places to hear inside.

        At most 60 clips are put in, the heaviest markers first. A recording that
        cannot be read costs its clip and says so; the report is written all the same.

        Raises
        ------
        PlainFailure
            Where the file exists or the disk refuses.
        Stopped
            Once `should_stop` says so; nothing is left then.
        """
        from app.services.lesson.figures import (  # noqa: PLC0415 - matplotlib when needed
            minutes_figure,
            picture_bytes,
        )
        from app.services.lesson.web_page import html_text  # noqa: PLC0415

        report = self.report(first_day, last_day)
        clips = self._clips(report, with_clips, part_of(progress, 0.0, 0.7), should_stop)
        text = html_text(
            report,
            made_on=self._today(),
            minutes_picture=picture_bytes(minutes_figure(report.days), "svg"),
            passage_pictures=self._pictures(report, "svg", should_stop),
            clips=clips,
        )
        stop_if(should_stop)
        return write_new(target, text.encode(), _NOT_WRITTEN)

    def write_paper(
        self,
        first_day: date,
        last_day: date,
        target: Path,
        *,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> Path:
        """Write the report as PDF, with lines for the teacher's remarks.

        Raises as :meth:`write_page`.
        """
        from app.services.lesson.figures import (  # noqa: PLC0415 - matplotlib when needed
            minutes_figure,
            picture_bytes,
        )
        from app.services.lesson.printed import pdf_bytes  # noqa: PLC0415

        report = self.report(first_day, last_day)
        pictures = self._pictures(report, "png", should_stop)
        progress(0.6)
        content = pdf_bytes(
            report,
            made_on=self._today(),
            minutes_picture=picture_bytes(minutes_figure(report.days), "png"),
            passage_pictures=pictures,
        )
        stop_if(should_stop)
        return write_new(target, content, _NOT_WRITTEN)

    def remarks(self) -> tuple[LessonRemark, ...]:
        """Give all remarks in the order of the lessons."""
        return self._store.remarks.list()

    def add_remark(
        self, text: str, lesson_day: date, first_day: date, last_day: date
    ) -> LessonRemark:
        """Keep what was said in a lesson about some days."""
        now = self._clock()
        remark = checked_remark(
            LessonRemark(
                uuid.uuid4().hex, lesson_day, first_day, last_day, text, now, now, self._author
            )
        )
        self._store.remarks.add(remark)
        return remark

    def change_remark(self, remark: LessonRemark, text: str) -> LessonRemark:
        """Keep other words in the place of a remark's."""
        changed = checked_remark(replace(remark, text=text, changed_at=self._clock()))
        self._store.remarks.replace(changed)
        return changed

    def make_tasks(self, remark: LessonRemark, due_on: date) -> tuple[Assignment, ...]:
        """Make a task of every line of a remark; they enter the plans until that day.

        A line that is a task for that day already is not made one again.
        """
        known = {
            row.assignment.goal
            for row in self._assignments.all()
            if row.assignment.due_on == due_on
        }
        lines = [line for line in dict.fromkeys(tasks_of(remark)) if line not in known]
        with self._store.transaction():
            return tuple(self._assignments.add(due_on, line).assignment for line in lines)

    def _clips(
        self,
        report: LessonReport,
        with_clips: bool,
        progress: Progress,
        should_stop: ShouldStop,
    ) -> list[bytes | str]:
        clips: list[bytes | str] = [""] * len(report.markers)
        if not with_clips:
            return clips
        takes = self._store.takes.of_ids({marker.take_id for marker in report.markers})
        order = sorted(range(len(clips)), key=lambda n: -report.markers[n].weight)
        for done, number in enumerate(order):
            stop_if(should_stop)
            if done < MOST_CLIPS:
                marker = report.markers[number]
                clips[number] = self._clip(marker, takes.get(marker.take_id))
            else:
                clips[number] = f"Not put in: the page holds {MOST_CLIPS} clips at most."
            progress((done + 1) / len(order))
        return clips

    def _clip(self, marker: MarkerPart, take: Take | None) -> bytes | str:
        from audio.clip_cutting import cut_clip  # noqa: PLC0415 - av, only when needed
        from audio.errors import AudioFailure  # noqa: PLC0415

        if take is None:
            return "The take is no longer there."
        try:
            return cut_clip(
                self._store.folders.absolute(take.file), marker.listen_from_s, marker.listen_to_s
            )
        except AudioFailure as failure:
            return failure.sentence

    def _pictures(
        self, report: LessonReport, kind: "PictureFormat", should_stop: ShouldStop
    ) -> dict[str, bytes]:
        """Draw each passage over the weeks, where there are enough takes for a line."""
        from app.services.lesson.figures import passage_figure, picture_bytes  # noqa: PLC0415

        pictures = {}
        for passage in report.passages:
            stop_if(should_stop)
            trend = passage.followed
            if trend is not None and isinstance(trend.slope, Reading):
                figure = passage_figure(passage.title, trend)
                pictures[passage.passage_id] = picture_bytes(figure, kind)
        return pictures

    def _today(self) -> date:
        return day_now(self._store, self._clock)
