"""From written notes to their place in time: starts, ends, steady parts, centre pitches."""

from dataclasses import dataclass, replace

import numpy as np

from sample_audio.specs import NoteSpec, NoteTruth, PhraseSpec
from sample_audio.targets import target_hz
from sample_audio.timing import BeatClock

SCOOP_TIME_S = 0.02
"""Time constant of a scoop: down to 5 % after three of these."""

_SLURRED = ("legato", "slide_in")


@dataclass(frozen=True, slots=True)
class PlacedNote:
    """A written note with its place in time; ``slurred`` when the bow keeps moving."""

    spec: NoteSpec
    truth: NoteTruth
    slurred: bool


def place_notes(spec: PhraseSpec, clock: BeatClock) -> tuple[PlacedNote, ...]:
    """Give every sounding note its start, end and centre pitch.

    Raises
    ------
    ValueError
        When a note would end before it starts.
    """
    beats = np.concatenate(([0.0], np.cumsum([note.beats for note in spec.notes])))
    starts = [
        clock.time_s(float(beat)) + note.onset_shift_s
        for beat, note in zip(beats, spec.notes, strict=False)
    ]
    placed: list[PlacedNote] = []
    for i, note in enumerate(spec.notes):
        if note.midi is None:
            continue
        following = spec.notes[i + 1] if i + 1 < len(spec.notes) else None
        end_s = clock.time_s(float(beats[i + 1]))
        if following is not None and following.midi is not None:
            gap = 0.0 if _is_slurred(following, note) else spec.bow_change_s
            end_s = starts[i + 1] - gap
        if note.articulation == "staccato":
            end_s = starts[i] + 0.5 * (end_s - starts[i])
        if end_s <= starts[i]:
            raise ValueError(f"Note {i} ends before it starts.")
        slurred = i > 0 and _is_slurred(note, spec.notes[i - 1])
        truth = _truth(spec, i, float(beats[i]), (starts[i], end_s), slurred)
        placed.append(PlacedNote(note, truth, slurred))
    return tuple(_with_steady_ends(placed))


def _is_slurred(note: NoteSpec, before: NoteSpec) -> bool:
    return (
        note.articulation in _SLURRED
        and before.midi is not None
        and before.articulation not in ("pizzicato", "staccato")
    )


def _truth(
    spec: PhraseSpec, index: int, beat: float, span_s: tuple[float, float], slurred: bool
) -> NoteTruth:
    note = spec.notes[index]
    start_s, end_s = span_s
    assert note.midi is not None  # noqa: S101 - rests are never placed
    target = target_hz(note.midi, spec.reference_a_hz, spec.temperament, spec.tonic)
    second_hz = None
    if note.second_midi is not None:
        second = target_hz(note.second_midi, spec.reference_a_hz, spec.temperament, spec.tonic)
        second_hz = second * 2.0 ** (note.second_deviation_cents / 1200.0)
    steady_start_s, steady_end_s = _ordered(
        start_s + _settle_s(note, slurred), end_s - note.release_s / 2.0
    )
    return NoteTruth(
        index=index,
        start_s=start_s,
        end_s=end_s,
        steady_start_s=steady_start_s,
        steady_end_s=steady_end_s,
        beat=beat,
        midi=note.midi,
        target_hz=target,
        deviation_cents=note.deviation_cents,
        centre_hz=target * 2.0 ** (note.deviation_cents / 1200.0),
        vibrato_rate_hz=note.vibrato_rate_hz,
        vibrato_extent_cents=note.vibrato_extent_cents,
        level_db=note.level_db,
        articulation=note.articulation,
        second_midi=note.second_midi,
        second_centre_hz=second_hz,
    )


def _settle_s(note: NoteSpec, slurred: bool) -> float:
    """Return how long after its start a note's pitch and level are still on their way."""
    settle_s = note.glide_s / 2.0 if slurred else note.attack_s / 2.0
    if note.articulation == "slide_in" and not slurred:
        settle_s = note.glide_s
    if note.scoop_cents:
        settle_s = max(settle_s, 3.0 * SCOOP_TIME_S)
    return settle_s


def _ordered(first_s: float, last_s: float) -> tuple[float, float]:
    """Return the two times, or their middle twice where nothing lies between them."""
    middle_s = (first_s + last_s) / 2.0
    return min(first_s, middle_s), max(last_s, middle_s)


def _with_steady_ends(placed: list[PlacedNote]) -> list[PlacedNote]:
    """End the steady part of a note slurred into the next where that glide begins."""
    for i in range(len(placed) - 1):
        if placed[i + 1].slurred:
            note = placed[i].truth
            first_s, last_s = _ordered(
                note.start_s + _settle_s(placed[i].spec, placed[i].slurred),
                note.end_s - placed[i + 1].spec.glide_s / 2.0,
            )
            truth = replace(note, steady_start_s=first_s, steady_end_s=last_s)
            placed[i] = replace(placed[i], truth=truth)
    return placed


def second_string(placed: tuple[PlacedNote, ...]) -> tuple[PlacedNote, ...]:
    """Take the other string's part in the double stops as a line of its own."""
    return tuple(
        PlacedNote(
            note.spec,
            replace(note.truth, centre_hz=note.truth.second_centre_hz),
            slurred=False,
        )
        for note in placed
        if note.truth.second_centre_hz is not None
    )
