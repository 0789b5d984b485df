"""Equal musical moments of two takes.

Two takes are warped onto each other by harmony and attacks, coarse to fine; what
only one of them plays is passed over. The map is then pulled onto what both of them
begin: the notes they share where those are known, else their attacks. Takes that do not
show the same music are refused.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np

from analysis.alignment_features import (
    HARMONY_SIZE,
    HOP_S,
    AlignmentFeatures,
    Thinned,
    extract_features,
)
from analysis.anchored_map import pulled_onto_notes
from analysis.blocks import SampleArray
from analysis.matched_path import gap_spans, judged_path, smooth_map
from analysis.note_lines import AnyNote, NoteLine, heard_line, note_line
from analysis.results import (
    Alignment,
    Measured,
    NotMeasurable,
    Provenance,
    Reason,
)
from analysis.short_spectra import Source
from analysis.side_by_side import side_by_side
from analysis.stopping import Stopped, StopQuestion, part_of, stop_if_asked, telling
from analysis.time_map import left_out_spans, map_time, map_time_back
from analysis.warping import coarse_to_fine_path
from analysis.warping_table import Prices

__all__ = [
    "AlignmentStopped",
    "Heard",
    "align",
    "align_features",
    "align_heard",
    "hear",
    "left_out_spans",
    "map_time",
    "map_time_back",
    "too_little_sound",
]

ALGORITHM = "alignment-9"
SHORTEST_S = 0.5
LEAST_MATCHED_SHARE = 0.75
# Tuned on generated pairs with slips.
PRICES = Prices(gap_opening_s=0.3, hold=0.6)

_CHECKED_AT_ONCE = 1 << 20
_USUAL_QUESTIONS, _USUAL_BLOCKS = 20, 200

Progress = Callable[[float], None]
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
    heard_a, heard_b = side_by_side(
        lambda asked: hear(samples_a, sample_rate_a_hz, should_stop=asked),
        lambda asked: hear(samples_b, sample_rate_b_hz, should_stop=asked),
        telling(should_stop, part_of(progress, 0.0, 0.7), _USUAL_BLOCKS),
    )
    tell(0.7)
    return align_heard(
        heard_a,
        heard_b,
        notes_a=notes_a,
        notes_b=notes_b,
        progress=part_of(tell, 0.7, 1.0),
        should_stop=should_stop,
    )


@dataclass(frozen=True, slots=True)
class Heard:
    """A take made ready to be aligned; ``None`` where samples are not finite."""

    features: AlignmentFeatures | None
    source: Source


def hear(
    samples: SampleArray, sample_rate_hz: int, *, should_stop: StopQuestion | None = None
) -> Heard:
    """Make a take ready; the longer part of aligning, so worth keeping for several others."""
    source = Thinned(samples, sample_rate_hz)
    if not _all_finite(samples, should_stop):
        return Heard(None, source)
    return Heard(extract_features(samples, sample_rate_hz, should_stop=should_stop), source)


def align_heard(
    a: Heard,
    b: Heard,
    *,
    notes_a: Sequence[AnyNote] | None = None,
    notes_b: Sequence[AnyNote] | None = None,
    progress: Progress | None = None,
    should_stop: StopQuestion | None = None,
) -> Measured[Alignment] | NotMeasurable:
    """Find the equal musical moments of two takes that were made ready; see :func:`align`."""
    tell = progress or _nobody
    with_notes = notes_a is not None and notes_b is not None
    provenance = Provenance(ALGORITHM, {"hop_s": HOP_S, "notes": with_notes})
    if a.features is None or b.features is None:
        sentence = "One of the recordings contains samples that are not numbers."
        return NotMeasurable(Reason.INPUT_BROKEN, sentence, provenance)
    for features in (a.features, b.features):
        refusal = too_little_sound(features, provenance)
        if refusal is not None:
            return refusal
    stop_if_asked(should_stop)
    if notes_a is not None and notes_b is not None:
        lines = (note_line(notes_a, a.features.rise_s), note_line(notes_b, b.features.rise_s))
    else:
        lines = (heard_line(a.features), heard_line(b.features))
    alignment = align_features(
        a.features,
        b.features,
        lines,
        sources=(a.source, b.source),
        should_stop=telling(should_stop, tell, _USUAL_QUESTIONS),
    )
    if alignment is None:
        sentence = "The two takes do not seem to be the same passage."
        return NotMeasurable(Reason.NO_MATCH, sentence, provenance)
    tell(1.0)
    return Measured(alignment, provenance)


def align_features(
    features_a: AlignmentFeatures,
    features_b: AlignmentFeatures,
    lines: tuple[NoteLine, NoteLine] | None = None,
    *,
    sources: tuple[Source, Source] | None = None,
    should_stop: StopQuestion | None = None,
) -> Alignment | None:
    """Align what was heard, or what is written, by its features.

    Parameters
    ----------
    features_a, features_b : AlignmentFeatures
        At least one frame each.
    lines : pair of NoteLine, optional
        The notes of both; the map is then exact at those they share.
    sources : pair of Source, optional
        The sound of both: where notes speak softly, their beginnings are looked for in it.
    should_stop : callable, optional
        Asked often; true raises :class:`analysis.stopping.Stopped`.

    Returns
    -------
    Alignment or None
        ``None`` where the two are not the same music.
    """
    path = coarse_to_fine_path(
        features_a.frames,
        features_b.frames,
        HARMONY_SIZE,
        HOP_S,
        prices=PRICES,
        should_stop=should_stop,
    )
    match = judged_path(path)
    if match.share < LEAST_MATCHED_SHARE:
        return None
    alignment = smooth_map(features_a, features_b, match)
    if lines is None:
        return alignment
    gaps = gap_spans(features_a, features_b, match)
    return pulled_onto_notes(alignment, gaps, lines, sources, should_stop)


def _all_finite(samples: SampleArray, should_stop: StopQuestion | None) -> bool:
    for first in range(0, len(samples), _CHECKED_AT_ONCE):
        stop_if_asked(should_stop)
        # The sum is finite only if every sample is.
        piece = samples[first : first + _CHECKED_AT_ONCE]
        if not math.isfinite(float(np.sum(piece, dtype=np.float64))):
            return False
    return True


def _nobody(_: float) -> None:
    """Progress nobody listens to."""


def too_little_sound(features: AlignmentFeatures, provenance: Provenance) -> NotMeasurable | None:
    """Why a take has too little sound to be aligned, if so."""
    if not features.frames.shape[0]:
        return NotMeasurable(Reason.SILENT, "One of the two takes is silent.", provenance)
    if features.frames.shape[0] * HOP_S < SHORTEST_S:
        sentence = f"One of the two takes sounds for less than {SHORTEST_S:g} seconds."
        return NotMeasurable(Reason.TOO_SHORT, sentence, provenance)
    return None
