"""The five pages of the window, each loaded and made when it is first wanted."""

from collections.abc import Callable
from functools import cached_property
from typing import TYPE_CHECKING, TypeVar

from PySide6.QtWidgets import QLineEdit, QPlainTextEdit, QStackedWidget, QWidget

from app.ui.desk import Desk
from app.ui.keys import describe_again
from app.ui.models.measure_queue import MeasureQueue
from app.ui.models.recorder import Recorder
from app.ui.pages.page import Page
from app.ui.pages.practice import PracticePage
from app.ui.widgets.rail import PAGES

if TYPE_CHECKING:
    from app.ui.pages.calendar import CalendarPage
    from app.ui.pages.compare import ComparePage
    from app.ui.pages.lesson import LessonPage
    from app.ui.pages.listen import ListenPage

PRACTICE, LISTEN, COMPARE, CALENDAR, LESSON = range(5)

_P = TypeVar("_P", bound=Page)


class Pages(QStackedWidget):
    """Holds the pages at their places on the rail.

    The window opens on Practice; what the others load and draw with would make it wait.
    """

    def __init__(self, desk: Desk, queue: MeasureQueue, recorder: Recorder) -> None:
        super().__init__()
        self._desk = desk
        self._made: dict[int, Page] = {}
        for _ in PAGES:
            self.addWidget(QWidget())
        self.practice = self._taken_in(PRACTICE, PracticePage(desk, queue, recorder))

    @cached_property
    def listen(self) -> "ListenPage":
        """The take that is looked at."""
        from app.ui.pages.listen import ListenPage  # noqa: PLC0415 - when first wanted

        return self._taken_in(LISTEN, ListenPage(self._desk))

    @cached_property
    def compare(self) -> "ComparePage":
        """One take beside another."""
        from app.ui.pages.compare import ComparePage  # noqa: PLC0415 - when first wanted

        return self._taken_in(COMPARE, ComparePage(self._desk))

    @cached_property
    def calendar(self) -> "CalendarPage":
        """The year, and what was promised."""
        from app.ui.pages.calendar import CalendarPage  # noqa: PLC0415 - when first wanted

        return self._taken_in(CALENDAR, CalendarPage(self._desk))

    @cached_property
    def lesson(self) -> "LessonPage":
        """What goes to the teacher and comes back."""
        from app.ui.pages.lesson import LessonPage  # noqa: PLC0415 - when first wanted

        return self._taken_in(LESSON, LessonPage(self._desk))

    def page(self, index: int) -> Page:
        """Return a page; it is made now if it never was."""
        page: Page = getattr(self, PAGES[index][0])
        return page

    @property
    def shown(self) -> Page:
        """The page in view."""
        return self.page(self.currentIndex())

    def show_page(self, index: int) -> None:
        """Bring a page into view."""
        shown, wanted = self.shown, self.page(index)
        if shown.is_open and shown is not wanted:
            shown.leave_page()
        self.setCurrentIndex(index)
        wanted.setFocus()
        wanted.open_page()

    @property
    def stops(self) -> tuple[Callable[[], object], ...]:
        """What falls silent when the window closes."""
        return tuple(stop for page in self._made.values() for stop in page.stops)

    def _taken_in(self, index: int, page: _P) -> _P:
        """Give a new page its place, and return it."""
        self._made[index] = page
        shown = self.currentIndex()
        if place := self.widget(index):
            self.removeWidget(place)
            place.deleteLater()
        self.insertWidget(index, page)
        self.setCurrentIndex(shown)
        # A file dropped on a text field is imported, not written out as its path.
        for field in (*page.findChildren(QLineEdit), *page.findChildren(QPlainTextEdit)):
            field.setAcceptDrops(False)
        for line in page.lines:
            line.returnPressed.connect(page.setFocus)  # its own keys work again
        describe_again(page, self._desk.keys)
        return page
