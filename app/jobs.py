"""Work off the GUI thread: three executors, results delivered on the GUI thread.

``store`` runs short work on the one storage thread, in the order it was asked for.
``analyse`` runs long work that reports progress and can be stopped. ``device`` opens and
looks for sound devices, one after the other: a recording that begins waits for no long
work. A job names a *subject* (say, ``"listen.take"``); a newer job for the same subject
makes the older one stale, and a stale result is dropped. Work captures its inputs as
values: the closures handed in here must not touch widgets.
"""

import logging
import time
from collections.abc import Callable
from concurrent.futures import Future, ThreadPoolExecutor
from threading import Event
from typing import Any, TypeVar

from PySide6.QtCore import QCoreApplication, QEventLoop, QObject, Qt, QTimer, Signal, Slot

from app.journal.failures import PlainFailure
from app.services.stopping import Stopped

T = TypeVar("T")

Progress = Callable[[float], None]
ShouldStop = Callable[[], bool]

log = logging.getLogger(__name__)

# So long the window paints and takes keys between two steps of its own work.
_PAUSE_MS = 15
# A progress bar needs no more than this many steps a second.
_PROGRESS_INTERVAL_S = 0.05


class Job:
    """One piece of work as the GUI thread sees it."""

    def __init__(
        self,
        subject: str,
        generation: int,
        *,
        done: Callable[[Any], None] | None,
        failed: Callable[[PlainFailure], None] | None,
        progress: Callable[[float], None] | None,
        ended: Callable[[], None] | None,
    ) -> None:
        self.subject = subject
        self.generation = generation
        self._done = done
        self._failed = failed
        self._progress = progress
        self._ended = ended
        self._stop = Event()
        self.is_over = False

    def cancel(self) -> None:
        """Ask the work to stop; its result, should one still come, is dropped."""
        self._stop.set()

    @property
    def is_cancelled(self) -> bool:
        """True once somebody asked it to stop."""
        return self._stop.is_set()


