"""Practice from the music stand: a few words and figures, readable from two metres."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFont, QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from app.ui.icons import icon
from app.ui.language import mark, tr
from app.ui.models.practice_clock import PracticeClock
from app.ui.models.recorder import Recorder, RecorderState
from app.ui.spoken import said, word
from app.ui.theme import GRID_PX, Theme
from app.ui.widgets.basics import Button, column, fill, row
from app.ui.words import counted, length_text

if TYPE_CHECKING:
    from app.services.clock_views import ClockView
    from app.services.views import LevelReading

# Shares of the height. ISO 9241-303 (from memory) asks for characters of 16 minutes of
# arc at least: 9.3 mm from two metres, which the smallest of these reaches.
WORDS, CLOCK, ELAPSED = 0.105, 0.17, 0.36
_FLOOR_DBFS = -60.0
_LEVEL_BAR = 0.07
_STATE_WORDS = {
    RecorderState.IDLE: mark("Ready"),
    RecorderState.LISTENING: mark("Listening to the input"),
    RecorderState.ARMED: mark("Waiting for the first note"),
    RecorderState.STARTING: mark("Wait"),
    RecorderState.RECORDING: mark("Recording"),
    RecorderState.STOPPING: mark("Filing the take"),
}


class Board(QWidget):
    """Draws the clock above, the take in the middle, the level below."""

    def __init__(self, theme: Theme, recorder: Recorder, clock: PracticeClock) -> None:
        super().__init__()
        self._theme = theme
        self._recorder = recorder
        self._clock = clock.view
        self._level: LevelReading | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setAccessibleName(tr("Practice from the music stand"))
        recorder.stateChanged.connect(self._show_state)
        recorder.levelRead.connect(self._show_level)
        clock.changed.connect(self._show_clock)
        theme.changed.connect(lambda _: self.update())

    def sizeHint(self) -> QSize:
        """As large as there is room."""
        return QSize(900, 560)

    @property
    def lines(self) -> tuple[str, ...]:
        """What is written: item, time of the sitting, state, time of the take, level."""
        view, level = self._clock, self._level
        item = view.item_title if view and view.item_id else tr("No item")
        title = item if view and view.phase != "stopped" else tr("Clock not running")
        if view and view.phase in ("paused", "forgotten"):
            title = f"{word(view.phase.capitalize())}: {item}"
        marks = self._recorder.mark_count
        state = tr(_STATE_WORDS[self._recorder.state])
        if marks:
            state += f", {counted(marks, 'mark')}"
        elapsed = level.elapsed_s if level is not None and self._recorder.is_recording else 0.0
        of_level = ""
        if level is not None:
            of_level = tr("Silence")
            if level.peak_dbfs is not None:
                of_level = word(level.word.capitalize())
            if level.dropped_frames:
                of_level += tr(", {dropped_frames} lost").format(
                    dropped_frames=level.dropped_frames
                )
        sitting_min = view.session_min if view else 0.0
        return (title, length_text(60 * sitting_min), state, length_text(elapsed), of_level)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw it at the size there is."""
        c, painter = self._theme.colours, QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        width, height = float(self.width()), float(self.height())
        title, clock, state, elapsed, word = self.lines
        is_recording = self._recorder.state is RecorderState.RECORDING
        self._write(painter, clock, CLOCK, QRectF(0, 0, width, CLOCK * height), c.ink, right=True)
        room = width - painter.fontMetrics().horizontalAdvance(clock) - 4 * GRID_PX
        self._write(painter, title, WORDS, QRectF(0, 0, room, CLOCK * height), c.ink)
        top = CLOCK * height + GRID_PX
        line = QRectF(0, top, width, 1.25 * WORDS * height)
        self._write(painter, state, WORDS, line, c.attention if is_recording else c.ink_soft)
        if is_recording:
            side = 0.5 * WORDS * height
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(QColor(c.attention))
            painter.drawEllipse(QRectF(width - side, line.center().y() - side / 2, side, side))
        place = QRectF(0, line.bottom(), width, 1.15 * ELAPSED * height)
        self._write(painter, elapsed, ELAPSED, place, c.ink if is_recording else c.ink_soft)
        self._draw_level(painter, QRectF(0, place.bottom(), width, height - place.bottom()), word)

    def _draw_level(self, painter: QPainter, place: QRectF, word: str) -> None:
        c, level = self._theme.colours, self._level
        bar = QRectF(place.left(), place.top(), place.width(), _LEVEL_BAR * self.height())
        painter.setPen(QColor(c.line))
        painter.setBrush(QColor(c.field))
        painter.drawRect(bar.adjusted(0.5, 0.5, -0.5, -0.5))
        if level is not None and level.peak_dbfs is not None:
            share = (max(_FLOOR_DBFS, min(0.0, level.peak_dbfs)) - _FLOOR_DBFS) / -_FLOOR_DBFS
            filled = QRectF(bar)
            filled.setWidth(share * bar.width())
            is_loud = level.word == "too loud"
            painter.fillRect(filled, QColor(c.attention if is_loud else c.accent))
        below = QRectF(place)
        below.setTop(bar.bottom())
        self._write(
            painter, word or tr("Input closed"), WORDS, below, c.ink if word else c.ink_soft
        )

    def _write(
        self,
        painter: QPainter,
        text: str,
        share: float,
        place: QRectF,
        colour: str,
        *,
        right: bool = False,
    ) -> None:
        face = QFont(self.font())
        face.setPixelSize(max(1, round(share * self.height())))
        face.setFeature(QFont.Tag("tnum"), 1)
        painter.setFont(face)
        painter.setPen(QColor(colour))
        side = Qt.AlignmentFlag.AlignRight if right else Qt.AlignmentFlag.AlignLeft
        elide = Qt.TextElideMode.ElideRight
        fitting = painter.fontMetrics().elidedText(text, elide, round(place.width()))
        painter.drawText(place, side | Qt.AlignmentFlag.AlignVCenter, fitting)

    def _show_state(self, state: RecorderState) -> None:
        if state in (RecorderState.IDLE, RecorderState.STOPPING):
            self._level = None
        self._say()

    def _show_level(self, reading: "LevelReading") -> None:
        self._level = reading
        self.update()

    def _show_clock(self, view: "ClockView") -> None:
        self._clock = view
        self._say()

    def _say(self) -> None:
        self.setAccessibleDescription(". ".join(said(line) for line in self.lines if line))
        self.update()


class LargeView(QWidget):
    """The board with two buttons; every key of the Practice page works here too."""

    def __init__(self, theme: Theme, recorder: Recorder, clock: PracticeClock) -> None:
        super().__init__()
        self.board = Board(theme, recorder, clock)
        self.record = Button(tr("Record"), "record", action_id="practice.record", primary=True)
        self.record.setProperty("tall", True)
        self.back = Button(tr("Back"), action_id="practice.large")
        self.back.setProperty("tall", True)
        buttons = row(spacing=2 * GRID_PX)
        fill(buttons, self.record, self.back)
        buttons.setStretch(0, 1)
        fill(column(self, spacing=2 * GRID_PX, margin=3 * GRID_PX), self.board, buttons)
        recorder.stateChanged.connect(self._show_state)

    def _show_state(self, state: RecorderState) -> None:
        is_on = state in (RecorderState.STARTING, RecorderState.RECORDING)
        self.record.setText(tr("Stop") if is_on else tr("Record"))
        self.record.setIcon(icon("stop" if is_on else "record", on_accent=True))
