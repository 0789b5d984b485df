"""The pitch track: fundamental frequency against time, voicing and octave decided.

The method is P. Boersma's (1993, 'Accurate short-term analysis of the fundamental
frequency and the harmonics-to-noise ratio of a sampled sound'): the autocorrelation of
a windowed frame divided by the autocorrelation of the window, its maxima interpolated
between the samples, and the cheapest path through the candidates of all frames.
"""

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray
from scipy import fft

from analysis.blocks import MonoSamples, SampleArray
from analysis.periodicity import CANDIDATES, INTERPOLATION_DEPTH, best_path, frame_candidates
from analysis.results import Measured, NotMeasurable, PitchTrack, Provenance, Reason
from analysis.stopping import StopQuestion, stop_if_asked
from analysis.windows import hann_window, window_autocorrelation

FloatArray = NDArray[np.float64]

ALGORITHM: Final = "pitch-1"

DEFAULT_HOP_S: Final = 0.005
LOWEST_RATE_HZ: Final = 8_000
_WORKING_RATE_HZ: Final = 50_000
_FRAMES_PER_BLOCK: Final = 256
_SILENT_DBFS: Final = -85.0
# The ceiling may not come too near half the sample rate: a peak needs room around it.
_HIGHEST_SHARE_OF_RATE: Final = 0.35


@dataclass(frozen=True, slots=True)
class PathCosts:
    """What the path through the candidates costs; strengths are 0 to 1.

    The costs of a step are those for steps of 10 ms and are scaled to the hop.
    """

    silence_ratio: float = 0.004
    voicing_threshold: float = 0.45
    octave: float = 0.01
    octave_jump: float = 0.35
    voicing: float = 0.14


@dataclass(frozen=True, slots=True)
class _Candidates:
    period_s: FloatArray
    strength: FloatArray
    rms: FloatArray


def track_pitch(
    samples: SampleArray | MonoSamples,
    sample_rate_hz: int,
    *,
    floor_hz: float,
    ceiling_hz: float,
    hop_s: float = DEFAULT_HOP_S,
    window_periods: float = 3.0,
    costs: PathCosts | None = None,
    should_stop: StopQuestion | None = None,
) -> Measured[PitchTrack] | NotMeasurable:
    """Follow the fundamental frequency of a single line.

    Parameters
    ----------
    samples : (n,) float array or MonoSamples
        The take, full scale 1.
    sample_rate_hz : int
        8 kHz to 192 kHz.
    floor_hz, ceiling_hz : float
        Range that is searched; the window is ``window_periods`` periods of the floor.
    hop_s : float
        Distance of two frames, centred on 0, ``hop_s``, 2 ``hop_s`` ... seconds.
    window_periods : float
        At least 3 for a Hann window to tell the lowest pitch from its octave.
    costs : PathCosts, optional
        What the path costs; the defaults suit music.
    should_stop : callable, optional
        Asked for every block of frames.

    Returns
    -------
    Measured of PitchTrack, or NotMeasurable
        Not measurable when the take is silent, too short, broken or nowhere periodic.

    Raises
    ------
    ValueError
        If range, hop, window or sample rate make no sense.
    Stopped
        If ``should_stop`` said so.
    """
    _check(sample_rate_hz, floor_hz, ceiling_hz, hop_s, window_periods)
    costs = costs or PathCosts()
    source = _at_working_rate(samples, sample_rate_hz, ceiling_hz)
    ceiling_hz = min(ceiling_hz, _HIGHEST_SHARE_OF_RATE * source.sample_rate_hz)
    provenance = Provenance(
        ALGORITHM,
        {
            "floor_hz": floor_hz,
            "ceiling_hz": ceiling_hz,
            "hop_s": hop_s,
            "window_periods": window_periods,
        },
    )
    if ceiling_hz <= 1.1 * floor_hz:
        return NotMeasurable(
            Reason.LOW_SAMPLE_RATE, "The sample rate is too low for this instrument.", provenance
        )
    if source.duration_s < 1.0 / floor_hz:
        return NotMeasurable(Reason.TOO_SHORT, "The take is too short to hold a pitch.", provenance)
    found = _all_candidates(source, floor_hz, ceiling_hz, hop_s, window_periods, costs, should_stop)
    if not np.all(np.isfinite(found.rms)):
        return NotMeasurable(
            Reason.INPUT_BROKEN, "The take holds samples that are not numbers.", provenance
        )
    level_dbfs = 20.0 * np.log10(np.maximum(found.rms, 1e-10))
    if float(np.max(level_dbfs)) < _SILENT_DBFS:
        return NotMeasurable(Reason.SILENT, "The take is silent.", provenance)
    track = _choose(found, level_dbfs, ceiling_hz, hop_s, costs)
    if not np.any(np.isfinite(track.f0_hz)):
        return NotMeasurable(Reason.NO_PITCH, "Nothing in the take has a pitch.", provenance)
    return Measured(track, provenance)


