"""The clips that arrived in the watched folder, as the Practice page offers them."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer, Signal

from app.journal.failures import PlainFailure
from app.ui.desk import Desk
from app.ui.language import tr

if TYPE_CHECKING:
    from app.services.views import ImportProposal, TakeRow

_EVERY_MS = 60_000
_FIRST_MS = 2_500


class ClipOffers(QObject):
    """Looks into the watched folder while the page is open.

    Signals
    -------
    changed(tuple of ImportProposal)
        What is offered now, the oldest first.
    """

    changed = Signal(object)

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self._desk = desk
        self.offers: tuple[ImportProposal, ...] = ()
        self._told = ""
        self._timer = QTimer(self, interval=_FIRST_MS)
        self._timer.timeout.connect(self._look_again)
        desk.takesChanged.connect(self._look_if_offered)

    def begin(self) -> None:
        """Look now and then from now on; the first time when the window has settled."""
        self._timer.start()

    def rest(self) -> None:
        """Look no more for now."""
        self._timer.stop()

    def look(self) -> None:
        """Look into the folder."""
        watching = self._desk.workbench.watching
        self._desk.jobs.analyse(
            watching.offers, self._take_over, subject="watching", failed=self._failed
        )

    def file_next(self) -> None:
        """File the first clip that can be filed, as it is proposed."""
        good = [offer for offer in self.offers if not (offer.failure or offer.question)]
        if not good:
            self._desk.tell(tr("No new clip is offered."))
            return
        clip, watching = good[0], self._desk.workbench.watching
        self._take_over(tuple(offer for offer in self.offers if offer is not clip))
        self._desk.jobs.analyse(
            lambda progress, should_stop: watching.file((clip,), progress, should_stop),
            self._filed,
            failed=self._not_filed,
        )

    def put_next_aside(self) -> None:
        """Do not offer the first clip again; its file stays where it is."""
        if self.offers:
            clip, watching = self.offers[0], self._desk.workbench.watching
            self._take_over(self.offers[1:])
            self._desk.jobs.store(lambda: watching.put_aside((clip,)))
            self._desk.tell(
                tr("{name} is not offered again; the file stays where it is.").format(
                    name=clip.path.name
                )
            )

    def _look_again(self) -> None:
        self._timer.setInterval(_EVERY_MS)
        self.look()

    def _look_if_offered(self) -> None:
        if self.offers:
            self.look()

    def _take_over(self, offers: tuple["ImportProposal", ...]) -> None:
        self._told = ""
        self.offers = offers
        self.changed.emit(offers)

    def _filed(self, rows: tuple["TakeRow", ...]) -> None:
        for row in rows:
            self._desk.tell(
                tr("Filed: {passage_name}, {practice_day}, take {number}.").format(
                    passage_name=row.passage_name, practice_day=row.practice_day, number=row.number
                )
            )
        self._desk.takesChanged.emit()
        self._desk.daysChanged.emit()

    def _not_filed(self, failure: PlainFailure) -> None:
        self._desk.tell_failure(failure)
        self.look()

    def _failed(self, failure: PlainFailure) -> None:
        # A folder that is away is told once, not every minute.
        if failure.sentence != self._told:
            self._told = failure.sentence
            self._desk.tell_failure(failure)
