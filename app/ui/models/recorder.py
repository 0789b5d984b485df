"""The recording of a take as the window sees it: a few states and what they allow."""

from collections.abc import Callable
from enum import Enum, auto
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer, Signal

from app.journal.failures import PlainFailure
from app.ui.desk import Desk
from app.ui.language import tr
from app.ui.words import counted

if TYPE_CHECKING:
    from app.services.guide_settings import GuideSettings
    from app.services.recording import RecordingService
    from app.services.views import InputRow, PendingTake, TakeRow

_LEVEL_MS = 50
_PATIENCE_S = 4.0


class RecorderState(Enum):
    """What the input is doing."""

    IDLE = auto()
    LISTENING = auto()
    ARMED = auto()
    STARTING = auto()
    RECORDING = auto()
    STOPPING = auto()


class Recorder(QObject):
    """Starts, watches, stops and files recordings.

    Attributes
    ----------
    mark_count : int
        How many moments of the running take are marked.

    Signals
    -------
    stateChanged(RecorderState)
    levelRead(LevelReading)
    inputsFound(tuple of InputRow), inputsMissing(PlainFailure)
    filingMoved(float)
        How far encoding and checking a finished recording is.
    stopped(PendingTake)
        A recording is over; ``ended`` says so where it ended by itself.
    failed(PlainFailure)
        It could not be begun, or the device took it away.
    filed(TakeRow)
        A take is in the journal.
    unfinishedFound(tuple of PendingTake)
        Recordings that were never filed, from a crash.
    """

    stateChanged = Signal(object)
    levelRead = Signal(object)
    inputsFound = Signal(object)
    inputsMissing = Signal(object)
    filingMoved = Signal(float)
    stopped = Signal(object)
    failed = Signal(object)
    filed = Signal(object)
    unfinishedFound = Signal(object)

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self._desk = desk
        self._timer = QTimer(self, interval=_LEVEL_MS)
        self._timer.timeout.connect(self._look)
        self.state = RecorderState.IDLE
        self.device_key: str | None = None
        self.guides: GuideSettings | None = None
        self.mark_count = 0

    @property
    def _recording(self) -> "RecordingService":
        return self._desk.workbench.recording

    def find_inputs(self) -> None:
        """Ask which inputs there are."""
        self._ask_for_inputs(lambda: self._recording.inputs())  # noqa: PLW0108 - loaded there

    def look_again(self) -> None:
        """Scan for inputs: one that was plugged in since the start is known only then."""
        self._ask_for_inputs(self._scanned)

    def _ask_for_inputs(self, find: Callable[[], "tuple[InputRow, ...]"]) -> None:
        # Looking for devices may take a second; nothing that is stored waits for it.
        self._desk.jobs.device(
            find,
            self.inputsFound.emit,
            subject="recorder.inputs",
            failed=self.inputsMissing.emit,
        )

    def _scanned(self) -> tuple["InputRow", ...]:
        try:
            return self._recording.rescan()
        except PlainFailure:
            # Something listens along, and goes on: what was known before still is.
            return self._recording.inputs()

    def find_unfinished(self) -> None:
        """Ask for recordings that a crash left behind."""
        self._desk.jobs.store(
            lambda: self._recording.unfinished(),  # noqa: PLW0108 - loaded there
            self.unfinishedFound.emit,
            subject="recorder.unfinished",
        )

    def choose_input(self, device_key: str) -> None:
        """Use this input from now on, and remember it in the journal."""
        self.device_key = device_key
        if self.state is RecorderState.LISTENING:
            self.stop_listening()
            self.toggle_level()

    def use_channel(self, channel: int | None) -> None:
        """Record this channel of the input from now on, and remember it in the journal."""
        device_key = self.device_key
        if not device_key:
            return
        self._recording.use_channel(device_key, channel)
        self._desk.jobs.store(lambda: self._recording.remember_channel(device_key, channel))
        if self.state is RecorderState.LISTENING:
            self._desk.jobs.device(
                lambda: self._recording.listen(device_key),
                failed=self._failed,
            )

    def toggle_level(self) -> None:
        """Open the input to see its level, or close it."""
        if self.state is RecorderState.LISTENING:
            self.stop_listening()
        elif self.state is RecorderState.IDLE:
            device_key = self.device_key
            self._desk.jobs.device(
                lambda: self._recording.listen(device_key),
                lambda _: self._enter(RecorderState.LISTENING),
                failed=self._failed,
            )

    def stop_listening(self) -> None:
        """Close the input that shows its level."""
        if self.state is RecorderState.LISTENING:
            self._desk.jobs.store(self._recording.stop_listening)
            self._enter(RecorderState.IDLE)

    def toggle_recording(self, passage_id: str | None, aim: str) -> None:
        """Start to record, or stop."""
        if self.state is RecorderState.RECORDING:
            self._enter(RecorderState.STOPPING)
            self._desk.jobs.store(self._recording.stop, self.finish, failed=self._failed)
        elif self.state in (RecorderState.IDLE, RecorderState.LISTENING, RecorderState.ARMED):
            self._enter(RecorderState.STARTING)
            self.mark_count = 0
            device_key, guides = self.device_key, self.guides
            self._desk.jobs.device(
                lambda: self._start(passage_id, aim, device_key, guides),
                lambda _: self._enter(RecorderState.RECORDING),
                failed=self._failed,
            )

    def toggle_armed(self, passage_id: str | None, aim: str) -> None:
        """Wait for the first note and record from it on, or wait no longer."""
        if self.state is RecorderState.ARMED:
            self._desk.jobs.store(self._recording.disarm)
            self._enter(RecorderState.IDLE)
        elif self.state in (RecorderState.IDLE, RecorderState.LISTENING):
            self._enter(RecorderState.STARTING)
            self.mark_count = 0
            device_key, guides = self.device_key, self.guides
            self._desk.jobs.device(
                lambda: self._recording.arm(passage_id, aim, device_key, guides=guides),
                lambda _: self._enter(RecorderState.ARMED),
                failed=self._failed,
            )

    def mark(self) -> None:
        """Mark this moment of the running take; it becomes a marker once the take is filed."""
        if self.state is not RecorderState.RECORDING:
            self._desk.tell(tr("Nothing is being recorded."), tr("Record first, then mark."))
            return
        heard_s = self._recording.level().elapsed_s - self._desk.preferences.reaction_s
        self._desk.jobs.store(lambda: self._recording.mark(max(0.0, heard_s)), self._marked)

    def _marked(self, _nothing: None) -> None:
        """Count a mark only now: what the player reads is on the disk."""
        self.mark_count += 1

    def _start(
        self,
        passage_id: str | None,
        aim: str,
        device_key: str | None,
        guides: "GuideSettings | None",
    ) -> None:
        """Start, and wait until the input delivers; some sound servers take a second or two."""
        self._recording.start(passage_id, aim, device_key, guides=guides)
        self._recording.wait_until_heard(_PATIENCE_S)

    def finish(self, pending: "PendingTake") -> None:
        """Encode, check and file a recording that has stopped."""
        self._enter(RecorderState.IDLE)
        self.mark_count = 0
        self.stopped.emit(pending)
        if pending.ended:
            self._desk.tell(pending.ended, tr("What was recorded until then is kept."))
        self._desk.jobs.analyse(
            lambda progress, should_stop: self._recording.finish(pending, progress, should_stop),
            lambda row: self._filed(row, pending),
            progress=self.filingMoved.emit,
            ended=lambda: self.filingMoved.emit(1.0),
        )

    def discard(self, pending: "PendingTake") -> None:
        """Move an unfiled recording to the trash."""
        self._desk.jobs.store(
            lambda: self._recording.discard(pending), lambda _: self.find_unfinished()
        )

    @property
    def is_recording(self) -> bool:
        """True from the first sample to the last."""
        return self.state in (RecorderState.STARTING, RecorderState.RECORDING)

    @property
    def is_free(self) -> bool:
        """Whether a recording could begin."""
        return self.state in (RecorderState.IDLE, RecorderState.LISTENING)

    @property
    def words(self) -> str:
        """What goes on, for the rail; empty where nothing does."""
        if self.state is RecorderState.ARMED:
            return tr("Recording begins with the first note")
        return tr("A take is being recorded") if self.is_recording else ""

    def close(self) -> None:
        """Let go of the input; a running recording is kept and offered at the next start."""
        self._timer.stop()
        if self.state is RecorderState.RECORDING:
            self._desk.jobs.store(self._recording.stop)
        elif self.state is RecorderState.ARMED:
            self._desk.jobs.store(self._recording.disarm)
        elif self.state is RecorderState.LISTENING:
            self._desk.jobs.store(self._recording.stop_listening)

    def _filed(self, row: "TakeRow", pending: "PendingTake") -> None:
        notices = []
        if pending.clipped_samples:
            notices.append(tr("The input was too loud in places; turn it down for the next take."))
        if pending.dropped_frames:
            lost = counted(pending.dropped_frames, "sample was", "samples were")
            notices.append(tr("{lost} lost while recording.").format(lost=lost))
        if notices:
            self._desk.tell(" ".join(notices), tr("The take is filed all the same."))
        if pending.marks_s:
            self._desk.markersChanged.emit(row.id)
        self.filed.emit(row)
        self.find_unfinished()
        self._desk.takesChanged.emit()

    def _failed(self, failure: PlainFailure) -> None:
        self._enter(RecorderState.IDLE)
        self._desk.tell_failure(failure)
        self.failed.emit(failure)
        self.look_again()

    def _enter(self, state: RecorderState) -> None:
        self.state = state
        if state in (RecorderState.LISTENING, RecorderState.ARMED, RecorderState.RECORDING):
            self._timer.start()
        elif state in (RecorderState.IDLE, RecorderState.STOPPING):
            self._timer.stop()
        self.stateChanged.emit(state)

    def _look(self) -> None:
        self.levelRead.emit(self._recording.level())
        if self.state is RecorderState.ARMED and self._recording.is_recording:
            self._enter(RecorderState.RECORDING)
        try:
            ended = self._recording.poll()
        except PlainFailure as failure:
            self._failed(failure)
            return
        if ended is not None:
            self.finish(ended)


def input_text(row: "InputRow") -> str:
    """Return an input in one line."""
    default = tr(", the usual one") if row.is_default else ""
    return f"{row.name} ({counted(row.channels, 'channel')}{default})"
