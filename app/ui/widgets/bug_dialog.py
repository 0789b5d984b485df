"""What the player sees when the program itself is at fault."""

import os
from pathlib import Path
from platform import platform, python_version

from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QDialog, QPlainTextEdit, QWidget

from app import __version__
from app.journal.private_paths import login_name, without_private_paths
from app.ui.language import tr
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Button, column, fill, heading, row, sentence


class BugDialog(QDialog):
    """Says that it was the program's fault and where the log is; never modal.

    Parameters
    ----------
    details : str
        A traceback. It is shown and copied without the names of the player's folders.
    log_file, journal : Path or None
        The log on this computer keeps the names: nobody but the player reads it.
    """

    def __init__(
        self,
        details: str,
        log_file: Path | None,
        parent: QWidget | None = None,
        *,
        journal: Path | None = None,
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("A fault in the program"))
        self.setModal(False)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setMinimumWidth(560)
        where = (
            tr("The log is at {file}.").format(file=log_file)
            if log_file
            else tr("The log went to the terminal.")
        )
        safe = tr(
            "Something went wrong that should not have. Your recordings are safe: finished "
            "files are never written again."
        )
        self.words = f"{safe} {where}"
        self.details = without_private_paths(
            f"Passagework {__version__}, Python {python_version()}, {platform()}\n\n{details}",
            home=Path.home(),
            journal=journal,
            user=login_name(os.environ),
        )
        text = sentence(self.words)
        text.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        shown = QPlainTextEdit(self.details)
        shown.setReadOnly(True)
        shown.setAccessibleName(tr("Details"))
        self.copy = Button(tr("Copy details"))
        self.copy.setToolTip(tr("Without your name and without the names of your folders"))
        self.copy.clicked.connect(self._copy)
        close = Button(tr("Close"))
        close.clicked.connect(self.close)
        box = column(self, margin=2 * GRID_PX)
        buttons = row()
        fill(buttons, 1, self.copy, close)
        fill(box, heading(tr("A fault in the program")), text, shown, buttons)

    def _copy(self) -> None:
        QGuiApplication.clipboard().setText(self.details)
        self.copy.setText(tr("Copied"))