def _check(
    sample_rate_hz: int, floor_hz: float, ceiling_hz: float, hop_s: float, window_periods: float
) -> None:
    if sample_rate_hz < LOWEST_RATE_HZ:
        raise ValueError(f"sample rate {sample_rate_hz} Hz is under {LOWEST_RATE_HZ} Hz")
    if not 0.0 < floor_hz < ceiling_hz:
        raise ValueError(f"no range from {floor_hz} Hz to {ceiling_hz} Hz")
    if not 0.0005 <= hop_s <= 0.1:
        raise ValueError(f"hop of {hop_s} s is outside 0.5 to 100 ms")
    if window_periods < 2.0:
        raise ValueError("a window needs at least two periods of the lowest pitch")


def _at_working_rate(
    samples: SampleArray | MonoSamples, sample_rate_hz: int, ceiling_hz: float
) -> MonoSamples:
    if isinstance(samples, MonoSamples):
        return samples
    return MonoSamples(samples, sample_rate_hz, decimation_for(sample_rate_hz, ceiling_hz))


def decimation_for(sample_rate_hz: int, ceiling_hz: float) -> int:
    """Return how far a rate may be lowered so that ten harmonics of the ceiling remain."""
    enough_hz = min(max(24.0 * ceiling_hz, 11_000.0), _WORKING_RATE_HZ / 1.25)
    return max(int(sample_rate_hz // enough_hz), 1)


def _all_candidates(
    source: MonoSamples,
    floor_hz: float,
    ceiling_hz: float,
    hop_s: float,
    window_periods: float,
    costs: PathCosts,
    should_stop: StopQuestion | None,
) -> _Candidates:
    rate = source.sample_rate_hz
    window = hann_window(round(window_periods * rate / floor_hz))
    shortest = max(int(np.ceil(rate / ceiling_hz)), 2)
    longest = int(rate / floor_hz)
    lag_count = longest + INTERPOLATION_DEPTH + 4
    size = fft.next_fast_len(len(window) + lag_count, real=True)
    inverse_window = 1.0 / window_autocorrelation(window, lag_count)
    frames = int(source.duration_s / hop_s) + 1
    periods = np.zeros((frames, CANDIDATES))
    strengths = np.zeros((frames, CANDIDATES))
    rms = np.zeros(frames)
    for first in range(0, frames, _FRAMES_PER_BLOCK):
        stop_if_asked(should_stop)
        last = min(first + _FRAMES_PER_BLOCK, frames)
        starts = np.rint(np.arange(first, last) * hop_s * rate - 0.5 * len(window)).astype(np.int64)
        piece = source.read(int(starts[0]), int(starts[-1]) + len(window))
        framed = np.lib.stride_tricks.sliding_window_view(piece, len(window))[starts - starts[0]]
        weighted, rms[first:last] = _windowed(framed, window.astype(np.float32))
        spectrum = fft.rfft(weighted, size, axis=1, overwrite_x=True)
        power = spectrum.real**2 + spectrum.imag**2
        correlation = fft.irfft(power, size, axis=1)[:, :lag_count]
        frame_candidates(
            np.ascontiguousarray(correlation),
            inverse_window,
            shortest,
            longest,
            costs.octave,
            periods[first:last],
            strengths[first:last],
        )
    return _Candidates(periods / rate, strengths, rms)


def _windowed(
    framed: NDArray[np.float32], window: NDArray[np.float32]
) -> tuple[NDArray[np.float32], NDArray[np.float32]]:
    """Take the local mean out of the frames, weight them and return their RMS as well."""
    weighted = framed * window
    mean = weighted.sum(axis=1, keepdims=True) / window.sum()
    weighted -= mean * window
    energy = np.einsum("ij,ij->i", weighted, weighted) / np.sum(window * window)
    return weighted, np.sqrt(energy)


def _choose(
    found: _Candidates, level_dbfs: FloatArray, ceiling_hz: float, hop_s: float, costs: PathCosts
) -> PitchTrack:
    voiced = found.period_s > 0.0
    frequency = np.divide(1.0, found.period_s, out=np.ones_like(found.period_s), where=voiced)
    log2_frequency = np.log2(frequency)
    score = np.where(
        voiced, found.strength - costs.octave * (np.log2(ceiling_hz) - log2_frequency), -np.inf
    )
    loud = max(float(np.percentile(found.rms, 95.0)), 10.0 ** (_SILENT_DBFS / 20.0))
    quietness = 2.0 - (found.rms / loud) * (1.0 + costs.voicing_threshold) / costs.silence_ratio
    unvoiced = costs.voicing_threshold + np.maximum(0.0, quietness)
    scale = 0.01 / hop_s
    path = best_path(
        log2_frequency, score, unvoiced, costs.octave_jump * scale, costs.voicing * scale
    )
    rows = np.arange(len(path))
    chosen = np.maximum(path, 0)
    return PitchTrack(
        time_s=rows * hop_s,
        f0_hz=np.where(path >= 0, frequency[rows, chosen], np.nan),
        confidence=np.where(path >= 0, found.strength[rows, chosen], found.strength[:, 0]),
        level_dbfs=level_dbfs,
        hop_s=hop_s,
    )
