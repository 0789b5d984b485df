"""The pictures of a passage, one at a time: the weeks, the note map, before and after."""

from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFileDialog, QStackedWidget

from app.journal.failures import PlainFailure
from app.services.note_map import NoteMapView
from app.services.picture_saving import Picture, PictureKind, save_picture
from app.services.picture_tables import before_and_after
from app.services.views import CompareView
from app.ui.desk import Desk
from app.ui.language import mark, tr
from app.ui.widgets.basics import Button, Card, column, fill, row, sentence
from app.ui.widgets.choices import Choice
from app.ui.widgets.compare_map import NoteMapPlot
from app.ui.widgets.compare_pairs import BeforeAfterPlot
from app.ui.widgets.progress_bar import ThinProgressBar
from app.ui.widgets.trend_card import TrendPane
from app.ui.words import short_day_text

_KINDS = (PictureKind.WEEKS, PictureKind.NOTE_MAP, PictureKind.BEFORE_AFTER)
_FILE_KINDS = mark("Picture (*.png);;Drawing (*.svg);;Table (*.csv)")


class PicturesCard(Card):
    """Shows one picture and saves it.

    Signals
    -------
    placeWanted(str, str, float)
        Somebody wants to hear a take of the note map: the map's reference take, that
        take, and the moment in the reference.
    """

    placeWanted = Signal(str, str, float)

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self._desk = desk
        self._compared: CompareView | None = None
        self._map: NoteMapView | None = None
        self._passage_id: str | None = None
        self._kind: Choice[PictureKind] = Choice(tr("Picture"))
        names = (tr("Over the weeks"), tr("Note map by day"), tr("Before and after"))
        self._kind.offer(list(zip(_KINDS, names, strict=True)))
        self._words = sentence()
        self._bar = ThinProgressBar(tr("Laying the takes note against note"))
        self._bar.hide()
        self.trend = TrendPane(desk)
        self.note_map = NoteMapPlot(desk.theme.colours)
        self.pairs = BeforeAfterPlot(desk.theme.colours)
        self._panes = QStackedWidget()
        for pane in (self.trend, self.note_map, self.pairs):
            self._panes.addWidget(pane)
        self.large = Button("", "large", name=tr("Large"), action_id="compare.large_picture")
        self.large.setCheckable(True)
        save = Button("", "save", name=tr("Save picture"), action_id="compare.save_picture")
        top = row()
        fill(top, self._kind, self.trend.measure, self._words, self.large, save)
        top.setStretch(2, 1)
        box = column()
        fill(box, self._bar, self._panes)
        box.setStretch(1, 1)
        fill(self.box, top, box)
        self.box.setStretch(1, 1)
        self._kind.picked.connect(lambda _: self._show_kind())
        save.clicked.connect(self.ask_and_save)
        self.trend.told.connect(lambda _: self._say())
        self.note_map.chosen.connect(self._words.setText)
        self.note_map.placeWanted.connect(self._want_place)
        for plot in (self.note_map, self.pairs):
            desk.theme.changed.connect(plot.recolour)

    @property
    def kind(self) -> PictureKind:
        """Which picture is shown."""
        return self._kind.key or PictureKind.WEEKS

    @property
    def words(self) -> str:
        """What is said beside the picture."""
        return self._words.text()

    @property
    def picture(self) -> Picture | None:
        """What the picture shows; ``None`` where there is nothing yet."""
        shown: dict[PictureKind, Picture | None] = {
            PictureKind.WEEKS: self.trend.view,
            PictureKind.NOTE_MAP: self._map,
            PictureKind.BEFORE_AFTER: before_and_after(self._compared) if self._compared else None,
        }
        return shown[self.kind]

    def show_passage(self, passage_id: str | None, pair: tuple[str, str]) -> None:
        """Show a passage; the takes of the pair are marked over the weeks."""
        self.trend.show_passage(passage_id, pair)
        if passage_id != self._passage_id:
            self._passage_id = passage_id
            self.note_map.show_map(None)
            self.forget_map()

    def forget_map(self) -> None:
        """Make the map anew: takes came, went or were measured."""
        self._map = None
        self._ask_for_map()

    def show_compared(self, view: CompareView) -> None:
        """Show two takes before and after."""
        self._compared = view
        self.pairs.show_compared(view)
        self._say()

    def next_picture(self) -> None:
        """Show the next one of the three."""
        self._kind.choose(_KINDS[(_KINDS.index(self.kind) + 1) % len(_KINDS)])
        self._show_kind()

    def ask_and_save(self) -> None:
        """Ask for a file and save the picture there."""
        if self.picture is None:
            self._desk.tell(tr("There is no picture to save yet."))
            return
        name, chosen = QFileDialog.getSaveFileName(
            self, tr("Save picture"), f"{self.kind}.png", tr(_FILE_KINDS)
        )
        if name:
            path = Path(name)
            self.save(path if path.suffix else path.with_suffix(chosen[-5:-1]))

    def save(self, path: Path) -> None:
        """Save the picture; the message bar says that it is done."""
        picture = self.picture
        if picture is None:
            return
        self._desk.jobs.analyse(
            lambda _progress, _should_stop: save_picture(picture, path),
            lambda _: self._desk.tell(tr("Saved as {path}.").format(path=path)),
        )

    def _show_kind(self) -> None:
        self._panes.setCurrentIndex(_KINDS.index(self.kind))
        self.trend.measure.setVisible(self.kind is PictureKind.WEEKS)
        self._say()
        self._ask_for_map()

    def _ask_for_map(self) -> None:
        """Lay the takes note against note, once somebody looks at the map."""
        passage_id = self._passage_id
        if self.kind is not PictureKind.NOTE_MAP or passage_id is None or self._map is not None:
            return
        self._bar.setValue(0)
        self._bar.show()
        note_maps = self._desk.workbench.note_maps
        self._desk.jobs.analyse(
            lambda progress, should_stop: note_maps.of_passage(
                passage_id, None, progress, should_stop
            ),
            self._take_over_map,
            subject="compare.map",
            progress=self._bar.show_fraction,
            failed=self._map_failed,
            ended=self._bar.hide,
        )

    def _map_failed(self, failure: PlainFailure) -> None:
        self._words.setText(f"{failure.sentence} {failure.next_step}")

    def _take_over_map(self, view: NoteMapView) -> None:
        self._map = view
        self.note_map.show_map(view)
        self._say()

    def _want_place(self, take_id: str, at_s: float) -> None:
        if self._map is not None:
            self.placeWanted.emit(self._map.reference_id, take_id, at_s)

    def _say(self) -> None:
        self._words.setText(self._what_it_says())

    def _what_it_says(self) -> str:
        if self.kind is PictureKind.WEEKS:
            return self.trend.verdict
        if self.kind is PictureKind.NOTE_MAP:
            return _map_words(self._map)
        return self.pairs.accessibleDescription()


def _map_words(view: NoteMapView | None) -> str:
    if view is None:
        return tr("Each take is laid against the score or the reference take. This takes a moment.")
    if view.axis == "score":
        return " ".join(
            [tr("Up: sharp. Down: flat. Row to row: 30 cents. Notes of the score."), *view.left_out]
        )
    words = tr("Up: sharp. Down: flat. Row to row: 30 cents. Notes of {day}.")
    return " ".join([words.format(day=short_day_text(view.reference_day)), *view.left_out])
