"""The pictures of a filmed take, found by the place in its sound.

Phones film at changing frame rates and hold the camera upright: pictures are
found by their own time stamps and turned the right way up.
"""

import math
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray

from audio.decoders import UndecodableError, only_undecodable, open_container
from audio.errors import AudioFailure

Picture = NDArray[np.uint8]

_LONGEST_WALK_S = 2.0
"""Farther ahead than this, jumping to a key picture is cheaper than decoding all between."""


class Film:
    """The pictures of one clip; for one worker thread, never for the window's.

    Parameters
    ----------
    path : Path
        A clip with pictures that move.
    from_s : float
        Where in the clip's sound place 0 is; not 0 where only a part of it is heard.

    Attributes
    ----------
    width, height : int
        Size as it is to be shown, turned the right way up.

    Raises
    ------
    AudioFailure
        When there are no pictures or they cannot be decoded.
    """

    def __init__(self, path: Path, from_s: float = 0.0) -> None:
        self._path = path
        try:
            self._container: Any = open_container(path)
        except UndecodableError as error:
            raise self._failure("cannot be read") from error
        streams: list[Any] = [s for s in self._container.streams.video if not _is_cover(s)]
        if not streams or streams[0].codec_context is None:
            self._container.close()
            raise self._failure("has no moving picture")
        self._stream: Any = streams[0]
        self._stream.thread_type = "AUTO"
        # The sound may begin after the picture.
        self._sound_begins_s = from_s + max(
            (_start_s(sound) for sound in self._container.streams.audio[:1]), default=0.0
        )
        self._frames: Iterator[Any] = iter(())
        self._current: Any = None
        self._next: Any = None
        self._begin()
        first: Any = self._current
        turned = self._quarter_turns() % 2
        size = first.width, first.height
        self.width, self.height = size[::-1] if turned else size

    def picture_at(self, position_s: float, longest_side: int = 1280) -> Picture:
        """Return what was to be seen while a place sounded.

        Parameters
        ----------
        position_s : float
            Seconds of the sound; the first or last picture beyond either end.
        longest_side : int
            Larger pictures are made smaller to this many pixels.

        Returns
        -------
        ndarray of uint8, shape (height, width, 3)
            Red, green and blue, turned the right way up.

        Raises
        ------
        AudioFailure
            When the clip is damaged there.
        """
        wanted_s = position_s + self._sound_begins_s
        try:
            with only_undecodable():
                self._find(wanted_s)
                return self._shown(longest_side)
        except UndecodableError as error:
            raise self._failure(f"is damaged {position_s:.1f} s after its start") from error

    def span_at(self, position_s: float) -> tuple[float, float]:
        """Find the picture of a place without making it, and say how long it is shown.

        Parameters
        ----------
        position_s : float
            Seconds of the sound.

        Returns
        -------
        (start_s, end_s) : tuple of float
            Seconds of the sound; the last picture ends never (infinity).

        Raises
        ------
        AudioFailure
            When the clip is damaged there.
        """
        try:
            with only_undecodable():
                self._find(position_s + self._sound_begins_s)
        except UndecodableError as error:
            raise self._failure(f"is damaged {position_s:.1f} s after its start") from error
        end_s = math.inf if self._next is None else _time_s(self._next)
        return _time_s(self._current) - self._sound_begins_s, end_s - self._sound_begins_s

    def close(self) -> None:
        """Close the clip."""
        self._container.close()

    def _begin(self) -> None:
        try:
            self._jump(0.0)
        except UndecodableError as error:
            self._container.close()
            raise self._failure("cannot be decoded") from error
        if self._current is None:
            self._container.close()
            raise self._failure("has nothing that can be decoded")

    def _find(self, wanted_s: float) -> None:
        wanted_s = max(wanted_s, _start_s(self._stream))
        if wanted_s < _time_s(self._current) or wanted_s > _time_s(self._current) + _LONGEST_WALK_S:
            self._jump(wanted_s)
        while self._next is not None and _time_s(self._next) <= wanted_s:
            self._step()

    def _jump(self, wanted_s: float) -> None:
        """Begin anew at the key picture before a moment."""
        with only_undecodable():
            self._container.seek(round(wanted_s / self._stream.time_base), stream=self._stream)
            self._frames = (
                frame for frame in self._container.decode(self._stream) if frame.pts is not None
            )
            kept = self._current
            self._current, self._next = None, next(self._frames, None)
            self._step()
            if self._current is None:
                self._current = kept

    def _step(self) -> None:
        if self._next is not None:
            self._current = self._next
            self._next = next(self._frames, None)

    def _shown(self, longest_side: int) -> Picture:
        frame = self._current
        scale = min(1.0, longest_side / max(frame.width, frame.height))
        small = frame.reformat(
            width=max(2, round(frame.width * scale)),
            height=max(2, round(frame.height * scale)),
            format="rgb24",
        )
        picture: Picture = np.rot90(small.to_ndarray(), self._quarter_turns())
        return np.ascontiguousarray(picture)

    def _quarter_turns(self) -> int:
        turns: int = round(self._current.rotation / 90) % 4
        return turns

    def _failure(self, what: str) -> AudioFailure:
        return AudioFailure(
            f"The picture of {self._path.name} {what}.", "Its sound can be used without it."
        )


def _time_s(frame: Any) -> float:
    return float(frame.pts * frame.time_base)


def _start_s(stream: Any) -> float:
    return float((stream.start_time or 0) * stream.time_base)


def _is_cover(stream: Any) -> bool:
    import av  # noqa: PLC0415 - loaded by now

    return bool(stream.disposition & av.stream.Disposition.attached_pic)
