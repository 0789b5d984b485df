"""Notes held against their targets, and what that says about a take."""

from dataclasses import dataclass
from typing import Final, Literal

import numpy as np
from numpy.typing import NDArray

from analysis.instruments import INSTRUMENTS, Instrument
from analysis.results import (
    Deviation,
    HabitRow,
    Intonation,
    JudgedNote,
    Measured,
    Note,
    NoteKind,
    NotMeasurable,
    Provenance,
    Reason,
)
from analysis.tuning import (
    STANDARD_A_HZ,
    Temperament,
    estimate_reference_a,
    open_string_targets_hz,
    target_hz,
)
from analysis.units import cents_between, hz_to_midi, note_name

FloatArray = NDArray[np.float64]

ALGORITHM: Final = "intonation-1"

UNCLEAR_FROM_CENTS: Final = 40.0
OPEN_STRING_CENTS: Final = 6.0
FEWEST_NOTES: Final = 3


@dataclass(frozen=True, slots=True)
class Tuning:
    """What notes are held against.

    ``reference_uncertainty_cents`` is ``None`` where the A was entered, half of its 95 %
    interval where it was estimated from the take.
    """

    reference_a_hz: float = STANDARD_A_HZ
    temperament: Temperament = Temperament.EQUAL
    tonic: str | None = None
    reference_uncertainty_cents: float | None = None
    instrument: Instrument = INSTRUMENTS["violin"]
    open_strings: tuple[str, ...] | None = None

    @property
    def estimated(self) -> bool:
        """Whether the reference A came from the take itself."""
        return self.reference_uncertainty_cents is not None

    @property
    def provenance(self) -> Provenance:
        """The settings that judging depends on."""
        return Provenance(
            ALGORITHM,
            {
                "reference_a_hz": self.reference_a_hz,
                "reference_estimated": self.estimated,
                "temperament": self.temperament.value,
                "tonic": self.tonic,
                "instrument": self.instrument.name,
                "open_strings": ",".join(self.open_strings) if self.open_strings else None,
            },
        )


def tuning_of_take(
    notes: tuple[Note, ...],
    *,
    reference_a_hz: float | Literal["auto"],
    temperament: Temperament,
    tonic: str | None,
    instrument: Instrument,
    open_strings: tuple[str, ...] | None = None,
) -> Tuning | NotMeasurable:
    """Settle what the notes of a take are held against, estimating the A if asked to.

    Raises
    ------
    ValueError
        If the temperament needs a tonic and there is none.
    """
    if reference_a_hz != "auto":
        return Tuning(reference_a_hz, temperament, tonic, None, instrument, open_strings)
    measured = [n.pitch.value for n in _averaged(notes) if isinstance(n.pitch, Measured)]
    estimate = estimate_reference_a(
        np.array([p.pitch_hz for p in measured]),
        np.array([p.uncertainty_cents for p in measured]),
        temperament,
        tonic,
    )
    if estimate is None:
        return NotMeasurable(
            Reason.TOO_FEW_NOTES,
            "Too few notes agree on a reference A; enter the A instead.",
            Provenance(ALGORITHM, {"reference_a_hz": "auto"}),
        )
    return Tuning(
        estimate.reference_a_hz,
        temperament,
        tonic,
        estimate.uncertainty_cents,
        instrument,
        open_strings,
    )


def judge_notes(notes: tuple[Note, ...], tuning: Tuning) -> tuple[JudgedNote, ...]:
    """Hold every note against its nearest target.

    Parameters
    ----------
    notes : tuple of Note
        The notes of a take.
    tuning : Tuning
        The targets.

    Returns
    -------
    tuple of JudgedNote
        One for each note, in order. A note 40 cents or more from its nearest target has
        no clear target and is not measurable.
    """
    strings = open_string_targets_hz(tuning.instrument, tuning.reference_a_hz, tuning.open_strings)
    return tuple(_judge(note, tuning, strings) for note in notes)


def unjudged(notes: tuple[Note, ...], why: NotMeasurable) -> tuple[JudgedNote, ...]:
    """Return the notes without targets, for when there is nothing to hold them against."""
    return tuple(JudgedNote(note, None, None, None, False, why) for note in notes)


