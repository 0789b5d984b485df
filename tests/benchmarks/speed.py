"""Print how fast and how small the measuring is, as ratios against references in one run.

    python tests/benchmarks/speed.py [PART,...]      (pitch, take, cold, hour, align)

The trackers and the take run on one processor core where the system lets a process choose
it, and are timed by the processor's own clock, so that a busy machine does not count. What
a player waits for (cold start, the hour, aligning) is timed by the wall, on all cores, with
the processor's seconds beside it. Figures of different runs or machines are not
comparable; ratios within one run are. A variable like OPENBLAS_CORETYPE in the environment
may slow numpy down; it is left as it is and named in the first line.

Bounds: pitch at least as fast as praat's ``to_pitch_ac`` and 100 times ``librosa.pyin``;
a take at 60 times real time after warm-up; ``measure`` of a minute from cold under 4 s;
an hour in under 600 MB, with progress and a wish to stop answered within a second.
"""

import json
import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))

import numpy as np
import soundfile

from sample_audio.generator import NoteSpec, Phrase, PhraseSpec, render

ROOT = Path(__file__).parents[2]
RATE_HZ = 44_100
HOP_S = 0.005
PARTS = ("pitch", "take", "cold", "hour", "align")


def violin_phrase(seconds: float = 32.0, seed: int = 3, tempo: float = 60.0) -> Phrase:
    """A violin line of about the wanted length: scales, leaps, vibrato, slurs, short notes."""
    rng = np.random.default_rng(seed)
    notes, total, midi = [], 0.0, 69
    while total < seconds - 1.0:
        midi = int(np.clip(midi + rng.choice((-7, -3, -2, -1, 1, 2, 3, 7)), 55, 93))
        length = float(rng.choice((0.12, 0.25, 0.4, 0.8, 1.4)))
        total += length
        notes.append(
            NoteSpec(
                midi,
                length,
                deviation_cents=float(rng.normal(0.0, 8.0)),
                vibrato_rate_hz=6.0 if length > 0.5 else 0.0,
                vibrato_extent_cents=20.0,
                articulation="legato" if rng.random() < 0.3 else "detache",
            )
        )
    return render(
        PhraseSpec(tuple(notes), tempo=tempo, sample_rate_hz=RATE_HZ, level_dbfs=-24.0, seed=seed)
    )


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


def pitch_trackers() -> None:
    """Our tracker against three general ones: same sound, hop, floor and ceiling."""
    import librosa
    import parselmouth

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

    def praat() -> tuple[np.ndarray, np.ndarray]:
        pitch = parselmouth.Sound(samples, RATE_HZ).to_pitch_ac(
            time_step=HOP_S, pitch_floor=floor_hz, pitch_ceiling=ceiling_hz
        )
        return pitch.xs(), pitch.selected_array["frequency"]

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
    rows += [("praat to_pitch_ac", best_s(praat, 5), praat)]
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
    print(f"analyse_take: {duration_s / took_s:.1f} x real time ({duration_s:.0f} s of sound)")
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
    print("passagework measure of 60 s, a new process each (bound 4 s):")

    def run(label: str, **variables: str) -> None:
        begun, before = time.perf_counter(), os.times()
        subprocess.run(
            command, cwd=ROOT, check=True, capture_output=True, env={**os.environ, **variables}
        )
        took_s, after = time.perf_counter() - begun, os.times()
        worked_s = after.children_user + after.children_system
        worked_s -= before.children_user + before.children_system
        print(f"  {label:<40}{took_s:7.2f} s, processor {worked_s:6.2f} s")

    run("warming the cache of compiled code")
    for number in (1, 2, 3):
        run(f"run {number}")
    run("the very first run, nothing compiled", NUMBA_CACHE_DIR=str(folder / "empty cache"))


