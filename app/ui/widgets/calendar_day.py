"""The chosen day beside the year: its minutes, its rest, its takes."""

from datetime import date

from app.journal.day_names import DayName
from app.services.views import DayBar, TakeRow
from app.ui.language import tr
from app.ui.models.rows import Column
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Button, Card, fill, large, row, sentence
from app.ui.widgets.choices import short_passage
from app.ui.widgets.day_head import MinutesField
from app.ui.widgets.table import RowTable
from app.ui.widgets.year_chart import bar_words
from app.ui.words import day_text, length_text, listed

_WIDTH_PX = 312


def _take_name(take: TakeRow) -> str:
    return f"{short_passage(take.passage_name)}, {take.number}"


class CalendarDay(Card):
    """One day in words and fields; whoever holds it keeps what is typed."""

    def __init__(self) -> None:
        super().__init__()
        self._day = large()
        self.words = sentence()
        self.minutes = MinutesField(tr("minutes of the day"))
        self.rest = Button(tr("Rest day"), action_id="calendar.rest")
        self.rest.setCheckable(True)
        columns: tuple[Column[TakeRow], ...] = (
            Column(
                tr("Take"),
                _take_name,
                lambda take: tr("{passage}, take {number}").format(
                    passage=take.passage_name, number=take.number
                ),
            ),
            Column(tr("Length"), lambda take: length_text(take.duration_s), is_number=True),
        )
        self.takes: RowTable[TakeRow] = RowTable(tr("Takes of the day"), columns)
        self.setFixedWidth(_WIDTH_PX)
        entry = row(spacing=2 * GRID_PX)
        fill(entry, self.minutes, self.rest, 1)
        fill(self.box, self._day, self.words, entry, self.takes)
        self.box.setStretch(3, 1)

    def show_day(
        self, day: date, bar: DayBar | None, words: str, *, is_ahead: bool, off_words: str
    ) -> None:
        """Show what is known of a day.

        Parameters
        ----------
        day : date
        bar : DayBar or None
        words : str
            What is said of it.
        is_ahead : bool
            It is still to come, so it has no minutes.
        off_words : str
            Why no minutes are kept here at all; empty where they are.
        """
        self._day.setText(day_text(day))
        self.words.setText(words)
        self.minutes.setEnabled(not (is_ahead or off_words))
        self.minutes.setToolTip(off_words)
        self.minutes.show_minutes(bar.minutes if bar else None)
        self.rest.setChecked(bool(bar and bar.rest))


def day_words(bar: DayBar | None, names: tuple[DayName, ...], *, is_ahead: bool) -> str:
    """Say what is known of a day in one or two sentences."""
    if is_ahead:
        planned = bar is not None and bar.rest
        words = tr("A planned rest day.") if planned else tr("Still to come. Rest can be planned.")
        paused = bar.paused if bar else ()
        on_break = tr("On a break: {promises}.").format(promises=listed(paused))
        return f"{words} {on_break}" if paused else words
    if bar is None:
        return tr("Nothing noted.")
    said = bar_words(bar, names).partition(", ")[2]
    return f"{said[:1].upper()}{said[1:]}." if said else tr("Nothing noted.")
