"""Open any sound file as a stream of float blocks.

libsndfile reads WAV, FLAC, Ogg and their like; MP3 and everything else, such as
the clips of a phone, goes through FFmpeg's libraries.
"""

from collections.abc import Iterator
from contextlib import AbstractContextManager, nullcontext
from dataclasses import dataclass
from pathlib import Path
from types import TracebackType
from typing import TYPE_CHECKING, Any, Protocol, Self

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
            frames=None if frames > _UNKNOWN else _stated_frames(path, frames),
            sample_rate_hz=int(self._file.samplerate),
            channels=int(self._file.channels),
            container=str(self._file.format),
            subtype=str(self._file.subtype),
        )
        self.length_tolerance_frames = 0

    def raw_blocks(self, block_frames: int) -> Iterator[NDArray[np.float32]]:
        """Yield float blocks of shape (n, channels)."""
        # Small reads: libsndfile gives nothing of a read that meets damage.
        step = min(block_frames, _READ_FRAMES)
        while True:
            block: NDArray[np.float32] = self._file.read(step, dtype="float32", always_2d=True)
            if not len(block):
                return
            yield block

    def close(self) -> None:
        """Close the file."""
        self._file.close()


class FfmpegDecoder:
    """Phone clips and everything else, as FFmpeg's libraries decode them."""

    def __init__(self, path: Path) -> None:
        import av  # noqa: PLC0415 - loads a hundred libraries; only when needed

        self._av: Any = av
        self._container: InputContainer = av.open(str(path), metadata_errors="replace")
        stream = next(iter(self._container.streams.audio), None)
        if stream is None:
            has_video = bool(self._container.streams.video)
            self._container.close()
            raise AudioFailure(*_no_sound(path, has_video))
        self._stream = stream
        self.info = self._read_info()
        # Only an index of all frames tells the length, give or take the encoder's
        # padding; elsewhere it is guessed from the bit rate.
        has_index = "mp4" in self.info.container
        self.length_tolerance_frames = self.info.sample_rate_hz // 2 if has_index else _UNKNOWN

    def _read_info(self) -> SoundInfo:
        context = self._stream.codec_context
        duration_s: float | None = None
        if self._stream.duration is not None and self._stream.time_base is not None:
            duration_s = float(self._stream.duration * self._stream.time_base)
        elif self._container.duration is not None:
            duration_s = self._container.duration / 1_000_000
        rate = int(context.sample_rate)
        return SoundInfo(
            frames=None if duration_s is None else round(duration_s * rate),
            sample_rate_hz=rate,
            channels=int(context.layout.nb_channels),
            container=str(self._container.format.name),
            subtype=codec_name(context),
        )

    def raw_blocks(self, block_frames: int) -> Iterator[NDArray[np.float32]]:
        """Yield float blocks of shape (n, channels)."""
        resampler: Any = None
        frames: Iterator[Any] = self._container.decode(self._stream)
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
        except (OSError, ValueError, soundfile.LibsndfileError) as error:
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
    try:
        decoder: Decoder = LibsndfileDecoder(path)
        if decoder.info.container == "MP3":
            # The soundfile package seeks after every block it reads, and libsndfile
            # lands in the wrong place in MP3: only the first block would be right.
            decoder.close()
            decoder = _open_with_ffmpeg(path)
    except (soundfile.LibsndfileError, OSError):
        decoder = _open_with_ffmpeg(path)
    if decoder.info.sample_rate_hz <= 0 or decoder.info.channels <= 0 or decoder.info.frames == 0:
        decoder.close()
        raise AudioFailure(f"{path.name} holds no sound.", "Choose another file.")
    return OpenSound(path, decoder, keep_readable=keep_readable)


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


def _open_with_ffmpeg(path: Path) -> Decoder:
    try:
        return FfmpegDecoder(path)
    except (OSError, ValueError, LookupError, RuntimeError) as error:
        if isinstance(error, PermissionError):
            raise AudioFailure(*_not_allowed(path)) from error
        raise AudioFailure(
            f"{path.name} is not a sound file that can be read here.",
            "Choose a WAV, FLAC, OGG, MP3, M4A, MP4 or MOV file.",
        ) from error


def _check_present(path: Path) -> None:
    try:
        size = path.stat().st_size
        with nullcontext() if path.is_dir() else path.open("rb"):
            pass
    except FileNotFoundError as error:
        raise AudioFailure(
            f"{path.name} is not there.", "Check the name and the folder."
        ) from error
    except OSError as error:
        raise AudioFailure(*_not_allowed(path)) from error
    if path.is_dir():
        raise AudioFailure(f"{path.name} is a folder, not a sound file.", "Choose a file in it.")
    if size == 0:
        raise AudioFailure(f"{path.name} is empty.", "Copy the file again from where it was made.")


def _not_allowed(path: Path) -> tuple[str, str]:
    return f"{path.name} may not be read.", "Check the permissions of the file and its folder."


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
