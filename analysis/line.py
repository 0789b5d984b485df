"""Is it one line that sounds? Struck chords, and a line with an accompaniment.

While one string sounds its frames are periodic (a confidence near 1) and a bow keeps its
level; a struck or plucked sound dies away from its first moment. Where most of the
sounding time is chords, one pitch read from them would be a common subharmonic of
several notes and no note at all. The thresholds are this project's own, set on generated
playing, struck strings and mixtures.
"""

from collections.abc import Iterable
from typing import Final

import numpy as np

from analysis.results import (
    JudgedNote,
    Measured,
    Note,
    NoteKind,
    NotMeasurable,
    PitchTrack,
    Provenance,
    Reason,
)

ALGORITHM: Final = "line-1"

_PROVENANCE: Final = Provenance(ALGORITHM)
_MOSTLY: Final = 0.6
_OFTEN: Final = 0.3
_DIES_DB_PER_S: Final = -2.0
_ALONE: Final = 0.985
_ALONE_DIES_DB_PER_S: Final = -4.0
_SHORTEST_S: Final = 0.15
_FEWEST: Final = 3
_FAINT_DB: Final = 30.0
_MIXED: Final = (Reason.NO_PITCH, Reason.NOT_STEADY, Reason.TWO_NOTES_SOUND)

SEVERAL_NOTES: Final = NotMeasurable(
    Reason.SEVERAL_NOTES_SOUND,
    "Several notes sound at once through most of the take, as on a piano, so there is no"
    " single line to measure.",
    _PROVENANCE,
)
ACCOMPANIED: Final = NotMeasurable(
    Reason.ACCOMPANIED,
    "Something else sounds in this take, and the player's own line cannot be told apart.",
    _PROVENANCE,
)
NOT_ALONE: Final = NotMeasurable(
    Reason.ACCOMPANIED, "Something else may sound with this note.", _PROVENANCE
)


def several_notes_sound(track: PitchTrack, notes: Iterable[Note]) -> bool:
    """Say whether chords take up so much of a take that it holds no line.

    Parameters
    ----------
    track : PitchTrack
    notes : iterable of Note
        Talk and tuning-up left out.

    Returns
    -------
    bool
        True where six tenths of the sounding time are no single pitch, or three tenths
        while the notes die away as struck ones do. Short and faint ones do not count.
    """
    long = [n for n in notes if n.end_s - n.start_s >= _SHORTEST_S]
    loudest = max((n.level_dbfs for n in long), default=0.0)
    heard = [n for n in long if n.level_dbfs > loudest - _FAINT_DB]
    if len(heard) < _FEWEST:
        return False
    length = np.array([n.end_s - n.start_s for n in heard])
    mixed = np.array([_is_mixed(n) for n in heard])
    share = float(np.sum(length[mixed]) / np.sum(length))
    if share >= _MOSTLY:
        return True
    slopes = [_level_slope_db_per_s(track, n) for n in heard]
    return share >= _OFTEN and float(np.median(slopes)) <= _DIES_DB_PER_S


def _is_mixed(note: Note) -> bool:
    if note.kind is NoteKind.DOUBLE_STOP:
        return True
    if note.kind is not NoteKind.NOTE or not isinstance(note.pitch, NotMeasurable):
        return False
    return note.pitch.reason in _MIXED


def sounds_alone(track: PitchTrack, note: Note) -> bool:
    """Say whether nothing else sounds with a sustained note.

    Parameters
    ----------
    track : PitchTrack
    note : Note

    Returns
    -------
    bool
        False too where one cannot be sure: in much noise, or in a note that dies away.
    """
    first, last = _frames(track, note)
    confidence = track.confidence[first:last]
    return (
        len(confidence) > 0
        and float(np.median(confidence)) >= _ALONE
        and _level_slope_db_per_s(track, note) >= _ALONE_DIES_DB_PER_S
    )


def only_alone(track: PitchTrack, judged: tuple[JudgedNote, ...]) -> tuple[JudgedNote, ...]:
    """Take the deviation from the notes with which something else may sound."""
    return tuple(
        j
        if isinstance(j.deviation, NotMeasurable) or sounds_alone(track, j.note)
        else _without_deviation(j)
        for j in judged
    )


def _without_deviation(judged: JudgedNote) -> JudgedNote:
    return JudgedNote(
        note=judged.note,
        midi=judged.midi,
        name=judged.name,
        target_hz=judged.target_hz,
        is_open_string=judged.is_open_string,
        deviation=NOT_ALONE,
        spelled=judged.spelled,
    )


def measured_notes(judged: Iterable[JudgedNote]) -> int:
    """Count the notes that would enter the averages."""
    return sum(j.note.kind is NoteKind.NOTE and isinstance(j.deviation, Measured) for j in judged)


def _frames(track: PitchTrack, note: Note) -> tuple[int, int]:
    first, last = np.searchsorted(track.time_s, (note.start_s, note.end_s))
    return int(first), int(last)


def _level_slope_db_per_s(track: PitchTrack, note: Note) -> float:
    """How the level moves between the first and the last fifth of a note."""
    first, last = _frames(track, note)
    fifth = (last - first) // 5
    if fifth < 1:
        return 0.0
    level = track.level_dbfs[first:last]
    moved = float(np.mean(level[-2 * fifth : -fifth]) - np.mean(level[fifth : 2 * fifth]))
    return moved / (0.6 * (note.end_s - note.start_s))
