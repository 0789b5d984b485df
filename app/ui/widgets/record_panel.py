"""The record panel: input, level, passage, aim, one large button.

Longer than 300 lines: one card, whose parts all follow the states of one recording.
"""

from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QLineEdit

from app.journal.failures import PlainFailure
from app.ui.desk import Desk
from app.ui.icons import icon
from app.ui.language import mark, tr
from app.ui.models.attention import Attention
from app.ui.models.recorder import Recorder, RecorderState, input_text
from app.ui.spoken import said
from app.ui.theme import GRID_PX
from app.ui.widgets.aim_answer import NO_PASSAGE, AimAnswer
from app.ui.widgets.basics import (
    Button,
    Card,
    fill,
    heading,
    large,
    row,
    sentence,
    soft,
)
from app.ui.widgets.channel_choice import ChannelChoice
from app.ui.widgets.choices import Choice, passage_text
from app.ui.widgets.level_meter import LevelMeter
from app.ui.widgets.progress_bar import ThinProgressBar
from app.ui.widgets.recovered_card import RecoveredCard
from app.ui.widgets.take_rule import TakeRule
from app.ui.words import counted, length_text

if TYPE_CHECKING:
    from app.journal.kinds import AimMet
    from app.journal.records import Passage
    from app.services.views import InputRow, LevelReading, TakeRow

_ARM_NAME = mark("Record from the first note on, until it is silent")
_HEARD_ENOUGH = 60  # readings: three seconds of listening tell how quiet the input is


