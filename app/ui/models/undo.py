"""Undo across the window: markers keep their own history, deleted takes come back."""

from PySide6.QtCore import QObject, Signal

from app.jobs import Jobs
from app.ui.workbench import Workbench


class UndoDesk(QObject):
    """Knows in which order markers and takes were changed in this window.

    Signals
    -------
    told(str)
        What was undone or done again, in words.
    takesChanged(), markersChanged()
        What has to be read again.
    """

    told = Signal(str)
    takesChanged = Signal()
    markersChanged = Signal()

    def __init__(self, workbench: Workbench, jobs: Jobs, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._workbench = workbench
        self._jobs = jobs
        # A take id for a deleted take, "" for a step of the markers' own history.
        self._done: list[str] = []
        self._undone: list[str] = []

    def note_marker_step(self) -> None:
        """Remember that a marker was placed, changed or deleted."""
        self._done.append("")
        self._undone.clear()

    def delete_take(self, take_id: str) -> None:
        """Delete a take so that it can come back."""
        filing = self._workbench.filing
        self._jobs.store(lambda: filing.delete(take_id), lambda _: self._take_deleted(take_id))

    def undo(self) -> None:
        """Undo the latest step, whichever it was."""
        step = self._done.pop() if self._done else ""
        if step:
            filing = self._workbench.filing
            self._jobs.store(lambda: filing.restore(step), lambda _: self._take_restored(step))
            return
        marking = self._workbench.marking
        self._jobs.store(marking.undo, self._marker_undone)

    def redo(self) -> None:
        """Do the latest undone step again."""
        step = self._undone.pop() if self._undone else ""
        if step:
            self.delete_take(step)
            return
        marking = self._workbench.marking
        self._jobs.store(marking.redo, self._marker_redone)

    def _take_deleted(self, take_id: str) -> None:
        self._done.append(take_id)
        self.told.emit("The take was deleted; its recording is kept until the trash is emptied.")
        self.takesChanged.emit()

    def _take_restored(self, take_id: str) -> None:
        self._undone.append(take_id)
        self.told.emit("The take is back.")
        self.takesChanged.emit()

    def _marker_undone(self, words: str | None) -> None:
        if words is None:
            self.told.emit("There is nothing to undo.")
            return
        self._undone.append("")
        self.told.emit(f"Undone: {words}")
        self.markersChanged.emit()

    def _marker_redone(self, words: str | None) -> None:
        if words is None:
            self.told.emit("There is nothing to do again.")
            return
        self._done.append("")
        self.told.emit(f"Done again: {words}")
        self.markersChanged.emit()
