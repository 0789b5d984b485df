"""The sound of a clip: cut, faded, and brought to a stated loudness."""

from dataclasses import dataclass
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from analysis.loudness import measure_loudness
from analysis.true_peak import measure_true_peak_dbtp
from audio.clip_cutting import cut

HIGHEST_PEAK_DBTP = -1.0
"""EBU R 128: the true peak of a programme stays at or below this."""

_MOST_GAIN_DB = 40.0


@dataclass(frozen=True, slots=True)
class ClipSound:
    """A clip ready to be written: samples (n, channels) in float32, and what was done to it.

    ``loudness_lufs`` is that of the result, ``None`` where it is too short or too soft
    to have one.
    """

    samples: NDArray[np.float32]
    sample_rate_hz: int
    gain_db: float
    loudness_lufs: float | None
    sentence: str


def clip_sound(
    path: Path, start_s: float, end_s: float, *, fade_s: float, target_lufs: float
) -> ClipSound:
    """Cut a stretch out of a recording and level it.

    The gain is one number for the whole clip, so its dynamics stay. Where the wanted
    loudness would drive the true peak above -1 dBTP, the clip stays softer, and the
    sentence says so. Measured after the fades, over the clip alone.

    Raises
    ------
    AudioFailure
        Where the recording cannot be read.
    """
    samples, rate = cut(path, start_s, end_s, fade_s=fade_s)
    loudness = measure_loudness(samples, rate).integrated_lufs
    peak = measure_true_peak_dbtp(samples, rate)
    if loudness is None:
        return ClipSound(samples, rate, 0.0, None, "Too short or too soft to be levelled.")
    wanted = min(target_lufs - loudness, _MOST_GAIN_DB)
    gain_db = min(wanted, HIGHEST_PEAK_DBTP - peak)
    result = loudness + gain_db
    sentence = f"Levelled to {result:.1f} LUFS ({gain_db:+.1f} dB)."
    if gain_db < wanted - 0.05:
        sentence += f" {target_lufs:.0f} LUFS would overload it: peaks stay at -1 dBTP."
    scaled = (samples * np.float32(10 ** (gain_db / 20))).astype(np.float32)
    return ClipSound(scaled, rate, gain_db, result, sentence)


def with_silence(sound: ClipSound, before_s: float) -> NDArray[np.float32]:
    """Give the samples with silence in front, for as long as the title card stands."""
    silence = np.zeros((round(before_s * sound.sample_rate_hz), sound.samples.shape[1]), np.float32)
    return np.concatenate([silence, sound.samples])
