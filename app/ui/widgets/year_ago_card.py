"""A small card of the Practice page: what was played in this week a year ago."""

from typing import TYPE_CHECKING

from app.ui.desk import Desk
from app.ui.language import tr
from app.ui.models.attention import Attention
from app.ui.widgets.basics import Button, Card, fill, row, sentence

if TYPE_CHECKING:
    from app.services.looking_back import YearAgoView


class YearAgoCard(Card):
    """One line and one button; waits while anything else asks for attention."""

    def __init__(self, desk: Desk, attention: Attention) -> None:
        super().__init__()
        self._desk = desk
        self._attention = attention
        self._found: YearAgoView | None = None
        self._words = sentence()
        self._hear = Button(tr("Hear then and now"), "play", action_id="practice.year_ago")
        line = row()
        fill(line, self._words, self._hear)
        line.setStretch(0, 1)
        fill(self.box, line)
        self._hear.clicked.connect(self.hear)
        attention.add(self)

    @property
    def words(self) -> str:
        """What is offered; empty where there is nothing."""
        return self._words.text() if self._found is not None else ""

    def look(self) -> None:
        """Look whether there is anything for this week."""
        self._desk.jobs.store(self._read, self._take_over, subject="practice.year_ago")

    def _read(self) -> "YearAgoView | None":
        return self._desk.workbench.looking_back.this_week()

    def hear(self) -> None:
        """Hear the take of then, and the latest one after it."""
        if self._found is not None:
            self._desk.thenNowWanted.emit(self._found.then_take_id, self._found.now_take_id)

    def _take_over(self, found: "YearAgoView | None") -> None:
        self._found = found
        self._words.setText(found.sentence if found is not None else "")
        self._attention.want(self, found is not None)
