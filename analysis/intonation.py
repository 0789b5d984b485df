"""Notes held against their targets, and what that says about a take."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from analysis.averages import average_uncertainty, measure_drift, uncertainty_of_mean
from analysis.intervals import judge_two_strings
from analysis.results import (
    Deviation,
    HabitRow,
    Intonation,
    JudgedNote,
    Measured,
    Note,
    NoteKind,
    NotMeasurable,
    Reason,
    StringPitch,
)
from analysis.score_notes import WrittenNote, written_name
from analysis.score_targets import spelled_offset_cents
from analysis.spelling import spelled_name
from analysis.take_tuning import ALGORITHM, Tuning, tuning_of_take
from analysis.targets import OPEN_STRING_CENTS, plausible_targets, strings_as_tuned, vibrates
from analysis.tuning import (
    STANDARD_A_HZ,
    open_string_targets_hz,
    target_hz,
)
from analysis.units import cents_between, hz_to_midi, midi_to_hz, note_name

FloatArray = NDArray[np.float64]

__all__ = [
    "ALGORITHM",
    "Tuning",
    "judge_notes",
    "measure_intonation",
    "tuning_of_take",
    "unjudged",
]

UNCLEAR_FROM_CENTS: Final = 40.0
FEWEST_NOTES: Final = 3


def judge_notes(
    notes: tuple[Note, ...], tuning: Tuning, written: Mapping[int, WrittenNote] | None = None
) -> tuple[JudgedNote, ...]:
    """Hold every note against its target: the written one where it is known, or the nearest.

    Parameters
    ----------
    notes : tuple of Note
        The notes of a take.
    tuning : Tuning
        The targets.
    written : mapping, optional
        The written notes that a score gives to some of the notes, by their index.

    Returns
    -------
    tuple of JudgedNote
        One for each note, in order. A note 40 cents or more from its nearest target has
        no clear target and is not measurable; a written target is always clear.
    """
    strings = _Strings.of(notes, tuning)
    known = written or {}
    return tuple(_judge(note, tuning, strings, known.get(i)) for i, note in enumerate(notes))


@dataclass(frozen=True, slots=True)
class _Strings:
    """The open strings: where pure tuning puts them, and as they are tuned in the take."""

    pure_hz: dict[int, float]
    tuned: tuple[StringPitch, ...]

    @classmethod
    def of(cls, notes: tuple[Note, ...], tuning: Tuning) -> "_Strings":
        pure = open_string_targets_hz(tuning.instrument, tuning.reference_a_hz, tuning.open_strings)
        return cls(pure, strings_as_tuned(notes, pure, tuning.reference_a_hz))

    def holds(self, note: Note, pitch_hz: float, midi: int) -> bool:
        """Whether a note of an open string's name is taken for that string.

        The lowest string's own note can only be the string itself. Any other may be
        stopped on the string below: it is taken for the open one where it has no
        vibrato and lies where the string lies.
        """
        if midi == min(self.pure_hz):
            return True
        places = [t.pitch_hz for t in self.tuned if t.midi == midi] or [self.pure_hz[midi]]
        return not vibrates(note) and abs(cents_between(places[0], pitch_hz)) <= OPEN_STRING_CENTS


def unjudged(notes: tuple[Note, ...], why: NotMeasurable) -> tuple[JudgedNote, ...]:
    """Return the notes without targets, for when there is nothing to hold them against."""
    return tuple(JudgedNote(note, None, None, None, False, why) for note in notes)


def _judge(
    note: Note, tuning: Tuning, strings: _Strings, written: WrittenNote | None
) -> JudgedNote:
    provenance = tuning.provenance
    if isinstance(note.pitch, NotMeasurable):
        return JudgedNote(note, None, None, None, False, note.pitch)
    pitch = note.pitch.value
    midi, target = _target(pitch.pitch_hz, tuning, written)
    deviation = cents_between(target, pitch.pitch_hz)
    is_open = midi in strings.pure_hz and strings.holds(note, pitch.pitch_hz, midi)
    if is_open:
        target = strings.pure_hz[midi]
        deviation = cents_between(target, pitch.pitch_hz)
    spelled = written_name(written) if written else spelled_name(midi, tuning.tonic)
    if written is None and abs(deviation) >= UNCLEAR_FROM_CENTS:
        unclear = NotMeasurable(
            Reason.TARGET_UNCLEAR,
            "The note lies so far between two notes that its target is unclear.",
            provenance,
        )
        return JudgedNote(
            note,
            midi,
            note_name(midi),
            target,
            is_open,
            unclear,
            spelled=spelled,
            two_strings=judge_two_strings(note, tuning),
        )
    width = float(np.hypot(pitch.uncertainty_cents, tuning.reference_uncertainty_cents or 0.0))
    found = plausible_targets(
        midi,
        pitch.pitch_hz,
        width,
        target,
        reference_a_hz=tuning.reference_a_hz,
        tonic=tuning.tonic,
        strings=strings.pure_hz,
        tuned=strings.tuned,
        only_equal=tuning.only_equal,
        written=(written.step, written.alter) if written else None,
    )
    return JudgedNote(
        note=note,
        midi=midi,
        name=note_name(midi),
        target_hz=target,
        is_open_string=is_open,
        deviation=Measured(Deviation(deviation, width), provenance),
        readings=found.readings,
        plausible_low_cents=found.low_cents,
        plausible_high_cents=found.high_cents,
        depends_on_temperament=found.depends_on_temperament,
        verdict=found.verdict,
        spelled=spelled,
        may_be_stopped=is_open and midi != min(strings.pure_hz),
        two_strings=judge_two_strings(note, tuning),
    )


def _target(pitch_hz: float, tuning: Tuning, written: WrittenNote | None) -> tuple[int, float]:
    if written is None:
        return _nearest_target(pitch_hz, tuning)
    offset = spelled_offset_cents(written.step, written.alter, tuning.temperament, tuning.tonic)
    if offset is None:
        raise ValueError(f"{tuning.temperament.value} targets need a tonic, for example 'D'")
    midi = written.midi_pitch
    return midi, midi_to_hz(midi + offset / 100.0, tuning.reference_a_hz)


def _nearest_target(pitch_hz: float, tuning: Tuning) -> tuple[int, float]:
    near = round(hz_to_midi(pitch_hz, tuning.reference_a_hz))
    choices = [
        (midi, target_hz(midi, tuning.reference_a_hz, tuning.temperament, tuning.tonic))
        for midi in (near - 1, near, near + 1)
    ]
    return min(choices, key=lambda choice: abs(cents_between(choice[1], pitch_hz)))


def measure_intonation(
    judged: tuple[JudgedNote, ...], tuning: Tuning
) -> Measured[Intonation] | NotMeasurable:
    """Sum up the intonation of a take.

    Parameters
    ----------
    judged : tuple of JudgedNote
        From :func:`judge_notes`.
    tuning : Tuning
        The same tuning.

    Returns
    -------
    Measured of Intonation, or NotMeasurable
        Not measurable with fewer than three measured notes. With an estimated A the
        signed mean is not measurable: the estimate has absorbed it.
    """
    provenance = tuning.provenance
    if not judged:
        return NotMeasurable(Reason.NO_NOTES, "No notes were found.", provenance)
    entering = [
        (j, j.deviation.value)
        for j in judged
        if j.note.kind is NoteKind.NOTE and isinstance(j.deviation, Measured)
    ]
    if len(entering) < FEWEST_NOTES:
        return NotMeasurable(
            Reason.TOO_FEW_NOTES, "Too few notes could be measured to sum them up.", provenance
        )
    cents = np.array([d.deviation_cents for _, d in entering])
    widths = np.array([d.uncertainty_cents for _, d in entering])
    sounding = sum(j.note.end_s - j.note.start_s for j in judged)
    entered = sum(j.note.end_s - j.note.start_s for j, _ in entering)
    share = len(entering) / len(judged)
    reference_width = tuning.reference_uncertainty_cents or 0.0
    own_widths = np.sqrt(np.maximum(widths**2 - reference_width**2, 0.0))
    middle_s = np.array([(j.note.start_s + j.note.end_s) / 2 for j, _ in entering])
    value = Intonation(
        reference_a_hz=tuning.reference_a_hz,
        reference_a_uncertainty_cents=tuning.reference_uncertainty_cents,
        temperament=tuning.temperament.value,
        tonic=tuning.tonic,
        offset_cents=cents_between(STANDARD_A_HZ, tuning.reference_a_hz),
        accuracy_cents=_accuracy(cents, widths, share, tuning),
        mean_absolute_cents=float(np.mean(np.abs(cents))),
        precision_cents=float(np.std(cents, ddof=1)),
        within_10_cents=float(np.mean(np.abs(cents) <= 10.0)),
        within_25_cents=float(np.mean(np.abs(cents) <= 25.0)),
        measured_share=share,
        measured_time_share=entered / sounding if sounding > 0.0 else 0.0,
        note_count=len(entering),
        habits=_habits(entering),
        uncertainty=average_uncertainty(cents, own_widths, reference_width, share),
        drift=measure_drift(middle_s, cents),
        strings=_Strings.of(tuple(j.note for j in judged), tuning).tuned,
    )
    return Measured(value, provenance)


def _accuracy(
    cents: FloatArray, widths: FloatArray, share: float, tuning: Tuning
) -> Measured[Deviation] | NotMeasurable:
    if tuning.estimated:
        return NotMeasurable(
            Reason.REFERENCE_ESTIMATED,
            "The A was estimated from this take, so it hides a take that is sharp or flat"
            " throughout.",
            tuning.provenance,
        )
    width = uncertainty_of_mean(cents, widths, share)
    return Measured(Deviation(float(np.mean(cents)), width), tuning.provenance)


def _habits(entering: list[tuple[JudgedNote, Deviation]]) -> tuple[HabitRow, ...]:
    by_pitch: dict[tuple[int, str], list[Deviation]] = {}
    for judged, deviation in entering:
        if judged.midi is not None:
            by_pitch.setdefault((judged.midi, judged.spelled or ""), []).append(deviation)
    return tuple(_habit_row(*key, values) for key, values in sorted(by_pitch.items()))


def _habit_row(midi: int, spelled: str, deviations: list[Deviation]) -> HabitRow:
    cents = np.array([d.deviation_cents for d in deviations])
    widths = np.array([d.uncertainty_cents for d in deviations])
    return HabitRow(
        midi=midi,
        name=note_name(midi),
        count=len(cents),
        mean_cents=float(np.mean(cents)),
        spread_cents=float(np.std(cents, ddof=1)) if len(cents) > 1 else 0.0,
        uncertainty_cents=float(np.sqrt(np.sum(widths**2))) / len(cents),
        spelled=spelled or None,
    )
