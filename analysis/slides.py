"""Notes that are nothing but a slide from one pitch to another."""

from typing import Final

import numpy as np

from analysis.results import PitchTrack
from analysis.units import hz_to_midi

_SLIDE_CENTS_PER_S: Final = 300.0
_FEWEST_SLIDE_CENTS: Final = 90.0
_LARGEST_STEP_OF_SLIDE: Final = 0.5


def slide_direction(track: PitchTrack, first: int, last: int) -> int:
    """Return 1 or -1 where the pitch moves one way throughout, 0 where it does not.

    Parameters
    ----------
    track : PitchTrack
        The pitch of the take.
    first, last : int
        Frames of the note, the last one exclusive.
    """
    cents = 100.0 * hz_to_midi(track.f0_hz[first:last])
    cents = cents[np.isfinite(cents)]
    if len(cents) < 6:
        return 0
    inner = cents[1:-1]
    total = float(inner[-1] - inner[0])
    duration_s = (len(inner) - 1) * track.hop_s
    steps = np.diff(inner)
    one_way = float(np.sum(steps)) / max(float(np.sum(np.abs(steps))), 1e-9)
    # The slowest half of a slide still moves; a note with a slide before it rests.
    slow = float(np.percentile(np.abs(steps), 30.0)) / track.hop_s
    if abs(total) < min(_FEWEST_SLIDE_CENTS, _SLIDE_CENTS_PER_S * duration_s):
        return 0
    if abs(one_way) < 0.9 or slow < 0.5 * _SLIDE_CENTS_PER_S:
        return 0
    if float(np.max(np.abs(steps))) > _LARGEST_STEP_OF_SLIDE * abs(total):
        return 0  # it goes over into the next note at once
    return 1 if total > 0 else -1
