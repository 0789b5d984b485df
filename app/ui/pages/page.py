"""What every page has in common."""

from PySide6.QtWidgets import QWidget

from app.ui.desk import Desk


class Page(QWidget):
    """A page of the window; it learns when it is opened and left."""

    def __init__(self, desk: Desk, name: str) -> None:
        super().__init__()
        self.desk = desk
        self.is_open = False
        self.setAccessibleName(name)

    def open_page(self) -> None:
        """Show what there is; the page is in view now."""
        self.is_open = True
        self.refresh()

    def leave_page(self) -> None:
        """Let go of what only a page in view needs."""
        self.is_open = False

    def refresh(self) -> None:
        """Read again what is shown."""

    def refresh_if_open(self, *_what: object) -> None:
        """Read again, but only where somebody is looking."""
        if self.is_open:
            self.refresh()
