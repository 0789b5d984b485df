"""Short pieces cut out of a recording, small enough to travel inside a page."""

import io
import math
from collections.abc import Iterable, Iterator
from fractions import Fraction
from pathlib import Path
from typing import Any

import av
import numpy as np
from numpy.typing import NDArray

from audio.errors import AudioFailure
from audio.sources import open_source

CLIP_RATE_HZ = 44_100
_FADE_S = 0.015
_BIT_RATE = 96_000


def cut_clip(path: Path, start_s: float, end_s: float) -> bytes:
    """Cut a piece out of a recording as AAC in an MP4 container.

    Parameters
    ----------
    path : Path
        Any sound file or clip; it is only read.
    start_s, end_s : float
        From where to where, seconds; drawn back to the ends of the recording.

    Returns
    -------
    bytes
        One or two channels at 44.1 kHz, faded in and out over 15 ms.

    Raises
    ------
    AudioFailure
        When the recording cannot be read, or nothing of it lies between the two.
    """
    samples, rate = cut(path, start_s, end_s, fade_s=_FADE_S)
    return encode_aac(samples, rate)


def cut(
    path: Path, start_s: float, end_s: float, *, fade_s: float
) -> tuple[NDArray[np.float32], int]:
    """Read a piece of a recording, faded in and out.

    Parameters
    ----------
    path : Path
        Any sound file or clip; it is only read.
    start_s, end_s : float
        From where to where, seconds; drawn back to the ends of the recording.
    fade_s : float
        At each end, seconds; at most half of the piece.

    Returns
    -------
    samples : ndarray of float32, shape (n, channels)
        One or two channels; more are mixed into one.
    sample_rate_hz : int

    Raises
    ------
    AudioFailure
        When the recording cannot be read, or nothing of it lies between the two.
    """
    source, rate = open_source(path)
    try:
        start = max(0, round(start_s * rate))
        end = min(source.frames, math.ceil(end_s * rate))
        if end <= start:
            raise AudioFailure(
                f"{path.name} has no sound there.", "Choose a place inside the recording."
            )
        samples = source.read(start, end)
    finally:
        close = getattr(source, "close", None)
        if close is not None:
            close()
    return _faded(_at_most_two(samples), round(fade_s * rate)), rate


def encode_aac(samples: NDArray[np.float32], sample_rate_hz: int) -> bytes:
    """Encode sound as AAC in an MP4 container.

    Parameters
    ----------
    samples : ndarray of float32, shape (n, channels)
        One or two channels, full scale 1; louder samples are limited.
    sample_rate_hz : int

    Returns
    -------
    bytes
        At 44.1 kHz, about 96 kbit/s.
    """
    out = io.BytesIO()
    channels = samples.shape[1]
    layout = "mono" if channels == 1 else "stereo"
    # The name tells FFmpeg the container; nothing of that name is written.
    with av.open(out, "w", format="ipod") as container:
        stream: Any = container.add_stream("aac", rate=CLIP_RATE_HZ, layout=layout)
        stream.bit_rate = _BIT_RATE
        planes = np.ascontiguousarray(np.clip(samples, -1.0, 1.0).T, dtype=np.float32)
        frame = av.AudioFrame.from_ndarray(planes, format="fltp", layout=layout)
        frame.sample_rate = sample_rate_hz
        resampler = av.AudioResampler(format="fltp", layout=layout, rate=CLIP_RATE_HZ)
        parts = (*resampler.resample(frame), *resampler.resample(None))
        for part in in_step(parts, CLIP_RATE_HZ):
            for packet in stream.encode(part):
                container.mux(packet)
        for packet in stream.encode(None):
            container.mux(packet)
    return out.getvalue()


def in_step(parts: Iterable[Any], sample_rate_hz: int) -> Iterator[Any]:
    """Let resampled parts follow each other without a gap, for an encoder.

    The resampler rounds its own times: at some lengths its last part begins before the
    one before it has ended, and no container takes that.

    Parameters
    ----------
    parts : iterable of av.AudioFrame
        All parts of one sound, in their order.
    sample_rate_hz : int
        That of the parts.
    """
    begins = 0
    for part in parts:
        part.pts, part.time_base = begins, Fraction(1, sample_rate_hz)
        begins += part.samples
        yield part


def _at_most_two(samples: NDArray[np.float32]) -> NDArray[np.float32]:
    if samples.ndim == 1:
        return samples[:, np.newaxis]
    if samples.shape[1] <= 2:
        return samples
    mixed: NDArray[np.float32] = samples.mean(axis=1, keepdims=True, dtype=np.float32)
    return mixed


def _faded(samples: NDArray[np.float32], length: int) -> NDArray[np.float32]:
    length = min(len(samples) // 2, length)
    if not length:
        return samples
    faded = np.array(samples, dtype=np.float32)
    ramp = (0.5 - 0.5 * np.cos(np.pi * (np.arange(length) + 0.5) / length)).astype(np.float32)
    faded[:length] *= ramp[:, np.newaxis]
    faded[-length:] *= ramp[::-1, np.newaxis]
    return faded
