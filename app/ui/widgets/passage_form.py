"""A form for a new passage; it sits in the page and is never in the way of the sound."""

from dataclasses import replace

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QIcon, QKeyEvent
from PySide6.QtWidgets import QCheckBox, QFrame, QGridLayout, QLineEdit, QScrollArea, QWidget

from app.journal.failures import PlainFailure
from app.journal.records import Passage, PlayingSettings
from app.services.no_retake import ABOUT
from app.ui.desk import Desk
from app.ui.icons import icon
from app.ui.language import tr
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import ENTER_KEYS, Button, Card, column, fill, labelled, row, soft
from app.ui.widgets.choices import passage_text
from app.ui.widgets.score_form import ScoreForm
from app.ui.widgets.settings_form import SettingsForm


class PassageForm(Card):
    """Piece, name, bars, and how it is measured; for a new passage or one that is there.

    Signals
    -------
    made(Passage)
        The passage is in the journal.
    closed()
        Nothing more to do here.
    """

    made = Signal(object)
    closed = Signal()

    def __init__(self, desk: Desk, settings: SettingsForm, score: ScoreForm) -> None:
        super().__init__(tr("New passage"))
        self._desk = desk
        self._edited: Passage | None = None
        self._piece = _line(tr("A study, a concerto, a scale"))
        self._name = _line(tr("First page, development, bars with the shift"))
        self._bars = _line(tr("1-24"))
        self._form = settings
        self._no_retake = QCheckBox(tr("No retake"))
        self._no_retake.setAccessibleName(
            tr("No retake: one take of this passage each practice day")
        )
        self._add = Button(tr("Add passage"), "add", primary=True)
        self._add.clicked.connect(self._make)
        cancel = Button(tr("Cancel"), plain=True)
        cancel.clicked.connect(self.closed)
        grid = QGridLayout()
        grid.setSpacing(GRID_PX)
        grid.addLayout(labelled(tr("Piece"), self._piece), 0, 0, 1, 2)
        grid.addLayout(labelled(tr("Passage"), self._name), 1, 0)
        grid.addLayout(labelled(tr("Bars"), self._bars), 1, 1)
        grid.setColumnStretch(0, 3)
        grid.setColumnStretch(1, 1)
        buttons = row()
        fill(buttons, 1, cancel, self._add)
        words = soft(tr("A passage is what you play again and again and want to compare."))
        self.score = score
        self.score.scaleChosen.connect(self._name_by_scale)
        self._form.instrumentPicked.connect(self.score.fit)
        inside = QWidget()
        left = column()
        fill(left, words, grid, self._form, self._no_retake, soft(ABOUT), 1)
        both = row(inside, spacing=3 * GRID_PX)
        both.addLayout(left, 3)
        both.addWidget(self.score, 2)
        scroll = QScrollArea()
        scroll.setWidgetResizable(True)
        scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        scroll.setFrameShape(QFrame.Shape.NoFrame)
        scroll.setWidget(inside)
        self.box.addWidget(scroll, 1)
        self.box.addLayout(buttons)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Keep it on Enter, whichever field has the focus."""
        if event.key() in ENTER_KEYS:
            self._make()
            return
        super().keyPressEvent(event)

    def edit(self, passage: Passage) -> None:
        """Begin with a passage that is there; its takes keep the settings they have."""
        self.start(passage.settings)
        self._edited = passage
        self.title.setText(tr("Change the passage"))
        self._add.setText(tr("Keep"))
        self._add.setIcon(QIcon())
        self._piece.setText(passage.piece)
        self._name.setText(passage.name)
        self._bars.setText(passage.bars)
        self._no_retake.setChecked(passage.no_retake)
        self.score.show_passage(passage)

    def start(self, settings: PlayingSettings) -> None:
        """Begin with an empty form and the journal's usual settings."""
        self._edited = None
        self.title.setText(tr("New passage"))
        self._add.setText(tr("Add passage"))
        self._add.setIcon(icon("add", on_accent=True))
        for field in (self._piece, self._name, self._bars):
            field.setText("")  # unlike clear(), this is no edit of the player's
        self._no_retake.setChecked(False)
        self._form.show_settings(settings)
        self.score.fit(settings.instrument)
        self.score.show_passage(None)
        self._piece.setFocus()

    def _name_by_scale(self, title: str) -> None:
        """Name a new passage by its scale, as long as the player has not named it."""
        if self._edited is not None or self._name.isModified():
            return
        self._name.setText(title)
        if title and not self._piece.text():
            self._piece.setText(tr("Scales"))

    def _make(self) -> None:
        piece, name = self._piece.text().strip(), self._name.text().strip()
        bars = self._bars.text().strip()
        if not piece or not name:
            self._desk.tell(
                tr("A passage needs a piece and a name."), tr("Write both, then add it.")
            )
            (self._name if piece else self._piece).setFocus()
            return
        try:
            settings = self._form.settings
            give_score = self.score.keeping()
        except PlainFailure as failure:
            self._desk.tell_failure(failure)
            return
        bench, edited = self._desk.workbench, self._edited
        wanted = self._no_retake.isChecked()

        def keep() -> Passage:
            if edited is None:
                kept = bench.passages.add(piece, name, bars, settings)
            else:
                kept = bench.passages.change(
                    replace(edited, piece=piece, name=name, bars=bars, settings=settings)
                )
            if kept.no_retake != wanted:
                kept = bench.no_retake.switch(kept.id, wanted)
            return give_score(kept)

        self._desk.jobs.store(keep, self._added)

    def _added(self, passage: Passage) -> None:
        self._desk.tell(tr("{name} is in the journal.").format(name=passage_text(passage)))
        self.made.emit(passage)
        self._desk.passagesChanged.emit()


def _line(hint: str) -> QLineEdit:
    field = QLineEdit()
    field.setMaxLength(120)
    field.setPlaceholderText(hint)
    return field
