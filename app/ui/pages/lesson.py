"""Lesson: a span of days for the teacher, and what comes back from the lesson."""

from datetime import date, timedelta
from pathlib import Path

from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QFileDialog

from app.journal.failures import PlainFailure
from app.ui.desk import Desk
from app.ui.language import tr
from app.ui.pages.page import Page, Parts
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Button, column, fill, heading, row
from app.ui.widgets.bundles_pane import BundlesPane
from app.ui.widgets.choices import DayEdit
from app.ui.widgets.file_asking import ask_new_file
from app.ui.widgets.job_strip import JobStrip
from app.ui.widgets.lesson_report import LessonReportView
from app.ui.widgets.remarks_pane import RemarksPane
from app.ui.widgets.shared_pane import SharedPane
from app.ui.widgets.side_tabs import SideTabs

_WEEK = timedelta(days=7)
_SIDE_PX = 384
REMARKS, BUNDLES, SHARED = range(3)


class LessonPage(Page):
    """What was done between two days: to read, to give away, and to be answered."""

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk, tr("Lesson"))

    def make_parts(self) -> Parts:
        """See :meth:`Page.make_parts`."""
        desk = self.desk
        self._today: date | None = None
        self.asking: QFileDialog | None = None
        is_visit = desk.workbench.bundles.visiting is not None
        self._first = DayEdit(tr("First day"))
        self._last = DayEdit(tr("Last day"))
        self._previous = Button("", "previous", action_id="lesson.previous")
        self._next = Button("", "next", action_id="lesson.next")
        self._week = Button(tr("Last seven days"), action_id="lesson.this_week")
        self._page = Button(tr("Write page"), "save", action_id="lesson.page", primary=not is_visit)
        self._paper = Button(tr("For paper"), action_id="lesson.paper")
        self._copy = Button(tr("Copy"), action_id="lesson.copy", plain=True)
        self._save = Button(tr("Save as text"), action_id="lesson.save", plain=True)
        self._share = Button(tr("Share clips"), action_id="lesson.share")
        self._export = Button(tr("Open formats"), action_id="lesson.export")
        yield
        self.report = LessonReportView()
        yield
        self.remarks = RemarksPane(desk)
        yield
        self.bundles = BundlesPane(desk)
        yield
        self.shared = SharedPane(desk)
        self.job = JobStrip(desk, "lesson.report")
        yield
        yield from self._build()
        yield
        self._connect()
        if is_visit:
            self.side.show_pane(BUNDLES)

    def _build(self) -> Parts:
        days, given = row(), row()
        fill(days, heading(tr("From")), self._first, heading(tr("to")), self._last)
        fill(days, self._previous, self._next, self._week, 1, self._copy, self._save)
        fill(given, self._page, self._paper, self._share, self._export, 1)
        self.side = SideTabs(
            (
                (tr("Remarks"), "lesson.pane_remarks", self.remarks),
                (tr("Bundles"), "lesson.pane_bundles", self.bundles),
                (tr("Shared"), "lesson.pane_shared", self.shared),
            )
        )
        self.side.setFixedWidth(_SIDE_PX)
        yield
        below = row(spacing=2 * GRID_PX)
        fill(below, self.report, self.side)
        below.setStretch(0, 1)
        box = column(self, spacing=GRID_PX, margin=2 * GRID_PX)
        fill(box, days, given, self.job, below)
        box.setStretch(3, 1)

    def _connect(self) -> None:
        desk, bind = self.desk, self.desk.keys.bind
        self._first.dateChanged.connect(lambda _: self._read())
        self._last.dateChanged.connect(lambda _: self._read())
        self.report.hearWanted.connect(desk.listenWanted)
        self.remarks.changed.connect(self._read)
        self.bundles.cameIn.connect(self._came_in)
        desk.takesChanged.connect(self.refresh_if_open)
        for button, action_id, slot in (
            (self._previous, "previous", lambda: self._move(-_WEEK)),
            (self._next, "next", lambda: self._move(_WEEK)),
            (self._week, "this_week", self._this_week),
            (self._copy, "copy", self.copy),
            (self._save, "save", self._choose_text),
            (self._page, "page", self._choose_page),
            (self._paper, "paper", self._choose_paper),
            (self._share, "share", self.share),
            (self._export, "export", lambda: desk.exportWanted.emit("", *self.span)),
        ):
            button.clicked.connect(slot)
            bind(self, f"lesson.{action_id}", slot)
        for action_id, slot in (
            ("folder", self.job.open_folder),
            ("remark", lambda: self._in_pane(REMARKS, self.remarks.write)),
            ("change_remark", lambda: self._in_pane(REMARKS, self.remarks.begin_change)),
            ("tasks", lambda: self._in_pane(REMARKS, self.remarks.make_tasks)),
            ("bundle", lambda: self._in_pane(BUNDLES, self.bundles.choose_target)),
            ("take_in", lambda: self._in_pane(BUNDLES, self.bundles.choose_file)),
            ("look", lambda: self._in_pane(BUNDLES, self.bundles.choose_visit)),
            ("reply", lambda: self._in_pane(BUNDLES, self.bundles.choose_reply)),
            ("home", desk.close_to_go_home),
            ("pane_remarks", lambda: self.side.show_pane(REMARKS)),
            ("pane_bundles", lambda: self.side.show_pane(BUNDLES)),
            ("pane_shared", lambda: self.side.show_pane(SHARED)),
        ):
            bind(self, f"lesson.{action_id}", slot)

    @property
    def span(self) -> tuple[date, date]:
        """The days that are shown, the first first."""
        first, last = sorted((self._first.day, self._last.day))
        return first, last

    def refresh(self) -> None:
        """Read the span again; the first time, the last seven days or those of a bundle."""
        practising = self.desk.workbench.practising
        self.desk.jobs.store(practising.practice_day_now, self._know_today, subject="lesson.today")

    def copy(self) -> None:
        """Copy the text of these days."""
        span, reporting = self.span, self.desk.workbench.reporting
        self.desk.jobs.store(lambda: reporting.text(*span), self._copied, subject="lesson.text")

    def save(self, path: Path) -> None:
        """Write the text of these days to a file."""
        span, reporting = self.span, self.desk.workbench.reporting
        self.desk.jobs.store(
            lambda: _write(path, reporting.text(*span)),
            lambda _: self.job.say(tr("Saved as {name}.").format(name=path.name), path),
        )

    def write_page(self, target: Path) -> None:
        """Write the report as a page with clips."""
        lessons, span = self.desk.workbench.lessons, self.span
        self.job.run(
            tr("Writing the page, with the marked places to hear"),
            lambda progress, should_stop: lessons.write_page(
                *span, target, progress=progress, should_stop=should_stop
            ),
            self._written,
        )

    def write_paper(self, target: Path) -> None:
        """Write the report as PDF."""
        lessons, span = self.desk.workbench.lessons, self.span
        self.job.run(
            tr("Writing the report for paper"),
            lambda progress, should_stop: lessons.write_paper(
                *span, target, progress=progress, should_stop=should_stop
            ),
            self._written,
        )

    def share(self) -> None:
        """Offer clips of all takes of these days."""
        filing, (first, last) = self.desk.workbench.filing, self.span
        self.desk.jobs.store(
            lambda: filing.takes(first_day=first, last_day=last),
            lambda takes: self.desk.shareWanted.emit(takes, 0.0, 0.0),
            subject="lesson.share",
        )

    def take_in(self, path: Path) -> None:
        """Take a bundle or a reply in, as when it is dropped on the window."""
        self.side.show_pane(BUNDLES)
        self.bundles.take_in(path)

    def _in_pane(self, pane: int, act: object) -> None:
        self.side.show_pane(pane)
        if callable(act):
            act()

    def _came_in(self) -> None:
        self.desk.passagesChanged.emit()
        self.desk.daysChanged.emit()
        self.desk.takesChanged.emit()
        self._read()

    def _written(self, path: Path) -> None:
        self.job.say(tr("{name} was written.").format(name=path.name), path)

    def _know_today(self, today: date) -> None:
        is_first = self._today is None
        self._today = today
        visit = self.desk.workbench.bundles.visiting
        if is_first and visit is not None:
            self._show_span(visit.first_day, visit.last_day)
        elif is_first:
            self._this_week()
        else:
            self._read()

    def _this_week(self) -> None:
        if self._today is not None:
            self._show_span(self._today - _WEEK + timedelta(days=1), self._today)

    def _move(self, step: timedelta) -> None:
        self._show_span(self._first.day + step, self._last.day + step)

    def _show_span(self, first: date, last: date) -> None:
        self._first.show_day(first)
        self._last.show_day(last)
        self._read()

    def _read(self) -> None:
        span, lessons = self.span, self.desk.workbench.lessons
        self.desk.jobs.store(
            lambda: lessons.report(*span), self.report.show_report, subject="lesson.read"
        )
        self.remarks.show_span(*span, self._today or span[1])
        self.bundles.show_span(*span)
        self.shared.refresh()

    def _copied(self, text: str) -> None:
        QGuiApplication.clipboard().setText(text)
        self.desk.tell(tr("The text was copied."))

    def _choose_text(self) -> None:
        kinds, name = tr("Text (*.txt)"), f"lesson-{self._last.day}.txt"
        self.asking = ask_new_file(self, tr("Save the text"), name, kinds, self.save)

    def _choose_page(self) -> None:
        kinds, name = tr("Pages (*.html)"), f"lesson-{self._last.day}.html"
        self.asking = ask_new_file(self, tr("Write the page"), name, kinds, self.write_page)

    def _choose_paper(self) -> None:
        kinds, name = tr("Documents (*.pdf)"), f"lesson-{self._last.day}.pdf"
        self.asking = ask_new_file(self, tr("Write for paper"), name, kinds, self.write_paper)


def _write(path: Path, text: str) -> None:
    try:
        path.write_text(text + "\n", encoding="utf-8")
    except OSError as error:
        raise PlainFailure(
            f"{path.name} could not be written: {error.strerror or error}.",
            "Choose another folder.",
        ) from error
