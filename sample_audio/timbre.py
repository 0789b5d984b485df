"""A bowed or plucked string through the body of its instrument.

The resonances are rounded figures of the order usual for each family (main air
and wood modes, bridge hill); common practice, no source. They shape the partials
only: the level stays what the line says, because every spectrum is scaled to
unit power.
"""

from dataclasses import dataclass

import numpy as np
from scipy import signal

from sample_audio.lines import StringLine
from sample_audio.specs import FloatArray, Instrument

_STEP = 64  # samples from one spectrum to the next; between them linear
_CHUNK = 128 * _STEP
_TOP_HZ = 12_000.0  # partials fade out below this, and always below Nyquist
_MOST_PARTIALS = 120
_PLUCK_DECAY_S = 0.9


@dataclass(frozen=True, slots=True)
class Body:
    """Resonances (Hz, dB, width in octaves), the darkening corner, the noise band."""

    resonances: tuple[tuple[float, float, float], ...]
    corner_hz: float
    noise_band_hz: tuple[float, float]


BODIES: dict[Instrument, Body] = {
    "violin": Body(
        ((275, 7, 0.15), (460, 8, 0.12), (540, 7, 0.12), (1100, 3, 0.4), (2500, 9, 0.6)),
        4200.0,
        (700.0, 9000.0),
    ),
    "viola": Body(
        ((225, 7, 0.15), (350, 8, 0.12), (430, 7, 0.12), (900, 3, 0.4), (1900, 8, 0.6)),
        3200.0,
        (500.0, 7000.0),
    ),
    "cello": Body(
        ((102, 7, 0.15), (175, 8, 0.12), (205, 7, 0.12), (480, 3, 0.4), (1500, 7, 0.7)),
        2600.0,
        (300.0, 6000.0),
    ),
    "double bass": Body(
        ((60, 6, 0.15), (105, 8, 0.15), (160, 5, 0.2), (350, 3, 0.5), (850, 6, 0.8)),
        1600.0,
        (150.0, 4000.0),
    ),
}


def sound(
    line: StringLine, instrument: Instrument, sample_rate_hz: int
) -> tuple[FloatArray, FloatArray]:
    """Sound one string.

    Returns
    -------
    samples : (n,) array
        The string's sound, no noise.
    rms : (n,) array
        Its exact RMS amplitude (of the running spectrum) at every sample.
    """
    n = line.f0_hz.size
    phase = np.cumsum(line.f0_hz) * (2.0 * np.pi / sample_rate_hz)
    samples = np.zeros(n)
    rms = np.zeros(n)
    envelope = line.shape * line.gain
    for first in range(0, n, _CHUNK):
        last = min(first + _CHUNK, n)
        if not line.shape[first:last].any():
            continue
        amplitudes = _amplitudes(line, instrument, sample_rate_hz, first, last)
        waves, power = _sum_partials(amplitudes, np.remainder(phase[first:last], 2.0 * np.pi))
        samples[first:last] = envelope[first:last] * waves
        rms[first:last] = envelope[first:last] * np.sqrt(power)
    return samples, rms


def _amplitudes(
    line: StringLine, instrument: Instrument, sample_rate_hz: int, first: int, last: int
) -> FloatArray:
    """Find the partials' amplitudes at a chunk's control points, (partials, points)."""
    body = BODIES[instrument]
    at = np.minimum(np.arange(first, last + _STEP, _STEP), line.f0_hz.size - 1)
    f0 = line.f0_hz[at]
    top_hz = min(_TOP_HZ, 0.47 * sample_rate_hz)
    count = int(np.clip(np.ceil(top_hz / f0.min()), 1, _MOST_PARTIALS))
    k = np.arange(1, count + 1, dtype=np.float64)[:, np.newaxis]
    frequency = k * f0
    loudness_db = 20.0 * np.log10(np.maximum(line.gain[at], 1e-6)) + 20.0
    brightness = np.clip(-0.02 * loudness_db, -0.4, 0.6)
    spectrum = k ** -(1.0 + brightness + line.tilt[at])
    spectrum *= 10.0 ** (_body_db(body, frequency) / 20.0)
    spectrum /= 1.0 + (frequency / body.corner_hz) ** 2
    fade_hz = top_hz / 6.0
    spectrum *= np.clip((top_hz - frequency) / fade_hz, 0.0, 1.0)
    spectrum *= np.clip((_MOST_PARTIALS + 1 - k) / 20.0, 0.0, 1.0)
    spectrum /= np.sqrt(0.5 * np.sum(spectrum**2, axis=0, keepdims=True))
    age = line.age_s[at]
    if age.any():
        spectrum *= np.exp(-age / _PLUCK_DECAY_S * (1.0 + 0.3 * k) * (f0 / 220.0) ** 0.5)
    return np.asarray(spectrum)


def _body_db(body: Body, frequency_hz: FloatArray) -> FloatArray:
    grid = np.geomspace(20.0, 24_000.0, 2048)
    octaves = np.log2(grid)
    gain = np.zeros_like(grid)
    for centre_hz, gain_db, width in body.resonances:
        gain += gain_db / (1.0 + ((octaves - np.log2(centre_hz)) / width) ** 2)
    return np.interp(frequency_hz, grid, gain)


def _sum_partials(amplitudes: FloatArray, phase: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Sum of sines k * phase by recurrence; amplitudes linear between control points."""
    ramp = np.arange(_STEP) / _STEP
    two_cos = 2.0 * np.cos(phase)
    current, previous = np.sin(phase), np.zeros_like(phase)
    total = np.zeros_like(phase)
    power = np.zeros_like(phase)
    for row in amplitudes:
        running = (row[:-1, np.newaxis] + np.diff(row)[:, np.newaxis] * ramp).ravel()[: phase.size]
        total += running * current
        power += 0.5 * running * running
        current, previous = two_cos * current - previous, current
    return total, power


def bow_noise(
    line: StringLine,
    instrument: Instrument,
    sample_rate_hz: int,
    level_db: float,
    rng: np.random.Generator,
) -> FloatArray:
    """Noise of the hair on the string, (n,); stronger against the tone in attacks."""
    low, high = BODIES[instrument].noise_band_hz
    band = signal.butter(
        2, (low, min(high, 0.45 * sample_rate_hz)), "bandpass", fs=sample_rate_hz, output="sos"
    )
    noise = signal.sosfilt(band, rng.standard_normal(line.shape.size))
    noise /= max(float(np.std(noise)), 1e-12)
    bowed = np.where(line.age_s > 0.0, 0.0, np.sqrt(line.shape)) * line.gain
    return np.asarray(10.0 ** (level_db / 20.0) * bowed * noise)
