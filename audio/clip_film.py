"""Write a film from pictures and sound, and say what a file tells about its maker.

H.264 and AAC in an MP4 container with its index in front, so that any phone plays it
while it still loads. No metadata is written: no place, no device, no dates.
"""

from collections.abc import Callable, Iterator
from fractions import Fraction
from pathlib import Path
from typing import Any

import av
import numpy as np
from numpy.typing import NDArray

from audio.clip_cutting import in_step
from audio.decoders import UndecodableError, open_container
from audio.errors import AudioFailure, name_taken
from audio.publishing import partial_name, publish, sync_file

Picture = NDArray[np.uint8]

_QUALITY = "21"
"""Constant rate factor of x264: 18 can hardly be told from the source, 23 is its default."""

_SOUND_BIT_RATE = 160_000
_SOUND_RATE_HZ = 48_000
_BLOCK_FRAMES = 48_000
_ENCODERS = ("libx264", "h264")
_CODEC_OWN_WORDS = frozenset(
    {
        "encoder", "handler_name", "vendor_id", "language",
        "major_brand", "minor_version", "compatible_brands",
    }
)  # fmt: skip
"""What every file of the kind has and that says nothing about its maker."""


class FilmStopped(Exception):  # noqa: N818 - asked for, not an error
    """The work was cancelled; nothing is left of the film."""


def write_film(
    target: Path,
    samples: NDArray[np.float32],
    sample_rate_hz: int,
    pictures: Iterator[Picture] | None = None,
    *,
    pictures_per_second: int = 25,
    should_stop: Callable[[], bool] | None = None,
    on_progress: Callable[[float], None] | None = None,
) -> None:
    """Write sound, and pictures if there are any, into a new file.

    Parameters
    ----------
    target : Path
        Ends in ``.mp4`` or, for sound alone, ``.m4a``; it must not exist.
    samples : ndarray of float32, shape (n, channels)
        One or two channels, full scale 1.
    sample_rate_hz : int
    pictures : iterator of ndarray of uint8, shape (height, width, 3), optional
        All of one size, even in both directions; taken until the sound is over.
    pictures_per_second : int
    should_stop, on_progress : callable, optional
        Asked, and told the share done, once a picture.

    Raises
    ------
    AudioFailure
        When the target exists.
    FilmStopped
        When `should_stop` says so.
    OSError
        When the disk refuses.
    """
    if target.exists():
        raise name_taken(target)
    partial = partial_name(target)
    kind = "mp4" if pictures is not None else "ipod"
    options = {"movflags": "+faststart", "fflags": "+bitexact"}
    try:
        with av.open(str(partial), "w", format=kind, options=options) as container:
            writer = _Writer(container, samples, sample_rate_hz)
            if pictures is not None:
                writer.write_pictures(pictures, pictures_per_second, should_stop, on_progress)
            writer.write_sound(should_stop)
        sync_file(partial)
        try:
            publish(partial, target)
        except FileExistsError as error:
            raise name_taken(target) from error
    finally:
        partial.unlink(missing_ok=True)
    if on_progress is not None:
        on_progress(1.0)


class _Writer:
    """One open file; every stream is made before the first packet."""

    def __init__(self, container: Any, samples: NDArray[np.float32], rate: int) -> None:
        self._container = container
        self._samples = samples
        self._rate = rate
        self._layout = "mono" if samples.shape[1] == 1 else "stereo"
        self._sound: Any = container.add_stream("aac", rate=_SOUND_RATE_HZ, layout=self._layout)
        self._sound.bit_rate = _SOUND_BIT_RATE

    def write_pictures(
        self,
        pictures: Iterator[Picture],
        per_second: int,
        should_stop: Callable[[], bool] | None,
        on_progress: Callable[[float], None] | None,
    ) -> None:
        count = max(1, round(len(self._samples) / self._rate * per_second))
        stream: Any = None
        for number in range(count):
            if should_stop is not None and should_stop():
                raise FilmStopped
            picture = next(pictures, None)
            if picture is None:
                break
            if stream is None:
                stream = self._picture_stream(picture, per_second)
            frame = av.VideoFrame.from_ndarray(np.ascontiguousarray(picture), format="rgb24")
            frame.pts = number
            frame.time_base = Fraction(1, per_second)
            self._container.mux(stream.encode(frame))
            if on_progress is not None:
                on_progress((number + 1) / count)
        if stream is not None:
            self._container.mux(stream.encode(None))

    def write_sound(self, should_stop: Callable[[], bool] | None) -> None:
        for part in in_step(self._resampled(should_stop), _SOUND_RATE_HZ):
            self._container.mux(self._sound.encode(part))
        self._container.mux(self._sound.encode(None))

    def _resampled(self, should_stop: Callable[[], bool] | None) -> Iterator[Any]:
        resampler = av.AudioResampler(format="fltp", layout=self._layout, rate=_SOUND_RATE_HZ)
        for start in range(0, len(self._samples), _BLOCK_FRAMES):
            if should_stop is not None and should_stop():
                raise FilmStopped
            block = np.clip(self._samples[start : start + _BLOCK_FRAMES], -1.0, 1.0)
            frame = av.AudioFrame.from_ndarray(
                np.ascontiguousarray(block.T, dtype=np.float32), format="fltp", layout=self._layout
            )
            frame.sample_rate = self._rate
            yield from resampler.resample(frame)
        yield from resampler.resample(None)

    def _picture_stream(self, first: Picture, per_second: int) -> Any:
        encoder = next(name for name in _ENCODERS if _can_encode(name))
        stream: Any = self._container.add_stream(encoder, rate=per_second)
        stream.height, stream.width = first.shape[:2]
        stream.pix_fmt = "yuv420p"
        if encoder == "libx264":
            stream.options = {"crf": _QUALITY, "preset": "veryfast"}
        return stream


def _can_encode(name: str) -> bool:
    try:
        av.codec.Codec(name, "w")
    except av.codec.codec.UnknownCodecError:
        return False
    return True


def told_by(path: Path) -> dict[str, str]:
    """Give what a file says beside sound and picture: dates, places, devices, titles.

    Parameters
    ----------
    path : Path
        Any sound file or clip.

    Returns
    -------
    dict
        Field to value, of the container and its streams; without what every file of
        the kind has.

    Raises
    ------
    AudioFailure
        When the file cannot be read.
    """
    try:
        container: Any = open_container(path)
    except UndecodableError as error:
        raise AudioFailure(f"{path.name} cannot be read.", "Choose another file.") from error
    with container:
        found = dict(container.metadata)
        for stream in container.streams:
            found |= dict(stream.metadata)
    return {
        key: value for key, value in sorted(found.items()) if key.lower() not in _CODEC_OWN_WORDS
    }
