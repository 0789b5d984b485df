"""Small building blocks: buttons, cards, labels at one of the three text sizes."""

from PySide6.QtCore import QEvent, QSize, Qt
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent, QPalette, QResizeEvent
from PySide6.QtWidgets import (
    QBoxLayout,
    QFrame,
    QHBoxLayout,
    QLabel,
    QLayout,
    QPushButton,
    QSizePolicy,
    QSlider,
    QVBoxLayout,
    QWidget,
)

from app.ui.icons import icon
from app.ui.keys import describe
from app.ui.spoken import said
from app.ui.theme import GRID_PX, LARGE_PT, SMALL_PT, font

ENTER_KEYS = (Qt.Key.Key_Return, Qt.Key.Key_Enter)
_PRESS_KEYS = (Qt.Key.Key_Space, *ENTER_KEYS)


class Button(QPushButton):
    """A button that Tab reaches, a click does not focus, and Space or Enter press.

    A click leaves the focus where it was, so that the page's own Space (play) goes on
    working; who walks with Tab gets the usual keys on the button.
    """

    def __init__(
        self,
        text: str = "",
        icon_name: str = "",
        *,
        action_id: str = "",
        name: str = "",
        primary: bool = False,
        plain: bool = False,
    ) -> None:
        super().__init__(text)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setAutoDefault(False)  # else Enter in any field of a sheet presses its first button
        self.setProperty("primary", primary)
        self.setProperty("plain", plain)
        if icon_name:
            self.setIcon(icon(icon_name, on_accent=primary))
            self.setIconSize(QSize(18, 18))
        if action_id:
            describe(self, action_id, name or text)
        elif name or text:
            self.setAccessibleName(name or text)
        if name and not action_id and not text:
            self.setToolTip(name)

    def event(self, event: QEvent) -> bool:
        """Keep Space and Enter for the button that has the focus."""
        if (
            event.type() == QEvent.Type.ShortcutOverride
            and isinstance(event, QKeyEvent)
            and event.key() in _PRESS_KEYS
            and not event.modifiers()
        ):
            event.accept()
            return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Press on Enter too."""
        if event.key() in ENTER_KEYS:
            self.click()
            return
        super().keyPressEvent(event)


class Card(QFrame):
    """A panel with an outline; ``box`` takes its contents."""

    def __init__(self, title: str = "") -> None:
        super().__init__()
        self.setProperty("card", True)
        self.box = QVBoxLayout(self)
        self.box.setContentsMargins(2 * GRID_PX, GRID_PX + 4, 2 * GRID_PX, GRID_PX + 4)
        self.box.setSpacing(GRID_PX)
        if title:
            self.title = heading(title)
            self.box.addWidget(self.title)


class Words(QLabel):
    """A label that says sentences from below the window in the window's language."""

    def __init__(self, text: str = "") -> None:
        super().__init__(said(text))

    def setText(self, text: str) -> None:
        """Show a text, translated where it is a sentence of the program."""
        super().setText(said(text))


