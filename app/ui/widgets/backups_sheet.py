"""The journal's backups, beside the window: make one, or go back to one."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QListWidget, QListWidgetItem, QWidget

from app.services.backing_up import BackupRow
from app.ui.desk import Desk
from app.ui.language import tr
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Button, column, fill, row, sentence, soft
from app.ui.widgets.focus_order import OrderedDialog
from app.ui.words import size_text


class BackupsSheet(OrderedDialog):
    """Lists the backups, the newest first; never modal.

    Going back takes two presses: the first says what will happen, the second does it.

    Signals
    -------
    restoreWanted(name)
        The player wants the journal as it was in this backup.
    """

    restoreWanted = Signal(str)

    def __init__(self, desk: Desk, parent: QWidget) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Backups"))
        self.setModal(False)
        self._desk = desk
        self._asked = False
        self.list = QListWidget()
        self.list.setAccessibleName(tr("Backups, the newest first"))
        self.list.currentRowChanged.connect(self._chosen)
        self.words = sentence()
        self.make = Button(tr("Make one now"))
        self.make.clicked.connect(self._make)
        self.back = Button(tr("Go back to this one"))
        self.back.clicked.connect(self._go_back)
        close = Button(tr("Close"), plain=True)
        close.clicked.connect(self.close)
        buttons = row()
        fill(buttons, self.make, self.back, 1, close)
        box = column(self, margin=2 * GRID_PX)
        fill(
            box,
            soft(
                tr(
                    "One is made on every day on which something changed. Those of the last"
                    " 7 days, the last 8 weeks and of every year are kept. They hold what you"
                    " wrote and counted; recordings are never touched."
                )
            ),
            self.list,
            self.words,
            buttons,
        )
        box.setStretch(1, 1)
        self.resize(560, 420)

    def open_sheet(self) -> None:
        """Read which backups there are and show them."""
        self._read()
        self.show()
        self.raise_()

    def _read(self) -> None:
        self._desk.jobs.store(self._desk.workbench.backups.list, self._show_rows, subject="backups")

    def _show_rows(self, rows: tuple[BackupRow, ...]) -> None:
        self.list.clear()
        for backup in rows:
            text = f"{backup.made_at:%Y-%m-%d %H:%M}   {size_text(backup.size_bytes)}"
            item = QListWidgetItem(f"{text}   {backup.reason}".rstrip())
            item.setData(Qt.ItemDataRole.UserRole, backup.name)
            self.list.addItem(item)
        may_write = not self._desk.workbench.read_only
        self.make.setEnabled(may_write)
        if rows:
            self.list.setCurrentRow(0)
        self._chosen()
        if not rows:
            self.words.setText(tr("There is no backup yet."))

    def _chosen(self) -> None:
        self._asked = False
        self.words.setText("")
        self.back.setText(tr("Go back to this one"))
        chosen = self.list.currentRow() >= 0
        self.back.setEnabled(chosen and not self._desk.workbench.read_only)

    def _make(self) -> None:
        self._desk.jobs.store(self._desk.workbench.backups.make, lambda _row: self._read())

    def _go_back(self) -> None:
        if not self._asked:
            self._asked = True
            self.words.setText(
                tr(
                    "Notes, markers, minutes and promises become what they were then."
                    " Recordings made since stay. What is replaced is set aside, so you can"
                    " come back. The window closes for a moment."
                )
            )
            self.back.setText(tr("Yes, go back to it"))
            return
        self.restoreWanted.emit(self.list.currentItem().data(Qt.ItemDataRole.UserRole))
