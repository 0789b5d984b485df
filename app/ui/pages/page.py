"""What every page has in common."""

from collections.abc import Callable, Generator

from PySide6.QtWidgets import QLineEdit, QPlainTextEdit, QWidget

from app.ui.desk import Desk
from app.ui.keys import describe_again

Parts = Generator[None, None, None]
"""A page that is being made, a part at each step."""


class Page(QWidget):
    """A page of the window; it learns when it is opened and left.

    It is made in parts (:meth:`make_next`), so that the window can make it between two
    keys; whoever wants it sooner lets it be finished.

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
        self._parts = self.make_parts()

    def make_parts(self) -> Parts:
        """Make the page, one part before each yield and the last one after it.

        A part keeps the window waiting: 20 ms are much.
        """
        yield from ()

    def make_next(self) -> bool:
        """Make the next part; False once nothing is left to make."""
        return next(self._parts, self) is not self

    def finish(self) -> None:
        """Make all that is left to make."""
        while self.make_next():
            pass

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


def settle_in(widget: QWidget, desk: Desk) -> None:
    """Let what was made later keep the ways of the window: dropped files, keys in tooltips."""
    # A file dropped on a text field is imported, not written out as its path.
    for field in (*widget.findChildren(QLineEdit), *widget.findChildren(QPlainTextEdit)):
        field.setAcceptDrops(False)
    if not desk.keys.are_usual:
        describe_again(widget, desk.keys)
