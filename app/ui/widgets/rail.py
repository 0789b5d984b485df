"""The rail: five pages, and what belongs to the whole window."""

from PySide6.QtCore import QPointF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QFocusEvent, QFont, QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractButton, QButtonGroup, QFrame

from app.ui.icons import icon
from app.ui.keys import describe
from app.ui.language import mark, tr
from app.ui.theme import GRID_PX, SMALL_PT, font
from app.ui.widgets.basics import Button, column

PAGES: tuple[tuple[str, str], ...] = (
    ("practice", mark("Practice")),
    ("listen", mark("Listen")),
    ("compare", mark("Compare")),
    ("calendar", mark("Calendar")),
    ("lesson", mark("Lesson")),
)
_WIDTH = 88


class RailButton(QAbstractButton):
    """An icon over its word, with a bar at the edge when its page is open."""

    def __init__(self, name: str, words: str) -> None:
        super().__init__()
        self._words = words
        self._icon = icon(name)
        self._by_keyboard = False
        self._is_marked = False
        self.setCheckable(True)
        self.setFixedSize(_WIDTH, 7 * GRID_PX + 4)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setText(words)
        describe(self, f"page.{name}", words)

    def mark(self, words: str) -> None:
        """Show a dot beside the icon, with its meaning in words; empty: none."""
        self._is_marked = bool(words)
        self.setAccessibleDescription(words)
        self.update()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show the focus frame to those who walk with Tab."""
        keys = (Qt.FocusReason.TabFocusReason, Qt.FocusReason.BacktabFocusReason)
        self._by_keyboard = event.reason() in keys
        super().focusInEvent(event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw icon, word, the open page's bar, and the focus frame."""
        palette = self.palette()
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if self.isChecked():
            wash = QColor(palette.highlight().color())
            wash.setAlpha(34)
            painter.fillRect(self.rect(), wash)
            painter.fillRect(0, 0, 4, self.height(), palette.highlight())
        if self.hasFocus() and self._by_keyboard:
            painter.setPen(palette.highlight().color())
            painter.drawRoundedRect(self.rect().adjusted(8, 2, -4, -3), 6, 6)
        self._icon.paint(painter, (_WIDTH - 24) // 2, GRID_PX, 24, 24)
        if self._is_marked:
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(palette.brightText())
            painter.drawEllipse(QPointF(_WIDTH / 2 + 22, GRID_PX + 5), 5.0, 5.0)
        face: QFont = font(SMALL_PT, bold=self.isChecked())
        painter.setFont(face)
        painter.setPen(palette.buttonText().color())
        painter.drawText(
            self.rect().adjusted(0, 34, 0, -4), Qt.AlignmentFlag.AlignCenter, self._words
        )


class Rail(QFrame):
    """Chooses the page.

    Signals
    -------
    chosen(int)
        Index of the page.
    """

    chosen = Signal(int)

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("rail")
        self.setFixedWidth(_WIDTH)
        self._group = QButtonGroup(self)
        box = column(self, spacing=4)
        box.setContentsMargins(0, GRID_PX, 0, GRID_PX)
        for index, (name, source) in enumerate(PAGES):
            words = tr(source)
            button = RailButton(name, words)
            self._group.addButton(button, index)
            box.addWidget(button)
        box.addStretch(1)
        self.theme = Button("", "theme", action_id="theme", plain=True)
        self.help = Button("", "help", action_id="help", plain=True)
        self.menu = Button("", "menu", plain=True, name=tr("All actions"))
        for small in (self.theme, self.help, self.menu):
            small.setIconSize(QSize(20, 20))
            box.addWidget(small, 0, Qt.AlignmentFlag.AlignHCenter)
        self._group.idClicked.connect(self.chosen)

    def mark_page(self, index: int, words: str) -> None:
        """Show on a page's button that something runs there; empty words: nothing."""
        button = self._group.button(index)
        if isinstance(button, RailButton):
            button.mark(words)

    def marked_words(self, index: int) -> str:
        """Return what runs on a page."""
        return self._group.button(index).accessibleDescription()

    def show_chosen(self, index: int) -> None:
        """Mark the open page."""
        self._group.button(index).setChecked(True)
