"""What two takes are aligned by: harmony (chroma) and attacks, 100 frames a second."""

from dataclasses import dataclass

import numpy as np
from scipy import fft, ndimage, signal

from analysis.blocks import SampleArray
from analysis.results import FloatArray
from analysis.warping import Frames

HOP_S = 0.01
HARMONY_SIZE = 12
WINDOW_S = 0.12
_LOWEST_RATE_HZ = 11_025
_LOWEST_MIDI, _HIGHEST_MIDI = 36, 100
_BATCH_FRAMES = 2048
_SILENT_BELOW_LOUDEST_DB = 45.0
_DECAY_FRAMES = 8
_ATTACK_LAG = 3
_LOCAL_S = 1.0


@dataclass(frozen=True, slots=True)
class AlignmentFeatures:
    """Features of one take, the silence at both ends cut off.

    Attributes
    ----------
    frames : (n, 24) array
        Unit-length chroma (zero where silent), then attack strength by chroma.
    start_s : float
        Time of the first frame's centre.
    """

    frames: Frames
    start_s: float


def extract_features(samples: SampleArray, sample_rate_hz: float) -> AlignmentFeatures:
    """Chroma and chroma-wise attacks of a take.

    Parameters
    ----------
    samples : (n,) or (n, channels) array
    sample_rate_hz : float

    Returns
    -------
    AlignmentFeatures
        Without frames when the take is silent.
    """
    mono, rate_hz = _thinned_mono(samples, sample_rate_hz)
    bands = _semitone_bands(mono, rate_hz)
    energy = bands.sum(axis=1)
    if not energy.size or energy.max() <= 0:
        return AlignmentFeatures(np.zeros((0, 2 * HARMONY_SIZE), dtype=np.float32), 0.0)
    sounding = np.flatnonzero(energy > energy.max() * 10 ** (-_SILENT_BELOW_LOUDEST_DB / 10))
    first, last = int(sounding[0]), int(sounding[-1]) + 1
    bands = bands[first:last]
    floor = energy.max() * 10 ** (-_SILENT_BELOW_LOUDEST_DB / 10)
    frames = np.hstack((_chroma(bands, floor), _attacks(bands)))
    return AlignmentFeatures(np.ascontiguousarray(frames, dtype=np.float32), first * HOP_S)


def _thinned_mono(samples: SampleArray, sample_rate_hz: float) -> tuple[Frames, float]:
    """Mean of the channels at a rate of 11 to 22 kHz."""
    mono = samples if samples.ndim == 1 else samples.mean(axis=1)
    factor = max(1, int(sample_rate_hz // _LOWEST_RATE_HZ))
    single = np.asarray(mono, dtype=np.float32)
    if factor == 1:
        return single, sample_rate_hz
    thinned = signal.resample_poly(single, 1, factor)
    return np.asarray(thinned, dtype=np.float32), sample_rate_hz / factor


def _semitone_bands(mono: Frames, rate_hz: float) -> Frames:
    """Power in every semitone band, one row a hop, row ``i`` centred on ``i`` hops."""
    window_size = 2 * round(WINDOW_S * rate_hz / 2)
    size = int(2 ** np.ceil(np.log2(window_size)))
    window = np.hanning(window_size).astype(np.float32)
    weights = _band_weights(size, rate_hz)
    count = int(mono.size / rate_hz / HOP_S) + 1
    centre = np.rint(np.arange(count) * HOP_S * rate_hz).astype(np.int64)
    padded = np.pad(mono, (window_size // 2, window_size))
    rows = np.lib.stride_tricks.sliding_window_view(padded, window_size)
    bands = np.empty((count, weights.shape[1]), dtype=np.float32)
    for start in range(0, count, _BATCH_FRAMES):
        batch = rows[centre[start : start + _BATCH_FRAMES]] * window
        spectrum = fft.rfft(batch, n=size, axis=1)
        power = spectrum.real**2 + spectrum.imag**2
        bands[start : start + batch.shape[0]] = power @ weights
    return bands


def _band_weights(size: int, rate_hz: float) -> Frames:
    """Triangular semitone bands over the bins of a spectrum, (bins, bands)."""
    frequency = np.arange(1, size // 2 + 1) * rate_hz / size
    midi = 69 + 12 * np.log2(frequency / 440.0)
    centres = np.arange(_LOWEST_MIDI, _HIGHEST_MIDI)
    weights = np.maximum(0.0, 1.0 - np.abs(midi[:, np.newaxis] - centres))
    return np.vstack((np.zeros((1, centres.size)), weights)).astype(np.float32)


def _folded(bands: Frames) -> Frames:
    """Sum of the octaves of each pitch class, (n, 12)."""
    chroma = np.zeros((bands.shape[0], HARMONY_SIZE), dtype=np.float32)
    for band in range(bands.shape[1]):
        chroma[:, (band + _LOWEST_MIDI) % HARMONY_SIZE] += bands[:, band]
    return chroma


def _chroma(bands: Frames, floor: float) -> Frames:
    """Unit-length chroma of amplitudes; zero in silence."""
    chroma = _folded(np.sqrt(bands))
    length = np.linalg.norm(chroma, axis=1, keepdims=True)
    silent = bands.sum(axis=1, keepdims=True) < floor
    return np.where(silent, 0.0, chroma / np.maximum(length, 1e-12)).astype(np.float32)


def _attacks(bands: Frames) -> Frames:
    """Rise of log power by pitch class, held for a moment with a decay, (n, 12)."""
    log_power = np.log1p(bands * (1e4 / max(float(bands.max()), 1e-30)))
    rise = np.zeros_like(log_power)
    rise[_ATTACK_LAG:] = np.maximum(0.0, log_power[_ATTACK_LAG:] - log_power[:-_ATTACK_LAG])
    folded = _folded(rise)
    strength = np.linalg.norm(folded, axis=1)
    local = ndimage.maximum_filter1d(strength, round(2 * _LOCAL_S / HOP_S) + 1)
    folded /= np.maximum(local, 0.05 * max(float(strength.max()), 1e-12))[:, np.newaxis]
    peak = (strength >= ndimage.maximum_filter1d(strength, 7)) & (strength > 0.15 * local)
    folded[~peak] = 0.0
    held = folded.copy()
    for lag in range(1, _DECAY_FRAMES):
        decay = np.float32(np.sqrt(1.0 - lag / _DECAY_FRAMES))
        held[lag:] = np.maximum(held[lag:], decay * folded[:-lag])
    return held.astype(np.float32)


def frame_times_s(features: AlignmentFeatures) -> FloatArray:
    """Centres of the frames, seconds."""
    count = features.frames.shape[0]
    return np.asarray(features.start_s + np.arange(count) * HOP_S, dtype=np.float64)
