"""Double stops among the notes: where two strings sound, and their pieces made whole."""

from dataclasses import replace
from typing import Final

import numpy as np

from analysis.blends import find_blend
from analysis.blocks import MonoSamples
from analysis.chords import (
    SEVERAL,
    SHORTEST_CHORD_S,
    Chord,
    find_chord,
    has_sub_octave,
    is_hollow,
)
from analysis.instruments import Instrument
from analysis.note_centre import Reading
from analysis.note_spans import Span
from analysis.results import Measured, Note, NoteKind, NotMeasurable, PitchTrack
from analysis.units import cents_between, hz_to_midi, midi_to_hz, parse_note_name

_SHORTEST_SURE_CHORD_S: Final = 0.3
_SHORTEST_SURE_UNISON_S: Final = 0.6
_UNSURE_CONFIDENCE: Final = 0.8
_PERIODIC_CONFIDENCE: Final = 0.9
_SHORTEST_HOLLOW_S: Final = 0.07
_ON_A_RUNG_CENTS: Final = 60.0
_RINGS_BELOW_DB: Final = 7.5
_RINGS_FAR_BELOW_DB: Final = 14.0
_OPEN_STRING_CENTS: Final = 45.0
_PLAYED_BEFORE_S: Final = 0.3
_RINGS_OUT_DB_PER_S: Final = 3.0
_RINGS_OUT_BELOW_DB: Final = 5.0
_SAME_BOW_S: Final = 0.06
_CLEAR_BOW_CHANGE: Final = 0.5
_SAME_CHORD_CENTS: Final = 30.0
_LONGEST_PIECE_S: Final = 0.3
_SPREADING_CENTS: Final = 12.0
_SURELY_EXPLAINED: Final = 0.8


def find_together(
    track: PitchTrack,
    span: Span,
    source: MonoSamples,
    instrument: Instrument,
    reading: Reading | None,
) -> Chord | None:
    """Look for more than one string in a note.

    Parameters
    ----------
    track : PitchTrack
        The pitch of the take.
    span : Span
        The note.
    source : MonoSamples
        The take.
    instrument : Instrument
        What is played.
    reading : Reading or None
        The steady part of the note, if there is one.

    Returns
    -------
    Chord or None
        :data:`SEVERAL` where a common period of several notes is all there is to tell;
        ``None`` for one note, also while a string that was let go rings under it.
    """
    chord = _find_two(track, span, source, instrument)
    if chord is not None:
        return None if _only_rings(chord, instrument) else chord
    f0_hz = track.f0_hz[span.first : span.last]
    f0_hz = f0_hz[np.isfinite(f0_hz)]
    if not f0_hz.size:
        return None
    middle_hz = float(np.median(f0_hz)) if reading is None else midi_to_hz(reading.middle_midi)
    if span.duration_s >= _SHORTEST_HOLLOW_S and is_hollow(
        source, span.start_s, span.end_s, middle_hz
    ):
        return SEVERAL
    inset_s = min(0.08, 0.15 * span.duration_s)
    begin_s, end_s = span.start_s + inset_s, span.end_s - inset_s
    if not _swings_wide(reading):
        pair = find_blend(source, begin_s, end_s, middle_hz)
        if pair is not None:
            return Chord(*pair)
    if _is_of_open_string(middle_hz, instrument) or span.duration_s < _SHORTEST_SURE_UNISON_S:
        return None  # the string itself may ring, or the room
    return SEVERAL if has_sub_octave(source, begin_s, end_s, middle_hz) else None


def _swings_wide(reading: Reading | None) -> bool:
    """Whether a vibrato spreads every partial so far that no pairs of them can be seen."""
    wobble = None if reading is None else reading.wobble
    return (
        wobble is not None
        and wobble.extent >= _SPREADING_CENTS
        and wobble.explained >= _SURELY_EXPLAINED
    )


def _find_two(
    track: PitchTrack, span: Span, source: MonoSamples, instrument: Instrument
) -> Chord | None:
    if span.duration_s < SHORTEST_CHORD_S:
        return None
    confidence = float(np.median(track.confidence[span.first : span.last]))
    if span.duration_s < _SHORTEST_SURE_CHORD_S and confidence > _UNSURE_CONFIDENCE:
        # in a short note the note before may still sound on from the walls
        return None
    inset = min(0.03, 0.2 * span.duration_s)
    chord = find_chord(
        source,
        span.start_s + inset,
        span.end_s - inset,
        instrument.floor_hz,
        instrument.ceiling_hz,
    )
    if chord is SEVERAL and confidence > _PERIODIC_CONFIDENCE:
        return None  # whether the one period is a string's own is asked next
    if chord is not None and confidence > _PERIODIC_CONFIDENCE:
        f0_hz = track.f0_hz[span.first : span.last]
        f0_hz = f0_hz[np.isfinite(f0_hz)]
        if f0_hz.size and not _on_ladder_of(chord, float(np.median(f0_hz))):
            return None
    return chord


def _on_ladder_of(chord: Chord, f0_hz: float) -> bool:
    """Whether both strings are multiples of the one period the track has found.

    Two strings repeat perfectly only over a common period; where the track is sure of a
    pitch that is none, the second string is the room's memory of the note before.
    """
    rungs = np.array([chord.lower_hz, chord.upper_hz]) / f0_hz
    near = np.abs(1200.0 * np.log2(rungs / np.maximum(np.rint(rungs), 1.0))) < _ON_A_RUNG_CENTS
    return bool(np.all(near) and np.all(rungs > 1.5))


