"""Takes waiting to be measured, one after the other, in the background."""

from PySide6.QtCore import QObject, Signal

from app.jobs import Job
from app.journal.failures import PlainFailure
from app.ui.desk import Desk


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
        """Ask the journal what is waiting, and begin."""
        measuring = self._desk.workbench.measuring
        self._desk.jobs.store(measuring.waiting, self._take_over, subject="measuring.waiting")

    def measure(self, take_id: str) -> None:
        """Measure this take next, also if it was given up before."""
        self._given_up.discard(take_id)
        if take_id in self._waiting:
            self._waiting.remove(take_id)
        if take_id != self.current:
            self._waiting.insert(0, take_id)
        self._next()

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
        measuring = self._desk.workbench.measuring
        self._job = self._desk.jobs.analyse(
            lambda progress, should_stop: measuring.measure(take_id, progress, should_stop),
            lambda _row: self._measured(),
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
