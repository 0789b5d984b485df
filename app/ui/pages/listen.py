"""Listen: hear a take, see it, say what is wrong in one key."""

from PySide6.QtWidgets import QWidget

from app.journal.records import Passage
from app.services.take_lists import TakeLists
from app.services.views import TakeView
from app.ui.desk import Desk
from app.ui.language import tr
from app.ui.models.sound_columns import SoundColumns
from app.ui.pages.listen_along import AlongControl
from app.ui.pages.listen_ear import EarControl
from app.ui.pages.listen_keys import bind_listen_keys
from app.ui.pages.listen_markers import MarkerControl
from app.ui.pages.listen_picture import PictureControl
from app.ui.pages.listen_playback import PlaybackControl
from app.ui.pages.page import Page, Parts
from app.ui.spoken import said
from app.ui.theme import GRID_PX
from app.ui.widgets.along_strip import AlongStrip
from app.ui.widgets.basics import Button, Card, OneLine, column, fill, row
from app.ui.widgets.choices import take_summary
from app.ui.widgets.ear_strip import EarStrip
from app.ui.widgets.markers_pane import MarkersPane
from app.ui.widgets.notes_pane import NotesPane
from app.ui.widgets.numbers_pane import NumbersPane
from app.ui.widgets.page_stack import PageStack
from app.ui.widgets.picture_pane import PicturePane, PictureSplit
from app.ui.widgets.side_tabs import SideTabs
from app.ui.widgets.sound_strip import SoundStrip
from app.ui.widgets.suggestions_pane import SuggestionsPane
from app.ui.widgets.take_chooser import TakeChooser
from app.ui.widgets.take_lanes import SOUND, TakeLanes
from app.ui.widgets.take_pane import TakePane
from app.ui.widgets.transport import Transport


