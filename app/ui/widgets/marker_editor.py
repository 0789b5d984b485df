"""Changes one marker."""

from dataclasses import replace

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QLineEdit, QWidget

from app.journal.kinds import Author, MarkerState
from app.journal.markers import HEAVIEST, LIGHTEST
from app.journal.records import Marker
from app.ui.language import tr
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Button, fill, labelled, row
from app.ui.widgets.choices import Choice
from app.ui.widgets.marker_words import author_words, category_word, state_words, weight_words

# What the one key for the state makes of each; the list offers all.
_THEN = {
    MarkerState.TO_WORK_ON: MarkerState.SETTLED,
    MarkerState.SETTLED: MarkerState.RETURNED,
    MarkerState.RETURNED: MarkerState.SETTLED,
}


class MarkerEditor(QWidget):
    """Category, weight, author, state and text of the chosen marker.

    Signals
    -------
    changed(Marker)
        As the player wants it now.
    moveWanted(), deleteWanted()
        To where it plays; away.
    """

    changed = Signal(object)
    moveWanted = Signal()
    deleteWanted = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.shown: Marker | None = None
        self.category: Choice[str] = Choice(tr("Category"))
        self.weight: Choice[int] = Choice(tr("Weight"))
        self.weight.offer(list(weight_words().items()))
        self.author: Choice[Author] = Choice(tr("Author"))
        self.author.offer(list(author_words().items()))
        self.state: Choice[MarkerState] = Choice(tr("State"))
        self.state.offer(list(state_words().items()))
        self.text = QLineEdit()
        self.text.setMaxLength(500)
        self.text.setPlaceholderText(tr("What is it, and what might help?"))
        for choice in (self.category, self.weight, self.author, self.state):
            choice.picked.connect(lambda _: self._commit())
        self.text.editingFinished.connect(self._commit)
        move = Button(tr("Move here"), action_id="listen.move_marker")
        move.clicked.connect(self.moveWanted)
        delete = Button(tr("Delete"), "delete", action_id="listen.delete_marker")
        delete.clicked.connect(self.deleteWanted)
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setSpacing(GRID_PX)
        grid.addLayout(labelled(tr("Category"), self.category), 0, 0)
        grid.addLayout(labelled(tr("Weight"), self.weight), 0, 1)
        grid.addLayout(labelled(tr("Author"), self.author), 1, 0)
        grid.addLayout(labelled(tr("State"), self.state), 1, 1)
        grid.addLayout(labelled(tr("Text"), self.text), 2, 0, 1, 2)
        buttons = row()
        fill(buttons, move, 1, delete)
        grid.addLayout(buttons, 3, 0, 1, 2)
        self.show_marker(None)

    def offer(self, categories: tuple[str, ...]) -> None:
        """Offer these categories."""
        self.category.offer([(name, category_word(name)) for name in categories])

    def show_marker(self, marker: Marker | None) -> None:
        """Show a marker, or none; what is being typed stays."""
        shown, self.shown = self.shown, marker
        is_same = marker is not None and shown is not None and marker.id == shown.id
        self.setEnabled(marker is not None)
        if not (is_same and self.text.hasFocus()):
            self.text.setText(marker.text if marker else "")
        if marker is None:
            return
        self.category.choose(marker.category)
        self.weight.choose(marker.weight)
        self.author.choose(marker.author)
        self.state.choose(marker.state)

    def change(self, marker: Marker) -> None:
        """Show the marker changed like this, and tell."""
        self.show_marker(marker)
        self.changed.emit(marker)

    def next_weight(self) -> None:
        """Make it weigh one more; after the heaviest comes the lightest."""
        if self.shown is not None:
            weight = self.shown.weight + 1 if self.shown.weight < HEAVIEST else LIGHTEST
            self.change(replace(self.shown, weight=weight))

    def next_state(self) -> None:
        """Settle it, or let what was settled return."""
        if self.shown is not None:
            self.change(replace(self.shown, state=_THEN[self.shown.state]))

    def _commit(self) -> None:
        if self.shown is None:
            return
        changed = replace(
            self.shown,
            category=self.category.key or self.shown.category,
            weight=self.weight.key or self.shown.weight,
            author=self.author.key or self.shown.author,
            state=self.state.key or self.shown.state,
            text=self.text.text().strip(),
        )
        if changed != self.shown:
            self.shown = changed
            self.changed.emit(changed)
