"""Sounds that are no single bowed line: a piano-like instrument, an accompaniment.

Struck strings after the usual textbook picture: partials a little sharp of whole
multiples (f_k = k f sqrt(1 + B k^2), H. Fletcher, J. Acoust. Soc. Am. 36 (1964) 203;
formula from memory), dying away the faster the higher they are, in pairs of strings a
fraction of a cent apart. Tuned in equal temperament, A at 440 Hz.
"""

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

FloatArray = NDArray[np.float64]

RATE_HZ = 48_000
_INHARMONICITY = 4e-4


def struck(midi: float, seconds: float, rng: np.random.Generator) -> FloatArray:
    """One key held down for so long, peak about 1, (n,) at :data:`RATE_HZ`."""
    time_s = np.arange(round((seconds + 0.15) * RATE_HZ)) / RATE_HZ
    f0 = 440.0 * 2 ** ((midi - 69) / 12)
    sound = np.zeros(len(time_s))
    for k in range(1, 21):
        hertz = k * f0 * np.sqrt(1 + _INHARMONICITY * k * k)
        if hertz > 12_000:
            break
        dies = np.exp(-time_s * (0.7 + 0.25 * k) * (f0 / 260) ** 0.4)
        for cents in (0.0, rng.uniform(0.2, 0.8)):
            phase = rng.uniform(0, 2 * np.pi)
            sound += (
                dies / k**1.2 * np.sin(2 * np.pi * hertz * 2 ** (cents / 1200) * time_s + phase)
            )
    sound *= np.minimum(1.0, time_s / 0.003)
    sound *= np.clip((seconds + 0.15 - time_s) / 0.15, 0.0, 1.0)  # the damper comes down
    return sound / np.max(np.abs(sound))


def piano(
    chords: Sequence[Sequence[float]], seconds_each: float, *, seed: int = 0, level: float = 0.2
) -> FloatArray:
    """Chords (or single notes) one after the other, (n,)."""
    rng = np.random.default_rng(seed)
    sound = np.zeros(round((len(chords) * seconds_each + 1.0) * RATE_HZ))
    for number, chord in enumerate(chords):
        at = round((0.3 + number * seconds_each) * RATE_HZ)
        for midi in chord:
            key = level / len(chord) ** 0.5 * struck(midi, seconds_each, rng)
            end = min(len(sound), at + len(key))
            sound[at:end] += key[: end - at]
    return sound + 1e-4 * rng.normal(size=len(sound))


PROGRESSION: tuple[tuple[int, ...], ...] = (
    (48, 60, 64, 67), (53, 60, 65, 69), (55, 59, 62, 67), (48, 60, 64, 72),
    (45, 60, 64, 69), (50, 57, 62, 65), (43, 59, 62, 67), (48, 55, 60, 64),
)  # fmt: skip
"""Four-part chords in C, common practice."""
