"""From the pitch track and the onsets to notes: spans, steady parts, centres, kinds."""

from typing import Final

import numpy as np
from numpy.typing import NDArray

from analysis.instruments import Instrument
from analysis.note_centre import Reading, pitch_of, read_steady
from analysis.note_spans import Span, note_spans
from analysis.results import (
    Measured,
    Note,
    NoteKind,
    NotePitch,
    NotMeasurable,
    PitchTrack,
    Provenance,
    Reason,
    Vibrato,
)
from analysis.units import hz_to_midi, midi_to_hz
from analysis.vibrato import measure_vibrato
from analysis.windows import WindowPlan

FloatArray = NDArray[np.float64]
BoolArray = NDArray[np.bool_]

ALGORITHM: Final = "notes-1"
_PROVENANCE: Final = Provenance(ALGORITHM)

_SHORTEST_STEADY_S: Final = 0.02
_GUARD_OF_WINDOW: Final = 0.35
_LEAST_GUARD_OF_WINDOW: Final = 0.2
_STEADY_DB: Final = 12.0
_PLUCK_SKIPPED_S: Final = 0.04
_PLUCK_DECAY_DB_PER_S: Final = -25.0
_PLUCK_PEAK_WITHIN_S: Final = 0.06
_PLUCK_INTERVAL_WIDER: Final = 1.5
_LONGEST_GRACE_S: Final = 0.11
_GRACE_SHORTER_BY: Final = 3.0
_GRACE_WITHIN_CENTS: Final = 450.0

_ROLES: Final = {
    "trill": NoteKind.TRILL,
    "tremolo": NoteKind.TREMOLO,
    "slide": NoteKind.SLIDE,
}
_NO_ONE_PITCH: Final = {
    NoteKind.TRILL: "A trill goes between two pitches.",
    NoteKind.SLIDE: "A slide has no one pitch.",
}


def find_notes(
    track: PitchTrack,
    onset_s: FloatArray,
    onset_strength: FloatArray,
    instrument: Instrument,
    *,
    windows: WindowPlan | None = None,
) -> tuple[Note, ...]:
    """Find the notes of a single line.

    Parameters
    ----------
    track : PitchTrack
        The pitch of the take.
    onset_s, onset_strength : (n,) arrays
        From :func:`analysis.onsets.detect_onsets`: beginnings of notes, rising.
    instrument : Instrument
        What is played.
    windows : WindowPlan, optional
        The windows the track was measured with; by default those of the instrument.

    Returns
    -------
    tuple of Note
        In order of their starts. Trills and slides, and notes without a steady part long
        enough, have no pitch but the reason why.
    """
    windows = windows or WindowPlan(instrument.floor_hz, instrument.window_periods)
    spans = note_spans(track, onset_s, onset_strength)
    kinds = [_kind(track, spans, k) for k in range(len(spans))]
    return tuple(_note(track, span, kind, windows) for span, kind in zip(spans, kinds, strict=True))


def _kind(track: PitchTrack, spans: list[Span], index: int) -> NoteKind:
    span = spans[index]
    if span.role != "note":
        return _ROLES[span.role]
    if _dies_away(track, span):
        return NoteKind.PIZZICATO
    following = spans[index + 1] if index + 1 < len(spans) else None
    if following is not None and _is_grace(track, span, following):
        return NoteKind.GRACE
    return NoteKind.NOTE


def _dies_away(track: PitchTrack, span: Span) -> bool:
    """Whether the note is loudest at once and then falls at a steady, steep rate."""
    level = track.level_dbfs[span.first : span.last]
    if not span.attacked or len(level) * track.hop_s < 0.1:
        return False
    top = int(np.argmax(level))
    if top * track.hop_s > _PLUCK_PEAK_WITHIN_S or len(level) - top < 12:
        return False
    tail = level[top:]
    t = np.arange(len(tail)) * track.hop_s
    # A bowed note's release is short: every part of a plucked one falls.
    parts = np.array_split(np.arange(len(tail)), 3)
    slopes = [float(np.polyfit(t[part], tail[part], 1)[0]) for part in parts]
    return max(slopes) <= 0.5 * _PLUCK_DECAY_DB_PER_S and (
        float(np.polyfit(t, tail, 1)[0]) <= _PLUCK_DECAY_DB_PER_S
    )


