"""Double stops that the search for notes has cut into pieces, made whole."""

from dataclasses import replace
from typing import Final

from analysis.note_spans import Span
from analysis.results import Measured, Note, NoteKind, NotMeasurable
from analysis.units import cents_between

_SAME_BOW_S: Final = 0.06
_CLEAR_BOW_CHANGE: Final = 0.5
_SAME_CHORD_CENTS: Final = 30.0
_LONGEST_PIECE_S: Final = 0.3


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
