"""From the notes of a take to its intonation: what is left out, and what is no line."""

from dataclasses import dataclass, replace
from typing import Final

from analysis import intonation, line
from analysis.instruments import Instrument
from analysis.left_out import is_left_out
from analysis.results import (
    Intonation,
    JudgedNote,
    LeftOut,
    LeftOutReason,
    Measured,
    Note,
    NotMeasurable,
    PitchTrack,
    Provenance,
    Reason,
)
from analysis.take_settings import TakeSettings
from analysis.tuning import Temperament

ALGORITHM: Final = "judging-1"

SPEECH: Final = NotMeasurable(Reason.SPEECH, "This is speech, not playing.", Provenance(ALGORITHM))


@dataclass(frozen=True, slots=True)
class Judged:
    """The notes of a take held against their targets, and what they come to."""

    notes: tuple[JudgedNote, ...]
    intonation: Measured[Intonation] | NotMeasurable


def is_speech(notes: tuple[Note, ...], left_out: tuple[LeftOut, ...]) -> bool:
    """Say whether a take holds nothing but talk."""
    return any(span.reason is LeftOutReason.TALK for span in left_out) and all(
        is_left_out(note, left_out) for note in notes
    )


def judge_take(
    track: Measured[PitchTrack] | NotMeasurable,
    found: tuple[Note, ...],
    left_out: tuple[LeftOut, ...],
    settings: TakeSettings,
    player: Instrument,
) -> Judged:
    """Hold the notes of a take against their targets and sum them up.

    Parameters
    ----------
    track : Measured of PitchTrack, or NotMeasurable
    found : tuple of Note
        All notes of the take; those of the stretches left out are judged but enter no
        average, and no string is read from them.
    left_out : tuple of LeftOut
    settings : TakeSettings
    player : Instrument

    Returns
    -------
    Judged
    """
    playing = tuple(note for note in found if not is_left_out(note, left_out))
    tuning = intonation.tuning_of_take(
        playing,
        reference_a_hz=settings.reference_a_hz,
        temperament=Temperament(settings.temperament),
        tonic=settings.tonic,
        instrument=player,
        open_strings=settings.open_strings,
    )
    if isinstance(tuning, NotMeasurable):
        return Judged(intonation.unjudged(found, tuning), tuning)
    if settings.accompanied:
        tuning = replace(tuning, only_equal=True)
    if isinstance(track, NotMeasurable):
        return Judged(intonation.judge_notes(found, tuning), track)
    judged = intonation.judge_notes(playing, tuning)
    result: Measured[Intonation] | NotMeasurable
    if settings.accompanied:
        judged = line.only_alone(track.value, judged)
        result = intonation.measure_intonation(judged, tuning)
        if isinstance(result, NotMeasurable) and judged:
            result = line.ACCOMPANIED
    elif line.several_notes_sound(track.value, playing):
        judged = intonation.unjudged(playing, line.SEVERAL_NOTES)
        result = line.SEVERAL_NOTES
    else:
        result = intonation.measure_intonation(judged, tuning)
    aside = intonation.judge_notes(
        tuple(note for note in found if is_left_out(note, left_out)), tuning
    )
    every = sorted((*judged, *aside), key=lambda j: j.note.start_s)
    return Judged(tuple(every), result)
