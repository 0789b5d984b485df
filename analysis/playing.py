"""Which part of a loudness curve is playing, and which is pause."""

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from analysis.loudness import ABSOLUTE_GATE_LUFS, HOP_S, MOMENTARY_S
from analysis.results import FloatArray

Spans = Sequence[tuple[float, float]]

_JOIN_GAP_S = 0.25
_ABOVE_NOISE_LU = 6.0
_PAUSE_BELOW_LOUD_LU = 20.0
_QUIETEST_PLAYING_LU = 45.0


def playing_windows(
    time_s: FloatArray, momentary_lufs: FloatArray, playing: Spans | None
) -> NDArray[np.bool_]:
    """Say which momentary windows are playing.

    Parameters
    ----------
    time_s, momentary_lufs : (n,) arrays
        Centres of the windows, seconds, and their loudness.
    playing : sequence of (start_s, end_s) or None
        Where the instrument sounds; a window must lie wholly inside, short gaps
        between notes being joined. Without it, playing is what stands clearly above
        the quietest part of the take.

    Returns
    -------
    (n,) bool array
        Never true under -70 LUFS.
    """
    audible = momentary_lufs >= ABSOLUTE_GATE_LUFS
    if not audible.any():
        return np.asarray(audible, dtype=np.bool_)
    if playing is None:
        return np.asarray(audible & _stands_out(momentary_lufs, audible), dtype=np.bool_)
    start_s = time_s - MOMENTARY_S / 2
    inside = np.zeros(time_s.size, dtype=np.bool_)
    for span_start_s, span_end_s in _joined(playing):
        first = np.searchsorted(start_s, span_start_s - HOP_S)
        last = np.searchsorted(start_s, span_end_s + HOP_S - MOMENTARY_S, side="right")
        inside[first:last] = True
    return np.asarray(audible & inside, dtype=np.bool_)


def _joined(spans: Spans) -> list[tuple[float, float]]:
    """Put spans in order, and make one of those less than a short gap apart."""
    joined: list[tuple[float, float]] = []
    for start, end in sorted(spans):
        if joined and start - joined[-1][1] <= _JOIN_GAP_S:
            joined[-1] = (joined[-1][0], max(joined[-1][1], end))
        else:
            joined.append((start, end))
    return joined


def _stands_out(momentary: FloatArray, audible: NDArray[np.bool_]) -> NDArray[np.bool_]:
    """Which windows stand clearly above the quietest part of the take."""
    quiet, loud = np.percentile(momentary[audible], [2, 95])
    # A take without a pause has no noise to stand above: all of it is playing.
    has_pause = loud - quiet > _PAUSE_BELOW_LOUD_LU
    threshold = quiet + _ABOVE_NOISE_LU if has_pause else ABSOLUTE_GATE_LUFS
    return np.asarray(momentary >= max(threshold, loud - _QUIETEST_PLAYING_LU), dtype=np.bool_)
