"""Suggestions and the first listen on the Listen page: read, shown, answered."""

from collections.abc import Callable

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent

from app.journal.records import Marker
from app.services.rows import HIDDEN
from app.services.suggestion_views import FirstListenView, SuggestionsView
from app.services.views import TakeView
from app.ui.desk import Desk
from app.ui.language import tr
from app.ui.pages.listen_keys import SUGGESTIONS
from app.ui.widgets.ear_strip import EarStrip
from app.ui.widgets.side_tabs import SideTabs
from app.ui.widgets.suggestions_pane import SuggestionsPane
from app.ui.widgets.transport import Transport


class EarControl(QObject):
    """Keeps the suggestions of the take that is shown, and what may be seen of it.

    Signals
    -------
    lookWanted(str)
        The take is to be opened again: more, or less, of it may be seen now.
    accepted(Marker)
        A suggestion became this marker.
    writeWanted()
        The text of that marker is to be written.
    """

    lookWanted = Signal(str)
    accepted = Signal(object)
    writeWanted = Signal()

    def __init__(
        self,
        desk: Desk,
        transport: Transport,
        pane: SuggestionsPane,
        strip: EarStrip,
        side: SideTabs,
    ) -> None:
        super().__init__(pane)
        self._desk = desk
        self._suggesting = desk.workbench.suggesting
        self._first = desk.workbench.first_listening
        self._pane = pane
        self._strip = strip
        self._side = side
        self._take_id = ""
        self._is_on = False
        desk.markersChanged.connect(lambda _id: self.read())
        pane.seekWanted.connect(transport.seek)
        pane.acceptWanted.connect(self._accept)
        pane.dismissWanted.connect(self._dismiss)
        pane.allWanted.connect(lambda _all: self.read())
        pane.bringBackWanted.connect(self.bring_back)
        pane.earFirstWanted.connect(self.switch)
        strip.show_it.clicked.connect(self.show_measured)
        strip.nothing.clicked.connect(lambda: self.show_measured(heard_nothing=True))

    def show_take(self, view: TakeView | None) -> None:
        """Begin with a take, or with none."""
        take_id = view.row.id if view else ""
        if take_id != self._take_id:
            self._pane.forget_all()
            self._pane.show_hidden("")
        self._take_id = take_id
        self.read()

    def read(self) -> None:
        """Read the suggestions again, and whether they may be seen."""
        take_id, show_all = self._take_id, self._pane.shows_all
        if not take_id:
            self._strip.hide()
            return
        suggesting, first = self._suggesting, self._first
        # Not on the storage thread: the lanes of a long take must not wait for it.
        self._desk.jobs.analyse(
            lambda _progress, _should_stop: (
                first.state(take_id),
                suggesting.for_take(take_id, show_all=show_all),
            ),
            lambda found: self._show(*found),
            subject="listen.suggestions",
        )

    def _show(self, state: FirstListenView, view: SuggestionsView) -> None:
        self._is_on = state.is_on
        self._pane.show_ear_first(is_on=state.is_on)
        if state.is_hidden:
            self._pane.show_hidden(HIDDEN)
            self._strip.show_waiting(len(state.own_markers))
            return
        self._strip.hide()
        self._pane.show_suggestions(view)
        self._pane.show_agreement(state.agreement)

    # -- suggestions ----------------------------------------------------------------

    def step(self, steps: int) -> None:
        """Go to the next or earlier suggestion."""
        self._side.show_pane(SUGGESTIONS)
        words = self._pane.step(steps)
        if words:
            QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self._pane, words))

    def bring_back(self) -> None:
        """Offer again what was put aside for the passage."""
        take_id = self._take_id
        if take_id:
            self._change(lambda: self._suggesting.bring_back(take_id), lambda _: self.read())

    def _accept(self, key: str, write: bool) -> None:
        take_id = self._take_id
        self._change(
            lambda: self._suggesting.accept(take_id, key),
            lambda marker: self._accepted(marker, write),
        )

    def _accepted(self, marker: Marker, write: bool) -> None:
        if write:
            self.accepted.emit(marker)
        self._desk.markersChanged.emit(marker.take_id)
        if write:
            # After the markers were read again, so that the new one can be chosen.
            self._desk.jobs.store(lambda: None, lambda _: self.writeWanted.emit())
        else:
            self._desk.tell(tr("The suggestion is a marker now."), action_id="undo")

    def _dismiss(self, key: str) -> None:
        take_id = self._take_id
        self._change(
            lambda: self._suggesting.dismiss(take_id, key),
            lambda _: self._dismissed(),
        )

    def _dismissed(self) -> None:
        self._desk.tell(tr("Put aside for this passage."), action_id="undo")
        self.read()

    # -- the ear first --------------------------------------------------------------

    def toggle(self) -> None:
        """Listen first from now on, or no longer."""
        self.switch(not self._is_on)

    def switch(self, on: bool) -> None:
        """Let the ear come first in this journal, or no longer."""
        take_id = self._take_id
        self._change(lambda: self._first.switch(on), lambda _: self.lookWanted.emit(take_id))

    def show_measured(self, *_clicked: bool, heard_nothing: bool = False) -> None:
        """Show what was measured on the take, if its own markers are placed."""
        take_id = self._take_id
        if take_id:
            self._change(
                lambda: self._first.show(take_id, heard_nothing=heard_nothing),
                lambda _: self._shown(take_id),
            )

    def _shown(self, take_id: str) -> None:
        self._side.show_pane(SUGGESTIONS)
        self.lookWanted.emit(take_id)

    def _change(self, work: Callable[[], object], done: Callable[..., None]) -> None:
        self._desk.jobs.store(work, done)
