"""The window: a rail, five pages, the strip of long work, the message bar."""

import logging
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QUrl
from PySide6.QtGui import QCloseEvent, QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QAbstractSpinBox, QLineEdit, QMainWindow, QWidget

from app.journal.bundle_names import suffix_of
from app.services.bundling.visiting import VISITING
from app.ui.desk import Desk
from app.ui.keys import describe_again
from app.ui.language import tr
from app.ui.models.making_ahead import MakingAhead
from app.ui.models.measure_queue import MeasureQueue
from app.ui.models.recorder import Recorder
from app.ui.models.reminders import Reminders
from app.ui.pages.practice_keys import step_back
from app.ui.pages.window_pages import COMPARE, LESSON, LISTEN, PRACTICE, Pages
from app.ui.sheets import Sheets
from app.ui.widgets.actions_menu import actions_menu
from app.ui.widgets.basics import column, row
from app.ui.widgets.focus_order import order_focus
from app.ui.widgets.message_bar import MessageBar
from app.ui.widgets.rail import PAGES, Rail
from app.ui.widgets.visit_strip import VisitStrip, turn_practice_off, window_title
from app.ui.widgets.work_strip import WorkStrip

if TYPE_CHECKING:
    from app.ui.pages.calendar import CalendarPage
    from app.ui.pages.compare import ComparePage
    from app.ui.pages.lesson import LessonPage
    from app.ui.pages.listen import ListenPage
    from app.ui.pages.practice import PracticePage

log = logging.getLogger(__name__)


