"""Notes against their targets, the estimated A, and a player who goes sharp.

A player's chance hides the A from anybody, so only many takes tell whether the interval
of an estimated A is honest. Most of them are drawn as pitches with a known A and scatter;
the sounded phrases show that nothing is lost on the way from sound to pitches.
"""

from dataclasses import replace
from typing import Final

import numpy as np

from analysis.results import Intonation, JudgedNote, Measured
from analysis.take import TakeSettings, analyse_take
from analysis.tuning import Temperament, estimate_reference_a
from analysis.units import note_name
from app.services.accuracy.phrases import FIRST_SEED, phrase_of
from app.services.accuracy.scoring import matched
from app.services.accuracy.table import Piece, Row, Section, Tally, quantile_row, share_row
from sample_audio.generator import render
from sample_audio.specs import NoteSpec, NoteTruth, PhraseSpec
from sample_audio.specs import Temperament as GeneratorTemperament

_DRAWN: Final = 400
_SOUNDED: Final = 8
_WORDS: Final[dict[str, GeneratorTemperament]] = {
    "equal": "equal", "pythagorean": "pythagorean", "just": "just",
}  # fmt: skip
_PHRASES_A_TEMPERAMENT: Final = 4
_DRIFTS_CENTS_PER_MIN: Final = (-20.0, 0.0, 15.0, 30.0)
_DRIFTING_NOTES: Final = 50
_SCATTER_CENTS: Final = 5.0


def measure_targets(piece: Piece) -> Tally:
    """Measure one phrase against its targets, or estimate the A of many takes."""
    kind, seed = piece
    if kind == "drawn":
        return _drawn(seed)
    if kind == "sounded":
        return _sounded(seed)
    return _going_sharp(seed) if kind == "drift" else _in_temperament(kind, seed)


def _drawn(seed: int) -> Tally:
    held: list[float] = []
    for number in range(_DRAWN):
        rng = np.random.default_rng([seed, number])
        count = int(rng.integers(12, 60))
        offset = float(rng.uniform(-35.0, 35.0))
        scatter = float(rng.uniform(4.0, 14.0))
        midi = rng.integers(50, 86, count)
        cents = 100.0 * (midi - 69) + offset + rng.normal(0.0, scatter, count)
        found = estimate_reference_a(440.0 * 2.0 ** (cents / 1200.0), np.full(count, 1.0))
        if found is not None:
            error = abs(1200.0 * float(np.log2(found.reference_a_hz / 440.0)) - offset)
            held.append(float(error <= found.uncertainty_cents))
    return {"drawn held": held}


def _analysed(
    spec: PhraseSpec, settings: TakeSettings
) -> tuple[tuple[JudgedNote, ...], Intonation | None, tuple[NoteTruth, ...]]:
    phrase = render(spec)
    found = analyse_take(phrase.samples, phrase.sample_rate_hz, settings)
    whole = found.intonation.value if isinstance(found.intonation, Measured) else None
    return found.notes, whole, phrase.truth.notes


def _sounded(seed: int) -> Tally:
    spec = phrase_of(seed, "clean", count=20)
    settings = TakeSettings(instrument=spec.instrument, reference_a_hz="auto")
    _found, whole, true = _analysed(spec, settings)
    if whole is None:
        return {}
    # What was played, chance included: the mean deviation of the phrase belongs to its A.
    played = float(np.mean([note.deviation_cents for note in true]))
    true_hz = spec.reference_a_hz * 2.0 ** (played / 1200.0)
    return {"sounded off": [abs(1200.0 * float(np.log2(whole.reference_a_hz / true_hz)))]}


def _in_temperament(temperament: str, seed: int) -> Tally:
    """Deviations from equal, Pythagorean or just targets, the A entered."""
    tonic = int(np.random.default_rng([seed, 45]).integers(12))
    spec = replace(phrase_of(seed, "clean"), temperament=_WORDS[temperament], tonic=tonic)
    settings = TakeSettings(
        instrument=spec.instrument,
        reference_a_hz=spec.reference_a_hz,
        temperament=Temperament(temperament),
        tonic=note_name(60 + tonic)[:-1],
    )
    found, _whole, true = _analysed(spec, settings)
    pairs = matched(np.array([n.start_s for n in true]), np.array([j.note.start_s for j in found]))
    errors = []
    for t, f in pairs:
        judged = found[f]
        # An open string is held against its pure fifth instead, which is another target.
        if isinstance(judged.deviation, Measured) and not judged.is_open_string:
            errors.append(abs(judged.deviation.value.deviation_cents - true[t].deviation_cents))
    return {"deviation": errors}


def _going_sharp(number: int) -> Tally:
    """Measure a player whose pitch level moves by known cents per minute."""
    rng = np.random.default_rng([FIRST_SEED, 46, number])
    drift = _DRIFTS_CENTS_PER_MIN[number]
    steps = rng.choice((-3, -2, -1, 1, 2, 3), _DRIFTING_NOTES)
    midi = 57 + np.abs((np.cumsum(steps) + 9) % 36 - 18)
    at_s = np.arange(_DRIFTING_NOTES) - (_DRIFTING_NOTES - 1) / 2.0
    cents = drift * at_s / 60.0 + _SCATTER_CENTS * rng.standard_normal(_DRIFTING_NOTES)
    notes = tuple(
        NoteSpec(float(m), 1.0, deviation_cents=float(c)) for m, c in zip(midi, cents, strict=True)
    )
    spec = PhraseSpec(notes, tempo=60.0, seed=FIRST_SEED + number)
    _found, whole, _true = _analysed(spec, TakeSettings())
    if whole is None or not isinstance(whole.drift, Measured):
        return {"drift held": [0.0]}
    found = whole.drift.value
    played = float(np.polyfit(at_s / 60.0, cents, 1)[0])
    return {
        "drift held": [float(abs(found.cents_per_min - drift) <= found.uncertainty_cents_per_min)],
        "drift off": [abs(found.cents_per_min - played)],
    }


def _rows(tally: Tally) -> tuple[Row, ...]:
    return (
        quantile_row(
            tally, "deviation", 95, "Deviation from target: 95th percentile", "cents",
            "generated, three temperaments", at_most=1.5,
        ),
        share_row(
            tally, "drawn held", "Estimated A: truth inside its 95 % interval",
            "drawn notes of a known A", at_least=92.0, at_most=98.0,
        ),
        quantile_row(
            tally, "sounded off", 50, "Estimated A against the mean played: median",
            "cents", "generated phrase",
        ),
        quantile_row(
            tally, "drift off", 100, "Going sharp or flat: largest error", "cents/min",
            "generated, -20 to 30 cents/min",
        ),
        share_row(
            tally, "drift held", "Going sharp or flat: truth inside its interval",
            "the same, 5 cents of chance",
        ),
    )  # fmt: skip


def section() -> Section:
    """Give the section."""
    kinds = [
        (temperament, FIRST_SEED + 430 + 10 * number + k)
        for number, temperament in enumerate(_WORDS)
        for k in range(_PHRASES_A_TEMPERAMENT)
    ]
    kinds += [("sounded", FIRST_SEED + 400 + k) for k in range(_SOUNDED)]
    kinds += [("drift", number) for number in range(len(_DRIFTS_CENTS_PER_MIN))]
    return Section("Intonation", (("drawn", FIRST_SEED), *kinds), measure_targets, _rows)
