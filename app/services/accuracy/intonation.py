"""The A estimated from a take: its interval must hold the A that was tuned to.

A player's chance hides the A from anybody, so only many takes tell whether the interval
is honest. Most are drawn as pitches with a known A and scatter; the sounded phrases show
that nothing is lost on the way from sound to pitches.
"""

from typing import Final

import numpy as np

from analysis.results import Measured
from analysis.take import TakeSettings, analyse_take
from analysis.tuning import estimate_reference_a
from app.services.accuracy.phrases import FIRST_SEED, phrase_of
from app.services.accuracy.table import Piece, Row, Section, Tally, quantile_row, share_row
from sample_audio.generator import render

_DRAWN: Final = 400
_SOUNDED: Final = 8


def measure_reference(piece: Piece) -> Tally:
    """Estimate the A of many drawn takes, or of one that sounds."""
    kind, seed = piece
    return _drawn(seed) if kind == "drawn" else _sounded(seed)


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


def _sounded(seed: int) -> Tally:
    spec = phrase_of(seed, "clean", count=20)
    phrase = render(spec)
    settings = TakeSettings(instrument=spec.instrument, reference_a_hz="auto")
    result = analyse_take(phrase.samples, phrase.sample_rate_hz, settings).intonation
    if not isinstance(result, Measured):
        return {"sounded off": []}
    # What was played, chance included: the mean deviation of the phrase belongs to its A.
    played = float(np.mean([note.deviation_cents for note in phrase.truth.notes]))
    true_hz = spec.reference_a_hz * 2.0 ** (played / 1200.0)
    return {"sounded off": [abs(1200.0 * float(np.log2(result.value.reference_a_hz / true_hz)))]}


def _rows(tally: Tally) -> tuple[Row, ...]:
    return (
        share_row(
            tally, "drawn held", "Estimated A: truth inside its 95 % interval",
            "drawn notes of a known A", at_least=92.0, at_most=98.0,
        ),
        quantile_row(
            tally, "sounded off", 50, "Estimated A against the mean of what was played: median",
            "cents", "generated phrase",
        ),
    )  # fmt: skip


def section() -> Section:
    """Give the section."""
    sounded = tuple(("sounded", FIRST_SEED + 400 + k) for k in range(_SOUNDED))
    return Section("Reference A", (("drawn", FIRST_SEED), *sounded), measure_reference, _rows)
