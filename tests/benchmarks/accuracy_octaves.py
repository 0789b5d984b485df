"""Count the notes that are read in a wrong octave, on ten thousand generated notes.

    python tests/benchmarks/accuracy_octaves.py [NOTES] [FIRST_SEED] [CONDITION,...]

The phrases are those of ``phrases.py``, two in five of them in a room. Bounds: none clean
and at 30 dB, at most 0.1 % at 20 dB. Notes are told apart by where they sound, dry or in
a room; counted are notes read one or more whole octaves off, and beside them those off by
more than a semitone in any other way (a common period of two notes, a neighbour's pitch).
"""

import sys
from collections import Counter
from pathlib import Path
from typing import Final

sys.path.insert(0, str(Path(__file__).parents[2]))
sys.path.insert(0, str(Path(__file__).parent))

import mir_eval
import numpy as np
from phrases import CONDITIONS, random_phrase, random_spec

from analysis.blocks import MonoSamples
from analysis.instruments import INSTRUMENTS
from analysis.notes import find_notes
from analysis.onsets import detect_onsets
from analysis.pitch import track_instrument
from analysis.results import Measured

FIRST_SEED: Final = 3_000
NOTES: Final = 10_000
NEAR_OCTAVE_CENTS: Final = 100.0


def count_phrase(seed: int, condition: str, counts: Counter[str]) -> int:
    """Add one phrase's notes to the counts; return how many it has."""
    spec = random_spec(seed)
    place = "dry" if spec.reverb_time_s is None else "room"
    phrase = random_phrase(seed, CONDITIONS[condition])
    player = INSTRUMENTS[spec.instrument]
    samples, rate, true = phrase.samples, phrase.sample_rate_hz, phrase.truth.notes
    rough, fine = track_instrument(samples, rate, player)
    assert isinstance(rough, Measured)
    assert isinstance(fine, Measured)
    onset_s, strength = detect_onsets(samples, rate, track=rough.value)
    source = MonoSamples(samples, rate)
    found = find_notes(rough.value, onset_s, strength, player, source=source, fine=fine.value)
    pitched = [note for note in found if isinstance(note.pitch, Measured)]
    counts[f"{place} notes"] += len(true)
    if not pitched:
        return len(true)
    pairs = mir_eval.transcription.match_note_onsets(
        np.array([(note.start_s, note.end_s) for note in true]),
        np.array([(note.start_s, note.end_s) for note in pitched]),
    )
    counts[f"{place} read"] += len(pairs)
    for true_index, found_index in pairs:
        pitch_hz = pitched[found_index].pitch.value.pitch_hz
        off = 1200.0 * np.log2(pitch_hz / true[true_index].centre_hz)
        octaves = round(off / 1200.0)
        if octaves and abs(off - 1200.0 * octaves) < NEAR_OCTAVE_CENTS:
            counts[f"{place} octaves"] += 1
        elif abs(off) > NEAR_OCTAVE_CENTS:
            counts[f"{place} elsewhere"] += 1
        else:
            continue
        print(
            f"   {condition} seed {seed} {spec.instrument} {place}: midi"
            f" {true[true_index].midi:g} at {true[true_index].start_s:.3f} s"
            f" {off:+.0f} cents, {pitched[found_index].end_s - pitched[found_index].start_s:.3f} s"
            f" stated {pitched[found_index].pitch.value.uncertainty_cents:.1f}"
        )
    return len(true)


def main() -> None:
    """Run all conditions."""
    wanted_notes = int(sys.argv[1]) if len(sys.argv) > 1 else NOTES
    first = int(sys.argv[2]) if len(sys.argv) > 2 else FIRST_SEED
    conditions = sys.argv[3].split(",") if len(sys.argv) > 3 else list(CONDITIONS)
    for condition in conditions:
        counts: Counter[str] = Counter()
        seed = first
        while counts["dry notes"] + counts["room notes"] < wanted_notes:
            count_phrase(seed, condition, counts)
            seed += 1
        for place in ("dry", "room"):
            print(
                f"{condition} {place}: {counts[f'{place} notes']} notes, "
                f"{counts[f'{place} read']} read, {counts[f'{place} octaves']} in a wrong octave, "
                f"{counts[f'{place} elsewhere']} elsewhere (seeds {first} to {seed - 1})",
                flush=True,
            )


if __name__ == "__main__":
    main()
