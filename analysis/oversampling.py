"""Band-limited interpolation of a signal that arrives in blocks."""

import numpy as np

from analysis.filters import interpolated
from analysis.results import FloatArray

TAPS_PER_PHASE = 24
_KAISER_BETA = 6.0


def interpolation_filter(factor: int) -> FloatArray:
    """Low-pass for ``factor``-fold oversampling; pass-band gain 1 after upsampling.

    Parameters
    ----------
    factor : int
        At least 1.

    Returns
    -------
    (factor * TAPS_PER_PHASE + 1,) array
        Symmetric: every ``factor``-th tap but the middle one is zero, so that the
        original samples come through unchanged.
    """
    half = factor * TAPS_PER_PHASE // 2
    position = np.arange(-half, half + 1) / factor
    return np.asarray(np.sinc(position) * np.kaiser(position.size, _KAISER_BETA), dtype=np.float64)


class Interpolator:
    """Oversample block after block as if the blocks were one signal.

    The output lags the input by ``TAPS_PER_PHASE / 2`` input samples;
    :meth:`flush` returns that rest.
    """

    def __init__(self, factor: int) -> None:
        self.factor = factor
        self._taps = interpolation_filter(factor)
        self._history = np.zeros(TAPS_PER_PHASE)
        self._to_drop = factor * TAPS_PER_PHASE // 2

    def process(self, block: FloatArray) -> FloatArray:
        """Interpolate one block.

        Parameters
        ----------
        block : (n,) array

        Returns
        -------
        (factor * n,) array, shorter by the lag for the first block
        """
        joined = np.concatenate((self._history, block))
        wanted = interpolated(joined, self._taps, self.factor)
        self._history = joined[-TAPS_PER_PHASE:]
        dropped = min(self._to_drop, wanted.size)
        self._to_drop -= dropped
        return np.asarray(wanted[dropped:], dtype=np.float64)

    def flush(self) -> FloatArray:
        """Return the samples still inside the filter."""
        return self.process(np.zeros(TAPS_PER_PHASE // 2))
