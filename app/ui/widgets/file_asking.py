"""Questions for a file or folder that leave the window usable and the sound going."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QStandardPaths, Qt
from PySide6.QtWidgets import QFileDialog, QWidget

Chosen = Callable[[Path], object]


def documents_dir() -> Path:
    """Return where the platform keeps documents."""
    return Path(
        QStandardPaths.writableLocation(QStandardPaths.StandardLocation.DocumentsLocation)
        or Path.home()
    )


def ask_new_file(
    parent: QWidget, title: str, proposed: str, kinds: str, chosen: Chosen
) -> QFileDialog:
    """Ask where to write a file; a file that is there is never offered to be replaced."""
    dialog = _dialog(parent, title, chosen)
    dialog.setAcceptMode(QFileDialog.AcceptMode.AcceptSave)
    dialog.setFileMode(QFileDialog.FileMode.AnyFile)
    # Services refuse to write over a file and say so.
    dialog.setOption(QFileDialog.Option.DontConfirmOverwrite)
    dialog.setNameFilter(kinds)
    dialog.setDefaultSuffix(Path(proposed).suffix.lstrip("."))
    dialog.selectFile(proposed)
    dialog.show()
    return dialog


def ask_file(parent: QWidget, title: str, kinds: str, chosen: Chosen) -> QFileDialog:
    """Ask for a file that is there."""
    dialog = _dialog(parent, title, chosen)
    dialog.setFileMode(QFileDialog.FileMode.ExistingFile)
    dialog.setNameFilter(kinds)
    dialog.show()
    return dialog


def ask_folder(parent: QWidget, title: str, chosen: Chosen) -> QFileDialog:
    """Ask for a folder."""
    dialog = _dialog(parent, title, chosen)
    dialog.setFileMode(QFileDialog.FileMode.Directory)
    dialog.setOption(QFileDialog.Option.ShowDirsOnly)
    dialog.show()
    return dialog


def _dialog(parent: QWidget, title: str, chosen: Chosen) -> QFileDialog:
    dialog = QFileDialog(parent, title, str(documents_dir()))
    dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
    dialog.setModal(False)
    dialog.fileSelected.connect(lambda name: chosen(Path(name)))
    return dialog
