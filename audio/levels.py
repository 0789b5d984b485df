"""Level of a block of samples in dBFS, and a meter with peak hold.

Levels are relative to digital full scale. The root-mean-square level follows
AES17: a full-scale sine reads 0 dBFS (and so does its peak), which is 3.01 dB
above the plain root mean square. A microphone is not calibrated, so none of
these figures is a sound pressure level.
"""

import math
from dataclasses import dataclass
from enum import StrEnum

import numpy as np
from numpy.typing import NDArray

FLOOR_DBFS = -144.5
"""What digital silence reads as: half a quantising step of 24 bit audio."""

CLIP_THRESHOLD = 32767 / 32768
"""Full scale of a 16 bit converter, the coarsest one that is still common."""

_AES17_SINE = math.sqrt(2.0)


def amplitude_to_dbfs(amplitude: float) -> float:
    """Convert a linear amplitude to dBFS.

    Parameters
    ----------
    amplitude : float
        Linear amplitude, 1.0 is full scale; the sign is ignored.

    Returns
    -------
    float
        Level in dBFS, never below :data:`FLOOR_DBFS`.
    """
    magnitude = abs(amplitude)
    if magnitude < 10 ** (FLOOR_DBFS / 20):
        return FLOOR_DBFS
    return 20 * math.log10(magnitude)


def peak_dbfs(block: NDArray[np.floating]) -> float:
    """Return the sample peak of a block.

    Parameters
    ----------
    block : ndarray, shape (n,) or (n, channels)
        Samples, 1.0 is full scale.

    Returns
    -------
    float
        Highest absolute sample of all channels in dBFS; the floor when empty.
    """
    return amplitude_to_dbfs(float(np.max(np.abs(block)))) if block.size else FLOOR_DBFS


def rms_dbfs(block: NDArray[np.floating]) -> float:
    """Return the root-mean-square level of a block, as AES17 defines it.

    Parameters
    ----------
    block : ndarray, shape (n,) or (n, channels)
        Samples, 1.0 is full scale; channels are averaged by power.

    Returns
    -------
    float
        Level in dBFS, 0 for a full-scale sine; the floor when empty.
    """
    if not block.size:
        return FLOOR_DBFS
    power = float(np.mean(np.square(block, dtype=np.float64)))
    return amplitude_to_dbfs(_AES17_SINE * math.sqrt(power))


def clipped_count(block: NDArray[np.floating]) -> int:
    """Count samples at or beyond full scale.

    Parameters
    ----------
    block : ndarray, shape (n,) or (n, channels)
        Samples, 1.0 is full scale.

    Returns
    -------
    int
        Number of samples of all channels at or above :data:`CLIP_THRESHOLD`.
    """
    return int(np.count_nonzero(np.abs(block) >= CLIP_THRESHOLD))


class LevelJudgement(StrEnum):
    """Is the level fit for recording; common practice, no source."""

    TOO_QUIET = "too_quiet"
    GOOD = "good"
    TOO_LOUD = "too_loud"


def judge_level(peak_level_dbfs: float) -> LevelJudgement:
    """Judge the highest peak of a passage played at its loudest.

    Parameters
    ----------
    peak_level_dbfs : float
        Highest sample peak in dBFS.

    Returns
    -------
    LevelJudgement
        Good between -30 and -3 dBFS: enough headroom for an accent, and well
        above the noise of a built-in microphone (common practice, no source).
    """
    if peak_level_dbfs > -3.0:
        return LevelJudgement.TOO_LOUD
    if peak_level_dbfs < -30.0:
        return LevelJudgement.TOO_QUIET
    return LevelJudgement.GOOD


@dataclass(frozen=True, slots=True)
class Level:
    """One reading of a :class:`LevelMeter`.

    Attributes
    ----------
    peak_dbfs, rms_dbfs : float
        Of the latest block.
    hold_dbfs : float
        Highest recent peak: held, then falling.
    highest_dbfs : float
        Highest peak since the meter was reset.
    clipped_samples : int
        Samples at full scale since the meter was reset.
    """

    peak_dbfs: float = FLOOR_DBFS
    rms_dbfs: float = FLOOR_DBFS
    hold_dbfs: float = FLOOR_DBFS
    highest_dbfs: float = FLOOR_DBFS
    clipped_samples: int = 0


class LevelMeter:
    """Follow the level of a stream of blocks.

    Time is counted in samples, so that the reading does not depend on when
    the blocks arrive. After the hold time the held peak falls by 20 dB in
    1.7 s, the return time of a type I programme meter (IEC 60268-10, from
    memory).

    Parameters
    ----------
    sample_rate_hz : float
        Frames per second of the blocks.
    hold_s : float
        How long a peak is held before it falls.
    """

    _FALL_DB_PER_S = 20.0 / 1.7

    def __init__(self, sample_rate_hz: float, hold_s: float = 1.5) -> None:
        self._sample_rate_hz = sample_rate_hz
        self._hold_s = hold_s
        self._since_hold_s = 0.0
        self._level = Level()

    @property
    def level(self) -> Level:
        """The latest reading."""
        return self._level

    def reset(self) -> None:
        """Forget the hold, the highest peak and the clipping count."""
        self._level = Level()
        self._since_hold_s = 0.0

    def update(self, block: NDArray[np.floating]) -> Level:
        """Take in the next block.

        Parameters
        ----------
        block : ndarray, shape (n,) or (n, channels)
            Samples, 1.0 is full scale.

        Returns
        -------
        Level
            The new reading; the old one when the block is empty.
        """
        if not block.size:
            return self._level
        peak = peak_dbfs(block)
        self._level = Level(
            peak_dbfs=peak,
            rms_dbfs=rms_dbfs(block),
            hold_dbfs=self._held(peak, len(block) / self._sample_rate_hz),
            highest_dbfs=max(peak, self._level.highest_dbfs),
            clipped_samples=self._level.clipped_samples + clipped_count(block),
        )
        return self._level

    def _held(self, peak: float, block_s: float) -> float:
        self._since_hold_s += block_s
        falling_s = min(block_s, max(0.0, self._since_hold_s - self._hold_s))
        held = self._level.hold_dbfs - self._FALL_DB_PER_S * falling_s
        if peak >= held:
            self._since_hold_s = 0.0
            return peak
        return max(held, FLOOR_DBFS)
