"""A wide vibrato must not be flattened, however low the string."""

from typing import Final

from analysis.results import Measured, Vibrato
from analysis.take import TakeSettings, analyse_take
from app.services.accuracy.phrases import FIRST_SEED, INSTRUMENTS
from app.services.accuracy.table import Piece, Row, Section, Tally, quantile_row
from sample_audio.generator import render
from sample_audio.specs import NoteSpec, PhraseSpec

EXTENT_CENTS: Final = 30.0
RATE_HZ: Final = 6.0
# C2 and what lies above it, on the instrument that plays it.
_NOTES: Final = {
    "violin": (55, 62, 69, 81, 93),
    "viola": (48, 57, 67),
    "cello": (36, 43, 50, 62),
    "double bass": (36, 41, 50),
}


def measure_vibrato(piece: Piece) -> Tally:
    """Read the extent of a known wide vibrato on several notes of one instrument."""
    instrument = INSTRUMENTS[piece[1] % len(INSTRUMENTS)]
    notes = tuple(
        NoteSpec(midi, 2.0, vibrato_rate_hz=RATE_HZ, vibrato_extent_cents=EXTENT_CENTS)
        for midi in _NOTES[instrument]
    )
    phrase = render(PhraseSpec(notes, tempo=80.0, instrument=instrument, seed=FIRST_SEED))
    found = analyse_take(
        phrase.samples, phrase.sample_rate_hz, TakeSettings(instrument=instrument)
    ).notes
    extents = []
    for true in phrase.truth.notes:
        over = [j.note for j in found if j.note.start_s < true.start_s + 0.5 < j.note.end_s]
        vibrato = over[0].vibrato.value if over and isinstance(over[0].vibrato, Measured) else None
        extents.append(vibrato.extent_cents if isinstance(vibrato, Vibrato) else 0.0)
    return {"extent": extents}


def _rows(tally: Tally) -> tuple[Row, ...]:
    source = f"generated, ±{EXTENT_CENTS:g} cents at {RATE_HZ:g} Hz"
    return (
        quantile_row(
            tally, "extent", 0, "Vibrato from C2 up: smallest extent read", "cents", source,
            at_least=28.0,
        ),
        quantile_row(
            tally, "extent", 100, "Vibrato from C2 up: largest extent read", "cents", source,
            at_most=32.0,
        ),
    )  # fmt: skip


def section() -> Section:
    """Give the section: one piece an instrument."""
    pieces = tuple(("wide vibrato", k) for k in range(len(INSTRUMENTS)))
    return Section("Wide vibrato", pieces, measure_vibrato, _rows)