def _is_grace(track: PitchTrack, span: Span, following: Span) -> bool:
    """Whether the note is a short slurred step to a much longer one."""
    if span.duration_s > _LONGEST_GRACE_S or following.attacked:
        return False
    if following.start_s - span.end_s > 0.03:
        return False
    if following.duration_s < _GRACE_SHORTER_BY * span.duration_s:
        return False
    here, there = (_median_midi(track, s) for s in (span, following))
    return abs(here - there) * 100.0 <= _GRACE_WITHIN_CENTS


def _median_midi(track: PitchTrack, span: Span) -> float:
    pitch = track.f0_hz[span.first : span.last]
    return hz_to_midi(float(np.median(pitch[np.isfinite(pitch)])))


def _note(track: PitchTrack, span: Span, kind: NoteKind, windows: WindowPlan) -> Note:
    level = track.level_dbfs[span.first : span.last]
    if kind in _NO_ONE_PITCH:
        refused = NotMeasurable(Reason.NOT_A_NOTE, _NO_ONE_PITCH[kind], _PROVENANCE)
        return _unmeasured(span, kind, float(np.max(level)), refused, refused)
    reading = _reading(track, span, kind, windows)
    if reading is None:
        return _unmeasured(
            span,
            kind,
            float(np.max(level)),
            _too_short("The note has no steady part long enough to measure."),
            _too_short("The note is too short to tell vibrato."),
        )
    frames = np.rint(reading.time_s / track.hop_s).astype(np.int64)
    return Note(
        start_s=span.start_s,
        end_s=span.end_s,
        steady_start_s=float(reading.time_s[0]),
        steady_end_s=float(reading.time_s[-1]),
        kind=kind,
        level_dbfs=float(np.median(track.level_dbfs[frames])),
        pitch=Measured(_pitch(reading, span, kind, track.hop_s), _PROVENANCE),
        vibrato=_vibrato(reading, kind, track.level_dbfs[frames], windows),
    )


def _too_short(sentence: str) -> NotMeasurable:
    return NotMeasurable(Reason.TOO_SHORT, sentence, _PROVENANCE)


def _unmeasured(
    span: Span,
    kind: NoteKind,
    level_dbfs: float,
    pitch: NotMeasurable,
    vibrato: NotMeasurable,
) -> Note:
    return Note(
        span.start_s, span.end_s, span.start_s, span.end_s, kind, level_dbfs, pitch, vibrato
    )


def _reading(track: PitchTrack, span: Span, kind: NoteKind, windows: WindowPlan) -> Reading | None:
    """Read the steady part, keeping as far from the note's ends as its length allows."""
    frames = slice(span.first, span.last)
    time_s, level = track.time_s[frames], track.level_dbfs[frames]
    midi, confidence = hz_to_midi(track.f0_hz[frames]), track.confidence[frames]
    if not np.isfinite(midi).any():
        return None
    window_s = windows.length_s(midi_to_hz(float(np.nanmedian(midi))))
    skipped_s = _PLUCK_SKIPPED_S if kind is NoteKind.PIZZICATO else 0.0
    loud = level >= float(np.max(level)) - (3.0 if skipped_s else 1.0) * _STEADY_DB
    for guard in (_GUARD_OF_WINDOW, _LEAST_GUARD_OF_WINDOW):
        inside = (time_s >= span.start_s + max(guard * window_s, skipped_s)) & (
            time_s <= span.end_s - guard * window_s
        )
        reading = read_steady(time_s, midi, confidence, inside & loud)
        if reading is not None and len(reading.time_s) * track.hop_s >= _SHORTEST_STEADY_S:
            return reading
    return None


def _pitch(reading: Reading, span: Span, kind: NoteKind, hop_s: float) -> NotePitch:
    pitch = pitch_of(reading, span.duration_s, hop_s)
    if kind is not NoteKind.PIZZICATO:
        return pitch
    # a plucked string starts sharp and settles; its interval says so
    wider = _PLUCK_INTERVAL_WIDER * pitch.uncertainty_cents
    return NotePitch(pitch.pitch_hz, wider, pitch.drift_cents_per_s)


def _vibrato(
    reading: Reading, kind: NoteKind, level_dbfs: FloatArray, windows: WindowPlan
) -> Measured[Vibrato | None] | NotMeasurable:
    if kind in (NoteKind.PIZZICATO, NoteKind.TREMOLO):
        return NotMeasurable(
            Reason.NOT_STEADY, "Plucked and quickly repeated notes show no vibrato.", _PROVENANCE
        )
    f0_hz = midi_to_hz(reading.middle_midi)
    return measure_vibrato(
        reading.time_s,
        level_dbfs,
        reading.wobble,
        window_s=windows.length_s(f0_hz),
        period_s=1.0 / f0_hz,
    )
