"""What becomes of the blocks of an input: level, pre-roll, take.

No device and no thread in here: the recorder's thread hands blocks in, and so
do tests.
"""

from collections import deque
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from audio.errors import AudioFailure
from audio.levels import FLOOR_DBFS, LevelMeter
from audio.recordings import Ended, Recording
from audio.take_file import TakeFile, WriteEnded

_FULL_SCALE = np.float32(2**31)


class Intake:
    """Take in blocks, and keep them once a take has begun.

    Parameters
    ----------
    sample_rate_hz, channels : int
        Format of the blocks.
    pre_roll_s : float
        How much sound from before a take is kept for it.

    Attributes
    ----------
    meter : LevelMeter
        Follows every block; starts anew with the take.
    consumed : int
        Frames taken in.
    silent_frames : int
        How many of the latest frames were nothing but zeros.
    take_begins_at : int
        Which frame of all taken in is the first of the take.
    """

    def __init__(self, sample_rate_hz: int, channels: int, pre_roll_s: float) -> None:
        self._sample_rate_hz = sample_rate_hz
        self._channels = channels
        self._pre_roll_frames = pre_roll_s * sample_rate_hz
        self._recent: deque[NDArray[np.int32]] = deque()
        self._take: TakeFile | None = None
        self.meter = LevelMeter(sample_rate_hz)
        self.consumed = 0
        self.silent_frames = 0
        self.take_begins_at = 0

    @property
    def has_take(self) -> bool:
        """Whether a take has begun."""
        return self._take is not None

    @property
    def take_frames(self) -> int:
        """Frames of the take so far."""
        return 0 if self._take is None else self._take.frames

    def consume(self, block: NDArray[np.int32]) -> NDArray[np.float32]:
        """Take in the next block.

        Parameters
        ----------
        block : ndarray of int32, shape (n, channels)
            Left-justified samples.

        Returns
        -------
        ndarray of float32, shape (n, channels)
            The same, 1.0 is full scale.

        Raises
        ------
        WriteEnded
            When there is a take and it cannot grow any further.
        """
        samples = as_float(block)
        self.consumed += len(block)
        self.meter.update(samples)
        self.silent_frames = 0 if block.any() else self.silent_frames + len(block)
        if self._take is not None:
            self._take.append(block)
        else:
            self._remember(block)
        return samples

    def begin(self, path: Path, pre_roll_s: float | None = None) -> None:
        """Begin a take with the pre-roll.

        Parameters
        ----------
        path : Path
            The WAV file to create; it must not exist.
        pre_roll_s : float, optional
            How much of the pre-roll to keep, to within a block; all of it where left out.

        Raises
        ------
        AudioFailure
            When the file cannot be created or there is no room for it.
        """
        take = TakeFile.create(path, self._sample_rate_hz, self._channels)
        if pre_roll_s is not None:
            self._forget(pre_roll_s * self._sample_rate_hz)
        self.meter.reset()
        self.take_begins_at = self.consumed - sum(len(block) for block in self._recent)
        try:
            for block in self._recent:
                self.meter.update(as_float(block))
                take.append(block)
        except WriteEnded as broken:
            take.discard()
            raise AudioFailure(
                f"{path.name} cannot be recorded: there is no room on the disk.",
                "Make room on the disk and record again.",
            ) from broken
        self._recent.clear()
        self._take = take

    def keep_safe(self) -> None:
        """Bring the take to the disk when it is time.

        Raises
        ------
        WriteEnded
            When the disk is full, or the file or its folder is gone.
        """
        if self._take is not None:
            self._take.keep_safe()

    def finish(self, ended: Ended, overruns: int, dropped_frames: int) -> Recording | None:
        """Close the take.

        Parameters
        ----------
        ended : Ended
            How it came to its end.
        overruns, dropped_frames : int
            What was lost.

        Returns
        -------
        Recording or None
            The kept take; None when none was begun.

        Raises
        ------
        AudioFailure
            When it holds nothing or could not be kept.
        """
        if self._take is None:
            return None
        level = self.meter.level
        return self._take.finish(
            ended,
            overruns=overruns,
            dropped_frames=dropped_frames,
            clipped_samples=level.clipped_samples,
            peak_dbfs=level.highest_dbfs if self._take.frames else FLOOR_DBFS,
        )

    def discard(self) -> None:
        """Remove a take that holds nothing."""
        if self._take is not None:
            self._take.discard()
            self._take = None

    def _remember(self, block: NDArray[np.int32]) -> None:
        """Keep just enough for the pre-roll."""
        self._recent.append(block)
        self._forget(self._pre_roll_frames)

    def _forget(self, frames: float) -> None:
        """Keep no more of the pre-roll than it takes to have so many frames."""
        kept = sum(len(recent) for recent in self._recent)
        while self._recent and kept - len(self._recent[0]) >= frames:
            kept -= len(self._recent.popleft())


def as_float(block: NDArray[np.int32]) -> NDArray[np.float32]:
    """Convert left-justified samples.

    Parameters
    ----------
    block : ndarray of int32
        Samples of a device.

    Returns
    -------
    ndarray of float32
        1.0 is full scale.
    """
    return block.astype(np.float32) / _FULL_SCALE
