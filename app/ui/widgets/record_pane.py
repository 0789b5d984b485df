"""What the record shows: weeks and months, habits, busier times, and the hours of a life."""

from collections.abc import Callable, Sequence
from datetime import date

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFrame, QGridLayout, QScrollArea, QWidget

from app.services.keeping_views import AssociationRow, PeriodRow, RecordView, Span
from app.ui.desk import Desk
from app.ui.language import mark, tr
from app.ui.models.rows import Column
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Button, Card, column, fill, large, row, sentence, soft
from app.ui.widgets.earlier_hours_form import EarlierHoursForm
from app.ui.widgets.record_bars import RecordBar, RecordBars
from app.ui.widgets.table import RowTable
from app.ui.words import counted, day_text, minutes_text, month_text, short_day_text

_MOST_WEEKS, _MOST_MONTHS = 53, 36
_WEEKDAYS = (
    mark("Mon"), mark("Tue"), mark("Wed"), mark("Thu"), mark("Fri"), mark("Sat"), mark("Sun"),
)  # fmt: skip
_LABELLED_HOURS = (0, 6, 12, 18)


class RecordPane(QWidget):
    """Charts to read with the arrow keys, each with its numbers in words.

    Signals
    -------
    closed()
        Back to the year.
    """

    closed = Signal()

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self._desk = desk
        self._said = sentence()
        self._caution = sentence()
        self._caution.setProperty("tone", "attention")
        self.weeks = RecordBars(desk.theme, tr("Minutes a week"))
        self.months = RecordBars(desk.theme, tr("Minutes a month"))
        self.weekdays = RecordBars(desk.theme, tr("Minutes by weekday"))
        self.hours = RecordBars(desk.theme, tr("Minutes by time of day"))
        self._periods = sentence()
        self._method = soft()
        self.associations: RowTable[AssociationRow] = RowTable(
            tr("Minutes and measured change"), _columns(), stretch=1, dense=True
        )
        self._no_associations = soft(tr("Reading the measured weeks of each passage…"))
        self.earlier = EarlierHoursForm(desk)
        self._build()

    def _build(self) -> None:
        close = Button(tr("Back to the year"), action_id="calendar.record")
        close.clicked.connect(self.closed)
        head = row()
        fill(head, large(tr("What the record shows")), 1, close)
        grid = QGridLayout()
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setSpacing(2 * GRID_PX)
        for at, (title, bars) in enumerate(
            (
                (tr("Minutes a week, the last year"), self.weeks),
                (tr("Minutes a month, the last three years"), self.months),
                (tr("Mean minutes by weekday, rest and empty days included"), self.weekdays),
                (tr("Time of day, as the practice clock knows it"), self.hours),
            )
        ):
            grid.addWidget(_chart_card(title, bars), at // 2, at % 2)
        periods = Card(tr("Busier and quieter times"))
        fill(periods.box, self._periods, self._method)
        change = Card(tr("Minutes and measured change of each passage"))
        caption = soft(
            tr("An association at most: it cannot say that the minutes brought the change about.")
        )
        fill(change.box, caption, self._no_associations, self.associations)
        lifetime = Card(tr("All hours"))
        lifetime.box.addWidget(self.earlier)
        inside = QWidget()
        box = column(inside, spacing=2 * GRID_PX)
        fill(box, self._said, self._caution, grid, periods, change, lifetime, 1)
        scroll = QScrollArea()
        scroll.setWidget(inside)
        scroll.setWidgetResizable(True)
        scroll.setFrameShape(QFrame.Shape.NoFrame)
        scroll.setAccessibleName(tr("What the record shows"))
        fill(column(self, spacing=GRID_PX), head, scroll)

    def start(self) -> None:
        """Read the record; the associations, which take longer, come after the rest."""
        record, jobs = self._desk.workbench.record, self._desk.jobs
        jobs.store(record.view, self._show, subject="calendar.record")
        jobs.analyse(
            lambda _progress, _stop: record.associations(),
            self._show_associations,
            subject="calendar.associations",
        )
        self.weeks.setFocus()

    @property
    def words(self) -> str:
        """All that is said in sentences."""
        labels = (self._said, self._caution, self._periods, self._method, self.earlier.words)
        return "\n".join(label.text() for label in labels if label.text())

    def _show(self, view: RecordView) -> None:
        self._said.setText(" ".join(view.sentences) or tr("The record begins with the first day."))
        self._caution.setText(view.overuse_caution)
        self._caution.setVisible(bool(view.overuse_caution))
        self.weeks.show_bars(_spans(view.weeks[-_MOST_WEEKS:], mark("Week from {day}")))
        self.months.show_bars(
            _spans(view.months[-_MOST_MONTHS:], mark("Month from {day}"), month_text)
        )
        self.weekdays.show_bars(
            [
                RecordBar(
                    one.mean_minutes,
                    tr(_WEEKDAYS[one.weekday]),
                    tr(
                        "{weekday}: {minutes} on average, practised on {practised} of {days}"
                    ).format(
                        weekday=tr(_WEEKDAYS[one.weekday]),
                        minutes=minutes_text(one.mean_minutes),
                        practised=one.days_practised,
                        days=counted(one.days, "day"),
                    ),
                )
                for one in view.weekdays
            ]
        )
        by_hour = {one.hour: one.minutes for one in view.hours}
        self.hours.show_bars(
            [
                RecordBar(
                    by_hour.get(hour, 0.0),
                    f"{hour}:00" if hour in _LABELLED_HOURS else "",
                    f"{hour:02d}:00: {minutes_text(by_hour.get(hour, 0.0))}",
                )
                for hour in range(24)
            ]
            if by_hour
            else ()
        )
        told = [_period_words(one) for one in view.periods]
        self._periods.setText("\n".join(told) or view.periods_sentence)
        self._method.setText(view.method if told else "")
        self._method.setVisible(bool(told))
        first = view.weeks[0].first_day if view.weeks else view.today
        self.earlier.show_lifetime(view.lifetime, first)

    def _show_associations(self, rows: tuple[AssociationRow, ...]) -> None:
        known = [one for one in rows if one.rank_correlation is not None]
        self.associations.show_rows(known)
        self.associations.fit_to_rows()
        self.associations.setVisible(bool(known))
        said = "" if rows else tr("No passage has been measured yet.")
        if len(known) < len(rows):
            said = tr(
                "{count} with too few measured weeks, or no minutes logged on it, to say anything."
            ).format(count=counted(len(rows) - len(known), "passage"))
        self._no_associations.setText(said)
        self._no_associations.setVisible(bool(said))


def _chart_card(title: str, bars: RecordBars) -> Card:
    card = Card(title)
    card.title.setWordWrap(True)
    said = soft(tr("Left and right read the bars."))
    bars.read.connect(said.setText)
    fill(card.box, bars, said)
    card.box.setStretch(1, 1)
    return card


def _spans(
    spans: Sequence[Span], title: str, text_of: Callable[[date], str] = short_day_text
) -> list[RecordBar]:
    bars = []
    for at, span in enumerate(spans):
        is_labelled = at % max(1, len(spans) // 4) == 0 and at < len(spans) - 1
        words = tr("{span}: {minutes} on {days}").format(
            span=tr(title).format(day=day_text(span.first_day)),
            minutes=minutes_text(span.minutes),
            days=counted(span.days_practised, "day"),
        )
        if not span.is_over:
            words += tr(", not over yet")
        label = text_of(span.first_day) if is_labelled else ""
        bars.append(RecordBar(span.minutes, label, words, is_open=not span.is_over))
    return bars


def _period_words(period: PeriodRow) -> str:
    words = tr("{first} to {last}: {minutes} in the middle week").format(
        first=short_day_text(period.first_day),
        last=short_day_text(period.last_day),
        minutes=minutes_text(period.median_week_minutes),
    )
    if period.word and period.begins_between:
        low, high = period.begins_between
        words += tr(", {word} than before; it begins between the weeks of {low} and {high}").format(
            word=tr(period.word), low=short_day_text(low), high=short_day_text(high)
        )
    return words + "."


def _columns() -> tuple[Column[AssociationRow], ...]:
    return (
        Column(tr("Passage"), lambda one: one.passage_name),
        Column(tr("What went along with what"), lambda one: one.sentence),
    )
