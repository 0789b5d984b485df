"""Print how well runs through a passage are found in practice recordings with known truth.

    python tests/benchmarks/run_throughs_found.py [FIRST_SEED]

Each recording holds whole runs at several tempos, runs that break off, other music and
silence, in a drawn order, in a room.
"""

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))
sys.path.insert(0, str(Path(__file__).parent))

import numpy as np
from accuracy_alignment import notes_of, play

from analysis.outline import outline
from analysis.results import Measured
from analysis.run_throughs import find_run_throughs

RECORDINGS, PARTS, LENGTH = 8, 9, 20
FIRST = int(sys.argv[1]) if len(sys.argv) > 1 else 0
ROOM = {"reverb_time_s": 0.5, "snr_db": 28.0}


def practice(notes, other, seed):
    """A recording, and (start, end, is_whole) of every run in it."""
    rng = np.random.default_rng([seed, 31])
    kinds = rng.permutation(["whole"] * 5 + ["broken off"] * 2 + ["other"] * 2)
    pieces, truth, at_s, rate = [], [], 0.0, 0
    for number, kind in enumerate(kinds):
        part = {"whole": notes, "broken off": notes[: LENGTH // 2], "other": other}[kind]
        ratio = float(rng.choice([0.6, 0.8, 1.0, 1.0, 1.25, 1.6]))
        phrase = play(part, 40 * seed + number, ratio, 0.1, instrument="violin", **ROOM)
        rate = phrase.sample_rate_hz
        if kind != "other":
            begin, end = phrase.truth.notes[0].start_s, phrase.truth.notes[-1].end_s
            truth.append((at_s + begin, at_s + end, kind == "whole"))
        pieces.append(phrase.samples)
        at_s += phrase.samples.size / rate
    return np.concatenate(pieces), rate, truth


def overlap(one, other) -> float:
    both = min(one[1], other[1]) - max(one[0], other[0])
    return max(0.0, both) / max(one[1] - one[0], other[1] - other[0])


def main() -> None:
    counts = dict.fromkeys(("whole", "whole found", "broken", "broken found", "extra"), 0)
    edges, right_counts = [], 0
    for seed in range(FIRST, FIRST + RECORDINGS):
        notes, other = (
            notes_of(500 + seed + add, "violin", repeated=True)[:LENGTH] for add in (0, 300)
        )
        reference = play(notes, 9000 + seed, 1.0, 0.05, instrument="violin")
        samples, rate, truth = practice(notes, other, seed)
        result = find_run_throughs(
            outline(reference.samples, reference.sample_rate_hz), outline(samples, rate)
        )
        assert isinstance(result, Measured)
        runs = list(result.value)
        for begin, end, whole in truth:
            best = max(
                runs, key=lambda r: overlap((r.start_s, r.end_s), (begin, end)), default=None
            )
            name = "whole" if whole else "broken"
            counts[name] += 1
            if best is None or overlap((best.start_s, best.end_s), (begin, end)) < 0.6:
                continue
            counts[f"{name} found"] += best.is_complete == whole
            edges += [abs(best.start_s - begin), abs(best.end_s - end)]
            runs.remove(best)
        counts["extra"] += len(runs)
        wholes = sum(run.is_complete for run in result.value)
        right_counts += wholes == sum(whole for *_, whole in truth)
    print(f"whole runs found as such: {counts['whole found']}/{counts['whole']}")
    print(f"broken-off runs found as such: {counts['broken found']}/{counts['broken']}")
    print(f"runs reported where there are none: {counts['extra']}")
    print(f"recordings whose whole runs are counted right: {right_counts}/{RECORDINGS}")
    print(
        f"edges: median {1e3 * np.median(edges):.0f} ms,"
        f" 95 % within {1e3 * np.percentile(edges, 95):.0f} ms"
    )


if __name__ == "__main__":
    main()
