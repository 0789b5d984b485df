"""Two strings at once: recognised, both pitches, and no false alarms on one string."""

from typing import Final

import numpy as np

from analysis.results import FloatArray, JudgedNote, Measured, NoteKind, NotMeasurable, Reason
from analysis.take import TakeSettings, analyse_take
from app.services.accuracy.phrases import FIRST_SEED, phrase_of
from app.services.accuracy.table import Piece, Row, Section, Tally, share_row
from sample_audio.generator import place_phrase, render
from sample_audio.specs import Instrument, NoteSpec, NoteTruth, PhraseSpec

_PLAYERS: Final[tuple[Instrument, ...]] = ("violin", "viola", "cello")
_LOWEST: Final = {"violin": 55, "viola": 48, "cello": 36}
_OPEN: Final = {
    "violin": (55, 62, 69, 76),
    "viola": (48, 55, 62, 69),
    "cello": (36, 43, 50, 57),
    "double bass": (28, 33, 38, 43),
}
_INTERVALS: Final = (3, 4, 5, 6, 7, 8, 9, 10)
# Their partials fall together, so they are a case of their own.
_BLENDING: Final = (0, 12, 12, 0, 12, 0)
_PITCH_WITHIN_CENTS: Final = 5.0
_RIGHT_WITHIN_CENTS: Final = 50.0
_RINGING_DB: Final = -16.0


def measure_row(piece: Piece) -> Tally:
    """Measure a row of double stops, or a line on one string at a time."""
    kind, seed = piece
    if kind in ("dry", "room", "blending"):
        return _together(kind, seed)
    return _alone(kind, seed)


def _together(kind: str, seed: int) -> Tally:
    rng = np.random.default_rng([seed, 43])
    instrument = _PLAYERS[seed % len(_PLAYERS)]
    notes = []
    for interval in _BLENDING if kind == "blending" else rng.permutation(_INTERVALS):
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
    spec = PhraseSpec(
        tuple(notes),
        tempo=84.0,
        instrument=instrument,
        level_dbfs=-24.0,
        snr_db=30.0 if kind == "room" else None,
        reverb_time_s=0.5 if kind == "room" else None,
        seed=seed,
    )
    phrase = render(spec)
    settings = TakeSettings(instrument=instrument)
    found = analyse_take(phrase.samples, phrase.sample_rate_hz, settings).notes
    tally: Tally = {}
    for true in phrase.truth.notes:
        over = _over(found, true)
        scores = {
            "recognised": bool(over) and all(_is_double(j) for j in over),
            "both": bool(over) and _has_both(over[0], true),
            "wrong": any(_is_confidently_wrong(j, true) for j in over),
        }
        for name, is_so in scores.items():
            tally.setdefault(f"{kind} {name}", []).append(float(is_so))
    return tally


def _over(found: tuple[JudgedNote, ...], true: NoteTruth) -> list[JudgedNote]:
    """Found notes that sound for a fifth of the true one, the longest first."""
    length_s = true.end_s - true.start_s
    shared = [(min(j.note.end_s, true.end_s) - max(j.note.start_s, true.start_s), j) for j in found]
    over = [(s, j) for s, j in shared if s >= 0.2 * length_s]
    return [j for _, j in sorted(over, key=lambda pair: -pair[0])]


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


def _alone(kind: str, seed: int) -> Tally:
    spec = phrase_of(seed, "room" if kind == "reverberant" else "clean")
    phrase = render(spec)
    samples = phrase.samples
    if kind == "ringing":
        samples = samples + _ringing_strings(spec, samples.size)
    settings = TakeSettings(instrument=spec.instrument)
    found = analyse_take(samples, phrase.sample_rate_hz, settings).notes
    return {f"{kind} false alarm": [float(_is_double(j)) for j in found]}


def _ringing_strings(spec: PhraseSpec, count: int) -> FloatArray:
    """Open strings that are set ringing softly by the notes of a line, (count,)."""
    rng = np.random.default_rng([spec.seed, 44])
    strings = _OPEN[spec.instrument]
    out = np.zeros(count)
    for number, note in enumerate(place_phrase(spec)):
        if number % 2:
            continue
        midi = int(rng.choice([s for s in strings if s != round(note.midi)]))
        ring = render(
            PhraseSpec(
                (NoteSpec(midi, 1.5, articulation="pizzicato"),),
                tempo=60.0,
                instrument=spec.instrument,
                level_dbfs=spec.level_dbfs + note.level_db + _RINGING_DB,
                sample_rate_hz=spec.sample_rate_hz,
                lead_in_s=0.0,
                bow_noise_db=None,
                seed=spec.seed + number,
            )
        ).samples
        first = int(note.start_s * spec.sample_rate_hz)
        length = min(ring.size, count - first)
        out[first : first + length] += ring[:length]
    return out


def _rows(tally: Tally) -> tuple[Row, ...]:
    rows = []
    for kind, words in (
        ("dry", "generated, thirds to sevenths"),
        ("room", "the same, room, 30 dB"),
    ):
        place = "" if kind == "dry" else ", in a room"
        rows += [
            share_row(
                tally, f"{kind} recognised", f"Double stops recognised{place}", words, at_least=95.0
            ),
            share_row(
                tally, f"{kind} both", f"Both pitches within 5 cents{place}", words, at_least=80.0
            ),
            share_row(
                tally, f"{kind} wrong", f"One confident wrong note instead{place}", words,
                at_most=0.0,
            ),
        ]  # fmt: skip
    blending = "generated unisons and octaves"
    return (
        *rows,
        share_row(tally, "blending recognised", "Unisons and octaves recognised", blending),
        share_row(
            tally, "blending both", "Unisons and octaves: both within 5 cents", blending
        ),
        share_row(
            tally, "blending wrong", "Unisons and octaves: one confident wrong note", blending,
            at_most=0.0,
        ),
        share_row(
            tally, "reverberant false alarm", "False alarms on one string in a room",
            "generated phrase in a room", at_most=2.0,
        ),
        share_row(
            tally, "ringing false alarm", "False alarms while open strings ring",
            "generated, strings 16 dB below", at_most=2.0,
        ),
    )  # fmt: skip


def section() -> Section:
    """Give the section: rows of double stops, and lines without any."""
    pieces = [
        (kind, FIRST_SEED + first + k)
        for kind, first, count in (
            ("dry", 200, 5), ("room", 220, 4), ("blending", 240, 3),
            ("reverberant", 300, 8), ("ringing", 320, 6),
        )
        for k in range(count)
    ]  # fmt: skip
    return Section("Double stops", tuple(pieces), measure_row, _rows)
