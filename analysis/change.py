"""What changed between takes: note against note, and as a trend over weeks.

Changes are always the later (b) minus the earlier (a). A verdict is given only
where the change is larger than its 95 % interval; of journals without any real
change at most one in twenty may show one.
"""

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum

import numpy as np

from analysis.common_target import on_one_target, target_shift_cents
from analysis.note_matching import match_notes
from analysis.results import (
    Alignment,
    Deviation,
    JudgedNote,
    Measured,
    NotePair,
    NotMeasurable,
    Provenance,
    TakeAnalysis,
    TakeChange,
)
from analysis.time_map import map_time
from analysis.touching import joint_deviation, pieces_of
from analysis.trend import Trend, trend

__all__ = ["MeasureChange", "Trend", "Word", "compare_takes", "take_level_change", "trend"]

ALGORITHM = "change-4"
PAIRING_WINDOW_S = 0.25


class Word(StrEnum):
    """The one plain word a change is described with."""

    BETTER = "better"
    WORSE = "worse"
    WIDER = "wider"
    NARROWER = "narrower"
    STEADIER = "steadier"
    LESS_STEADY = "less steady"
    FASTER = "faster"
    SLOWER = "slower"
    LOUDER = "louder"
    SOFTER = "softer"
    SHARPER = "sharper"
    FLATTER = "flatter"
    NO_CLEAR_CHANGE = "no clear change"
    TOO_FEW_TAKES = "too few takes"


@dataclass(frozen=True, slots=True)
class MeasureChange:
    """One measure in two takes.

    ``change`` is b minus a in ``unit``; ``uncertainty`` is half of the 95 %
    interval that measuring alone gives, ``None`` where that is not known. Two
    takes do not show the ordinary scatter between takes, so ``word`` is then
    ``TOO_FEW_TAKES``.
    """

    measure: str
    unit: str
    a: float
    b: float
    change: float
    uncertainty: float | None
    word: Word


def compare_takes(
    notes_a: Sequence[JudgedNote], notes_b: Sequence[JudgedNote], alignment: Alignment
) -> TakeChange:
    """Pair the notes of two takes of one passage.

    Two notes are a pair when they carry the same written pitch and start at the
    same musical moment; the pairing is the largest one that keeps the order. Where one
    note of a take stands against touching pieces of its name in the other, the pieces are
    read together (see :mod:`analysis.touching`). Both are held against one target (see
    :mod:`analysis.common_target`).

    Parameters
    ----------
    notes_a, notes_b : sequence of JudgedNote
        In order of their start.
    alignment : Alignment
        From take a to take b.

    Returns
    -------
    TakeChange
        Pairs without a measured deviation on both sides are left out of
        ``notes``, and their notes are in neither ``a_only`` nor ``b_only``.
    """
    pairs = _matched_notes(notes_a, notes_b, alignment)
    paired_a, paired_b = {a for a, _ in pairs}, {b for _, b in pairs}
    shift_cents = target_shift_cents((notes_a[a], notes_b[b]) for a, b in pairs)
    changes = []
    for a, b in pairs:
        pieces_a = pieces_of(notes_a, a, paired_a - {a})
        pieces_b = pieces_of(notes_b, b, paired_b - {b})
        target_hz = notes_a[a].target_hz
        changes.append(
            _pair_change(
                a,
                b,
                on_one_target([notes_a[i] for i in pieces_a], target_hz),
                on_one_target([notes_b[i] for i in pieces_b], target_hz, shift_cents),
            )
        )
        paired_a.update(pieces_a)
        paired_b.update(pieces_b)
    return TakeChange(
        alignment=alignment,
        notes=tuple(change for change in changes if change is not None),
        a_only=tuple(i for i in range(len(notes_a)) if i not in paired_a),
        b_only=tuple(i for i in range(len(notes_b)) if i not in paired_b),
    )


def take_level_change(
    analysis_a: TakeAnalysis, analysis_b: TakeAnalysis
) -> Mapping[str, Measured[MeasureChange] | NotMeasurable]:
    """Hold the take-level measures of two takes against each other.

    Parameters
    ----------
    analysis_a, analysis_b : TakeAnalysis

    Returns
    -------
    mapping of str to Measured[MeasureChange] or NotMeasurable
        By the name of the measure; not measurable with the reason of the take
        that lacks it.
    """
    return {
        reading.measure: _level_change(reading, analysis_a, analysis_b) for reading in _READINGS
    }


@dataclass(frozen=True, slots=True)
class _Value:
    """A take-level number and half of its 95 % interval where one is known."""

    value: float
    uncertainty: float | None


@dataclass(frozen=True, slots=True)
class _Reading:
    """Where a take-level measure is read from."""

    measure: str
    unit: str
    read: Callable[[TakeAnalysis], _Value | NotMeasurable]


