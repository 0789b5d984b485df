"""Which found note is which true one, and how far off it is.

Matching is what mir_eval.transcription does: the largest set of pairs whose onsets lie
within 50 ms and whose pitches lie within 50 cents.
"""

from collections.abc import Sequence
from typing import Final

import numpy as np

from analysis.results import FloatArray, Measured, Note, PitchTrack
from sample_audio.specs import NoteTruth, Truth

ONSET_WITHIN_S: Final = 0.05
PITCH_WITHIN_CENTS: Final = 50.0
_DECIMALS: Final = 4  # onset distances are rounded, so that exactly 50 ms still counts


def cents_off(found_hz: FloatArray, true_hz: FloatArray) -> FloatArray:
    """Signed cents from true to found."""
    return np.asarray(1200.0 * np.log2(found_hz / true_hz), dtype=np.float64)


def matched(
    true_s: FloatArray,
    found_s: FloatArray,
    true_hz: FloatArray | None = None,
    found_hz: FloatArray | None = None,
) -> list[tuple[int, int]]:
    """Pair true with found notes by onset, and by pitch where pitches are given.

    Parameters
    ----------
    true_s, true_hz : (n,) arrays
    found_s, found_hz : (m,) arrays

    Returns
    -------
    list of (true, found)
        A largest possible set of pairs, by augmenting paths.
    """
    off_s = np.round(np.abs(true_s[:, np.newaxis] - found_s), _DECIMALS)
    allowed = off_s <= ONSET_WITHIN_S
    if true_hz is not None and found_hz is not None:
        allowed &= np.abs(cents_off(found_hz, true_hz[:, np.newaxis])) <= PITCH_WITHIN_CENTS
    choices = [
        sorted(np.flatnonzero(row).tolist(), key=lambda j, i=i: float(off_s[i, j]))  # type: ignore[misc]
        for i, row in enumerate(allowed)
    ]
    owner: dict[int, int] = {}

    def place(true: int, seen: set[int]) -> bool:
        for found in choices[true]:
            if found in seen:
                continue
            seen.add(found)
            if found not in owner or place(owner[found], seen):
                owner[found] = true
                return True
        return False

    for true in range(len(choices)):
        place(true, set())
    return sorted((true, found) for found, true in owner.items())


def frame_errors(track: PitchTrack, truth: Truth) -> list[float]:
    """Sizes of the errors in cents of the voiced frames inside the notes' steady parts."""
    true_hz = np.interp(track.time_s, truth.time_s, truth.f0_hz)
    inside = np.zeros(track.time_s.shape, dtype=np.bool_)
    for note in truth.notes:
        inside |= (track.time_s > note.steady_start_s) & (track.time_s < note.steady_end_s)
    keep = inside & np.isfinite(true_hz) & np.isfinite(track.f0_hz)
    return [float(e) for e in np.abs(cents_off(track.f0_hz[keep], true_hz[keep]))]


def f_measure(pairs: int, found: int, true: int) -> float:
    """Harmonic mean of precision and recall, 0 to 1."""
    return 2.0 * pairs / (found + true) if found + true else 0.0


def pitches_of(notes: Sequence[Note]) -> FloatArray:
    """Give the pitches in Hz of notes that were all measured, (n,)."""
    return np.array(
        [n.pitch.value.pitch_hz for n in notes if isinstance(n.pitch, Measured)], dtype=np.float64
    )


def starts_of(notes: Sequence[Note | NoteTruth]) -> FloatArray:
    """Give the starts in seconds, (n,)."""
    return np.array([note.start_s for note in notes], dtype=np.float64)
