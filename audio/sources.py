"""The sound to be played, at the output's rate."""

import math
from typing import Any, Protocol

import numpy as np
from numpy.typing import NDArray

FloatArray = NDArray[np.float32]

_CONTEXT_FRAMES = 256
"""More than half the length of the rate converter's filter."""


class SoundSource(Protocol):
    """Frames that can be read from anywhere."""

    frames: int
    channels: int

    def read(self, start: int, end: int) -> FloatArray:
        """Return frames `start` to `end`, cut to what there is, shape (n, channels)."""


class ArraySource:
    """An array that has the right rate already.

    Parameters
    ----------
    samples : ndarray of float32, shape (n, channels)
        The sound; it is not copied.
    """

    def __init__(self, samples: FloatArray) -> None:
        self._samples = samples
        self.frames = len(samples)
        self.channels = int(samples.shape[1])

    def read(self, start: int, end: int) -> FloatArray:
        """Return frames `start` to `end`, cut to what there is."""
        return self._samples[max(start, 0) : max(end, 0)]


class ResampledSource:
    """An array of another rate, converted where it is read.

    Parameters
    ----------
    samples : ndarray of float32, shape (n, channels)
        The sound; it is not copied.
    from_hz, to_hz : int
        Its rate and the rate wanted.
    """

    def __init__(self, samples: FloatArray, from_hz: int, to_hz: int) -> None:
        shared = math.gcd(from_hz, to_hz)
        self._samples = samples
        self._from_hz, self._to_hz = from_hz, to_hz
        self._up, self._down = to_hz // shared, from_hz // shared
        self.frames = -(-len(samples) * self._up // self._down)
        self.channels = int(samples.shape[1])

    def read(self, start: int, end: int) -> FloatArray:
        """Return frames `start` to `end`, cut to what there is."""
        start, end = max(start, 0), min(end, self.frames)
        if end <= start:
            return np.empty((0, self.channels), np.float32)
        # Begin where both grids coincide, so that every stretch read joins the next exactly.
        steps = max(0, (start * self._down // self._up - _CONTEXT_FRAMES) // self._down)
        last = end * self._down // self._up + _CONTEXT_FRAMES
        converted = _convert(self._samples[steps * self._down : last], self._from_hz, self._to_hz)
        offset = start - steps * self._up
        return converted[offset : offset + end - start]


class MixedSource:
    """Another source with its channels averaged to one.

    Parameters
    ----------
    source : SoundSource
        The sound.
    """

    channels = 1

    def __init__(self, source: SoundSource) -> None:
        self._source = source
        self.frames = source.frames

    def read(self, start: int, end: int) -> FloatArray:
        """Return frames `start` to `end`, cut to what there is."""
        mixed: FloatArray = self._source.read(start, end).mean(
            axis=1, keepdims=True, dtype=np.float32
        )
        return mixed


def make_source(
    samples: NDArray[np.float32], sample_rate_hz: int, output_rate_hz: int, output_channels: int
) -> SoundSource:
    """Prepare a sound for an output; nothing is converted until it is read.

    Parameters
    ----------
    samples : ndarray of float32, shape (n,) or (n, channels)
        The sound.
    sample_rate_hz : int
        Its rate.
    output_rate_hz, output_channels : int
        What the output runs at.

    Returns
    -------
    SoundSource
        With as many channels as the output, or one that is meant for all of them.
    """
    columns = samples[:, np.newaxis] if samples.ndim == 1 else samples
    source: SoundSource = (
        ArraySource(columns)
        if sample_rate_hz == output_rate_hz
        else ResampledSource(columns, sample_rate_hz, output_rate_hz)
    )
    return source if source.channels in (1, output_channels) else MixedSource(source)


def _convert(samples: FloatArray, from_hz: int, to_hz: int) -> FloatArray:
    import av  # noqa: PLC0415 - loads a hundred libraries; only when rates differ

    channels = samples.shape[1]
    layout = av.AudioLayout("mono" if channels == 1 else f"{channels}c")
    frame: Any = av.AudioFrame.from_ndarray(
        np.ascontiguousarray(samples.T), format="fltp", layout=layout
    )
    frame.sample_rate = from_hz
    resampler = av.AudioResampler(format="fltp", layout=layout, rate=to_hz)
    parts = [part.to_ndarray() for part in (*resampler.resample(frame), *resampler.resample(None))]
    return np.concatenate(parts, axis=1).T.astype(np.float32, copy=False)
