"""Play, pause, speed, volume, loop: the bar below the lanes, and what it controls."""

from collections.abc import Callable

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QLabel, QLayout, QWidget

from app.journal.failures import PlainFailure
from app.services.views import PlaybackState
from app.ui.desk import Desk
from app.ui.icons import icon
from app.ui.language import tr
from app.ui.theme import GRID_PX, LARGE_PT, font
from app.ui.widgets.basics import Button, fill, row, slider, soft
from app.ui.words import length_text, position_text

# Once a frame of the screen: the line may lag behind the sound by no more than that. The
# position itself comes from the stream's clock.
_PLAYING_MS = 16
_STEP_S = 2.0
_SLIDER_PX, _SHORT_SLIDER_PX = 96, 64
SPEEDS_PERCENT = (25, 150)


class Transport(QWidget):
    """Controls playback of one take and tells where it stands.

    Signals
    -------
    moved(PlaybackState)
        The position or anything else changed.
    loaded()
        A take is ready to be played.
    """

    moved = Signal(object)
    loaded = Signal()

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self._desk = desk
        self._playing = desk.workbench.playing
        self._loaded = ""
        self._wanted = ("", 0.0, 0.0)
        self._duration_s = 0.0
        self._selection: tuple[float, float] | None = None
        self._timer = QTimer(self, interval=_PLAYING_MS, timerType=Qt.TimerType.PreciseTimer)
        self._timer.timeout.connect(self._look)
        self.position_s = 0.0
        self.is_playing = False
        self._build()
        self.setEnabled(False)

    def _build(self) -> None:
        self._start = Button("", "start", action_id="listen.start")
        self._play = Button(tr("Play"), "play", action_id="listen.play", primary=True)
        self._play.setMinimumWidth(104)
        self._loop = Button(tr("Loop"), "loop", action_id="listen.loop")
        self._loop.setCheckable(True)
        self._position = QLabel("0:00.0")
        self._position.setFont(font(LARGE_PT))
        self._position.setMinimumWidth(96)
        self._position.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        self._length = soft(wrap=False)
        self._speed = slider(tr("Speed in percent"), *SPEEDS_PERCENT, 100, 5)
        self._speed_words = soft("100 %", wrap=False)
        self._volume = slider(tr("Volume in percent"), 0, 100, 80, 5)
        # Common practice, no source.
        self._volume.setToolTip(tr("With headphones begin low, above all when you loop."))
        self._volume_words = soft("80 %", wrap=False)
        self._volume_label = soft(tr("Volume"), wrap=False)
        for words in (self._speed_words, self._volume_words):
            words.setMinimumWidth(40)
        self._start.clicked.connect(self.to_start)
        self._play.clicked.connect(self.toggle)
        self._loop.clicked.connect(self.toggle_loop)
        self._speed.valueChanged.connect(self._set_speed)
        self._volume.valueChanged.connect(self._set_volume)
        self._narrow_first = (self._length, self._start)
        self._narrow_next = (self._volume_words, self._volume_label)
        speed = soft(tr("Speed"), wrap=False)
        self._kept = (self._play, self._loop, self._position, speed, self._speed_words)
        box = row(self, spacing=GRID_PX)
        # The bar takes the width it is given and leaves out what does not fit.
        box.setSizeConstraint(QLayout.SizeConstraint.SetNoConstraint)
        fill(box, self._start, self._play, self._loop, self._position, self._length, 1)
        fill(box, speed, self._speed, self._speed_words)
        fill(box, self._volume_label, self._volume, self._volume_words)
        self._volume.setValue(round(100 * self._desk.preferences.volume))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Give each part its room."""
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        """Leave out what keys do as well, where the page is narrow or the words are long."""
        kept, volume = _px(self._kept) + _SLIDER_PX, _px(self._narrow_next) + _SLIDER_PX
        every = kept + volume + _px(self._narrow_first)
        shorter = 2 * (_SLIDER_PX - _SHORT_SLIDER_PX)
        has_all = self.width() >= every - shorter
        for widget in self._narrow_first:
            widget.setVisible(has_all)
        for part in (*self._narrow_next, self._volume):
            part.setVisible(self.width() >= kept + volume - shorter)
        for each in (self._speed, self._volume):
            each.setFixedWidth(_SLIDER_PX if self.width() >= every else _SHORT_SLIDER_PX)

    def load(self, take_id: str, duration_s: float, gain_db: float = 0.0) -> None:
        """Read a take into memory; the keys work once it is there.

        The same take again is read only where another page's take took its place, and
        goes on where it stood. `gain_db`, at most 0, is added to its level.
        """
        wanted = _loaded_as(take_id, gain_db)
        if wanted == self._loaded == self._desk.loaded_take_id:
            return
        self.stop()
        if wanted != self._loaded:
            self._selection = None
            self.position_s = 0.0
        self._loaded = ""
        self._wanted = (take_id, duration_s, gain_db)
        self._duration_s = duration_s
        self.setEnabled(False)
        self._length.setText(tr("of {length}").format(length=length_text(duration_s)))
        self._fit()
        self._position.setText(position_text(self.position_s))
        playing = self._playing
        self._desk.jobs.analyse(
            lambda progress, should_stop: playing.load(
                take_id, progress, should_stop, gain_db=gain_db
            ),
            lambda _: self._take_over(wanted),
            subject="playing.load",
        )

    def switch(
        self, take_id: str, duration_s: float, gain_db: float, place: Callable[[float], float]
    ) -> bool:
        """Go over to the take that is kept ready, at the matching place, playing or not.

        Returns False, with a message, where it is not read yet.
        """
        if not self.is_ready:
            return False
        try:
            self._playing.switch(place)
        except PlainFailure as failure:
            self._desk.tell_failure(failure)
            return False
        self._loaded = self._desk.loaded_take_id = _loaded_as(take_id, gain_db)
        self._wanted = (take_id, duration_s, gain_db)
        self._duration_s = duration_s
        self._length.setText(tr("of {length}").format(length=length_text(duration_s)))
        if self._selection is not None:
            start_s, end_s = self._selection
            self._selection = (place(start_s), place(end_s))
        self._look()
        return True

    def load_again(self) -> None:
        """Make the take ready again, at the same place, for another output."""
        self._desk.loaded_take_id = ""
        if self._loaded:
            self.load(*self._wanted)

    @property
    def is_ready(self) -> bool:
        """True once a take is in memory."""
        return bool(self._loaded) and self._loaded == self._desk.loaded_take_id

    @property
    def selection(self) -> tuple[float, float] | None:
        """The selected span, seconds."""
        return self._selection

    @property
    def is_looping(self) -> bool:
        """True while the selection repeats."""
        return self._loop.isChecked()

    def stop(self) -> None:
        """Pause, where anything plays."""
        if self.is_playing:
            self._try(self._playing.pause)

    def toggle(self) -> None:
        """Play or pause."""
        if self.is_ready:
            self._try(self._playing.toggle)

    def seek(self, position_s: float) -> None:
        """Go to a moment."""
        if self.is_ready:
            place = min(max(0.0, position_s), self._duration_s)
            self._try(lambda: self._playing.seek(place))

    def step(self, steps: int) -> None:
        """Go back or forward by two seconds a step."""
        self.seek(self.position_s + steps * _STEP_S)

    def to_start(self) -> None:
        """Go to the start, or to the start of the loop."""
        self.seek(self._selection[0] if self._selection and self.is_looping else 0.0)

    def select(self, selection: tuple[float, float] | None) -> None:
        """Select a span; a running loop moves to it."""
        self._selection = selection
        if selection is None:
            self._loop.setChecked(False)
        self._apply_loop()

    def toggle_loop(self, on: bool | None = None) -> None:
        """Loop the selection (the whole take where nothing is selected), or stop looping."""
        wanted = self._loop.isChecked() if on is None else on
        if wanted and self._selection is None:
            self._selection = (0.0, self._duration_s)
        self._loop.setChecked(wanted)
        self._apply_loop()

    def change_speed(self, steps: int) -> None:
        """Faster or slower by five percent a step; 0: as played."""
        self._speed.setValue(self._speed.value() + 5 * steps if steps else 100)

    def change_volume(self, steps: int) -> None:
        """Louder or quieter by five percent a step."""
        self._volume.setValue(self._volume.value() + 5 * steps)

    def _take_over(self, loaded: str) -> None:
        self._loaded = self._desk.loaded_take_id = loaded
        self.setEnabled(True)
        if self.position_s > 0.0:
            self._playing.seek(self.position_s)
        self._apply_loop()
        self._set_speed(self._speed.value())
        self._set_volume(self._volume.value())
        self._look()
        self.loaded.emit()

    def _apply_loop(self) -> None:
        if not self.is_ready:
            return
        if self.is_looping and self._selection is not None:
            start_s, end_s = self._selection
            self._try(lambda: self._playing.set_loop(start_s, end_s))
        else:
            self._try(lambda: self._playing.set_loop(None))

    def _set_speed(self, percent: int) -> None:
        self._speed_words.setText(f"{percent} %")
        if self.is_ready:
            self._try(lambda: self._playing.set_speed(percent / 100))

    def _set_volume(self, percent: int) -> None:
        self._volume_words.setText(f"{percent} %")
        self._desk.preferences.volume = percent / 100
        if self.is_ready:
            self._try(lambda: self._playing.set_volume(percent / 100))

    def _try(self, act: Callable[[], None]) -> None:
        try:
            act()
        except PlainFailure as failure:
            self._desk.tell_failure(failure)
        self._look()

    def _look(self) -> None:
        state: PlaybackState = self._playing.state()
        if state.playing != self.is_playing:
            self.is_playing = state.playing
            failure = None if state.playing else self._playing.failure()
            if failure is not None:
                self._desk.tell_failure(failure)
            self._play.setText(tr("Pause") if state.playing else tr("Play"))
            self._play.setIcon(icon("pause" if state.playing else "play", on_accent=True))
        if state.playing and not self._timer.isActive():
            self._timer.start()
        elif not state.playing:
            self._timer.stop()
        self.position_s = state.position_s
        self._position.setText(position_text(state.position_s))
        self.moved.emit(state)


def _loaded_as(take_id: str, gain_db: float) -> str:
    """Name a take at a level: softened for a comparison it is another sound."""
    return f"{take_id} at {gain_db:.2f} dB" if gain_db else take_id


def _px(widgets: tuple[QWidget, ...]) -> int:
    """Return the width that these need beside others."""
    return sum(max(w.sizeHint().width(), w.minimumWidth()) + GRID_PX for w in widgets)
