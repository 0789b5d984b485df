"""Print how fast and how small the measuring is, as ratios against references in one run.

    python tests/benchmarks/speed.py [PART,...]      (pitch, take, cold, hour, align)

The trackers and the take run on one processor core where the system lets a process choose
it, and are timed by the processor's own clock, so that a busy machine does not count. What
a player waits for (cold start, the hour, aligning) is timed by the wall, on all cores, with
the processor's seconds beside it. Figures of different runs or machines are not
comparable; ratios within one run are. A variable like OPENBLAS_CORETYPE in the environment
may slow numpy down; it is left as it is and named in the first line.

The bounds in seconds were set on a machine on which praat's ``to_pitch_ac`` ran at 420
times real time. Praat runs beside the take and the cold start here, so what they would come
to there is printed too.

Bounds: pitch at least as fast as praat's ``to_pitch_ac`` and 100 times ``librosa.pyin``;
a take at 60 times real time after warm-up; ``measure`` of a minute from cold under 4 s;
an hour in under 600 MB, with progress and a wish to stop answered within a second.
"""

import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))
sys.path.insert(0, str(Path(__file__).parent))

import numpy as np
import soundfile
from long_takes import RATE_HZ, ROOT, an_hour, ten_minutes_aligned, violin_phrase

from sample_audio.generator import Phrase

HOP_S = 0.005
PRAAT_WHERE_BOUNDS_WERE_SET = 420.0  # times real time
PARTS = ("pitch", "take", "cold", "hour", "align")


def best_s(work: Callable[[], object], repeats: int = 3) -> float:
    """Processor seconds of the best of a few runs, after one that does not count."""
    work()
    found = []
    for _ in range(repeats):
        begun = time.process_time()
        work()
        found.append(time.process_time() - begun)
    return min(found)


def median_cents(time_s: np.ndarray, f0_hz: np.ndarray, phrase: Phrase) -> float:
    """Median size of the error of the voiced frames inside the notes' steady parts."""
    truth = phrase.truth
    true_hz = np.interp(time_s, truth.time_s, truth.f0_hz)
    inside = np.zeros(time_s.shape, dtype=bool)
    for note in truth.notes:
        inside |= (time_s > note.steady_start_s) & (time_s < note.steady_end_s)
    keep = inside & np.isfinite(true_hz) & np.isfinite(f0_hz) & (f0_hz > 0)
    return float(np.median(np.abs(1200.0 * np.log2(f0_hz[keep] / true_hz[keep]))))


