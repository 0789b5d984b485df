"""Tells a key that repeats itself from one that is pressed again."""

from PySide6.QtCore import QEvent, QObject
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QWidget

from app.ui.keys import KeyMap

REPEAT_WITHIN_MS = 2
"""A press that the display dates so close after a release is the key repeating itself: no
finger is as fast, and X11 gives both the same time. Qt should say so (`isAutoRepeat`), but
misses it where the press reaches it a moment after the release."""


def is_repeat(press: QKeyEvent, release: QKeyEvent | None) -> bool:
    """Tell whether `press` is the key repeating itself after `release`.

    Events that no display has dated have the time 0 and are taken at their word.
    """
    if press.isAutoRepeat():
        return True
    return (
        release is not None
        and release.timestamp() > 0
        and press.key() == release.key()
        and 0 <= press.timestamp() - release.timestamp() <= REPEAT_WITHIN_MS
    )


class KeyRepeats(QObject):
    """Keeps a held key, or pedal, from triggering an action again that does not repeat.

    `QAction.autoRepeat` alone cannot: it relies on the flag that Qt does not always set on
    X11, where a pedal held for a second would start and stop the recording several times.
    Keys that are typed into a field are left alone: the field takes their override itself.

    Looks at the events of the window alone, not at all events of the program.
    """

    def __init__(self, keys: KeyMap, window: QWidget) -> None:
        super().__init__(window)
        self._keys = keys
        self._window = window
        self._release: QKeyEvent | None = None
        self._swallowing = False
        window.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Notice presses and releases, and end repeats that no action wants."""
        kind = event.type()
        if kind in (QEvent.Type.Show, QEvent.Type.WinIdChange):
            # Presses and releases come to the handle before any widget can take them.
            handle = self._window.windowHandle()
            if watched is self._window and handle is not None:
                handle.installEventFilter(self)
        elif kind == QEvent.Type.KeyRelease and isinstance(event, QKeyEvent):
            self._release = QKeyEvent(event)
        elif kind == QEvent.Type.ShortcutOverride and isinstance(event, QKeyEvent):
            self._swallowing = self._is_unwanted(event)
            if self._swallowing:
                event.accept()  # so that no action is triggered; a key press comes instead
                return True
        elif kind == QEvent.Type.KeyPress and self._swallowing:
            self._swallowing = False
            return True
        return super().eventFilter(watched, event)

    def _is_unwanted(self, event: QKeyEvent) -> bool:
        if not is_repeat(event, self._release):
            self._keys.last_triggered = ""
            return False
        triggered = self._keys.last_triggered
        return bool(triggered) and not self._keys.repeats(triggered)
