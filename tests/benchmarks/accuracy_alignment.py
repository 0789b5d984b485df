"""Print how accurately takes are aligned, on generated pairs with known truth.

    python tests/benchmarks/accuracy_alignment.py

Bounds: at note onsets a median error of at most 10 ms and a 95th percentile of at most
40 ms for tempo ratios 0.5 to 2 with rubato; other music refused; slips left out.
"""

import sys
from collections import defaultdict
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))

import numpy as np

from analysis.alignment import align, left_out_spans, map_time
from analysis.results import Measured
from analysis.take import TakeSettings, analyse_take
from sample_audio.generator import Instrument, NoteSpec, Phrase, PhraseSpec, render

MAJOR = np.array([0, 2, 4, 5, 7, 9, 11])
LOWEST = {"violin": 57, "viola": 50, "cello": 42}


def notes_of(seed: int, instrument: Instrument, *, repeated: bool) -> tuple[NoteSpec, ...]:
    """A tune in a major scale; slurs between unlike notes, some vibrato."""
    rng = np.random.default_rng([seed, 11])
    steps = rng.choice([-3, -2, -1, 1, 2, 3] + ([0, 0] if repeated else []), 40)
    degree = np.abs((np.cumsum(steps) + 8) % 32 - 16)
    midi = LOWEST[instrument] + 12 * (degree // 7) + MAJOR[degree % 7]
    slurred = (rng.random(40) < 0.3) & np.concatenate(([False], np.diff(midi) != 0))
    lengths = rng.choice([0.25, 0.5, 0.5, 1.0, 1.0, 2.0], 40)
    return tuple(
        NoteSpec(
            float(pitch),
            float(beats),
            articulation="legato" if slur else "detache",
            vibrato_rate_hz=5.5 if beats >= 1 and rng.random() < 0.6 else 0.0,
            vibrato_extent_cents=20.0,
        )
        for pitch, beats, slur in zip(midi, lengths, slurred, strict=True)
    )


def play(
    notes: tuple[NoteSpec, ...], seed: int, ratio: float, rubato: float, **circumstances
) -> Phrase:
    """One take: another day's tuning, levels, tempo and rubato."""
    rng = np.random.default_rng([seed, 12])
    total = sum(note.beats for note in notes)
    points = np.arange(0.0, total + 8, 4.0)
    tempo = 84.0 * ratio * np.exp(rubato * rng.standard_normal(points.size))
    played = tuple(
        NoteSpec(
            note.midi,
            note.beats,
            deviation_cents=float(8 * rng.standard_normal()),
            articulation=note.articulation,
            vibrato_rate_hz=note.vibrato_rate_hz,
            vibrato_extent_cents=note.vibrato_extent_cents,
            level_db=float(rng.uniform(-8, 0)),
            attack_s=float(rng.uniform(0.015, 0.06)),
        )
        for note in notes
    )
    curve = tuple((float(beat), float(bpm)) for beat, bpm in zip(points, tempo, strict=True))
    settings = {"lead_in_s": float(rng.uniform(0.3, 2.0)), "seed": seed, **circumstances}
    return render(PhraseSpec(played, tempo=curve, **settings))


def errors_ms(a: Phrase, b: Phrase, instrument: Instrument, *, with_notes: bool):
    notes = {}
    if with_notes:
        settings = TakeSettings(instrument=instrument)
        notes = {
            f"notes_{name}": analyse_take(take.samples, take.sample_rate_hz, settings).notes
            for name, take in (("a", a), ("b", b))
        }
    result = align(a.samples, a.sample_rate_hz, b.samples, b.sample_rate_hz, **notes)
    if not isinstance(result, Measured):
        return None
    start_a, start_b = (np.array([n.start_s for n in take.truth.notes]) for take in (a, b))
    return 1e3 * np.abs(map_time(result.value, start_a) - start_b)


def accuracy_table() -> None:
    print("pairs, error at note onsets in ms                 median     p95    refused")
    cases: dict[str, dict] = {
        "clean": {},
        "room, 30 dB": {"reverb_time_s": 0.6, "snr_db": 30.0},
        "room, 20 dB": {"reverb_time_s": 0.6, "snr_db": 20.0},
        "A = 430 Hz": {"reference_a_hz": 430.0},
    }
    for name, circumstances in cases.items():
        for repeated in (False, True):
            rows = defaultdict(list)
            for seed in range(20_000, 20_012):
                instrument: Instrument = ("violin", "viola", "cello")[seed % 3]
                ratio = (0.5, 0.7, 1.0, 1.4, 2.0)[seed % 5]
                notes = notes_of(seed, instrument, repeated=repeated)
                a = play(notes, seed, 1.0, 0.03, instrument=instrument)
                b = play(notes, seed + 500, ratio, 0.15, instrument=instrument, **circumstances)
                for with_notes in (False, True):
                    found = errors_ms(a, b, instrument, with_notes=with_notes)
                    rows[with_notes].append(found)
            for with_notes, found in rows.items():
                good = np.concatenate([row for row in found if row is not None])
                refused = sum(row is None for row in found)
                print(
                    f"  {name:<12} {'repeated notes' if repeated else 'no repeats':<15}"
                    f"{'with notes' if with_notes else 'sound only':<12}"
                    f"{np.median(good):8.2f} {np.percentile(good, 95):8.1f} {refused:8d}/12"
                )


def refusal_table() -> None:
    refused, count = 0, 30
    for seed in range(count):
        one, other = (notes_of(s, "violin", repeated=True) for s in (seed, seed + 700))
        a, b = play(one, seed, 1.0, 0.05), play(other, seed + 1, 1.1, 0.05)
        result = align(a.samples, a.sample_rate_hz, b.samples, b.sample_rate_hz)
        refused += not isinstance(result, Measured)
    print(f"other music of the same key and instrument: {refused}/{count} refused")


def slip_table() -> None:
    slips = {
        "false start": lambda n: n[:7] + n,
        "repeated bar": lambda n: n[:22] + n[14:],
        "skipped bar": lambda n: n[:14] + n[24:],
    }
    for name, slip in slips.items():
        found, count = 0, 20
        for seed in range(count):
            notes = notes_of(seed + 90, "violin", repeated=False)
            a = play(notes, seed, 1.0, 0.05)
            b = play(slip(notes), seed + 1, 1.1, 0.05)
            result = align(a.samples, a.sample_rate_hz, b.samples, b.sample_rate_hz)
            if not isinstance(result, Measured):
                continue
            only_a, only_b = left_out_spans(result.value)
            if name == "false start":
                # Left out as a whole, or as a stretch that only b plays.
                found += result.value.b_s[0] > 2.0 or bool(only_b)
            else:
                found += bool(only_b if name == "repeated bar" else only_a)
        print(f"{name}: found in {found}/{count}")


if __name__ == "__main__":
    accuracy_table()
    refusal_table()
    slip_table()
