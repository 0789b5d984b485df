"""Where a note ends: the bow leaves the string, or silence comes before the next note."""

from typing import Final

import numpy as np
from numpy.typing import NDArray
from scipy.ndimage import maximum_filter1d

FloatArray = NDArray[np.float64]

_RELEASE_DB: Final = 6.0
_RELEASE_WITHIN_S: Final = 0.15
_LEAST_HOLE_S: Final = 0.1
_LONGEST_FORERUNNER_S: Final = 0.06


def frames_until_release(level_dbfs: FloatArray, hop_s: float) -> int:
    """Count the frames until a note is let go.

    From there on it stays 6 dB under what it was within the last 150 ms: a note may fade
    slowly, and dip for a moment, but what falls at once and for good has ended.

    Parameters
    ----------
    level_dbfs : (n,) array
        From the beginning of the note to that of the next one.
    hop_s : float
        Distance of two values.
    """
    reach = max(round(_RELEASE_WITHIN_S / hop_s), 2)
    recent = maximum_filter1d(level_dbfs, reach, origin=(reach - 1) // 2, mode="nearest")
    to_come = np.maximum.accumulate(level_dbfs[::-1])[::-1]
    gone = np.flatnonzero(to_come < recent - _RELEASE_DB)
    return int(gone[0]) if gone.size else len(level_dbfs)


def without_forerunner(sounding: NDArray[np.int64], hop_s: float) -> int:
    """Count the frames up to the last that sounds, without the first of the next note.

    A note is heard a few frames before the moment it is said to begin. After silence these
    are no part of the note before.

    Parameters
    ----------
    sounding : (n,) int array
        Numbers of the frames that have a pitch, rising, at least one.
    hop_s : float
        Distance of two frames.
    """
    hole = np.flatnonzero(np.diff(sounding) * hop_s > _LEAST_HOLE_S)
    if hole.size and (sounding[-1] - sounding[hole[-1] + 1]) * hop_s < _LONGEST_FORERUNNER_S:
        return int(sounding[hole[-1]]) + 1
    return int(sounding[-1]) + 1
