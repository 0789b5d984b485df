"""The message bar: one sentence and its next step, never in the way of the sound."""

from PySide6.QtCore import QTimer
from PySide6.QtGui import QAccessible, QAccessibleEvent
from PySide6.QtWidgets import QFrame

from app.ui.desk import Desk, Message
from app.ui.keys import spec_of
from app.ui.language import tr
from app.ui.spoken import said
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Button, fill, row, sentence

_PLAIN_MESSAGE_MS = 8000


class MessageBar(QFrame):
    """Shows the latest message; one with a next step stays until it is put away."""

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self.setObjectName("messages")
        self.setAccessibleName(tr("Message"))
        self._desk = desk
        self._action_id = ""
        self._text = sentence()
        self._act = Button(tr("Undo"), "undo")
        self._act.clicked.connect(self._trigger)
        self._close = Button("", "close", plain=True, name=tr("Put the message away"))
        self._close.clicked.connect(self.put_away)
        self._timer = QTimer(self, singleShot=True, interval=_PLAIN_MESSAGE_MS)
        self._timer.timeout.connect(self.put_away)
        box = row(self, margin=GRID_PX)
        box.setContentsMargins(2 * GRID_PX, GRID_PX, GRID_PX, GRID_PX)
        fill(box, self._text, self._act, self._close)
        box.setStretch(0, 1)
        desk.told.connect(self.show_message)
        self.hide()

    @property
    def text(self) -> str:
        """What is being said; empty when nothing is."""
        return self._text.text() if not self.isHidden() else ""

    @property
    def is_passing(self) -> bool:
        """True where the message goes away by itself."""
        return self._timer.isActive()

    def act(self) -> None:
        """Do what the message offers."""
        self._trigger()

    def show_message(self, message: Message) -> None:
        """Show `message` in place of the one before."""
        self._text.setText(f"{said(message.sentence)} {said(message.next_step)}".strip())
        self.setAccessibleDescription(self._text.text())
        self._action_id = message.action_id
        self._act.setVisible(bool(message.action_id))
        if message.action_id:
            words = tr(spec_of(message.action_id).text)
            self._act.setText(words)
            self._act.setAccessibleName(words)
            self._act.setToolTip(f"{words} ({self._desk.keys.text(message.action_id)})")
        self.show()
        QAccessible.updateAccessibility(QAccessibleEvent(self, QAccessible.Event.Alert))
        if message.next_step:
            self._timer.stop()
        else:
            self._timer.start()

    def put_away(self) -> bool:
        """Hide the message; False where there was none."""
        self._timer.stop()
        was_shown = not self.isHidden()
        self.hide()
        return was_shown

    def _trigger(self) -> None:
        self.put_away()
        self._desk.keys.action(self._action_id).trigger()
