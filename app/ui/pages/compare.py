"""Compare: the same passage on two days, and over the weeks."""

from PySide6.QtWidgets import QStackedWidget, QWidget

from app.journal.failures import PlainFailure
from app.services.following_views import AlignedPair, ShapeView
from app.services.take_lists import TakeLists
from app.services.views import CompareView
from app.ui.desk import Desk
from app.ui.language import tr
from app.ui.models.comparisons import Comparisons
from app.ui.pages.compare_keys import bind_keys
from app.ui.pages.compare_playback import ComparePlayback
from app.ui.pages.compare_sections import CompareSections, sections_of
from app.ui.pages.compare_together import read_together
from app.ui.pages.page import Page, Parts
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Button, column, fill, row
from app.ui.widgets.compare_blind import BlindPanel
from app.ui.widgets.compare_chooser import CompareChooser, Pair
from app.ui.widgets.compare_lanes import CompareLanes
from app.ui.widgets.compare_lanes_card import LanesCard
from app.ui.widgets.compare_pictures import PicturesCard
from app.ui.widgets.page_stack import PageStack
from app.ui.widgets.progress_bar import ThinProgressBar
from app.ui.widgets.transport import Transport

_SIDE_WIDTH_PX = 432


class ComparePage(Page):
    """Take A beside take B, and the trend of their passage."""

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk, tr("Compare"))

    def make_parts(self) -> Parts:
        """See :meth:`Page.make_parts`."""
        desk = self.desk
        self.view: CompareView | None = None
        self._wanted: Pair | None = None
        self._shown: Pair | None = None
        self._compared_from: tuple[tuple[object, ...], ...] = ()
        self._begins = False
        self._place_s: float | None = None
        self._comparisons = Comparisons(desk)
        self._chooser = CompareChooser()
        self._blind = Button(tr("Blind ear"), action_id="compare.blind")
        self._bar = ThinProgressBar(tr("Comparing"))
        self._bar.hide()
        yield
        self.lanes = CompareLanes(desk.theme.colours)
        yield
        self.transport = Transport(desk)
        self.playback = ComparePlayback(desk, self.lanes, self.transport)
        yield
        panes = yield from sections_of(desk)
        self.sections = CompareSections(desk, panes)
        yield
        self.changes = self.sections.change.changes
        self.notes = self.sections.notes.notes
        self.pictures = PicturesCard(desk)
        self.trend = self.pictures.trend
        yield
        self._lanes_card = LanesCard(self.lanes)
        self.layout_button = self._lanes_card.layout_button
        self.blind = BlindPanel(desk)
        yield
        self._views = QStackedWidget()
        yield from self._build()
        yield
        self._connect()
        bind_keys(self)
        self.stops = (self.transport.stop, self.blind.transport.stop)

    def _build(self) -> Parts:
        # From the outside in: what is moved to another parent is styled anew.
        desk = QWidget()
        self._stack = PageStack(
            self.desk,
            tr("Two takes of one passage are needed"),
            tr("Record or import the same passage on another day, then come back."),
            self._views,
        )
        column(self, margin=2 * GRID_PX).addWidget(self._stack)
        self._views.addWidget(desk)
        yield
        self._views.addWidget(self.blind)
        yield
        left, split, box = column(), row(spacing=2 * GRID_PX), column(desk)
        split.addLayout(left)
        fill(box, self._chooser, self._bar, split)
        box.setStretch(2, 1)
        yield
        fill(left, self._lanes_card, self.transport)
        yield
        left.addWidget(self.pictures)
        left.setStretch(0, 3)
        left.setStretch(2, 2)
        yield
        self.sections.setFixedWidth(_SIDE_WIDTH_PX)
        self.sections.tabs.addWidget(self._blind)
        split.addWidget(self.sections)
        split.setStretch(0, 1)
        yield from self.sections.add_sections()

    def _connect(self) -> None:
        desk = self.desk
        desk.takesChanged.connect(self.refresh_if_open)
        desk.passagesChanged.connect(self.refresh_if_open)
        desk.theme.changed.connect(self.lanes.recolour)
        self._chooser.pairPicked.connect(lambda a, b: self._compare((a, b)))
        self._chooser.swap.clicked.connect(self.swap)
        self._chooser.earlier.clicked.connect(lambda: self.step(-1))
        self._chooser.later.clicked.connect(lambda: self.step(1))
        self._lanes_card.then_now.clicked.connect(self.play_then_and_now)
        self._blind.clicked.connect(self.toggle_blind)
        self.layout_button.clicked.connect(self._apply_layout)
        self._lanes_card.switch.clicked.connect(self.switch)
        self.pictures.large.toggled.connect(lambda on: self._lanes_card.setVisible(not on))
        self.pictures.placeWanted.connect(self._hear_place)
        desk.takesChanged.connect(self.pictures.forget_map)
        desk.takesChanged.connect(self.sections.read_again)
        self.playback.heardChanged.connect(self._name_the_other)
        self.lanes.hovered.connect(
            lambda at: self._lanes_card.hover.setText(self.lanes.words_at(at))
        )
        self.sections.placeWanted.connect(self.playback.seek)
        self.sections.placeInBWanted.connect(self.playback.hear_in_b)
        self.blind.closed.connect(self.toggle_blind)

    def open_page(self) -> None:
        """Take the player back from the page that was shown before."""
        super().open_page()
        if self.is_blind:
            self.toggle_blind()
        elif self.view is not None and self._wanted is None:
            self.playback.load()

    def refresh(self) -> None:
        """Read the lists again."""
        bench = self.desk.workbench
        self.desk.jobs.store(
            lambda: (bench.filing.lists(), bench.comparing.trend_keys()),
            lambda found: self._take_over_lists(*found),
            subject="compare.lists",
        )

    @property
    def words(self) -> str:
        """What is said beside the numbers: confounders, or why the two do not match."""
        return self.sections.change.words

    def show_pair(self, a_id: str, b_id: str) -> None:
        """Compare these two."""
        self._wanted = (a_id, b_id)
        self._shown = None
        self.refresh_if_open()

    def hear_pair(self, a_id: str, b_id: str) -> None:
        """Compare these two and play one after the other."""
        self._begins = True
        self.show_pair(a_id, b_id)

    def _hear_place(self, reference_id: str, take_id: str, at_s: float) -> None:
        """Compare the note map's take with the one it was laid against, at a note."""
        self._place_s = at_s
        if take_id != reference_id:
            self.show_pair(reference_id, take_id)
        elif self._shown is not None:
            other = next(one for one in self._shown[::-1] if one != reference_id)
            self.show_pair(reference_id, other)

    def swap(self) -> None:
        """Make A to B and B to A."""
        if self._shown is not None:
            self.show_pair(self._shown[1], self._shown[0])

    def play(self) -> None:
        """Play or pause."""
        (self.blind.transport if self.is_blind else self.transport).toggle()

    def switch(self) -> None:
        """Hear the same musical place in the other take."""
        self.playback.switch()

    def step(self, steps: int) -> None:
        """Make an earlier or later take to B, and hear it at the same place."""
        if self._shown is None or self.is_blind:
            return
        b_id = self._chooser.beside(self._shown, steps)
        if b_id is None:
            where = tr("This is the latest take.") if steps > 0 else tr("This is the first take.")
            self.desk.tell(where)
            return
        pair = (self._shown[0], b_id)
        self._chooser.choose(pair)
        self._compare(pair, stay=True)

    def play_then_and_now(self) -> None:
        """Hear the earliest take of the passage, then the latest."""
        if self._shown is None or self.is_blind:
            return
        pair = self._chooser.ends()
        if self.view is not None and pair == (self.view.a.row.id, self.view.b.row.id):
            self.playback.show(self.view)
            self.playback.play_then_and_now()
        else:
            self.hear_pair(*pair)

    @property
    def is_blind(self) -> bool:
        """True while dates and lanes are hidden."""
        return self._views.currentWidget() is self.blind

    def toggle_blind(self) -> None:
        """Listen without dates and lanes, or go back to them."""
        passage_id = self._chooser.passage_id
        if self.is_blind:
            self.blind.end()
            self._views.setCurrentIndex(0)
            self.playback.load()
        elif passage_id is not None:
            self.transport.stop()
            self._views.setCurrentWidget(self.blind)
            self.blind.begin(passage_id)
        self.setFocus()

    def clear_selection(self) -> bool:
        """Drop the selection; False where there was none."""
        return self.playback.clear_selection()

    # -- which takes ------------------------------------------------------------

    def _take_over_lists(self, lists: TakeLists, keys: tuple[tuple[str, str], ...]) -> None:
        pair = self._chooser.offer(lists, self._wanted or self._shown)
        self._stack.show_content(pair is not None)
        if pair is None:
            return
        self.trend.offer(keys)
        if pair != self._shown or self._measured(pair) != self._compared_from:
            self._compare(pair)
        else:
            self.pictures.show_passage(self._chooser.passage_id, pair)

    def _measured(self, pair: Pair) -> tuple[tuple[object, ...], ...]:
        """Give what a comparison rests on."""
        found = [self._chooser.take(take_id) for take_id in pair]
        return tuple((t.state, t.intonation, t.tempo, t.dynamics) for t in found if t is not None)

    def _compare(self, pair: Pair, *, stay: bool = False) -> None:
        self._wanted = None
        self._shown = pair
        self._compared_from = self._measured(pair)
        self.pictures.show_passage(self._chooser.passage_id, pair)
        self.sections.change.say("")
        self._bar.setValue(0)
        self._bar.show()
        self._comparisons.want(
            pair,
            lambda view: self._take_over(view, stay=stay),
            failed=self._failed,
            progress=self._bar.show_fraction,
        )

    def _failed(self, failure: PlainFailure) -> None:
        self._bar.hide()
        self._begins, self._place_s = False, None
        self.sections.change.say(f"{failure.sentence} {failure.next_step}")

    def _take_over(self, view: CompareView, *, stay: bool) -> None:
        self.view = view
        self._bar.hide()
        self.layout_button.setEnabled(view.aligned)
        self._lanes_card.switch.setEnabled(view.aligned)
        self.sections.show_compared(view)
        self.pictures.show_compared(view)
        read_together(self.desk, view, self._show_together)
        self.playback.show(view, stay=stay)
        if self._begins:
            self._begins = False
            self.playback.play_then_and_now()
        if self._place_s is not None:
            place_s, self._place_s = self._place_s, None
            self.playback.want(place_s)
        pair = (view.a.row.id, view.b.row.id)
        near = (self._chooser.beside(pair, steps) for steps in (1, -1))
        self._comparisons.prepare((pair[0], b_id) for b_id in near if b_id is not None)

    def _show_together(self, pair: AlignedPair, shape: ShapeView) -> None:
        self.lanes.show_together(pair, shape)
        self.sections.change.show_together(pair, shape)

    def _name_the_other(self, hears_b: bool) -> None:
        self._lanes_card.switch.setText(tr("Hear A") if hears_b else tr("Hear B"))

    def _apply_layout(self) -> None:
        self.lanes.set_overlaid(self.layout_button.isChecked())
