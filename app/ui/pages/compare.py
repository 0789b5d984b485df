"""Compare: the same passage on two days, and over the weeks."""

from PySide6.QtWidgets import QWidget

from app.journal.failures import PlainFailure
from app.journal.records import Passage
from app.services.views import ChangeRow, CompareView, NotePairRow, PlaybackState, TakeRow
from app.ui.desk import Desk
from app.ui.pages.page import Page
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Button, Card, column, fill, heading, row, sentence, soft
from app.ui.widgets.choices import Choice, passage_text, take_text
from app.ui.widgets.compare_lanes import CompareLanes
from app.ui.widgets.compare_tables import change_columns, note_columns
from app.ui.widgets.page_stack import PageStack
from app.ui.widgets.progress_bar import ThinProgressBar
from app.ui.widgets.table import RowTable
from app.ui.widgets.transport import Transport
from app.ui.widgets.trend_card import TrendCard

_SIDE_WIDTH_PX = 432


class ComparePage(Page):
    """Take A beside take B, and the trend of their passage."""

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk, "Compare")
        self.view: CompareView | None = None
        self._takes: tuple[TakeRow, ...] = ()
        self._passages: tuple[Passage, ...] = ()
        self._wanted: tuple[str, str] | None = None
        self._shown: tuple[str, str] | None = None
        self._compared_from: tuple[tuple[object, ...], ...] = ()
        self._hears_b = False
        self._seek_after_load: float | None = None
        self._passage: Choice[str] = Choice("Passage")
        self._a: Choice[str] = Choice("Take A")
        self._b: Choice[str] = Choice("Take B")
        for choice in (self._passage, self._a, self._b):
            choice.setMinimumContentsLength(18)
        self._swap = Button("Swap", "switch", action_id="compare.swap")
        self._layout_button = Button("Overlaid", action_id="compare.layout")
        self._layout_button.setCheckable(True)
        self._layout_button.setChecked(True)
        self._switch = Button("Hear B", "switch", action_id="compare.switch")
        self._words = sentence()
        self._hover = soft(wrap=False)
        self._bar = ThinProgressBar("Comparing")
        self._bar.hide()
        self.lanes = CompareLanes(desk.theme.colours)
        self.transport = Transport(desk)
        self.changes: RowTable[ChangeRow] = RowTable(
            "Changes from A to B", change_columns(), dense=True
        )
        self.notes: RowTable[NotePairRow] = RowTable(
            "Notes of both takes", note_columns(), dense=True
        )
        self.trend = TrendCard(desk)
        self._build()
        self._connect()

    def _build(self) -> None:
        chooser = row()
        fill(chooser, self._passage, heading("A"), self._a, heading("B"), self._b, self._swap)
        for at in (0, 2, 4):
            chooser.setStretch(at, 1)
        card = Card()
        card.box.setContentsMargins(GRID_PX, GRID_PX, GRID_PX, GRID_PX)
        over = row()
        fill(over, self._hover, 1, self._switch, self._layout_button)
        fill(card.box, over, self.lanes)
        card.box.setStretch(1, 1)
        left = column()
        fill(left, card, self.transport, self.trend)
        left.setStretch(0, 3)
        left.setStretch(2, 2)
        side = Card("From A to B")
        side.setFixedWidth(_SIDE_WIDTH_PX)
        fill(side.box, self.changes, self._words, heading("Note by note, in cents"), self.notes)
        side.box.setStretch(1, 2)
        side.box.setStretch(4, 3)
        split = row(spacing=2 * GRID_PX)
        fill(split, left, side)
        split.setStretch(0, 1)
        desk = QWidget()
        box = column(desk)
        fill(box, chooser, self._bar, split)
        box.setStretch(2, 1)
        self._stack = PageStack(
            self.desk,
            "Two takes of one passage are needed",
            "Record or import the same passage on another day, then come back.",
            desk,
        )
        column(self, margin=2 * GRID_PX).addWidget(self._stack)

    def _connect(self) -> None:
        desk, bind = self.desk, self.desk.keys.bind
        desk.takesChanged.connect(self.refresh_if_open)
        desk.passagesChanged.connect(self.refresh_if_open)
        desk.theme.changed.connect(self.lanes.recolour)
        self._passage.picked.connect(self._passage_picked)
        self._a.picked.connect(lambda _: self._pair_picked())
        self._b.picked.connect(lambda _: self._pair_picked())
        self._swap.clicked.connect(self.swap)
        self._layout_button.clicked.connect(self._apply_layout)
        self._switch.clicked.connect(self.switch)
        self.lanes.seekWanted.connect(self._seek)
        self.lanes.selectionMade.connect(self._select)
        self.lanes.hovered.connect(lambda at: self._hover.setText(self.lanes.words_at(at)))
        self.transport.moved.connect(self._moved)
        self.notes.rowOpened.connect(lambda pair: self._seek(pair.a_start_s))
        self.notes.clicked.connect(lambda _: self._seek_chosen())
        bind(self, "compare.play", self.transport.toggle)
        bind(self, "compare.switch", self.switch)
        bind(self, "compare.swap", self.swap)
        bind(self, "compare.layout", self._layout_button.click)
        bind(self, "compare.trend", self.trend.next_measure)

    def open_page(self) -> None:
        """Take the player back from the page that was shown before."""
        super().open_page()
        if self.view is not None and self._wanted is None:
            heard = self.view.b if self._hears_b else self.view.a
            self.transport.load(heard.row.id, heard.duration_s)

    def refresh(self) -> None:
        """Read the lists again."""
        bench = self.desk.workbench
        self.desk.jobs.store(
            lambda: (bench.filing.takes(), bench.passages.list(), bench.comparing.trend_keys()),
            lambda found: self._take_over_lists(*found),
            subject="compare.lists",
        )

    def leave_page(self) -> None:
        """Nothing sounds from a page that is not seen."""
        super().leave_page()
        self.transport.stop()

    @property
    def words(self) -> str:
        """What is said beside the numbers: confounders, or why the two do not match."""
        return self._words.text()

    def show_pair(self, a_id: str, b_id: str) -> None:
        """Compare these two."""
        self._wanted = (a_id, b_id)
        self._shown = None
        self.refresh_if_open()

    def swap(self) -> None:
        """Make A to B and B to A."""
        if self._shown is not None:
            self.show_pair(self._shown[1], self._shown[0])

    def switch(self) -> None:
        """Hear the same musical place in the other take."""
        if self.view is None:
            return
        here = self.transport.position_s
        there = self.lanes.to_a(here) if self._hears_b else self.lanes.to_b(here)
        was_playing = self.transport.is_playing
        self._hears_b = not self._hears_b
        self._load_heard(there, play=was_playing)

    # -- which takes ------------------------------------------------------------

    def _take_over_lists(
        self,
        takes: tuple[TakeRow, ...],
        passages: tuple[Passage, ...],
        keys: tuple[tuple[str, str], ...],
    ) -> None:
        self._takes = tuple(sorted(takes, key=lambda take: take.recorded_at))
        self._passages = tuple(p for p in passages if len(self._of_passage(p.id)) >= 2)
        self._stack.show_content(bool(self._passages))
        if not self._passages:
            return
        self.trend.offer(keys)
        pair = self._wanted or self._shown
        known = {take.id: take for take in self._takes}
        passage_id = self._passage.key
        if pair is not None and set(pair) <= set(known):
            passage_id = known[pair[0]].passage_id
        self._passage.offer([(p.id, passage_text(p)) for p in self._passages], passage_id)
        self._offer_takes(pair)

    def _of_passage(self, passage_id: str | None) -> list[TakeRow]:
        return [take for take in self._takes if take.passage_id == passage_id]

    def _offer_takes(self, pair: tuple[str, str] | None) -> None:
        takes = self._of_passage(self._passage.key)
        ids = {take.id for take in takes}
        if pair is None or not set(pair) <= ids:
            pair = (takes[0].id, takes[-1].id)
        entries = [(take.id, take_text(take)) for take in takes]
        self._a.offer(entries, pair[0])
        self._b.offer(entries, pair[1])
        self.trend.show_passage(self._passage.key, pair)
        by_id = {take.id: take for take in takes}
        measured = tuple(_measured(by_id[take_id]) for take_id in pair)
        if pair != self._shown or measured != self._compared_from:
            self._compared_from = measured
            self._compare(*pair)

    def _passage_picked(self, _passage_id: str) -> None:
        self._wanted = None
        self._shown = None
        self._offer_takes(None)

    def _pair_picked(self) -> None:
        if self._a.key and self._b.key:
            self._compare(self._a.key, self._b.key)

    def _compare(self, a_id: str, b_id: str) -> None:
        self._wanted = None
        self._shown = (a_id, b_id)
        self._words.setText("")
        self._bar.setValue(0)
        self._bar.show()
        comparing = self.desk.workbench.comparing
        self.desk.jobs.analyse(
            lambda progress, should_stop: comparing.compare(a_id, b_id, progress, should_stop),
            self._take_over,
            subject="compare.pair",
            progress=self._bar.show_fraction,
            failed=self._failed,
        )

    def _failed(self, failure: PlainFailure) -> None:
        self._bar.hide()
        self._words.setText(f"{failure.sentence} {failure.next_step}")

    def _take_over(self, view: CompareView) -> None:
        self.view = view
        self._bar.hide()
        self.lanes.show_compared(view)
        self._layout_button.setEnabled(view.aligned)
        self._switch.setEnabled(view.aligned)
        self.changes.show_rows(view.changes)
        self.notes.show_rows(view.notes)
        words = [view.sentence, *view.confounders]
        self._words.setText("\n".join(word for word in words if word))
        self._hears_b = False
        self._load_heard(0.0, play=False)

    # -- sound ----------------------------------------------------------------------

    def _load_heard(self, position_s: float, *, play: bool) -> None:
        if self.view is None:
            return
        heard = self.view.b if self._hears_b else self.view.a
        self._switch.setText("Hear A" if self._hears_b else "Hear B")
        self._seek_after_load = position_s
        self._play_after_load = play
        self.transport.load(heard.row.id, heard.duration_s)

    def _moved(self, state: PlaybackState) -> None:
        if self._seek_after_load is not None:
            place, self._seek_after_load = self._seek_after_load, None
            self.transport.seek(place)
            if self._play_after_load:
                self.transport.toggle()
            return
        here = state.position_s
        self.lanes.set_playhead(self.lanes.to_a(here) if self._hears_b else here)

    def _seek(self, position_s: float) -> None:
        self.transport.seek(self.lanes.to_b(position_s) if self._hears_b else position_s)

    def _seek_chosen(self) -> None:
        if self.notes.chosen is not None:
            self._seek(self.notes.chosen.a_start_s)

    def _select(self, start_s: float, end_s: float) -> None:
        to_heard = self.lanes.to_b if self._hears_b else float
        self.transport.select((to_heard(start_s), to_heard(end_s)))
        self.transport.toggle_loop(True)
        self.lanes.set_selection((start_s, end_s), looping=True)

    def clear_selection(self) -> bool:
        """Drop the selection; False where there was none."""
        had_one = self.transport.selection is not None
        self.transport.select(None)
        self.lanes.set_selection(None, looping=False)
        return had_one

    def _apply_layout(self) -> None:
        self.lanes.set_overlaid(self._layout_button.isChecked())


def _measured(take: TakeRow) -> tuple[object, ...]:
    """Give what a comparison rests on."""
    return (take.state, take.intonation, take.tempo, take.dynamics)