class Jobs(QObject):
    """The window's three executors.

    Parameters
    ----------
    parent : QObject, optional
    waiting : bool
        Work that is asked for waits until :meth:`begin`: a window that is being built
        need not share the processor with it.

    Signals
    -------
    failure_told(PlainFailure)
        An expected failure that the caller did not take itself.
    bug_found(BaseException)
        Anything else that came out of a job.
    """

    failure_told = Signal(object)
    bug_found = Signal(object)
    _arrived = Signal(object, str, object)

    def __init__(self, parent: QObject | None = None, *, waiting: bool = False) -> None:
        super().__init__(parent)
        self._waiting: list[Callable[[], None]] | None = [] if waiting else None
        self._storage = ThreadPoolExecutor(1, thread_name_prefix="storage")
        # Measuring takes one of these; filing a take and opening one never wait for it.
        self._analysis = ThreadPoolExecutor(3, thread_name_prefix="analysis")
        self._devices = ThreadPoolExecutor(1, thread_name_prefix="devices")
        self._generations: dict[str, int] = {}
        self._running: set[Job] = set()
        self._closed = False
        # Queued explicitly: the reports come from threads that Qt did not start.
        self._arrived.connect(self._deliver, Qt.ConnectionType.QueuedConnection)

    def begin(self) -> None:
        """Let what waits begin, in the order it was asked for."""
        waiting, self._waiting = self._waiting or [], None
        for submit in waiting:
            submit()

    def store(
        self,
        work: Callable[[], T],
        done: Callable[[T], None] | None = None,
        *,
        subject: str = "",
        failed: Callable[[PlainFailure], None] | None = None,
        ended: Callable[[], None] | None = None,
    ) -> Job:
        """Run `work` on the storage thread, after everything asked for earlier."""
        job = self._new_job(subject, done, failed, ended=ended)
        self._submit(self._storage, job, work)
        return job

    def analyse(
        self,
        work: Callable[[Progress, ShouldStop], T],
        done: Callable[[T], None] | None = None,
        *,
        subject: str = "",
        failed: Callable[[PlainFailure], None] | None = None,
        progress: Callable[[float], None] | None = None,
        ended: Callable[[], None] | None = None,
    ) -> Job:
        """Run long `work` on the analysis executor; it may be cancelled."""
        job = self._new_job(subject, done, failed, progress=progress, ended=ended)
        report = self._reporter(job)
        self._submit(self._analysis, job, lambda: work(report, lambda: job.is_cancelled))
        return job

    def device(
        self,
        work: Callable[[], T],
        done: Callable[[T], None] | None = None,
        *,
        subject: str = "",
        failed: Callable[[PlainFailure], None] | None = None,
    ) -> Job:
        """Run `work` that waits for a sound device, after what was asked of devices earlier."""
        job = self._new_job(subject, done, failed)
        self._submit(self._devices, job, work)
        return job

    def soon(self, done: Callable[[None], None], *, subject: str = "") -> Job:
        """Call `done` on the GUI thread once the window has painted and taken its keys.

        What would keep the window waiting for long is done in several such steps.
        """
        job = self._new_job(subject, done, None)
        if not self._closed:
            self._running.add(job)
            # The first comes after what is painted now, however long that takes.
            QTimer.singleShot(0, self, lambda: self._after_pause(job))
        return job

    def _after_pause(self, job: Job) -> None:
        QTimer.singleShot(_PAUSE_MS, self, lambda: self._deliver(job, "done", None))

    def forget(self, subject: str) -> None:
        """Make every running job of `subject` stale and ask it to stop."""
        self._generations[subject] = self._generations.get(subject, 0) + 1
        for job in self._running:
            if job.subject == subject:
                job.cancel()

    @property
    def is_idle(self) -> bool:
        """True when nothing runs, waits or still has to be delivered."""
        return not self._running

    def wait_until_idle(self, timeout_s: float = 10.0) -> bool:
        """Process events until all jobs have been delivered; False on timeout."""
        limit = time.monotonic() + timeout_s
        while self._running and time.monotonic() < limit:
            QCoreApplication.processEvents(QEventLoop.ProcessEventsFlag.AllEvents, 20)
            time.sleep(0.002)
        return not self._running

    def close(self) -> None:
        """Stop long work, finish what was to be stored, and end all threads."""
        if self._closed:
            return
        self.begin()
        self._closed = True
        for job in self._running:
            job.cancel()
        self._analysis.shutdown(wait=True, cancel_futures=True)
        self._devices.shutdown(wait=True, cancel_futures=True)
        self._storage.shutdown(wait=True, cancel_futures=False)
        self._running.clear()

    def _new_job(
        self,
        subject: str,
        done: Callable[[Any], None] | None,
        failed: Callable[[PlainFailure], None] | None,
        *,
        progress: Callable[[float], None] | None = None,
        ended: Callable[[], None] | None = None,
    ) -> Job:
        if subject:
            self.forget(subject)
        return Job(
            subject,
            self._generations.get(subject, 0),
            done=done,
            failed=failed,
            progress=progress,
            ended=ended,
        )

    def _submit(self, executor: ThreadPoolExecutor, job: Job, work: Callable[[], object]) -> None:
        if self._closed:
            return
        self._running.add(job)
        if self._waiting is not None:
            self._waiting.append(lambda: self._start(executor, job, work))
        else:
            self._start(executor, job, work)

    def _start(self, executor: ThreadPoolExecutor, job: Job, work: Callable[[], object]) -> None:
        future = executor.submit(self._run, job, work)
        future.add_done_callback(lambda finished: self._tell_if_never_run(job, finished))

    def _run(self, job: Job, work: Callable[[], object]) -> None:
        if job.is_cancelled and job.subject:
            self._arrived.emit(job, "stopped", None)
            return
        try:
            result = work()
        except Stopped:
            self._arrived.emit(job, "stopped", None)
        except PlainFailure as failure:
            self._arrived.emit(job, "failed", failure)
        except Exception as error:
            log.exception("A job failed: %s", job.subject or "without subject")
            self._arrived.emit(job, "bug", error)
        else:
            self._arrived.emit(job, "done", result)

    def _tell_if_never_run(self, job: Job, future: "Future[None]") -> None:
        if future.cancelled() and not self._closed:
            self._arrived.emit(job, "stopped", None)

    def _reporter(self, job: Job) -> Progress:
        last = 0.0

        def report(fraction: float) -> None:
            nonlocal last
            now = time.monotonic()
            if now - last >= _PROGRESS_INTERVAL_S or fraction >= 1.0:
                last = now
                self._arrived.emit(job, "progress", fraction)

        return report

    def _is_stale(self, job: Job) -> bool:
        if job.is_cancelled:
            return True
        return bool(job.subject) and job.generation != self._generations.get(job.subject, 0)

    @Slot(object, str, object)
    def _deliver(self, job: Job, kind: str, payload: object) -> None:
        if self._closed:
            return
        if kind == "progress":
            if job._progress is not None and not self._is_stale(job):
                job._progress(float(payload))  # type: ignore[arg-type]
            return
        self._running.discard(job)
        job.is_over = True
        try:
            self._hand_over(job, kind, payload)
        finally:
            if job._ended is not None:
                job._ended()

    def _hand_over(self, job: Job, kind: str, payload: object) -> None:
        if kind == "bug":
            self.bug_found.emit(payload)
        elif self._is_stale(job) or kind == "stopped":
            return
        elif kind == "failed":
            if job._failed is not None:
                assert isinstance(payload, PlainFailure)  # noqa: S101 - narrows the payload
                job._failed(payload)
            else:
                self.failure_told.emit(payload)
        elif job._done is not None:
            job._done(payload)
