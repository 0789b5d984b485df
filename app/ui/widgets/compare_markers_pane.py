"""Markers of earlier takes at their place in take B, and whether they are still there."""

from PySide6.QtCore import Signal

from app.journal.failures import PlainFailure
from app.services.following_views import CarriedMarker, LifeRow
from app.services.reading_views import Reading
from app.services.views import CompareView
from app.ui.desk import Desk
from app.ui.language import tr
from app.ui.models.rows import Column
from app.ui.widgets.basics import Button, column, fill, heading, row, sentence, soft
from app.ui.widgets.compare_pane import ComparePane
from app.ui.widgets.marker_words import category_word
from app.ui.widgets.progress_bar import ThinProgressBar
from app.ui.widgets.table import RowTable
from app.ui.words import position_text, reading_text, short_day_text


class CarriedPane(ComparePane):
    """Asks about one marker at a time; keys answer it.

    Signals
    -------
    placeWanted(float)
        Somebody wants to hear a marker's place, seconds in B.
    """

    placeWanted = Signal(float)

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self._lives: dict[str, str] = {}
        self._bar = ThinProgressBar(tr("Carrying markers over"))
        self._bar.hide()
        self.table: RowTable[CarriedMarker] = RowTable(
            tr("Markers of earlier takes"), _columns(), stretch=0, dense=True
        )
        self._question = heading("")
        self._question.setWordWrap(True)
        self._measured = sentence()
        self._life = soft()
        self._yes = Button(tr("Yes, still there"), action_id="compare.still_there")
        self._no = Button(tr("No, gone"), action_id="compare.gone")
        self._none = Button(tr("Ask again"), action_id="compare.ask_again", plain=True)
        buttons = row()
        fill(buttons, self._yes, self._no, self._none, 1)
        box = column(self)
        fill(box, self._bar, self._question, self._measured, self._life, buttons, self.table)
        box.setStretch(5, 1)
        self._yes.clicked.connect(lambda: self.answer(is_there=True))
        self._no.clicked.connect(lambda: self.answer(is_there=False))
        self._none.clicked.connect(lambda: self.answer(is_there=None))
        self.table.rowChosen.connect(lambda _: self._show_chosen(hear=True))
        self._show_chosen()

    @property
    def question(self) -> str:
        """What is asked now."""
        return self._question.text()

    def next_marker(self) -> None:
        """Go to the next marker that is not answered yet, else to the next one."""
        rows = self.table.rows_model.rows
        if not rows:
            return
        here = self.table.currentIndex().row()
        order = [(here + step) % len(rows) for step in range(1, len(rows) + 1)]
        open_ones = [at for at in order if rows[at].answer is None]
        self.table.choose((open_ones or order)[0])
        self._show_chosen(hear=True)

    def answer(self, *, is_there: bool | None) -> None:
        """Answer the question about the chosen marker."""
        carried, view = self.table.chosen, self.view
        if carried is None or view is None:
            return
        carrying, marker_id, take_id = (
            self.desk.workbench.carrying,
            carried.marker.id,
            view.b.row.id,
        )
        self.desk.jobs.store(
            lambda: carrying.answer(marker_id, take_id, is_there),
            lambda _: self._answered(),
        )

    def _answered(self) -> None:
        self.desk.markersChanged.emit(self.view.b.row.id if self.view else "")
        self.read_again()

    def read(self, view: CompareView) -> None:
        """Carry the markers of earlier takes into B."""
        take_id, passage_id = view.b.row.id, self.passage_id
        carrying = self.desk.workbench.carrying
        if passage_id is None:
            self._take_over((), ())
            return
        self._bar.setValue(0)
        self._bar.show()
        self.desk.jobs.analyse(
            lambda progress, should_stop: (
                carrying.carried_into(take_id, progress, should_stop),
                carrying.lives(passage_id),
            ),
            lambda found: self._take_over(*found),
            subject="compare.carried",
            progress=self._bar.show_fraction,
            failed=self._failed,
            ended=self._bar.hide,
        )

    def _failed(self, failure: PlainFailure) -> None:
        self._measured.setText(f"{failure.sentence} {failure.next_step}")

    def _take_over(self, carried: tuple[CarriedMarker, ...], lives: tuple[LifeRow, ...]) -> None:
        self._lives = {life.marker.id: life.sentence for life in lives}
        chosen = self.table.chosen
        self.table.show_rows(carried)
        ids = [one.marker.id for one in carried]
        if chosen is not None and chosen.marker.id in ids and chosen.answer is None:
            # It was answered just now, most likely: the next open one is asked about.
            self.table.choose(ids.index(chosen.marker.id))
        open_ones = [at for at, one in enumerate(carried) if one.answer is None]
        if open_ones:
            self.table.choose(open_ones[0])
        self._show_chosen()

    def _show_chosen(self, *, hear: bool = False) -> None:
        carried = self.table.chosen
        for button in (self._yes, self._no, self._none):
            button.setEnabled(carried is not None)
        if carried is None:
            self._question.setText(tr("No marker of an earlier take leads here."))
            self._measured.setText(
                tr("Markers you place while listening appear at their place in every later take.")
            )
            self._life.setText("")
            return
        words = tr("Still there? {what}, {place}")
        self._question.setText(
            words.format(what=_what(carried), place=position_text(carried.start_s))
        )
        self._measured.setText(_measured(carried))
        self._life.setText(self._lives.get(carried.marker.id, ""))
        if hear:
            self.placeWanted.emit(carried.start_s)


def _columns() -> tuple[Column[CarriedMarker], ...]:
    return (
        Column(tr("Marker"), _what, _measured),
        Column(tr("From"), lambda one: short_day_text(one.from_day)[:-5], _measured),
        Column(tr("In B at"), lambda one: position_text(one.start_s), is_number=True),
        Column(tr("Measured"), _measured_short, _measured),
        Column(tr("Heard"), _answer),
    )


def _what(one: CarriedMarker) -> str:
    text = f": {one.marker.text}" if one.marker.text else ""
    return f"{category_word(one.marker.category)}{text}"


def _answer(one: CarriedMarker) -> str:
    if one.answer is None:
        return tr("?")
    return tr("there") if one.answer else tr("gone")


def _measured(one: CarriedMarker) -> str:
    placed = tr("Placed {day}.").format(day=short_day_text(one.from_day))
    found = one.measured
    if not (isinstance(found.then, Reading) and isinstance(found.now, Reading)):
        return f"{placed} {found.sentence}"
    words = tr("{placed} Measured: then {then}, now {now}: {word}.")
    text = words.format(
        placed=placed, then=reading_text(found.then), now=reading_text(found.now), word=found.word
    )
    return f"{text} {found.sentence}".strip()


def _measured_short(one: CarriedMarker) -> str:
    short = {
        "still there": tr("there"),
        "gone": tr("gone"),
        "not clear": tr("unclear"),
        "not measurable": "\N{EN DASH}",
    }
    return short[one.measured.word]
