"""What a page shows while the journal is unread, when it holds nothing, and else."""

from PySide6.QtWidgets import QStackedWidget, QWidget

from app.ui.desk import Desk
from app.ui.language import tr
from app.ui.widgets.basics import Button, EmptyState


class PageStack(QStackedWidget):
    """A page's content, or words that say what to do first, with the way there."""

    def __init__(self, desk: Desk, title: str, next_step: str, content: QWidget) -> None:
        super().__init__()
        go = Button(tr("Go to Practice"), "practice", action_id="page.practice", primary=True)
        go.clicked.connect(lambda: desk.keys.action("page.practice").trigger())
        self._content = content
        self._empty = EmptyState(title, next_step, go)
        # Until the journal has been read, neither of the two is true.
        for widget in (QWidget(), self._empty, content):
            self.addWidget(widget)

    def show_content(self, is_there: bool) -> None:
        """Show the content, or the words where there is none."""
        self.setCurrentWidget(self._content if is_there else self._empty)
