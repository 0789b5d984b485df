"""What every page works with: the journal, the executors, and who is told of changes."""

from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from app.jobs import Jobs
from app.journal.failures import PlainFailure
from app.ui.keys import KeyMap
from app.ui.language import tr
from app.ui.preferences import Preferences
from app.ui.theme import Theme

if TYPE_CHECKING:
    from app.services.workbench import Workbench


@dataclass(frozen=True, slots=True)
class Message:
    """One sentence for the message bar, what to do next, and an action to offer."""

    sentence: str
    next_step: str = ""
    action_id: str = ""


class Desk(QObject):
    """Shared by the pages; they never reach into each other.

    Signals
    -------
    takesChanged()
        Takes came, went, were filed elsewhere or were measured.
    markersChanged(take_id)
        The markers of a take.
    passagesChanged()
        The list of passages.
    daysChanged()
        Minutes or rest days.
    listenWanted(take_id, position_s), compareWanted(take_a, take_b)
        Somebody asks for another page.
    thenNowWanted(take_a, take_b)
        Somebody wants to hear two takes of a passage one after the other.
    measureWanted(take_id)
        A take is to be measured next, whatever was measured before.
    told(Message)
        A sentence for the message bar.
    closeWanted()
        The window is to close, to go back to a backup or to open another journal.
    cancelWanted()
        Long work that runs is to stop.
    shareWanted(takes, start_s, end_s)
        Clips of these takes are to be shared; of a single one this stretch, an end of 0
        being none.
    exportWanted(take_id, first_day, last_day)
        This take or these days are to be saved in open formats.
    stretchWanted(take_id, start_s, end_s)
        Somebody wants to hear this stretch, over and over.
    """

    takesChanged = Signal()
    markersChanged = Signal(str)
    passagesChanged = Signal()
    daysChanged = Signal()
    listenWanted = Signal(str, float)
    compareWanted = Signal(str, str)
    thenNowWanted = Signal(str, str)
    measureWanted = Signal(str)
    told = Signal(object)
    closeWanted = Signal()
    cancelWanted = Signal()
    shareWanted = Signal(object, float, float)
    exportWanted = Signal(str, object, object)
    stretchWanted = Signal(str, float, float)

    def __init__(
        self,
        workbench: "Workbench",
        jobs: Jobs,
        theme: Theme,
        preferences: Preferences,
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        self.workbench = workbench
        self.jobs = jobs
        self.theme = theme
        self.preferences = preferences
        self.keys = KeyMap(preferences.own_keys, self)
        # The one player holds one take; whoever shows another has to load it first.
        self.loaded_take_id = ""
        # A backup to go back to once the window is closed and lets go of the journal.
        self.restore_wanted = ""
        self.visit_wanted: Path | None = None
        self.home_wanted = False
        jobs.failure_told.connect(self.tell_failure)

    def tell(self, sentence: str, next_step: str = "", action_id: str = "") -> None:
        """Show a sentence in the message bar."""
        self.told.emit(Message(sentence, next_step, action_id))

    def close_to_restore(self, backup: str) -> None:
        """Close the window; whoever opened it goes back to the backup and opens it again."""
        if self._may_close():
            self.restore_wanted = backup
            self.closeWanted.emit()

    def close_to_visit(self, bundle: Path) -> None:
        """Close the window; whoever opened it opens this bundle, and a window on it."""
        if self._may_close():
            self.visit_wanted = bundle
            self.closeWanted.emit()

    def close_to_go_home(self) -> None:
        """Leave a bundle that is open; whoever opened it opens the player's own journal."""
        if self.workbench.bundles.visiting is None:
            self.tell(tr("This is your own journal."))
            return
        self.home_wanted = True
        self.closeWanted.emit()

    def _may_close(self) -> bool:
        if self.workbench.recording.is_recording:
            self.tell(tr("A take is being recorded."), tr("Stop it first, then go back."))
            return False
        return True

    def keep_minutes(self, day: date, minutes: float) -> None:
        """Keep the typed minutes of a day; where that fails, the pages show what is kept."""
        practising = self.workbench.practising
        self.jobs.store(
            lambda: practising.set_minutes(day, minutes),
            lambda _: self.daysChanged.emit(),
            failed=self._minutes_refused,
        )

    def _minutes_refused(self, failure: PlainFailure) -> None:
        self.tell_failure(failure)
        self.daysChanged.emit()

    def undo(self) -> None:
        """Take the latest change back, a marker's or a deleted take."""
        self.jobs.store(
            self.workbench.marking.undo, lambda words: self._undone(tr("Undone"), words)
        )

    def redo(self) -> None:
        """Make the latest undone change again."""
        self.jobs.store(
            self.workbench.marking.redo, lambda words: self._undone(tr("Done again"), words)
        )

    def _undone(self, what: str, words: str | None) -> None:
        if words is None:
            self.tell(tr("There is nothing left in that direction."))
            return
        self.tell(f"{what}: {words}.")
        self.takesChanged.emit()
        self.daysChanged.emit()

    def tell_failure(self, failure: PlainFailure) -> None:
        """Show an expected failure with its next step."""
        self.told.emit(Message(failure.sentence, failure.next_step))
