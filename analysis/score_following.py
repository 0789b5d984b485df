"""Where in a take each written beat sounds."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from analysis.alignment import ALGORITHM as TAKES
from analysis.alignment import align_features, too_little_sound
from analysis.alignment_features import HOP_S, extract_features
from analysis.blocks import SampleArray
from analysis.note_lines import AnyNote, NoteLine, note_line
from analysis.results import (
    Alignment,
    FloatArray,
    Measured,
    NotMeasurable,
    Provenance,
    Reason,
)
from analysis.stopping import StopQuestion
from analysis.time_map import left_out_spans, map_time, map_time_back
from analysis.written_features import WrittenNotes, written_features

ALGORITHM = f"score-following-1+{TAKES}"


@dataclass(frozen=True, slots=True)
class ScoreAlignment:
    """Equal places of a score and a take.

    Attributes
    ----------
    beats, time_s : (n,) arrays
        Both non-decreasing; beats from the beginning of the score.
    confidence : float
        0 to 1: the share of the shorter one that has a counterpart.
    skipped_beats : list of (start, end)
        Written, and not played.
    added_s : list of (start_s, end_s)
        Played, and not written there: repeated, broken off, or added.
    """

    beats: FloatArray
    time_s: FloatArray
    confidence: float
    skipped_beats: list[tuple[float, float]]
    added_s: list[tuple[float, float]]

    def time_at(self, beats: FloatArray) -> FloatArray:
        """Give the moments of the take, in seconds, at which beats of the score sound."""
        return map_time(self._map, beats)

    def beat_at(self, time_s: FloatArray) -> FloatArray:
        """Give the beats of the score that sound at moments of the take."""
        return map_time_back(self._map, time_s)

    @property
    def _map(self) -> Alignment:
        return Alignment(self.beats, self.time_s, self.confidence)


def align_to_score(
    samples: SampleArray,
    sample_rate_hz: int,
    written: WrittenNotes,
    *,
    notes: Sequence[AnyNote] | None = None,
    should_stop: StopQuestion | None = None,
) -> Measured[ScoreAlignment] | NotMeasurable:
    """Find each written beat in a take.

    Parameters
    ----------
    samples : (n,) or (n, channels) array
    sample_rate_hz : int
    written : WrittenNotes
        Repeats unfolded, at the pitch that sounds.
    notes : sequence of Note or JudgedNote, optional
        The take's notes; the map is exact at those that are written too.
    should_stop : callable, optional

    Returns
    -------
    Measured[ScoreAlignment] or NotMeasurable
        ``SILENT``, ``TOO_SHORT``, ``NO_MATCH`` where the take is not this music,
        ``NO_NOTES`` for an empty score.

    Raises
    ------
    Stopped
        When ``should_stop`` answered true.
    """
    provenance = Provenance(ALGORITHM, {"hop_s": HOP_S, "notes": notes is not None})
    if not written.midi.size:
        return NotMeasurable(Reason.NO_NOTES, "The score has no notes.", provenance)
    heard = extract_features(samples, sample_rate_hz, should_stop=should_stop)
    refusal = too_little_sound(heard, provenance)
    if refusal is not None:
        return refusal
    bpm = usual_bpm(written, heard.frames.shape[0] * HOP_S)
    laid_out = written_features(written, bpm)
    lines = None
    if notes is not None:
        lines = (_written_line(written, bpm), note_line(notes, heard.rise_s))
    found = align_features(laid_out, heard, lines, should_stop=should_stop)
    if found is None:
        sentence = "The take does not seem to be what is written."
        return NotMeasurable(Reason.NO_MATCH, sentence, provenance)
    skipped, added = left_out_spans(found)
    beats = found.a_s * bpm / 60.0
    result = ScoreAlignment(
        beats=beats,
        time_s=found.b_s,
        confidence=found.confidence,
        skipped_beats=[(begin * bpm / 60.0, end * bpm / 60.0) for begin, end in skipped],
        added_s=added,
    )
    return Measured(result, provenance)


def usual_bpm(written: WrittenNotes, sounding_s: float) -> float:
    """Choose the tempo at which a score is laid out so that it lasts as long as the take."""
    length = written.end_beats - float(written.onset_beats.min())
    return float(np.clip(60.0 * max(length, 1e-3) / sounding_s, 10.0, 1000.0))


def _written_line(written: WrittenNotes, bpm: float) -> NoteLine:
    """Read written notes as a line; of a chord the highest note."""
    onset, place = np.unique(written.onset_beats, return_inverse=True)
    highest = np.full(onset.size, -np.inf)
    np.maximum.at(highest, place, written.midi)
    start = onset * 60.0 / bpm
    return NoteLine(start, highest, start)
