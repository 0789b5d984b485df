"""Periods of the frames of a take: windowed autocorrelations and their maxima."""

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray
from scipy import fft

from analysis.blocks import MonoSamples
from analysis.periodicity import CANDIDATES, INTERPOLATION_DEPTH, frame_candidates
from analysis.stopping import Progress, StopQuestion, stop_if_asked, tell
from analysis.windows import hann_window, window_autocorrelation

FloatArray = NDArray[np.float64]
IntArray = NDArray[np.int64]
Float32Array = NDArray[np.float32]

_FRAMES_PER_BLOCK: Final = 256
_WIDEST_BLOCK_S: Final = 3.0


@dataclass(frozen=True, slots=True)
class Candidates:
    """What a frame's period may be.

    ``period_s`` (frames, CANDIDATES) is 0 where there is no further one; ``strength``
    (frames, CANDIDATES) is 0 to 1; ``rms`` (frames,) is the level under the window.
    """

    period_s: FloatArray
    strength: FloatArray
    rms: FloatArray


class PeriodSearch:
    """Looks for periods in frames of one window length.

    Parameters
    ----------
    source : MonoSamples
        The take.
    hop_s : float
        Frame ``k`` is centred on ``k * hop_s``.
    floor_hz, ceiling_hz : float
        Range that is searched.
    window_periods : float
        Length of the Hann window in periods of the floor.
    octave_cost : float
        How much stronger a candidate must be for every octave it lies lower.
    """

    def __init__(
        self,
        source: MonoSamples,
        hop_s: float,
        *,
        floor_hz: float,
        ceiling_hz: float,
        window_periods: float,
        octave_cost: float,
    ) -> None:
        rate = source.sample_rate_hz
        self._source = source
        self._hop = hop_s * rate
        self._octave_cost = octave_cost
        window = hann_window(round(window_periods * rate / floor_hz))
        self._window = window
        self._shortest = max(int(np.ceil(rate / ceiling_hz)), 2)
        self._longest = int(rate / floor_hz)
        self._lags = self._longest + INTERPOLATION_DEPTH + 4
        self._size = fft.next_fast_len(len(window) + self._lags, real=True)
        self._inverse_window = 1.0 / window_autocorrelation(window.astype(np.float64), self._lags)

    def candidates(
        self,
        frames: IntArray,
        should_stop: StopQuestion | None = None,
        progress: Progress | None = None,
    ) -> Candidates:
        """Return the candidates of the frames with these (rising) numbers."""
        periods = np.zeros((len(frames), CANDIDATES))
        strengths = np.zeros((len(frames), CANDIDATES))
        rms = np.zeros(len(frames))
        for first, last in self._blocks(frames):
            stop_if_asked(should_stop)
            weighted, rms[first:last] = self._windowed(self._framed(frames[first:last]))
            spectrum = fft.rfft(weighted, self._size, axis=1, overwrite_x=True)
            power = spectrum.real**2 + spectrum.imag**2
            correlation = fft.irfft(power, self._size, axis=1)[:, : self._lags]
            frame_candidates(
                np.ascontiguousarray(correlation),
                self._inverse_window,
                self._shortest,
                self._longest,
                self._octave_cost,
                periods[first:last],
                strengths[first:last],
            )
            tell(progress, last / len(frames))
        return Candidates(periods / self._source.sample_rate_hz, strengths, rms)

    def _blocks(self, frames: IntArray) -> list[tuple[int, int]]:
        """Split the frames so that a block is neither large nor widely spread."""
        widest = int(_WIDEST_BLOCK_S * self._source.sample_rate_hz / self._hop)
        blocks = []
        first = 0
        while first < len(frames):
            near = int(np.searchsorted(frames, frames[first] + widest))
            last = min(first + _FRAMES_PER_BLOCK, near, len(frames))
            blocks.append((first, last))
            first = last
        return blocks

    def _framed(self, frames: IntArray) -> Float32Array:
        length = len(self._window)
        starts = np.rint(frames * self._hop - 0.5 * length).astype(np.int64)
        piece = self._source.read(int(starts[0]), int(starts[-1]) + length)
        return np.asarray(
            np.lib.stride_tricks.sliding_window_view(piece, length)[starts - starts[0]]
        )

    def _windowed(self, framed: Float32Array) -> tuple[Float32Array, FloatArray]:
        """Take the local mean out of the frames, weight them and return their RMS as well."""
        window = self._window
        weighted = framed * window
        mean = weighted.sum(axis=1, keepdims=True) / window.sum()
        weighted -= mean * window
        energy = np.einsum("ij,ij->i", weighted, weighted) / np.sum(window * window)
        return weighted, np.sqrt(energy).astype(np.float64)
