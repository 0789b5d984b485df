"""What two takes are aligned by: harmony (chroma) and attacks, 100 frames a second.

References
----------
S. Ewert, M. Müller and P. Grosche, 'High resolution audio synchronization using
chroma onset features', ICASSP 2009.
"""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy import ndimage

from analysis.blocks import MonoSamples, SampleArray
from analysis.compiled import compiled
from analysis.results import FloatArray
from analysis.short_spectra import window_powers
from analysis.stopping import StopQuestion, stop_if_asked
from analysis.warping_table import Frames

HOP_S = 0.01
HARMONY_SIZE = 12
WINDOW_S = 0.12

_LOWEST_RATE_HZ = 11_025
_LOWEST_MIDI, _HIGHEST_MIDI = 36, 100
_BATCH_FRAMES = 64
_SILENT_BELOW_LOUDEST_DB = 45.0
_FLATTEST = 0.6
_DECAY_FRAMES = 8
_ATTACK_LAG = 3
_ATTACK_EARLY_S = 0.018  # the window reaches a tone that starts at once so much before
_CLASS_FRAMES = 20
_ATTACK_NEIGHBOURS = 7
_WEAKEST_ATTACK = 0.15
_LOCAL_S = 1.0
_FULL_RISE_DB = 6.0
_LEAST_RISE = 0.25
_TUNING_PLACES, _TUNING_FRAMES = 12, 64
_TUNING_LOWEST_MIDI = 64.0  # below it a semitone is too few bins wide to tell


@dataclass(frozen=True, slots=True)
class AlignmentFeatures:
    """Features of one take, the silence at both ends cut off.

    Attributes
    ----------
    frames : (n, 25) array
        Unit-length chroma (zero where silent), attack strength by chroma, and that of
        the level: a repeated note rises in level alone.
    start_s : float
        Time of the first frame's centre.
    """

    frames: Frames
    start_s: float

    @property
    def rise_s(self) -> FloatArray:
        """Moments at which the level rises, seconds, ascending."""
        rise = self.frames[:, -1]
        before = np.concatenate(([0.0], rise[:-1]))
        return np.asarray(
            self.start_s + HOP_S * np.flatnonzero(rise > np.maximum(before, 0.0)), dtype=np.float64
        )

    @property
    def attack_s(self) -> FloatArray:
        """Moments at which a pitch class sets in, seconds, ascending; to a frame or so."""
        first_s = self.start_s + _ATTACK_EARLY_S
        return np.asarray(first_s + HOP_S * self._attack_frames(), dtype=np.float64)

    @property
    def attack_class(self) -> FloatArray:
        """The strongest pitch class after each attack, 0 to 11; NaN where none stands out."""
        places = self._attack_frames()
        harmony = self.frames[:, :HARMONY_SIZE]
        found = np.full(places.size, np.nan)
        ends = np.minimum(np.append(places[1:], harmony.shape[0]), places + _CLASS_FRAMES)
        for i, (first, last) in enumerate(zip(places, ends, strict=True)):
            heard = harmony[first + _ATTACK_LAG : last + 1].sum(axis=0)
            if heard.max(initial=0.0) > 0:
                found[i] = np.argmax(heard)
        return found

    def _attack_frames(self) -> NDArray[np.int64]:
        strength = np.linalg.norm(self.frames[:, HARMONY_SIZE:-1], axis=1)
        before = np.concatenate(([0.0], strength[:-1]))
        return np.flatnonzero(strength > before + 1e-6)

    @property
    def time_s(self) -> FloatArray:
        """Centres of the frames, seconds."""
        return np.asarray(self.start_s + np.arange(self.frames.shape[0]) * HOP_S, dtype=np.float64)


def extract_features(
    samples: SampleArray, sample_rate_hz: int, *, should_stop: StopQuestion | None = None
) -> AlignmentFeatures:
    """Chroma and chroma-wise attacks of a take, its tuning taken out.

    Parameters
    ----------
    samples : (n,) or (n, channels) array
    sample_rate_hz : int
    should_stop : callable, optional
        Asked every few seconds of sound.

    Returns
    -------
    AlignmentFeatures
        Without frames when the take is silent.

    Raises
    ------
    Stopped
        If ``should_stop`` said so.
    """
    source = Thinned(samples, sample_rate_hz)
    bands = _semitone_bands(_Spectra(source), should_stop)
    energy = bands.sum(axis=1)
    loudest = float(energy.max(initial=0.0))
    if loudest <= 0:
        return AlignmentFeatures(np.zeros((0, 2 * HARMONY_SIZE + 1), dtype=np.float32), 0.0)
    floor = loudest * 10 ** (-_SILENT_BELOW_LOUDEST_DB / 10)
    sounding = np.flatnonzero(energy > floor)
    first, last = int(sounding[0]), int(sounding[-1]) + 1
    bands = bands[first:last]
    rise = _level_rise(source, should_stop)[first:last]
    frames = np.hstack((_chroma(bands, floor), _attacks(bands), rise))
    return AlignmentFeatures(np.ascontiguousarray(frames, dtype=np.float32), first * HOP_S)


