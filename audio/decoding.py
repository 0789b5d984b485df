"""Open any sound file as a stream of float blocks.

libsndfile reads WAV, FLAC, Ogg and their like; MP3 and everything else, such as
the clips of a phone, goes through FFmpeg's libraries.
"""

import stat
from collections.abc import Iterator
from contextlib import AbstractContextManager, nullcontext
from pathlib import Path
from types import TracebackType
from typing import Self

import numpy as np
import soundfile
from numpy.typing import NDArray

from audio.decoders import (
    Decoder,
    FfmpegDecoder,
    LibsndfileDecoder,
    SoundInfo,
    UndecodableError,
    codec_name,
)
from audio.errors import AudioFailure

__all__ = ["OpenSound", "SoundInfo", "codec_name", "open_sound"]

_NAMED = frozenset((".wav", ".flac", ".ogg", ".mp3", ".m4a", ".mp4", ".mov"))
"""Files with these names can be read, unless they are broken."""


class OpenSound(AbstractContextManager["OpenSound"]):
    """A sound file that is read block by block, cleaned of non-finite samples.

    Parameters
    ----------
    path : Path
        The file, for the sentences of failures.
    decoder : Decoder
        The open file.
    keep_readable : bool
        Whether the readable part of a damaged file is enough.

    Attributes
    ----------
    info : SoundInfo
        What the header says.
    frames_read : int
        How far the blocks have come.
    non_finite_samples : int
        NaN and infinite samples met so far; they were replaced by zero.
    damage : str or None
        With `keep_readable`, one plain sentence on where the file breaks off.
    """

    def __init__(self, path: Path, decoder: Decoder, *, keep_readable: bool) -> None:
        self._path = path
        self._decoder = decoder
        self._keep_readable = keep_readable
        self.info = decoder.info
        self.frames_read = 0
        self.non_finite_samples = 0
        self.damage: str | None = None

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self._decoder.close()

    def blocks(self, block_frames: int = 65536) -> Iterator[NDArray[np.float32]]:
        """Read on.

        Parameters
        ----------
        block_frames : int
            Longest block wanted.

        Yields
        ------
        ndarray of float32, shape (n, channels)
            The next samples, 1.0 is full scale, all finite.

        Raises
        ------
        AudioFailure
            When the file is damaged or ends before its header says, unless
            the readable part was asked for.
        """
        try:
            for block in self._decoder.raw_blocks(block_frames):
                self.frames_read += len(block)
                yield self._finite(block)
        except (OSError, UndecodableError, soundfile.LibsndfileError) as error:
            self._report(
                f"{self._path.name} is damaged {self._seconds(self.frames_read)} s after its start."
            )
            if not self._keep_readable:
                raise AudioFailure(*self._failure()) from error
        else:
            self._check_length()

    def _finite(self, block: NDArray[np.float32]) -> NDArray[np.float32]:
        finite = np.isfinite(block)
        if finite.all():
            return block
        self.non_finite_samples += int(block.size - np.count_nonzero(finite))
        return np.where(finite, block, np.float32(0))

    def _check_length(self) -> None:
        stated = self.info.frames
        if stated is None or self.frames_read >= stated - self._decoder.length_tolerance_frames:
            return
        self._report(
            f"{self._path.name} ends early: {self._seconds(self.frames_read)} s of "
            f"{self._seconds(stated)} s are there."
        )
        if not self._keep_readable:
            raise AudioFailure(*self._failure())

    def _report(self, sentence: str) -> None:
        self.damage = sentence

    def _failure(self) -> tuple[str, str]:
        return str(self.damage), "Copy the file again from where it was made, or use another one."

    def _seconds(self, frames: int) -> str:
        return f"{frames / self.info.sample_rate_hz:.1f}"


def open_sound(path: Path, *, keep_readable: bool = False) -> OpenSound:
    """Open a sound file of any kind for reading block by block.

    Parameters
    ----------
    path : Path
        WAV, FLAC, Ogg, MP3, or anything FFmpeg's libraries read.
    keep_readable : bool
        Deliver the readable part of a damaged file instead of failing;
        :attr:`OpenSound.damage` then says where it breaks off.

    Returns
    -------
    OpenSound
        To be used in a ``with`` statement.

    Raises
    ------
    AudioFailure
        When the file is missing, empty, holds no sound or cannot be decoded.
    """
    _check_present(path)
    decoder = _open_with_libsndfile(path) or _open_with_ffmpeg(path)
    if decoder.info.sample_rate_hz <= 0 or decoder.info.channels <= 0 or decoder.info.frames == 0:
        decoder.close()
        raise AudioFailure(f"{path.name} holds no sound.", "Choose another file.")
    return OpenSound(path, decoder, keep_readable=keep_readable)


def _open_with_libsndfile(path: Path) -> Decoder | None:
    with path.open("rb") as file:
        head = file.read(3)
    if head == b"ID3" or (head[:1] == b"\xff" and head[1:2] >= b"\xe0"):
        # MPEG audio. The soundfile package seeks after every block it reads, and
        # libsndfile lands in the wrong place there: only the first block would be right.
        return None
    try:
        return LibsndfileDecoder(path)
    except (soundfile.LibsndfileError, OSError, TypeError):
        return None  # TypeError: a name ending in .raw, where the package wants to be told more


def _open_with_ffmpeg(path: Path) -> Decoder:
    try:
        return FfmpegDecoder(path)
    except UndecodableError as error:
        is_broken = path.suffix.lower() in _NAMED
        raise AudioFailure(
            f"{path.name} is not a sound file that can be read here.",
            "Copy the file again from where it was made, or use another one."
            if is_broken
            else "Choose a WAV, FLAC, OGG, MP3, M4A, MP4 or MOV file.",
        ) from error


def _check_present(file: Path) -> None:
    path = file.name or str(file)
    if not _is_text(str(file)):
        path = path.encode("utf-8", "backslashreplace").decode("utf-8")
        raise AudioFailure(f"The name {path} holds bytes that are no text.", "Rename the file.")
    try:
        kind = file.stat()
        # A pipe would be waited for until somebody writes into it.
        with file.open("rb") if stat.S_ISREG(kind.st_mode) else nullcontext():
            pass
    except FileNotFoundError as error:
        raise AudioFailure(f"{path} is not there.", "Check the name and the folder.") from error
    except OSError as error:
        raise AudioFailure(*_not_allowed(file)) from error
    if stat.S_ISDIR(kind.st_mode):
        raise AudioFailure(f"{path} is a folder, not a sound file.", "Choose a file in it.")
    if not stat.S_ISREG(kind.st_mode):
        raise AudioFailure(
            f"{path} is a device or a pipe, not a sound file.", "Choose a file on a disk."
        )
    size = kind.st_size
    if size == 0:
        raise AudioFailure(f"{path} is empty.", "Copy the file again from where it was made.")


def _is_text(name: str) -> bool:
    try:
        name.encode("utf-8")
    except UnicodeEncodeError:
        return False
    return True


def _not_allowed(path: Path) -> tuple[str, str]:
    return f"{path.name} may not be read.", "Check the permissions of the file and its folder."
