"""One piece of long work under a form: what, how far, cancel; then where it was written."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

from PySide6.QtCore import QUrl
from PySide6.QtGui import QDesktopServices
from PySide6.QtWidgets import QFrame

from app.jobs import Job, Progress, ShouldStop
from app.journal.failures import PlainFailure
from app.ui.desk import Desk
from app.ui.language import tr
from app.ui.widgets.basics import Button, column, fill, row, sentence
from app.ui.widgets.progress_bar import ThinProgressBar


class JobStrip(QFrame):
    """Runs work off the GUI thread and shows it; hidden while there is nothing to say."""

    def __init__(self, desk: Desk, subject: str, *, narrow: bool = False) -> None:
        super().__init__()
        self._desk = desk
        self._subject = subject
        self._job: Job | None = None
        self._at_work = ""
        self.written: Path | None = None
        self.words = sentence()
        self.bar = ThinProgressBar(tr("Progress"))
        self.cancel_button = Button(tr("Cancel"), plain=True)
        self.cancel_button.clicked.connect(self.cancel)
        self.open_button = Button(tr("Open the folder"), "folder", plain=True)
        self.open_button.clicked.connect(self.open_folder)
        desk.cancelWanted.connect(self.cancel)
        first = column(spacing=4) if narrow else row()
        fill(first, self.words, self.cancel_button, self.open_button)
        if not narrow:
            first.setStretch(0, 1)
        fill(column(self, spacing=4), first, self.bar)
        self.hide()

    @property
    def is_busy(self) -> bool:
        """True while work runs."""
        return self._job is not None

    def run(
        self,
        words: str,
        work: Callable[[Progress, ShouldStop], Any],
        done: Callable[[Any], None],
    ) -> None:
        """Begin; while something runs already, say so instead."""
        if self.is_busy:
            self._desk.tell(tr("Something is still being written."), tr("Wait, or cancel it."))
            return
        self.written = None
        self._at_work = words
        self._show(words, busy=True)
        self.bar.show_fraction(0.0)
        self._job = self._desk.jobs.analyse(
            work,
            done,
            subject=self._subject,
            progress=self.bar.show_fraction,
            failed=self._failed,
            ended=self._ended,
        )

    def cancel(self) -> None:
        """Stop the work; nothing unfinished is left."""
        if self._job is not None:
            self._job.cancel()
            self._show(tr("Stopped; nothing unfinished is left."), busy=False)

    def say(self, words: str, written: Path | None = None) -> None:
        """Say how it went, and offer the folder of what was written."""
        self.written = written
        self._show(words, busy=False)

    def open_folder(self) -> None:
        """Open the folder of what was written last."""
        if self.written is None:
            self._desk.tell(tr("Nothing was written since the window was opened."))
            return
        folder = self.written if self.written.is_dir() else self.written.parent
        QDesktopServices.openUrl(QUrl.fromLocalFile(str(folder)))

    def _failed(self, failure: PlainFailure) -> None:
        self.say(f"{failure.sentence} {failure.next_step}".strip())

    def _ended(self) -> None:
        self._job = None
        if self.words.text() == self._at_work:  # nothing was said: a fault, told elsewhere
            self.say(tr("It could not be finished; nothing unfinished is left."))
        self.bar.hide()
        self.cancel_button.hide()

    def _show(self, words: str, *, busy: bool) -> None:
        self.words.setText(words)
        self.bar.setAccessibleDescription(words)
        self.bar.setVisible(busy)
        self.cancel_button.setVisible(busy)
        self.open_button.setVisible(self.written is not None)
        self.show()
