"""Print how near markers land when they are carried from one take into another.

    python tests/benchmarks/markers_carried.py [FIRST_SEED] [COUNT]

Forty markers a pair, anywhere in the sounding notes of the earlier take. The later take is
played at a tempo ratio from 0.5 to 2, with rubato, every third in a room; every other pair has
a slip too. The truth of a moment inside a note is the same share of the way to the next note.
Where a bar is played twice either time is right. Bound: 95 % within 100 ms. Seeds from 20 000
on are not tuned on.
"""

import sys
from collections import defaultdict
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))
sys.path.insert(0, str(Path(__file__).parent))

import numpy as np
from accuracy_alignment import notes_of, play
from phrases import FIRST_HELD_OUT_SEED
from slips_found import RATIOS, changes

from analysis.alignment import align, left_out_spans, map_time
from analysis.results import Measured
from analysis.take import TakeSettings, analyse_take

MARKERS = 40
UNSURE_OUTSIDE_S = 0.5
SLIPS = ("false start", "repeated bar", "skipped bar", "stop", "after the end")
# Where the notes of take a are in take b; -1: not there.
PLACES = {
    "no slip": lambda i: [i],
    "false start": lambda i: [i + 7] + ([i] if i < 7 else []),
    "repeated bar": lambda i: ([i] if i < 22 else []) + ([i + 8] if i >= 14 else []),
    "skipped bar": lambda i: [i] if i < 14 else [i - 10] if i >= 24 else [],
    "stop": lambda i: [i],
    "after the end": lambda i: [i],
}


def onsets(take) -> np.ndarray:
    """Starts of the notes, and the end of the last one."""
    truth = take.truth.notes
    return np.array([note.start_s for note in truth] + [truth[-1].end_s])


def main() -> None:
    first = int(sys.argv[1]) if len(sys.argv) > 1 else FIRST_HELD_OUT_SEED
    count = int(sys.argv[2]) if len(sys.argv) > 2 else 15
    errors, dropped, shown, refused = defaultdict(list), 0, 0, 0
    for seed in range(first, first + count):
        instrument = ("violin", "viola", "cello")[seed % 3]
        room = {"reverb_time_s": 0.5, "snr_db": 28.0} if seed % 3 == 2 else {}
        notes = notes_of(seed, instrument, repeated=bool(seed % 2))
        kind = SLIPS[(seed // 2) % len(SLIPS)] if seed % 2 else "no slip"
        change = changes(notes)[kind]
        played = notes if change is None else change.played
        a = play(notes, seed, 1.0, 0.05, instrument=instrument)
        b = play(
            played, seed + 500, RATIOS[seed % len(RATIOS)], 0.15, instrument=instrument, **room
        )
        settings = TakeSettings(instrument=instrument)
        heard = [analyse_take(t.samples, t.sample_rate_hz, settings).notes for t in (a, b)]
        found = align(
            a.samples, a.sample_rate_hz, b.samples, b.sample_rate_hz,
            notes_a=heard[0], notes_b=heard[1],
        )  # fmt: skip
        if not isinstance(found, Measured):
            refused += 1
            continue
        only_a, _ = left_out_spans(found.value)
        start_a, start_b = onsets(a), onsets(b)
        rng = np.random.default_rng([seed, 51])
        for index, share in zip(
            rng.integers(0, len(notes), MARKERS), rng.random(MARKERS), strict=True
        ):
            at_s = start_a[index] + share * (start_a[index + 1] - start_a[index])
            places = PLACES[kind](int(index))
            edges = (found.value.a_s[0], found.value.a_s[-1])
            is_shown = edges[0] - UNSURE_OUTSIDE_S <= at_s <= edges[1] + UNSURE_OUTSIDE_S
            is_shown &= not any(begin < at_s < end for begin, end in only_a)
            if not is_shown:
                dropped += bool(places)
                continue
            if not places:
                shown += 1
                continue
            there_s = float(map_time(found.value, np.array([at_s]))[0])
            truth = [start_b[i] + share * (start_b[i + 1] - start_b[i]) for i in places]
            errors[kind].append(1e3 * min(abs(there_s - one) for one in truth))
    print(f"seeds {first} to {first + count - 1}; markers carried, error in ms")
    print("                markers   median      p95   within 100 ms")
    for kind, row in (
        *errors.items(),
        ("all", [one for every in errors.values() for one in every]),
    ):
        inside = 100.0 * np.mean(np.array(row) < 100.0)
        print(
            f"{kind:<15}{len(row):>8}{np.median(row):>9.1f}{np.percentile(row, 95):>9.1f}"
            f"{inside:>13.1f} %"
        )
    print(
        f"not carried although played there: {dropped}; carried although not played: {shown};"
        f" pairs refused: {refused}"
    )


if __name__ == "__main__":
    main()