class ListenPage(Page):
    """The page where a take is heard, looked at and marked."""

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk, tr("Listen"))

    def make_parts(self) -> Parts:
        """See :meth:`Page.make_parts`."""
        desk = self.desk
        self.view: TakeView | None = None
        self._wanted_id = ""
        self._passages: tuple[Passage, ...] = ()
        self.chooser = TakeChooser()
        self._compare = Button(tr("Compare"), "compare", action_id="listen.compare")
        self._readings = OneLine(right=True)
        self._hover = OneLine()
        yield
        self.lanes = TakeLanes(desk.theme.colours)
        yield
        self.transport = Transport(desk)
        yield
        self.notes = NotesPane()
        self.markers = MarkersPane()
        self.numbers = NumbersPane()
        yield
        self.take_pane = TakePane(desk)
        yield
        self.suggestions = SuggestionsPane()
        self.ear_strip = EarStrip()
        self.along_strip = AlongStrip()
        self.picture_pane = PicturePane()
        self._columns = SoundColumns(desk, self.lanes)
        self._remember_lanes()
        yield
        yield from self._build()
        yield
        self.playback = PlaybackControl(self.lanes, self.transport, self.notes, self._hover)
        self.marking = MarkerControl(desk, self.lanes, self.transport, self.markers, self.side)
        self.along = AlongControl(desk, self.transport, self.along_strip)
        self.ear = EarControl(desk, self.transport, self.suggestions, self.ear_strip, self.side)
        self.picture = PictureControl(desk, self.transport, self.picture_pane, self._split)
        yield
        self._connect()
        bind_listen_keys(self)
        self.lines = (self.markers.text, self.take_pane.aim)
        self.stops = (self.transport.stop, self.picture.leave)

    def _build(self) -> Parts:
        # From the outside in: what is moved to another parent is styled anew.
        head = row()
        fill(head, self.chooser, self._compare)
        head.setStretch(0, 1)
        card = Card()
        card.box.setContentsMargins(GRID_PX, GRID_PX, GRID_PX, GRID_PX)
        over = row()
        fill(over, self._hover, self._readings)
        fill(card.box, over, self.lanes, SoundStrip(self._columns))
        card.box.setStretch(1, 1)
        left = QWidget()
        yield
        self.side = SideTabs(
            (
                (tr("Notes"), "listen.notes", self.notes),
                (tr("Markers"), "listen.markers", self.markers),
                (tr("Numbers"), "listen.numbers", self.numbers),
                (tr("Take"), "listen.take", self.take_pane),
                (tr("Suggested"), "listen.suggestions", self.suggestions),
            )
        )
        yield
        self._split = PictureSplit(left, self.side, self.picture_pane)
        yield
        self._stack = PageStack(
            self.desk,
            tr("No takes yet"),
            tr("Record one on the Practice page, or drop recordings anywhere on this window."),
            self._split,
        )
        yield
        column(self, margin=2 * GRID_PX).addWidget(self._stack)
        yield
        stacked = column(left, spacing=GRID_PX)
        fill(stacked, head, self.ear_strip, card, self.transport, self.along_strip)
        stacked.setStretch(2, 1)

    def _remember_lanes(self) -> None:
        layout, preferences = self.lanes.layout_of_lanes, self.desk.preferences
        layout.restore(preferences.lanes)
        layout.changed.connect(lambda: setattr(preferences, "lanes", layout.text))

    def _connect(self) -> None:
        desk = self.desk
        desk.takesChanged.connect(self.refresh_if_open)
        desk.passagesChanged.connect(self.refresh_if_open)
        desk.theme.changed.connect(self.lanes.recolour)
        self.chooser.picked.connect(self.show_take)
        self._compare.clicked.connect(self.compare_with_first)
        self._columns.read.connect(self.lanes.show_waveform)
        self._columns.cancelled.connect(self._say_sound_was_not_read)
        self._columns.failed.connect(
            lambda words: self.lanes.set_lane_words(SOUND, tr("Sound"), said(words))
        )
        self.playback.moved.connect(self.marking.follow)
        self.marking.watch_keys(self)
        self.ear.lookWanted.connect(self.show_take)
        self.ear.accepted.connect(self.marking.choose_when_read)
        self.ear.writeWanted.connect(self.marking.edit)

    # -- which take ---------------------------------------------------------

    def refresh(self) -> None:
        """Read the lists again, and the take that is shown."""
        bench = self.desk.workbench
        self.desk.jobs.store(bench.filing.lists, self._take_over_lists, subject="listen.lists")

    def want(self, take_id: str, position_s: float) -> None:
        """Show this take, at this moment, when the page is opened next."""
        self._wanted_id = take_id
        self.playback.want(position_s)

    def show_take(self, take_id: str) -> None:
        """Open a take."""
        self._wanted_id = take_id
        first = self.desk.workbench.first_listening
        self.desk.jobs.store(
            lambda: first.open_take(take_id), self._take_over, subject="listen.take"
        )

    def _take_over_lists(self, lists: TakeLists) -> None:
        self._passages = lists.passages
        self.chooser.know(lists)
        self._stack.show_content(bool(lists))
        if not lists:
            self.view = None
            self._wanted_id = ""
            self.marking.show_take(None)
            self.ear.show_take(None)
            self.picture.show_take(None)
            self.transport.stop()
            return
        if not self.chooser.knows(self._wanted_id):
            self._wanted_id = self.chooser.latest_id
        self.show_take(self._wanted_id)

    def _take_over(self, view: TakeView) -> None:
        is_same = self.view is not None and self.view.row.id == view.row.id
        self.view = view
        if is_same:
            self.lanes.show_measured(view)
        else:
            self.lanes.show_take(view)
            self.lanes.set_lane_words(
                SOUND, tr("Sound"), tr("Reading the sound\N{HORIZONTAL ELLIPSIS}")
            )
            self._columns.show_take(view.row.id)
            self.lanes.set_selection(None, looping=False)
        self.transport.load(view.row.id, view.duration_s)
        self.chooser.show_chosen(view.row.id)
        self._compare.setEnabled(len(self.chooser.siblings) > 1)
        self._readings.setText(take_summary(view.row))
        self._readings.explain(view.row.notice)
        self.marking.show_take(view)
        self.along.show_take(view)
        self.ear.show_take(view)
        self.picture.show_take(view)
        self.playback.go_where_wanted()
        self.playback.describe()
        # Lanes first: to fill and paint the tables of an hour as well would take too long.
        self.desk.jobs.soon(lambda _: self._fill_panes(view), subject="listen.panes")

    def _fill_panes(self, view: TakeView) -> None:
        self.notes.show_notes(view.notes, "" if view.notes else view.notes_sentence)
        self.numbers.show_summary(view.summary)
        self.take_pane.show_take(view, self._passages)

    def _say_sound_was_not_read(self) -> None:
        words = tr("The sound was not read to its end. Open the take again to see it.")
        self.lanes.set_lane_words(SOUND, tr("Sound"), words)

    @property
    def hover_text(self) -> str:
        """What lies under the pointer, in words."""
        return self._hover.text()

    def clear_selection(self) -> bool:
        """Drop the selection; False where there was none."""
        return self.playback.clear_selection()

    # -- the take itself ------------------------------------------------------------

    def compare_with_first(self) -> None:
        """Compare the take with the first of its passage."""
        siblings = self.chooser.siblings
        if self.view is None or len(siblings) < 2:
            return
        shown = self.view.row.id
        other = siblings[-1] if siblings[-1] != shown else siblings[0]
        self.desk.compareWanted.emit(other, shown)

    def share_selection(self) -> None:
        """Offer a clip of the selection, or of the beginning where there is none."""
        if self.view is not None:
            start_s, end_s = self.transport.selection or (0.0, 0.0)
            self.desk.shareWanted.emit((self.view.row,), start_s, end_s)

    def export_take(self) -> None:
        """Offer the take in open formats."""
        if self.view is not None:
            day = self.view.row.practice_day
            self.desk.exportWanted.emit(self.view.row.id, day, day)

    def hear_stretch(self, take_id: str, start_s: float, end_s: float) -> None:
        """Loop a stretch of a take."""
        self._wanted_id = take_id
        self.playback.want_stretch(start_s, end_s)

    def delete_take(self) -> None:
        """Delete the take; undo brings it back."""
        if self.view is not None:
            self.transport.stop()
            take_id, filing = self.view.row.id, self.desk.workbench.filing
            self.desk.jobs.store(lambda: filing.delete(take_id), lambda _: self._take_deleted())

    def _take_deleted(self) -> None:
        self.desk.tell(tr("The take was deleted; its recording is still there."), action_id="undo")
        self.desk.takesChanged.emit()
