"""The moving picture of a filmed take."""

import re
from collections.abc import Callable
from pathlib import Path, PurePosixPath
from typing import TYPE_CHECKING, NamedTuple

from app.journal.failures import PlainFailure
from app.journal.records import Take
from app.services.film_reel import FilmReel, Show
from app.services.playing import PlayingService
from app.services.records_there import take_there
from app.store.store import Store
from audio.errors import AudioFailure

if TYPE_CHECKING:
    from audio.film import Film

_SOUND_ONLY = frozenset((".wav", ".flac", ".mp3", ".ogg", ".opus", ".aif", ".aiff", ".m4a"))
_PART = re.compile(r"The part from (\d+):(\d\d\.\d) to .* which is kept whole as (\S+)\.")
"""What takes say that were trimmed before their files said it; to a tenth of a second."""


class _Clip(NamedTuple):
    """A clip, and where in its sound the take begins, in seconds."""

    path: Path
    from_s: float


class FilmingService:
    """Finds out which takes were filmed, and shows their pictures in step with the sound."""

    def __init__(self, store: Store, playing: PlayingService) -> None:
        self._store = store
        self._playing = playing
        self._clips: dict[str, _Clip] = {}

    def size(self, take_id: str) -> tuple[int, int] | None:
        """Give width and height of a take's pictures; ``None`` where it was not filmed.

        A take that is a part of a filmed clip shows the pictures of that part.

        Raises
        ------
        PlainFailure
            Where there is no such take.
        """
        clip = self._clip(take_id)
        if clip.path.suffix.lower() in _SOUND_ONLY:
            return None
        try:
            film = _open(clip)
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
            Its :meth:`size` was asked before.
        show, fail : callable
            Told on the reel's thread; see :class:`FilmReel`.
        """
        clip = self._clips.get(take_id) or self._clip(take_id)
        return FilmReel(lambda: _open(clip), self._playing.state, show, fail)

    def _clip(self, take_id: str) -> _Clip:
        take = take_there(self._store, take_id)
        clip = self._whole_clip(take) or _Clip(self._store.folders.absolute(take.file), 0.0)
        self._clips[take_id] = clip
        return clip

    def _whole_clip(self, take: Take) -> _Clip | None:
        """Find the clip that a take was cut from, where it is kept."""
        path = self._store.folders.absolute(take.file)
        if not take.original_name or path.suffix.lower() != ".flac":
            return None
        from audio.trimming import part_of  # noqa: PLC0415 - loads libsndfile

        name, from_s = part_of(path) or _said_part(take.ended)
        whole = self._store.folders.originals / PurePosixPath(name).name
        return _Clip(whole, from_s) if name and whole.is_file() else None


def _said_part(ended: str) -> tuple[str, float]:
    found = _PART.search(ended)
    if found is None:
        return "", 0.0
    return found[3], 60.0 * int(found[1]) + float(found[2])


def _open(clip: _Clip) -> "Film":
    from audio.film import Film  # noqa: PLC0415 - loads av, only for filmed takes

    return Film(clip.path, clip.from_s)
