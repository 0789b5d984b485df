"""Lowest and highest samples at several resolutions, for drawing long sounds.

A lane is a thousand pixels wide, a take can have a hundred million samples:
minima and maxima of 256 frames, then of four bins of the level below and so
on, let any stretch of the take be drawn from a few thousand numbers.
"""

import contextlib
import zipfile
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from audio.publishing import partial_name
from audio.sources import SoundSource, source_of

BASE_FRAMES = 256
"""Frames in a bin of the finest level."""

_FACTOR = 4
_SMALLEST_LEVEL = 512
_FORMAT = 1

FloatArray = NDArray[np.float32]


@dataclass(frozen=True, slots=True)
class _Level:
    bin_frames: int
    low: FloatArray
    high: FloatArray


class Peaks:
    """Minima and maxima of a sound at several resolutions.

    Parameters
    ----------
    low, high : ndarray of float32, shape (bins,)
        Lowest and highest sample, over all channels, of every
        :data:`BASE_FRAMES` frames.
    frames : int
        Length of the sound.
    sample_rate_hz : int
        Frames per second.
    """

    def __init__(self, low: FloatArray, high: FloatArray, frames: int, sample_rate_hz: int) -> None:
        self.frames = frames
        self.sample_rate_hz = sample_rate_hz
        self._levels = [_Level(BASE_FRAMES, low, high)]
        while len(self._levels[-1].low) > _SMALLEST_LEVEL:
            below = self._levels[-1]
            self._levels.append(
                _Level(
                    below.bin_frames * _FACTOR,
                    _reduce(np.minimum, below.low, _FACTOR),
                    _reduce(np.maximum, below.high, _FACTOR),
                )
            )

    @property
    def duration_s(self) -> float:
        """Length in seconds."""
        return self.frames / self.sample_rate_hz

    def columns(
        self,
        start_s: float,
        end_s: float,
        column_count: int,
        samples: NDArray[np.float32] | SoundSource | None = None,
    ) -> tuple[FloatArray, FloatArray]:
        """Return what to draw in each pixel column.

        Column *k* covers its equal share of the time asked for. Its values
        come from every bin that touches it, so that no peak is ever missed; at
        most one bin beyond either edge is drawn along. When a column is
        narrower than two bins and `samples` is given, the samples themselves are
        used and the values are exact.

        Parameters
        ----------
        start_s, end_s : float
            The stretch to draw; it is cut to the sound.
        column_count : int
            Most columns wanted, at least 1.
        samples : ndarray of float32, shape (n,) or (n, channels), or SoundSource, optional
            The sound, for drawing closer than the finest level.

        Returns
        -------
        low, high : ndarray of float32, shape (columns,)
            No longer than `column_count`, and no longer than the frames there are.
        """
        first = max(0, round(start_s * self.sample_rate_hz))
        last = min(self.frames, round(end_s * self.sample_rate_hz))
        if last <= first or column_count < 1:
            return np.empty(0, np.float32), np.empty(0, np.float32)
        count = min(column_count, last - first)
        edges = first + np.arange(count + 1) * (last - first) // count
        frames_per_column = (last - first) / count
        if samples is not None and frames_per_column < 2 * BASE_FRAMES:
            return _exact(samples, edges)
        level = self._level_for(frames_per_column)
        starts = edges[:-1] // level.bin_frames
        ends = np.maximum(-(-edges[1:] // level.bin_frames), starts + 1)
        return (
            _over(np.minimum, level.low, starts, ends, np.inf),
            _over(np.maximum, level.high, starts, ends, -np.inf),
        )

    def save(self, path: Path) -> None:
        """Store in a cache folder.

        Parameters
        ----------
        path : Path
            An ``.npz`` file; it is replaced as a whole.

        Raises
        ------
        OSError
            When it cannot be written; a cache can do without.
        """
        path.parent.mkdir(parents=True, exist_ok=True)
        partial = partial_name(path)
        base = self._levels[0]
        try:
            with partial.open("wb") as file:
                np.savez(
                    file,
                    format=_FORMAT,
                    base_frames=BASE_FRAMES,
                    frames=self.frames,
                    sample_rate_hz=self.sample_rate_hz,
                    low=base.low,
                    high=base.high,
                )
            partial.replace(path)
        finally:
            with contextlib.suppress(OSError):
                partial.unlink(missing_ok=True)

    @classmethod
    def load(cls, path: Path) -> "Peaks | None":
        """Read from a cache folder.

        Parameters
        ----------
        path : Path
            An ``.npz`` file.

        Returns
        -------
        Peaks or None
            None when there is no such file or it is not usable: build anew.
        """
        try:
            with path.open("rb") as file, np.load(file, allow_pickle=False) as stored:
                if (int(stored["format"]), int(stored["base_frames"])) != (_FORMAT, BASE_FRAMES):
                    return None
                low, high = stored["low"], stored["high"]
                frames, rate = int(stored["frames"]), int(stored["sample_rate_hz"])
        except (OSError, ValueError, KeyError, EOFError, zipfile.BadZipFile):
            return None
        bins = -(-frames // BASE_FRAMES)
        if low.shape != (bins,) or high.shape != (bins,) or rate <= 0:
            return None
        return cls(low, high, frames, rate)

    def _level_for(self, frames_per_column: float) -> _Level:
        fitting = [level for level in self._levels if level.bin_frames * 2 <= frames_per_column]
        return fitting[-1] if fitting else self._levels[0]


def build_peaks(
    sound: NDArray[np.float32] | Iterable[NDArray[np.float32]], sample_rate_hz: int
) -> Peaks:
    """Find the minima and maxima of a sound.

    Parameters
    ----------
    sound : ndarray of float32, shape (n,) or (n, channels), or iterable of such blocks
        The samples, whole or block by block.
    sample_rate_hz : int
        Frames per second.

    Returns
    -------
    Peaks
        Over all channels.
    """
    blocks: Iterable[NDArray[np.float32]] = [sound] if isinstance(sound, np.ndarray) else sound
    lows: list[FloatArray] = []
    highs: list[FloatArray] = []
    frames = 0
    for low, high in _whole_bins(blocks):
        frames += len(low)
        lows.append(_reduce(np.minimum, low, BASE_FRAMES))
        highs.append(_reduce(np.maximum, high, BASE_FRAMES))
    empty = [np.empty(0, np.float32)]
    return Peaks(
        np.concatenate(lows or empty), np.concatenate(highs or empty), frames, sample_rate_hz
    )


def _whole_bins(
    blocks: Iterable[NDArray[np.float32]],
) -> Iterator[tuple[FloatArray, FloatArray]]:
    """Merge channels, and cut so that every piece but the last holds whole bins."""
    low = high = np.empty(0, np.float32)
    for block in blocks:
        block_low, block_high = _over_channels(block)
        low = np.concatenate([low, block_low]) if len(low) else block_low
        high = np.concatenate([high, block_high]) if len(high) else block_high
        whole = len(low) - len(low) % BASE_FRAMES
        if whole:
            yield low[:whole], high[:whole]
            low, high = low[whole:], high[whole:]
    if len(low):
        yield low, high


def _over_channels(block: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Return the lowest and highest sample of each frame."""
    if block.ndim == 1:
        return block, block
    if block.shape[1] == 1:
        return block[:, 0], block[:, 0]
    return block.min(axis=1), block.max(axis=1)


def _reduce(ufunc: np.ufunc, values: FloatArray, size: int) -> FloatArray:
    """Reduce every `size` values to one; the last ones may be fewer."""
    whole = len(values) - len(values) % size
    reduced: FloatArray = ufunc.reduce(values[:whole].reshape(-1, size), axis=1)
    if whole < len(values):
        reduced = np.append(reduced, ufunc.reduce(values[whole:]))
    return reduced.astype(np.float32, copy=False)


def _over(
    ufunc: np.ufunc,
    values: FloatArray,
    starts: NDArray[np.int64],
    ends: NDArray[np.int64],
    neutral: float,
) -> FloatArray:
    """Reduce overlapping ranges: `reduceat` on interleaved starts and ends."""
    padded = np.append(values, np.float32(neutral))
    pairs = np.column_stack([starts, ends]).ravel()
    reduced: FloatArray = ufunc.reduceat(padded, pairs)[::2]
    return reduced


def _exact(
    samples: NDArray[np.float32] | SoundSource, edges: NDArray[np.int64]
) -> tuple[FloatArray, FloatArray]:
    part = source_of(samples).read(int(edges[0]), int(edges[-1]))
    low, high = part.min(axis=1), part.max(axis=1)
    at = edges[:-1] - edges[0]
    return np.minimum.reduceat(low, at), np.maximum.reduceat(high, at)
