"""Equal moments of two takes at other tempos: how far off at the note onsets."""

from typing import Final

import numpy as np

from analysis.alignment import align, map_time
from analysis.results import Measured
from analysis.take import TakeSettings, analyse_take
from app.services.accuracy.phrases import FIRST_SEED
from app.services.accuracy.table import Piece, Row, Section, Tally, quantile_row, share_row
from sample_audio.generator import render
from sample_audio.specs import Instrument, NoteSpec, Phrase, PhraseSpec

RATIOS: Final = (0.55, 0.8, 1.25, 1.8)
_PLAYERS: Final[tuple[Instrument, ...]] = ("violin", "viola", "cello")
_LOWEST: Final = {"violin": 57, "viola": 50, "cello": 40}
_NOTES: Final = 30


def measure_pair(piece: Piece) -> Tally:
    """Align two takes of one passage and hold the map against both truths."""
    seed = FIRST_SEED + 900 + piece[1]
    instrument = _PLAYERS[piece[1] % len(_PLAYERS)]
    midi, lengths = _tune(seed, _LOWEST[instrument])
    a = _take(instrument, midi, lengths, seed, 1.0)
    b = _take(instrument, midi, lengths, seed + 50, RATIOS[piece[1] % len(RATIOS)])
    settings = TakeSettings(instrument=instrument)
    found_a, found_b = (analyse_take(t.samples, t.sample_rate_hz, settings) for t in (a, b))
    result = align(
        a.samples,
        a.sample_rate_hz,
        b.samples,
        b.sample_rate_hz,
        notes_a=found_a.notes,
        notes_b=found_b.notes,
    )
    if not isinstance(result, Measured):
        return {"aligned": [0.0]}
    start_a, start_b = (np.array([n.start_s for n in t.truth.notes]) for t in (a, b))
    off_s = np.abs(map_time(result.value, start_a) - start_b)
    return {"aligned": [1.0], "onsets": [float(1000.0 * e) for e in off_s]}


def _tune(seed: int, lowest: int) -> tuple[list[int], list[float]]:
    rng = np.random.default_rng([seed, 53])
    steps = rng.choice((-4, -3, -2, -1, 0, 1, 2, 3, 4), _NOTES)
    midi = lowest + np.abs((np.cumsum(steps) + 6) % 44 - 22)
    return midi.tolist(), rng.choice((0.25, 0.5, 0.5, 1.0, 1.0, 2.0), _NOTES).tolist()


def _take(
    instrument: Instrument, midi: list[int], lengths: list[float], seed: int, ratio: float
) -> Phrase:
    rng = np.random.default_rng([seed, 54])
    points = np.arange(0.0, sum(lengths) + 8.0, 4.0)
    curve = 84.0 * ratio * np.exp(0.1 * rng.standard_normal(points.size))
    notes = tuple(
        NoteSpec(
            m,
            beats,
            deviation_cents=float(rng.normal(0.0, 8.0)),
            level_db=float(rng.uniform(-8.0, 0.0)),
            attack_s=float(rng.uniform(0.015, 0.06)),
        )
        for m, beats in zip(midi, lengths, strict=True)
    )
    spec = PhraseSpec(
        notes,
        tempo=tuple((float(b), float(v)) for b, v in zip(points, curve, strict=True)),
        instrument=instrument,
        lead_in_s=float(rng.uniform(0.3, 2.0)),
        reverb_time_s=0.5,
        snr_db=30.0,
        level_dbfs=-24.0,
        seed=seed,
    )
    return render(spec)


def _rows(tally: Tally) -> tuple[Row, ...]:
    source = "generated pairs, room, 30 dB, rubato"
    return (
        share_row(tally, "aligned", "Takes of one passage aligned", source, at_least=100.0),
        quantile_row(
            tally, "onsets", 50, "Equal moments at note onsets: median error", "ms", source,
            at_most=10.0,
        ),
        quantile_row(
            tally, "onsets", 95, "Equal moments at note onsets: 95th percentile", "ms", source,
            at_most=40.0,
        ),
    )  # fmt: skip


def section() -> Section:
    """Give the section: one piece a pair of takes."""
    return Section("Alignment", tuple(("pair", k) for k in range(len(RATIOS))), measure_pair, _rows)
