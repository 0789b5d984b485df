"""The room a phrase sounds in: reflections, a decaying tail, and its own noise."""

import numpy as np
from scipy import signal

from sample_audio.specs import FloatArray, PhraseSpec

_EARLY_COUNT = 6
_TAIL_START_S = 0.025


def with_room(dry: FloatArray, spec: PhraseSpec) -> FloatArray:
    """Add the room's answer; the direct sound keeps its time and level, (n,)."""
    if spec.reverb_time_s is None:
        return dry
    answer = _impulse_response(spec, spec.reverb_time_s)
    return np.asarray(dry + signal.oaconvolve(dry, answer)[: dry.size])


def _impulse_response(spec: PhraseSpec, reverb_time_s: float) -> FloatArray:
    rate = spec.sample_rate_hz
    rng = np.random.default_rng([spec.seed, 3])
    t = np.arange(int(reverb_time_s * rate) + 1) / rate
    decay = 10.0 ** (-3.0 * t / reverb_time_s)  # -60 dB at reverb_time_s
    answer = rng.standard_normal(t.size) * decay * np.clip(t / _TAIL_START_S, 0.0, 1.0)
    # Air and walls take the high frequencies first.
    answer = signal.lfilter([0.45], [1.0, -0.55], answer)
    for at in rng.uniform(0.004, 0.03, _EARLY_COUNT):
        index = min(int(at * rate), t.size - 1)
        answer[index] += rng.choice((-1.0, 1.0)) * 6.0 * decay[index]
    energy = float(np.sum(answer**2))
    return np.asarray(answer * np.sqrt(10.0 ** (spec.reverb_db / 10.0) / energy))


def noise_floor(spec: PhraseSpec, sounding_power: float, n: int) -> FloatArray:
    """White noise for ``snr_db`` and pink noise for ``room_noise_dbfs``, (n,)."""
    rng = np.random.default_rng([spec.seed, 4])
    noise = np.zeros(n)
    if spec.snr_db is not None:
        noise += rng.standard_normal(n) * np.sqrt(sounding_power * 10.0 ** (-spec.snr_db / 10.0))
    if spec.room_noise_dbfs is not None:
        pink = _pink(n, spec.sample_rate_hz, rng)
        noise += pink * 10.0 ** (spec.room_noise_dbfs / 20.0)
    return noise


def _pink(n: int, sample_rate_hz: int, rng: np.random.Generator) -> FloatArray:
    spectrum = np.fft.rfft(rng.standard_normal(n))
    frequency = np.fft.rfftfreq(n, 1.0 / sample_rate_hz)
    spectrum *= 1.0 / np.sqrt(np.maximum(frequency, 30.0))
    spectrum[0] = 0.0
    pink = np.fft.irfft(spectrum, n)
    return np.asarray(pink / max(float(np.std(pink)), 1e-12))
