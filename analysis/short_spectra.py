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
    source: Source,
    first: NDArray[np.int64],
    window: NDArray[np.float32],
    size: int,
    bins: int | None = None,
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
    bins : int, optional
        How many are wanted, from the lowest; all if not told.

    Returns
    -------
    (n, bins) array
    """
    start = int(first.min())
    piece = source.read(start, int(first.max()) + window.size)
    rows = np.lib.stride_tricks.sliding_window_view(piece, window.size)[first - start]
    padded = np.zeros((rows.shape[0], size), dtype=np.float32)
    np.multiply(rows, window, out=padded[:, : window.size])
    spectrum = fft.rfft(padded, axis=1, overwrite_x=True)[:, :bins]
    power = np.square(spectrum.real)
    power += np.square(spectrum.imag)
    return np.asarray(power, dtype=np.float32)