class MainWindow(QMainWindow):
    """Holds the pages and what belongs to all of them."""

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self.desk = desk
        self.visit = desk.workbench.bundles.visiting
        self.setWindowTitle(window_title(desk))
        self.setMinimumSize(1080, 680)
        self.setAcceptDrops(True)
        self.queue = MeasureQueue(desk)
        self.recorder = Recorder(desk)
        self.pages = Pages(desk, self.queue, self.recorder)
        self.rail = Rail()
        self.messages = MessageBar(desk)
        self.work = WorkStrip(self.queue)
        self.sheets = Sheets(desk, self)
        self.reminders = Reminders(desk, self)
        self.ahead = MakingAhead(desk, self.pages, self.recorder)
        self._build()
        self._bind()
        self._connect()
        self._remember_output()
        self.show_page(PRACTICE if self.visit is None else LESSON)

    @property
    def practice(self) -> "PracticePage":
        """The page of today."""
        return self.pages.practice

    @property
    def listen(self) -> "ListenPage":
        """The page of one take."""
        return self.pages.listen

    @property
    def compare(self) -> "ComparePage":
        """The page of two takes."""
        return self.pages.compare

    @property
    def calendar(self) -> "CalendarPage":
        """The page of the year."""
        return self.pages.calendar

    @property
    def lesson(self) -> "LessonPage":
        """The page of the lesson."""
        return self.pages.lesson

    def focusNextPrevChild(self, forward: bool) -> bool:
        """Go on to what comes next for the eye."""
        order_focus(self._centre)
        return super().focusNextPrevChild(forward)

    def _build(self) -> None:
        right = column(spacing=0)
        if self.visit is not None:
            right.addWidget(VisitStrip(self.visit))
        right.addWidget(self.pages, 1)
        right.addWidget(self.work)
        right.addWidget(self.messages)
        centre = self._centre = QWidget()
        box = row(centre, spacing=0)
        box.addWidget(self.rail)
        box.addLayout(right, 1)
        self.setCentralWidget(centre)
        geometry = self.desk.preferences.geometry
        if geometry is None or not self.restoreGeometry(geometry):
            self.resize(1280, 800)

    def _bind(self) -> None:
        bind = self.desk.keys.bind
        for index, (name, _) in enumerate(PAGES):
            bind(self, f"page.{name}", partial(self.show_page, index))
        bind(self, "import", self._import)
        bind(self, "import_folder", self._import_folder)
        bind(self, "undo", self.desk.undo)
        bind(self, "redo", self.desk.redo)
        bind(self, "work.cancel", self._cancel_work)
        bind(self, "escape", self._escape)
        bind(self, "settings", self.sheets.show_settings)
        bind(self, "theme", self._toggle_theme)
        bind(self, "help", self.sheets.show_help)
        bind(self, "guide", self.sheets.show_guide)
        bind(self, "keys", self.sheets.show_keys)
        bind(self, "backups", self.sheets.show_backups)
        bind(self, "categories", self.sheets.show_categories)
        bind(self, "rehearsal.next", self._hear_next_chance)
        bind(self, "quit", self.close)
        if self.visit is not None:
            practice = self.practice
            parts = (practice.panel, practice.clock_card, practice.head.minutes)
            turn_practice_off(parts, self.desk.keys, self._refuses_recordings)
        self.rail.menu.setMenu(actions_menu(self.desk.keys, self, lambda: self.page_index))
        if not self.desk.keys.are_usual:
            self._show_actual_keys()
        self.desk.keys.changed.connect(self._show_actual_keys)

    def _connect(self) -> None:
        self.rail.chosen.connect(self.show_page)
        self.work.cancelWanted.connect(self._cancel_work)
        self.recorder.stateChanged.connect(
            lambda _: self.rail.mark_page(PRACTICE, self.recorder.words)
        )
        self.rail.theme.clicked.connect(self._toggle_theme)
        self.rail.help.clicked.connect(self.sheets.show_help)
        self.desk.listenWanted.connect(self.listen_to)
        self.desk.compareWanted.connect(self._compare)
        self.desk.thenNowWanted.connect(self._hear_then_and_now)
        self.desk.stretchWanted.connect(self._hear_stretch)
        self.desk.measureWanted.connect(self.queue.measure)
        self.desk.closeWanted.connect(self.close)

    def _remember_output(self) -> None:
        """Play through the output that was chosen the last time."""
        bench = self.desk.workbench
        self.desk.jobs.store(
            lambda: bench.playing.choose_output(bench.practising.settings().output_device)
        )

    def _show_actual_keys(self) -> None:
        """Name the keys of now in the tooltips; the menu asks each time it opens."""
        describe_again(self, self.desk.keys)

    @property
    def page_index(self) -> int:
        """Which page is open."""
        return self.pages.currentIndex()

    def show_page(self, index: int) -> None:
        """Open a page."""
        self.pages.show_page(index)
        self.rail.show_chosen(index)

    def listen_to(self, take_id: str, position_s: float = 0.0) -> None:
        """Open a take on the Listen page."""
        self.listen.want(take_id, position_s)
        self.show_page(LISTEN)

    def import_files(self, paths: list[Path]) -> None:
        """Show the import table for these files; a bundle or a reply goes to Lesson."""
        given = [path for path in paths if suffix_of(path)]
        if given:
            self.show_page(LESSON)
            self.lesson.take_in(given[0])
            return
        if self._refuses_recordings():
            return
        self.show_page(PRACTICE)
        self.practice.import_files(paths)

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Take files from anywhere."""
        if any(url.isLocalFile() for url in event.mimeData().urls()):
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Show the import table for what was dropped."""
        urls: list[QUrl] = event.mimeData().urls()
        paths = [Path(url.toLocalFile()) for url in urls if url.isLocalFile()]
        if paths:
            event.acceptProposedAction()
            self.import_files(paths)

    def closeEvent(self, event: QCloseEvent) -> None:
        """Let go of devices; a running recording is kept."""
        self.desk.preferences.geometry = self.saveGeometry()
        for step in (
            self.ahead.stop,
            *self.pages.stops,
            self.queue.close,
            self.recorder.close,
            self.reminders.close,
            self.sheets.hide,
        ):
            # Whatever one of them meets, the others still let go of their devices.
            try:
                step()
            except Exception:
                log.exception("While closing the window")
        super().closeEvent(event)

    def _compare(self, a_id: str, b_id: str) -> None:
        self.compare.show_pair(a_id, b_id)
        self.show_page(COMPARE)

    def _hear_then_and_now(self, a_id: str, b_id: str) -> None:
        self.compare.hear_pair(a_id, b_id)
        self.show_page(COMPARE)

    def _hear_next_chance(self) -> None:
        self.practice.forms.rehearsal.run.hear_next()

    def _hear_stretch(self, take_id: str, start_s: float, end_s: float) -> None:
        self.listen.hear_stretch(take_id, start_s, end_s)
        self.show_page(LISTEN)

    def _refuses_recordings(self) -> bool:
        """In somebody else's bundle, say that nothing is recorded or imported."""
        if self.visit is not None:
            self.desk.tell_failure(VISITING)
        return self.visit is not None

    def _import(self) -> None:
        if self._refuses_recordings():
            return
        self.show_page(PRACTICE)
        self.practice.choose_files()

    def _import_folder(self) -> None:
        if self._refuses_recordings():
            return
        self.show_page(PRACTICE)
        self.practice.choose_folder()

    def _cancel_work(self) -> None:
        self.desk.cancelWanted.emit()
        if self.queue.left_count:
            self.work.cancel()
            self.desk.tell(
                tr("Measuring was stopped."),
                tr("A take is measured from Listen, under Take, or all of them at the next start."),
            )
        forms = self.practice.forms
        if forms.has_made("imports") and forms.imports.is_busy:
            forms.imports.cancel()

    def _escape(self) -> None:
        if self.messages.put_away():
            return
        page = self.pages.shown
        if isinstance(self.focusWidget(), QLineEdit | QAbstractSpinBox):
            page.setFocus()
        elif page is self.practice:
            step_back(self.practice)
        else:
            page.clear_selection()

    def _toggle_theme(self) -> None:
        self.desk.theme.toggle()
        self.desk.preferences.scheme = self.desk.theme.scheme
