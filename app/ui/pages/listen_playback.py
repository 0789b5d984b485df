"""What playing does to the Listen page: line, selection, loop, the note that sounds."""

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent
from PySide6.QtWidgets import QLabel

from app.services.views import PlaybackState
from app.ui.widgets.notes_pane import NotesPane
from app.ui.widgets.take_lanes import TakeLanes
from app.ui.widgets.transport import Transport

_LEAST_SELECTION_S = 0.05
_ROOM_BESIDE = 0.05


class PlaybackControl(QObject):
    """Keeps lanes, notes, transport and the status line in step.

    Signals
    -------
    moved(float)
        Another place is heard, seconds; whoever shows something beside it follows.
    """

    moved = Signal(float)

    def __init__(
        self, lanes: TakeLanes, transport: Transport, notes: NotesPane, status: QLabel
    ) -> None:
        super().__init__(lanes)
        self._lanes = lanes
        self._transport = transport
        self._notes = notes
        self._status = status
        self._pointed_at: tuple[float, float] | None = None
        self._wanted_s: float | None = None
        self._wanted_stretch: tuple[float, float] | None = None
        lanes.seekWanted.connect(transport.seek)
        lanes.selectionMade.connect(lambda start, end: self.select((start, end)))
        lanes.hovered.connect(self._hovered)
        lanes.pointerLeft.connect(self._pointer_left)
        notes.seekWanted.connect(transport.seek)
        transport.moved.connect(self._moved)

    def want(self, position_s: float) -> None:
        """Go to this moment once the take that is opened next is ready."""
        self._wanted_s = position_s

    def want_stretch(self, start_s: float, end_s: float) -> None:
        """Loop this stretch once the take that is opened next is ready."""
        self._wanted_stretch = (start_s, end_s)
        self._wanted_s = start_s

    def go_where_wanted(self) -> None:
        """Go where somebody asked for, once that can be done."""
        if self._wanted_s is not None and self._transport.is_ready:
            wanted, self._wanted_s = self._wanted_s, None
            self._transport.seek(wanted)
            if self._wanted_stretch is not None:
                stretch, self._wanted_stretch = self._wanted_stretch, None
                self.select(stretch)
                self._transport.toggle_loop(True)
                self._show_selection()
                if not self._transport.is_playing:
                    self._transport.toggle()

    def clear_selection(self) -> bool:
        """Drop the selection; False where there was none."""
        had_one = self._transport.selection is not None
        self.select(None)
        return had_one

    def select(self, selection: tuple[float, float] | None) -> None:
        """Select a span; a running loop moves to it."""
        self._transport.select(selection)
        self._show_selection()

    def select_edge(self, edge: int) -> None:
        """Let the selection start (0) or end (1) here."""
        here = self._transport.position_s
        start, end = self._transport.selection or (0.0, self._lanes.duration_s)
        start, end = (here, end) if edge == 0 else (start, here)
        if end - start > _LEAST_SELECTION_S:
            self.select((start, end))

    def zoom_to_selection(self) -> None:
        """Show the selection with a little room beside it."""
        if self._transport.selection is not None:
            start, end = self._transport.selection
            room = _ROOM_BESIDE * (end - start)
            self._lanes.show_range(start - room, end + room)

    def toggle_loop(self) -> None:
        """Loop the selection, or stop looping."""
        self._transport.toggle_loop(not self._transport.is_looping)
        self._show_selection()

    def step_note(self, steps: int) -> None:
        """Go to the next or earlier note."""
        start_s = self._notes.start_near(self._transport.position_s, steps)
        if start_s is not None:
            self._transport.seek(start_s)
            self.say(self._lanes.words_at(start_s))

    def say(self, words: str) -> None:
        """Have a screen reader say what a key has brought about."""
        QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self._lanes, words))

    def choose_lane(self) -> None:
        """Choose the next lane."""
        lane = self._lanes.layout_of_lanes.choose_next()
        self._lanes.choose_lane(lane)
        self.say(self._lanes.lane_names[lane])

    def resize_lane(self, steps: int) -> None:
        """Make the chosen lane taller or lower."""
        layout = self._lanes.layout_of_lanes
        self._lanes.choose_lane(layout.chosen)
        layout.resize(layout.chosen, steps)

    def hide_lane(self) -> None:
        """Hide the chosen lane."""
        layout = self._lanes.layout_of_lanes
        layout.hide(layout.chosen, hidden=True)
        self._lanes.choose_lane(layout.chosen)

    def _show_selection(self) -> None:
        self._lanes.set_selection(self._transport.selection, looping=self._transport.is_looping)

    def _moved(self, state: PlaybackState) -> None:
        self.go_where_wanted()
        lanes, position_s = self._lanes, state.position_s
        lanes.set_playhead(position_s)
        if state.playing:
            lanes.follow(position_s)
        lanes.mark_current(lanes.note_at(position_s))
        self._notes.follow(position_s)
        if self._pointed_at is None:
            self._show_words(self._lanes.words_at(position_s))
        self.moved.emit(position_s)

    def _hovered(self, time_s: float, y: float) -> None:
        self._pointed_at = (time_s, y)
        self._status.setText(self._lanes.words_at(time_s, y))

    def _pointer_left(self) -> None:
        """Without a pointer, the line says what lies under the playing position."""
        self._pointed_at = None
        self.describe()

    def describe(self) -> None:
        """Say anew what lies under the pointer or the playing position."""
        place = self._pointed_at or (self._transport.position_s, -1.0)
        self._show_words(self._lanes.words_at(*place))

    def _show_words(self, words: str) -> None:
        if words != self._status.text():
            self._status.setText(words)
            self._lanes.setAccessibleDescription(words)
