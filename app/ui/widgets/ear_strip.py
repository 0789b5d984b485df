"""What is said over the lanes while measurements wait for the player's own markers."""

from app.ui.language import tr
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Button, Card, fill, row, sentence


class EarStrip(Card):
    """One sentence and the way to the measurements."""

    def __init__(self) -> None:
        super().__init__()
        self.box.setContentsMargins(2 * GRID_PX, GRID_PX, GRID_PX, GRID_PX)
        self._words = sentence()
        self.show_it = Button(tr("Show"), "listen", action_id="listen.show_measured")
        self.nothing = Button(tr("Nothing to mark"), action_id="listen.heard_nothing")
        line = row()
        fill(line, self._words, self.show_it, self.nothing)
        line.setStretch(0, 1)
        self.box.addLayout(line)
        self.hide()

    def show_waiting(self, own_markers: int) -> None:
        """Say what to do next."""
        if own_markers:
            words = tr("Markers of your own: {count}. Show what was measured when you are done.")
        else:
            words = tr("First by ear: mark what you hear. The measurements come afterwards.")
        self._words.setText(words.format(count=own_markers))
        self.show_it.setEnabled(own_markers > 0)
        self.nothing.setVisible(own_markers == 0)
        self.show()

    @property
    def words(self) -> str:
        """The sentence."""
        return self._words.text()
