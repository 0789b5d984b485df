"""Pitch per frame, notes, vibrato and stated intervals, on held-out phrases.

A minute holds some two dozen phrases in four conditions. The long tables, with hundreds of
phrases and reference libraries beside, are printed by ``tests/benchmarks/accuracy_*.py``;
sampled instruments by ``tests/benchmarks/sampled_instruments.py``.
"""

from typing import Final

import numpy as np

from analysis.blocks import MonoSamples
from analysis.instruments import INSTRUMENTS
from analysis.notes import find_notes
from analysis.onsets import detect_onsets
from analysis.pitch import track_instrument
from analysis.results import Measured, Note, NoteKind, Vibrato
from app.services.accuracy.phrases import CONDITIONS, FIRST_SEED, instrument_of, phrase_of
from app.services.accuracy.scoring import (
    cents_off,
    f_measure,
    frame_errors,
    matched,
    pitches_of,
    starts_of,
)
from app.services.accuracy.table import Piece, Row, Section, Tally, quantile_row, share_row
from sample_audio.generator import render
from sample_audio.specs import NoteTruth, Phrase

PHRASES: Final = 24
PRAAT_MEDIAN_CENTS: Final = {"clean": 0.07, "room": 0.88, "20 dB": 0.79}
"""What praat's ``to_pitch_ac`` (praat-parselmouth 0.4) does on the phrases of this table,
at the same hop, floor and ceiling. It is no part of the program, so the figures stand
here; a test measures them again."""

_GENERATOR: Final = "generated phrase"
_SHORTEST_STEADY_S: Final = 0.1
_FEWEST_CYCLES: Final = 2.0
_VIBRATO_FROM_CYCLES: Final = 3.0


def measure_phrase(piece: Piece) -> Tally:
    """Measure one phrase in one condition and hold it against its truth."""
    condition, seed = piece
    phrase = render(phrase_of(seed, condition))
    found, tally = _measured(phrase, seed)
    score_notes(found, phrase.truth.notes, tally)
    return {f"{condition}: {name}": values for name, values in tally.items()}


def _measured(phrase: Phrase, seed: int) -> tuple[tuple[Note, ...], Tally]:
    player = INSTRUMENTS[instrument_of(seed)]
    samples, rate_hz = phrase.samples, phrase.sample_rate_hz
    rough, fine = track_instrument(samples, rate_hz, player)
    if not (isinstance(rough, Measured) and isinstance(fine, Measured)):
        return (), {"frames": []}
    onset_s, strength = detect_onsets(samples, rate_hz, track=rough.value)
    source = MonoSamples(samples, rate_hz)
    found = find_notes(rough.value, onset_s, strength, player, source=source, fine=fine.value)
    return found, {"frames": frame_errors(fine.value, phrase.truth)}


def score_notes(found: tuple[Note, ...], true: tuple[NoteTruth, ...], tally: Tally) -> None:
    """Add the errors of the found notes to a tally."""
    pitched = [note for note in found if isinstance(note.pitch, Measured)]
    found_s, found_hz = starts_of(pitched), pitches_of(pitched)
    true_s = starts_of(true)
    true_hz = np.array([note.centre_hz for note in true], dtype=np.float64)
    pairs = matched(true_s, found_s, true_hz, found_hz)
    by_onset = matched(true_s, found_s)
    tally["pairs"], tally["found"] = [float(len(pairs))], [float(len(pitched))]
    tally["true"] = [float(len(true))]
    tally["onset ms"] = [1000.0 * abs(float(true_s[t] - found_s[f])) for t, f in by_onset]
    off = cents_off(
        np.array([found_hz[f] for _, f in by_onset]), np.array([true_hz[t] for t, _ in by_onset])
    )
    tally["octave"] = [float(abs(abs(cents) - 1200.0) < 100.0) for cents in off]
    paired = {t for t, _ in pairs}
    tally["measured"] = [float(t in paired) for t in range(len(true))]
    for t, f in pairs:
        _score_pair(pitched[f], true[t], tally)