class Thinned:
    """A take as one channel at 11 to 22 kHz, read piece by piece.

    Each sample is the mean of the few it stands for: what folds back from above is
    weak in music, and far below what chroma can see.
    """

    def __init__(self, samples: SampleArray, sample_rate_hz: int) -> None:
        self._source = MonoSamples(samples, sample_rate_hz)
        self._factor = max(1, int(sample_rate_hz // _LOWEST_RATE_HZ))
        self.sample_rate_hz = sample_rate_hz / self._factor
        self.duration_s = self._source.duration_s

    def read(self, start: int, stop: int) -> Frames:
        """Return samples ``start`` to ``stop``, zeros outside of the take."""
        return _thinned(self._source.read(start * self._factor, stop * self._factor), self._factor)


@compiled
def _thinned(samples: NDArray[np.float32], factor: int) -> NDArray[np.float32]:
    """Mean of every ``factor`` samples."""
    means = np.empty(samples.size // factor, dtype=np.float32)
    for i in range(means.size):
        total = samples[i * factor]
        for place in range(1, factor):
            total += samples[i * factor + place]
        means[i] = total / np.float32(factor)
    return means


class _Spectra:
    """Windowed power spectra of a take, a batch of frames at a time."""

    def __init__(self, source: Thinned) -> None:
        self._source = source
        self._rate_hz = source.sample_rate_hz
        self._half = round(WINDOW_S * self._rate_hz / 2)
        self._window = np.hanning(2 * self._half).astype(np.float32)
        self._size = int(2 ** math.ceil(math.log2(2 * self._half)))
        self.frame_count = int(source.duration_s / HOP_S) + 1
        frequency_hz = np.arange(1, self._size // 2 + 1) * self._rate_hz / self._size
        self.midi = np.concatenate(([-np.inf], 69 + 12 * np.log2(frequency_hz / 440.0)))

    def power(self, first: int, count: int, bins: int | None = None) -> Frames:
        """Spectra of frames ``first`` and on, (count, bins); frame ``i`` centres on ``i`` hops."""
        centre = np.rint(np.arange(first, first + count) * HOP_S * self._rate_hz).astype(np.int64)
        return window_powers(self._source, centre - self._half, self._window, self._size, bins)


def _semitone_bands(spectra: _Spectra, should_stop: StopQuestion | None) -> Frames:
    """Power in every semitone band, one row a hop."""
    centres = np.arange(_LOWEST_MIDI, _HIGHEST_MIDI) + _tuning_offset(spectra)
    weights = np.maximum(0.0, 1.0 - np.abs(spectra.midi[:, np.newaxis] - centres))
    used = int(np.flatnonzero(weights.any(axis=1))[-1]) + 1
    by_band = np.ascontiguousarray(weights[:used].T, dtype=np.float32)
    bands = np.empty((spectra.frame_count, centres.size), dtype=np.float32)
    for first in range(0, spectra.frame_count, _BATCH_FRAMES):
        stop_if_asked(should_stop)
        count = min(_BATCH_FRAMES, spectra.frame_count - first)
        _fill_bands(bands[first : first + count], spectra.power(first, count, used), by_band)
    return bands


@compiled
def _fill_bands(bands: Frames, power: Frames, by_band: Frames) -> None:
    """Weigh the bins of each band: few of all, so a product of whole matrices is not for it."""
    for band in range(by_band.shape[0]):
        inside = np.flatnonzero(by_band[band])
        if not inside.size:
            bands[:, band] = 0.0
            continue
        low, high = inside[0], inside[-1] + 1
        weights = by_band[band, low:high]
        for i in range(power.shape[0]):
            total = np.float32(0.0)
            for k in range(high - low):
                total += power[i, low + k] * weights[k]
            bands[i, band] = total


def _tuning_offset(spectra: _Spectra) -> float:
    """How far the take lies from A = 440 Hz, -0.5 to 0.5 semitones.

    The circular mean of where the power lies between the semitones, over samples of
    the whole take.
    """
    usable = np.flatnonzero(spectra.midi >= _TUNING_LOWEST_MIDI)
    places = np.linspace(0, max(0, spectra.frame_count - _TUNING_FRAMES), _TUNING_PLACES)
    count = min(_TUNING_FRAMES, spectra.frame_count)
    power = np.zeros(usable.size)
    for place in np.unique(places.astype(np.int64)):
        power += spectra.power(int(place), count)[:, usable].sum(axis=0, dtype=np.float64)
    # Square roots keep one loud note from deciding for the take.
    turn = np.sum(np.sqrt(power) * np.exp(2j * np.pi * spectra.midi[usable]))
    return float(np.angle(turn) / (2 * np.pi))


def _folded(bands: Frames) -> Frames:
    """Sum of the octaves of each pitch class, (n, 12)."""
    whole_octaves = -(-bands.shape[1] // HARMONY_SIZE) * HARMONY_SIZE
    padded = np.zeros((bands.shape[0], whole_octaves), dtype=np.float32)
    padded[:, : bands.shape[1]] = bands
    by_octave = padded.reshape(bands.shape[0], -1, HARMONY_SIZE).sum(axis=1)
    return np.asarray(np.roll(by_octave, _LOWEST_MIDI, axis=1))


def _chroma(bands: Frames, floor: float) -> Frames:
    """Unit-length chroma of amplitudes; zero in silence and where no pitch stands out."""
    chroma = _folded(np.sqrt(bands))
    length = np.linalg.norm(chroma, axis=1, keepdims=True)
    flat = np.median(chroma, axis=1) > _FLATTEST * chroma.max(axis=1)
    silent = (bands.sum(axis=1) < floor) | flat
    return np.where(silent[:, np.newaxis], 0.0, chroma / np.maximum(length, 1e-12)).astype(
        np.float32
    )


def _attacks(bands: Frames) -> Frames:
    """Rise of log power by pitch class, held for a moment with a decay, (n, 12)."""
    log_power = np.log1p(bands * (1e4 / max(float(bands.max()), 1e-30)))
    rise = np.zeros_like(log_power)
    rise[_ATTACK_LAG:] = np.maximum(0.0, log_power[_ATTACK_LAG:] - log_power[:-_ATTACK_LAG])
    folded = _folded(rise)
    strength = np.linalg.norm(folded, axis=1)
    local = ndimage.maximum_filter1d(strength, round(2 * _LOCAL_S / HOP_S) + 1)
    folded /= np.maximum(local, 0.05 * max(float(strength.max()), 1e-12))[:, np.newaxis]
    highest = ndimage.maximum_filter1d(strength, _ATTACK_NEIGHBOURS)
    folded[(strength < highest) | (strength <= _WEAKEST_ATTACK * local)] = 0.0
    return held_attacks(folded)


def _level_rise(source: Thinned, should_stop: StopQuestion | None) -> Frames:
    """Rise of the level where it begins to rise, 0 to 1, held with a decay, (n, 1)."""
    count = int(source.duration_s / HOP_S) + 1
    hop = HOP_S * source.sample_rate_hz
    power = np.empty(count, dtype=np.float64)
    for first in range(0, count, _BATCH_FRAMES):
        stop_if_asked(should_stop)
        last = min(count, first + _BATCH_FRAMES)
        edges = np.rint((np.arange(first, last + 1) - 0.5) * hop).astype(np.int64)
        piece = source.read(int(edges[0]), int(edges[-1]))
        squares = np.square(piece, dtype=np.float64)
        power[first:last] = np.add.reduceat(squares, edges[:-1] - edges[0])
    # Two hops are longer than a period of all but the lowest notes: no ripple is left.
    smooth = ndimage.uniform_filter1d(power, 2)
    level = 10 * np.log10(smooth + max(float(smooth.max()) * 1e-5, 1e-30))
    rise = np.zeros(count)
    rise[2:-1] = np.clip((level[3:] - level[:-3]) / _FULL_RISE_DB, 0.0, 1.0)
    highest = ndimage.maximum_filter1d(rise, _ATTACK_NEIGHBOURS)
    rise[(rise < highest) | (rise < _LEAST_RISE)] = 0.0
    return held_attacks(rise[:, np.newaxis])


def held_attacks(peaks: NDArray[np.floating]) -> Frames:
    """Hold attacks, (n, d), for a moment with a decay, so that near ones meet."""
    peaks = np.asarray(peaks, dtype=np.float32)
    held = peaks.copy()
    for lag in range(1, min(_DECAY_FRAMES, peaks.shape[0])):
        decay = np.float32(math.sqrt(1.0 - lag / _DECAY_FRAMES))
        held[lag:] = np.maximum(held[lag:], decay * peaks[:-lag])
    return held