def _judge(note: Note, tuning: Tuning, strings: dict[int, float]) -> JudgedNote:
    provenance = tuning.provenance
    if isinstance(note.pitch, NotMeasurable):
        return JudgedNote(note, None, None, None, False, note.pitch)
    pitch = note.pitch.value
    midi, target = _nearest_target(pitch.pitch_hz, tuning)
    deviation = cents_between(target, pitch.pitch_hz)
    is_open = midi in strings and _is_open(note, pitch.pitch_hz, strings, midi)
    if is_open:
        target = strings[midi]
        deviation = cents_between(target, pitch.pitch_hz)
    if abs(deviation) >= UNCLEAR_FROM_CENTS:
        unclear = NotMeasurable(
            Reason.TARGET_UNCLEAR,
            "The note lies so far between two notes that its target is unclear.",
            provenance,
        )
        return JudgedNote(note, midi, note_name(midi), target, is_open, unclear)
    width = float(np.hypot(pitch.uncertainty_cents, tuning.reference_uncertainty_cents or 0.0))
    judged = Measured(Deviation(deviation, width), provenance)
    return JudgedNote(note, midi, note_name(midi), target, is_open, judged)


def _is_open(note: Note, pitch_hz: float, strings: dict[int, float], midi: int) -> bool:
    """Whether a note of an open string's name is taken for that string.

    The lowest string's own note can only be the string itself. Any other may be stopped
    on the string below: it is taken for the open one where it has no vibrato and lies
    where a purely tuned string lies.
    """
    if midi == min(strings):
        return True
    vibrates = isinstance(note.vibrato, Measured) and note.vibrato.value is not None
    return not vibrates and abs(cents_between(strings[midi], pitch_hz)) <= OPEN_STRING_CENTS


def _nearest_target(pitch_hz: float, tuning: Tuning) -> tuple[int, float]:
    near = round(hz_to_midi(pitch_hz, tuning.reference_a_hz))
    choices = [
        (midi, target_hz(midi, tuning.reference_a_hz, tuning.temperament, tuning.tonic))
        for midi in (near - 1, near, near + 1)
    ]
    return min(choices, key=lambda choice: abs(cents_between(choice[1], pitch_hz)))


def _averaged(notes: tuple[Note, ...]) -> list[Note]:
    return [note for note in notes if note.kind is NoteKind.NOTE]


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
    spread = float(np.std(cents, ddof=1))
    value = Intonation(
        reference_a_hz=tuning.reference_a_hz,
        reference_a_uncertainty_cents=tuning.reference_uncertainty_cents,
        temperament=tuning.temperament.value,
        tonic=tuning.tonic,
        offset_cents=cents_between(STANDARD_A_HZ, tuning.reference_a_hz),
        accuracy_cents=_accuracy(cents, widths, tuning),
        mean_absolute_cents=float(np.mean(np.abs(cents))),
        precision_cents=spread,
        within_10_cents=float(np.mean(np.abs(cents) <= 10.0)),
        within_25_cents=float(np.mean(np.abs(cents) <= 25.0)),
        measured_share=len(entering) / len(judged),
        measured_time_share=entered / sounding if sounding > 0.0 else 0.0,
        note_count=len(entering),
        habits=_habits(entering),
    )
    return Measured(value, provenance)


def _accuracy(
    cents: FloatArray, widths: FloatArray, tuning: Tuning
) -> Measured[Deviation] | NotMeasurable:
    if tuning.estimated:
        return NotMeasurable(
            Reason.REFERENCE_ESTIMATED,
            "The A was estimated from this take, so it hides a take that is sharp or flat"
            " throughout.",
            tuning.provenance,
        )
    width = float(np.sqrt(np.sum(widths**2))) / len(cents)
    return Measured(Deviation(float(np.mean(cents)), width), tuning.provenance)


def _habits(entering: list[tuple[JudgedNote, Deviation]]) -> tuple[HabitRow, ...]:
    by_pitch: dict[int, list[float]] = {}
    for judged, deviation in entering:
        if judged.midi is not None:
            by_pitch.setdefault(judged.midi, []).append(deviation.deviation_cents)
    return tuple(
        HabitRow(
            midi=midi,
            name=note_name(midi),
            count=len(values),
            mean_cents=float(np.mean(values)),
            spread_cents=float(np.std(values, ddof=1)) if len(values) > 1 else 0.0,
        )
        for midi, values in sorted(by_pitch.items())
    )
