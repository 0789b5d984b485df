"""Pages are made while nobody waits for anything, so that they are there when wanted."""

from collections.abc import Generator
from importlib import import_module

from PySide6.QtCore import QObject, QTimer
from PySide6.QtWidgets import QApplication, QLineEdit, QPlainTextEdit

from app.services.loading import leave_out, take_in_again
from app.services.stopping import Progress, ShouldStop, stop_if
from app.ui.desk import Desk
from app.ui.models.recorder import Recorder, RecorderState
from app.ui.pages.window_pages import LATER_MODULES, Pages

_FIRST_MS, _NEXT_MS, _BUSY_MS = 250, 10, 500


class MakingAhead(QObject):
    """Loads what the other pages need on a thread, then makes them a part at a time.

    It waits while somebody types, while an input is open (its meter would stutter), and
    while something plays. A page that is wanted sooner is made at once by whoever shows it.

    Attributes
    ----------
    done_count : int
        How many parts were made.
    is_over : bool
        Nothing is left to make, or the window closes.
    """

    def __init__(self, desk: Desk, pages: Pages, recorder: Recorder) -> None:
        super().__init__(pages)
        self._desk, self._pages, self._recorder = desk, pages, recorder
        self._parts: Generator[None, None, None] | None = None
        self._text = ""
        self.done_count = 0
        self.is_over = False
        self._timer = QTimer(self, singleShot=True)
        self._timer.timeout.connect(self._go_on)

    def begin(self) -> None:
        """Begin once the window has settled."""
        self._timer.start(_FIRST_MS)

    def stop(self) -> None:
        """Make nothing more; the window closes."""
        self.is_over = True
        self._timer.stop()
        self._desk.jobs.forget("pages.load")
        if self._parts is not None:
            self._parts.close()
        self._pages.finish_begun()
        take_in_again()

    def make_next(self) -> bool:
        """Make the next part; False once nothing is left."""
        if self._parts is None:
            self._parts = self._pages.make_ahead()
        self.is_over = next(self._parts, self) is self
        self.done_count += not self.is_over
        return not self.is_over

    def _go_on(self) -> None:
        if self.is_over:
            return
        if self._parts is None:
            self._load()
        elif self._is_disturbing:
            self._timer.start(_BUSY_MS)
        elif self.make_next():
            self._timer.start(_NEXT_MS)
        else:
            leave_out()

    def _load(self) -> None:
        if not self._desk.jobs.is_idle:  # what is in view comes first
            self._timer.start(_FIRST_MS)
            return
        self._desk.jobs.analyse(load_modules, lambda _: self._loaded(), subject="pages.load")

    def _loaded(self) -> None:
        self._parts = self._pages.make_ahead()
        self._timer.start(_NEXT_MS)

    @property
    def _is_disturbing(self) -> bool:
        return (
            self._recorder.state is not RecorderState.IDLE
            or self._desk.workbench.playing.state().playing
            or self._somebody_types()
        )

    def _somebody_types(self) -> bool:
        """Whether a text under the cursor was changed since this was asked last."""
        field = QApplication.focusWidget()
        text = ""
        if isinstance(field, QLineEdit):
            text = field.text()
        elif isinstance(field, QPlainTextEdit):
            text = field.toPlainText()
        before, self._text = self._text, text
        return text != before


def load_modules(_progress: Progress, should_stop: ShouldStop) -> None:
    """Load what the pages need that are made later; for any thread."""
    for name in LATER_MODULES:
        stop_if(should_stop)
        import_module(name)
