"""Minutes in which the instrument really sounded, as the window follows them."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer, Signal

from app.ui.desk import Desk
from app.ui.language import tr

if TYPE_CHECKING:
    from app.services.sounding import SoundingOffer, SoundingService

_LOOK_MS = 1000
_LEAST_MIN = 0.5


class SoundingMinutes(QObject):
    """Listens, stops, and offers what was heard; no sound is kept.

    Signals
    -------
    changed(SoundingState or None)
        How far it is; ``None`` where nobody listens.
    offered(SoundingOffer or None)
        Minutes that could be kept; ``None`` once that is settled.
    """

    changed = Signal(object)
    offered = Signal(object)

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self._desk = desk
        self._offer: SoundingOffer | None = None
        self.is_on = False
        self._timer = QTimer(self, interval=_LOOK_MS)
        self._timer.timeout.connect(self._look)

    @property
    def _sounding(self) -> "SoundingService":
        # Loaded by the first work off the GUI thread that asks for it.
        return self._desk.workbench.sounding

    def toggle(self, device_key: str | None) -> None:
        """Begin to listen, or stop and offer the minutes."""
        if self.is_on:
            self.stop()
            return
        self._desk.jobs.device(
            lambda: self._sounding.start(device_key),
            lambda _: self._begun(),
            subject="sounding",
        )

    def stop(self) -> None:
        """Stop to listen; the minutes are offered."""
        if self.is_on:
            self._end()
            self._desk.jobs.store(self._sounding.stop, self._take_offer)

    def keep(self) -> None:
        """Keep the minutes that are offered."""
        offer, self._offer = self._offer, None
        self.offered.emit(None)
        if offer is not None:
            self._desk.jobs.store(
                lambda: self._sounding.keep(offer), lambda _: self._desk.daysChanged.emit()
            )

    def leave(self) -> None:
        """Do without the minutes that are offered."""
        self._offer = None
        self.offered.emit(None)

    def _begun(self) -> None:
        self.is_on = True
        self._timer.start()
        self._look()

    def _end(self) -> None:
        self.is_on = False
        self._timer.stop()
        self.changed.emit(None)

    def _look(self) -> None:
        state = self._sounding.state()
        self.changed.emit(state)
        if state.sentence:
            self._desk.tell(state.sentence)
            self.stop()

    def _take_offer(self, offer: "SoundingOffer | None") -> None:
        if offer is None or (offer.minutes < _LEAST_MIN and not offer.sentence):
            self._desk.tell(tr("The instrument was hardly heard; no minutes were added."))
            return
        self._offer = offer
        self.offered.emit(offer)
