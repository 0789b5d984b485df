"""Calendar: the year at a glance, and one day beside it."""

from datetime import date
from pathlib import Path

from PySide6.QtWidgets import QFileDialog, QStackedWidget, QWidget

from app.services.views import DayBar, TakeRow
from app.services.wording import day_text, length_text
from app.ui.desk import Desk
from app.ui.models.rows import Column
from app.ui.pages.page import Page
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Button, Card, column, fill, large, row, sentence, soft
from app.ui.widgets.choices import short_passage
from app.ui.widgets.day_head import MinutesField
from app.ui.widgets.promises_panel import PromisesPanel
from app.ui.widgets.table import RowTable
from app.ui.widgets.year_chart import LEGEND, YearChart, bar_words
from app.ui.widgets.year_export import FILE_KINDS, save_year

_SIDE_WIDTH_PX = 312


def _take_name(take: TakeRow) -> str:
    return f"{short_passage(take.passage_name)}, {take.number}"


class CalendarPage(Page):
    """A year of bars; minutes and rest of the chosen day."""

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk, "Calendar")
        self._today = date.today()
        self._span: tuple[date, date] | None = None
        self.year = self._today.year
        self.chart = YearChart(desk.theme)
        self._heading = large()
        self._previous = Button("", "previous", action_id="calendar.previous")
        self._next = Button("", "next", action_id="calendar.next")
        self._now = Button("Today", action_id="calendar.today")
        self._day = large()
        self._words = sentence()
        self.minutes = MinutesField("minutes of the day")
        self._rest = Button("Rest day", action_id="calendar.rest")
        self._rest.setCheckable(True)
        columns: tuple[Column[TakeRow], ...] = (
            Column("Take", _take_name, lambda take: f"{take.passage_name}, take {take.number}"),
            Column("Length", lambda take: length_text(take.duration_s), is_number=True),
        )
        self.takes: RowTable[TakeRow] = RowTable("Takes of the day", columns)
        self.promises = PromisesPanel(desk)
        self._to_promises = Button("Promises", action_id="calendar.promises")
        self._save = Button("Save", action_id="calendar.export")
        self._views = QStackedWidget()
        self._build()
        self._connect()

    def _build(self) -> None:
        head = row()
        fill(head, self._heading, self._previous, self._next, self._now, 1)
        fill(head, self._save, self._to_promises)
        year = Card()
        year.box.addWidget(self.chart)
        left = column()
        self._legend = soft()
        fill(left, head, year, self._legend)
        left.setStretch(1, 1)
        left_side = QWidget()
        left_side.setLayout(left)
        self._views.addWidget(left_side)
        self._views.addWidget(self.promises)
        side = Card()
        side.setFixedWidth(_SIDE_WIDTH_PX)
        entry = row(spacing=2 * GRID_PX)
        fill(entry, self.minutes, self._rest, 1)
        fill(side.box, self._day, self._words, entry, self.takes)
        side.box.setStretch(3, 1)
        split = row(self, spacing=2 * GRID_PX, margin=2 * GRID_PX)
        fill(split, self._views, side)
        split.setStretch(0, 1)

    def _connect(self) -> None:
        desk, bind = self.desk, self.desk.keys.bind
        desk.daysChanged.connect(self.refresh_if_open)
        desk.takesChanged.connect(self.refresh_if_open)
        self.chart.dayChosen.connect(self._show_day)
        self.chart.yearWanted.connect(self.show_year)
        self._previous.clicked.connect(lambda: self.show_year(self.year - 1))
        self._next.clicked.connect(lambda: self.show_year(self.year + 1))
        self._now.clicked.connect(lambda: self.chart.choose(self._today))
        self._rest.clicked.connect(self.toggle_rest)
        self.minutes.typed.connect(self._set_minutes)
        self.takes.rowOpened.connect(lambda take: desk.listenWanted.emit(take.id, 0.0))
        self.chart.dayOpened.connect(lambda _: self.chart.setFocus())
        bind(self, "calendar.previous", lambda: self.show_year(self.year - 1))
        bind(self, "calendar.next", lambda: self.show_year(self.year + 1))
        bind(self, "calendar.today", lambda: self.chart.choose(self._today))
        bind(self, "calendar.minutes", self.minutes.write)
        bind(self, "calendar.rest", self.toggle_rest)
        bind(self, "calendar.promises", self.toggle_promises)
        bind(self, "calendar.export", self.choose_file)
        self._to_promises.clicked.connect(self.toggle_promises)
        self._save.clicked.connect(self.choose_file)
        self.promises.closed.connect(self.toggle_promises)

    @property
    def day_words(self) -> str:
        """What is said of the chosen day."""
        return self._words.text()

    def open_page(self) -> None:
        """Give the chart the keys."""
        super().open_page()
        self.chart.setFocus()

    def refresh(self) -> None:
        """Read the year again."""
        self.show_year(self.year)

    def show_year(self, year: int) -> None:
        """Show a year."""
        self.year = year
        self._heading.setText(str(year))
        practising = self.desk.workbench.practising
        self.desk.jobs.store(
            lambda: (
                practising.year(year),
                practising.today().practice_day,
                practising.first_and_last_day(),
            ),
            lambda found: self._take_over(year, *found),
            subject="calendar.year",
        )

    def toggle_promises(self) -> None:
        """Show the promises in the place of the year, or the year again."""
        to_promises = self._views.currentWidget() is not self.promises
        self._views.setCurrentIndex(int(to_promises))
        if to_promises:
            self.promises.start(self._today)
            self.promises.table.setFocus()
        else:
            self.chart.setFocus()

    def choose_file(self) -> None:
        """Ask where to save the year, and save it."""
        name, _ = QFileDialog.getSaveFileName(
            self, "Save the year", f"practice-{self.year}.png", FILE_KINDS
        )
        if name:
            self.save_year(Path(name))

    def save_year(self, file: Path) -> None:
        """Save the year that is shown; the name's ending says as what."""
        save_year(self.desk, self.chart, self.year, file)

    def toggle_rest(self) -> None:
        """Mark the chosen day as rest, or take the mark away."""
        day = self.chart.chosen
        if day is None:
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
        self, year: int, bars: tuple[DayBar, ...], today: date, span: tuple[date, date] | None
    ) -> None:
        self._today = today
        self._span = span
        first = span[0].year if span else today.year
        self._previous.setEnabled(year > first - 1)
        self._next.setEnabled(year < today.year + 1)
        self.chart.show_year(year, bars, today)
        self._legend.setText(LEGEND.format(round(self.chart.top_minutes)))
        if self.chart.chosen is not None:
            self._show_day(self.chart.chosen)

    def _show_day(self, day: date) -> None:
        bar = self.chart.bar_of(day)
        self._day.setText(day_text(day))
        self._words.setText(self._words_of(day, bar))
        self.minutes.setEnabled(day <= self._today)
        self.minutes.show_minutes(bar.minutes if bar else None)
        self._rest.setChecked(bool(bar and bar.rest))
        practising = self.desk.workbench.practising
        self.desk.jobs.store(
            lambda: practising.day(day), self.takes.show_rows, subject="calendar.day"
        )

    def _words_of(self, day: date, bar: DayBar | None) -> str:
        if day > self._today:
            planned = bar is not None and bar.rest
            return "A planned rest day." if planned else "Still to come. Rest can be planned."
        if bar is None:
            return "Nothing noted."
        said = bar_words(bar).partition(", ")[2]
        return f"{said[:1].upper()}{said[1:]}." if said else "Nothing noted."

    def _set_minutes(self, minutes: float) -> None:
        day = self.chart.chosen
        if day is None:
            return
        practising = self.desk.workbench.practising
        self.desk.jobs.store(
            lambda: practising.set_minutes(day, minutes), lambda _: self.desk.daysChanged.emit()
        )
