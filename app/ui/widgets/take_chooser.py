"""Choose a take: its passage, its day, the one before, the next."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from app.services.take_lists import TakeLists, lists_of
from app.ui.language import tr
from app.ui.widgets.aim_answer import NO_PASSAGE
from app.ui.widgets.basics import Button, fill, row
from app.ui.widgets.choices import Choice, TakeChoice, passage_text


class TakeChooser(QWidget):
    """A passage, and its takes from the latest to the first.

    Signals
    -------
    picked(str)
        Id of the take to show.
    """

    picked = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self._lists = lists_of((), ())
        self._offered: TakeLists | None = None
        self._passage: Choice[str] = Choice(tr("Passage"))
        self._take = TakeChoice(tr("Take"))
        for choice in (self._passage, self._take):
            choice.setMinimumContentsLength(24)
        self._earlier = Button("", "previous", action_id="listen.previous_take")
        self._later = Button("", "next", action_id="listen.next_take")
        box = row(self)
        fill(box, self._passage, self._take, self._earlier, self._later)
        box.setStretch(0, 1)
        box.setStretch(1, 1)
        self._passage.picked.connect(self._passage_picked)
        self._take.picked.connect(self.picked.emit)
        self._earlier.clicked.connect(lambda: self.step(-1))
        self._later.clicked.connect(lambda: self.step(1))

    def know(self, lists: TakeLists) -> None:
        """Take over the journal's lists."""
        self._lists = lists

    @property
    def latest_id(self) -> str:
        """The latest take of all; empty where there is none."""
        return self._lists.latest_id

    @property
    def siblings(self) -> tuple[str, ...]:
        """Ids of the takes of the shown passage, latest first."""
        return self._take.keys

    def knows(self, take_id: str) -> bool:
        """Say whether this take is in the lists."""
        return take_id in self._lists.by_id

    def show_chosen(self, take_id: str) -> None:
        """Show this take as the chosen one."""
        chosen = self._lists.by_id.get(take_id)
        if chosen is None:
            return
        if self._offered is not self._lists:
            self._offered = self._lists
            self._offer_passages()
        self._passage.choose(chosen.passage_id or NO_PASSAGE)
        siblings = self._lists.of_passage(chosen.passage_id)[::-1]
        self._take.offer_takes(siblings, take_id)
        at = self._take.currentIndex()
        self._earlier.setEnabled(at < len(siblings) - 1)
        self._later.setEnabled(at > 0)

    def step(self, steps: int) -> None:
        """Go to a later (1) or earlier (-1) take of the passage."""
        at = self._take.currentIndex() - steps
        if 0 <= at < len(self._take.keys):
            self.picked.emit(self._take.keys[at])

    def _offer_passages(self) -> None:
        lists = self._lists
        entries = [(p.id, passage_text(p)) for p in lists.passages if lists.of_passage(p.id)]
        if lists.of_passage(None):
            entries.append((NO_PASSAGE, tr("No passage")))
        self._passage.offer(entries)

    def _passage_picked(self, passage_id: str) -> None:
        takes = self._lists.of_passage(None if passage_id == NO_PASSAGE else passage_id)
        if takes:
            self.picked.emit(takes[-1].id)
