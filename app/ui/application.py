"""Starts the window on an open journal."""

import atexit
import logging
import sys
import traceback
from pathlib import Path
from types import TracebackType
from typing import TYPE_CHECKING
from weakref import WeakSet

from PySide6.QtCore import QObject, QTimer
from PySide6.QtWidgets import QApplication

from app.jobs import Jobs
from app.journal.failures import PlainFailure
from app.services.loading import uncollected
from app.services.window_end import WindowEnd
from app.ui.desk import Desk
from app.ui.icons import program_icon
from app.ui.language import use_language
from app.ui.main_window import MainWindow
from app.ui.models.first_paint import FirstPaint
from app.ui.models.key_repeats import KeyRepeats
from app.ui.preferences import Preferences
from app.ui.theme import Theme
from app.ui.widgets.bug_dialog import BugDialog
from app.ui.widgets.failure_dialog import FailureDialog

if TYPE_CHECKING:
    from app.services.workbench import Workbench

log = logging.getLogger(__name__)

_HOUR_MS = 60 * 60 * 1000


class Window(QObject):
    """A main window with its executors; closing it ends them.

    Parameters
    ----------
    workbench : Workbench
        An open journal; the caller closes it afterwards.
    log_file : Path or None
        Named in the bug dialog; whoever starts the program lets its log go there.
    preferences_file : Path or None
        Where the window keeps its own settings; ``None``: the platform's usual place.
    """

    def __init__(
        self,
        workbench: "Workbench",
        *,
        log_file: Path | None = None,
        preferences_file: Path | None = None,
    ) -> None:
        application = application_object()
        super().__init__()
        self._log_file = log_file
        preferences = Preferences(preferences_file)
        use_language(preferences.language)
        self.theme = Theme(application, preferences.scheme, self)
        self.jobs = Jobs(self, waiting=True)
        self.jobs.store(workbench.load)
        self._working = workbench.working
        self._working.append(self.jobs.close)
        self.desk = Desk(workbench, self.jobs, self.theme, preferences, self)
        self.main = MainWindow(self.desk)
        self._first_paint = FirstPaint(self.main, self.jobs.begin)
        KeyRepeats(self.desk.keys, self.main)
        self.theme.dress()
        _STANDING.add(self)
        self.bug_dialogs: list[BugDialog] = []
        self.jobs.bug_found.connect(self.show_bug)
        # A window that stays open for days is backed up all the same.
        self._hourly = QTimer(self, interval=_HOUR_MS)
        self._hourly.timeout.connect(lambda: self.jobs.store(workbench.backups.make_if_due))
        self._hourly.start()

    def show_bug(self, error: BaseException) -> None:
        """Say that the program is at fault; what sounds goes on."""
        details = "".join(traceback.format_exception(error))
        journal = self.desk.workbench.journal_dir
        dialog = BugDialog(details, self._log_file, self.main, journal=journal)
        self.bug_dialogs.append(dialog)
        dialog.destroyed.connect(lambda: self.bug_dialogs.remove(dialog))
        dialog.show()

    def take_exception(
        self,
        kind: type[BaseException],
        error: BaseException,
        trace: TracebackType | None,
    ) -> None:
        """Take what escaped from a slot (for ``sys.excepthook``)."""
        if isinstance(error, PlainFailure):
            self.desk.tell_failure(error)
            return
        if issubclass(kind, KeyboardInterrupt):
            self.main.close()
            return
        log.error("An error escaped from the window", exc_info=(kind, error, trace))
        self.show_bug(error)

    def close(self) -> None:
        """Close the window, then the executors."""
        _STANDING.discard(self)
        self._hourly.stop()
        self.main.close()
        self.jobs.close()
        if self.jobs.close in self._working:
            self._working.remove(self.jobs.close)
        for dialog in tuple(self.bug_dialogs):
            dialog.close()


_STANDING: WeakSet[Window] = WeakSet()


def application_object() -> QApplication:
    """Return the process's application, made if there is none yet."""
    application = QApplication.instance()
    if isinstance(application, QApplication):
        return application
    made = QApplication(sys.argv[:1])
    made.setApplicationName("Passagework")
    made.setApplicationDisplayName("Passagework")
    made.setDesktopFileName("passagework")
    made.setWindowIcon(program_icon())
    atexit.register(_close_what_stands)
    return made


def _close_what_stands() -> None:
    """Close windows an error left open: Qt may not outlive the interpreter in them."""
    for window in tuple(_STANDING):
        window.close()
    QApplication.closeAllWindows()


def show_failure(failure: PlainFailure, *, preferences_file: Path | None = None) -> None:
    """Show in a dialog of its own why there is no window; returns once it is closed."""
    application, preferences = application_object(), Preferences(preferences_file)
    use_language(preferences.language)
    theme = Theme(application, preferences.scheme)
    theme.dress()
    FailureDialog(failure).exec()


def run_window(
    workbench: "Workbench",
    *,
    log_file: Path | None = None,
    preferences_file: Path | None = None,
    take_id: str = "",
    told: str = "",
) -> WindowEnd:
    """Show the window and return once it is closed.

    Parameters
    ----------
    workbench : Workbench
        An open journal; the caller closes it afterwards.
    log_file, preferences_file : Path or None
        See :class:`Window`.
    take_id : str
        Open the Listen page on this take.
    told : str
        A sentence to begin with.

    Returns
    -------
    WindowEnd
        The process's exit code, or what to open next.
    """
    application = application_object()
    with uncollected():
        window = Window(workbench, log_file=log_file, preferences_file=preferences_file)
    before = sys.excepthook
    sys.excepthook = window.take_exception
    try:
        window.main.show()
        window.main.ahead.begin()
        if take_id:
            window.main.listen_to(take_id)
        if told:
            window.desk.tell(told)
        code, desk = application.exec(), window.desk
        return WindowEnd(code, desk.restore_wanted, desk.visit_wanted, desk.home_wanted)
    finally:
        window.close()
        sys.excepthook = before
