"""Calendar: the year at a glance, and one day beside it."""

from datetime import date
from functools import partial
from pathlib import Path

from PySide6.QtWidgets import QFileDialog, QStackedWidget, QWidget

from app.journal.day_names import DayName
from app.services.views import DayBar
from app.ui.desk import Desk
from app.ui.keys import describe
from app.ui.language import tr
from app.ui.pages.page import Page, Parts
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Button, Card, column, fill, large, row
from app.ui.widgets.calendar_day import CalendarDay, day_words
from app.ui.widgets.day_names_form import DayNamesForm
from app.ui.widgets.minutes_import_form import MinutesImportForm
from app.ui.widgets.promises_panel import PromisesPanel
from app.ui.widgets.record_pane import RecordPane
from app.ui.widgets.year_chart import YearChart
from app.ui.widgets.year_export import FILE_KINDS, print_year, save_year
from app.ui.widgets.year_marks import YearLegend

_OtherView = PromisesPanel | RecordPane | DayNamesForm | MinutesImportForm
_Found = tuple[int, tuple[DayBar, ...], date, tuple[date, date] | None, tuple[DayName, ...]]


class CalendarPage(Page):
    """A year of bars; minutes and rest of the chosen day."""

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk, tr("Calendar"))

    def make_parts(self) -> Parts:
        """See :meth:`Page.make_parts`."""
        desk = self.desk
        self._today: date | None = None
        self._span: tuple[date, date] | None = None
        self.year, self._year_is_known = date.min.year, False
        self.chart = YearChart(desk.theme)
        yield
        self._heading = large()
        self._previous = Button("", "previous", action_id="calendar.previous")
        self._next = Button("", "next", action_id="calendar.next")
        self._now = Button(tr("Today"), action_id="calendar.today")
        self.day = CalendarDay()
        self.minutes, self.takes = self.day.minutes, self.day.takes
        yield
        self.promises = PromisesPanel(desk)
        yield
        self.record = RecordPane(desk)
        yield
        self.names = DayNamesForm(desk)
        self.importing = MinutesImportForm(desk)
        yield
        self._others: dict[str, tuple[Button, _OtherView]] = {
            "calendar.promises": (Button(tr("Promises")), self.promises),
            "calendar.record": (Button(tr("Looking back")), self.record),
            "calendar.names": (Button(tr("Kinds of day")), self.names),
            "calendar.import": (Button(tr("Import")), self.importing),
        }
        self._save = Button(tr("Save"), action_id="calendar.export")
        self._print = Button(tr("Print"), action_id="calendar.print")
        self._views = QStackedWidget()
        yield from self._build()
        yield
        self._connect()
        self.lines = (self.minutes.line,)

    def _build(self) -> Parts:
        # From the outside in: what is moved to another parent is styled anew.
        head = row()
        fill(head, self._heading, self._previous, self._next, self._now, 1)
        for action_id, (button, _) in self._others.items():
            describe(button, action_id, button.text())
            head.addWidget(button)
        fill(head, self._save, self._print)
        year = Card()
        year.box.addWidget(self.chart)
        left = column()
        self.legend = YearLegend(self.desk.theme)
        fill(left, head, year, self.legend)
        left.setStretch(1, 1)
        left_side = QWidget()
        left_side.setLayout(left)
        yield
        split = row(self, spacing=2 * GRID_PX, margin=2 * GRID_PX)
        fill(split, self._views, self.day)
        split.setStretch(0, 1)
        self._views.addWidget(left_side)
        yield
        for _, view in self._others.values():
            self._views.addWidget(view)
            yield

    def _connect(self) -> None:
        desk, bind = self.desk, self.desk.keys.bind
        desk.daysChanged.connect(self.refresh_if_open)
        desk.takesChanged.connect(self.refresh_if_open)
        self.chart.dayChosen.connect(self._show_day)
        self.chart.yearWanted.connect(self.show_year)
        self._previous.clicked.connect(lambda: self._move(-1))
        self._next.clicked.connect(lambda: self._move(1))
        self._now.clicked.connect(self._choose_today)
        self.day.rest.clicked.connect(self.toggle_rest)
        self.minutes.typed.connect(self._set_minutes)
        self.takes.rowOpened.connect(lambda take: desk.listenWanted.emit(take.id, 0.0))
        self.chart.dayOpened.connect(lambda _: self.chart.setFocus())
        bind(self, "calendar.previous", lambda: self._move(-1))
        bind(self, "calendar.next", lambda: self._move(1))
        bind(self, "calendar.today", self._choose_today)
        bind(self, "calendar.minutes", self.minutes.write)
        bind(self, "calendar.rest", self.toggle_rest)
        bind(self, "calendar.print", self.choose_printer)
        for action_id, (button, view) in self._others.items():
            toggle = partial(self._toggle, view)
            bind(self, action_id, toggle)
            button.clicked.connect(toggle)
            view.closed.connect(self._show_the_year)
        bind(self, "calendar.export", self.choose_file)
        self._save.clicked.connect(self.choose_file)
        self._print.clicked.connect(self.choose_printer)

    @property
    def day_words(self) -> str:
        """What is said of the chosen day."""
        return self.day.words.text()

    def open_page(self) -> None:
        """Give the chart the keys."""
        super().open_page()
        self.chart.setFocus()

    def refresh(self) -> None:
        """Read the year again; the first time, that of the practice day."""
        self._read(self.year if self._year_is_known else None)

    def show_year(self, year: int) -> None:
        """Show a year."""
        self.year, self._year_is_known = year, True
        self._read(year)

    def _move(self, years: int) -> None:
        if self._year_is_known:
            self.show_year(self.year + years)

    def _choose_today(self) -> None:
        if self._today is not None:
            self.chart.choose(self._today)

    def _read(self, year: int | None) -> None:
        practising = self.desk.workbench.practising

        def read() -> _Found:
            today = practising.practice_day_now()
            found, names = year or today.year, practising.settings().day_names
            return found, practising.year(found), today, practising.first_and_last_day(), names

        self.desk.jobs.store(read, lambda found: self._take_over(*found), subject="calendar.year")

    def toggle_promises(self) -> None:
        """Show the promises in the place of the year, or the year again."""
        self._toggle(self.promises)

    def show_record(self) -> None:
        """Show what the record shows, or the year again."""
        self._toggle(self.record)

    def show_names(self) -> None:
        """Show the form of the kinds of day, or the year again."""
        self._toggle(self.names)

    def show_import(self) -> None:
        """Show the form that brings minutes in, or the year again."""
        self._toggle(self.importing)

    def _toggle(self, view: _OtherView, _checked: bool = False) -> None:
        if self._views.currentWidget() is view:
            self._show_the_year()
            return
        if self._today is None:  # nothing has been read yet
            return
        self._views.setCurrentWidget(view)
        # The record and a table of minutes want the whole width.
        self.day.setVisible(view not in (self.record, self.importing))
        if view is self.promises:
            self.promises.start(self._today)
            self.promises.table.setFocus()
        elif view is self.record:
            self.record.start()
        elif view is self.names:
            self.names.start()
        elif view is self.importing:
            self.importing.start()

    def _show_the_year(self) -> None:
        self._views.setCurrentIndex(0)
        self.day.show()
        self.chart.setFocus()

    def choose_file(self) -> None:
        """Ask where to save the year, and save it."""
        name, _ = QFileDialog.getSaveFileName(
            self, tr("Save the year"), f"practice-{self.year}.png", tr(FILE_KINDS)
        )
        if name:
            self.save_year(Path(name))

    def save_year(self, file: Path) -> None:
        """Save the year that is shown; the name's ending says as what."""
        save_year(self.desk, self.chart, self.year, file)

    def choose_printer(self) -> None:
        """Ask for a printer, and print the year that is shown."""
        # Only now: the printing library looks for printers when it is loaded.
        from PySide6.QtPrintSupport import QPrintDialog, QPrinter  # noqa: PLC0415

        printer = QPrinter(QPrinter.PrinterMode.HighResolution)
        dialog = QPrintDialog(printer, self)
        dialog.setWindowTitle(tr("Print the year"))
        if dialog.exec() == QPrintDialog.DialogCode.Accepted:
            print_year(self.desk, self.chart, self.year, printer)

    def toggle_rest(self) -> None:
        """Mark the chosen day as rest, or take the mark away."""
        day = self.chart.chosen
        if day is None or self._today is None:
            return
        bar = self.chart.bar_of(day)
        practising = self.desk.workbench.practising
        if bar is not None and bar.rest:
            self.desk.jobs.store(
                lambda: practising.clear_rest(day), lambda _: self.desk.daysChanged.emit()
            )
        else:
            planned = day > self._today
            self.desk.jobs.store(
                lambda: practising.mark_rest(day, planned), lambda _: self.desk.daysChanged.emit()
            )

    def _take_over(
        self,
        year: int,
        bars: tuple[DayBar, ...],
        today: date,
        span: tuple[date, date] | None,
        names: tuple[DayName, ...],
    ) -> None:
        self._today, self._span = today, span
        self.year, self._year_is_known = year, True
        self._heading.setText(str(year))
        first = span[0].year if span else today.year
        self._previous.setEnabled(year > first - 1)
        self._next.setEnabled(year < today.year + 1)
        self.chart.show_year(year, bars, today, names)
        self.legend.show_names(names, self.chart.top_minutes)
        if self.chart.chosen is not None:
            self._show_day(self.chart.chosen)

    def _show_day(self, day: date) -> None:
        bar, is_ahead = self.chart.bar_of(day), self._today is not None and day > self._today
        words = day_words(bar, self.chart.names, is_ahead=is_ahead)
        off_words = self.desk.keys.off_words("calendar.minutes")
        self.day.show_day(day, bar, words, is_ahead=is_ahead, off_words=off_words)
        practising = self.desk.workbench.practising
        self.desk.jobs.store(
            lambda: practising.day(day), self.takes.show_rows, subject="calendar.day"
        )

    def _set_minutes(self, minutes: float) -> None:
        if self.chart.chosen is not None:
            self.desk.keep_minutes(self.chart.chosen, minutes)