def _level_change(
    reading: _Reading, analysis_a: TakeAnalysis, analysis_b: TakeAnalysis
) -> Measured[MeasureChange] | NotMeasurable:
    """One measure's change, or why there is none."""
    a, b = reading.read(analysis_a), reading.read(analysis_b)
    if isinstance(a, NotMeasurable):
        return a
    if isinstance(b, NotMeasurable):
        return b
    uncertainty = (
        None
        if a.uncertainty is None or b.uncertainty is None
        else math.hypot(a.uncertainty, b.uncertainty)
    )
    change = MeasureChange(
        measure=reading.measure,
        unit=reading.unit,
        a=a.value,
        b=b.value,
        change=b.value - a.value,
        uncertainty=uncertainty,
        word=Word.TOO_FEW_TAKES,
    )
    return Measured(change, Provenance(ALGORITHM))


def _accuracy(analysis: TakeAnalysis) -> _Value | NotMeasurable:
    if isinstance(analysis.intonation, NotMeasurable):
        return analysis.intonation
    accuracy = analysis.intonation.value.accuracy_cents
    if isinstance(accuracy, NotMeasurable):
        return accuracy
    return _Value(accuracy.value.deviation_cents, accuracy.value.uncertainty_cents)


def _mean_absolute(analysis: TakeAnalysis) -> _Value | NotMeasurable:
    if isinstance(analysis.intonation, NotMeasurable):
        return analysis.intonation
    intonation = analysis.intonation.value
    sure = intonation.uncertainty
    return _Value(intonation.mean_absolute_cents, sure.mean_absolute_cents if sure else None)


def _precision(analysis: TakeAnalysis) -> _Value | NotMeasurable:
    if isinstance(analysis.intonation, NotMeasurable):
        return analysis.intonation
    intonation = analysis.intonation.value
    sure = intonation.uncertainty
    return _Value(intonation.precision_cents, sure.precision_cents if sure else None)


def _mean_bpm(analysis: TakeAnalysis) -> _Value | NotMeasurable:
    if isinstance(analysis.tempo, NotMeasurable):
        return analysis.tempo
    return _Value(analysis.tempo.value.mean_bpm, analysis.tempo.value.mean_bpm_uncertainty)


def _steadiness(analysis: TakeAnalysis) -> _Value | NotMeasurable:
    if isinstance(analysis.tempo, NotMeasurable):
        return analysis.tempo
    tempo = analysis.tempo.value
    return _Value(tempo.steadiness_cv_percent, tempo.steadiness_uncertainty_percent)


def _dynamic_span(analysis: TakeAnalysis) -> _Value | NotMeasurable:
    if isinstance(analysis.dynamics, NotMeasurable):
        return analysis.dynamics
    span = analysis.dynamics.value.dynamic_span_db
    return span if isinstance(span, NotMeasurable) else _Value(span.value, None)


_READINGS = (
    _Reading("accuracy_cents", "cents", _accuracy),
    _Reading("mean_absolute_cents", "cents", _mean_absolute),
    _Reading("precision_cents", "cents", _precision),
    _Reading("mean_bpm", "BPM", _mean_bpm),
    _Reading("steadiness_cv_percent", "%", _steadiness),
    _Reading("dynamic_span_db", "dB", _dynamic_span),
)


def _matched_notes(
    notes_a: Sequence[JudgedNote], notes_b: Sequence[JudgedNote], alignment: Alignment
) -> list[tuple[int, int]]:
    """Order-keeping pairs of equal written pitch at aligned times."""
    start_a, start_b = (
        np.array([note.note.start_s for note in notes], dtype=np.float64)
        for notes in (notes_a, notes_b)
    )
    pitch_a, pitch_b = (
        np.array([np.nan if note.midi is None else note.midi for note in notes], dtype=np.float64)
        for notes in (notes_a, notes_b)
    )
    expected = map_time(alignment, start_a)
    return match_notes(expected, pitch_a, start_b, pitch_b, PAIRING_WINDOW_S)


def _pair_change(
    a_index: int, b_index: int, pieces_a: Sequence[JudgedNote], pieces_b: Sequence[JudgedNote]
) -> NotePair | None:
    """Change of one pair, if both deviations were measured."""
    a, b, midi = joint_deviation(pieces_a), joint_deviation(pieces_b), pieces_a[0].midi
    if a is None or b is None or midi is None:
        return None
    change = _difference(a, b)
    return NotePair(a_index, b_index, midi, change.deviation_cents, change.uncertainty_cents)


def _difference(a: Deviation, b: Deviation) -> Deviation:
    """B minus a; independent uncertainties add in squares."""
    return Deviation(
        b.deviation_cents - a.deviation_cents,
        math.hypot(a.uncertainty_cents, b.uncertainty_cents),
    )
