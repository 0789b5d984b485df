"""The strip that shows long work: what, how far, and a cancel button."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFrame

from app.ui.language import tr
from app.ui.models.measure_queue import MeasureQueue
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Button, fill, row, soft
from app.ui.widgets.progress_bar import ThinProgressBar


class WorkStrip(QFrame):
    """Shows how far the measuring in the background is.

    Signals
    -------
    cancelWanted()
        The player wants it stopped.
    """

    cancelWanted = Signal()

    def __init__(self, queue: MeasureQueue) -> None:
        super().__init__()
        self._queue = queue
        self._words = soft(wrap=False)
        self._bar = ThinProgressBar(tr("Progress"))
        self._cancel = Button(tr("Cancel"), action_id="work.cancel", plain=True)
        self._cancel.clicked.connect(self.cancelWanted)
        box = row(self, spacing=2 * GRID_PX)
        box.setContentsMargins(2 * GRID_PX, 4, GRID_PX, 4)
        fill(box, self._words, self._bar, self._cancel)
        box.setStretch(1, 1)
        queue.changed.connect(self._refresh)
        self.hide()

    def cancel(self) -> None:
        """Stop measuring."""
        self._queue.cancel()

    def _refresh(self) -> None:
        left = self._queue.left_count
        self.setVisible(left > 0)
        if not left:
            return
        total = self._queue.done_count + left
        words = tr("Measuring take {done_count} of {total}").format(
            done_count=self._queue.done_count + 1, total=total
        )
        self._words.setText(words)
        self._bar.setAccessibleDescription(words)
        self._bar.show_fraction(self._queue.fraction)
