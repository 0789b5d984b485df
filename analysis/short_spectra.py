"""Power spectra of short windows of a take that is read piece by piece."""

from typing import Protocol

import numpy as np
from numpy.typing import NDArray
from scipy import fft

from analysis.compiled import compiled


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
    padded = np.zeros((first.size, size), dtype=np.float32)
    _fill_windowed(padded, piece, first - start, window)
    spectrum = fft.rfft(padded, axis=1, overwrite_x=True)
    power = np.empty((first.size, spectrum.shape[1] if bins is None else bins), dtype=np.float32)
    _fill_powers(power, spectrum.view(np.float32))
    return power


@compiled
def _fill_windowed(
    rows: NDArray[np.float32],
    piece: NDArray[np.float32],
    first: NDArray[np.int64],
    window: NDArray[np.float32],
) -> None:
    for i in range(rows.shape[0]):
        samples, row = piece[first[i] : first[i] + window.size], rows[i]
        for k in range(window.size):
            row[k] = samples[k] * window[k]


@compiled
def _fill_powers(power: NDArray[np.float32], parts: NDArray[np.float32]) -> None:
    """Squared sizes of bins whose real and imaginary ``parts`` take turns."""
    for i in range(power.shape[0]):
        row, spectrum = power[i], parts[i]
        for k in range(power.shape[1]):
            row[k] = spectrum[2 * k] * spectrum[2 * k] + spectrum[2 * k + 1] * spectrum[2 * k + 1]
