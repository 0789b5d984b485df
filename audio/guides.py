"""Click and drone: sound to play along with, made where it is read.

Every sample follows from its own number, so neither of them drifts, however
long it runs. Both are quiet by default: they are heard in headphones, close to
the ear, for a long time. Whoever offers them says so to the player.
"""

import math
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from audio.sources import SoundSource

FloatArray = NDArray[np.float32]

ENDLESS_FRAMES = 2**40
"""Seventeen hundred hours at 192 kHz: long enough to count as without an end."""

QUIET_LEVEL_DBFS = -20.0
"""Peak of a guide unless asked otherwise (common practice, no source)."""

_CLICK_S = 0.03
_DECAY_S = 0.006
CLICK_HZ = 1000.0
_ACCENT_HZ = 1500.0
_PARTIALS = 8


class Click:
    """A click at a steady tempo.

    Parameters
    ----------
    tempo_bpm : float
        Beats a minute, above 0.
    sample_rate_hz : int
        Rate of the sound.
    accents : sequence of float
        Strength of every beat of a bar, 0 (left out) to 1 (accented, higher).
    first_beat_s : float
        Where the first beat of the first bar is.
    level_dbfs : float
        Peak of the strongest beat.
    """

    channels = 1
    frames = ENDLESS_FRAMES

    def __init__(
        self,
        tempo_bpm: float,
        sample_rate_hz: int,
        *,
        accents: Sequence[float] = (1.0, 0.6, 0.6, 0.6),
        first_beat_s: float = 0.0,
        level_dbfs: float = QUIET_LEVEL_DBFS,
    ) -> None:
        if not tempo_bpm > 0 or not accents:
            raise ValueError("a click needs a tempo above 0 and at least one beat in a bar")
        self.sample_rate_hz = sample_rate_hz
        self._beat_s = 60.0 / tempo_bpm
        self._first_beat_s = first_beat_s
        gain = 10 ** (level_dbfs / 20)
        self._waves = [
            click_wave(gain * accent, _ACCENT_HZ if accent >= 1 else CLICK_HZ, sample_rate_hz)
            for accent in accents
        ]

    def beat_s(self, number: int) -> float:
        """Say where a beat is.

        Parameters
        ----------
        number : int
            0 is the first beat of the first bar.

        Returns
        -------
        float
            Seconds from the start of the sound.
        """
        return self._first_beat_s + number * self._beat_s

    def read(self, start: int, end: int) -> FloatArray:
        """Return frames `start` to `end`, shape (n, 1)."""
        start = max(start, 0)
        block = np.zeros(max(end - start, 0), np.float32)
        longest = len(self._waves[0])
        number = self._number_from(start - longest)
        while (at := round(self.beat_s(number) * self.sample_rate_hz)) < end:
            wave = self._waves[number % len(self._waves)]
            inner = slice(max(at, start) - start, max(min(at + longest, end) - start, 0))
            offset = max(start - at, 0)
            block[inner] += wave[offset : offset + inner.stop - inner.start]
            number += 1
        return block[:, np.newaxis]

    def _number_from(self, frame: int) -> int:
        """Return the first beat that may reach beyond a frame."""
        since_s = frame / self.sample_rate_hz - self._first_beat_s
        return max(0, math.floor(since_s / self._beat_s))


class Drone:
    """A steady tone, or several, with the soft partials of a reed.

    Parameters
    ----------
    frequencies_hz : sequence of float
        What sounds, such as a tonic and its fifth.
    sample_rate_hz : int
        Rate of the sound.
    level_dbfs : float
        Highest peak the tones can reach together.
    """

    channels = 1
    frames = ENDLESS_FRAMES

    def __init__(
        self,
        frequencies_hz: Sequence[float],
        sample_rate_hz: int,
        *,
        level_dbfs: float = QUIET_LEVEL_DBFS,
    ) -> None:
        partials = [
            (number * frequency, number**-1.5)
            for frequency in frequencies_hz
            for number in range(1, _PARTIALS + 1)
            if number * frequency < 0.45 * sample_rate_hz
        ]
        if not partials or min(frequencies_hz) <= 0:
            raise ValueError("a drone needs audible frequencies above 0")
        self.sample_rate_hz = sample_rate_hz
        total = sum(strength for _, strength in partials)
        gain = 10 ** (level_dbfs / 20) / total
        self._partials = [(frequency, gain * strength) for frequency, strength in partials]

    def read(self, start: int, end: int) -> FloatArray:
        """Return frames `start` to `end`, shape (n, 1)."""
        numbers = np.arange(max(start, 0), max(end, start, 0))
        block = np.zeros(len(numbers))
        for frequency, strength in self._partials:
            # Whole turns are taken off before the sine: no precision is lost after hours.
            turns = np.mod(numbers * (frequency / self.sample_rate_hz), 1.0)
            block += strength * np.sin(2 * np.pi * turns)
        return block.astype(np.float32)[:, np.newaxis]


class FirstPart:
    """Another sound up to some place, and silence behind it, such as a count-in.

    Parameters
    ----------
    source : SoundSource
        The sound; how long it is said to last stays.
    end : int
        The first frame that is silent.
    """

    def __init__(self, source: SoundSource, end: int) -> None:
        self._source = source
        self._end = end
        self.frames = source.frames
        self.channels = source.channels

    def read(self, start: int, end: int) -> FloatArray:
        """Return frames `start` to `end`."""
        start, end = max(start, 0), min(end, self.frames)
        block = np.zeros((max(end - start, 0), self.channels), np.float32)
        part = self._source.read(start, min(end, self._end))
        block[: len(part)] = part
        return block


class Together:
    """Several sounds at once, such as a take with a click.

    Parameters
    ----------
    sources : sequence of SoundSource
        All of one rate. The first one decides how long it lasts.
    """

    def __init__(self, sources: Sequence[SoundSource]) -> None:
        self._sources = tuple(sources)
        self.frames = sources[0].frames
        self.channels = max(source.channels for source in sources)

    def read(self, start: int, end: int) -> FloatArray:
        """Return frames `start` to `end`, cut to what there is."""
        start, end = max(start, 0), min(end, self.frames)
        block = np.zeros((max(end - start, 0), self.channels), np.float32)
        for source in self._sources:
            part = source.read(start, end)
            if part.shape[1] not in (1, self.channels):
                part = part.mean(axis=1, keepdims=True, dtype=np.float32)
            block[: len(part)] += part
        return block


def click_wave(gain: float, frequency_hz: float, sample_rate_hz: int) -> FloatArray:
    """Return one click, highest at its first sample, shape (n,)."""
    time_s = np.arange(round(_CLICK_S * sample_rate_hz)) / sample_rate_hz
    # It begins at its highest: the ear and the onset detector agree on where it is.
    wave = gain * np.cos(2 * np.pi * frequency_hz * time_s) * np.exp(-time_s / _DECAY_S)
    return wave.astype(np.float32)
