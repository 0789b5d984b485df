"""Equal musical moments of two takes.

Two takes are warped onto each other by harmony and attacks, coarse to fine; where
their notes are known the map is then pulled onto the matching note onsets. Takes
that do not show the same music are refused.
"""

from collections.abc import Callable, Sequence

import numpy as np
from scipy import ndimage

from analysis.alignment_features import (
    HARMONY_SIZE,
    HOP_S,
    AlignmentFeatures,
    extract_features,
    frame_times_s,
)
from analysis.blocks import SampleArray
from analysis.results import (
    Alignment,
    FloatArray,
    JudgedNote,
    Measured,
    Note,
    NotMeasurable,
    Provenance,
    Reason,
)
from analysis.warping import WarpingPath, coarse_to_fine_path

ALGORITHM = "alignment-1"
SHORTEST_S = 0.5
ATTACK_WEIGHT = 0.5
NO_MATCH_COST = 0.35

_SMOOTHING_FRAMES = 9

Progress = Callable[[float], None]
ShouldStop = Callable[[], bool]
AnyNote = Note | JudgedNote


class AlignmentStopped(Exception):  # noqa: N818 (it is a wish of the player, not an error)
    """The caller asked to stop."""


def align(
    samples_a: SampleArray,
    sample_rate_a_hz: float,
    samples_b: SampleArray,
    sample_rate_b_hz: float,
    *,
    notes_a: Sequence[AnyNote] | None = None,
    notes_b: Sequence[AnyNote] | None = None,
    progress: Progress | None = None,
    should_stop: ShouldStop | None = None,
) -> Measured[Alignment] | NotMeasurable:
    """Find the equal musical moments of two takes.

    Parameters
    ----------
    samples_a, samples_b : (n,) or (n, channels) arrays
    sample_rate_a_hz, sample_rate_b_hz : float
    notes_a, notes_b : sequence of Note or JudgedNote, optional
        With the notes of both takes the map is exact at the notes they share.
    progress : callable, optional
        Called with the share done, 0 to 1.
    should_stop : callable, optional
        Asked between the stages; true raises :class:`AlignmentStopped`.

    Returns
    -------
    Measured[Alignment] or NotMeasurable
        ``SILENT``, ``TOO_SHORT`` under half a second of sound, ``NO_MATCH``.

    Raises
    ------
    AlignmentStopped
        When ``should_stop`` answered true.
    """
    provenance = Provenance(
        ALGORITHM, {"hop_s": HOP_S, "notes": notes_a is not None and notes_b is not None}
    )
    report = _Stages(progress, should_stop)
    features_a = extract_features(samples_a, sample_rate_a_hz)
    report.reached(0.35)
    features_b = extract_features(samples_b, sample_rate_b_hz)
    report.reached(0.7)
    for features in (features_a, features_b):
        refusal = _too_little_sound(features, provenance)
        if refusal is not None:
            return refusal
    path = coarse_to_fine_path(
        features_a.frames, features_b.frames, HARMONY_SIZE, ATTACK_WEIGHT, HOP_S
    )
    report.reached(0.95)
    if path.mean_cost > NO_MATCH_COST:
        sentence = "The two takes do not seem to be the same passage."
        return NotMeasurable(Reason.NO_MATCH, sentence, provenance)
    alignment = _smooth_map(features_a, features_b, path)
    report.reached(1.0)
    return Measured(alignment, provenance)


class _Stages:
    """Tells the caller how far the work is, and listens for a stop."""

    def __init__(self, progress: Progress | None, should_stop: ShouldStop | None) -> None:
        self._progress = progress
        self._should_stop = should_stop

    def reached(self, share: float) -> None:
        if self._should_stop is not None and self._should_stop():
            raise AlignmentStopped
        if self._progress is not None:
            self._progress(share)


def _too_little_sound(features: AlignmentFeatures, provenance: Provenance) -> NotMeasurable | None:
    """Why a take has too little sound to be aligned, if so."""
    if not features.frames.shape[0]:
        return NotMeasurable(Reason.SILENT, "One of the two takes is silent.", provenance)
    if features.frames.shape[0] * HOP_S < SHORTEST_S:
        sentence = f"One of the two takes sounds for less than {SHORTEST_S:g} seconds."
        return NotMeasurable(Reason.TOO_SHORT, sentence, provenance)
    return None


def _smooth_map(
    features_a: AlignmentFeatures, features_b: AlignmentFeatures, path: WarpingPath
) -> Alignment:
    """Turn the staircase of a warping path into a smooth monotone map."""
    rows = np.arange(features_a.frames.shape[0])
    first = np.searchsorted(path.a_frame, rows, side="left")
    last = np.searchsorted(path.a_frame, rows, side="right") - 1
    column = (path.b_frame[first] + path.b_frame[last]) / 2
    smooth = ndimage.uniform_filter1d(column, min(_SMOOTHING_FRAMES, rows.size), mode="nearest")
    smooth[0], smooth[-1] = 0.0, path.b_frame[-1]
    b_s = features_b.start_s + np.maximum.accumulate(smooth) * HOP_S
    confidence = float(np.clip(1.0 - path.mean_cost / NO_MATCH_COST, 0.0, 1.0))
    return Alignment(a_s=frame_times_s(features_a), b_s=b_s, confidence=confidence)


def map_time(alignment: Alignment, a_s: FloatArray) -> FloatArray:
    """Moments of take b that correspond to moments of take a.

    Parameters
    ----------
    alignment : Alignment
    a_s : (n,) array
        Seconds in take a; outside the aligned part the offset of its end is kept.

    Returns
    -------
    (n,) array
        Seconds in take b.
    """
    return _mapped(alignment.a_s, alignment.b_s, a_s)


def map_time_back(alignment: Alignment, b_s: FloatArray) -> FloatArray:
    """Moments of take a that correspond to moments of take b; see :func:`map_time`."""
    return _mapped(alignment.b_s, alignment.a_s, b_s)


def _mapped(source_s: FloatArray, target_s: FloatArray, at_s: FloatArray) -> FloatArray:
    """Piecewise linear map, continued at its ends with unchanged speed."""
    at = np.asarray(at_s, dtype=np.float64)
    inside = np.interp(at, source_s, target_s)
    before = np.minimum(at - source_s[0], 0.0)
    after = np.maximum(at - source_s[-1], 0.0)
    return np.asarray(inside + before + after, dtype=np.float64)
