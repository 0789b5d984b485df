"""Which passage, and which two takes of it."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from app.journal.records import Passage
from app.services.views import TakeRow
from app.ui.language import tr
from app.ui.widgets.basics import Button, fill, heading, row
from app.ui.widgets.choices import Choice, passage_text, take_text

Pair = tuple[str, str]


class CompareChooser(QWidget):
    """Three boxes; the takes are in the order they were played.

    Signals
    -------
    pairPicked(str, str)
        The player chose other takes, or another passage: its first and its last.
    """

    pairPicked = Signal(str, str)

    def __init__(self) -> None:
        super().__init__()
        self._takes: tuple[TakeRow, ...] = ()
        self._passages: tuple[Passage, ...] = ()
        self._passage: Choice[str] = Choice(tr("Passage"))
        self._a: Choice[str] = Choice(tr("Take A"))
        self._b: Choice[str] = Choice(tr("Take B"))
        for choice in (self._passage, self._a, self._b):
            choice.setMinimumContentsLength(18)
        self.swap = Button(tr("Swap"), "switch", action_id="compare.swap")
        box = row(self)
        self.earlier = Button("", "previous", name=tr("Earlier"), action_id="compare.earlier")
        self.later = Button("", "next", name=tr("Later"), action_id="compare.later")
        steps = row(spacing=2)
        fill(steps, self.earlier, self.later)
        fill(box, self._passage, heading("A"), self._a, heading("B"), self._b, steps, self.swap)
        for at in (0, 2, 4):
            box.setStretch(at, 1)
        self._passage.picked.connect(lambda _: self.pairPicked.emit(*self._offer_takes(None)))
        self._a.picked.connect(lambda _: self._tell())
        self._b.picked.connect(lambda _: self._tell())

    @property
    def passage_id(self) -> str | None:
        """The passage in view."""
        return self._passage.key

    def take(self, take_id: str) -> TakeRow | None:
        """Give a take of the journal."""
        return next((take for take in self._takes if take.id == take_id), None)

    def offer(
        self, takes: tuple[TakeRow, ...], passages: tuple[Passage, ...], wanted: Pair | None
    ) -> Pair | None:
        """Offer what the journal holds; return the pair that is chosen now.

        ``None`` where no passage has two takes.
        """
        self._takes = tuple(sorted(takes, key=lambda take: take.recorded_at))
        self._passages = tuple(p for p in passages if len(self.of_passage(p.id)) >= 2)
        if not self._passages:
            return None
        known = {take.id: take for take in self._takes}
        passage_id = self._passage.key
        if wanted is not None and set(wanted) <= set(known):
            passage_id = known[wanted[0]].passage_id
        self._passage.offer([(p.id, passage_text(p)) for p in self._passages], passage_id)
        return self._offer_takes(wanted)

    def of_passage(self, passage_id: str | None) -> list[TakeRow]:
        """Give the takes of a passage in the order they were played."""
        return [take for take in self._takes if take.passage_id == passage_id]

    def ends(self) -> Pair:
        """Give the first and the latest take of the passage in view."""
        takes = self.of_passage(self._passage.key)
        return takes[0].id, takes[-1].id

    def beside(self, pair: Pair, steps: int) -> str | None:
        """Give the take so many steps from B in the order of dates, A left out."""
        others = [take.id for take in self.of_passage(self._passage.key) if take.id != pair[0]]
        at = others.index(pair[1]) + steps if pair[1] in others else -1
        return others[at] if 0 <= at < len(others) else None

    def choose(self, pair: Pair) -> None:
        """Show another pair of the same passage as chosen, without telling."""
        self._a.choose(pair[0])
        self._b.choose(pair[1])

    def _offer_takes(self, wanted: Pair | None) -> Pair:
        takes = self.of_passage(self._passage.key)
        if wanted is None or not set(wanted) <= {take.id for take in takes}:
            wanted = self.ends()
        entries = [(take.id, take_text(take)) for take in takes]
        self._a.offer(entries, wanted[0])
        self._b.offer(entries, wanted[1])
        return wanted

    def _tell(self) -> None:
        if self._a.key and self._b.key:
            self.pairPicked.emit(self._a.key, self._b.key)
