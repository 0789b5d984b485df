"""Keys of the player's own: what a foot pedal types, beside the usual keys."""

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QKeyEvent, QKeySequence
from PySide6.QtWidgets import QGridLayout, QLineEdit, QWidget

from app.ui.desk import Desk
from app.ui.keys import PEDAL_IDS, keys_text, refusal, spec_of
from app.ui.language import tr
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Button, column, fill, row, sentence, soft
from app.ui.widgets.focus_order import OrderedDialog

_MODIFIERS = (Qt.Key.Key_Shift, Qt.Key.Key_Control, Qt.Key.Key_Alt, Qt.Key.Key_Meta)
_GO_ON = (Qt.Key.Key_Tab, Qt.Key.Key_Backtab, Qt.Key.Key_Escape)


class KeyField(QLineEdit):
    """Shows the key that was pressed in it; Backspace takes it away, Tab goes on.

    Signals
    -------
    pressed(str)
        A key, as :class:`QKeySequence` writes it; empty: none any more.
    """

    pressed = Signal(str)

    def __init__(self, name: str) -> None:
        super().__init__()
        self.setReadOnly(True)
        self.setAccessibleName(name)
        self.setPlaceholderText(tr("press a key here"))
        self.setAcceptDrops(False)

    def event(self, event: QEvent) -> bool:
        """Keep keys that would do something elsewhere."""
        if event.type() == QEvent.Type.ShortcutOverride:
            event.accept()
            return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Take the key."""
        if event.key() in _GO_ON:
            super().keyPressEvent(event)
        elif event.key() in (Qt.Key.Key_Backspace, Qt.Key.Key_Delete):
            self.pressed.emit("")
        elif event.key() not in _MODIFIERS:
            self.pressed.emit(QKeySequence(event.keyCombination()).toString())


class KeysSheet(OrderedDialog):
    """One line for each action that a pedal may do; never modal."""

    def __init__(self, desk: Desk, parent: QWidget) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Keys of your own"))
        self.setModal(False)
        self._desk = desk
        self._keys: dict[str, str] = {}
        self.fields: dict[str, KeyField] = {}
        self._words = sentence()
        self._words.setAccessibleName(tr("What is wrong with the key"))
        grid = QGridLayout()
        grid.setHorizontalSpacing(2 * GRID_PX)
        for at, action_id in enumerate(PEDAL_IDS):
            text = tr(spec_of(action_id).text)
            field = KeyField(tr("Own key for: {value}").format(value=text))
            field.pressed.connect(lambda key, which=action_id: self._take(which, key))
            self.fields[action_id] = field
            grid.addWidget(sentence(text), at, 0)
            grid.addWidget(soft(keys_text(action_id), wrap=False), at, 1)
            grid.addWidget(field, at, 2)
        grid.setColumnStretch(0, 1)
        keep = Button(tr("Keep"), primary=True)
        keep.clicked.connect(self.keep)
        close = Button(tr("Cancel"), plain=True)
        close.clicked.connect(self.close)
        buttons = row()
        fill(buttons, self._words, close, keep)
        buttons.setStretch(0, 1)
        about = soft(
            tr(
                "A foot pedal that types keys works once its key stands here: step on it in "
                "the field. The usual keys go on working. Backspace takes a key away."
            )
        )
        box = column(self, margin=2 * GRID_PX, spacing=2 * GRID_PX)
        fill(box, about, grid, buttons)
        self.resize(600, 400)

    @property
    def words(self) -> str:
        """Why the latest key was refused; empty where it was not."""
        return self._words.text()

    def open_sheet(self) -> None:
        """Show the keys as they are."""
        self._keys = {which: self._desk.keys.own_key(which) for which in PEDAL_IDS}
        self._words.clear()
        self._show()
        self.show()
        self.raise_()

    def keep(self) -> None:
        """Use these keys from now on."""
        self._desk.preferences.own_keys = self._keys
        self._desk.keys.use_own(self._keys)
        self.close()
        self._desk.tell(tr("The keys were kept."))

    def _take(self, action_id: str, key: str) -> None:
        problem = refusal(action_id, key, self._keys) if key else ""
        self._words.setText(problem)
        if not problem:
            self._keys[action_id] = key
            self._show()

    def _show(self) -> None:
        native = QKeySequence.SequenceFormat.NativeText
        for action_id, field in self.fields.items():
            field.setText(QKeySequence(self._keys[action_id]).toString(native))
