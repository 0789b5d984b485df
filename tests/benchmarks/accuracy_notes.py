"""Print how accurately pitch, notes and vibrato are measured on generated phrases.

    python tests/benchmarks/accuracy_notes.py [PHRASES] [FIRST_SEED] [CONDITION,...]

Truth comes from the generator; praat-parselmouth runs beside as the reference for the
pitch per frame, mir_eval scores the notes.
"""

import sys
from collections import defaultdict
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))
sys.path.insert(0, str(Path(__file__).parent))

import mir_eval
import numpy as np
import parselmouth
from phrases import CONDITIONS, FIRST_HELD_OUT_SEED, random_phrase, random_spec

from analysis.blocks import MonoSamples
from analysis.instruments import INSTRUMENTS
from analysis.notes import find_notes
from analysis.onsets import detect_onsets
from analysis.pitch import track_instrument
from analysis.results import Measured, NoteKind

Rows = defaultdict[str, list[float]]


def cents(found_hz, true_hz):
    return 1200.0 * np.log2(np.asarray(found_hz) / np.asarray(true_hz))


def measure_phrase(phrase, instrument, rows: Rows, *, with_praat: bool) -> None:
    player = INSTRUMENTS[instrument]
    samples, rate, truth = phrase.samples, phrase.sample_rate_hz, phrase.truth
    rough, fine = track_instrument(samples, rate, player)
    assert isinstance(rough, Measured)
    assert isinstance(fine, Measured)
    track = fine.value
    score_frames(track.time_s, track.f0_hz, truth, rows["frame_cents"])
    if with_praat:
        praat = parselmouth.Sound(samples, rate).to_pitch_ac(
            time_step=track.hop_s, pitch_floor=player.floor_hz, pitch_ceiling=player.ceiling_hz
        )
        f0 = praat.selected_array["frequency"].copy()
        f0[f0 == 0.0] = np.nan
        score_frames(praat.xs(), f0, truth, rows["praat_cents"])
    onset_s, strength = detect_onsets(samples, rate, track=rough.value)
    source = MonoSamples(samples, rate)
    notes = find_notes(rough.value, onset_s, strength, player, source=source, fine=track)
    score_notes(notes, truth.notes, rows)


def score_frames(time_s, f0_hz, truth, errors: list[float]) -> None:
    true_hz = np.interp(time_s, truth.time_s, truth.f0_hz)
    inside = np.zeros(time_s.shape, dtype=bool)
    for note in truth.notes:
        inside |= (time_s > note.steady_start_s) & (time_s < note.steady_end_s)
    keep = inside & np.isfinite(true_hz) & np.isfinite(f0_hz)
    errors.extend(np.abs(cents(f0_hz[keep], true_hz[keep])))


def score_notes(found, true, rows: Rows) -> None:
    pitched = [n for n in found if isinstance(n.pitch, Measured)]
    est = np.array([(n.start_s, n.end_s) for n in pitched]).reshape(-1, 2)
    est_hz = np.array([n.pitch.value.pitch_hz for n in pitched])
    ref = np.array([(n.start_s, n.end_s) for n in true]).reshape(-1, 2)
    ref_hz = np.array([n.centre_hz for n in true])
    if not len(est):
        rows["found"].append(0)
        rows["true"].append(len(true))
        return
    pairs = mir_eval.transcription.match_notes(ref, ref_hz, est, est_hz, offset_ratio=None)
    rows["matched"].append(len(pairs))
    rows["found"].append(len(pitched))
    rows["true"].append(len(true))
    onset_hits = mir_eval.transcription.match_note_onsets(ref, est)
    rows["onset_ms"].extend(1000.0 * abs(ref[r, 0] - est[e, 0]) for r, e in onset_hits)
    rows["octave"].append(
        sum(abs(abs(cents(est_hz[e], ref_hz[r])) - 1200.0) < 100.0 for r, e in onset_hits)
    )
    for r, e in pairs:
        score_pair(pitched[e], true[r], rows)


def score_pair(note, truth, rows: Rows) -> None:
    pitch = note.pitch.value
    error = float(cents(pitch.pitch_hz, truth.centre_hz))
    steady_s = truth.steady_end_s - truth.steady_start_s
    cycles = steady_s * truth.vibrato_rate_hz
    eligible = cycles >= 2.0 if truth.vibrato_extent_cents else steady_s >= 0.1
    rows["centre_cents" if eligible else "short_cents"].append(abs(error))
    rows["held" if eligible else "short_held"].append(abs(error) <= pitch.uncertainty_cents)
    rows["stated"].append(pitch.uncertainty_cents)
    rows["kinds"].append(note.kind is not NoteKind.NOTE)
    if truth.vibrato_extent_cents:
        if cycles >= 3.0:
            if isinstance(note.vibrato, Measured) and note.vibrato.value is not None:
                rows["vib_found"].append(1.0)
                rows["rate_hz"].append(abs(note.vibrato.value.rate_hz - truth.vibrato_rate_hz))
                rows["extent_cents"].append(
                    abs(note.vibrato.value.extent_cents - truth.vibrato_extent_cents)
                )
            else:
                rows["vib_found"].append(0.0)
    elif isinstance(note.vibrato, Measured):
        rows["vib_false"].append(note.vibrato.value is not None)


def line(label: str, rows: Rows) -> str:
    def p(name, q):
        return float(np.percentile(rows[name], q)) if rows[name] else float("nan")

    def mean(name):
        return float(np.mean(rows[name])) if rows[name] else float("nan")

    f1 = 2.0 * sum(rows["matched"]) / max(sum(rows["found"]) + sum(rows["true"]), 1)
    return (
        f"{label:22s} frame {p('frame_cents', 50):.3f} (praat {p('praat_cents', 50):.3f})"
        f" | centre med {p('centre_cents', 50):.2f} p95 {p('centre_cents', 95):.2f}"
        f" held {mean('held'):.3f} | short p95 {p('short_cents', 95):.2f}"
        f" held {mean('short_held'):.3f} | stated med {p('stated', 50):.2f}"
        f" | F1 {f1:.3f} of {sum(rows['true'])} oct {sum(rows['octave']):.0f}"
        f" | onset med {p('onset_ms', 50):.1f} p95 {p('onset_ms', 95):.1f} ms"
        f" | vib found {mean('vib_found'):.3f} false {mean('vib_false'):.3f}"
        f" rate p95 {p('rate_hz', 95):.3f} extent p95 {p('extent_cents', 95):.2f}"
        f" | kinds {mean('kinds'):.3f}"
    )


def main() -> None:
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 200
    first = int(sys.argv[2]) if len(sys.argv) > 2 else FIRST_HELD_OUT_SEED
    print(f"seeds {first} to {first + count - 1}")
    wanted = sys.argv[3].split(",") if len(sys.argv) > 3 else list(CONDITIONS)
    for condition, snr_db in CONDITIONS.items():
        if condition not in wanted:
            continue
        for room in (False, True):
            total: Rows = defaultdict(list)
            by_instrument: dict[str, Rows] = defaultdict(lambda: defaultdict(list))
            for seed in range(first, first + count):
                instrument = random_spec(seed).instrument
                rows: Rows = defaultdict(list)
                phrase = random_phrase(seed, snr_db, room=room)
                measure_phrase(phrase, instrument, rows, with_praat=True)
                for target in (total, by_instrument[instrument]):
                    for key, values in rows.items():
                        target[key].extend(values)
            place = "room" if room else "dry"
            print(line(f"{condition} {place}", total))
            for name, rows in sorted(by_instrument.items()):
                print(line(f"   {name}", rows))


if __name__ == "__main__":
    main()
