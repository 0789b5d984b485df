"""A recording survives what ends it: a kill, a full disk."""

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import numpy as np
import pytest

from app.wiring import open_workbench

pytestmark = [
    pytest.mark.room,
    pytest.mark.skipif(sys.platform == "win32", reason="POSIX signals and mounts"),
]
ROOT = Path(__file__).parents[2]
TONE = 0.2 * np.sin(2 * np.pi * 440 * np.arange(48_000 * 30) / 48_000)


def started(journal, *arguments):
    """Start the program on a journal in a process of its own."""
    return subprocess.Popen(
        [sys.executable, "-m", "app", *map(str, arguments)],
        cwd=ROOT,
        env=os.environ | {"PASSAGEWORK_JOURNAL": str(journal)},
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )


def wait_for_words(process, words):
    while line := process.stderr.readline():
        if words in line:
            return
    pytest.fail(f"ended without saying {words!r}")


def test_a_kill_costs_less_than_the_last_second(run, virtual_room, journal_dir):
    with (
        virtual_room.playing(TONE, 48_000),
        started(journal_dir, "record", "--input", virtual_room.device) as process,
    ):
        wait_for_words(process, "Recording")
        begun = time.monotonic()
        time.sleep(4.0)
        process.send_signal(signal.SIGKILL)
        lasted_s = time.monotonic() - begun
        process.communicate()
    ran = run("recover", "--json")
    assert ran.code == 0, ran.err
    (take,) = ran.json
    assert take["duration_s"] > lasted_s - 1.0
    assert Path(take["file"]).suffix == ".flac"
    assert list((journal_dir / ".recording").iterdir()) == []
    assert run("recover").out == "Every recording is filed.\n"
    measured = run("measure", take["id"], "--json").json
    assert [note["name"] for note in measured["notes"]][:1] == ["A4"]


def test_a_kill_leaves_the_beats_of_the_click(run, virtual_room, journal_dir):
    with started(
        journal_dir, "record", "--input", virtual_room.device, "--click", "120", "--volume", "0.3"
    ) as process:
        wait_for_words(process, "Recording")
        time.sleep(6.0)
        process.send_signal(signal.SIGKILL)
        process.communicate()
    ran = run("recover", "--json")
    assert ran.code == 0, ran.err
    with open_workbench(journal_dir) as bench:
        click = bench.listening.open_take(ran.json[0]["id"]).settings.click
    assert click is not None
    assert click.interval_s == pytest.approx(0.5, rel=1e-3)


@pytest.mark.skipif(os.name == "nt" or os.geteuid() != 0, reason="mounts a small disk")
def test_a_full_disk_keeps_what_was_recorded(run, virtual_room, tmp_path):
    disk = tmp_path / "disk"
    disk.mkdir()
    mounted = subprocess.run(
        ["mount", "-t", "tmpfs", "-o", "size=3m", "tmpfs", str(disk)],
        capture_output=True,
        check=False,
    )
    if mounted.returncode != 0:
        pytest.skip("no permission to mount")
    try:
        journal = disk / "journal"
        assert run("count", "--minutes", "5", "--journal", journal).code == 0
        filler = disk / "filler"
        free = os.statvfs(disk).f_bavail * os.statvfs(disk).f_frsize
        filler.write_bytes(bytes(free - 500_000))
        with (
            virtual_room.playing(TONE, 48_000),
            started(
                journal, "record", "--seconds", "20", "--input", virtual_room.device
            ) as process,
        ):
            out, err = process.communicate(timeout=60)
        assert process.returncode == 2, err
        assert "The disk is full; the take up to then is kept." in err
        assert "Traceback" not in err
        assert out == ""
        assert not list(journal.rglob("*.flac"))
        filler.unlink()
        ran = run("recover", "--journal", journal, "--json")
        assert ran.code == 0, ran.err
        assert ran.json[0]["duration_s"] > 2.0
    finally:
        subprocess.run(["umount", str(disk)], check=True)