class OneLine(Words):
    """Quiet small text on one line: what there is no room for ends in an ellipsis.

    The tooltip then has the whole sentence; it is also what a screen reader hears.
    """

    def __init__(self, *, right: bool = False) -> None:
        super().__init__()
        self.setFont(font(SMALL_PT))
        self.setProperty("tone", "soft")
        self._side = Qt.AlignmentFlag.AlignRight if right else Qt.AlignmentFlag.AlignLeft
        self._more = ""
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)

    def setText(self, text: str) -> None:
        """Show a text, and all of it in the tooltip where it does not fit."""
        super().setText(text)
        self._tell_all()

    def explain(self, more: str) -> None:
        """Say something besides the text in the tooltip."""
        self._more = said(more)
        self._tell_all()

    @property
    def shown(self) -> str:
        """What there is room for."""
        return self.fontMetrics().elidedText(
            self.text(), Qt.TextElideMode.ElideRight, self.contentsRect().width()
        )

    def minimumSizeHint(self) -> QSize:
        """Let the line become as narrow as the layout wants."""
        return QSize(8 * GRID_PX, super().minimumSizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Fit the text anew."""
        super().resizeEvent(event)
        self._tell_all()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw what fits."""
        painter = QPainter(self)
        side = self._side | Qt.AlignmentFlag.AlignVCenter
        self.style().drawItemText(
            painter, self.contentsRect(), side, self.palette(), self.isEnabled(), self.shown,
            QPalette.ColorRole.WindowText,
        )  # fmt: skip

    def _tell_all(self) -> None:
        is_whole = self.shown == self.text()
        lines = ("" if is_whole else self.text(), self._more)
        self.setToolTip("\n".join(line for line in lines if line))


def heading(text: str) -> QLabel:
    """Return a heading: the body size, bold."""
    label = Words(text)
    label.setFont(font(bold=True))
    return label


def soft(text: str = "", *, wrap: bool = True) -> QLabel:
    """Return quiet small text."""
    label = Words(text)
    label.setFont(font(SMALL_PT))
    label.setProperty("tone", "soft")
    label.setWordWrap(wrap)
    return label


def sentence(text: str = "") -> QLabel:
    """Return body text that wraps."""
    label = Words(text)
    label.setWordWrap(True)
    return label


def large(text: str = "") -> QLabel:
    """Return text at the large size."""
    label = Words(text)
    label.setFont(font(LARGE_PT))
    return label


class Figure(QWidget):
    """A large number over the words that say what it counts."""

    def __init__(self, words: str) -> None:
        super().__init__()
        self._number = large("\N{EN DASH}")
        self._words = soft(words, wrap=False)
        box = column(self, spacing=0)
        box.addWidget(self._number)
        box.addWidget(self._words)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def show_number(self, text: str, words: str = "") -> None:
        """Show `text` as the number."""
        self._number.setText(text)
        if words:
            self._words.setText(words)
        self.setAccessibleName(f"{self._words.text()}: {text}")


class EmptyState(QWidget):
    """What a page says when there is nothing to show: what to do next, and one button."""

    def __init__(self, text: str, next_step: str, button: QPushButton | None = None) -> None:
        super().__init__()
        self._text = heading(text)
        self._next = sentence(next_step)
        for label in (self._text, self._next):
            label.setAlignment(Qt.AlignmentFlag.AlignCenter)
            label.setWordWrap(True)
        box = column(self, spacing=GRID_PX)
        box.addStretch(2)
        box.addWidget(self._text)
        box.addWidget(self._next)
        if button is not None:
            box.addWidget(button, 0, Qt.AlignmentFlag.AlignHCenter)
        box.addStretch(3)

    def say(self, text: str, next_step: str) -> None:
        """Change the words."""
        self._text.setText(text)
        self._next.setText(next_step)


def column(owner: QWidget | None = None, *, spacing: int = GRID_PX, margin: int = 0) -> QVBoxLayout:
    """Return a vertical layout on the spacing grid."""
    box = QVBoxLayout(owner) if owner is not None else QVBoxLayout()
    box.setContentsMargins(margin, margin, margin, margin)
    box.setSpacing(spacing)
    return box


def row(owner: QWidget | None = None, *, spacing: int = GRID_PX, margin: int = 0) -> QHBoxLayout:
    """Return a horizontal layout on the spacing grid."""
    box = QHBoxLayout(owner) if owner is not None else QHBoxLayout()
    box.setContentsMargins(margin, margin, margin, margin)
    box.setSpacing(spacing)
    return box


def fill(box: QBoxLayout, *items: QWidget | QLayout | int) -> QBoxLayout:
    """Add widgets and layouts in order; an int is a stretch."""
    for item in items:
        if isinstance(item, int):
            box.addStretch(item)
        elif isinstance(item, QLayout):
            box.addLayout(item)
        else:
            box.addWidget(item)
    return box


def labelled(label_text: str, field: QWidget) -> QVBoxLayout:
    """Put small words over a field and make them its accessible name and buddy."""
    label = soft(label_text, wrap=False)
    label.setBuddy(field)
    if not field.accessibleName():
        field.setAccessibleName(label_text)
    box = column(spacing=2)
    box.addWidget(label)
    box.addWidget(field)
    return box


def slider(name: str, low: int, high: int, value: int, step: int) -> QSlider:
    """Return a level slider that keys move by `step`."""
    made = QSlider(Qt.Orientation.Horizontal)
    made.setRange(low, high)
    made.setValue(value)
    made.setSingleStep(step)
    made.setPageStep(2 * step)
    made.setAccessibleName(name)
    made.setFocusPolicy(Qt.FocusPolicy.TabFocus)
    return made
