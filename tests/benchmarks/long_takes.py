"""An hour measured and ten minutes aligned, each in a process of its own: time and memory."""

import json
import subprocess
import sys
from pathlib import Path

import numpy as np
import soundfile

from sample_audio.generator import NoteSpec, Phrase, PhraseSpec, render

ROOT = Path(__file__).parents[2]
RATE_HZ = 44_100


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
    import pathlib, resource, sys
    if sys.platform == "linux":  # where the largest size counts from before the exec
        lines = pathlib.Path("/proc/self/status").read_text().splitlines()
        return int(next(line for line in lines if line.startswith("VmHWM")).split()[1]) / 1024
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
