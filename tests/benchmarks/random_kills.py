"""Kills the program at random moments of a recording and says what each kill cost.

    python tests/benchmarks/random_kills.py [KILLS]

Every kill (SIGKILL) is aimed at a recording through the virtual room; the next start
files what was left. Printed: the sound that is missing, against how long the program had
been recording when it was killed, and whether the takes filed before are what they were.
"""

import hashlib
import json
import os
import random
import signal
import subprocess
import sys
import tempfile
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))
KILLS = 50


def program(journal: Path, *arguments: str) -> subprocess.Popen[str]:
    """Start the program on a journal."""
    return subprocess.Popen(
        [sys.executable, "-m", "app", *arguments],
        cwd=ROOT,
        env=os.environ | {"PASSAGEWORK_JOURNAL": str(journal)},
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )


def one_kill(journal: Path, device: str, after_s: float) -> tuple[float, dict[str, object]]:
    """Kill a recording; give how long it had lasted, and the take that was recovered."""
    process = program(journal, "record", "--input", device)
    assert process.stderr is not None
    while (line := process.stderr.readline()) and "Recording" not in line:
        continue
    begun = time.monotonic()
    time.sleep(after_s)
    process.send_signal(signal.SIGKILL)
    lasted_s = time.monotonic() - begun
    process.communicate()
    out, err = program(journal, "recover", "--json").communicate()
    takes = json.loads(out)
    if len(takes) != 1:
        raise SystemExit(f"killed after {lasted_s:.2f} s, and {len(takes)} takes came back: {err}")
    return lasted_s, takes[0]


def main(kills: int) -> None:
    """Kill, recover, and look at everything that was there before."""
    from tests.virtual_room import VirtualRoom

    chance = random.Random(4)
    lost: list[float] = []
    digests: dict[Path, str] = {}
    with VirtualRoom() as room, tempfile.TemporaryDirectory() as scratch:
        journal = Path(scratch) / "journal"
        for number in range(kills):
            lasted_s, take = one_kill(journal, room.device, chance.uniform(0.2, 4.0))
            lost.append(lasted_s - float(str(take["duration_s"])))
            for path, digest in digests.items():
                if hashlib.sha256(path.read_bytes()).hexdigest() != digest:
                    raise SystemExit(f"{path} is not what it was")
            new = Path(str(take["file"]))
            digests[new] = hashlib.sha256(new.read_bytes()).hexdigest()
            print(
                f"{number + 1:3d}  recorded {lasted_s:5.2f} s, lost {lost[-1]:+.2f} s", flush=True
            )
    over = sum(seconds > 1.0 for seconds in lost)
    print(
        f"{kills} kills: at most {max(lost):.2f} s lost, {over} over a second;"
        f" {len(digests)} takes recovered, none of them changed since"
    )


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else KILLS)
