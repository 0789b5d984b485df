"""A preallocated ring between an audio callback and a writer thread."""

import numpy as np
from numpy.typing import NDArray


class SampleRing:
    """Pass frames from one writing thread to one reading thread.

    Nothing is allocated and no lock is taken on the writing side: each side
    moves its own counter only, and moves it after the samples are in place.

    Parameters
    ----------
    frames : int
        How much fits in.
    channels : int
        Samples a frame.
    """

    def __init__(self, frames: int, channels: int) -> None:
        self._buffer: NDArray[np.int32] = np.zeros((frames, channels), dtype=np.int32)
        self._written = 0
        self._read = 0

    def __len__(self) -> int:
        return self._written - self._read

    def write(self, block: NDArray[np.int32]) -> int:
        """Copy a block in.

        Parameters
        ----------
        block : ndarray of int32, shape (n, channels)
            Samples to pass on.

        Returns
        -------
        int
            Frames that did not fit and are lost.
        """
        capacity = len(self._buffer)
        taken = min(len(block), capacity - len(self))
        start = self._written % capacity
        first = min(taken, capacity - start)
        self._buffer[start : start + first] = block[:first]
        self._buffer[: taken - first] = block[first:taken]
        self._written += taken
        return len(block) - taken

    def read(self, max_frames: int) -> NDArray[np.int32]:
        """Take out the oldest frames.

        Parameters
        ----------
        max_frames : int
            Take no more than this.

        Returns
        -------
        ndarray of int32, shape (n, channels)
            A copy; empty when there is nothing.
        """
        capacity = len(self._buffer)
        taken = min(max_frames, len(self))
        start = self._read % capacity
        first = min(taken, capacity - start)
        block = np.concatenate([self._buffer[start : start + first], self._buffer[: taken - first]])
        self._read += taken
        return block
