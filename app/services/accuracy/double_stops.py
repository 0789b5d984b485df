"""Two strings at once: recognised, both pitches, and no false alarms on one string."""

from typing import Final

import numpy as np

from analysis.results import JudgedNote, Measured, NoteKind, NotMeasurable, Reason
from analysis.take import TakeSettings, analyse_take
from app.services.accuracy.phrases import FIRST_SEED, phrase_of
from app.services.accuracy.table import Piece, Row, Section, Tally, share_row
from sample_audio.generator import render
from sample_audio.specs import Instrument, NoteSpec, NoteTruth, PhraseSpec

_PLAYERS: Final[tuple[Instrument, ...]] = ("violin", "viola", "cello")
_LOWEST: Final = {"violin": 55, "viola": 48, "cello": 36}
# Thirds to sevenths; unisons and octaves are a case of their own.
_INTERVALS: Final = (3, 4, 5, 6, 7, 8, 9, 10)
_ROWS: Final = 6
_PITCH_WITHIN_CENTS: Final = 5.0
_RIGHT_WITHIN_CENTS: Final = 50.0
_REVERBERANT: Final = 8


def measure_row(piece: Piece) -> Tally:
    """Measure one row of double stops, or one line in a reverberant room."""
    kind, seed = piece
    return _alone(seed) if kind == "one string" else _together(seed)


def _together(seed: int) -> Tally:
    rng = np.random.default_rng([seed, 43])
    instrument = _PLAYERS[seed % len(_PLAYERS)]
    notes = []
    for interval in rng.permutation(_INTERVALS):
        low = _LOWEST[instrument] + int(rng.integers(0, 20))
        notes.append(
            NoteSpec(
                low,
                float(rng.uniform(1.0, 2.0)),
                float(rng.normal(0.0, 6.0)),
                second_midi=low + int(interval),
                second_deviation_cents=float(rng.normal(0.0, 6.0)),
            )
        )
    spec = PhraseSpec(tuple(notes), tempo=84.0, instrument=instrument, seed=seed, level_dbfs=-24.0)
    phrase = render(spec)
    settings = TakeSettings(instrument=instrument)
    found = analyse_take(phrase.samples, phrase.sample_rate_hz, settings).notes
    tally: Tally = {"recognised": [], "both": [], "wrong": []}
    for true in phrase.truth.notes:
        _score(_over(found, true), true, tally)
    return tally


def _over(found: tuple[JudgedNote, ...], true: NoteTruth) -> list[JudgedNote]:
    """Found notes that sound for a fifth of the true one, the longest first."""
    length_s = true.end_s - true.start_s
    shared = [(min(j.note.end_s, true.end_s) - max(j.note.start_s, true.start_s), j) for j in found]
    over = [(s, j) for s, j in shared if s >= 0.2 * length_s]
    return [j for _, j in sorted(over, key=lambda pair: -pair[0])]


def _score(over: list[JudgedNote], true: NoteTruth, tally: Tally) -> None:
    tally["recognised"].append(float(bool(over) and all(_is_double(j) for j in over)))
    tally["both"].append(float(bool(over) and _has_both(over[0], true)))
    tally["wrong"].append(float(any(_is_confidently_wrong(j, true) for j in over)))


def _is_double(judged: JudgedNote) -> bool:
    pitch = judged.note.pitch
    refused = isinstance(pitch, NotMeasurable) and pitch.reason is Reason.TWO_NOTES_SOUND
    return judged.note.kind is NoteKind.DOUBLE_STOP or refused


def _true_hz(true: NoteTruth) -> tuple[float, float]:
    if true.second_centre_hz is None:
        raise ValueError("not a double stop")
    return true.centre_hz, true.second_centre_hz


def _cents(found_hz: float, true_hz: float) -> float:
    return abs(1200.0 * float(np.log2(found_hz / true_hz)))


def _has_both(judged: JudgedNote, true: NoteTruth) -> bool:
    note = judged.note
    if not isinstance(note.pitch, Measured) or note.second_pitch_hz is None:
        return False
    found = sorted((note.pitch.value.pitch_hz, note.second_pitch_hz))
    pairs = zip(found, sorted(_true_hz(true)), strict=True)
    return all(_cents(f, t) <= _PITCH_WITHIN_CENTS for f, t in pairs)


def _is_confidently_wrong(judged: JudgedNote, true: NoteTruth) -> bool:
    note = judged.note
    if note.kind is not NoteKind.NOTE or not isinstance(note.pitch, Measured):
        return False
    pitch = note.pitch.value
    off = min(_cents(pitch.pitch_hz, hz) for hz in _true_hz(true))
    return off > max(_RIGHT_WITHIN_CENTS, pitch.uncertainty_cents)


def _alone(seed: int) -> Tally:
    spec = phrase_of(seed, "room")
    phrase = render(spec)
    settings = TakeSettings(instrument=spec.instrument)
    found = analyse_take(phrase.samples, phrase.sample_rate_hz, settings).notes
    return {"false alarm": [float(_is_double(j)) for j in found]}


def _rows(tally: Tally) -> tuple[Row, ...]:
    source = "generated double stops, thirds to sevenths"
    return (
        share_row(tally, "recognised", "Double stops recognised", source, at_least=95.0),
        share_row(tally, "both", "Both pitches within 5 cents", source, at_least=80.0),
        share_row(tally, "wrong", "Reported as one confident wrong note", source, at_most=0.0),
        share_row(
            tally, "false alarm", "False alarms on one string in a room",
            "generated phrase in a room", at_most=2.0,
        ),
    )  # fmt: skip


def section(rows: int = _ROWS) -> Section:
    """Give the section, on a number of rows of eight double stops."""
    doubles = tuple(("two strings", FIRST_SEED + 200 + k) for k in range(rows))
    singles = tuple(("one string", FIRST_SEED + 300 + k) for k in range(_REVERBERANT))
    return Section("Double stops", (*doubles, *singles), measure_row, _rows)
