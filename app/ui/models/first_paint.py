"""What is to begin once a window stands."""

from collections.abc import Callable

from PySide6.QtCore import QEvent, QObject, QTimer
from PySide6.QtWidgets import QWidget

_PATIENCE_MS = 1000


class FirstPaint(QObject):
    """Calls once, when a window has been painted and has taken the keys that waited.

    A window that nobody shows, or that is shown as an icon only, is not waited for.

    Parameters
    ----------
    window : QWidget
    then : callable
        Called on the GUI thread.
    """

    def __init__(self, window: QWidget, then: Callable[[], None]) -> None:
        super().__init__(window)
        self._window = window
        self._then: Callable[[], None] | None = then
        window.installEventFilter(self)
        QTimer.singleShot(0, self, self._unless_shown)
        QTimer.singleShot(_PATIENCE_MS, self, self._go)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """See the window being painted."""
        if event.type() == QEvent.Type.Paint:
            self._window.removeEventFilter(self)
            QTimer.singleShot(0, self, self._go)
        return super().eventFilter(watched, event)

    def _unless_shown(self) -> None:
        if not self._window.isVisible():
            self._go()

    def _go(self) -> None:
        then, self._then = self._then, None
        if then is not None:
            self._window.removeEventFilter(self)
            then()
