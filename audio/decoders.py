"""The two libraries that turn a file into float blocks, behind one face."""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any, Protocol

import numpy as np
import soundfile
from numpy.typing import NDArray

from audio.errors import AudioFailure
from audio.pcm_file import read_layout

if TYPE_CHECKING:
    from av.container import InputContainer

_UNKNOWN = 2**62
"""libsndfile states about 2**63 frames where the header leaves the length open."""

_READ_FRAMES = 4096


@dataclass(frozen=True, slots=True)
class SoundInfo:
    """What the header of a sound file says.

    Attributes
    ----------
    frames : int or None
        Length in frames; None when only decoding would tell.
    sample_rate_hz, channels : int
        Format of the decoded sound.
    container, subtype : str
        Such as ``WAV`` and ``PCM_24``; FFmpeg's lower-case names for the rest.
    """

    frames: int | None
    sample_rate_hz: int
    channels: int
    container: str
    subtype: str

    @property
    def duration_s(self) -> float | None:
        """Length in seconds, if known."""
        return None if self.frames is None else self.frames / self.sample_rate_hz


class Decoder(Protocol):
    """One open file; blocks come in order, once.

    Attributes
    ----------
    info : SoundInfo
        What the header says.
    length_tolerance_frames : int
        How far the length in the header may be off in a sound file.
    """

    info: SoundInfo
    length_tolerance_frames: int

    def raw_blocks(self, block_frames: int) -> Iterator[NDArray[np.float32]]:
        """Yield float blocks of shape (n, channels), n at most `block_frames`."""

    def close(self) -> None:
        """Close the file."""


class LibsndfileDecoder:
    """WAV, FLAC, Ogg and their like, as libsndfile decodes them."""

    def __init__(self, path: Path) -> None:
        self._file = soundfile.SoundFile(path)
        frames = int(self._file.frames)
        self.info = SoundInfo(
            frames=_stated_frames(path, frames) if 0 <= frames <= _UNKNOWN else None,
            sample_rate_hz=int(self._file.samplerate),
            channels=int(self._file.channels),
            container=str(self._file.format),
            subtype=str(self._file.subtype),
        )
        self.length_tolerance_frames = 0

    def raw_blocks(self, block_frames: int) -> Iterator[NDArray[np.float32]]:
        """Yield float blocks of shape (n, channels)."""
        while True:
            block = np.empty((block_frames, self.info.channels), np.float32)
            filled = 0
            try:
                # Small reads: libsndfile gives nothing of a read that meets damage.
                while filled < block_frames:
                    part = self._file.read(out=block[filled : filled + _READ_FRAMES])
                    if not len(part):
                        break
                    filled += len(part)
            except soundfile.LibsndfileError:
                if filled:
                    yield block[:filled]
                raise
            if not filled:
                return
            yield block[:filled]

    def close(self) -> None:
        """Close the file."""
        self._file.close()


class UndecodableError(Exception):
    """FFmpeg's libraries cannot make sense of a file, or of a part of it."""


@contextmanager
def only_undecodable() -> Iterator[None]:
    """Turn every way in which PyAV gives up into :class:`UndecodableError`.

    Its errors share no base with Python's own, and damaged sizes end in others.

    Raises
    ------
    UndecodableError
        Instead of all of them.
    """
    import av  # noqa: PLC0415 - as below

    try:
        yield
    except (
        av.error.FFmpegError, OSError, EOFError, ValueError, LookupError, RuntimeError,
        ArithmeticError, MemoryError,
    ) as error:  # fmt: skip
        raise UndecodableError(str(error)) from error


def open_container(path: Path) -> "InputContainer":
    """Open a file with FFmpeg's libraries; odd letters in its tags are no reason to fail.

    Parameters
    ----------
    path : Path
        The file.

    Returns
    -------
    av.container.InputContainer
        To be closed by the caller.

    Raises
    ------
    UndecodableError
        Where the file is nothing that FFmpeg knows.
    """
    import av  # noqa: PLC0415 - loads a hundred libraries; only when needed

    # From 19 on PyAV keeps odd letters without being asked, and knows no such option.
    asks = int(av.__version__.split(".")[0]) < 19
    options: dict[str, Any] = {"metadata_errors": "replace"} if asks else {}
    with only_undecodable():
        container: InputContainer = av.open(str(path), "r", **options)
    return container


