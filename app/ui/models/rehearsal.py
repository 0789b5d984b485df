"""An audition rehearsal as the window runs it: one chance each, heard afterwards."""

from collections.abc import Callable

from PySide6.QtCore import QObject, Signal

from app.journal.failures import PlainFailure
from app.journal.rehearsals import current
from app.services.keeping_views import RehearsalView
from app.services.views import PendingTake, TakeRow
from app.ui.desk import Desk
from app.ui.language import tr
from app.ui.models.recorder import Recorder, RecorderState


class RehearsalRun(QObject):
    """Takes each chance through the recorder, and afterwards opens the takes in order.

    Attributes
    ----------
    view : RehearsalView or None
        The rehearsal that runs, or the one that ended last.

    Signals
    -------
    changed()
        Another passage is due, a chance was begun or spoilt, or it is over.
    """

    changed = Signal()

    def __init__(self, desk: Desk, recorder: Recorder) -> None:
        super().__init__(desk)
        self._desk = desk
        self._recorder = recorder
        self._device_said = ""
        self._heard = 0
        self.view: RehearsalView | None = None
        recorder.stopped.connect(self._stopped)
        recorder.failed.connect(self._spoilt_by)
        recorder.filed.connect(self._filed)

    @property
    def is_running(self) -> bool:
        """Whether passages still wait for their chance."""
        return self.view is not None and self.view.rehearsal.ended_at is None

    @property
    def is_begun(self) -> bool:
        """Whether the chance of the passage that is due was begun."""
        chance = current(self.view.rehearsal) if self.view is not None else None
        return chance is not None and chance.begun_at is not None

    @property
    def spoilt(self) -> str:
        """What the device did to an earlier attempt at the passage that is due."""
        chance = current(self.view.rehearsal) if self.view is not None else None
        return chance.spoilt if chance is not None else ""

    def read(self) -> None:
        """Ask whether one runs; else show the one that ended last."""
        rehearsals = self._desk.workbench.rehearsals

        def find() -> RehearsalView | None:
            return rehearsals.running() or next(iter(rehearsals.past()), None)

        self._desk.jobs.store(find, self._show, subject="rehearsal")

    def start(self, passage_ids: tuple[str, ...], *, draw: bool) -> None:
        """Begin a rehearsal of these passages, in this order or a drawn one."""
        rehearsals = self._desk.workbench.rehearsals
        self._heard = 0
        self._desk.jobs.store(lambda: rehearsals.start(passage_ids, draw=draw), self._show)

    def toggle(self) -> None:
        """Take the chance that is due, or stop recording it."""
        if self._recorder.state is RecorderState.RECORDING:
            self._recorder.toggle_recording(None, "")
        elif self.is_running and self._recorder.is_free:
            rehearsals = self._desk.workbench.rehearsals
            self._desk.jobs.store(rehearsals.begin, self._record)

    def move_on(self) -> None:
        """Go on to the next passage without a take of this one."""
        self._change(self._desk.workbench.rehearsals.move_on)

    def end(self) -> None:
        """End it early."""
        self._change(self._desk.workbench.rehearsals.end)

    def hear(self, row: TakeRow) -> None:
        """Open one take; the one after it comes next."""
        takes = self.view.to_listen_to if self.view is not None else ()
        self._heard = takes.index(row) if row in takes else 0
        self.hear_next()

    def hear_next(self) -> None:
        """Open the next take on the Listen page; the first one after the last."""
        takes = self.view.to_listen_to if self.view is not None else ()
        if not takes:
            self._desk.tell(
                tr("There is no rehearsal to listen to."),
                tr("It can be heard once every passage has had its chance."),
            )
            return
        at = self._heard % len(takes)
        self._heard = at + 1
        row = takes[at]
        self._desk.listenWanted.emit(row.id, 0.0)
        self._desk.tell(
            tr("Rehearsal, {number} of {count}: {name}.").format(
                number=at + 1, count=len(takes), name=row.passage_name
            ),
            tr("Listen first; the numbers can wait."),
            "rehearsal.next",
        )

    def _record(self, view: RehearsalView) -> None:
        self._show(view)
        self._device_said = ""
        if view.due is None:
            return
        # An audition has neither click nor drone.
        guides, self._recorder.guides = self._recorder.guides, None
        self._recorder.toggle_recording(view.due.id, "")
        self._recorder.guides = guides

    def _stopped(self, pending: PendingTake) -> None:
        self._device_said = pending.ended

    def _spoilt_by(self, failure: PlainFailure) -> None:
        if self.is_begun:
            rehearsals = self._desk.workbench.rehearsals
            self._desk.jobs.store(lambda: rehearsals.spoilt(failure.sentence), self._show)

    def _filed(self, row: TakeRow) -> None:
        """Keep the take of the chance; one that the device cut off does not use it up."""
        due = self.view.due if self.view is not None else None
        if due is None or not self.is_begun or row.passage_id != due.id:
            return
        rehearsals, said = self._desk.workbench.rehearsals, self._device_said
        self._device_said = ""
        if said:
            self._desk.jobs.store(lambda: rehearsals.spoilt(said), self._show)
        else:
            self._desk.jobs.store(lambda: rehearsals.recorded(row.id), self._show)

    def _change(self, step: Callable[[], RehearsalView]) -> None:
        if not self._recorder.is_free:
            self._desk.tell(tr("A take is being recorded."), tr("Stop it first."))
            return
        self._desk.jobs.store(step, self._show)

    def _show(self, view: RehearsalView | None) -> None:
        self.view = view
        self.changed.emit()
