"""The sound lane's columns, asked for again whenever another stretch comes into view."""

from PySide6.QtCore import QObject, QTimer, Signal

from app.jobs import Job
from app.journal.failures import PlainFailure
from app.ui.desk import Desk
from app.ui.widgets.lane_stack import LaneStack

_DELAY_MS = 40


class SoundColumns(QObject):
    """Prepares a take's overview once and reads the columns in view.

    Signals
    -------
    read(Waveform)
        Columns of the stretch in view.
    progressed(float)
        How far the sound has been read, where that takes a while: 0 to 1.
    ended(), cancelled()
        It is read or will not be; it was given up, so that there are no columns.
    failed(str)
        Why it cannot be read, in one sentence.
    """

    read = Signal(object)
    progressed = Signal(float)
    ended = Signal()
    cancelled = Signal()
    failed = Signal(str)

    def __init__(self, desk: Desk, lanes: LaneStack) -> None:
        super().__init__(lanes)
        self._desk = desk
        self._lanes = lanes
        self._take_id = ""
        self._job: Job | None = None
        self._timer = QTimer(self, singleShot=True, interval=_DELAY_MS)
        self._timer.timeout.connect(self._ask)
        desk.cancelWanted.connect(self.cancel)
        lanes.viewMoved.connect(lambda _start, _end: self._timer.start())

    def show_take(self, take_id: str) -> None:
        """Begin with another take."""
        self._take_id = ""
        self._desk.jobs.forget("listen.waveform")  # of the take before
        self.ended.emit()
        listening = self._desk.workbench.listening
        self._job = self._desk.jobs.analyse(
            lambda progress, should_stop: listening.prepare(take_id, progress, should_stop),
            lambda _: self._prepared(take_id),
            subject="listen.prepare",
            progress=lambda fraction: self.progressed.emit(fraction) if fraction < 1.0 else None,
            failed=self._not_prepared,
        )

    def cancel(self) -> None:
        """Give up reading the sound of the take; opening it again begins anew."""
        if self._job is not None and not self._job.is_over:
            self._job.cancel()
            self.ended.emit()
            self.cancelled.emit()

    def _prepared(self, take_id: str) -> None:
        self._take_id = take_id
        self.ended.emit()
        self._ask()

    def _not_prepared(self, failure: PlainFailure) -> None:
        self._desk.tell_failure(failure)
        self.ended.emit()
        self.failed.emit(failure.sentence)

    def _ask(self) -> None:
        if not self._take_id:
            return
        take_id, columns = self._take_id, self._lanes.columns
        start_s, end_s = self._lanes.view_range
        listening = self._desk.workbench.listening
        self._desk.jobs.store(
            lambda: listening.waveform(take_id, max(0.0, start_s), end_s, columns),
            self.read.emit,
            subject="listen.waveform",
        )
