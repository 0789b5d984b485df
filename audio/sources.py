"""The sound to be played: an array, or a file that is too long to hold, at any rate."""

import math
import threading
from pathlib import Path
from typing import Any, Protocol

import numpy as np
import soundfile
from numpy.typing import NDArray

from audio.errors import AudioFailure
from audio.files import read_sound

FloatArray = NDArray[np.float32]

_EXACT_FORMATS = {"WAV", "WAVEX", "RF64", "FLAC", "AIFF"}
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


class FileSource:
    """A sound file that is read where it is needed, so that an hour opens at once.

    Parameters
    ----------
    path : Path
        A WAV, FLAC or AIFF file: those are found to the sample.

    Attributes
    ----------
    sample_rate_hz : int
        Its rate.
    is_broken : bool
        Whether reading failed since; silence stands in for what is missing.

    Raises
    ------
    AudioFailure
        When the file cannot be opened, or is of a kind that has to be decoded whole.
    """

    def __init__(self, path: Path) -> None:
        try:
            self._file = soundfile.SoundFile(path)
        except (soundfile.LibsndfileError, OSError, TypeError) as error:
            raise _not_seekable(path) from error
        if self._file.format not in _EXACT_FORMATS or not self._file.seekable():
            self._file.close()
            raise _not_seekable(path)
        self._lock = threading.Lock()
        self.frames = int(self._file.frames)
        self.channels = int(self._file.channels)
        self.sample_rate_hz = int(self._file.samplerate)
        self.is_broken = False

    def read(self, start: int, end: int) -> FloatArray:
        """Return frames `start` to `end`, cut to what there is."""
        start, end = max(start, 0), min(end, self.frames)
        block = np.zeros((max(end - start, 0), self.channels), np.float32)
        with self._lock:
            try:
                self._file.seek(start)
                there: FloatArray = self._file.read(len(block), dtype="float32", always_2d=True)
            except (soundfile.LibsndfileError, OSError, RuntimeError):
                # The disk went away while it plays: silence, and the place stays true.
                self.is_broken = True
                return block
        block[: len(there)] = there
        return np.nan_to_num(block, copy=False, nan=0.0, posinf=0.0, neginf=0.0)

    def close(self) -> None:
        """Close the file; reading gives silence from then on."""
        with self._lock:
            self._file.close()


class ResampledSource:
    """Another source's sound at another rate, converted where it is read.

    Parameters
    ----------
    source : SoundSource
        The sound.
    from_hz, to_hz : int
        Its rate and the rate wanted.
    """

    def __init__(self, source: SoundSource, from_hz: int, to_hz: int) -> None:
        shared = math.gcd(from_hz, to_hz)
        self._source = source
        self._from_hz, self._to_hz = from_hz, to_hz
        self._up, self._down = to_hz // shared, from_hz // shared
        self.frames = -(-source.frames * self._up // self._down)
        self.channels = source.channels

    def read(self, start: int, end: int) -> FloatArray:
        """Return frames `start` to `end`, cut to what there is."""
        start, end = max(start, 0), min(end, self.frames)
        if end <= start:
            return np.empty((0, self.channels), np.float32)
        # Begin where both grids coincide, so that every stretch read joins the next exactly.
        steps = max(0, (start * self._down // self._up - _CONTEXT_FRAMES) // self._down)
        last = end * self._down // self._up + _CONTEXT_FRAMES
        part = self._source.read(steps * self._down, last)
        converted = _convert(part, self._from_hz, self._to_hz)
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


class ScaledSource:
    """Another source's sound, louder or softer.

    Parameters
    ----------
    source : SoundSource
        The sound.
    gain_db : float
        What to add to its level; at most 0, so that nothing can be overdriven.

    Raises
    ------
    ValueError
        If the gain is above 0 dB.
    """

    def __init__(self, source: SoundSource, gain_db: float) -> None:
        if gain_db > 0.0:
            raise ValueError(f"a gain of {gain_db} dB could overdrive the sound")
        self._source = source
        self._gain = np.float32(10.0 ** (gain_db / 20.0))
        self.frames = source.frames
        self.channels = source.channels

    def read(self, start: int, end: int) -> FloatArray:
        """Return frames `start` to `end`, cut to what there is."""
        scaled: FloatArray = self._source.read(start, end) * self._gain
        return scaled


def open_source(path: Path) -> tuple[SoundSource, int]:
    """Open a file for playing: at once where that is possible, else decoded whole.

    Parameters
    ----------
    path : Path
        Any sound file or clip.

    Returns
    -------
    source : SoundSource
        For :meth:`audio.player.Player.load`.
    sample_rate_hz : int
        Its rate.

    Raises
    ------
    AudioFailure
        When the file cannot be read.
    """
    try:
        source = FileSource(path)
    except AudioFailure:
        sound = read_sound(path)
        return ArraySource(sound.samples), sound.sample_rate_hz
    return source, source.sample_rate_hz


def source_of(sound: "NDArray[np.float32] | SoundSource") -> SoundSource:
    """Take an array or a source as a source.

    Parameters
    ----------
    sound : ndarray of float32, shape (n,) or (n, channels), or SoundSource
        The sound.

    Returns
    -------
    SoundSource
        The source itself, or one that reads from the array.
    """
    if not isinstance(sound, np.ndarray):
        return sound
    return ArraySource(sound[:, np.newaxis] if sound.ndim == 1 else sound)


def make_source(
    source: SoundSource, sample_rate_hz: int, output_rate_hz: int, output_channels: int
) -> SoundSource:
    """Prepare a sound for an output; nothing is converted until it is read.

    Parameters
    ----------
    source : SoundSource
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
    if sample_rate_hz != output_rate_hz:
        source = ResampledSource(source, sample_rate_hz, output_rate_hz)
    return source if source.channels in (1, output_channels) else MixedSource(source)


def _not_seekable(path: Path) -> AudioFailure:
    return AudioFailure(f"{path.name} has to be decoded whole.", "Read it as a sound file.")


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