def _score_pair(note: Note, truth: NoteTruth, tally: Tally) -> None:
    if not isinstance(note.pitch, Measured):
        return
    pitch = note.pitch.value
    error = abs(1200.0 * float(np.log2(pitch.pitch_hz / truth.centre_hz)))
    steady_s = truth.steady_end_s - truth.steady_start_s
    cycles = steady_s * truth.vibrato_rate_hz if truth.vibrato_extent_cents else None
    is_long = steady_s >= _SHORTEST_STEADY_S if cycles is None else cycles >= _FEWEST_CYCLES
    tally.setdefault("centre" if is_long else "centre of short", []).append(error)
    tally.setdefault("in interval", []).append(float(error <= pitch.uncertainty_cents))
    tally.setdefault("as a note", []).append(float(note.kind is NoteKind.NOTE))
    vibrato = note.vibrato.value if isinstance(note.vibrato, Measured) else None
    if cycles is None:
        if isinstance(note.vibrato, Measured):
            tally.setdefault("false vibrato", []).append(float(vibrato is not None))
    elif cycles >= _VIBRATO_FROM_CYCLES:
        tally.setdefault("vibrato found", []).append(float(vibrato is not None))
        if isinstance(vibrato, Vibrato):
            rate_off = abs(vibrato.rate_hz - truth.vibrato_rate_hz)
            extent_off = abs(vibrato.extent_cents - truth.vibrato_extent_cents)
            tally.setdefault("vibrato rate", []).append(rate_off)
            tally.setdefault("vibrato extent", []).append(extent_off)


def pitch_rows(tally: Tally) -> tuple[Row, ...]:
    """Give the lines about pitch and vibrato."""

    def frames(condition: str, at_most: float) -> Row:
        label = f"Pitch per frame, {condition}: median error"
        return quantile_row(
            tally, f"{condition}: frames", 50, label, "cents",
            f"{_GENERATOR}; praat: {PRAAT_MEDIAN_CENTS[condition]}", at_most=at_most, digits=3,
        )  # fmt: skip

    def octaves(condition: str, at_most: float) -> Row:
        label = f"Octave errors, {condition}"
        return share_row(
            tally, f"{condition}: octave", label, _GENERATOR, at_most=at_most, digits=2
        )

    return (
        frames("clean", round(PRAAT_MEDIAN_CENTS["clean"] + 0.05, 3)),
        frames("room", 0.3),
        frames("20 dB", 1.0),
        octaves("clean", 0.0),
        octaves("30 dB", 0.0),
        octaves("20 dB", 0.1),
        quantile_row(
            tally, "clean: vibrato rate", 95, "Vibrato rate, 3 cycles up: 95th percentile", "Hz",
            _GENERATOR, at_most=0.2,
        ),
        quantile_row(
            tally, "clean: vibrato extent", 95, "Vibrato extent, 3 cycles up: 95th percentile",
            "cents", _GENERATOR, at_most=3.0,
        ),
        share_row(
            tally, "clean: vibrato found", "Vibrato of 6 to 40 cents found, 3 cycles up", _GENERATOR
        ),
        share_row(tally, "clean: false vibrato", "Vibrato found where there is none", _GENERATOR),
    )  # fmt: skip


def note_rows(tally: Tally) -> tuple[Row, ...]:
    """Give the lines about notes and their stated intervals."""

    def f1(condition: str, at_least: float) -> Row:
        pairs, found, true = (
            int(sum(tally.get(f"{condition}: {name}", []))) for name in ("pairs", "found", "true")
        )
        return Row(
            f"Notes found, {condition}: F-measure (50 ms, 50 cents)", "", _GENERATOR,
            f_measure(pairs, found, true), at_least=at_least, count=true, digits=3,
        )  # fmt: skip

    def onsets(condition: str, at_most: float) -> Row:
        label = f"Note onsets, {condition}: median error"
        return quantile_row(
            tally, f"{condition}: onset ms", 50, label, "ms", _GENERATOR, at_most=at_most
        )

    def coverage(condition: str) -> Row:
        label = f"Truth inside the stated 95 % interval, {condition}"
        return share_row(
            tally, f"{condition}: in interval", label, _GENERATOR, at_least=92.0, at_most=98.0
        )

    return (
        f1("clean", 0.98),
        f1("20 dB", 0.95),
        share_row(tally, "clean: measured", "Share of the notes that was measured", _GENERATOR),
        quantile_row(
            tally, "clean: centre", 95, "Note centre, clean: 95th percentile", "cents",
            _GENERATOR, at_most=1.5,
        ),
        quantile_row(
            tally, "clean: centre of short", 95, "Centre of shorter notes: 95th percentile",
            "cents", _GENERATOR,
        ),
        onsets("clean", 5.0),
        onsets("20 dB", 10.0),
        *(coverage(condition) for condition in CONDITIONS),
    )  # fmt: skip


def _rows(tally: Tally) -> tuple[Row, ...]:
    return (*pitch_rows(tally), *note_rows(tally))


def section(phrases: int = PHRASES) -> Section:
    """Give the section, on a number of phrases."""
    seeds = range(FIRST_SEED, FIRST_SEED + phrases)
    pieces = tuple((condition, seed) for condition in CONDITIONS for seed in seeds)
    return Section("Pitch and notes", pieces, measure_phrase, _rows)
