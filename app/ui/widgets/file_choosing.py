"""Asks for recordings to import."""

from pathlib import Path

from PySide6.QtCore import QStandardPaths
from PySide6.QtWidgets import QFileDialog, QWidget

from app.ui.language import tr

_KINDS = "*.wav *.flac *.ogg *.oga *.opus *.mp3 *.m4a *.mp4 *.mov *.aac *.aif *.aiff"


def ask_for_files(parent: QWidget) -> list[Path]:
    """Ask for files; none where the player thought better of it."""
    kinds = tr("Recordings ({kinds});;All files (*)").format(kinds=_KINDS)
    names, _ = QFileDialog.getOpenFileNames(parent, tr("Import recordings"), _begin(), kinds)
    return [Path(name) for name in names]


def ask_for_folder(parent: QWidget) -> list[Path]:
    """Ask for a folder whose clips are to be imported; none where there is none."""
    title = tr("Import a folder of recordings")
    chosen = QFileDialog.getExistingDirectory(parent, title, _begin())
    return [Path(chosen)] if chosen else []


def _begin() -> str:
    """Return where clips from a phone mostly arrive."""
    downloads = QStandardPaths.writableLocation(QStandardPaths.StandardLocation.DownloadLocation)
    return downloads if downloads and Path(downloads).is_dir() else str(Path.home())
