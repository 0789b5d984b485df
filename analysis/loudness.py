"""Loudness after ITU-R BS.1770 and EBU Tech 3341.

Momentary loudness is measured on a 10 ms hop, because a coarser one misses the
maximum of short notes; the gated (integrated) loudness uses the 100 ms hop of
the recommendation. Audio is filtered block after block, so that an hour of sound
needs no second copy in memory.

References
----------
ITU-R BS.1770-4, annex 1; EBU Tech 3341; EBU Tech 3342.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from analysis.blocks import SampleArray
from analysis.k_weighting import k_weighting_sections
from analysis.oversampling import Interpolator
from analysis.results import FloatArray
from analysis.sections import in_sections
from analysis.stopping import StopQuestion, stop_if_asked

HOP_S = 0.01
MOMENTARY_S = 0.4
SHORT_TERM_S = 3.0
ABSOLUTE_GATE_LUFS = -70.0
INTEGRATED_GATE_LU = -10.0
RANGE_GATE_LU = -20.0

_OFFSET_LU = -0.691
_BLOCK_SAMPLES = 1 << 17
_GATING_HOPS = 10
# Below this rate the bilinear transform bends the shelf; such audio is oversampled first.
_FAITHFUL_RATE_HZ = 32_000
# BS.1770-4 table 3, channels in the order left, right, centre, left and right surround.
SURROUND_WEIGHTS = (1.0, 1.0, 1.0, 1.41, 1.41)


@dataclass(frozen=True, slots=True)
class LoudnessCurve:
    """K-weighted power of a signal, hop by hop.

    Attributes
    ----------
    power : (n,) array
        Mean weighted power of each 10 ms hop, summed over the channels.
    duration_s : float
        Length of the signal.
    """

    power: FloatArray
    duration_s: float

    def sliding_lufs(self, window_s: float) -> FloatArray:
        """Loudness of every whole window of ``window_s``, one a hop.

        Parameters
        ----------
        window_s : float
            A whole number of hops; 0.4 is momentary, 3 is short-term.

        Returns
        -------
        (n - window + 1,) array
            LUFS; minus infinity where nothing sounds. Window ``i`` starts at ``i`` hops.
        """
        return to_lufs(self._sliding_power(window_s))

    @property
    def momentary_lufs(self) -> FloatArray:
        """Momentary loudness (0.4 s), one value a hop, window ``i`` starting at hop ``i``."""
        return self.sliding_lufs(MOMENTARY_S)

    @property
    def momentary_time_s(self) -> FloatArray:
        """Centres of the momentary windows, seconds."""
        count = max(0, self.power.size - round(MOMENTARY_S / HOP_S) + 1)
        return np.asarray(np.arange(count) * HOP_S + MOMENTARY_S / 2, dtype=np.float64)

    @property
    def short_term_lufs(self) -> FloatArray:
        """Short-term loudness (3 s), one value a hop, window ``i`` starting at hop ``i``."""
        return self.sliding_lufs(SHORT_TERM_S)

    @property
    def integrated_lufs(self) -> float | None:
        """Loudness gated at -70 LUFS, then 10 LU below what is left; None if all is gated."""
        power = self._sliding_power(MOMENTARY_S)[::_GATING_HOPS]
        gated = _gated(power, INTEGRATED_GATE_LU)
        return float(to_lufs(np.atleast_1d(gated.mean()))[0]) if gated.size else None

    @property
    def range_lu(self) -> float | None:
        """Loudness range (EBU Tech 3342); not recommended for less than a minute."""
        power = self._sliding_power(SHORT_TERM_S)[::_GATING_HOPS]
        gated = np.sort(_gated(power, RANGE_GATE_LU))
        if not gated.size:
            return None
        low, high = (gated[round((gated.size - 1) * share)] for share in (0.10, 0.95))
        return 10 * math.log10(high / low)

    def _sliding_power(self, window_s: float) -> FloatArray:
        """Mean power of every whole window, one a hop."""
        hops = round(window_s / HOP_S)
        if self.power.size < hops:
            return np.empty(0)
        total = np.concatenate(([0.0], np.cumsum(self.power)))
        # A running sum leaves rounding dust of the loud parts in the silent ones.
        dust = total[-1] * self.power.size * np.finfo(np.float64).eps
        power = (total[hops:] - total[:-hops]) / hops
        return np.where(power * hops > dust, power, 0.0)


def to_lufs(power: FloatArray) -> FloatArray:
    """Loudness in LUFS of a K-weighted mean power (same shape); minus infinity for none."""
    with np.errstate(divide="ignore"):
        return np.asarray(_OFFSET_LU + 10 * np.log10(power), dtype=np.float64)


def measure_loudness(
    samples: SampleArray,
    sample_rate_hz: float,
    *,
    weights: Sequence[float] | None = None,
    should_stop: StopQuestion | None = None,
) -> LoudnessCurve:
    """K-weighted power of a signal on a 10 ms hop.

    Parameters
    ----------
    samples : (n,) or (n, channels) array
        Full scale is 1.
    sample_rate_hz : float
        At least 4000.
    weights : sequence of float, optional
        One weight a channel; all 1 unless given (:data:`SURROUND_WEIGHTS` for 5.0).
    should_stop : callable, optional
        Asked every few seconds of sound.

    Returns
    -------
    LoudnessCurve

    Raises
    ------
    ValueError
        If the rate is too low, or the number of weights is not that of the channels.
    Stopped
        If ``should_stop`` said so.

    References
    ----------
    ITU-R BS.1770-4, annex 1.
    """
    columns = samples[:, np.newaxis] if samples.ndim == 1 else samples
    channel_weights = [1.0] * columns.shape[1] if weights is None else list(weights)
    if len(channel_weights) != columns.shape[1]:
        raise ValueError(f"{len(channel_weights)} weights for {columns.shape[1]} channels")
    factor = max(1, math.ceil(_FAITHFUL_RATE_HZ / sample_rate_hz))
    hop_count = int(columns.shape[0] / sample_rate_hz / HOP_S + 1e-9)
    power = np.zeros(hop_count)
    for channel, weight in enumerate(channel_weights):
        blocks = _weighted_blocks(columns[:, channel], sample_rate_hz, factor, should_stop)
        power += weight * _hop_power(blocks, sample_rate_hz * factor, hop_count)
    return LoudnessCurve(power=power, duration_s=columns.shape[0] / sample_rate_hz)


def blocks_of(samples: SampleArray) -> Iterator[FloatArray]:
    """Give consecutive blocks of samples, each with all channels, as 64-bit floats."""
    for start in range(0, samples.shape[0], _BLOCK_SAMPLES):
        yield np.asarray(samples[start : start + _BLOCK_SAMPLES], dtype=np.float64)


def _weighted_blocks(
    channel: SampleArray, sample_rate_hz: float, factor: int, should_stop: StopQuestion | None
) -> Iterator[FloatArray]:
    """K-weighted blocks of a channel, ``factor`` times oversampled."""
    sections = k_weighting_sections(sample_rate_hz * factor)
    state = np.zeros((sections.shape[0], 2))
    interpolator = Interpolator(factor)
    for block in blocks_of(channel):
        stop_if_asked(should_stop)
        dense = interpolator.process(block) if factor > 1 else block
        yield in_sections(sections, dense, state)
    if factor > 1:
        yield in_sections(sections, interpolator.flush(), state)


def _hop_power(blocks: Iterator[FloatArray], rate_hz: float, hop_count: int) -> FloatArray:
    """Mean square of each hop, hop edges rounded to the nearest sample."""
    edges = np.rint(np.arange(hop_count + 1) * HOP_S * rate_hz).astype(np.int64)
    energy = np.zeros(hop_count + 1)
    position = 0
    for block in blocks:
        squares = block * block
        first = int(np.searchsorted(edges, position, side="right")) - 1
        last = int(np.searchsorted(edges, position + block.size, side="left"))
        cuts = np.maximum(edges[first:last] - position, 0)
        if cuts.size:
            energy[first : first + cuts.size] += np.add.reduceat(squares, cuts)
        position += block.size
    return np.asarray(energy[:hop_count] / np.diff(edges), dtype=np.float64)


def _gated(power: FloatArray, relative_gate_lu: float) -> FloatArray:
    """Keep the block powers that pass the absolute and then the relative gate."""
    loud = power[to_lufs(power) >= ABSOLUTE_GATE_LUFS]
    if not loud.size:
        return loud
    threshold = loud.mean() * 10 ** (relative_gate_lu / 10)
    return np.asarray(loud[loud >= threshold], dtype=np.float64)
