"""What the player sees when the program itself is at fault."""

from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog, QPlainTextEdit, QWidget

from app.ui.language import tr
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Button, column, fill, heading, row, sentence


class BugDialog(QDialog):
    """Says that it was the program's fault and where the log is; never modal."""

    def __init__(self, details: str, log_file: Path | None, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("A fault in the program"))
        self.setModal(False)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setMinimumWidth(560)
        where = (
            tr("The log is at {log_file}.").format(log_file=log_file)
            if log_file
            else tr("The log went to the terminal.")
        )
        self.words = tr(
            "Something went wrong that should not have. Your recordings are safe: "
            "finished files are never written again. {where}"
        ).format(where=where)
        self.details = details
        text = sentence(self.words)
        text.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        shown = QPlainTextEdit(details)
        shown.setReadOnly(True)
        shown.setAccessibleName(tr("Details"))
        close = Button(tr("Close"))
        close.clicked.connect(self.close)
        box = column(self, margin=2 * GRID_PX)
        buttons = row()
        fill(buttons, 1, close)
        fill(box, heading(tr("A fault in the program")), text, shown, buttons)