def by_praat(samples: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """Times in seconds and pitch in Hz by praat, with our hop, floor and ceiling."""
    import parselmouth

    from analysis.instruments import INSTRUMENTS

    violin = INSTRUMENTS["violin"]
    pitch = parselmouth.Sound(samples, RATE_HZ).to_pitch_ac(
        time_step=HOP_S, pitch_floor=violin.floor_hz, pitch_ceiling=violin.ceiling_hz
    )
    return pitch.xs(), pitch.selected_array["frequency"]


def slower_than_where_bounds_were_set() -> float:
    """How many times slower this machine is, by praat on the violin of the first part."""
    samples = violin_phrase().samples
    took_s = best_s(lambda: by_praat(samples), 5)
    return PRAAT_WHERE_BOUNDS_WERE_SET * took_s * RATE_HZ / samples.size


def pitch_trackers() -> None:
    """Our tracker against three general ones: same sound, hop, floor and ceiling."""
    import librosa

    from analysis.instruments import INSTRUMENTS
    from analysis.pitch import track_pitch
    from analysis.results import Measured

    phrase, player = violin_phrase(), INSTRUMENTS["violin"]
    samples = phrase.samples
    duration_s = samples.size / RATE_HZ
    floor_hz, ceiling_hz = player.floor_hz, player.ceiling_hz
    hop = round(HOP_S * RATE_HZ)

    def ours() -> tuple[np.ndarray, np.ndarray]:
        found = track_pitch(
            samples,
            RATE_HZ,
            floor_hz=floor_hz,
            ceiling_hz=ceiling_hz,
            hop_s=HOP_S,
            window_periods=player.window_periods,
        )
        assert isinstance(found, Measured)
        return found.value.time_s, found.value.f0_hz

    def pyin() -> tuple[np.ndarray, np.ndarray]:
        f0, _, _ = librosa.pyin(samples, fmin=floor_hz, fmax=ceiling_hz, sr=RATE_HZ, hop_length=hop)
        return np.arange(f0.size) * hop / RATE_HZ, f0

    def yin() -> tuple[np.ndarray, np.ndarray]:
        f0 = librosa.yin(samples, fmin=floor_hz, fmax=ceiling_hz, sr=RATE_HZ, hop_length=hop)
        return np.arange(f0.size) * hop / RATE_HZ, f0

    print(f"pitch of {duration_s:.1f} s of synthetic violin, {1000 * HOP_S:g} ms hop")
    print(f"  {'':<24}{'x real time':>12}{'median cents':>14}{'our speed to its':>18}")
    ours_s = best_s(ours, 5)
    rows = [("Passagework", ours_s, ours)]
    rows += [("praat to_pitch_ac", best_s(lambda: by_praat(samples), 5), lambda: by_praat(samples))]
    rows += [("librosa.yin", best_s(yin, 2), yin), ("librosa.pyin", best_s(pyin, 1), pyin)]
    for name, took_s, tracker in rows:
        error = median_cents(*tracker(), phrase)
        print(f"  {name:<24}{duration_s / took_s:>12.1f}{error:>14.3f}{took_s / ours_s:>16.2f} x")


def whole_take() -> None:
    """All of ``analyse_take`` on a minute of sound, warm."""
    from analysis.take import TakeSettings, analyse_take

    samples = np.tile(violin_phrase(30.0).samples, 2)
    took_s = best_s(lambda: analyse_take(samples, RATE_HZ, TakeSettings("violin")))
    duration_s = samples.size / RATE_HZ
    slower = slower_than_where_bounds_were_set()
    print(f"analyse_take: {duration_s / took_s:.1f} x real time ({duration_s:.0f} s of sound)")
    print(
        f"  praat is {slower:.1f} times slower here than where the bound of 60 was set;"
        f" there {slower * duration_s / took_s:.0f} x"
    )
    for name, took_s in stages(samples).items():
        print(f"  {name:<22}{took_s:8.3f} s {duration_s / took_s:10.1f} x real time")


def stages(samples: np.ndarray) -> dict[str, float]:
    """Seconds of the parts of ``analyse_take``."""
    from analysis.dynamics import measure_dynamics
    from analysis.instruments import INSTRUMENTS
    from analysis.notes import find_notes
    from analysis.onsets import detect_onsets
    from analysis.pitch import track_pitch

    violin = INSTRUMENTS["violin"]
    floor_hz, ceiling_hz = violin.floor_hz, violin.ceiling_hz
    found = track_pitch(samples, RATE_HZ, floor_hz=floor_hz, ceiling_hz=ceiling_hz).value
    onset_s, strength = detect_onsets(samples, RATE_HZ, track=found)
    return {
        "pitch": best_s(
            lambda: track_pitch(samples, RATE_HZ, floor_hz=floor_hz, ceiling_hz=ceiling_hz)
        ),
        "onsets": best_s(lambda: detect_onsets(samples, RATE_HZ, track=found)),
        "notes": best_s(lambda: find_notes(found, onset_s, strength, violin)),
        "dynamics": best_s(lambda: measure_dynamics(samples, RATE_HZ)),
    }


def cold_measure(folder: Path) -> None:
    """``passagework measure`` of a minute from a process that has nothing loaded."""
    path = folder / "minute.wav"
    soundfile.write(path, np.tile(violin_phrase(30.0).samples, 2), RATE_HZ, subtype="PCM_24")
    command = [sys.executable, "-m", "app", "measure", str(path), "--json"]
    slower = slower_than_where_bounds_were_set()
    print("passagework measure of 60 s, a new process each (bound 4 s):")
    print(f"  praat is {slower:.1f} times slower here than where the bound was set")

    def run(label: str, **variables: str) -> None:
        begun, before = time.perf_counter(), os.times()
        subprocess.run(
            command, cwd=ROOT, check=True, capture_output=True, env={**os.environ, **variables}
        )
        took_s, after = time.perf_counter() - begun, os.times()
        worked_s = after.children_user + after.children_system
        worked_s -= before.children_user + before.children_system
        there_s = took_s / slower
        print(f"  {label:<40}{took_s:7.2f} s, processor {worked_s:6.2f} s; there {there_s:.1f} s")

    run("warming the cache of compiled code")
    for number in (1, 2, 3):
        run(f"run {number}")
    run("the very first run, nothing compiled", NUMBA_CACHE_DIR=str(folder / "empty cache"))


def main() -> None:
    """Print the wanted parts."""
    wanted = sys.argv[1].split(",") if len(sys.argv) > 1 else PARTS
    cores = os.sched_getaffinity(0) if hasattr(os, "sched_getaffinity") else set()
    blas = os.environ.get("OPENBLAS_CORETYPE", "not set")
    print(f"{os.cpu_count()} cores; OPENBLAS_CORETYPE {blas}")
    with tempfile.TemporaryDirectory() as name:
        parts: dict[str, Callable[[], None]] = {
            "pitch": pitch_trackers,
            "take": whole_take,
            "cold": lambda: cold_measure(Path(name)),
            "hour": lambda: an_hour(Path(name)),
            "align": lambda: ten_minutes_aligned(Path(name)),
        }
        for part in wanted:
            if cores:
                os.sched_setaffinity(0, {max(cores)} if part in ("pitch", "take") else cores)
            parts[part]()


if __name__ == "__main__":
    main()
