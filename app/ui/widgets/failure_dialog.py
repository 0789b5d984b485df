"""What the player sees when the program was clicked and its window cannot open."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog

from app.journal.failures import PlainFailure
from app.ui.language import tr
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Button, column, fill, heading, row, sentence


class FailureDialog(QDialog):
    """One plain sentence and the next step, where no window is there to say them."""

    def __init__(self, failure: PlainFailure) -> None:
        super().__init__()
        self.setWindowTitle(tr("Passagework"))
        self.setMinimumWidth(480)
        self.setAccessibleName(tr("Passagework could not open"))
        texts = [sentence(text) for text in (failure.sentence, failure.next_step) if text]
        for text in texts:
            text.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.words = " ".join(text.text() for text in texts)
        self.close_button = Button(tr("Close"), primary=True)
        self.close_button.setDefault(True)
        self.close_button.clicked.connect(self.close)
        box, buttons = column(self, margin=2 * GRID_PX), row()
        fill(buttons, 1, self.close_button)
        fill(box, heading(tr("Passagework could not open")), *texts, buttons)
