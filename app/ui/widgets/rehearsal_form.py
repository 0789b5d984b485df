"""The page of an audition rehearsal: choose, play through, listen."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QCheckBox, QListWidget, QListWidgetItem, QStackedWidget, QWidget

from app.journal.records import Passage
from app.services.views import TakeRow
from app.ui.icons import icon
from app.ui.language import tr
from app.ui.models.recorder import Recorder, RecorderState
from app.ui.models.rehearsal import RehearsalRun
from app.ui.models.rows import Column
from app.ui.theme import GRID_PX, Theme
from app.ui.widgets.basics import Button, Card, column, fill, large, row, sentence, soft
from app.ui.widgets.choices import passage_text
from app.ui.widgets.level_meter import LevelMeter
from app.ui.widgets.table import RowTable
from app.ui.words import day_text, length_text

_CHOOSE, _PLAY, _LISTEN = range(3)


class RehearsalForm(Card):
    """Passages in a given or drawn order; nothing that was recorded is shown before the end.

    Signals
    -------
    closed()
        Nothing more to do here.
    """

    closed = Signal()

    def __init__(self, theme: Theme, run: RehearsalRun, recorder: Recorder) -> None:
        super().__init__(tr("Audition rehearsal"))
        self.run = run
        self._recorder = recorder
        self._wants_new = False
        self.passages = QListWidget()
        self.passages.setAccessibleName(tr("Passages of the rehearsal, in the order of playing"))
        self.passages.setSpacing(4)
        self.draw = QCheckBox(tr("Draw the order by lot"))
        self.draw.setAccessibleName(self.draw.text())
        self.begin = Button(tr("Begin the rehearsal"), primary=True)
        self.number = soft()
        self.due = large()
        self.due.setWordWrap(True)
        self.state = sentence()
        self.spoilt = sentence()
        self.meter = LevelMeter(theme)
        self.record = Button(tr("Play it now"), "record", action_id="practice.record", primary=True)
        self.record.setProperty("tall", True)
        self.takes: RowTable[TakeRow] = RowTable(tr("Takes of the rehearsal"), _columns())
        self._over = sentence()
        self._parts = QStackedWidget()
        for part in (self._choosing(), self._playing(), self._listening()):
            self._parts.addWidget(part)
        close = Button(tr("Back to today"), action_id="practice.rehearsal", plain=True)
        close.clicked.connect(self.closed)
        end = row()
        fill(end, 1, close)
        fill(self.box, self._parts, end)
        self.box.setStretch(1, 1)
        self._connect()

    def _choosing(self) -> QWidget:
        part = QWidget()
        tools = row()
        for words, name, by in (
            (tr("Up"), tr("Play the passage earlier"), -1),
            (tr("Down"), tr("Play the passage later"), 1),
        ):
            button = Button(words, name=name, plain=True)
            button.clicked.connect(lambda _=False, by=by: self._move(by))
            tools.addWidget(button)
        fill(tools, self.draw, 1, self.begin)
        self._none = soft(tr("There is no passage yet. Make one first, then rehearse it."))
        how = sentence(
            tr(
                "Each passage is played once, straight through, as at an audition. A chance is"
                " used up whatever came of it; only what the device spoils is given back. You"
                " listen afterwards."
            )
        )
        fill(column(part), how, self._none, self.passages, tools)
        return part

    def _playing(self) -> QWidget:
        part = QWidget()
        self._move_on = Button(tr("Go on without it"), name=tr("Go on without this passage"))
        self._end = Button(tr("End the rehearsal"), plain=True)
        buttons = row()
        fill(buttons, self.record, self._move_on, self._end)
        buttons.setStretch(0, 1)
        box = column(part, spacing=2 * GRID_PX)
        fill(box, 1, self.number, self.due, self.state, self.spoilt, self.meter, buttons, 2)
        return part

    def _listening(self) -> QWidget:
        part = QWidget()
        again = Button(tr("A new rehearsal"), plain=True)
        again.clicked.connect(self.choose_anew)
        self.hear = Button(
            tr("Hear them in order"), "play", action_id="rehearsal.next", primary=True
        )
        buttons = row()
        fill(buttons, again, 1, self.hear)
        fill(column(part), self._over, self.takes, buttons)
        return part

    def _connect(self) -> None:
        run, recorder = self.run, self._recorder
        self.begin.clicked.connect(self._begin)
        self.record.clicked.connect(run.toggle)
        self._move_on.clicked.connect(run.move_on)
        self._end.clicked.connect(run.end)
        self.hear.clicked.connect(run.hear_next)
        self.takes.rowOpened.connect(run.hear)
        run.changed.connect(self._show)
        recorder.stateChanged.connect(lambda _: self._show())
        recorder.levelRead.connect(self.meter.show_level)

    def start(self, passages: tuple[Passage, ...]) -> None:
        """Offer the passages, and show the rehearsal that runs if one does."""
        self.passages.clear()
        for passage in passages:
            entry = QListWidgetItem(passage_text(passage))
            entry.setData(Qt.ItemDataRole.UserRole, passage.id)
            entry.setCheckState(Qt.CheckState.Unchecked)
            self.passages.addItem(entry)
        self._none.setVisible(not passages)
        self.passages.setVisible(bool(passages))
        self._wants_new = True
        self._show()
        self.run.read()

    def choose_anew(self) -> None:
        """Choose passages again."""
        self._wants_new = True
        self._show()

    @property
    def chosen_ids(self) -> tuple[str, ...]:
        """Ids of the ticked passages, in their order."""
        entries = (self.passages.item(at) for at in range(self.passages.count()))
        return tuple(
            entry.data(Qt.ItemDataRole.UserRole)
            for entry in entries
            if entry.checkState() is Qt.CheckState.Checked
        )

    def _begin(self) -> None:
        self._wants_new = False
        self.run.start(self.chosen_ids, draw=self.draw.isChecked())

    def _move(self, by: int) -> None:
        at = self.passages.currentRow()
        if at >= 0 and 0 <= at + by < self.passages.count():
            self.passages.insertItem(at + by, self.passages.takeItem(at))
            self.passages.setCurrentRow(at + by)

    def _show(self) -> None:
        view = self.run.view
        if self.run.is_running:
            self._wants_new = False
            self._show_due()
            self._parts.setCurrentIndex(_PLAY)
        elif view is None or self._wants_new:
            self._parts.setCurrentIndex(_CHOOSE)
        else:
            self._over.setText(
                tr("{day}: the rehearsal is over. Now listen, one take after the other.").format(
                    day=day_text(view.rehearsal.practice_day)
                )
                if view.to_listen_to
                else tr("The rehearsal is over; nothing was recorded in it.")
            )
            self.takes.show_rows(view.to_listen_to)
            self.hear.setEnabled(bool(view.to_listen_to))
            self._parts.setCurrentIndex(_LISTEN)

    def _show_due(self) -> None:
        view, recorder = self.run.view, self._recorder
        if view is None:
            return
        self.number.setText(
            tr("{number} of {count}").format(number=view.number, count=len(view.titles))
        )
        self.due.setText(view.titles[view.number - 1])
        is_on = recorder.is_recording
        words = tr("One chance. Begin when you are ready.")
        if is_on:
            words = tr("Recording. Play on, whatever happens.")
        elif recorder.state is RecorderState.STOPPING:
            words = tr("The take is being filed.")
        elif self.run.is_begun:
            words = tr("This passage has had its one chance.")
        self.state.setText(words)
        spoilt = self.run.spoilt
        self.spoilt.setText(tr("The chance was given back: {why}").format(why=spoilt))
        self.spoilt.setVisible(bool(spoilt))
        self.record.setText(tr("Stop") if is_on else tr("Play it now"))
        self.record.setIcon(icon("stop" if is_on else "record", on_accent=True))
        self.record.setEnabled(is_on or (recorder.is_free and not self.run.is_begun))
        self._move_on.setEnabled(recorder.is_free)
        self._end.setEnabled(recorder.is_free)
        self.setAccessibleDescription(f"{self.number.text()}: {self.due.text()}. {words}")


def _columns() -> tuple[Column[TakeRow], ...]:
    return (
        Column(tr("Passage"), lambda take: take.passage_name),
        Column(tr("Length"), lambda take: length_text(take.duration_s), is_number=True),
    )
