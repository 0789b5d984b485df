"""Blind listening: two takes without dates or lanes, and one question about them."""

from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from app.jobs import Progress, ShouldStop
from app.journal.blind_ear import Choice as Answer
from app.journal.blind_ear import Question
from app.journal.failures import PlainFailure
from app.services.following_views import AlignedPair, BlindView, EarRow
from app.services.views import LevelMatch, TakeRow
from app.ui.desk import Desk
from app.ui.keys import keys_text
from app.ui.language import tr
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Button, Card, column, fill, heading, large, row, sentence, soft
from app.ui.widgets.progress_bar import ThinProgressBar
from app.ui.widgets.transport import Transport
from app.ui.words import day_text

QUESTIONS = (Question.IN_TUNE, Question.STEADIER, Question.MUSICAL)
_CARD_WIDTH_PX = 720


class BlindPanel(QWidget):
    """Plays two takes in a drawn order and keeps the answer.

    Signals
    -------
    closed()
        The player goes back to the lanes.
    """

    closed = Signal()

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self._desk = desk
        self._passage_id: str | None = None
        self._asked: BlindView | None = None
        self._pair: AlignedPair | None = None
        self._levels = LevelMatch()
        self._hears_second = False
        self._at = 0
        self.transport = Transport(desk)
        self._title = large("")
        self._bar = ThinProgressBar(tr("Reading both takes"))
        self._bar.hide()
        self._hear = sentence()
        self._first = Button(tr("Hear the first"), action_id="compare.blind_first")
        self._second = Button(tr("Hear the second"), action_id="compare.blind_second")
        self._answers = {
            Answer.FIRST: Button(tr("The first"), action_id="compare.blind_answer_first"),
            Answer.NO_DIFFERENCE: Button(
                tr("No difference"), action_id="compare.blind_answer_none"
            ),
            Answer.SECOND: Button(tr("The second"), action_id="compare.blind_answer_second"),
        }
        self._last = sentence()
        self._last.hide()
        self._results = sentence()
        self._back = Button(tr("Back to the lanes"), action_id="compare.blind", plain=True)
        self._build()
        self._first.clicked.connect(lambda: self.hear(second=False))
        self._second.clicked.connect(lambda: self.hear(second=True))
        for answer, button in self._answers.items():
            button.clicked.connect(partial(self.answer, answer))
        self._back.clicked.connect(self.closed)
        self.transport.setVisible(False)

    def _build(self) -> None:
        card = Card(tr("Blind ear"))
        card.setMaximumWidth(_CARD_WIDTH_PX)
        card.setMinimumWidth(_CARD_WIDTH_PX)
        card.box.setSpacing(2 * GRID_PX)
        hearing = row(spacing=2 * GRID_PX)
        fill(hearing, self._first, self._second, 1)
        answering = row(spacing=2 * GRID_PX)
        fill(answering, *self._answers.values(), 1)
        why = soft(
            tr(
                "Two takes of this passage in a drawn order, at one loudness; their dates stay "
                "hidden until you have answered, so that you judge the sound and not the day."
            )
        )
        fill(card.box, self._title, why, self._bar, hearing, self._hear, answering)
        keys = soft(
            tr(
                "Keys: {first}, {second} to hear, space to pause; {one}, {none}, {other} to answer"
            ).format(
                first=keys_text("compare.blind_first"),
                second=keys_text("compare.blind_second"),
                one=keys_text("compare.blind_answer_first"),
                none=keys_text("compare.blind_answer_none"),
                other=keys_text("compare.blind_answer_second"),
            )
        )
        fill(card.box, keys, self._last, heading(tr("What your answers say so far")))
        back = row()
        fill(back, self._back, 1)
        fill(card.box, self._results, back)
        box = column(self, margin=2 * GRID_PX)
        middle = row()
        fill(middle, 1, card, 1)
        fill(box, 1, middle, self.transport, 2)

    @property
    def question(self) -> str:
        """The question, as it is asked."""
        return self._title.text()

    @property
    def results(self) -> str:
        """What the answers so far say."""
        return self._results.text()

    def begin(self, passage_id: str) -> None:
        """Ask about two takes of a passage."""
        self._passage_id = passage_id
        self._last.hide()
        self._ask()
        self._read_results()

    def end(self) -> None:
        """Stop the sound and forget the question."""
        self.transport.stop()
        self._asked = None
        self._desk.jobs.forget("blind.ask")

    def hear(self, *, second: bool) -> None:
        """Play the first or the second take; from where the other one is, if one plays."""
        if self._asked is None or self._pair is None or not self.transport.is_ready:
            return
        if second != self._hears_second:
            take_id, gain_db = self._side(second=second)
            place = self._pair.to_b if second else self._pair.to_a
            if not self.transport.switch(take_id, 0.0, gain_db, place):
                return
            self._hears_second = second
        if not self.transport.is_playing:
            self.transport.toggle()
        self._say_what_sounds()

    def answer(self, answer: Answer) -> None:
        """Keep an answer and ask the next question."""
        asked = self._asked
        if asked is None:
            return
        self._asked = None
        self.transport.stop()
        bench = self._desk.workbench
        self._at = (self._at + 1) % len(QUESTIONS)

        def keep() -> tuple[TakeRow, TakeRow]:
            bench.blind_ear.answer(asked.trial.id, answer)
            return bench.filing.row(asked.first_take_id), bench.filing.row(asked.second_take_id)

        self._desk.jobs.store(keep, lambda rows: self._go_on(*rows))

    def _go_on(self, first: TakeRow, second: TakeRow) -> None:
        """Tell the days of the pair that was answered, and ask the next question."""
        words = tr("Just now the first was {first}, the second {second}.")
        self._last.setText(
            words.format(first=day_text(first.practice_day), second=day_text(second.practice_day))
        )
        self._last.show()
        self._read_results()
        self._ask()

    def _ask(self) -> None:
        passage_id, question = self._passage_id, QUESTIONS[self._at]
        bench = self._desk.workbench
        if passage_id is None:
            return
        self._set_ready(ready=False)
        self._title.setText(tr("Drawing two takes..."))
        self._bar.setValue(0)
        self._bar.show()

        def drawn(
            progress: Progress, should_stop: ShouldStop
        ) -> tuple[BlindView, AlignedPair, LevelMatch]:
            asked = bench.blind_ear.ask(passage_id, question)
            first, second = asked.first_take_id, asked.second_take_id
            pair = bench.aligning.pair(first, second, progress, should_stop)
            levels = bench.comparing.levels(first, second)
            bench.playing.keep_ready(second, should_stop=should_stop, gain_db=levels.b_gain_db)
            return asked, pair, levels

        self._desk.jobs.analyse(
            drawn,
            lambda found: self._take_over(*found),
            subject="blind.ask",
            progress=self._bar.show_fraction,
            failed=self._failed,
            ended=self._bar.hide,
        )

    def _take_over(self, asked: BlindView, pair: AlignedPair, levels: LevelMatch) -> None:
        self._asked, self._pair, self._levels = asked, pair, levels
        self._hears_second = False
        self._title.setText(asked.question)
        self._hear.setText("")
        self.transport.load(asked.first_take_id, 0.0, levels.a_gain_db)
        self._set_ready(ready=True)

    def _failed(self, failure: PlainFailure) -> None:
        self._title.setText(failure.sentence)
        self._hear.setText(failure.next_step)

    def _side(self, *, second: bool) -> tuple[str, float]:
        assert self._asked is not None  # noqa: S101 - the caller has looked
        if second:
            return self._asked.second_take_id, self._levels.b_gain_db
        return self._asked.first_take_id, self._levels.a_gain_db

    def _say_what_sounds(self) -> None:
        first, second = tr("The first one sounds."), tr("The second one sounds.")
        self._hear.setText(second if self._hears_second else first)

    def _set_ready(self, *, ready: bool) -> None:
        for button in (self._first, self._second, *self._answers.values()):
            button.setEnabled(ready)

    def _read_results(self) -> None:
        blind_ear, passage_id = self._desk.workbench.blind_ear, self._passage_id
        self._desk.jobs.store(
            lambda: blind_ear.results(passage_id), self._show_results, subject="blind.results"
        )

    def _show_results(self, rows: tuple[EarRow, ...]) -> None:
        names = {
            Question.IN_TUNE: tr("Better in tune"),
            Question.STEADIER: tr("Steadier"),
            Question.MUSICAL: tr("More musical"),
        }
        self._results.setText("\n".join(f"{names[one.question]}: {one.sentence}" for one in rows))
