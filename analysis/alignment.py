"""Equal musical moments of two takes.

Two takes are warped onto each other by harmony and attacks, coarse to fine; what
only one of them plays is passed over. Where their notes are known the map is then
pulled onto the note onsets they share. Takes that do not show the same music are
refused.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np
from scipy import ndimage

from analysis.alignment_features import (
    HARMONY_SIZE,
    HOP_S,
    AlignmentFeatures,
    extract_features,
)
from analysis.blocks import SampleArray
from analysis.note_matching import match_notes
from analysis.results import (
    Alignment,
    FloatArray,
    JudgedNote,
    Measured,
    Note,
    NoteKind,
    NotMeasurable,
    Provenance,
    Reason,
)
from analysis.stopping import Stopped, StopQuestion, stop_if_asked
from analysis.time_map import left_out_spans, map_time, map_time_back
from analysis.units import hz_to_midi
from analysis.warping import WarpingPath, coarse_to_fine_path

__all__ = ["AlignmentStopped", "align", "left_out_spans", "map_time", "map_time_back"]

ALGORITHM = "alignment-3"
SHORTEST_S = 0.5
LEAST_MATCHED_SHARE = 0.75
MATCHED_COST = 0.25
STRETCH_S = 2.0
LARGEST_RATIO = 3.3
NOTE_WINDOW_S = 2.0

_SMOOTHING_FRAMES = 9
_MAP_STEP_FRAMES = 5
_BRIDGED_S = 0.3

Progress = Callable[[float], None]
AnyNote = Note | JudgedNote
AlignmentStopped = Stopped


def align(
    samples_a: SampleArray,
    sample_rate_a_hz: int,
    samples_b: SampleArray,
    sample_rate_b_hz: int,
    *,
    notes_a: Sequence[AnyNote] | None = None,
    notes_b: Sequence[AnyNote] | None = None,
    progress: Progress | None = None,
    should_stop: StopQuestion | None = None,
) -> Measured[Alignment] | NotMeasurable:
    """Find the equal musical moments of two takes.

    Parameters
    ----------
    samples_a, samples_b : (n,) or (n, channels) arrays
    sample_rate_a_hz, sample_rate_b_hz : int
    notes_a, notes_b : sequence of Note or JudgedNote, optional
        With the notes of both takes the map is exact at the notes they share.
    progress : callable, optional
        Called with the share done, 0 to 1.
    should_stop : callable, optional
        Asked often; true raises :class:`analysis.stopping.Stopped`.

    Returns
    -------
    Measured[Alignment] or NotMeasurable
        ``SILENT``, ``TOO_SHORT`` under half a second of sound, ``NO_MATCH``,
        ``INPUT_BROKEN`` with samples that are not finite. The map
        runs from the first to the last moment that both takes play; its confidence
        is the share of the shorter take that has a counterpart.

    Raises
    ------
    Stopped
        When ``should_stop`` answered true.
    """
    tell = progress or _nobody
    with_notes = notes_a is not None and notes_b is not None
    provenance = Provenance(ALGORITHM, {"hop_s": HOP_S, "notes": with_notes})
    for samples in (samples_a, samples_b):
        # The sum is finite only if every sample is.
        if not math.isfinite(float(np.sum(samples, dtype=np.float64))):
            sentence = "One of the recordings contains samples that are not numbers."
            return NotMeasurable(Reason.INPUT_BROKEN, sentence, provenance)
    features_a = extract_features(samples_a, sample_rate_a_hz, should_stop=should_stop)
    tell(0.35)
    features_b = extract_features(samples_b, sample_rate_b_hz, should_stop=should_stop)
    tell(0.7)
    for features in (features_a, features_b):
        refusal = _too_little_sound(features, provenance)
        if refusal is not None:
            return refusal
    path = coarse_to_fine_path(features_a.frames, features_b.frames, HARMONY_SIZE, HOP_S)
    stop_if_asked(should_stop)
    tell(0.95)
    match = _judged_path(path)
    if match.share < LEAST_MATCHED_SHARE:
        sentence = "The two takes do not seem to be the same passage."
        return NotMeasurable(Reason.NO_MATCH, sentence, provenance)
    alignment = _smooth_map(features_a, features_b, match)
    if notes_a is not None and notes_b is not None:
        alignment = _pulled_onto_notes(alignment, notes_a, notes_b)
    tell(1.0)
    return Measured(alignment, provenance)


def _nobody(_: float) -> None:
    """Progress nobody listens to."""


def _too_little_sound(features: AlignmentFeatures, provenance: Provenance) -> NotMeasurable | None:
    """Why a take has too little sound to be aligned, if so."""
    if not features.frames.shape[0]:
        return NotMeasurable(Reason.SILENT, "One of the two takes is silent.", provenance)
    if features.frames.shape[0] * HOP_S < SHORTEST_S:
        sentence = f"One of the two takes sounds for less than {SHORTEST_S:g} seconds."
        return NotMeasurable(Reason.TOO_SHORT, sentence, provenance)
    return None


@dataclass(frozen=True, slots=True)
class _Match:
    """The stretches of a path that match, and their share of the shorter take."""

    path: WarpingPath
    share: float


def _judged_path(path: WarpingPath) -> _Match:
    """Keep the stretches of a path that tell the same passage, and say how much they are.

    Unrelated music finds a counterpart for many single notes; only stretches of some
    seconds at a plausible ratio of tempos tell that it is the same passage.
    """
    matched = np.flatnonzero(~path.is_gap & (path.cost < MATCHED_COST))
    if not matched.size:
        return _Match(path, 0.0)
    breaks = np.flatnonzero(np.diff(matched) > round(_BRIDGED_S / HOP_S))
    first = matched[np.concatenate(([0], breaks + 1))]
    last = matched[np.concatenate((breaks, [matched.size - 1]))]
    long_a = path.a_frame[last] - path.a_frame[first] + 1
    long_b = path.b_frame[last] - path.b_frame[first] + 1
    total_a, total_b = int(path.a_frame[-1]) + 1, int(path.b_frame[-1]) + 1
    needed = min(STRETCH_S / HOP_S, 0.4 * min(total_a, total_b))
    told = (np.maximum(long_a, long_b) >= needed) & (np.minimum(long_a, long_b) >= needed / 2)
    told &= (long_a < LARGEST_RATIO * long_b) & (long_b < LARGEST_RATIO * long_a)
    if not told.any():
        return _Match(path, 0.0)
    share = max(long_a[told].sum() / total_a, long_b[told].sum() / total_b)
    inside = np.zeros(path.cost.size, dtype=np.bool_)
    for begin, end in zip(first[told], last[told], strict=True):
        inside[begin : end + 1] = True
    kept = WarpingPath(
        path.a_frame[inside], path.b_frame[inside], path.is_gap[inside], path.cost[inside]
    )
    return _Match(kept, float(share))


def _smooth_map(
    features_a: AlignmentFeatures, features_b: AlignmentFeatures, match: _Match
) -> Alignment:
    """Turn the staircase of a warping path into a smooth monotone map."""
    path = match.path
    rows = np.arange(path.a_frame[0], path.a_frame[-1] + 1)
    played, first = np.unique(path.a_frame, return_index=True)
    last = np.append(first[1:], path.a_frame.size) - 1
    middle = (path.b_frame[first] + path.b_frame[last]) / 2
    column = np.interp(rows, played, middle)
    smooth = ndimage.uniform_filter1d(column, min(_SMOOTHING_FRAMES, rows.size), mode="nearest")
    smooth[0], smooth[-1] = path.b_frame[0], path.b_frame[-1]
    smooth = np.maximum.accumulate(np.minimum(smooth, path.b_frame[-1]))
    kept = np.unique(np.append(np.arange(0, rows.size, _MAP_STEP_FRAMES), rows.size - 1))
    return Alignment(
        a_s=features_a.start_s + rows[kept] * HOP_S,
        b_s=features_b.start_s + smooth[kept] * HOP_S,
        confidence=min(1.0, match.share),
    )


def _pulled_onto_notes(
    alignment: Alignment, notes_a: Sequence[AnyNote], notes_b: Sequence[AnyNote]
) -> Alignment:
    """Move the map so that it is exact at the onsets of the notes both takes share."""
    start_a, pitch_a = _starts_and_pitches(notes_a)
    start_b, pitch_b = _starts_and_pitches(notes_b)
    inside = (start_a >= alignment.a_s[0] - NOTE_WINDOW_S) & (
        start_a <= alignment.a_s[-1] + NOTE_WINDOW_S
    )
    expected = map_time(alignment, start_a)
    pairs = match_notes(
        expected, np.where(inside, pitch_a, np.nan), start_b, pitch_b, NOTE_WINDOW_S
    )
    if not pairs:
        return alignment
    index_a, index_b = np.array(pairs).T
    anchor_a, anchor_b = start_a[index_a], start_b[index_b]
    moved = alignment.b_s + np.interp(alignment.a_s, anchor_a, anchor_b - expected[index_a])
    # The points between two anchors may not lie outside of them; inside a single note
    # of both takes nothing tells more than a straight line.
    after = np.searchsorted(anchor_a, alignment.a_s, side="right")
    lowest = np.concatenate(([-np.inf], anchor_b))[after]
    highest = np.concatenate((anchor_b, [np.inf]))[after]
    one_note = (np.diff(index_a) == 1) & (np.diff(index_b) == 1)
    kept = ~np.concatenate(([False], one_note, [False]))[after]
    joined_a = np.concatenate((alignment.a_s[kept], anchor_a))
    joined_b = np.concatenate((np.clip(moved, lowest, highest)[kept], anchor_b))
    order = np.lexsort((joined_b, joined_a))
    return Alignment(
        a_s=joined_a[order],
        b_s=np.maximum.accumulate(joined_b[order]),
        confidence=alignment.confidence,
    )


def _starts_and_pitches(notes: Sequence[AnyNote]) -> tuple[FloatArray, FloatArray]:
    """List starts in seconds and note numbers, NaN for what is not a plain pitched note."""
    plain = [note.note if isinstance(note, JudgedNote) else note for note in notes]
    start = np.array([note.start_s for note in plain], dtype=np.float64)
    pitch = np.array(
        [
            float(hz_to_midi(note.pitch.value.pitch_hz))
            if isinstance(note.pitch, Measured) and note.kind is not NoteKind.DOUBLE_STOP
            else np.nan
            for note in plain
        ],
        dtype=np.float64,
    )
    return start, pitch
