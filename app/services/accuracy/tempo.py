"""Tempo from sound: perfect grids, a known drift, a known rubato, and no false answer."""

from collections.abc import Sequence
from typing import Final

import numpy as np

from analysis.instruments import INSTRUMENTS
from analysis.onsets import detect_onsets
from analysis.pitch import track_pitch
from analysis.results import FloatArray, Measured, NotMeasurable, Tempo
from analysis.tempo import measure_tempo
from app.services.accuracy.phrases import FIRST_SEED
from app.services.accuracy.table import Piece, Row, Section, Tally, quantile_row, share_row
from sample_audio.generator import place_phrase, render
from sample_audio.specs import NoteSpec, Phrase, PhraseSpec

GRID_BPM: Final = (40, 63, 88, 120, 160, 208)
_GRID_NOTES: Final = 24
_DRIFTS: Final = (-12, 12)
_DRIFT_BPM: Final = 90
_RUBATO_DEPTH: Final = 0.1
_RUBATOS: Final = 2
_UNANCHORED: Final = 100
_ONSET_SCATTER_S: Final = 0.005
_LEVEL_TOLERANCE: Final = 0.08  # mir_eval's tempo tolerance; half and double lie far outside
_LOCAL_BEATS: Final = 4
_RHYTHMS: Final = ((1.0,), (0.5, 0.5), (0.25,) * 4, (1.5, 0.5), (2.0,), (0.75, 0.25))


def measure_pulse(piece: Piece) -> Tally:
    """Measure one phrase; what is read from it depends on the case."""
    case, number = piece
    if case == "drift":
        return _drift(number)
    if case == "rubato":
        return _rubato(number)
    return _unanchored() if case == "unanchored" else _grid(case, number)


def _melody(
    seed: int, lengths: Sequence[float], attacks_s: Sequence[float]
) -> tuple[NoteSpec, ...]:
    rng = np.random.default_rng([seed, 47])
    steps = rng.choice((-4, -3, -2, -1, 1, 2, 3, 4), len(lengths))
    midi = 58 + np.abs((np.cumsum(steps) + 10) % 48 - 24)
    return tuple(
        NoteSpec(float(m), beats, attack_s=attack_s, level_db=float(rng.uniform(-5.0, 0.0)))
        for m, beats, attack_s in zip(midi, lengths, attacks_s, strict=True)
    )


def _rhythm(rng: np.random.Generator, beats: float) -> list[float]:
    lengths: list[float] = []
    while sum(lengths) < beats:
        lengths += _RHYTHMS[int(rng.integers(len(_RHYTHMS)))]
    return lengths


def _pulse_of(phrase: Phrase, pulse_bpm: float) -> Measured[Tempo] | NotMeasurable:
    violin = INSTRUMENTS["violin"]
    track = track_pitch(
        phrase.samples,
        phrase.sample_rate_hz,
        floor_hz=violin.floor_hz,
        ceiling_hz=violin.ceiling_hz,
        window_periods=violin.window_periods,
    )
    onset_s, strength = detect_onsets(
        phrase.samples,
        phrase.sample_rate_hz,
        track=track.value if isinstance(track, Measured) else None,
    )
    duration_s = phrase.samples.size / phrase.sample_rate_hz
    return measure_tempo(onset_s, strength, duration_s, pulse_bpm=pulse_bpm)


def _grid(case: str, bpm: int) -> Tally:
    seed = FIRST_SEED + 500 + bpm
    rng = np.random.default_rng([seed, 48])
    attacks = rng.uniform(0.01, 0.1, _GRID_NOTES) if case == "soft" else np.full(_GRID_NOTES, 0.01)
    notes = _melody(seed, [1.0] * _GRID_NOTES, attacks.tolist())
    phrase = render(PhraseSpec(notes, tempo=float(bpm), seed=seed))
    result = _pulse_of(phrase, bpm)
    if not isinstance(result, Measured):
        return {"answered": [0.0]}
    truth = phrase.truth.beat_s[:-1]
    off_s = _nearest(result.value.beat_s, truth) - truth
    return {
        "answered": [1.0],
        f"{case} tempo": [100.0 * abs(result.value.mean_bpm / bpm - 1.0)],
        f"{case} beats": [float(1000.0 * e) for e in np.abs(off_s)],
        f"{case} spread": [1000.0 * float(np.std(np.diff(off_s), ddof=1))],
    }


def _nearest(found_s: FloatArray, true_s: FloatArray) -> FloatArray:
    nearest = np.argmin(np.abs(found_s - true_s[:, np.newaxis]), axis=1)
    return np.asarray(found_s[nearest])


def _drift(bpm_per_min: int) -> Tally:
    rng = np.random.default_rng([FIRST_SEED, 49, bpm_per_min + 100])
    lengths = _rhythm(rng, 48.0)
    notes = _melody(FIRST_SEED + 600, lengths, rng.uniform(0.015, 0.08, len(lengths)).tolist())
    spec = PhraseSpec(
        notes, tempo=float(_DRIFT_BPM), tempo_drift_bpm_per_min=float(bpm_per_min), seed=FIRST_SEED
    )
    result = _pulse_of(render(spec), _DRIFT_BPM)
    if not isinstance(result, Measured):
        return {"answered": [0.0]}
    off = abs(result.value.drift_bpm_per_min / bpm_per_min - 1.0)
    return {"answered": [1.0], "drift": [100.0 * off]}


