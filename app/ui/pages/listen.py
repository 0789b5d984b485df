"""Listen: hear a take, see it, say what is wrong in one key."""

from functools import partial

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QStackedWidget, QWidget

from app.journal.records import Marker, Passage
from app.services.views import PlaybackState, TakeRow, TakeView, Waveform
from app.services.wording import day_text, length_text, reading_text
from app.ui.desk import Desk
from app.ui.keys import MARKER_KEY_COUNT
from app.ui.pages.page import Page
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Button, Card, EmptyState, column, fill, row, soft
from app.ui.widgets.choices import Choice, passage_text, take_text
from app.ui.widgets.markers_pane import MarkersPane
from app.ui.widgets.notes_pane import NotesPane
from app.ui.widgets.numbers_pane import NumbersPane
from app.ui.widgets.side_tabs import SideTabs
from app.ui.widgets.take_lanes import TakeLanes
from app.ui.widgets.take_pane import NO_PASSAGE, TakePane
from app.ui.widgets.transport import Transport

_SIDE_WIDTH_PX = 336
_WAVEFORM_DELAY_MS = 40
NOTES, MARKERS, NUMBERS, TAKE = range(4)


class ListenPage(Page):
    """The page where a take is heard, looked at and marked."""

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk, "Listen")
        self.view: TakeView | None = None
        self._wanted_id = ""
        self._wanted_s: float | None = None
        self._takes: tuple[TakeRow, ...] = ()
        self._passages: tuple[Passage, ...] = ()
        self._choose_marker_id = ""
        self._passage: Choice[str] = Choice("Passage")
        self._passage.setMinimumContentsLength(24)
        self._take: Choice[str] = Choice("Take")
        self._take.setMinimumContentsLength(24)
        self._earlier = Button("", "previous", action_id="listen.previous_take")
        self._later = Button("", "next", action_id="listen.next_take")
        self._compare = Button("Compare", "compare", action_id="listen.compare")
        self._readings = soft(wrap=False)
        self._hover = soft(wrap=False)
        self.lanes = TakeLanes(desk.theme.colours)
        self.transport = Transport(desk)
        self.notes = NotesPane()
        self.markers = MarkersPane()
        self.numbers = NumbersPane()
        self.take_pane = TakePane(desk)
        self._waveform_timer = QTimer(self, singleShot=True, interval=_WAVEFORM_DELAY_MS)
        self._waveform_timer.timeout.connect(self._ask_waveform)
        self._build()
        self._connect()
        self._bind()

    def _build(self) -> None:
        chooser = row()
        fill(chooser, self._passage, self._take, self._earlier, self._later, self._compare, 1)
        card = Card()
        card.box.setContentsMargins(GRID_PX, GRID_PX, GRID_PX, GRID_PX)
        under = row()
        fill(under, self._hover, 1, self._readings)
        fill(card.box, under, self.lanes)
        card.box.setStretch(1, 1)
        left = column(spacing=GRID_PX)
        fill(left, chooser, card, self.transport)
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
        go = Button("Go to Practice", "practice", action_id="page.practice", primary=True)
        go.clicked.connect(lambda: self.desk.keys.action("page.practice").trigger())
        self._empty = EmptyState(
            "No takes yet",
            "Record one on the Practice page, or drop recordings anywhere on this window.",
            go,
        )
        self._stack = QStackedWidget()
        self._stack.addWidget(self._empty)
        self._stack.addWidget(desk)
        box = column(self, margin=2 * GRID_PX)
        box.addWidget(self._stack)

    def _connect(self) -> None:
        desk = self.desk
        desk.takesChanged.connect(self.refresh_if_open)
        desk.passagesChanged.connect(self.refresh_if_open)
        desk.markersChanged.connect(lambda _id: self._reread_markers())
        desk.theme.changed.connect(self.lanes.recolour)
        self._passage.picked.connect(self._passage_picked)
        self._take.picked.connect(self.show_take)
        self._earlier.clicked.connect(lambda: self._step_take(1))
        self._later.clicked.connect(lambda: self._step_take(-1))
        self._compare.clicked.connect(self._compare_with_first)
        self.lanes.seekWanted.connect(self.transport.seek)
        self.lanes.selectionMade.connect(lambda a, b: self._select((a, b)))
        self.lanes.viewMoved.connect(lambda _a, _b: self._waveform_timer.start())
        self.lanes.markerClicked.connect(self._marker_clicked)
        self.lanes.hovered.connect(lambda at: self._hover.setText(self.lanes.words_at(at)))
        self.transport.moved.connect(self._moved)
        self.notes.seekWanted.connect(self.transport.seek)
        self.markers.seekWanted.connect(self.transport.seek)
        self.markers.chosen.connect(self.lanes.choose_marker)
        self.markers.changed.connect(self._change_marker)
        self.markers.deleted.connect(self._delete_marker)

    def _bind(self) -> None:
        bind, transport, lanes = self.desk.keys.bind, self.transport, self.lanes
        for action_id, slot in {
            "play": transport.toggle,
            "back": lambda: transport.step(-1),
            "forward": lambda: transport.step(1),
            "back_note": lambda: self._step_note(-1),
            "forward_note": lambda: self._step_note(1),
            "start": transport.to_start,
            "select_from": lambda: self._select_edge(0),
            "select_to": lambda: self._select_edge(1),
            "loop": self._toggle_loop,
            "slower": lambda: transport.change_speed(-1),
            "faster": lambda: transport.change_speed(1),
            "normal_speed": lambda: transport.change_speed(0),
            "louder": lambda: transport.change_volume(1),
            "quieter": lambda: transport.change_volume(-1),
            "zoom_in": lambda: lanes.zoom(1),
            "zoom_out": lambda: lanes.zoom(-1),
            "zoom_all": lanes.show_all,
            "next_marker": lambda: self._step_marker(1),
            "previous_marker": lambda: self._step_marker(-1),
            "edit_marker": self._edit_marker,
            "delete_marker": self.markers.delete_chosen,
            "previous_take": lambda: self._step_take(1),
            "next_take": lambda: self._step_take(-1),
            "notes": lambda: self.side.show_pane(NOTES),
            "markers": lambda: self.side.show_pane(MARKERS),
            "numbers": lambda: self.side.show_pane(NUMBERS),
            "take": lambda: self.side.show_pane(TAKE),
            "compare": self._compare_with_first,
            "delete_take": self._delete_take,
        }.items():
            bind(self, f"listen.{action_id}", slot)
        for number in range(1, MARKER_KEY_COUNT + 1):
            bind(self, f"listen.mark_{number}", partial(self.mark, number))

    # -- which take ---------------------------------------------------------

    def refresh(self) -> None:
        """Read the lists again, and the take that is shown."""
        bench = self.desk.workbench
        self.desk.jobs.store(
            lambda: (bench.filing.takes(), bench.passages.list()),
            self._take_over_lists,
            subject="listen.lists",
        )

    def leave_page(self) -> None:
        """Nothing sounds from a page that is not seen."""
        super().leave_page()
        self.transport.stop()

    def show_take(self, take_id: str, position_s: float | None = None) -> None:
        """Open a take, at a moment where one is given."""
        self._wanted_id = take_id
        self._wanted_s = position_s
        listening = self.desk.workbench.listening
        self.desk.jobs.store(
            lambda: listening.open_take(take_id), self._take_over, subject="listen.take"
        )

    def want(self, take_id: str, position_s: float) -> None:
        """Show this take, at this moment, when the page is opened next."""
        self._wanted_id = take_id
        self._wanted_s = position_s

    def clear_selection(self) -> bool:
        """Drop the selection; False where there was none."""
        had_one = self.transport.selection is not None
        self._select(None)
        return had_one

    def _take_over_lists(self, found: tuple[tuple[TakeRow, ...], tuple[Passage, ...]]) -> None:
        takes, self._passages = found
        self._takes = tuple(sorted(takes, key=lambda take: take.recorded_at, reverse=True))
        self._stack.setCurrentIndex(1 if self._takes else 0)
        if not self._takes:
            self.view = None
            self._wanted_id = ""
            self.transport.stop()
            return
        by_id = {take.id: take for take in self._takes}
        if self._wanted_id not in by_id:
            self._wanted_id = self._takes[0].id
        self._offer(by_id[self._wanted_id])
        self.show_take(self._wanted_id, self._wanted_s)

    def _offer(self, chosen: TakeRow) -> None:
        with_takes = {take.passage_id for take in self._takes}
        entries = [(p.id, passage_text(p)) for p in self._passages if p.id in with_takes]
        if None in with_takes:
            entries.append((NO_PASSAGE, "No passage"))
        passage_id = chosen.passage_id or NO_PASSAGE
        self._passage.offer(entries, passage_id)
        siblings = [t for t in self._takes if (t.passage_id or NO_PASSAGE) == passage_id]
        self._take.offer([(take.id, take_text(take)) for take in siblings], chosen.id)
        at = self._take.currentIndex()
        self._earlier.setEnabled(at < len(siblings) - 1)
        self._later.setEnabled(at > 0)
        self._compare.setEnabled(len(siblings) > 1)

    def _passage_picked(self, passage_id: str) -> None:
        for take in self._takes:
            if (take.passage_id or NO_PASSAGE) == passage_id:
                self.show_take(take.id)
                return

    def _step_take(self, steps: int) -> None:
        at = self._take.currentIndex() + steps
        if 0 <= at < len(self._take.keys):
            self.show_take(self._take.keys[at])

    def _take_over(self, view: TakeView) -> None:
        is_same = self.view is not None and self.view.row.id == view.row.id
        self.view = view
        if is_same:
            self.lanes.show_measured(view)
            self.lanes.set_markers(view.markers, view.categories)
        else:
            self.lanes.show_take(view)
            self._prepare_sound(view.row.id)
            self.transport.load(view.row.id, view.duration_s)
            self.lanes.set_selection(None, looping=False)
        known = {take.id: take for take in self._takes}
        if view.row.id in known:
            self._offer(known[view.row.id])
        self.notes.show_notes(view.notes, "" if view.notes else view.notes_sentence)
        self.markers.show_markers(view.markers, view.categories)
        self.numbers.show_summary(view.summary)
        self.take_pane.show_take(view, self._passages)
        self._readings.setText(self._summary_text(view))
        self._readings.setToolTip(view.row.notice)
        if self._wanted_s is not None and self.transport.is_ready:
            self.transport.seek(self._wanted_s)
            self._wanted_s = None
        if self._choose_marker_id and self.markers.choose(self._choose_marker_id):
            self.lanes.choose_marker(self._choose_marker_id)
            self._choose_marker_id = ""

    def _summary_text(self, view: TakeView) -> str:
        take = view.row
        head = f"{day_text(take.practice_day)}, {length_text(take.duration_s)}"
        if take.state in ("waiting", "failed"):
            words = "being measured" if take.state == "waiting" else "could not be measured"
            return f"{head}   {take.notice or words}"
        labels = (("Intonation", take.intonation), ("Tempo", take.tempo))
        parts = [f"{label} {reading_text(value)}" for label, value in labels]
        return "   ".join([head, *parts])

    # -- the sound's columns ---------------------------------------------------

    def _prepare_sound(self, take_id: str) -> None:
        listening = self.desk.workbench.listening
        self.lanes.set_lane_words(0, "Sound", "Reading the sound \N{HORIZONTAL ELLIPSIS}")
        self.desk.jobs.analyse(
            lambda progress, should_stop: listening.prepare(take_id, progress, should_stop),
            lambda _: self._ask_waveform(),
            subject="listen.prepare",
        )

    def _ask_waveform(self) -> None:
        if self.view is None:
            return
        take_id, columns = self.view.row.id, self.lanes.columns
        start_s, end_s = self.lanes.view_range
        listening = self.desk.workbench.listening

        def show(waveform: Waveform) -> None:
            self.lanes.show_waveform(waveform)

        self.desk.jobs.store(
            lambda: listening.waveform(take_id, max(0.0, start_s), end_s, columns),
            show,
            subject="listen.waveform",
        )

    # -- playing ----------------------------------------------------------------

    def _moved(self, state: PlaybackState) -> None:
        if self.view is None:
            return
        if self._wanted_s is not None:
            wanted, self._wanted_s = self._wanted_s, None
            self.transport.seek(wanted)
            return
        self.lanes.set_playhead(state.position_s)
        if state.playing:
            self.lanes.follow(state.position_s)
        self.lanes.mark_current(self.lanes.note_at(state.position_s))
        self.notes.follow(state.position_s)

    def _select(self, selection: tuple[float, float] | None) -> None:
        self.transport.select(selection)
        self.lanes.set_selection(selection, looping=self.transport.is_looping)

    def _select_edge(self, edge: int) -> None:
        here = self.transport.position_s
        start, end = self.transport.selection or (0.0, self.lanes.duration_s)
        start, end = (here, end) if edge == 0 else (start, here)
        if end - start > 0.05:
            self._select((start, end))

    def _toggle_loop(self) -> None:
        self.transport.toggle_loop(not self.transport.is_looping)
        self.lanes.set_selection(self.transport.selection, looping=self.transport.is_looping)

    def _step_note(self, steps: int) -> None:
        start_s = self.notes.start_near(self.transport.position_s, steps)
        if start_s is not None:
            self.transport.seek(start_s)

    # -- markers ------------------------------------------------------------------

    def mark(self, number: int) -> None:
        """Put a marker of the category with this number at the playing position.

        While it plays, the player's reaction time is taken off; while it stands still, a
        selection becomes the marker's span.
        """
        if self.view is None or number > len(self.view.categories):
            return
        start_s, end_s = self.transport.position_s, None
        if self.transport.is_playing:
            start_s = max(0.0, start_s - self.desk.preferences.reaction_s)
        elif self.transport.selection is not None:
            start_s, end_s = self.transport.selection
        take_id, category = self.view.row.id, self.view.categories[number - 1]
        marking = self.desk.workbench.marking
        self.desk.jobs.store(
            lambda: marking.add(take_id, start_s, end_s, category=category), self._marker_placed
        )

    def _marker_placed(self, marker: Marker) -> None:
        self._choose_marker_id = marker.id
        self.side.show_pane(MARKERS)
        self._marker_step_done(marker.take_id)

    def _marker_step_done(self, take_id: str) -> None:
        self.desk.markersChanged.emit(take_id)

    def _change_marker(self, marker: Marker) -> None:
        marking = self.desk.workbench.marking
        self.desk.jobs.store(
            lambda: marking.change(marker), lambda done: self._marker_step_done(done.take_id)
        )

    def _delete_marker(self, marker_id: str) -> None:
        if self.view is None:
            return
        take_id, marking = self.view.row.id, self.desk.workbench.marking
        self.desk.jobs.store(
            lambda: marking.delete(marker_id), lambda _: self._marker_deleted(take_id)
        )

    def _marker_deleted(self, take_id: str) -> None:
        self._marker_step_done(take_id)
        self.desk.tell("The marker was deleted.", action_id="undo")

    def _reread_markers(self) -> None:
        if self.view is None or not self.is_open:
            return
        take_id, marking = self.view.row.id, self.desk.workbench.marking
        self.desk.jobs.store(
            lambda: marking.for_take(take_id), self._show_markers, subject="listen.markers"
        )

    def _show_markers(self, markers: tuple[Marker, ...]) -> None:
        if self.view is None:
            return
        self.lanes.set_markers(markers, self.view.categories)
        self.markers.show_markers(markers, self.view.categories)
        if self._choose_marker_id and self.markers.choose(self._choose_marker_id):
            self.lanes.choose_marker(self._choose_marker_id)
            self._choose_marker_id = ""

    def _marker_clicked(self, marker_id: str) -> None:
        self.side.show_pane(MARKERS)
        if self.markers.choose(marker_id) and self.markers.shown is not None:
            self.lanes.choose_marker(marker_id)
            self.transport.seek(self.markers.shown.start_s)

    def _step_marker(self, steps: int) -> None:
        marker = self.markers.neighbour(self.transport.position_s, steps)
        if marker is not None:
            self._marker_clicked(marker.id)

    def _edit_marker(self) -> None:
        self.side.show_pane(MARKERS)
        self.markers.write_text()

    # -- the take itself ------------------------------------------------------------

    def _compare_with_first(self) -> None:
        if self.view is None or len(self._take.keys) < 2:
            return
        first, shown = self._take.keys[-1], self.view.row.id
        self.desk.compareWanted.emit(first if first != shown else self._take.keys[0], shown)

    def _delete_take(self) -> None:
        if self.view is not None:
            self.transport.stop()
            take_id, filing = self.view.row.id, self.desk.workbench.filing
            self.desk.jobs.store(lambda: filing.delete(take_id), lambda _: self._take_deleted())

    def _take_deleted(self) -> None:
        self.desk.tell("The take was deleted; its recording is still there.", action_id="undo")
        self.desk.takesChanged.emit()
