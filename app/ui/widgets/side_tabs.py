"""A row of words over a stack of panes."""

from collections.abc import Sequence

from PySide6.QtWidgets import QButtonGroup, QStackedWidget, QWidget

from app.ui.theme import GRID_PX, SMALL_PT, font
from app.ui.widgets.basics import Button, Card, row


class SideTabs(Card):
    """Shows one of several panes; each tab names its key in the tooltip.

    Attributes
    ----------
    tabs : QHBoxLayout
        The row of words; what else belongs to the panes may be added at its end.
    """

    def __init__(self, panes: Sequence[tuple[str, str, QWidget]] = ()) -> None:
        super().__init__()
        self.box.setContentsMargins(GRID_PX, GRID_PX, GRID_PX, GRID_PX)
        self._group = QButtonGroup(self)
        self._stack = QStackedWidget()
        self.tabs = tabs = row(spacing=2)
        tabs.addStretch(1)
        self._group.idClicked.connect(self.show_pane)
        self.box.addLayout(tabs)
        self.box.addWidget(self._stack, 1)
        for pane in panes:
            self.add_pane(*pane)
        if panes:
            self.show_pane(0)

    def add_pane(self, words: str, action_id: str, pane: QWidget) -> None:
        """Add a pane, and its tab after those there are."""
        index = self._stack.addWidget(pane)
        button = Button(words, action_id=action_id, plain=True)
        button.setCheckable(True)
        button.setFont(font(SMALL_PT))
        button.setProperty("tab", True)
        self._group.addButton(button, index)
        self.tabs.insertWidget(index, button)

    def show_pane(self, index: int) -> None:
        """Show a pane."""
        self._group.button(index).setChecked(True)
        self._stack.setCurrentIndex(index)
