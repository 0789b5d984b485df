"""The strip that shows how far the sound of a long take has been read for its lane."""

from PySide6.QtWidgets import QFrame

from app.ui.language import tr
from app.ui.models.sound_columns import SoundColumns
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Button, fill, row, soft
from app.ui.widgets.progress_bar import ThinProgressBar


class SoundStrip(QFrame):
    """Shown only while the reading lasts; it can be cancelled."""

    def __init__(self, columns: SoundColumns) -> None:
        super().__init__()
        self._words = soft(wrap=False)
        self._bar = ThinProgressBar(tr("Progress"))
        cancel = Button(tr("Cancel"), action_id="work.cancel", plain=True)
        cancel.clicked.connect(columns.cancel)
        box = row(self, spacing=GRID_PX)
        fill(box, self._words, self._bar, cancel)
        box.setStretch(1, 1)
        columns.progressed.connect(self._show_fraction)
        columns.ended.connect(self.hide)
        self.hide()

    def _show_fraction(self, fraction: float) -> None:
        words = tr("Reading the sound for its lane; the take can be heard already")
        self._words.setText(words)
        self._bar.setAccessibleDescription(words)
        self._bar.show_fraction(fraction)
        self.show()
