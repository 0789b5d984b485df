"""From the pitch track and the onsets to notes: spans, steady parts, centres, kinds."""

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from analysis.blocks import MonoSamples
from analysis.chords import SEVERAL, Chord
from analysis.double_stops import find_together, join_beating, join_double_stops, rings_out
from analysis.instruments import Instrument
from analysis.note_centre import Reading, pitch_of, read_steady
from analysis.note_kinds import is_quick_trill, kind_of, may_be_trill
from analysis.note_spans import Span, hz_after, middle_hz, note_spans
from analysis.overlaps import begins_in_lower_octave, is_common_period, is_octave_below
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
from analysis.stopping import Progress, StopQuestion, part_of, stop_if_asked, tell, telling
from analysis.units import hz_to_midi, midi_to_hz
from analysis.vibrato import measure_vibrato
from analysis.windows import WindowPlan

FloatArray = NDArray[np.float64]
BoolArray = NDArray[np.bool_]

ALGORITHM: Final = "notes-6"
_PROVENANCE: Final = Provenance(ALGORITHM)

_SHORTEST_STEADY_S: Final = 0.02
_GUARD_OF_WINDOW: Final = 0.35
_LEAST_GUARD_OF_WINDOW: Final = 0.2
_STEADY_DB: Final = 12.0
# A string takes a moment to settle on its pitch, however the bow takes hold of it.
_SETTLING_SHARE: Final = 0.2
_LONGEST_SETTLING_S: Final = 0.08
_PLUCK_SKIPPED_S: Final = 0.04
_PLUCK_INTERVAL_WIDER: Final = 1.5
_CHORD_UNCERTAINTY_CENTS: Final = 5.0
_SHORTEST_UNCLEAR_S: Final = 0.15
_AFTER_SPANS: Final = 0.1
_FAINT_DB: Final = 25.0
_WIDEST_USEFUL_CENTS: Final = 50.0
_LONGEST_COVERED_S: Final = 0.25
_COVERED_WITHIN_S: Final = 0.3
_STILL_SOUNDS: Final = "The note before or after sounds together with it."

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
    source: MonoSamples | None = None,
    fine: PitchTrack | None = None,
    windows: WindowPlan | None = None,
    progress: Progress | None = None,
    should_stop: StopQuestion | None = None,
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
    source : MonoSamples, optional
        The take itself; without it double stops and plucked notes are not recognised.
    fine : PitchTrack, optional
        The same frames, read from all partials: then `track` decides where notes are and
        what they are, and their pitch is read here.
    windows : WindowPlan, optional
        The windows the track was measured with; by default those of the instrument.
    progress, should_stop : callable, optional
        Told the share done, 0 to 1, and asked whether to stop, for every note.

    Returns
    -------
    tuple of Note
        In order of their starts. Trills and slides, and notes without a steady part long
        enough, have no pitch but the reason why. The pitch of a double stop is that of
        its lower string.
    """
    windows = windows or WindowPlan(instrument.floor_hz, instrument.window_periods)
    finder = _Finder(track, fine or track, instrument, source, windows)
    to_spans = telling(should_stop, part_of(progress, 0.0, _AFTER_SPANS), 60)
    spans = note_spans(track, onset_s, onset_strength, to_spans)
    if source is not None:
        spans = join_beating(track, spans, source)
    found = []
    for index in range(len(spans)):
        stop_if_asked(should_stop)
        found.append(finder.note(spans, index))
        tell(part_of(progress, _AFTER_SPANS, 1.0), (index + 1) / len(spans))
    return join_double_stops(
        [(span, note) for span, note in zip(spans, found, strict=True) if note is not None]
    )


@dataclass(frozen=True, slots=True)
class _Finder:
    """Reads the notes of one take."""

    track: PitchTrack
    fine: PitchTrack
    instrument: Instrument
    source: MonoSamples | None
    windows: WindowPlan

    def note(self, spans: list[Span], index: int) -> Note | None:
        """Return a span as a note; ``None`` where it holds no pitch at all."""
        track, span = self.track, spans[index]
        kind = kind_of(track, spans, index, self.source)
        level = track.level_dbfs[span.first : span.last]
        top = float(np.max(level))
        refused = self._refused(spans, index, kind, top)
        if refused is not None:
            return refused
        voiced = bool(np.isfinite(track.f0_hz[span.first : span.last]).any())
        reading = _reading(self.fine, span, kind, self.windows) if voiced else None
        if kind in (NoteKind.NOTE, NoteKind.PIZZICATO):
            # single periods follow a quick trill, all partials together do not
            swings = kind is NoteKind.NOTE and may_be_trill(track.f0_hz[span.first : span.last])
            if swings and is_quick_trill(_reading(track, span, kind, self.windows)):
                return _of_no_one_pitch(span, NoteKind.TRILL, top)
            chord = None
            if self.source is not None:
                chord = find_together(track, span, self.source, self.instrument, reading)
            if chord is not None:
                strings = bool(self.instrument.open_strings)
                over = rings_out(track, span, chord, self.instrument)
                return None if over else _double_stop(span, chord, top, strings=strings)
        if not voiced:
            return self._unclear(span, top)
        if reading is None:
            return _unmeasured(
                span,
                kind,
                top,
                _too_short("The note has no steady part long enough to measure."),
                _too_short("The note is too short to tell vibrato."),
            )
        return self._measured(span, kind, reading)

    def _refused(self, spans: list[Span], index: int, kind: NoteKind, top: float) -> Note | None:
        """Return what has no pitch of its own, whatever the track says."""
        if kind in _NO_ONE_PITCH:
            return _of_no_one_pitch(spans[index], kind, top)
        if self._lies_in_neighbour(spans, index):
            two = NotMeasurable(Reason.TWO_NOTES_SOUND, _STILL_SOUNDS, _PROVENANCE)
            return _unmeasured(spans[index], kind, top, two, two)
        return None

    def _lies_in_neighbour(self, spans: list[Span], index: int) -> bool:
        """Whether a short note's pitch is only the common period with a neighbour's sound."""
        span = spans[index]
        if self.source is None or span.duration_s > _LONGEST_COVERED_S:
            return False
        f0_hz, middle_s = middle_hz(self.track, span), 0.5 * (span.start_s + span.end_s)
        near = [
            middle_hz(self.track, other)
            for other in spans[max(index - 1, 0) : index + 2]
            if max(other.start_s - span.end_s, span.start_s - other.end_s) < _COVERED_WITHIN_S
        ]
        return (
            begins_in_lower_octave(f0_hz, near[0], hz_after(self.track, spans, index))
            or is_octave_below(self.source, span.start_s, span.end_s, f0_hz)
            or any(is_common_period(self.source, middle_s, f0_hz, hz) for hz in near)
        )

    def _unclear(self, span: Span, top: float) -> Note | None:
        """Return a sounding stretch that is not one pitch, unless it is faint or a click."""
        loud = float(np.percentile(self.track.level_dbfs, 95.0))
        if span.duration_s < _SHORTEST_UNCLEAR_S or top < loud - _FAINT_DB:
            return None
        why = NotMeasurable(Reason.NO_PITCH, "No one pitch can be told here.", _PROVENANCE)
        return _unmeasured(span, NoteKind.NOTE, top, why, why)

    def _measured(self, span: Span, kind: NoteKind, reading: Reading) -> Note:
        frames = np.rint(reading.time_s / self.track.hop_s).astype(np.int64)
        level = self.track.level_dbfs[frames]
        pitch = _pitch(reading, span, kind, self.track.hop_s)
        if pitch.uncertainty_cents > _WIDEST_USEFUL_CENTS:
            unsettled = NotMeasurable(
                Reason.NOT_STEADY, "The pitch of the note does not settle.", _PROVENANCE
            )
            return _unmeasured(span, kind, float(np.max(level)), unsettled, unsettled)
        return Note(
            start_s=span.start_s,
            end_s=span.end_s,
            steady_start_s=float(reading.time_s[0]),
            steady_end_s=float(reading.time_s[-1]),
            kind=kind,
            level_dbfs=float(np.median(level)),
            pitch=Measured(pitch, _PROVENANCE),
            vibrato=_vibrato(reading, kind, level),
        )


def _of_no_one_pitch(span: Span, kind: NoteKind, level_dbfs: float) -> Note:
    refused = NotMeasurable(Reason.NOT_A_NOTE, _NO_ONE_PITCH[kind], _PROVENANCE)
    return _unmeasured(span, kind, level_dbfs, refused, refused)


def _double_stop(span: Span, chord: Chord, level_dbfs: float, *, strings: bool) -> Note:
    two = NotMeasurable(Reason.TWO_NOTES_SOUND, "Two notes sound together.", _PROVENANCE)
    strings = strings and chord is not SEVERAL
    lower = NotePitch(chord.lower_hz, _CHORD_UNCERTAINTY_CENTS, 0.0)
    return Note(
        start_s=span.start_s,
        end_s=span.end_s,
        steady_start_s=span.start_s,
        steady_end_s=span.end_s,
        kind=NoteKind.DOUBLE_STOP,
        level_dbfs=level_dbfs,
        pitch=Measured(lower, _PROVENANCE) if strings else two,
        vibrato=two,
        second_pitch_hz=chord.upper_hz if strings else None,
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
    pitched = midi[np.isfinite(midi)]
    if not pitched.size:
        return None
    window_s = windows.length_s(midi_to_hz(float(np.median(pitched))))
    settling_s = min(_SETTLING_SHARE * span.duration_s, _LONGEST_SETTLING_S)
    skipped_s = _PLUCK_SKIPPED_S if kind is NoteKind.PIZZICATO else settling_s
    loud = level >= float(np.max(level)) - (3.0 if kind is NoteKind.PIZZICATO else 1.0) * _STEADY_DB
    for guard in (_GUARD_OF_WINDOW, _LEAST_GUARD_OF_WINDOW):
        inside = (time_s >= span.start_s + max(guard * window_s, skipped_s)) & (
            time_s <= span.end_s - guard * window_s
        )
        reading = read_steady(time_s, midi, confidence, inside & _between_ends(loud))
        if reading is not None and len(reading.time_s) * track.hop_s >= _SHORTEST_STEADY_S:
            return reading
    return None


def _between_ends(mask: BoolArray) -> BoolArray:
    """Fill the holes of a mask: a note that swells is soft for a moment, and still one."""
    return np.asarray(np.logical_or.accumulate(mask) & np.logical_or.accumulate(mask[::-1])[::-1])


def _pitch(reading: Reading, span: Span, kind: NoteKind, hop_s: float) -> NotePitch:
    pitch = pitch_of(reading, span.duration_s, hop_s)
    if kind is not NoteKind.PIZZICATO:
        return pitch
    # a plucked string starts sharp and settles; its interval says so
    wider = _PLUCK_INTERVAL_WIDER * pitch.uncertainty_cents
    return NotePitch(pitch.pitch_hz, wider, pitch.drift_cents_per_s)


def _vibrato(
    reading: Reading, kind: NoteKind, level_dbfs: FloatArray
) -> Measured[Vibrato | None] | NotMeasurable:
    if kind in (NoteKind.PIZZICATO, NoteKind.TREMOLO):
        return NotMeasurable(
            Reason.NOT_STEADY, "Plucked and quickly repeated notes show no vibrato.", _PROVENANCE
        )
    return measure_vibrato(reading.time_s, level_dbfs, reading.wobble)
