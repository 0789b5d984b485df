"""The five pages of the window, each loaded and made when it is first wanted, or before."""

from collections.abc import Callable
from functools import cached_property
from importlib import import_module
from typing import TYPE_CHECKING, Final, TypeVar, cast

from PySide6.QtWidgets import QStackedWidget, QWidget

from app.ui.desk import Desk
from app.ui.models.measure_queue import MeasureQueue
from app.ui.models.recorder import Recorder
from app.ui.pages.page import Page, Parts, settle_in
from app.ui.pages.practice import PracticePage
from app.ui.widgets.rail import PAGES

if TYPE_CHECKING:
    from app.ui.pages.calendar import CalendarPage
    from app.ui.pages.compare import ComparePage
    from app.ui.pages.lesson import LessonPage
    from app.ui.pages.listen import ListenPage

PRACTICE, LISTEN, COMPARE, CALENDAR, LESSON = range(5)

LATER_MODULES: Final = (
    *("app.ui.pages.listen", "app.ui.pages.calendar"),
    *("app.ui.pages.compare", "app.ui.pages.lesson"),
    *("app.ui.widgets.import_panel", "app.ui.widgets.passage_form"),
    *("app.ui.widgets.assignments_form", "app.ui.widgets.items_form"),
    *("app.ui.widgets.guide_form", "app.ui.widgets.rehearsal_form"),
    *("app.services.first_listening", "app.services.filming"),
)
"""What the pages and forms need that are made after the window shows."""

_P = TypeVar("_P", bound=Page)


class Pages(QStackedWidget):
    """Holds the pages at their places on the rail.

    The window opens on Practice; what the others load and draw with would make it wait.
    """

    def __init__(self, desk: Desk, queue: MeasureQueue, recorder: Recorder) -> None:
        super().__init__()
        self._desk = desk
        self._begun: dict[int, Page] = {}
        self._made: dict[int, Page] = {}
        for _ in PAGES:
            self.addWidget(QWidget())
        self.practice = PracticePage(desk, queue, recorder)
        self._take_in(PRACTICE, self.practice)

    @cached_property
    def listen(self) -> "ListenPage":
        """The take that is looked at."""
        from app.ui.pages.listen import ListenPage  # noqa: PLC0415 - when first wanted

        return self._finished(LISTEN, ListenPage)

    @cached_property
    def compare(self) -> "ComparePage":
        """One take beside another."""
        from app.ui.pages.compare import ComparePage  # noqa: PLC0415 - when first wanted

        return self._finished(COMPARE, ComparePage)

    @cached_property
    def calendar(self) -> "CalendarPage":
        """The year, and what was promised."""
        from app.ui.pages.calendar import CalendarPage  # noqa: PLC0415 - when first wanted

        return self._finished(CALENDAR, CalendarPage)

    @cached_property
    def lesson(self) -> "LessonPage":
        """What goes to the teacher and comes back."""
        from app.ui.pages.lesson import LessonPage  # noqa: PLC0415 - when first wanted

        return self._finished(LESSON, LessonPage)

    def page(self, index: int) -> Page:
        """Return a page; it is made now if it never was."""
        page: Page = getattr(self, PAGES[index][0])
        return page

    def is_made(self, index: int) -> bool:
        """Say whether a page is there already."""
        return index in self._made

    def make_ahead(self) -> Parts:
        """Make what nobody wanted yet, a part before each yield.

        A page that is wanted meanwhile is finished then, and this goes on with the next.
        """
        for index in (LISTEN, CALENDAR, COMPARE, LESSON):
            if self.is_made(index):
                continue
            page = self._begin(index, _maker(index))
            yield
            while not self.is_made(index) and page.make_next():
                yield
            if not self.is_made(index):
                self.page(index)  # takes its place
                yield
        yield from self.practice.forms.make_ahead()

    def finish_begun(self) -> None:
        """Finish pages that were begun: a part without its place would outlive the window."""
        for page in self._begun.values():
            page.finish()

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

    def _begin(self, index: int, make: Callable[[Desk], _P]) -> _P:
        """Give a page that was begun, or begin it."""
        if index not in self._begun:
            self._begun[index] = make(self._desk)
            self._begun[index].setParent(self)  # closes with the window, whatever is missing
        return cast("_P", self._begun[index])

    def _finished(self, index: int, make: Callable[[Desk], _P]) -> _P:
        page = self._begin(index, make)
        self._take_in(index, page)
        return page

    def _take_in(self, index: int, page: Page) -> None:
        """Give a new page its place."""
        page.finish()
        self._made[index] = page
        shown = self.currentIndex()
        if place := self.widget(index):
            self.removeWidget(place)
            place.deleteLater()
        self.insertWidget(index, page)
        self.setCurrentIndex(shown)
        settle_in(page, self._desk)
        for line in page.lines:
            line.returnPressed.connect(page.setFocus)  # its own keys work again


def _maker(index: int) -> Callable[[Desk], Page]:
    name = PAGES[index][0]
    maker: Callable[[Desk], Page] = getattr(
        import_module(f"app.ui.pages.{name}"), f"{name.capitalize()}Page"
    )
    return maker
