"""Tuning-up at the ends of a take, told from playing by what strings do in it."""

import itertools
from typing import Final

from analysis.results import LeftOut, LeftOutReason, Measured, Note, NoteKind
from analysis.tuning import STANDARD_A_HZ
from analysis.units import hz_to_midi, parse_note_name

_NEAR_CENTS: Final = 70.0  # from a string's place at 440 Hz: any A, and pegs not yet there
_MOVED_CENTS: Final = 8.0
_SHORTEST_S: Final = 2.0
_TYPICAL_NOTE_S: Final = 0.6
_PAUSE_S: Final = 0.6
_KNOWN_SHARE: Final = 0.5
_TRIED_STRINGS: Final = 3

_Strings = tuple[str, ...]


def tuning_up_at_start(notes: tuple[Note, ...], strings: _Strings) -> list[LeftOut]:
    """Find tuning-up before the first pause of a take; a list of one, or empty.

    Parameters
    ----------
    notes : tuple of Note
        Of the take, talk left out.
    strings : tuple of str
        The open strings, low to high.
    """
    return _tuning_up(notes, strings)


def tuning_up_at_end(notes: tuple[Note, ...], strings: _Strings) -> list[LeftOut]:
    """Find tuning-up after the last pause of a take; a list of one, or empty."""
    return _tuning_up(notes[::-1], strings)


def _tuning_up(notes: tuple[Note, ...], strings: _Strings) -> list[LeftOut]:
    """Look from the first of `notes`, which may run backwards in time."""
    places = [parse_note_name(name) for name in strings]
    longest: list[Note] = []
    run: list[Note] = []
    known = [note for note in notes if isinstance(note.pitch, Measured)]
    for note, after in itertools.pairwise((*known, None)):
        if note is None or not _touched(note, places):
            break
        run.append(note)
        is_end = after is None or _pause_s(note, after) >= _PAUSE_S
        if is_end and _is_tuning(run, places):
            longest = list(run)
    if not longest:
        return []
    start = min(n.start_s for n in longest)
    return [LeftOut(start, max(n.end_s for n in longest), LeftOutReason.TUNING_UP)]


def _pause_s(one: Note, other: Note) -> float:
    return max(one.start_s, other.start_s) - min(one.end_s, other.end_s)


def _touched(note: Note, places: list[int]) -> tuple[tuple[int, float], ...]:
    """Which strings a note sounds, with their pitch in cents; empty where it is not open."""
    if not isinstance(note.pitch, Measured):
        return ()
    hertz = [note.pitch.value.pitch_hz]
    if note.second_pitch_hz is not None:
        hertz.append(note.second_pitch_hz)
    found = []
    for pitch in hertz:
        midi = hz_to_midi(pitch, STANDARD_A_HZ)
        string = min(range(len(places)), key=lambda s: abs(midi - places[s]))
        cents = 100.0 * (midi - places[string])
        if abs(cents) > _NEAR_CENTS:
            return ()
        found.append((string, cents))
    if len(found) == 2 and abs(found[0][0] - found[1][0]) != 1:
        return ()
    if note.kind is NoteKind.DOUBLE_STOP and len(found) < 2:
        return ()
    return tuple(found)


def _is_tuning(run: list[Note], places: list[int]) -> bool:
    sounding_s = sum(n.end_s - n.start_s for n in run)
    whole_s = max(n.end_s for n in run) - min(n.start_s for n in run)
    if sounding_s < max(_SHORTEST_S, _KNOWN_SHARE * whole_s, _TYPICAL_NOTE_S * len(run)):
        return False
    cents: dict[int, list[float]] = {}
    pairs = set()
    for note in run:
        touched = _touched(note, places)
        for string, at in touched:
            cents.setdefault(string, []).append(at)
        if len(touched) == 2:
            pairs.add(touched[0][0] + touched[1][0])
    moved = any(max(at) - min(at) >= _MOVED_CENTS for at in cents.values())
    tried = bool(pairs) and len(cents) >= _TRIED_STRINGS
    return moved or tried or any(_glides(n) for n in run) or len(pairs) >= 2


def _glides(note: Note) -> bool:
    if not isinstance(note.pitch, Measured):
        return False
    seconds = note.steady_end_s - note.steady_start_s
    return abs(note.pitch.value.drift_cents_per_s) * seconds >= _MOVED_CENTS
