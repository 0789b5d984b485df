"""How many known slips are found, and how many are invented, by room; printed.

    .venv/bin/python tests/benchmarks/score_slips.py [SEEDS]

Each seed plays an invented melody clean, with a note left out, a note passed over, a
wrong note and an added one, dry, in a room and with noise.
"""

import sys
from collections import Counter
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from analysis.results import Measured
from tests.analysis.test_score_take import ROOMS, TAKES, held, played, slips, written


def main() -> None:
    """Print one row a room."""
    seeds = range(1, 1 + int(sys.argv[1] if len(sys.argv) > 1 else 4))
    print("room     takes  known  found  invented  unclear notes a take")
    for room, circumstances in ROOMS.items():
        count: Counter[str] = Counter()
        for seed in seeds:
            for melody, expected in TAKES.values():
                analysis = held(played(melody, seed=seed, **circumstances), written())
                assert isinstance(analysis.score, Measured)
                found = slips(analysis)
                count["takes"] += 1
                count["known"] += len(expected)
                count["found"] += sum(slip in found for slip in expected)
                count["invented"] += sum(slip not in expected for slip in found)
                count["unclear"] += analysis.score.value.unclear_count
        unclear = count["unclear"] / count["takes"]
        print(
            f"{room:8} {count['takes']:5} {count['known']:6} {count['found']:6}"
            f" {count['invented']:9} {unclear:8.1f}"
        )


if __name__ == "__main__":
    main()
