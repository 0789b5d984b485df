"""Chooses which markers are listed, drawn and walked through."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QLineEdit, QWidget

from app.journal.kinds import Author, MarkerState
from app.ui.language import tr
from app.ui.models.marker_wish import MarkerWish
from app.ui.theme import GRID_PX
from app.ui.widgets.choices import Choice
from app.ui.widgets.marker_words import author_words, category_word, state_words

_ALL = ""


class MarkerFilter(QWidget):
    """Three choices and a field for words.

    Signals
    -------
    changed()
        Other markers are wanted.
    """

    changed = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.category: Choice[str] = Choice(tr("Only this category"))
        self.state: Choice[str] = Choice(tr("Only this state"))
        self.author: Choice[str] = Choice(tr("Only this author"))
        states = [(state.value, words) for state, words in state_words().items()]
        self.state.offer([(_ALL, tr("all states")), *states])
        authors = [(author.value, words) for author, words in author_words().items()]
        self.author.offer([(_ALL, tr("all authors")), *authors])
        self.words = QLineEdit()
        self.words.setPlaceholderText(tr("words in it"))
        self.words.setAccessibleName(tr("Only markers with these words"))
        self.offer(())
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setSpacing(GRID_PX // 2)
        for at, field in enumerate((self.category, self.state, self.author, self.words)):
            grid.addWidget(field, at // 2, at % 2)
        for choice in (self.category, self.state, self.author):
            choice.picked.connect(lambda _: self.changed.emit())
        self.words.textChanged.connect(lambda _: self.changed.emit())

    def offer(self, categories: tuple[str, ...]) -> None:
        """Offer these categories."""
        self.category.offer(
            [(_ALL, tr("all categories")), *((name, category_word(name)) for name in categories)]
        )

    @property
    def wish(self) -> MarkerWish:
        """What is wanted."""
        state, author = self.state.key, self.author.key
        return MarkerWish(
            category=self.category.key or None,
            state=MarkerState(state) if state else None,
            author=Author(author) if author else None,
            words=self.words.text().strip(),
        )

    def clear(self) -> None:
        """Let everything through again."""
        if self.wish.is_open:
            return
        for choice in (self.category, self.state, self.author):
            choice.choose(_ALL)
        was_blocked = self.words.blockSignals(True)
        self.words.clear()
        self.words.blockSignals(was_blocked)
        self.changed.emit()
