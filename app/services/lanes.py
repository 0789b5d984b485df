"""A take's curves and notes as the lanes draw them: cut to what a screen can show."""

from collections.abc import Mapping
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from analysis.results import (
    FloatArray,
    JudgedNote,
    LeftOut,
    NotMeasurable,
    PitchTrack,
    TakeAnalysis,
)
from app.services.machine_findings import is_aside
from app.services.note_remarks import remark_of
from app.services.reading_views import AnyReading, NoReading, Reading
from app.services.score_findings import NOTHING_WRITTEN, WrittenRemark, written_remarks
from app.services.views import Curve, NoteRow
from app.services.wording import number_text

MOST_POINTS = 4000
CERTAIN_WITHIN_CENTS = 10.0
"""A note whose pitch is less sure than this is drawn hollow (a choice of design)."""
_FARTHEST_CENTS = 150.0
_NO_BEAT = "No beat found here."


@dataclass(frozen=True, slots=True)
class Lanes:
    """Everything a take's lanes draw beside its sound."""

    notes: tuple[NoteRow, ...]
    notes_sentence: str
    pitch_cents: Curve
    tempo_bpm: Curve
    beat_s: FloatArray
    loudness_lufs: Curve


def lanes_of(analysis: TakeAnalysis | None, why_not: str) -> Lanes:
    """Give the lanes of a take; empty ones that say why where nothing was measured."""
    if analysis is None:
        return Lanes(
            notes=(),
            notes_sentence=why_not,
            pitch_cents=Curve((), "cents", why_not),
            tempo_bpm=Curve((), "BPM", why_not),
            beat_s=np.empty(0),
            loudness_lufs=Curve((), "LUFS", why_not),
        )
    tempo_bpm, beat_s = tempo_curve(analysis)
    return Lanes(
        notes=note_rows(analysis.notes, analysis.left_out, written_remarks(analysis)),
        notes_sentence=notes_sentence(analysis),
        pitch_cents=pitch_curve(analysis),
        tempo_bpm=tempo_bpm,
        beat_s=beat_s,
        loudness_lufs=loudness_curve(analysis),
    )


def notes_sentence(analysis: TakeAnalysis) -> str:
    """Say why there are no notes, or none that could be judged; empty where there are."""
    if isinstance(analysis.pitch, NotMeasurable):
        return analysis.pitch.sentence
    if not analysis.notes:
        return "No notes were found in this take."
    if isinstance(analysis.intonation, NotMeasurable):
        return analysis.intonation.sentence
    return ""


def note_rows(
    notes: tuple[JudgedNote, ...],
    left_out: tuple[LeftOut, ...] = (),
    written: Mapping[int, WrittenRemark] | None = None,
) -> tuple[NoteRow, ...]:
    """Give the notes as the deviation lane and the notes pane show them.

    ``written`` says of some of them, by their index, what the score makes of them.
    """
    remarks = written or {}
    return tuple(
        _note_row(
            index, note, remarks.get(index, NOTHING_WRITTEN), is_left_out=is_aside(note, left_out)
        )
        for index, note in enumerate(notes)
    )


def deviation_reading(judged: JudgedNote) -> AnyReading:
    """Give a note's deviation, or the sentence why there is none."""
    if isinstance(judged.deviation, NotMeasurable):
        return NoReading(judged.deviation.sentence)
    found = judged.deviation.value
    return Reading(found.deviation_cents, "cents", found.uncertainty_cents, 1, signed=True)


def _note_row(
    index: int, judged: JudgedNote, written: WrittenRemark, *, is_left_out: bool
) -> NoteRow:
    deviation = deviation_reading(judged)
    uncertainty = deviation.uncertainty if isinstance(deviation, Reading) else None
    return NoteRow(
        index=index,
        start_s=judged.note.start_s,
        end_s=judged.note.end_s,
        name=judged.spelled or judged.name or "",
        midi=judged.midi,
        deviation=deviation,
        certain=uncertainty is not None and uncertainty <= CERTAIN_WITHIN_CENTS,
        kind=str(judged.note.kind).replace("_", " "),
        is_open_string=judged.is_open_string,
        vibrato=_vibrato_text(judged),
        verdict=str(judged.verdict or ""),
        remark=" ".join(text for text in (written.text, remark_of(judged)) if text),
        slip=written.slip,
        left_out=is_left_out,
    )


