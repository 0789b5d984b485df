"""Print how accurately tempo is measured on generated violin phrases.

    python tests/benchmarks/accuracy_tempo.py

Everything from sound: the generator's beats are the truth, onsets come from the onset
detector. Bounds: tempo of a perfect grid within 0.1 %, beats within 5 ms in the median,
false interval spread at most 3 ms (hard attacks) or 10 ms (soft, varied), a known drift
and a known rubato within 5 %, without an anchor never doubled or halved.
"""

import sys
from collections.abc import Callable
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))

import numpy as np

from analysis.instruments import INSTRUMENTS
from analysis.onsets import detect_onsets
from analysis.pitch import track_pitch
from analysis.results import Measured
from analysis.tempo import measure_tempo
from sample_audio.generator import NoteSpec, Phrase, PhraseSpec, render

VIOLIN = INSTRUMENTS["violin"]
GRID_BPM = (40, 52, 60, 72, 88, 104, 120, 138, 160, 184, 208)
MAJOR = np.array([0, 2, 4, 5, 7, 9, 11])
CELLS = ((1.0,), (0.5, 0.5), (0.25,) * 4, (1 / 3,) * 3, (1.5, 0.5), (2.0,), (0.75, 0.25))

Attack = Callable[[np.random.Generator], float]
ATTACKS: dict[str, Attack] = {
    "hard (10 ms)": lambda _: 0.01,
    "soft (80 ms)": lambda _: 0.08,
    "varied": lambda rng: float(rng.uniform(0.01, 0.1)),
}


