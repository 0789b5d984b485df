"""What every page has in common."""

from collections.abc import Callable

from PySide6.QtWidgets import QLineEdit, QWidget

from app.ui.desk import Desk


class Page(QWidget):
    """A page of the window; it learns when it is opened and left.

    Attributes
    ----------
    lines : tuple of QLineEdit
        After Enter in one of these the page has its keys back.
    stops : tuple of callable
        What falls silent when the page is left or the window closes.
    """

    def __init__(self, desk: Desk, name: str) -> None:
        super().__init__()
        self.desk = desk
        self.is_open = False
        self.lines: tuple[QLineEdit, ...] = ()
        self.stops: tuple[Callable[[], object], ...] = ()
        self.setAccessibleName(name)

    def open_page(self) -> None:
        """Show what there is; the page is in view now."""
        self.is_open = True
        self.refresh()

    def leave_page(self) -> None:
        """Let go of what only a page in view needs; nothing sounds from one not seen."""
        self.is_open = False
        for stop in self.stops:
            stop()

    def clear_selection(self) -> bool:
        """Drop the selection; False where there was none."""
        return False

    def refresh(self) -> None:
        """Read again what is shown."""

    def refresh_if_open(self, *_what: object) -> None:
        """Read again, but only where somebody is looking."""
        if self.is_open:
            self.refresh()