def _vibrato_text(judged: JudgedNote) -> str:
    result = judged.note.vibrato
    if isinstance(result, NotMeasurable) or result.value is None:
        return ""
    extent = number_text(result.value.extent_cents, 0)
    return f"±{extent} cents at {number_text(result.value.rate_hz, 1)} Hz"


def pitch_curve(analysis: TakeAnalysis) -> Curve:
    """Give the pitch inside each note, in cents from the note's target.

    All of it: it is drawn only where a few seconds are in view.
    """
    if isinstance(analysis.pitch, NotMeasurable):
        return Curve((), "cents", analysis.pitch.sentence)
    segments = _note_segments(analysis.pitch.value, analysis.notes)
    return Curve(segments, "cents", "No single pitch sounds here.")


def _note_segments(
    track: PitchTrack, notes: tuple[JudgedNote, ...]
) -> tuple[tuple[FloatArray, FloatArray], ...]:
    """Cut the track into its stretches near the target of a note, all notes at once."""
    aimed = [(note.note.start_s, note.note.end_s, note.target_hz or np.nan) for note in notes]
    start_s, end_s, target_hz = np.array(aimed, dtype=np.float64).reshape(-1, 3).T
    first = np.searchsorted(track.time_s, start_s)
    lengths = np.maximum(np.searchsorted(track.time_s, end_s) - first, 0)
    note_of = np.repeat(np.arange(lengths.size), lengths)
    frame = np.arange(note_of.size) + (first - np.cumsum(lengths) + lengths)[note_of]
    with np.errstate(divide="ignore", invalid="ignore"):
        cents = 1200.0 * np.log2(track.f0_hz[frame] / target_hz[note_of])
        near = np.abs(cents) <= _FARTHEST_CENTS
    frame, cents, note_of = frame[near], cents[near], note_of[near]
    time_s = track.time_s[frame]
    cuts = np.flatnonzero((np.diff(frame) != 1) | (np.diff(note_of) != 0)) + 1
    edges = [0, *cuts.tolist(), frame.size]
    return tuple(
        (time_s[begin:end], cents[begin:end]) for begin, end in pairwise(edges) if end - begin > 1
    )


def split_at_gaps(time_s: FloatArray, values: FloatArray) -> list[tuple[FloatArray, FloatArray]]:
    """Cut a curve into its finite stretches.

    Parameters
    ----------
    time_s, values : (n,) arrays
        NaN or infinite values are gaps.

    Returns
    -------
    list of (time_s, values)
        At least two points each.
    """
    good = np.flatnonzero(np.isfinite(values))
    if good.size == 0:
        return []
    runs = np.split(good, np.flatnonzero(np.diff(good) > 1) + 1)
    return [(time_s[run], values[run]) for run in runs if run.size > 1]


def tempo_curve(analysis: TakeAnalysis) -> tuple[Curve, FloatArray]:
    """Give the local tempo and the times of the beats."""
    if isinstance(analysis.tempo, NotMeasurable):
        return Curve((), "BPM", analysis.tempo.sentence), np.empty(0)
    tempo = analysis.tempo.value
    time_s, bpm = thinned(tempo.local_time_s, tempo.local_bpm)
    return Curve(tuple(split_at_gaps(time_s, bpm)), "BPM", _NO_BEAT), tempo.beat_s


def loudness_curve(analysis: TakeAnalysis) -> Curve:
    """Give momentary loudness against time.

    What does not reach the absolute gate of ITU-R BS.1770-4 is no sound: an input that is
    muted, or a phone that silences pauses, would take the lane down to -140 LUFS.
    """
    from analysis.loudness import ABSOLUTE_GATE_LUFS  # noqa: PLC0415 - only when needed

    if isinstance(analysis.dynamics, NotMeasurable):
        return Curve((), "LUFS", analysis.dynamics.sentence)
    dynamics = analysis.dynamics.value
    time_s, lufs = thinned(dynamics.momentary_time_s, dynamics.momentary_lufs)
    lufs = np.where(lufs >= ABSOLUTE_GATE_LUFS, lufs, np.nan)
    return Curve(tuple(split_at_gaps(time_s, lufs)), "LUFS", "Nothing sounds here.")


def thinned(time_s: FloatArray, values: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Average neighbouring points until at most :data:`MOST_POINTS` are left."""
    group = max(1, int(np.ceil(values.size / MOST_POINTS)))
    if group == 1:
        return time_s, values
    whole = values.size // group * group
    mean = values[:whole].reshape(-1, group).mean(axis=1)
    return time_s[:whole].reshape(-1, group).mean(axis=1), mean