_HOUR = """
import json, sys, time
sys.path.insert(0, {root!r})
import numpy as np
from pathlib import Path
way, cancel = {way!r}, {cancel!r}
asked, told, stop_at = [], [], [None]
def should_stop():
    asked.append(time.perf_counter())
    if cancel and told and told[-1][1] >= 0.3 and stop_at[0] is None:
        stop_at[0] = time.perf_counter() + 1.0
    return stop_at[0] is not None and time.perf_counter() >= stop_at[0]
def progress(share):
    told.append((time.perf_counter(), share))
begun = time.perf_counter()
stopped_s = None
try:
    if way == "file":
        from app.journal.records import PlayingSettings
        from app.services.file_measuring import measure_file
        measure_file(Path({path!r}), PlayingSettings(), progress, should_stop)
    else:
        from analysis.take import TakeSettings, analyse_take
        samples = np.memmap({raw!r}, dtype=np.float32, mode="r")
        analyse_take(samples, {rate}, TakeSettings("violin"),
                     progress=progress, should_stop=should_stop)
except Exception as stopped:
    if "Stopped" not in type(stopped).__name__:
        raise
    stopped_s = time.perf_counter() - stop_at[0]
def longest(times):
    return max(np.diff([begun, *times, time.perf_counter()]).tolist())
print(json.dumps(dict(
    peak_mb=peak_mb(), took_s=time.perf_counter() - begun, worked_s=time.process_time(),
    stopped_s=stopped_s,
    longest_without_asking_s=longest(asked),
    longest_without_progress_s=longest([t for t, _ in told]))))
"""

_PEAK = """
def peak_mb():
    import resource, sys
    size = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    return size / (1024 if sys.platform != "darwin" else 1024 * 1024)
"""


def in_new_process(source: str) -> dict:
    """Run a script in a process of its own and return the JSON it prints last."""
    done = subprocess.run(
        [sys.executable, "-c", _PEAK + source], capture_output=True, text=True, check=False
    )
    if done.returncode:
        raise RuntimeError(done.stderr[-2000:])
    return json.loads(done.stdout.splitlines()[-1])


def an_hour(folder: Path) -> None:
    """Sixty minutes of violin: memory, progress, and how soon a wish to stop is heard."""
    piece = violin_phrase(60.0).samples.astype(np.float32)
    count = 3600 * RATE_HZ
    path, raw = folder / "hour.wav", folder / "hour.f32"
    with soundfile.SoundFile(path, "w", RATE_HZ, 1, "PCM_24") as wav, raw.open("wb") as plain:
        written = 0
        while written < count:
            block = piece[: count - written]
            wav.write(block)
            block.tofile(plain)
            written += block.size
    print("an hour of violin at 44.1 kHz (bounds: 600 MB, 1 s):")
    for way, label in (("file", "the file, as the program does it"), ("map", "memory-mapped")):
        for cancel in (False, True):
            found = in_new_process(
                _HOUR.format(
                    root=str(ROOT), way=way, cancel=cancel, path=str(path), raw=str(raw),
                    rate=RATE_HZ,
                )
            )  # fmt: skip
            if cancel:
                heard = found["stopped_s"]
                print(f"    asked to stop in mid-work: stopped after {heard or float('nan'):.2f} s")
                continue
            print(
                f"  {label}: {found['took_s']:.1f} s ({3600 / found['took_s']:.0f} x real time;"
                f" processor {found['worked_s']:.1f} s),"
                f" peak {found['peak_mb']:.0f} MB\n"
                f"    longest without progress {found['longest_without_progress_s']:.2f} s,"
                f" without asking whether to stop {found['longest_without_asking_s']:.2f} s"
            )


_ALIGN = """
import json, sys, time
sys.path.insert(0, {root!r})
import numpy as np
from analysis.alignment import align
rate = {rate}
a, b = (np.fromfile(path, dtype=np.float32) for path in {paths!r})
align(a[: 20 * rate], rate, b[: 20 * rate], rate)
before, begun = peak_mb(), time.perf_counter()
worked = time.process_time()
found = align(a, rate, b, rate)
print(json.dumps(dict(
    took_s=time.perf_counter() - begun, worked_s=time.process_time() - worked,
    peak_mb=peak_mb(), before_mb=before, minutes=[x.size / rate / 60 for x in (a, b)],
    status=found.status)))
"""


def ten_minutes_aligned(folder: Path) -> None:
    """Two takes of ten minutes, the second at another tempo."""
    paths = [folder / "a.f32", folder / "b.f32"]
    for path, tempo in zip(paths, (60.0, 66.0), strict=True):
        with path.open("wb") as plain:
            for seed in range(50, 60):
                violin_phrase(60.0, seed, tempo).samples.astype(np.float32).tofile(plain)
    found = in_new_process(
        _ALIGN.format(root=str(ROOT), rate=RATE_HZ, paths=[str(path) for path in paths])
    )
    a_min, b_min = found["minutes"]
    print(
        f"align {a_min:.1f} min with {b_min:.1f} min: {found['took_s']:.1f} s (processor"
        f" {found['worked_s']:.1f} s), peak {found['peak_mb']:.0f} MB"
        f" ({found['before_mb']:.0f} MB of it before), {found['status']}"
    )


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
