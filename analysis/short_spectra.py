"""Power spectra of short windows of a take that is read piece by piece."""

from typing import Protocol

import numpy as np
from numpy.typing import NDArray
from scipy import fft


class Source(Protocol):
    """Anything that gives one channel of samples, zeros outside of the take."""

    @property
    def sample_rate_hz(self) -> float:
        """Its sample rate."""

    def read(self, start: int, stop: int) -> NDArray[np.float32]:
        """Return samples ``start`` to ``stop``."""


def window_powers(
    source: Source, first: NDArray[np.int64], window: NDArray[np.float32], size: int
) -> NDArray[np.float32]:
    """Give the power spectra of windows of one take.

    Parameters
    ----------
    source : Source
    first : (n,) array of int
        The sample each window begins at; all that lies between them is read at once.
    window : (length,) array
    size : int
        Of the transform, at least ``length``.

    Returns
    -------
    (n, size // 2 + 1) array
    """
    start = int(first.min())
    piece = source.read(start, int(first.max()) + window.size)
    rows = np.lib.stride_tricks.sliding_window_view(piece, window.size)[first - start]
    spectrum = fft.rfft(rows * window, n=size, axis=1)
    return np.asarray(spectrum.real**2 + spectrum.imag**2, dtype=np.float32)
