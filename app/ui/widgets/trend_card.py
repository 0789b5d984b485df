"""The trend of a passage: choose a measure, see the weeks, read the verdict."""

from app.services.views import TrendView
from app.services.wording import reading_text
from app.ui.desk import Desk
from app.ui.widgets.basics import Card, fill, heading, row, sentence, soft
from app.ui.widgets.choices import Choice
from app.ui.widgets.trend_plot import TrendPlot


class TrendCard(Card):
    """Asks for the trend of a passage and draws it."""

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self._desk = desk
        self._passage_id: str | None = None
        self._chosen: tuple[str, ...] = ()
        self._measure: Choice[str] = Choice("Measure of the trend")
        self._verdict = sentence()
        self._notice = soft()
        self._notice.hide()
        self.plot = TrendPlot(desk.theme.colours)
        self.plot.recolour(desk.theme.colours)
        top = row()
        fill(top, heading("Over the weeks"), self._measure, self._verdict)
        top.setStretch(2, 1)
        fill(self.box, top, self.plot, self._notice)
        self.box.setStretch(1, 1)
        desk.theme.changed.connect(self.plot.recolour)
        self._measure.picked.connect(lambda _: self._ask())
        self.plot.takeChosen.connect(lambda take_id: desk.listenWanted.emit(take_id, 0.0))

    @property
    def verdict(self) -> str:
        """What the trend comes to, in words."""
        return self._verdict.text()

    @property
    def notice(self) -> str:
        """What else could look like the change."""
        return self._notice.text()

    def offer(self, keys: tuple[tuple[str, str], ...]) -> None:
        """Offer these measures."""
        self._measure.offer(list(keys))

    def show_passage(self, passage_id: str | None, chosen: tuple[str, ...]) -> None:
        """Show a passage; the chosen takes are filled points."""
        self._passage_id = passage_id
        self._chosen = chosen
        self._ask()

    def next_measure(self) -> None:
        """Show the next measure of the list."""
        keys = self._measure.keys
        if keys and self._measure.key is not None:
            at = (keys.index(self._measure.key) + 1) % len(keys)
            self._measure.choose(keys[at])
            self._ask()

    def _ask(self) -> None:
        passage_id, key = self._passage_id, self._measure.key
        if passage_id is None or key is None:
            return
        comparing = self._desk.workbench.comparing
        self._desk.jobs.store(
            lambda: comparing.trend(passage_id, key), self._show, subject="compare.trend"
        )

    def _show(self, view: TrendView) -> None:
        self.plot.show_trend(view, self._chosen)
        reason = view.sentence or (
            f"slope {reading_text(view.slope)}, scatter {reading_text(view.scatter)}"
        )
        self._verdict.setText(f"{view.verdict.capitalize()}: {reason}")
        self._notice.setText(view.notice)
        self._notice.setVisible(bool(view.notice))
