"""Tells how long a key is held: a short press marks a moment, a long one a span."""

import time
from collections.abc import Callable

from PySide6.QtCore import QCoreApplication, QEvent, QObject, Qt, QTimer
from PySide6.QtGui import QKeyEvent

from app.ui.models.key_repeats import is_repeat

HELD_S = 0.35
"""From here on a press counts as held; a tap takes about a tenth of a second
(common practice, no source)."""

SETTLE_MS = 20
"""So long a release waits for a press that shows it to be a repeat."""

_MODIFIERS = (
    Qt.Key.Key_Shift,
    Qt.Key.Key_Control,
    Qt.Key.Key_Alt,
    Qt.Key.Key_Meta,
    Qt.Key.Key_AltGr,
)


class HeldKey(QObject):
    """Waits for the release of the key that has just triggered an action.

    Qt tells an action that its key went down, and nobody that it came up again; a key that
    is held repeats itself. Installed as event filter of a page, this notes each press there;
    only while a key is down does it look at all events of the program.
    """

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._pressed_at: float | None = None
        self._came_up: QKeyEvent | None = None
        self._came_up_at = 0.0
        self._settling = QTimer(self)
        self._settling.setSingleShot(True)
        self._settling.setInterval(SETTLE_MS)
        self._settling.timeout.connect(self.give_up)
        self._released: Callable[[float], None] | None = None

    @property
    def is_waiting(self) -> bool:
        """True while a key is down whose release somebody waits for."""
        return self._released is not None

    def wait(self, released: Callable[[float], None]) -> bool:
        """Have `released` called with the seconds the key was down.

        Returns False, and calls nothing, where no key is down: a menu was used.
        """
        application = QCoreApplication.instance()
        if self._pressed_at is None or application is None:
            return False
        self.give_up()
        self._released = released
        application.installEventFilter(self)
        return True

    def give_up(self) -> None:
        """Count the key as released now, where one is waited for."""
        application = QCoreApplication.instance()
        came_up, self._came_up = self._came_up, None
        self._settling.stop()
        released, self._released = self._released, None
        if released is None or application is None:
            return
        application.removeEventFilter(self)
        pressed_at, self._pressed_at = self._pressed_at, None
        until = self._came_up_at if came_up is not None else time.monotonic()
        released(until - pressed_at if pressed_at is not None else 0.0)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Notice a press, its release, or that the program gets no keys any more."""
        kind = event.type()
        if kind == QEvent.Type.ApplicationDeactivate:
            self.give_up()
        elif (
            isinstance(event, QKeyEvent)
            and not event.isAutoRepeat()
            and event.key() not in _MODIFIERS
        ):
            if kind == QEvent.Type.KeyRelease:
                self._comes_up(event)
            elif kind == QEvent.Type.ShortcutOverride and is_repeat(event, self._came_up):
                self._came_up = None  # it is still down
                self._settling.stop()
            elif kind == QEvent.Type.ShortcutOverride:
                if self._came_up is not None:
                    self.give_up()
                if not self.is_waiting:
                    self._pressed_at = time.monotonic()
        return super().eventFilter(watched, event)

    def _comes_up(self, event: QKeyEvent) -> None:
        if self._came_up is None:
            self._came_up_at = time.monotonic()
        if self.is_waiting and event.timestamp():
            self._came_up = QKeyEvent(event)
            self._settling.start()
        else:
            self.give_up()
            self._pressed_at = None
