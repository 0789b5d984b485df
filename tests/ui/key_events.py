"""Key events with the time at which a display dated them."""

from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QKeyEvent


def dated(kind: QEvent.Type, key: str, at_ms: int) -> QKeyEvent:
    """Make an event of a letter's key that nobody has accepted yet."""
    event = QKeyEvent(kind, ord(key), Qt.KeyboardModifier.NoModifier, key)
    event.setTimestamp(at_ms)
    event.ignore()
    return event