def pitches(rng: np.random.Generator, count: int) -> np.ndarray:
    """A wandering tune in G that turns back at its ends and repeats no note."""
    steps = rng.choice([-3, -2, -1, 1, 2, 3], count)
    degree = np.abs((np.cumsum(steps) + 8) % 32 - 16)
    return 55 + 12 * (degree // 7) + MAJOR[degree % 7]


def onsets_of(phrase: Phrase) -> tuple[np.ndarray, np.ndarray, float]:
    track = track_pitch(
        phrase.samples,
        phrase.sample_rate_hz,
        floor_hz=VIOLIN.floor_hz,
        ceiling_hz=VIOLIN.ceiling_hz,
        window_periods=VIOLIN.window_periods,
    )
    found = detect_onsets(
        phrase.samples,
        phrase.sample_rate_hz,
        track=track.value if isinstance(track, Measured) else None,
    )
    return *found, len(phrase.samples) / phrase.sample_rate_hz


def melody(seed: int, beats: int, attack: Attack, *, slurred: float = 0.0) -> tuple[NoteSpec, ...]:
    rng = np.random.default_rng(seed)
    lengths: list[float] = []
    while sum(lengths) < beats:
        lengths += CELLS[rng.choice(len(CELLS), p=[0.3, 0.25, 0.1, 0.1, 0.1, 0.1, 0.05])]
    return tuple(
        NoteSpec(
            float(midi),
            length,
            attack_s=attack(rng),
            articulation="legato" if k and rng.random() < slurred else "detache",
            level_db=float(rng.uniform(-6, 0)),
        )
        for k, (midi, length) in enumerate(zip(pitches(rng, len(lengths)), lengths, strict=True))
    )


def grid_table() -> None:
    print("perfect grid, one note a beat, 32 beats       tempo error %  beat ms  interval SD ms")
    rooms: dict[str, dict[str, float]] = {
        "dry": {},
        "20 dB, room 0.6 s": {"snr_db": 20.0, "reverb_time_s": 0.6},
    }
    for room, settings in rooms.items():
        for name, attack in ATTACKS.items():
            rows = []
            for bpm in GRID_BPM:
                rng = np.random.default_rng(bpm)
                notes = tuple(
                    NoteSpec(float(midi), 1.0, attack_s=attack(rng)) for midi in pitches(rng, 32)
                )
                phrase = render(PhraseSpec(notes, tempo=float(bpm), seed=bpm, **settings))
                onset_s, strength, duration_s = onsets_of(phrase)
                result = measure_tempo(onset_s, strength, duration_s, pulse_bpm=bpm)
                truth = phrase.truth.beat_s[:-1]
                rows.append(grid_errors(result, truth, bpm))
            found = np.array([row for row in rows if row is not None])
            error, beat, spread = found.T
            print(
                f"  {room:<18} {name:<14} {len(found)}/{len(rows)} worst {error.max():8.4f}"
                f" {beat.max():8.2f} {spread.max():8.2f}"
            )


def grid_errors(result, truth, bpm) -> tuple[float, float, float] | None:
    if not isinstance(result, Measured):
        return None
    tempo = result.value
    nearest = np.array([tempo.beat_s[np.argmin(np.abs(tempo.beat_s - beat))] for beat in truth])
    offset_ms = 1e3 * (nearest - truth)
    return (
        100 * abs(tempo.mean_bpm / bpm - 1),
        float(np.median(np.abs(offset_ms))),
        float(np.std(np.diff(offset_ms))),
    )


def melody_table() -> None:
    print("melodies with rests of rhythm and slurs        phrases  tempo %  beats within 30 ms")
    for depth in (0.0, 0.05, 0.1, 0.15):
        errors, hits, count = [], [], 30
        for seed in range(20_000, 20_000 + count):
            phrase, bpm = rubato_phrase(seed, depth, slurred=0.3)
            onset_s, strength, duration_s = onsets_of(phrase)
            result = measure_tempo(onset_s, strength, duration_s, pulse_bpm=bpm)
            if not isinstance(result, Measured):
                continue
            truth = phrase.truth.beat_s[:-1]
            true_bpm = 60 * (truth.size - 1) / np.ptp(truth)
            errors.append(100 * abs(result.value.mean_bpm / true_bpm - 1))
            beats = result.value.beat_s
            hits += [np.min(np.abs(beats - beat)) < 0.03 for beat in truth[1:-1]]
        print(
            f"  rubato {100 * depth:4.0f} %   measured {len(errors)}/{count}"
            f"  median error {np.median(errors):.3f} %  p90 {np.percentile(errors, 90):.3f} %"
            f"  beats right {100 * np.mean(hits):.1f} %"
        )


def rubato_phrase(seed: int, depth: float, *, slurred: float) -> tuple[Phrase, float]:
    rng = np.random.default_rng([seed, 3])
    bpm = float(np.exp(rng.uniform(np.log(50), np.log(150))))
    notes = melody(seed, 40, lambda r: float(r.uniform(0.015, 0.08)), slurred=slurred)
    turn = rng.uniform(10, 24)
    points = np.arange(0.0, 46.0, 2.0)
    tempo = bpm * np.exp(depth * np.sin(2 * np.pi * points / turn + rng.uniform(0, 6)))
    curve = tuple((float(beat), float(value)) for beat, value in zip(points, tempo, strict=True))
    return render(PhraseSpec(notes, tempo=curve, seed=seed)), bpm


def drift_table() -> None:
    errors = []
    for seed in range(20):
        notes = melody(seed, 48, lambda rng: float(rng.uniform(0.015, 0.08)))
        drift = float(np.random.default_rng(seed).choice([-12, -6, 6, 12]))
        phrase = render(PhraseSpec(notes, tempo=90.0, tempo_drift_bpm_per_min=drift, seed=seed))
        onset_s, strength, duration_s = onsets_of(phrase)
        result = measure_tempo(onset_s, strength, duration_s, pulse_bpm=90)
        assert isinstance(result, Measured)
        errors.append(100 * abs(result.value.drift_bpm_per_min / drift - 1))
    print(f"known drift: error median {np.median(errors):.2f} %, worst {np.max(errors):.2f} %")


def unanchored_table() -> None:
    answered, wrong, count = 0, 0, 100
    for seed in range(30_000, 30_000 + count):
        depth = float(np.random.default_rng(seed).uniform(0.02, 0.18))
        phrase, _ = rubato_phrase(seed, depth, slurred=0.2)
        result = measure_tempo(*onsets_of(phrase))
        if isinstance(result, Measured):
            truth = phrase.truth.beat_s[:-1]
            answered += 1
            wrong += abs(result.value.mean_bpm / (60 * (truth.size - 1) / np.ptp(truth)) - 1) > 0.08
    print(f"without an anchor, {count} rubato phrases: answered {answered}, wrong {wrong}")


if __name__ == "__main__":
    grid_table()
    melody_table()
    drift_table()
    unanchored_table()