def rings_out(track: PitchTrack, span: Span, chord: Chord, instrument: Instrument) -> bool:
    """Whether what sounds together are open strings that nobody bows any more.

    They come out where the playing stops: without an attack, softer than it, and dying away.
    """
    if span.attacked or chord is SEVERAL:
        return False
    if not all(_is_of_open_string(hz, instrument) for hz in (chord.lower_hz, chord.upper_hz)):
        return False
    level = track.level_dbfs[span.first : span.last]
    before = track.level_dbfs[
        max(span.first - round(_PLAYED_BEFORE_S / track.hop_s), 0) : span.first
    ]
    fifth = max(len(level) // 5, 1)
    falls_db = float(np.mean(level[fifth : 2 * fifth]) - np.mean(level[-2 * fifth : -fifth]))
    softer_db = float(np.max(before, initial=-np.inf) - np.max(level))
    return (
        falls_db > _RINGS_OUT_DB_PER_S * 0.6 * span.duration_s and softer_db > _RINGS_OUT_BELOW_DB
    )


def _only_rings(chord: Chord, instrument: Instrument) -> bool:
    """Whether the softer string is not bowed but rings: an open one, or any far below."""
    if chord.apart_db > _RINGS_FAR_BELOW_DB:
        return True
    if chord.apart_db < _RINGS_BELOW_DB:
        return False
    return _is_of_open_string(chord.softer_hz, instrument)


def _is_of_open_string(hertz: float, instrument: Instrument) -> bool:
    """Whether a pitch is that of an open string, octaves apart."""
    octaves = [
        np.log2(hertz / midi_to_hz(parse_note_name(name))) for name in instrument.open_strings
    ]
    return any(1200.0 * abs(o - round(o)) <= _OPEN_STRING_CENTS for o in octaves)


def join_beating(track: PitchTrack, spans: list[Span], source: MonoSamples) -> list[Span]:
    """Join what two strings in unison have cut up.

    While their first partials cancel their second ones add up, and the track goes up an
    octave for a while.
    """
    middles = [_middle_cents(track, span) for span in spans]
    joined: list[Span] = []
    i = 0
    while i < len(spans):
        j = i + 1
        while j < len(spans) and _beats_on(spans[j - 1], spans[j], middles[j] - middles[i]):
            j += 1
        lowest = min(middles[i:j])
        if max(middles[i:j]) - lowest > 600.0 and _is_blend(source, spans[i:j], lowest):
            joined.append(replace(spans[i], last=spans[j - 1].last, end_s=spans[j - 1].end_s))
        else:
            joined += spans[i:j]
        i = j
    return joined


def _middle_cents(track: PitchTrack, span: Span) -> float:
    f0_hz = track.f0_hz[span.first : span.last]
    f0_hz = f0_hz[np.isfinite(f0_hz)]
    return 100.0 * hz_to_midi(float(np.median(f0_hz))) if f0_hz.size else float("nan")


def _beats_on(span: Span, following: Span, cents: float) -> bool:
    """Whether a piece begins without a clear attack at the same pitch, or an octave off it."""
    octaves = cents / 1200.0
    return (
        following.start_s - span.end_s <= _SAME_BOW_S
        and following.strength < _CLEAR_BOW_CHANGE
        and abs(octaves) < 1.5
        and abs(octaves - round(octaves)) * 1200.0 < _SAME_CHORD_CENTS
    )


def _is_blend(source: MonoSamples, spans: list[Span], lowest_cents: float) -> bool:
    start_s, end_s = spans[0].start_s, spans[-1].end_s
    inset_s = min(0.08, 0.15 * (end_s - start_s))
    f0_hz = midi_to_hz(lowest_cents / 100.0)
    return find_blend(source, start_s + inset_s, end_s - inset_s, f0_hz) is not None


def join_double_stops(found: list[tuple[Span, Note]]) -> tuple[Note, ...]:
    """Join the pieces of a double stop whose one pitch the track could not settle on."""
    joined: list[Note] = []
    for span, note in found:
        before = joined[-1] if joined else None
        if before is not None and _goes_on(before, span, note):
            longer = max(
                before, note, key=lambda n: (n.kind is NoteKind.DOUBLE_STOP, n.end_s - n.start_s)
            )
            joined[-1] = replace(
                longer,
                start_s=before.start_s,
                end_s=note.end_s,
                steady_start_s=before.start_s,
                steady_end_s=note.end_s,
            )
        else:
            joined.append(note)
    return tuple(joined)


def _goes_on(before: Note, span: Span, note: Note) -> bool:
    double = [n.kind is NoteKind.DOUBLE_STOP for n in (before, note)]
    if note.start_s - before.end_s > _SAME_BOW_S:
        return False
    if all(double) and span.strength < _CLEAR_BOW_CHANGE:
        # Partials of two strings that lie close beat, which looks like faint bow changes.
        return _same_chord(before, note)
    if span.attacked:
        return False
    piece = before if double[1] else note
    return (
        any(double)
        and piece.end_s - piece.start_s <= _LONGEST_PIECE_S
        and (isinstance(piece.pitch, NotMeasurable) or piece.pitch.value.uncertainty_cents > 5.0)
    )


def _same_chord(before: Note, note: Note) -> bool:
    pairs = [(before.second_pitch_hz, note.second_pitch_hz)]
    if isinstance(before.pitch, Measured) and isinstance(note.pitch, Measured):
        pairs.append((before.pitch.value.pitch_hz, note.pitch.value.pitch_hz))
    return all(
        a is not None and b is not None and abs(cents_between(a, b)) < _SAME_CHORD_CENTS
        for a, b in pairs
    )
