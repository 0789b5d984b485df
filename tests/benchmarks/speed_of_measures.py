"""Print how fast loudness, tempo and alignment are, as ratios within one run.

python tests/benchmarks/speed_of_measures.py [MINUTES]
"""

import resource
import sys
import time
from collections.abc import Callable
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))

import librosa
import numpy as np
import pyloudnorm

from analysis.alignment import align
from analysis.dynamics import measure_dynamics
from analysis.loudness import measure_loudness
from analysis.tempo import measure_tempo

RATE_HZ = 44_100


def tune(minutes: float, slower: float) -> tuple[np.ndarray, np.ndarray]:
    """Sound and onsets of a wandering tune of plain harmonic tones."""
    rng = np.random.default_rng(0)
    count = round(minutes * 60 / 0.4)
    degree = np.abs((np.cumsum(rng.choice([-2, -1, 1, 2], count)) + 8) % 28 - 14)
    midi = 55 + 12 * (degree // 7) + np.array([0, 2, 4, 5, 7, 9, 11])[degree % 7]
    length = slower * rng.choice([0.2, 0.4, 0.4, 0.6], count)
    start = np.concatenate(([0.0], np.cumsum(length)))
    samples = np.zeros(round(start[-1] * RATE_HZ) + RATE_HZ, dtype=np.float32)
    for number, begin, seconds in zip(midi, start[:-1], length, strict=True):
        at = np.arange(round(seconds * RATE_HZ)) / RATE_HZ
        phase = 2 * np.pi * 440 * 2 ** ((number - 69) / 12) * at
        shape = np.clip(np.minimum(at / 0.03, (at[-1] - at) / 0.03), 0, 1)
        tone = 0.2 * shape * sum(np.sin(k * phase) / k for k in range(1, 7))
        samples[round(begin * RATE_HZ) :][: at.size] += tone
    return samples, start[:-1]


def seconds(call: Callable[[], object], repeats: int = 3) -> float:
    call()  # compiles, and fills the caches
    best = np.inf
    for _ in range(repeats):
        begun = time.perf_counter()
        call()
        best = min(best, time.perf_counter() - begun)
    return best


def main() -> None:
    minutes = float(sys.argv[1]) if len(sys.argv) > 1 else 10.0
    a, onsets = tune(minutes, 1.0)
    b, _ = tune(minutes, 1.1)
    duration = a.size / RATE_HZ
    before_mb = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024

    ours = seconds(lambda: align(a, RATE_HZ, b, RATE_HZ), 1)
    after_mb = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    print(f"alignment, {minutes:.0f} against {1.1 * minutes:.0f} min: {ours:.2f} s")
    print(f"  memory                   {after_mb:.0f} MB at most, {before_mb:.0f} before")

    ours = seconds(lambda: measure_loudness(a, RATE_HZ).integrated_lufs)
    meter = pyloudnorm.Meter(RATE_HZ)
    theirs = seconds(lambda: meter.integrated_loudness(a.astype(np.float64)), 1)
    print(f"loudness, every 10 ms      {duration / ours:8.0f} x real time")
    print(f"  against pyloudnorm       {theirs / ours:8.1f} times as fast")
    ours = seconds(lambda: measure_dynamics(a, RATE_HZ))
    print(f"all of dynamics            {duration / ours:8.0f} x real time")

    strength = np.ones(onsets.size)
    ours = seconds(lambda: measure_tempo(onsets, strength, duration, pulse_bpm=75))
    theirs = seconds(lambda: librosa.beat.beat_track(y=a, sr=RATE_HZ), 1)
    print(f"tempo from onsets          {duration / ours:8.0f} x real time")
    print(f"  against beat_track       {theirs / ours:8.1f} times as fast (which finds onsets too)")


if __name__ == "__main__":
    main()
