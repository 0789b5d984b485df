"""The moving picture of a filmed take."""

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from app.journal.failures import PlainFailure
from app.services.film_reel import FilmReel, Show
from app.services.playing import PlayingService
from app.store.store import Store
from audio.errors import AudioFailure

if TYPE_CHECKING:
    from audio.film import Film

_SOUND_ONLY = frozenset((".wav", ".flac", ".mp3", ".ogg", ".opus", ".aif", ".aiff", ".m4a"))


class FilmingService:
    """Finds out which takes were filmed, and shows their pictures in step with the sound."""

    def __init__(self, store: Store, playing: PlayingService) -> None:
        self._store = store
        self._playing = playing

    def size(self, take_id: str) -> tuple[int, int] | None:
        """Give width and height of a take's pictures; ``None`` where it was not filmed.

        Raises
        ------
        PlainFailure
            Where there is no such take.
        """
        path = self._path(take_id)
        if path.suffix.lower() in _SOUND_ONLY:
            return None
        try:
            film = _open(path)
        except AudioFailure:
            return None  # no picture, or none that can be read: its sound is used without
        size = film.width, film.height
        film.close()
        return size

    def reel(
        self,
        take_id: str,
        show: Show,
        fail: Callable[[PlainFailure], None],
    ) -> FilmReel:
        """Show a take's pictures from now on; the caller closes the reel.

        Parameters
        ----------
        take_id : str
        show, fail : callable
            Told on the reel's thread; see :class:`FilmReel`.
        """
        path = self._path(take_id)
        return FilmReel(lambda: _open(path), self._playing.state, show, fail)

    def _path(self, take_id: str) -> Path:
        take = self._store.takes.get(take_id)
        if take is None or take.deleted_at is not None:
            raise PlainFailure("That take is not there.", "Choose a take of the journal.")
        return self._store.folders.absolute(take.file)


def _open(path: Path) -> "Film":
    from audio.film import Film  # noqa: PLC0415 - loads av, only for filmed takes

    return Film(path)
