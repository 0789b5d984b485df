"""Print how accurately takes are aligned, on generated and sampled pairs with known truth.

    python tests/benchmarks/accuracy_alignment.py [PART,...] [FIRST_SEED]

Parts: pairs, score, sampled (needs fluidsynth and a sound font), refused; slips have
``slips_found.py``, markers ``markers_carried.py``. Seeds from 20 000 on are not tuned on.
Bounds: at note onsets a median error of at most 10 ms and a 95th percentile of at most
40 ms for tempo ratios 0.5 to 2 with rubato; other music refused.
"""

import sys
from collections import defaultdict
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))
sys.path.insert(0, str(Path(__file__).parent))

import numpy as np

from analysis.alignment import align, map_time
from analysis.results import Measured
from analysis.score_following import align_to_score
from analysis.take import TakeSettings, analyse_take
from analysis.written_features import WrittenNotes
from sample_audio.generator import Instrument, NoteSpec, Phrase, PhraseSpec, render

MAJOR = np.array([0, 2, 4, 5, 7, 9, 11])
FIRST = 20_000
SAMPLED = 15
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
    print("pairs, error at note onsets in ms                 median     p95  <100 ms  refused")
    cases: dict[str, dict] = {
        "clean": {},
        "room, 30 dB": {"reverb_time_s": 0.6, "snr_db": 30.0},
        "room, 20 dB": {"reverb_time_s": 0.6, "snr_db": 20.0},
        "A = 430 Hz": {"reference_a_hz": 430.0},
    }
    for name, circumstances in cases.items():
        for repeated in (False, True):
            rows = defaultdict(list)
            for seed in range(FIRST, FIRST + 12):
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
                    f"{np.median(good):8.2f} {np.percentile(good, 95):8.1f}"
                    f" {100 * np.mean(good < 100):6.1f} % {refused:5d}/12"
                )


def score_table() -> None:
    """Takes in a room against what is written, with the notes that were measured."""
    errors, refused, accepted = [], 0, 0
    for seed in range(FIRST + 10_000, FIRST + 10_012):
        instrument: Instrument = ("violin", "viola", "cello")[seed % 3]
        ratio = (0.5, 0.7, 1.0, 1.4, 2.0)[seed % 5]
        notes = notes_of(seed, instrument, repeated=True)
        room = {"reverb_time_s": 0.5, "snr_db": 25.0}
        take = play(notes, seed, ratio, 0.15, instrument=instrument, **room)
        settings = TakeSettings(instrument=instrument)
        heard = analyse_take(take.samples, take.sample_rate_hz, settings).notes
        found = align_to_score(take.samples, take.sample_rate_hz, written(notes), notes=heard)
        if not isinstance(found, Measured):
            refused += 1
            continue
        truth = np.array([note.start_s for note in take.truth.notes])
        errors.append(1e3 * np.abs(found.value.time_at(written(notes).onset_beats) - truth))
        other = written(notes_of(seed + 77, instrument, repeated=True))
        wrong = align_to_score(take.samples, take.sample_rate_hz, other, notes=heard)
        accepted += isinstance(wrong, Measured)
    good = np.concatenate(errors)
    print(
        f"to a score, in a room: median {np.median(good):.2f} ms, p95"
        f" {np.percentile(good, 95):.1f} ms, {100 * np.mean(good < 100):.1f} % within 100 ms;"
        f" refused {refused}/12; other scores accepted {accepted}/12"
    )


def written(notes: tuple[NoteSpec, ...]) -> WrittenNotes:
    beats = np.array([note.beats for note in notes])
    onset = np.concatenate(([0.0], np.cumsum(beats)[:-1]))
    return WrittenNotes(onset, beats, np.array([note.midi for note in notes]))


def sampled_table() -> None:
    """Lines played by a sound font's instruments at tempo ratios 0.5 to 2, with rubato.

    Levels and tuning differ too. The truth is the note-on; bowed notes of the font are half
    as loud as they become only 20 to 120 ms later.
    """
    from sampled_sounds import RATE_HZ, passage_with_rubato, rendered_by_fluidsynth

    programs = {"violin": (40, 55, 91), "viola": (41, 48, 84), "cello": (42, 36, 72)}
    errors, refused = defaultdict(list), 0
    for seed in range(FIRST, FIRST + SAMPLED):
        name: Instrument = ("violin", "viola", "cello")[seed % 3]
        program, low, high = programs[name]
        ratio = (0.5, 0.7, 1.0, 1.4, 2.0)[seed % 5]
        notes = passage_with_rubato(seed, low, high, ratio, repeated=bool(seed % 2))
        sounds = [rendered_by_fluidsynth(notes, take, program, 200.0) for take in (0, 1)]
        settings = TakeSettings(instrument=name)
        heard = [analyse_take(one, RATE_HZ, settings).notes for one in sounds]
        found = align(sounds[0], RATE_HZ, sounds[1], RATE_HZ, notes_a=heard[0], notes_b=heard[1])
        if not isinstance(found, Measured):
            refused += 1
            continue
        start = np.array([note.start_s for note in notes])
        error = 1e3 * np.abs(map_time(found.value, start[:, 0]) - start[:, 1])
        for kept in (name, f"ratio {ratio}", "all"):
            errors[kept].append(error)
    for what in sorted(errors):
        good = np.concatenate(errors[what])
        print(
            f"sampled {what:<10}: median {np.median(good):6.2f} ms, p95"
            f" {np.percentile(good, 95):6.1f} ms, {100 * np.mean(good < 100):5.1f} % within 100 ms"
        )
    print(f"seeds {FIRST} to {FIRST + SAMPLED - 1}, refused {refused}")


def refusal_table() -> None:
    refused, count = 0, 30
    for seed in range(count):
        one, other = (notes_of(s, "violin", repeated=True) for s in (seed, seed + 700))
        a, b = play(one, seed, 1.0, 0.05), play(other, seed + 1, 1.1, 0.05)
        result = align(a.samples, a.sample_rate_hz, b.samples, b.sample_rate_hz)
        refused += not isinstance(result, Measured)
    print(f"other music of the same key and instrument: {refused}/{count} refused")


PARTS = {
    "pairs": accuracy_table,
    "score": score_table,
    "sampled": sampled_table,
    "refused": refusal_table,
}

if __name__ == "__main__":
    FIRST = int(sys.argv[2]) if len(sys.argv) > 2 else FIRST
    for part in sys.argv[1].split(",") if len(sys.argv) > 1 else PARTS:
        PARTS[part]()
