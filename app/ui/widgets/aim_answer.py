"""The player's answer whether the aim of a take was met."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QButtonGroup, QWidget

from app.journal.kinds import AimMet
from app.ui.language import mark, tr
from app.ui.widgets.basics import Button, row

AIM_WORDS = (
    (AimMet.YES, mark("Met")),
    (AimMet.PARTLY, mark("Partly")),
    (AimMet.NO, mark("Not met")),
)
NO_PASSAGE = ""


class AimAnswer(QWidget):
    """Three buttons that answer whether the aim was met.

    Signals
    -------
    answered(object)
        An :class:`AimMet`.
    """

    answered = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self._group = QButtonGroup(self)
        box = row(self)
        for at, (_, source) in enumerate(AIM_WORDS):
            words = tr(source)
            button = Button(words, name=tr("Aim: {lower}").format(lower=words.lower()))
            button.setCheckable(True)
            self._group.addButton(button, at)
            box.addWidget(button)
        box.addStretch(1)
        self._group.idClicked.connect(lambda at: self.answered.emit(AIM_WORDS[at][0]))

    def show_answer(self, answer: AimMet | None) -> None:
        """Show what was answered."""
        self._group.setExclusive(False)
        for at, (value, _) in enumerate(AIM_WORDS):
            self._group.button(at).setChecked(value is answer)
        self._group.setExclusive(True)