def _rubato_spec(seed: int, depth: float, bpm: float) -> PhraseSpec:
    rng = np.random.default_rng([seed, 51])
    lengths = _rhythm(rng, 40.0)
    points = np.arange(0.0, 48.0, 2.0)
    turn, begun = float(rng.uniform(10.0, 24.0)), float(rng.uniform(0.0, 6.0))
    curve = bpm * np.exp(depth * np.sin(2.0 * np.pi * points / turn + begun))
    return PhraseSpec(
        _melody(seed, lengths, rng.uniform(0.015, 0.08, len(lengths)).tolist()),
        tempo=tuple((float(b), float(v)) for b, v in zip(points, curve, strict=True)),
        seed=seed,
    )


def _rubato(number: int) -> Tally:
    bpm = 72.0 + 30.0 * number
    phrase = render(_rubato_spec(FIRST_SEED + 700 + number, _RUBATO_DEPTH, bpm))
    result = _pulse_of(phrase, bpm)
    if not isinstance(result, Measured):
        return {"answered": [0.0]}
    start, end = phrase.truth.beat_s[:-_LOCAL_BEATS], phrase.truth.beat_s[_LOCAL_BEATS:]
    true_bpm = np.interp(
        result.value.local_time_s, (start + end) / 2.0, 60.0 * _LOCAL_BEATS / (end - start)
    )
    off = np.abs(result.value.local_bpm / true_bpm - 1.0)
    return {"answered": [1.0], "rubato": [float(100.0 * e) for e in off]}


def _unanchored() -> Tally:
    answered, wrong = [], []
    for seed in range(FIRST_SEED + 800, FIRST_SEED + 800 + _UNANCHORED):
        rng = np.random.default_rng([seed, 52])
        bpm, depth = float(np.exp(rng.uniform(np.log(46), np.log(176)))), rng.uniform(0.03, 0.2)
        placed = place_phrase(_rubato_spec(seed, float(depth), bpm))
        onset_s = np.array([note.start_s for note in placed])
        onset_s = np.sort(onset_s + _ONSET_SCATTER_S * rng.standard_normal(onset_s.size))
        result = measure_tempo(onset_s, np.ones(onset_s.size), float(onset_s[-1]) + 1.0)
        answered.append(float(isinstance(result, Measured)))
        if isinstance(result, Measured):
            beats = placed[-1].beat - placed[0].beat
            true_bpm = 60.0 * beats / (placed[-1].start_s - placed[0].start_s)
            wrong.append(float(abs(result.value.mean_bpm / true_bpm - 1.0) > _LEVEL_TOLERANCE))
    return {"unanchored answered": answered, "unanchored wrong": wrong}


def _rows(tally: Tally) -> tuple[Row, ...]:
    grid = "generated grid, 40 to 208 BPM"
    rows = [share_row(tally, "answered", "A stated pulse is found", grid, at_least=100.0)]
    for case, words, spread_ms in (("soft", "soft and varied attacks", 10.0),
                                   ("hard", "hard attacks", 3.0)):  # fmt: skip
        rows += [
            quantile_row(
                tally, f"{case} tempo", 100, f"Tempo, {words}: largest error", "%", grid,
                at_most=0.1, digits=3,
            ),
            quantile_row(
                tally, f"{case} beats", 50, f"Beats, {words}: median error", "ms", grid,
                at_most=5.0,
            ),
            quantile_row(
                tally, f"{case} spread", 100, f"False spread, {words}: largest SD", "ms",
                grid, at_most=spread_ms,
            ),
        ]  # fmt: skip
    answered = tally.get("unanchored answered", [])
    never_asked = not tally.get("unanchored wrong")
    wrong = Row(
        "No anchor: doubled, halved or else wrong", "phrases",
        "100 generated rubato lines", sum(tally.get("unanchored wrong", [])), at_most=0.0,
        count=len(answered), digits=0, sentence="None was answered." if never_asked else "",
    )  # fmt: skip
    return (
        *rows,
        quantile_row(
            tally, "drift", 100, "Known drift: largest error", "%",
            "generated, 12 BPM per minute", at_most=5.0,
        ),
        quantile_row(
            tally, "rubato", 100, "Known rubato: largest error of the local tempo", "%",
            "generated, 10 % to and fro", at_most=5.0,
        ),
        wrong,
        share_row(
            tally, "unanchored answered", "No anchor: answered", "the same lines"
        ),
    )  # fmt: skip


def section() -> Section:
    """Give the section."""
    grids = tuple((case, bpm) for case in ("soft", "hard") for bpm in GRID_BPM)
    drifts = tuple(("drift", drift) for drift in _DRIFTS)
    rubatos = tuple(("rubato", number) for number in range(_RUBATOS))
    return Section("Tempo", (*grids, *drifts, *rubatos, ("unanchored", 0)), measure_pulse, _rows)
