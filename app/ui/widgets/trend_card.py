"""The trend of a passage: choose a measure, see the weeks, read the verdict."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from app.services.views import TrendView
from app.ui.desk import Desk
from app.ui.language import tr
from app.ui.spoken import word
from app.ui.widgets.basics import column, fill, soft
from app.ui.widgets.choices import Choice
from app.ui.widgets.trend_plot import TrendPlot
from app.ui.words import reading_text


class TrendPane(QWidget):
    """Asks for the trend of a passage and draws it.

    Attributes
    ----------
    measure : Choice
        The box of measures; lies where the pane's owner puts it.

    Signals
    -------
    told(str)
        What the trend comes to, in words.
    """

    told = Signal(str)

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self._desk = desk
        self._passage_id: str | None = None
        self._chosen: tuple[str, ...] = ()
        self._notice = soft()
        self._notice.hide()
        self.view: TrendView | None = None
        self.measure: Choice[str] = Choice(tr("Measure over the weeks"))
        self.plot = TrendPlot(desk.theme.colours)
        self.plot.recolour(desk.theme.colours)
        box = column(self)
        fill(box, self.plot, self._notice)
        box.setStretch(0, 1)
        desk.theme.changed.connect(self.plot.recolour)
        self.measure.picked.connect(lambda _: self._ask())
        self.plot.takeChosen.connect(lambda take_id: desk.listenWanted.emit(take_id, 0.0))

    @property
    def verdict(self) -> str:
        """What the trend comes to, in words."""
        view = self.view
        if view is None:
            return ""
        reason = view.sentence or tr("slope {slope}, scatter {scatter}").format(
            slope=reading_text(view.slope), scatter=reading_text(view.scatter)
        )
        verdict = word(view.verdict)
        return f"{verdict[0].upper()}{verdict[1:]}: {reason}"

    @property
    def notice(self) -> str:
        """What else could look like the change."""
        return self._notice.text()

    def offer(self, keys: tuple[tuple[str, str], ...]) -> None:
        """Offer these measures."""
        self.measure.offer([(key, word(label)) for key, label in keys])

    def show_passage(self, passage_id: str | None, chosen: tuple[str, ...]) -> None:
        """Show a passage; the chosen takes are filled points."""
        self._passage_id = passage_id
        self._chosen = chosen
        self._ask()

    def next_measure(self) -> None:
        """Show the next measure of the list."""
        keys = self.measure.keys
        if keys and self.measure.key is not None:
            at = (keys.index(self.measure.key) + 1) % len(keys)
            self.measure.choose(keys[at])
            self._ask()

    def _ask(self) -> None:
        passage_id, key = self._passage_id, self.measure.key
        if passage_id is None or key is None:
            return
        comparing = self._desk.workbench.comparing
        self._desk.jobs.store(
            lambda: comparing.trend(passage_id, key), self._show, subject="compare.trend"
        )

    def _show(self, view: TrendView) -> None:
        self.view = view
        self.plot.show_trend(view, self._chosen)
        self._notice.setText(view.notice)
        self._notice.setVisible(bool(view.notice))
        self.told.emit(self.verdict)
