"""Harmonics by their sounding pitch, where the player says which notes are harmonics.

A harmonic sounds like a note: nothing in its sound says for certain that it is none. So
only a score or the player can tell, and the player tells by the pitches that sound.
"""

from collections.abc import Iterable
from dataclasses import replace
from typing import Final

from analysis.results import Measured, Note, NoteKind
from analysis.units import hz_to_midi, parse_note_name

EVERY_NOTE: Final = "all"
_WITHIN_CENTS: Final = 50.0


def check_harmonics(names: Iterable[str]) -> None:
    """Raise ``ValueError`` unless every name is that of a note, or ``'all'``."""
    for name in names:
        if name != EVERY_NOTE:
            parse_note_name(name)


def mark_harmonics(
    notes: tuple[Note, ...], names: Iterable[str], reference_a_hz: float
) -> tuple[Note, ...]:
    """Return the notes with those called harmonics that the player declared.

    Parameters
    ----------
    notes : tuple of Note
    names : iterable of str
        Sounding note names (``'A5'``), or ``'all'`` for a passage of harmonics alone.
    reference_a_hz : float
        The A that was tuned to.

    Returns
    -------
    tuple of Note
        A note is the harmonic of a name within 50 cents of it. Plucked notes, trills and
        the like stay what they are.
    """
    wanted = tuple(names)
    midis = [parse_note_name(name) for name in wanted if name != EVERY_NOTE]

    def is_harmonic(note: Note) -> bool:
        if note.kind is not NoteKind.NOTE:
            return False
        if EVERY_NOTE in wanted:
            return True
        if not isinstance(note.pitch, Measured):
            return False
        midi = hz_to_midi(note.pitch.value.pitch_hz, reference_a_hz)
        return any(100.0 * abs(midi - wanted_midi) <= _WITHIN_CENTS for wanted_midi in midis)

    if not wanted:
        return notes
    return tuple(
        replace(note, kind=NoteKind.HARMONIC) if is_harmonic(note) else note for note in notes
    )
