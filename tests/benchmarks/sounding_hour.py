"""Print how well sounding minutes are counted on a generated hour, and what that costs.

Run as ``python -m tests.benchmarks.sounding_hour [MINUTES] [SEED]``. The thresholds of
:mod:`analysis.sounding` were set on seeds 2 and 7; the default is another one. Talk
is synthesised (espeak-ng), playing is generated: neither is a recording of a person.
"""

import sys
import time
from collections import defaultdict

from analysis import sounding
from tests import practising_sounds as sounds

BOUND_PERCENT = 5.0
BOUND_CPU_PERCENT = 15.0


def main() -> None:
    """Listen to the hour in blocks of 0.1 s, as a recorder hands them on."""
    minutes = float(sys.argv[1]) if len(sys.argv) > 1 else 60.0
    seed = int(sys.argv[2]) if len(sys.argv) > 2 else 11
    if sounds.speaker_is_missing():
        sys.exit(f"{sounds.SPEAKER} is missing; Debian has it in the package of that name.")
    rows: dict[str, list[tuple[float, float, float]]] = defaultdict(list)
    state, heard, cpu_s = sounding.begin(sounds.RATE_HZ), sounding.SoundingTime(), 0.0
    for part in sounds.practising(seed, minutes):
        before_s = heard.seconds
        samples = part.samples.astype("float32")
        began = time.process_time()
        for first in range(0, len(samples), sounds.RATE_HZ // 10):
            state, frames = sounding.listen(state, samples[first : first + sounds.RATE_HZ // 10])
            heard = sounding.count(heard, frames, state.frame_s)
        cpu_s += time.process_time() - began
        length_s = len(samples) / sounds.RATE_HZ
        rows[part.kind].append((length_s, part.playing_s, heard.seconds - before_s))
    sys.stdout.write("part         length s   playing s   counted s   largest error of a part s\n")
    for kind, parts in sorted(rows.items()):
        length, true, counted = (sum(column) for column in zip(*parts, strict=True))
        worst = max(abs(found - truth) for _, truth, found in parts)
        sys.stdout.write(f"{kind:12s} {length:8.0f} {true:11.1f} {counted:11.1f} {worst:12.1f}\n")
    everything = [row for parts in rows.values() for row in parts]
    length, true, counted = (sum(column) for column in zip(*everything, strict=True))
    sys.stdout.write(
        f"\nall of {length / 60:.1f} min: {counted / 60:.2f} counted of {true / 60:.2f} min, "
        f"{100 * (counted / true - 1):+.2f} % (bound {BOUND_PERCENT:g} %)\n"
        f"listening took {cpu_s / length:.4f} x real time of one core, "
        f"1/{length / cpu_s:.0f} (bound {BOUND_CPU_PERCENT / 100:g})\n"
    )


if __name__ == "__main__":
    main()
