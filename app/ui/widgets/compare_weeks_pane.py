"""Change over days: week over week, and the first days against the latest."""

from datetime import date

from app.journal.failures import PlainFailure
from app.services.following_views import ChangeReport, VerdictRow
from app.services.reading_views import AnyReading, Reading
from app.services.views import CompareView
from app.ui.desk import Desk
from app.ui.language import tr
from app.ui.models.rows import Column
from app.ui.spoken import word
from app.ui.widgets.basics import column, fill, row, sentence, soft
from app.ui.widgets.choices import Choice
from app.ui.widgets.compare_pane import ComparePane
from app.ui.widgets.progress_bar import ThinProgressBar
from app.ui.widgets.table import RowTable
from app.ui.words import reading_text, short_day_text, short_reading_text

_ALL = "all"


class VerdictsPane(ComparePane):
    """Every change with its size, interval, scatter and one plain word."""

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self.report: ChangeReport | None = None
        self._period: Choice[str] = Choice(tr("Which days against which"))
        self._period.offer(
            [("first_and_latest", tr("First and latest")), ("week", tr("Week over week"))]
        )
        self._scope: Choice[str] = Choice(tr("Passage, bars or notes"))
        self._scope.offer([("passage", tr("Passage")), ("bar", tr("Bars")), ("note", tr("Notes"))])
        self._measure: Choice[str] = Choice(tr("Measure"))
        self._measure.offer([(_ALL, tr("All measures"))])
        self._bar = ThinProgressBar(tr("Judging the days"))
        self._bar.hide()
        self._words = sentence()
        self.table: RowTable[VerdictRow] = RowTable(tr("Changes over days"), _columns(), dense=True)
        self._left_out = soft()
        top = row()
        fill(top, self._period, self._scope, self._measure)
        box = column(self)
        fill(box, top, self._bar, self._words, self.table, self._left_out)
        box.setStretch(3, 1)
        for choice in (self._period, self._scope, self._measure):
            choice.setMinimumContentsLength(6)
            choice.picked.connect(lambda _: self._show_rows())

    @property
    def words(self) -> str:
        """What the report says as a whole, and what was left out of it."""
        return "\n".join(text for text in (self._words.text(), self._left_out.text()) if text)

    def next_period(self) -> None:
        """Show week over week, or first against latest."""
        keys = self._period.keys
        self._period.choose(keys[(keys.index(self._period.key or keys[0]) + 1) % len(keys)])
        self._show_rows()

    def next_scope(self) -> None:
        """Show the passage, its bars, or its notes."""
        keys = self._scope.keys
        self._scope.choose(keys[(keys.index(self._scope.key or keys[0]) + 1) % len(keys)])
        self._show_rows()

    def read(self, view: CompareView) -> None:
        """Judge the changes of the passage."""
        passage_id, changes = self.passage_id, self.desk.workbench.changes
        if passage_id is None:
            self._words.setText(tr("These takes belong to no passage."))
            return
        self._bar.setValue(0)
        self._bar.show()
        self.desk.jobs.analyse(
            lambda progress, should_stop: changes.report(passage_id, progress, should_stop),
            self._take_over,
            subject="compare.verdicts",
            progress=self._bar.show_fraction,
            failed=self._failed,
            ended=self._bar.hide,
        )

    def _failed(self, failure: PlainFailure) -> None:
        self._words.show()
        self._words.setText(f"{failure.sentence} {failure.next_step}")

    def _take_over(self, report: ChangeReport) -> None:
        self.report = report
        labels = {one.key: one.label for one in report.rows}
        named = ((key, word(label)) for key, label in labels.items())
        self._measure.offer([(_ALL, tr("All measures")), *named])
        self._show_rows()

    def _show_rows(self) -> None:
        if self.report is None:
            return
        period, scope, measure = self._period.key, self._scope.key, self._measure.key
        chosen = [
            one
            for one in self.report.rows
            if one.period == period and one.scope == scope and measure in (_ALL, one.key)
        ]
        # The latest weeks first; within them what is clear before what is not.
        chosen.sort(key=lambda one: (one.b_from, one.is_clear), reverse=True)
        self.table.show_rows(chosen)
        words = self.report.sentence
        if not words and scope == "bar" and not any(r.scope == "bar" for r in self.report.rows):
            words = tr("Its bars are not known. Give the passage a score.")
        self._words.setText(words)
        self._words.setVisible(bool(words))
        many = tr(
            "Of many at once some differ by chance; a word stands only where that is not enough."
        )
        said_beside = (*self.report.notices, *self.report.left_out)
        if scope != "passage" and chosen:
            said_beside = (many, *said_beside)
        self._left_out.setText("\n".join(said_beside))


def _columns() -> tuple[Column[VerdictRow], ...]:
    return (
        Column(tr("What"), _what, _more),
        Column(tr("From"), lambda one: _side(one.a, one.a_from, one.days_a), _more),
        Column(tr("To"), lambda one: _side(one.b, one.b_from, one.days_b), _more),
        Column(tr("Change"), lambda one: f"{word(one.word)}\n{_interval(one.change)}", _more),
    )


def _what(one: VerdictRow) -> str:
    unit = word(one.change.unit) if isinstance(one.change, Reading) else ""
    label = word(one.label)
    if one.scope == "passage":
        return f"{label}\n{unit}" if unit else label
    place = f"{one.place}, {unit}" if unit else one.place
    return place if one.scope == "note" else f"{place}\n{label}"


def _side(reading: AnyReading, first: date, days: int) -> str:
    """Give the value of one side over the day it begins on and how many were played."""
    return f"{_number(reading)}\n{_day(first)} ({days})"


def _day(day: date) -> str:
    return short_day_text(day).rsplit(" ", 1)[0]


def _number(reading: AnyReading) -> str:
    text = short_reading_text(reading)
    if not isinstance(reading, Reading):
        return text
    return text.removesuffix(word(reading.unit)).strip()


def _interval(reading: AnyReading) -> str:
    return _number(reading) if isinstance(reading, Reading) else ""


def _more(one: VerdictRow) -> str:
    words = tr(
        "{label}, {place}: {a} on {days_a} practice days from {a_from} to {a_to}; {b} on {days_b} "
        "practice days from {b_from} to {b_to}. "
        "Change {change}, ordinary scatter {scatter}: {word}."
    )
    return words.format(
        label=one.label,
        place=one.place,
        a=reading_text(one.a),
        b=reading_text(one.b),
        days_a=one.days_a,
        days_b=one.days_b,
        a_from=short_day_text(one.a_from),
        a_to=short_day_text(one.a_to),
        b_from=short_day_text(one.b_from),
        b_to=short_day_text(one.b_to),
        change=reading_text(one.change),
        scatter=reading_text(one.scatter),
        word=one.word,
    )
