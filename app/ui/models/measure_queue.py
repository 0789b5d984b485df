"""Takes waiting to be measured, one after the other, in the background."""

from PySide6.QtCore import QObject, QTimer, Signal

from app.jobs import Job
from app.journal.failures import PlainFailure
from app.services.stopping import Progress, ShouldStop, no_progress
from app.ui.desk import Desk

# What is waiting is known only with the measuring code loaded, which takes a second of
# processor time: not while the window is being drawn for the first time.
_FIRST_LOOK_MS = 800


class MeasureQueue(QObject):
    """Measures what is waiting; the player may cancel and start again.

    Signals
    -------
    changed()
        Something started, moved on, or ended.
    """

    changed = Signal()

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self._desk = desk
        self._timer = QTimer(self, singleShot=True, interval=_FIRST_LOOK_MS)
        self._timer.timeout.connect(self._look_now)
        self._waiting: list[str] = []
        self._given_up: set[str] = set()
        self._job: Job | None = None
        self.current: str | None = None
        self.fraction = 0.0
        self.done_count = 0

    @property
    def left_count(self) -> int:
        """How many takes still have to be measured, the running one included."""
        return len(self._waiting) + (self.current is not None)

    def look(self) -> None:
        """Ask the journal what is waiting, and begin; the first time a little later."""
        if not self._timer.isActive():
            self._timer.start()

    def _look_now(self) -> None:
        self._timer.setInterval(0)
        measuring = self._desk.workbench.measuring
        self._desk.jobs.analyse(
            lambda _progress, _should_stop: measuring.waiting(),
            self._take_over,
            subject="measuring.waiting",
        )

    def measure(self, take_id: str) -> None:
        """Measure this take next, also if it was given up before."""
        self._given_up.discard(take_id)
        if take_id in self._waiting:
            self._waiting.remove(take_id)
        if take_id != self.current:
            self._waiting.insert(0, take_id)
        self._next()

    def close(self) -> None:
        """Stop for good."""
        self._timer.stop()
        self.cancel()

    def cancel(self) -> None:
        """Stop measuring; the takes stay unmeasured until asked for again."""
        self._given_up.update(self._waiting)
        self._waiting.clear()
        if self._job is not None and self.current is not None:
            self._given_up.add(self.current)
            self._job.cancel()
        self.changed.emit()

    def _take_over(self, waiting: tuple[str, ...]) -> None:
        known = set(self._waiting) | self._given_up | {self.current}
        self._waiting.extend(take_id for take_id in waiting if take_id not in known)
        self._next()

    def _next(self) -> None:
        if self.current is not None or not self._waiting:
            self.changed.emit()
            return
        take_id = self._waiting.pop(0)
        self.current = take_id
        self.fraction = 0.0
        bench = self._desk.workbench

        def work(progress: Progress, should_stop: ShouldStop) -> None:
            bench.measuring.measure(take_id, progress, should_stop)
            # So that the take opens at once: an hour's sound takes seconds to look over.
            bench.listening.prepare(take_id, no_progress, should_stop)

        self._job = self._desk.jobs.analyse(
            work,
            lambda _nothing: self._measured(),
            failed=self._failed,
            progress=self._moved,
            ended=self._over,
        )
        self.changed.emit()

    def _moved(self, fraction: float) -> None:
        self.fraction = fraction
        self.changed.emit()

    def _measured(self) -> None:
        self.done_count += 1
        self._desk.takesChanged.emit()

    def _failed(self, failure: PlainFailure) -> None:
        if self.current is not None:
            self._given_up.add(self.current)
        self._desk.tell_failure(failure)
        self._desk.takesChanged.emit()

    def _over(self) -> None:
        self.current = None
        self._job = None
        if not self._waiting:
            self.done_count = 0
        self._next()
