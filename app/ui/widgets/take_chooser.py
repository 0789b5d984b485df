"""Choose a take: its passage, its day, the one before, the next."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from app.journal.records import Passage
from app.services.views import TakeRow
from app.ui.language import tr
from app.ui.widgets.basics import Button, fill, row
from app.ui.widgets.choices import Choice, passage_text, take_text
from app.ui.widgets.take_pane import NO_PASSAGE


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
        self._takes: tuple[TakeRow, ...] = ()
        self._passages: tuple[Passage, ...] = ()
        self._passage: Choice[str] = Choice(tr("Passage"))
        self._take: Choice[str] = Choice(tr("Take"))
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

    def know(self, takes: tuple[TakeRow, ...], passages: tuple[Passage, ...]) -> None:
        """Take over the journal's lists."""
        self._takes = tuple(sorted(takes, key=lambda take: take.recorded_at, reverse=True))
        self._passages = passages

    @property
    def latest_id(self) -> str:
        """The latest take of all; empty where there is none."""
        return self._takes[0].id if self._takes else ""

    @property
    def siblings(self) -> tuple[str, ...]:
        """Ids of the takes of the shown passage, latest first."""
        return self._take.keys

    def knows(self, take_id: str) -> bool:
        """Say whether this take is in the lists."""
        return any(take.id == take_id for take in self._takes)

    def show_chosen(self, take_id: str) -> None:
        """Show this take as the chosen one."""
        chosen = next((take for take in self._takes if take.id == take_id), None)
        if chosen is None:
            return
        with_takes = {_passage_of(take) for take in self._takes}
        entries = [(p.id, passage_text(p)) for p in self._passages if p.id in with_takes]
        if NO_PASSAGE in with_takes:
            entries.append((NO_PASSAGE, tr("No passage")))
        self._passage.offer(entries, _passage_of(chosen))
        siblings = [take for take in self._takes if _passage_of(take) == _passage_of(chosen)]
        self._take.offer([(take.id, take_text(take)) for take in siblings], take_id)
        at = self._take.currentIndex()
        self._earlier.setEnabled(at < len(siblings) - 1)
        self._later.setEnabled(at > 0)

    def step(self, steps: int) -> None:
        """Go to a later (1) or earlier (-1) take of the passage."""
        at = self._take.currentIndex() - steps
        if 0 <= at < len(self._take.keys):
            self.picked.emit(self._take.keys[at])

    def _passage_picked(self, passage_id: str) -> None:
        for take in self._takes:
            if _passage_of(take) == passage_id:
                self.picked.emit(take.id)
                return


def _passage_of(take: TakeRow) -> str:
    return take.passage_id or NO_PASSAGE
