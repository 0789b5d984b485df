"""The program is killed while its clock runs: no minute is lost and none is invented."""

import random
import subprocess
import sys
import time
from datetime import datetime, timedelta
from pathlib import Path

import pytest

from app.wiring import open_workbench

ROOT = Path(__file__).parents[2]
START = datetime.fromisoformat("2026-03-14T12:00:00+01:00")
KILLS = 5


@pytest.mark.parametrize("seed", range(KILLS))
def test_killed_at_a_random_moment(tmp_path, seed):
    process = subprocess.Popen(
        [sys.executable, "-m", "tests.services.clock_writer", str(tmp_path / "journal"),
         START.isoformat()],
        stdout=subprocess.PIPE, text=True, cwd=ROOT,
    )  # fmt: skip
    with process.stdout:
        assert process.stdout.readline() == "ready\n"
        time.sleep(random.Random(seed).uniform(0.0, 0.6))
        process.kill()  # SIGKILL, or its like on Windows
        process.wait()
        reported = process.stdout.read().splitlines()
    last_s = int(reported[-1]) if reported else 0
    now = START + timedelta(seconds=last_s + 90)  # the next start, a minute and a half later
    with open_workbench(tmp_path / "journal", clock=lambda: now) as bench:
        view = bench.clock.state()
        assert (view.phase, bench.clock.forgotten()) == ("running", None)
        assert view.today_min * 60 == pytest.approx(last_s + 90)
        assert sum(row.minutes for row in view.items) * 60 == pytest.approx(last_s + 90)
        stopped = bench.clock.stop()
        assert stopped.today_min * 60 == pytest.approx(last_s + 90)