class RecordPanel(Card):
    """Everything for one take.

    Signals
    -------
    passageWanted(), changeWanted()
        The player wants a new passage, or to change the chosen one.
    """

    passageWanted = Signal()
    changeWanted = Signal()

    def __init__(self, desk: Desk, recorder: Recorder, attention: Attention) -> None:
        super().__init__(tr("Record a take"))
        self._desk = desk
        self._recorder = recorder
        self._attention = attention
        self._asked_take = ""
        self.passage: Choice[str] = Choice(tr("Passage"))
        self._new = Button(tr("New"), "add", action_id="practice.passage")
        self._edit = Button(tr("Change it"), action_id="practice.edit_passage")
        self.input: Choice[str] = Choice(tr("Input"))
        self.channel = ChannelChoice()
        self._level = Button(tr("Level"), "level", action_id="practice.level")
        self._level.setCheckable(True)
        self._source = (self.input, self.channel, self._level)
        self._meter = LevelMeter(desk.theme)
        self.rule = TakeRule(desk)
        self._quiet_dbfs: float | None = None
        self._heard = 0
        self._missing = sentence()
        self._look_again = Button(tr("Look again"))
        self.aim = QLineEdit()
        self.aim.setAccessibleName(tr("Aim of this take"))
        self.aim.setMaxLength(300)
        self.aim.setPlaceholderText(
            tr("One thing to listen for, such as: third finger higher in bar 5")
        )
        self._record = Button(tr("Record"), "record", action_id="practice.record", primary=True)
        self._record.setProperty("tall", True)
        self._arm = Button(tr("On first note"), action_id="practice.arm", name=tr(_ARM_NAME))
        self.guides = Button(tr("Click"), action_id="practice.guides", name=tr("Click and drone"))
        self._sounding = soft()
        self._sounding.hide()
        self._elapsed = large("0:00")
        self._elapsed.setAccessibleName(tr("Time recorded"))
        self._counted = soft()
        self._counted.hide()
        self._filing = ThinProgressBar(tr("Filing the take"))
        self._build()
        self._connect()

    def _build(self) -> None:
        passage = row()
        fill(passage, self.passage, self._edit, self._new)
        passage.setStretch(0, 1)
        source = row()
        fill(source, self.input, self._level, self.guides)
        source.setStretch(0, 1)
        which = row()
        fill(which, soft(tr("Input"), wrap=False), self.channel)
        which.setStretch(0, 1)
        missing = row()
        fill(missing, self._missing, self._look_again)
        missing.setStretch(0, 1)
        button = row(spacing=2 * GRID_PX)
        fill(button, self._record, self._arm, self._elapsed)
        button.setStretch(0, 1)
        fill(self.box, soft(tr("Passage"), wrap=False), passage, self.rule)
        fill(self.box, self.aim, which, source, self.channel.gone, missing)
        fill(self.box, self._meter, self._sounding, button, self._counted, self._filing)
        self._question = self._build_question()
        self._recovered = RecoveredCard(self._recorder, self._attention)
        fill(self.box, self._recovered, self._question)
        self._attention.add(self._question)
        self._meter.hide()
        self._filing.hide()
        self._missing.hide()
        self._look_again.hide()

    def _build_question(self) -> Card:
        card = Card()
        self._question_words = heading("")
        self._question_words.setWordWrap(True)
        self._answer = AimAnswer()
        later = Button(tr("Later"), plain=True)
        later.clicked.connect(self._leave_question)
        answers = row()
        fill(answers, self._answer, later)
        fill(card.box, self._question_words, answers)
        return card

    def _connect(self) -> None:
        recorder = self._recorder
        self._new.clicked.connect(self.passageWanted)
        self._edit.clicked.connect(self.changeWanted)
        self.passage.currentIndexChanged.connect(lambda _: self.passage_changed())
        self._level.clicked.connect(recorder.toggle_level)
        self._look_again.clicked.connect(recorder.look_again)
        self._record.clicked.connect(self.toggle)
        self._arm.clicked.connect(self.arm)
        self.input.picked.connect(self._input_picked)
        self.channel.picked.connect(self._channel_picked)
        self._answer.answered.connect(self.answer)
        recorder.stateChanged.connect(self._show_state)
        recorder.levelRead.connect(self._show_level)
        recorder.inputsFound.connect(self._show_inputs)
        recorder.inputsMissing.connect(self._show_missing)
        recorder.filingMoved.connect(self._show_filing)
        recorder.filed.connect(self._ask)

    def offer_passages(self, passages: tuple["Passage", ...], chosen: str | None = None) -> None:
        """Fill the passage choice."""
        entries = [(passage.id, passage_text(passage)) for passage in passages]
        wanted = chosen or self.passage.key or (entries[0][0] if entries else None)
        self.passage.offer([*entries, (NO_PASSAGE, tr("No passage"))], wanted)
        self.passage_changed()

    def passage_changed(self) -> None:
        """Show what holds for the chosen passage."""
        self._allow_change()
        self.rule.look(self.passage.key or None, self._recorder.device_key, self._quiet_dbfs)

    def _allow_change(self) -> None:
        self._edit.setEnabled(bool(self.passage.key) and not self._recorder.is_recording)

    def show_guides(self, words: str) -> None:
        """Say what will sound while the next takes are recorded."""
        self._sounding.setText(tr("Will sound: {words}").format(words=words) if words else "")
        self._sounding.setVisible(bool(words))

    @property
    def level_words(self) -> str:
        """The input level in words."""
        return self._meter.words

    def toggle(self) -> None:
        """Record, or stop."""
        if not self._record.isEnabled():
            return
        self._leave_question()
        self._recorder.toggle_recording(self.passage.key or None, self.aim.text().strip())

    def arm(self) -> None:
        """Record from the first note on, or wait for it no longer."""
        if self._arm.isEnabled():
            self._leave_question()
            self._recorder.toggle_armed(self.passage.key or None, self.aim.text().strip())

    def stop(self) -> None:
        """Stop a recording that runs."""
        if self._recorder.is_recording:
            self.toggle()

    def answer(self, answer: "AimMet") -> None:
        """Keep the answer to the open question."""
        if not self._asked_take:
            return
        take_id, filing = self._asked_take, self._desk.workbench.filing
        self._leave_question()
        self._desk.jobs.store(
            lambda: filing.answer_aim(take_id, answer), lambda _: self._desk.takesChanged.emit()
        )

    def _leave_question(self) -> None:
        self._asked_take = ""
        self._attention.want(self._question, False)

    def _input_picked(self, key: str) -> None:
        self._recorder.choose_input(key)
        self.channel.show_input(key)
        self._quiet_dbfs = None
        self.passage_changed()
        practising = self._desk.workbench.practising

        def remember() -> None:
            practising.change_settings(replace(practising.settings(), input_device=key))

        self._desk.jobs.store(remember)

    def _channel_picked(self, channel: int) -> None:
        self.channel.note_choice(channel)
        self._recorder.use_channel(channel or None)
        self._quiet_dbfs = None
        self.passage_changed()

    def _show_inputs(self, inputs: tuple["InputRow", ...]) -> None:
        self._missing.hide()
        self._look_again.hide()
        usual = next((row.key for row in inputs if row.is_default), None)
        self.input.offer(
            [(row.key, input_text(row)) for row in inputs], self._recorder.device_key or usual
        )
        self._recorder.device_key = self.input.key
        self.channel.know_inputs(inputs, self.input.key)
        self._allow(True)
        self.passage_changed()

    def _show_missing(self, failure: PlainFailure) -> None:
        self._missing.setText(f"{failure.sentence} {failure.next_step}")
        self._missing.show()
        self._look_again.show()
        self.input.offer([("", tr("No input"))])
        self.channel.know_inputs(())
        self._allow(False)

    def _allow(self, there_is_an_input: bool) -> None:
        for widget in (*self._source, self._record, self._arm):
            widget.setEnabled(there_is_an_input)

    def _show_state(self, state: RecorderState) -> None:
        recording = state in (RecorderState.STARTING, RecorderState.RECORDING)
        self._record.setText(tr("Stop") if recording else tr("Record"))
        self._record.setIcon(icon("stop" if recording else "record", on_accent=True))
        self._record.setEnabled(state not in (RecorderState.STARTING, RecorderState.STOPPING))
        self._level.setChecked(state is RecorderState.LISTENING)
        self._meter.setVisible(state is not RecorderState.IDLE)  # no room for no level
        is_armed = state is RecorderState.ARMED
        self._arm.setText(tr("Do not wait") if is_armed else tr("On first note"))
        self._arm.setEnabled(not recording and state is not RecorderState.STOPPING)
        for widget in (*self._source, self.passage, self._new, self.aim):
            widget.setEnabled(not recording and not is_armed)
        self._allow_change()
        if state is RecorderState.STARTING:
            self._elapsed.setText(tr("wait"))
        if is_armed:
            self._elapsed.setText(tr("waiting"))
        if state is RecorderState.IDLE:
            self._elapsed.setText("0:00")
            self._count("")
            self._meter.show_level(None)
            self._heard = 0

    def _show_level(self, reading: "LevelReading") -> None:
        self._meter.show_level(reading)
        if not self._recorder.is_recording and reading.quiet_dbfs is not None:
            self._quiet_dbfs = reading.quiet_dbfs
            self._heard += 1
            if self._heard == _HEARD_ENOUGH:
                self.passage_changed()
        if self._recorder.is_recording:
            lost, marks = reading.dropped_frames, self._recorder.mark_count
            words = [said(counted(marks, "mark"))] if marks else []
            if lost:
                words.append(tr("{dropped_frames} samples lost").format(dropped_frames=lost))
            self._elapsed.setText(length_text(reading.elapsed_s))
            self._count(", ".join(words))

    def _count(self, words: str) -> None:
        self._counted.setText(words)
        self._counted.setVisible(bool(words))

    def _show_filing(self, fraction: float) -> None:
        self._filing.show_fraction(fraction)
        self._filing.setVisible(fraction < 1.0)

    def _ask(self, row: "TakeRow") -> None:
        if not row.aim:
            return
        self._asked_take = row.id
        self.aim.clear()
        self._question_words.setText(
            tr(
                "Was the aim met? \N{LEFT DOUBLE QUOTATION MARK}{aim}"
                "\N{RIGHT DOUBLE QUOTATION MARK}"
            ).format(aim=row.aim)
        )
        self._answer.show_answer(None)
        self._attention.want(self._question, True)