class FfmpegDecoder:
    """Phone clips and everything else, as FFmpeg's libraries decode them."""

    def __init__(self, path: Path) -> None:
        import av  # noqa: PLC0415 - loads a hundred libraries; only when needed

        self._av: Any = av
        self._container = open_container(path)
        stream = next(iter(self._container.streams.audio), None)
        if stream is None:
            has_video = bool(self._container.streams.video) and not _is_still(self._container)
            self._container.close()
            raise AudioFailure(*_no_sound(path, has_video))
        self._stream = stream
        try:
            with only_undecodable():
                self.info = self._read_info()
        except UndecodableError:
            self._container.close()
            raise
        # Only an index of all frames tells the length, give or take the encoder's
        # padding; elsewhere it is guessed from the bit rate.
        has_index = "mp4" in self.info.container
        self.length_tolerance_frames = self.info.sample_rate_hz // 2 if has_index else _UNKNOWN

    def _read_info(self) -> SoundInfo:
        context: Any = self._stream.codec_context
        if context is None:
            raise UndecodableError("no decoder for this kind of sound")
        duration_s: float | None = None
        if self._stream.duration is not None and self._stream.time_base is not None:
            duration_s = float(self._stream.duration * self._stream.time_base)
        elif self._container.duration is not None:
            duration_s = self._container.duration / 1_000_000
        rate = int(context.sample_rate)
        return SoundInfo(
            # A damaged header may state a length below nothing.
            frames=None if duration_s is None or duration_s < 0 else round(duration_s * rate),
            sample_rate_hz=rate,
            channels=int(context.layout.nb_channels),
            container=str(self._container.format.name),
            subtype=codec_name(context),
        )

    def raw_blocks(self, block_frames: int) -> Iterator[NDArray[np.float32]]:
        """Yield float blocks of shape (n, channels)."""
        resampler: Any = None
        frames: Iterator[Any] = self._container.decode(self._stream)
        with only_undecodable():
            for frame in frames:
                if resampler is None:
                    resampler = self._av.AudioResampler(
                        format="fltp", layout=frame.layout, rate=self.info.sample_rate_hz
                    )
                for part in resampler.resample(frame):
                    yield from _cut(part.to_ndarray().T, block_frames)
            if resampler is not None:
                for part in resampler.resample(None):
                    yield from _cut(part.to_ndarray().T, block_frames)

    def close(self) -> None:
        """Close the file."""
        self._container.close()


def codec_name(context: Any) -> str:
    """Name the codec of a stream, not the decoder that happens to be used.

    Parameters
    ----------
    context : av.CodecContext
        The decoder of an open stream.

    Returns
    -------
    str
        FFmpeg's name of the codec, such as ``aac`` or ``mp3``.
    """
    return str(context.codec.name).removesuffix("float")


def _is_still(container: Any) -> bool:
    """Whether what FFmpeg takes for a video is a picture, or text as a teletype would show it."""
    name = str(container.format.name)
    return name in {"tty", "image2"} or name.endswith("_pipe")


def _no_sound(path: Path, has_video: bool) -> tuple[str, str]:
    if has_video:
        return f"{path.name} is a video without a sound track.", "Choose a clip with sound."
    return f"{path.name} holds no sound.", "Choose another file."


def _cut(block: NDArray[np.float32], block_frames: int) -> Iterator[NDArray[np.float32]]:
    for start in range(0, len(block), block_frames):
        yield np.ascontiguousarray(block[start : start + block_frames], dtype=np.float32)


def _stated_frames(path: Path, frames: int) -> int:
    # libsndfile quietly shortens a WAV file that was cut off; its header knows better.
    layout = read_layout(path)
    if layout is None or layout.data_bytes is None:
        return frames
    return max(frames, layout.data_bytes // layout.frame_bytes)
