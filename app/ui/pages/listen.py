"""Listen: hear a take, see it, say what is wrong in one key."""

from PySide6.QtWidgets import QWidget

from app.journal.records import Marker, Passage
from app.services.views import PlaybackState, TakeRow, TakeView
from app.ui.desk import Desk
from app.ui.models.marker_desk import MarkerDesk
from app.ui.models.sound_columns import SoundColumns
from app.ui.pages.listen_keys import MARKERS, bind_listen_keys
from app.ui.pages.page import Page
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Button, Card, column, fill, row, soft
from app.ui.widgets.choices import take_summary
from app.ui.widgets.markers_pane import MarkersPane
from app.ui.widgets.notes_pane import NotesPane
from app.ui.widgets.numbers_pane import NumbersPane
from app.ui.widgets.page_stack import PageStack
from app.ui.widgets.side_tabs import SideTabs
from app.ui.widgets.take_chooser import TakeChooser
from app.ui.widgets.take_lanes import SOUND, TakeLanes
from app.ui.widgets.take_pane import TakePane
from app.ui.widgets.transport import Transport

_SIDE_WIDTH_PX = 336
_LEAST_SELECTION_S = 0.05


class ListenPage(Page):
    """The page where a take is heard, looked at and marked."""

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk, "Listen")
        self.view: TakeView | None = None
        self._wanted_id = ""
        self._wanted_s: float | None = None
        self._passages: tuple[Passage, ...] = ()
        self._placed_id = ""
        self.chooser = TakeChooser()
        self._compare = Button("Compare", "compare", action_id="listen.compare")
        self._readings = soft(wrap=False)
        self._hover = soft(wrap=False)
        self.lanes = TakeLanes(desk.theme.colours)
        self.transport = Transport(desk)
        self.notes = NotesPane()
        self.markers = MarkersPane()
        self.numbers = NumbersPane()
        self.take_pane = TakePane(desk)
        self._columns = SoundColumns(desk, self.lanes)
        self._marker_desk = MarkerDesk(desk)
        self._build()
        self._connect()
        self._connect_markers()
        bind_listen_keys(self)

    def _build(self) -> None:
        head = row()
        fill(head, self.chooser, self._compare)
        head.setStretch(0, 1)
        card = Card()
        card.box.setContentsMargins(GRID_PX, GRID_PX, GRID_PX, GRID_PX)
        over = row()
        fill(over, self._hover, 1, self._readings)
        fill(card.box, over, self.lanes)
        card.box.setStretch(1, 1)
        left = column(spacing=GRID_PX)
        fill(left, head, card, self.transport)
        left.setStretch(1, 1)
        self.side = SideTabs(
            (
                ("Notes", "listen.notes", self.notes),
                ("Markers", "listen.markers", self.markers),
                ("Numbers", "listen.numbers", self.numbers),
                ("Take", "listen.take", self.take_pane),
            )
        )
        self.side.setFixedWidth(_SIDE_WIDTH_PX)
        desk = QWidget()
        split = row(desk, spacing=2 * GRID_PX)
        fill(split, left, self.side)
        split.setStretch(0, 1)
        self._stack = PageStack(
            self.desk,
            "No takes yet",
            "Record one on the Practice page, or drop recordings anywhere on this window.",
            desk,
        )
        column(self, margin=2 * GRID_PX).addWidget(self._stack)

    def _connect(self) -> None:
        desk = self.desk
        desk.takesChanged.connect(self.refresh_if_open)
        desk.passagesChanged.connect(self.refresh_if_open)
        desk.theme.changed.connect(self.lanes.recolour)
        self.chooser.picked.connect(self.show_take)
        self._compare.clicked.connect(self.compare_with_first)
        self._columns.read.connect(self.lanes.show_waveform)
        self.lanes.seekWanted.connect(self.transport.seek)
        self.lanes.selectionMade.connect(lambda start, end: self._select((start, end)))
        self.lanes.hovered.connect(lambda at: self._hover.setText(self.lanes.words_at(at)))
        self.transport.moved.connect(self._moved)
        self.notes.seekWanted.connect(self.transport.seek)

    def _connect_markers(self) -> None:
        self.desk.markersChanged.connect(lambda _id: self._marker_desk.reread())
        self._marker_desk.read.connect(self._show_markers)
        self._marker_desk.placed.connect(self._marker_placed)
        self.lanes.markerClicked.connect(self._marker_clicked)
        self.markers.seekWanted.connect(self.transport.seek)
        self.markers.chosen.connect(self.lanes.choose_marker)
        self.markers.changed.connect(self._marker_desk.change)
        self.markers.moveWanted.connect(self.move_marker)
        self.markers.deleted.connect(self._marker_desk.delete)

    # -- which take ---------------------------------------------------------

    def refresh(self) -> None:
        """Read the lists again, and the take that is shown."""
        bench = self.desk.workbench
        self.desk.jobs.store(
            lambda: (bench.filing.takes(), bench.passages.list()),
            lambda found: self._take_over_lists(*found),
            subject="listen.lists",
        )

    def leave_page(self) -> None:
        """Nothing sounds from a page that is not seen."""
        super().leave_page()
        self.transport.stop()

    def want(self, take_id: str, position_s: float) -> None:
        """Show this take, at this moment, when the page is opened next."""
        self._wanted_id = take_id
        self._wanted_s = position_s

    def show_take(self, take_id: str) -> None:
        """Open a take."""
        self._wanted_id = take_id
        listening = self.desk.workbench.listening
        self.desk.jobs.store(
            lambda: listening.open_take(take_id), self._take_over, subject="listen.take"
        )

    def _take_over_lists(self, takes: tuple[TakeRow, ...], passages: tuple[Passage, ...]) -> None:
        self._passages = passages
        self.chooser.know(takes, passages)
        self._stack.show_content(bool(takes))
        if not takes:
            self.view = None
            self._wanted_id = self._marker_desk.take_id = ""
            self.transport.stop()
            return
        if not self.chooser.knows(self._wanted_id):
            self._wanted_id = self.chooser.latest_id
        self.show_take(self._wanted_id)

    def _take_over(self, view: TakeView) -> None:
        is_same = self.view is not None and self.view.row.id == view.row.id
        self.view = view
        self._marker_desk.take_id = view.row.id
        self._marker_desk.categories = view.categories
        if is_same:
            self.lanes.show_measured(view)
        else:
            self.lanes.show_take(view)
            self.lanes.set_lane_words(SOUND, "Sound", "Reading the sound\N{HORIZONTAL ELLIPSIS}")
            self._columns.show_take(view.row.id)
            self.lanes.set_selection(None, looping=False)
        self.transport.load(view.row.id, view.duration_s)
        self.chooser.show_chosen(view.row.id)
        self._compare.setEnabled(len(self.chooser.siblings) > 1)
        self.notes.show_notes(view.notes, "" if view.notes else view.notes_sentence)
        self.numbers.show_summary(view.summary)
        self.take_pane.show_take(view, self._passages)
        self._readings.setText(take_summary(view.row))
        self._readings.setToolTip(view.row.notice)
        self._show_markers(view.markers)
        self._go_where_wanted()

    def _go_where_wanted(self) -> None:
        if self._wanted_s is not None and self.transport.is_ready:
            wanted, self._wanted_s = self._wanted_s, None
            self.transport.seek(wanted)

    # -- playing ----------------------------------------------------------------

    def _moved(self, state: PlaybackState) -> None:
        if self.view is None:
            return
        self._go_where_wanted()
        self.lanes.set_playhead(state.position_s)
        if state.playing:
            self.lanes.follow(state.position_s)
        self.lanes.mark_current(self.lanes.note_at(state.position_s))
        self.notes.follow(state.position_s)

    @property
    def hover_text(self) -> str:
        """What lies under the pointer, in words."""
        return self._hover.text()

    def clear_selection(self) -> bool:
        """Drop the selection; False where there was none."""
        had_one = self.transport.selection is not None
        self._select(None)
        return had_one

    def _select(self, selection: tuple[float, float] | None) -> None:
        self.transport.select(selection)
        self.lanes.set_selection(selection, looping=self.transport.is_looping)

    def select_edge(self, edge: int) -> None:
        """Let the selection start (0) or end (1) here."""
        here = self.transport.position_s
        start, end = self.transport.selection or (0.0, self.lanes.duration_s)
        start, end = (here, end) if edge == 0 else (start, here)
        if end - start > _LEAST_SELECTION_S:
            self._select((start, end))

    def toggle_loop(self) -> None:
        """Loop the selection, or stop looping."""
        self.transport.toggle_loop(not self.transport.is_looping)
        self.lanes.set_selection(self.transport.selection, looping=self.transport.is_looping)

    def step_note(self, steps: int) -> None:
        """Go to the next or earlier note."""
        start_s = self.notes.start_near(self.transport.position_s, steps)
        if start_s is not None:
            self.transport.seek(start_s)

    # -- markers ------------------------------------------------------------------

    def mark(self, number: int) -> None:
        """Put a marker of the category with this number where it plays."""
        self._marker_desk.place(
            number,
            self.transport.position_s,
            is_playing=self.transport.is_playing,
            selection=self.transport.selection,
        )

    def _marker_placed(self, marker: Marker) -> None:
        self._placed_id = marker.id
        self.side.show_pane(MARKERS)

    def _show_markers(self, markers: tuple[Marker, ...]) -> None:
        if self.view is None:
            return
        self.lanes.set_markers(markers, self.view.categories)
        self.markers.show_markers(markers, self.view.categories)
        if self._placed_id and self.markers.choose(self._placed_id):
            self.lanes.choose_marker(self._placed_id)
            self._placed_id = ""

    def _marker_clicked(self, marker_id: str) -> None:
        self.side.show_pane(MARKERS)
        if self.markers.choose(marker_id) and self.markers.shown is not None:
            self.lanes.choose_marker(marker_id)
            self.transport.seek(self.markers.shown.start_s)

    def step_marker(self, steps: int) -> None:
        """Go to the next or earlier marker."""
        marker = self.markers.neighbour(self.transport.position_s, steps)
        if marker is not None:
            self._marker_clicked(marker.id)

    def move_marker(self) -> None:
        """Move the chosen marker to the playing position."""
        self.markers.move_chosen(self.transport.position_s, self.lanes.duration_s)

    def edit_marker(self) -> None:
        """Write the text of the chosen marker."""
        self.side.show_pane(MARKERS)
        self.markers.write_text()

    # -- the take itself ------------------------------------------------------------

    def compare_with_first(self) -> None:
        """Compare the take with the first of its passage."""
        siblings = self.chooser.siblings
        if self.view is None or len(siblings) < 2:
            return
        shown = self.view.row.id
        other = siblings[-1] if siblings[-1] != shown else siblings[0]
        self.desk.compareWanted.emit(other, shown)

    def delete_take(self) -> None:
        """Delete the take; undo brings it back."""
        if self.view is not None:
            self.transport.stop()
            take_id, filing = self.view.row.id, self.desk.workbench.filing
            self.desk.jobs.store(lambda: filing.delete(take_id), lambda _: self._take_deleted())

    def _take_deleted(self) -> None:
        self.desk.tell("The take was deleted; its recording is still there.", action_id="undo")
        self.desk.takesChanged.emit()
