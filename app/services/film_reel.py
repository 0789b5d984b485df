"""The pictures of a filmed take, brought up to the place that is heard, on a thread of its own.

While the take plays, the reel asks the player itself where it is, so that a busy window
does not hold the picture back; while it stands still, the reel waits to be told. Only the
picture that is due is made: one that comes too late is passed over. In a loop a second
decoder waits at the loop's start, because jumping back means decoding everything from the
key picture before.
"""

import logging
import math
import threading
import time
from collections.abc import Callable
from concurrent.futures import Future, ThreadPoolExecutor
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from app.journal.failures import PlainFailure
from app.services.views import PlaybackState
from audio.errors import AudioFailure

if TYPE_CHECKING:
    from audio.film import Film

Picture = NDArray[np.uint8]
Where = Callable[[], PlaybackState]
Show = Callable[[Picture, float, float], None]

_log = logging.getLogger(__name__)

_LONGEST_WAIT_S = 0.02
_SHORTEST_WAIT_S = 0.002
_LONGEST_LEAD_S = 0.06
_LEAD_MEMORY = 0.9
_BACK_AT_START_S = 1.0


class FilmReel:
    """Shows one film in step; made by :class:`app.services.filming.FilmingService`.

    Parameters
    ----------
    open_film : callable
        Opens the clip; called on the reel's threads, once for each decoder.
    where : callable
        Says where playback stands; instant.
    show : callable
        Told on the reel's thread of each picture: its pixels, shape (height, width, 3),
        its place in seconds, and the moment it was asked for on the monotonic clock.
    fail : callable
        Told once where the clip cannot be shown, on the reel's thread.
    """

    def __init__(
        self,
        open_film: "Callable[[], Film]",
        where: Where,
        show: Show,
        fail: Callable[[PlainFailure], None],
    ) -> None:
        self._open_film = open_film
        self._where = where
        self._show = show
        self._fail = fail
        self._film: Film | None = None
        self._standby = Standby(open_film)
        self._changed = threading.Event()
        self._quit = threading.Event()
        self._longest_side = 640
        self._lead_s = 0.0
        self._shown: tuple[float, int] | None = None
        self._thread = threading.Thread(target=self._work, name="film", daemon=True)
        self._thread.start()

    def look_again(self) -> None:
        """Playback moved, began or stopped: bring the picture up to it. Instant."""
        self._changed.set()

    def set_size(self, longest_side: int) -> None:
        """Make pictures no larger than this, in pixels, from now on. Instant."""
        self._longest_side = max(32, longest_side)
        self._changed.set()

    def delivered(self, asked_at_s: float) -> None:
        """Tell that a picture is on the screen; the next ones set out earlier by what it took."""
        after_s = time.monotonic() - asked_at_s
        lead_s = _LEAD_MEMORY * self._lead_s + (1.0 - _LEAD_MEMORY) * after_s
        self._lead_s = min(max(lead_s, 0.0), _LONGEST_LEAD_S)

    def close(self) -> None:
        """Let the thread end; it closes the clip itself. Instant."""
        self._quit.set()
        self._changed.set()

    def wait_closed(self, timeout_s: float = 5.0) -> bool:
        """Wait until the thread has ended; False where it takes longer."""
        self._thread.join(timeout_s)
        return not self._thread.is_alive()

    def _work(self) -> None:
        try:
            self._film = self._open_film()
            while not self._quit.is_set():
                self._changed.wait(self._step())
        except AudioFailure as failure:
            self._fail(PlainFailure(failure.sentence, failure.next_step))
        except Exception:
            _log.exception("The film stopped.")
            self._fail(PlainFailure("The picture stopped.", "Its sound goes on without it."))
        finally:
            if self._film is not None:
                self._film.close()
            self._standby.close()

    def _step(self) -> float | None:
        """Show what is due; returns how long to wait, ``None``: until told."""
        self._changed.clear()
        state = self._where()
        began_s = time.monotonic()
        place_s = _ahead(state, self._lead_s)
        film = self._film_for(place_s, state)
        start_s, end_s = film.span_at(place_s)
        due = (start_s, self._longest_side)
        if due != self._shown:
            picture = film.picture_at(max(place_s, start_s), self._longest_side)
            if self._quit.is_set():
                return 0.0
            self._shown = due
            self._show(picture, start_s, began_s)
        if not state.playing:
            return None
        left_s = (end_s - place_s) / max(state.speed, 0.01) - (time.monotonic() - began_s)
        if math.isinf(left_s):
            return _LONGEST_WAIT_S
        return min(max(left_s, _SHORTEST_WAIT_S), _LONGEST_WAIT_S)

    def _film_for(self, place_s: float, state: PlaybackState) -> "Film":
        """Give the decoder that is nearest; in a loop one waits at the start."""
        film = self._film
        assert film is not None  # noqa: S101 - opened before the first step
        if state.loop is None or not state.playing:
            return film
        start_s = state.loop[0]
        here_s = self._shown[0] if self._shown else -math.inf
        if place_s < here_s and 0.0 <= place_s - start_s < _BACK_AT_START_S:
            other = self._standby.take(start_s, film)
            if other is not None:
                self._film = film = other
        self._standby.park(start_s)
        return film


class Standby:
    """A second decoder that waits at a loop's start; it gets there on a thread of its own."""

    def __init__(self, open_film: "Callable[[], Film]") -> None:
        self._open_film = open_film
        self._thread: ThreadPoolExecutor | None = None
        self._spare: Film | None = None
        self._parked_s: float | None = None
        self._parking: Future[Film] | None = None

    def park(self, place_s: float) -> None:
        """Let the spare decoder wait at a place. Instant."""
        if self._parked_s == place_s or (self._parking and not self._parking.done()):
            return
        if self._thread is None:
            self._thread = ThreadPoolExecutor(1, thread_name_prefix="film-standby")
        self._collect()
        spare, self._spare, self._parked_s = self._spare, None, place_s
        self._parking = self._thread.submit(self._go, spare, place_s)

    def take(self, place_s: float, spare: "Film") -> "Film | None":
        """Give the waiting decoder in exchange for another; ``None``: it is not there yet."""
        if self._parked_s != place_s or self._parking is None or not self._parking.done():
            return None
        self._collect()
        film, self._spare, self._parked_s = self._spare, spare, None
        return film

    def close(self) -> None:
        """Close the spare decoder; waits for its thread."""
        if self._thread is not None:
            self._thread.shutdown(wait=True)
        self._collect()
        if self._spare is not None:
            self._spare.close()

    def _collect(self) -> None:
        parking, self._parking = self._parking, None
        if parking is not None and parking.exception() is None:
            self._spare = parking.result()

    def _go(self, spare: "Film | None", place_s: float) -> "Film":
        film = spare if spare is not None else self._open_film()
        film.span_at(place_s)
        return film


def _ahead(state: PlaybackState, lead_s: float) -> float:
    """Where playback will be once the picture is on the screen."""
    if not state.playing:
        return state.position_s
    place_s = state.position_s + lead_s * state.speed
    if state.loop is not None and state.position_s < state.loop[1] <= place_s:
        return state.loop[0] + (place_s - state.loop[1])
    return place_s
