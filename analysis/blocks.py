"""Reading a take piece by piece, mixed to one channel and brought to a working rate.

A long take may be a memory-mapped file of many channels, so nothing here ever copies
the whole of it: a piece is converted when it is asked for.
"""

from typing import Final

import numpy as np
from numpy.typing import NDArray

from analysis.filters import decimated, low_pass

SampleArray = NDArray[np.floating]
Float32Array = NDArray[np.float32]

_HALF_TAPS_PER_STEP: Final = 24
_KAISER_BETA: Final = 9.0


class MonoSamples:
    """A take as one channel at a working sample rate, read piece by piece.

    Parameters
    ----------
    samples : (n,) or (n, channels) float array
        The take; several channels are averaged. Full scale is 1.
    sample_rate_hz : int
        Rate of ``samples``.
    decimation : int
        Every how many samples are kept, after a linear-phase low-pass that is flat to
        0.9 of the new half rate and delays nothing.
    """

    def __init__(self, samples: SampleArray, sample_rate_hz: int, decimation: int = 1) -> None:
        if samples.ndim not in (1, 2):
            raise ValueError(f"samples must be (n,) or (n, channels), not {samples.shape}")
        self._samples = samples
        self._decimation = decimation
        self._half = _HALF_TAPS_PER_STEP * decimation
        self._taps = (
            low_pass(self._half, 0.93 / decimation, _KAISER_BETA).astype(np.float32)
            if decimation > 1
            else None
        )
        self.source_rate_hz = sample_rate_hz
        self.sample_rate_hz = sample_rate_hz / decimation

    def __len__(self) -> int:
        return (len(self._samples) + self._decimation - 1) // self._decimation

    @property
    def duration_s(self) -> float:
        """Length of the take in seconds."""
        return len(self._samples) / self.source_rate_hz

    def read(self, start: int, stop: int) -> Float32Array:
        """Return samples ``start`` to ``stop`` at the working rate, zeros outside the take."""
        if self._taps is None:
            return self._mixed(start, stop)
        step = self._decimation
        piece = self._mixed(start * step - self._half, (stop - 1) * step + self._half + 1)
        return np.asarray(decimated(piece, self._taps, step), dtype=np.float32)

    def _mixed(self, start: int, stop: int) -> Float32Array:
        inside_start, inside_stop = max(start, 0), min(stop, len(self._samples))
        out = np.zeros(stop - start, dtype=np.float32)
        if inside_stop > inside_start:
            piece = self._samples[inside_start:inside_stop]
            mono = piece if piece.ndim == 1 else piece.mean(axis=1)
            out[inside_start - start : inside_stop - start] = mono
        return out
