"""The moving picture of the take that is shown, made off the window's thread."""

import threading
from dataclasses import dataclass

from PySide6.QtCore import QObject, Qt, Signal, Slot
from PySide6.QtGui import QImage

from app.journal.failures import PlainFailure
from app.services.film_reel import FilmReel, Picture
from app.ui.desk import Desk

_USUAL_SIDE_PX = 640
_SUBJECT = "listen.film"


@dataclass(frozen=True, slots=True)
class _Made:
    """A picture on its way to the screen, and which opening of a film it comes from."""

    opening: int
    image: QImage
    place_s: float
    asked_at_s: float


class FilmDesk(QObject):
    """Opens and closes reels, and hands on the newest picture only.

    Signals
    -------
    sized(int, int)
        The take has pictures of this width and height; nought for both where it has none.
    shown(QImage, float)
        The picture that is due, and its place in seconds.
    """

    sized = Signal(int, int)
    shown = Signal(object, float)
    _arrived = Signal()
    _failed = Signal(int, object)

    def __init__(self, desk: Desk, parent: QObject) -> None:
        super().__init__(parent)
        self._desk = desk
        self._filming = desk.workbench.filming
        self._reel: FilmReel | None = None
        self._opening = 0
        self._lock = threading.Lock()
        self._newest: _Made | None = None
        self._longest_side = _USUAL_SIDE_PX
        self._take_id = ""
        # Queued explicitly: pictures come from a thread that Qt did not start.
        self._arrived.connect(self._take_newest, Qt.ConnectionType.QueuedConnection)
        self._failed.connect(self._tell_failure, Qt.ConnectionType.QueuedConnection)

    @property
    def is_open(self) -> bool:
        """True while pictures come."""
        return self._reel is not None

    def look_at(self, take_id: str) -> None:
        """Find out whether a take was filmed; :attr:`sized` tells. Empty: no take."""
        if take_id == self._take_id:
            return
        self.close()
        self._take_id = take_id
        self._desk.jobs.forget(_SUBJECT)
        if not take_id:
            self.sized.emit(0, 0)
            return
        filming = self._filming
        self._desk.jobs.analyse(
            lambda _progress, _should_stop: filming.size(take_id) or (0, 0),
            lambda size: self.sized.emit(*size),
            subject=_SUBJECT,
        )

    def open(self) -> None:
        """Let pictures come."""
        if self._reel is not None or not self._take_id:
            return
        self._opening += 1
        opening = self._opening
        self._reel = self._filming.reel(
            self._take_id,
            lambda picture, place_s, asked_at_s: self._keep(opening, picture, place_s, asked_at_s),
            lambda failure: self._failed.emit(opening, failure),
        )
        self._reel.set_size(self._longest_side)

    def close(self) -> None:
        """Let no more pictures come; the reel's thread ends by itself. Instant."""
        reel, self._reel = self._reel, None
        self._opening += 1
        if reel is not None:
            reel.close()

    def look_again(self) -> None:
        """Playback moved: bring the picture up to it."""
        if self._reel is not None:
            self._reel.look_again()

    def set_size(self, longest_side: int) -> None:
        """Make pictures as large as they are shown."""
        self._longest_side = longest_side
        if self._reel is not None:
            self._reel.set_size(longest_side)

    def _keep(self, opening: int, picture: Picture, place_s: float, asked_at_s: float) -> None:
        """Put a picture where the window finds it; runs on the reel's thread."""
        height, width, channels = picture.shape
        image = QImage(
            picture.data, width, height, channels * width, QImage.Format.Format_RGB888
        ).copy()
        with self._lock:
            is_told = self._newest is not None
            self._newest = _Made(opening, image, place_s, asked_at_s)
        if not is_told:
            self._arrived.emit()

    @Slot()
    def _take_newest(self) -> None:
        with self._lock:
            made, self._newest = self._newest, None
        if made is None or made.opening != self._opening or self._reel is None:
            return
        self.shown.emit(made.image, made.place_s)
        self._reel.delivered(made.asked_at_s)

    @Slot(int, object)
    def _tell_failure(self, opening: int, failure: PlainFailure) -> None:
        if opening == self._opening:
            self.close()
            self.sized.emit(0, 0)
            self._desk.tell_failure(failure)
