"""What the journal knows about a take: where it is filed, its aim, how it is measured."""

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLineEdit, QScrollArea, QWidget

from app.journal.failures import PlainFailure
from app.journal.scores import bar_spans, spans_text
from app.services.stopping import Progress, ShouldStop
from app.ui.desk import Desk
from app.ui.language import tr
from app.ui.theme import GRID_PX
from app.ui.widgets.aim_answer import NO_PASSAGE, AimAnswer
from app.ui.widgets.basics import Button, column, fill, heading, labelled, row, soft
from app.ui.widgets.choices import Choice, DayEdit, passage_text
from app.ui.widgets.settings_form import SettingsForm

if TYPE_CHECKING:
    from app.journal.kinds import AimMet
    from app.journal.records import Passage
    from app.services.views import TakeView


class TakePane(QScrollArea):
    """Files a take elsewhere, changes its settings, deletes it."""

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self._desk = desk
        self._take_id = ""
        self._filled_for: tuple[object, ...] = ()
        self._passages: tuple[Passage, ...] = ()
        self._passage: Choice[str] = Choice(tr("Passage"))
        self.day = DayEdit(tr("Practice day"))
        self.parts = QLineEdit()
        self.parts.setMaxLength(80)
        self.parts.setPlaceholderText(tr("the whole passage; or 1-8, 17-24"))
        self.file_it = Button(tr("File it there"))
        self.file_it.clicked.connect(self._refile)
        self.aim = QLineEdit()
        self.aim.setMaxLength(300)
        self.aim.editingFinished.connect(self._set_aim)
        self._answer = AimAnswer()
        self._answer.answered.connect(self._answered)
        self.form = SettingsForm()
        self.apply = Button(tr("Measure with these"))
        self.apply.clicked.connect(self._change_settings)
        self._where = soft()
        self._where.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self._delete = Button(tr("Delete this take"), "delete", action_id="listen.delete_take")
        self._delete.clicked.connect(lambda: desk.keys.action("listen.delete_take").trigger())
        self._build()

    def _build(self) -> None:
        inside = QWidget()
        box = column(inside, spacing=GRID_PX)
        box.setContentsMargins(2, 2, GRID_PX, 2)
        fill(box, heading(tr("Filed under")), self._passage)
        filing = row()
        fill(filing, self.day, self.file_it, 1)
        fill(box, labelled(tr("Bars of it that are played"), self.parts), filing)
        fill(box, heading(tr("Aim")), self.aim, self._answer)
        self.aim.setAccessibleName(tr("Aim of the take"))
        fill(box, heading(tr("How it is measured")), self.form)
        apply = row()
        fill(apply, 1, self.apply)
        fill(box, apply, labelled(tr("Recording"), self._where), self._delete, 1)
        self.setWidget(inside)
        self.setWidgetResizable(True)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)

    def show_take(self, view: "TakeView", passages: tuple["Passage", ...]) -> None:
        """Fill the forms, unless nothing changed: what is half filled in stays."""
        take = view.row
        shown = (take.id, take.practice_day, take.passage_id, take.parts, view.settings)
        self._answer.show_answer(view.row.aim_met)
        if shown == self._filled_for and passages == self._passages:
            return
        self._filled_for, self._passages = shown, passages
        self._take_id = view.row.id
        entries = [(passage.id, passage_text(passage)) for passage in passages]
        self._passage.offer(
            [(NO_PASSAGE, tr("No passage")), *entries], view.row.passage_id or NO_PASSAGE
        )
        self.day.show_day(view.row.practice_day)
        self.parts.setText(spans_text(view.row.parts))
        self.aim.setText(view.row.aim)
        self._answer.setEnabled(bool(view.row.aim))
        self.form.show_settings(view.settings)
        self._where.setText(str(view.row.file))

    def _refile(self) -> None:
        take_id, day, passage = self._take_id, self.day.day, self._passage.key or None
        filing, scores = self._desk.workbench.filing, self._desk.workbench.scores
        try:
            parts = bar_spans(self.parts.text())
        except PlainFailure as failure:
            self._desk.tell_failure(failure)
            return

        def file_it(_progress: Progress, _should_stop: ShouldStop) -> bool:
            filed = filing.refile(take_id, day, passage)
            if filed.parts == parts:
                return False
            scores.set_parts(take_id, parts)
            return True

        self._desk.jobs.analyse(file_it, lambda is_other: self._filed(take_id, is_other))

    def _filed(self, take_id: str, is_other: bool) -> None:
        self._told(tr("Filed; the recording itself was not touched."))
        if is_other:
            self._desk.measureWanted.emit(take_id)

    def _set_aim(self) -> None:
        take_id, aim = self._take_id, self.aim.text().strip()
        if not take_id:
            return
        filing = self._desk.workbench.filing
        self._answer.setEnabled(bool(aim))
        self._desk.jobs.store(lambda: filing.set_aim(take_id, aim))

    def _answered(self, answer: "AimMet") -> None:
        take_id, filing = self._take_id, self._desk.workbench.filing
        self._desk.jobs.store(
            lambda: filing.answer_aim(take_id, answer), lambda _: self._desk.takesChanged.emit()
        )

    def _change_settings(self) -> None:
        try:
            settings = self.form.settings
        except PlainFailure as failure:
            self._desk.tell_failure(failure)
            return
        take_id, filing = self._take_id, self._desk.workbench.filing
        self._desk.jobs.store(
            lambda: filing.change_settings(take_id, settings),
            lambda _: self._measure(take_id),
        )

    def _measure(self, take_id: str) -> None:
        self._told(tr("The take is being measured again."))
        self._desk.measureWanted.emit(take_id)

    def _told(self, words: str) -> None:
        self._desk.tell(words)
        self._desk.takesChanged.emit()
