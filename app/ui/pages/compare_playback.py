"""What sounds on the Compare page: one of both takes, and the way over to the other."""

from collections.abc import Callable

from PySide6.QtCore import QObject, Signal

from app.services.views import CompareView, PlaybackState, TakeView
from app.ui.desk import Desk
from app.ui.widgets.compare_lanes import CompareLanes
from app.ui.widgets.transport import Transport

_AT_THE_END_S = 0.15


class ComparePlayback(QObject):
    """Keeps lanes, transport and the two takes in memory in step.

    Places are seconds on A's time axis, whichever take is heard.

    Signals
    -------
    heardChanged(bool)
        Another take is heard; true for B.
    """

    heardChanged = Signal(bool)

    def __init__(self, desk: Desk, lanes: CompareLanes, transport: Transport) -> None:
        super().__init__(lanes)
        self._desk = desk
        self._lanes = lanes
        self._transport = transport
        self._view: CompareView | None = None
        self._wanted_s: float | None = None
        self._plays_wanted = False
        self._then_now = False
        self._was_playing = False
        self.hears_b = False
        lanes.seekWanted.connect(self.seek)
        lanes.selectionMade.connect(lambda start, end: self.loop_between((start, end)))
        transport.moved.connect(self._moved)

    @property
    def place_s(self) -> float:
        """Where it plays."""
        here = self._transport.position_s
        return self._lanes.to_a(here) if self.hears_b else here

    def show(self, view: CompareView, *, stay: bool = False) -> None:
        """Take over another pair.

        Parameters
        ----------
        view : CompareView
        stay : bool
            A is the take it was before: go over to the new B at the same place, playing
            or not. Otherwise A is loaded, to be played from its start.
        """
        to_a_before = self._lanes.to_a if self.hears_b else float
        self._view = view
        self._lanes.show_compared(view)
        self._then_now = False
        if stay and view.aligned and self._transport.is_ready:
            to_b = self._lanes.to_b
            self._keep_ready(b=True, then=lambda: self._go_over(lambda at: to_b(to_a_before(at))))
            return
        self._tell(hears_b=False)
        self.load()

    def load(self) -> None:
        """Read both takes into memory; also after another page has had the player."""
        if self._view is None:
            return
        heard = self._side(b=self.hears_b)
        self._transport.load(heard.row.id, heard.duration_s, self._gain(b=self.hears_b))
        self._keep_ready(b=not self.hears_b)

    def switch(self) -> None:
        """Hear the same musical moment in the other take."""
        if self._view is not None and self._view.aligned:
            self._hear_other(self._lanes.to_a if self.hears_b else self._lanes.to_b)

    def play_then_and_now(self) -> None:
        """Play A from its start, then B from its start; the switch works meanwhile."""
        self._then_now = True
        self.want(0.0, play=True)

    def want(self, place_s: float, *, play: bool = False) -> None:
        """Go to a place once the takes are read, and play on from there."""
        self._wanted_s, self._plays_wanted = place_s, play
        self._go_where_wanted()

    def seek(self, place_s: float) -> None:
        """Go to a place."""
        self._transport.seek(self._heard_place(place_s))

    def hear_in_b(self, moment_s: float) -> None:
        """Go to a moment of B, and hear it there."""
        if not self.hears_b:
            self.switch()
        if self.hears_b:
            self._transport.seek(moment_s)

    def select_edge(self, edge: int) -> None:
        """Let the selection start (0) or end (1) here."""
        start, end = self._selection() or (0.0, self._lanes.duration_s)
        here = self.place_s
        start, end = (here, max(end, here)) if edge == 0 else (min(start, here), here)
        self._select((start, end), looping=self._transport.is_looping)

    def loop_between(self, selection: tuple[float, float]) -> None:
        """Loop a span in whichever take is heard."""
        self._select(selection, looping=True)

    def toggle_loop(self) -> None:
        """Loop the selection, or stop looping."""
        selection = self._selection() or (0.0, self._lanes.duration_s)
        self._select(selection, looping=not self._transport.is_looping)

    def clear_selection(self) -> bool:
        """Drop the selection; False where there was none."""
        had_one = self._transport.selection is not None
        self._transport.select(None)
        self._lanes.set_selection(None, looping=False)
        return had_one

    def _selection(self) -> tuple[float, float] | None:
        selection = self._transport.selection
        if selection is None or not self.hears_b:
            return selection
        return self._lanes.to_a(selection[0]), self._lanes.to_a(selection[1])

    def _select(self, selection: tuple[float, float], *, looping: bool) -> None:
        self._transport.select((self._heard_place(selection[0]), self._heard_place(selection[1])))
        self._transport.toggle_loop(looping)
        self._lanes.set_selection(selection, looping=looping)

    def _heard_place(self, place_s: float) -> float:
        return self._lanes.to_b(place_s) if self.hears_b else place_s

    def _side(self, *, b: bool) -> TakeView:
        assert self._view is not None  # noqa: S101 - callers have looked
        return self._view.b if b else self._view.a

    def _gain(self, *, b: bool) -> float:
        assert self._view is not None  # noqa: S101 - callers have looked
        return self._view.levels.b_gain_db if b else self._view.levels.a_gain_db

    def _keep_ready(self, *, b: bool, then: Callable[[], None] | None = None) -> None:
        playing, take_id, gain_db = (
            self._desk.workbench.playing,
            self._side(b=b).row.id,
            self._gain(b=b),
        )
        self._desk.jobs.analyse(
            lambda progress, should_stop: playing.keep_ready(
                take_id, progress, should_stop, gain_db=gain_db
            ),
            lambda _: then() if then is not None else None,
            subject="playing.ready",
        )

    def _go_over(self, place: Callable[[float], float]) -> None:
        """Hear the new B where it was played until now, and keep A ready."""
        b = self._side(b=True)
        if self._transport.switch(b.row.id, b.duration_s, self._gain(b=True), place):
            self._tell(hears_b=True)
            self._lanes.set_selection(self._selection(), looping=self._transport.is_looping)
            self._keep_ready(b=False)

    def _hear_other(self, place: Callable[[float], float]) -> bool:
        other = self._side(b=not self.hears_b)
        gain_db = self._gain(b=not self.hears_b)
        if not self._transport.switch(other.row.id, other.duration_s, gain_db, place):
            return False
        self._tell(hears_b=not self.hears_b)
        return True

    def _tell(self, *, hears_b: bool) -> None:
        self.hears_b = hears_b
        self.heardChanged.emit(hears_b)

    def _go_where_wanted(self) -> None:
        if self._wanted_s is None or not self._transport.is_ready:
            return
        place_s, self._wanted_s = self._wanted_s, None
        self.seek(place_s)
        if self._plays_wanted and not self._transport.is_playing:
            self._transport.toggle()

    def _moved(self, state: PlaybackState) -> None:
        self._lanes.set_playhead(self.place_s)
        ended = self._was_playing and not state.playing
        self._was_playing = state.playing
        if self._wanted_s is not None:
            self._go_where_wanted()
        elif ended and self._then_now and not self.hears_b and self._view is not None:
            if state.position_s < self._view.a.duration_s - _AT_THE_END_S:
                return  # paused on the way
            self._then_now = False
            if self._hear_other(lambda _: 0.0):
                self._transport.toggle()
