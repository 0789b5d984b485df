"""Reminds of practice through the desktop, once a practice day, where it is wished."""

from collections.abc import Callable

from PySide6.QtCore import QObject, QTimer
from PySide6.QtWidgets import QMainWindow, QSystemTrayIcon

from app.ui.desk import Desk
from app.ui.language import tr

_MINUTE_MS = 60_000
_SHOWN_MS = 15_000

Notify = Callable[[str], None]


class Reminders(QObject):
    """Asks once a minute whether to remind, and hands the sentence to the desktop.

    Parameters
    ----------
    notify : callable, optional
        Shows a sentence; the desktop's own notification where left out, and the message
        bar where the desktop has no place for one.
    """

    def __init__(self, desk: Desk, window: QMainWindow, notify: Notify | None = None) -> None:
        super().__init__(desk)
        self._desk = desk
        self._window = window
        self._notify = notify or self._tell
        self._tray: QSystemTrayIcon | None = None
        self._timer = QTimer(self, interval=_MINUTE_MS)
        self._timer.timeout.connect(self.look)
        if not desk.workbench.read_only:
            self._timer.start()

    def look(self) -> None:
        """Remind if it is time to."""
        due = self._desk.workbench.reminders.due
        self._desk.jobs.store(
            due, lambda words: self._notify(words) if words else None, subject="reminder"
        )

    def close(self) -> None:
        """Remind no more."""
        self._timer.stop()
        self._put_away()

    def _tell(self, words: str) -> None:
        if not (QSystemTrayIcon.isSystemTrayAvailable() and QSystemTrayIcon.supportsMessages()):
            self._desk.tell(words)
            return
        if self._tray is None:
            self._tray = QSystemTrayIcon(self._window.windowIcon(), self)
            self._tray.setToolTip(tr("Passagework"))
            self._tray.messageClicked.connect(self._come_forward)
            self._tray.activated.connect(lambda _: self._come_forward())
        self._tray.show()
        self._tray.showMessage(tr("Passagework"), words, self._window.windowIcon(), _SHOWN_MS)

    def _come_forward(self) -> None:
        self._put_away()
        self._window.showNormal() if self._window.isMinimized() else self._window.show()
        self._window.raise_()
        self._window.activateWindow()

    def _put_away(self) -> None:
        if self._tray is not None:
            self._tray.hide()
