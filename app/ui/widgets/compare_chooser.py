"""Which passage, and which two takes of it."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from app.services.take_lists import TakeLists, lists_of
from app.services.views import TakeRow
from app.ui.language import tr
from app.ui.widgets.basics import Button, fill, heading, row
from app.ui.widgets.choices import Choice, TakeChoice, passage_text

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
        self._lists = lists_of((), ())
        self._offered: TakeLists | None = None
        self._passage: Choice[str] = Choice(tr("Passage"))
        self._a = TakeChoice(tr("Take A"))
        self._b = TakeChoice(tr("Take B"))
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
        return self._lists.by_id.get(take_id)

    def offer(self, lists: TakeLists, wanted: Pair | None) -> Pair | None:
        """Offer what the journal holds; return the pair that is chosen now.

        ``None`` where no passage has two takes.
        """
        self._lists = lists
        if self._offered is not lists:
            self._offered = lists
            passages = [p for p in lists.passages if len(lists.of_passage(p.id)) > 1]
            self._passage.offer([(p.id, passage_text(p)) for p in passages])
        if not self._passage.keys:
            return None
        first = self.take(wanted[0]) if wanted is not None else None
        if wanted is not None and first is not None and self.take(wanted[1]) is not None:
            self._passage.choose(first.passage_id or "")
        return self._offer_takes(wanted)

    def of_passage(self, passage_id: str | None) -> tuple[TakeRow, ...]:
        """Give the takes of a passage in the order they were played."""
        return self._lists.of_passage(passage_id)

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
        self._a.offer_takes(takes, wanted[0])
        self._b.offer_takes(takes, wanted[1])
        return wanted

    def _tell(self) -> None:
        if self._a.key and self._b.key:
            self.pairPicked.emit(self._a.key, self._b.key)
